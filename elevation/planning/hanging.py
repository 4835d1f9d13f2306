"""The steps of hanging one treatment on its wall, in the order of ladder positions, each with its cautions.

Gypsum on studs, masonry, a wall not known, ceiling, reveal and sash differ in their steps. Figures are those of the
set-out; every bracket's place stands from two sides. All of it is common practice, no source; local code, the packet in
hand and licensed trades govern.
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.planning.drilling import drill_places
from elevation.planning.end_places import end_places
from elevation.planning.fixing_lines import fixing_lines
from elevation.planning.hang_step import HangStep
from elevation.planning.hanging_rod import hang
from elevation.planning.hanging_wall import ceiling_line, detect, drill, end_steps, inside_marks, level_line, screw_on
from elevation.planning.made import runners_of
from elevation.planning.pelmet_words import pelmet_lines
from elevation.planning.piece_names import names_of_layer
from elevation.room.find import layer_of, wall_of
from elevation.room.model import Room
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.setting_out.tilt import axis_at
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Mm, msg


def hanging_steps(room: Room, wall: SetOut, laid: TreatmentOut, trade: Trade) -> tuple[HangStep, ...]:
    """All steps for one treatment.

    Parameters
    ----------
    room : Room
    wall : SetOut
    laid : TreatmentOut
        One of the wall's treatments.
    trade : Trade

    Returns
    -------
    tuple of HangStep
    """
    substrate = row_of(trade.substrates, wall_of(room, wall.wall).substrate, "substrate")
    places = drill_places(wall, laid, trade)
    steps = [_ready(laid, has_template=bool(places))]
    if places:
        if laid.mount == "wall":
            steps.extend(level_line(places))
        elif laid.mount == "ceiling":
            steps.append(ceiling_line(places))
        else:
            steps.append(inside_marks(places))
        steps.append(detect(laid, substrate))
        holes = drill(laid, substrate, places)
        steps.append(replace(holes, details=(*holes.details, *fixing_lines(laid, places, trade, room.unit))))
        steps.append(screw_on())
    ends = end_places(wall, laid, trade)
    if ends:
        mark, fix = end_steps(ends)
        steps.extend((mark, fix) if places else (mark, detect(laid, substrate), fix))
    names = {ref: name.name for layer in laid.layers for ref, name in names_of_layer(laid, layer, 0).items()}
    for layer in laid.layers:
        runners = runners_of(room, layer_of(room, layer.ref), layer, trade)
        steps.extend(hang(layer, names, runners, trade))
    if laid.pelmet is not None:
        steps.append(HangStep(*pelmet_lines(wall, laid.pelmet)))
    steps.append(_look(wall, laid))
    return tuple(steps)


def _ready(laid: TreatmentOut, *, has_template: bool) -> HangStep:
    longest = max((layer.support.length_mm for layer in laid.layers), default=0.0)
    details = [
        msg("The drilling sheet, a level at least as long as an arm, pencil, the tape, the fixings and their packet.")
        if has_template
        else msg("A level at least as long as an arm, pencil, the tape, and what holds the rod with its packet.")
    ]
    if longest > TWO_MM:
        details.append(msg("Two people: a rod of {length} is not held and screwed alone.", length=Mm(longest)))
    return HangStep(
        msg("Clear the floor in front of the wall and lay everything out in the order it is needed."),
        tuple(details),
        (
            msg(
                "A ladder that stands on all its feet, locked, on a floor without rugs; not higher than the third step "
                "from its top; reach no farther than your belt buckle stays between its sides."
            ),
        ),
    )


TWO_MM = 1830.0
"""Six feet: longer rods ask for two people (common practice, no source)."""


def _look(wall: SetOut, laid: TreatmentOut) -> HangStep:
    details = []
    for layer in laid.layers:
        support = layer.support
        for x, name in (
            (support.left_mm, msg("left")),
            ((support.left_mm + support.right_mm) / 2, msg("middle")),
            (support.right_mm, msg("right")),
        ):
            height = axis_at(support, x) - height_at(wall.floor, x)
            details.append(
                msg("{place}: planned {height} over the floor; read: ____________", place=name, height=Mm(height))
            )
    return HangStep(
        msg("Read the rod's axis over the floor and type what you read: sheets then say AS BUILT and the hem follows."),
        tuple(details),
    )
