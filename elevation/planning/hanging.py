"""The steps of hanging one treatment on its wall, in the order of ladder positions, each with its cautions.

Gypsum on studs, masonry, a wall not known, ceiling, reveal and sash differ in their steps. Figures are those of the
set-out; every bracket's place stands from two sides. All of it is common practice, no source; local code, the packet in
hand and licensed trades govern.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from elevation.planning.drilling import DrillPlace, drill_places
from elevation.planning.fixing_lines import fixing_lines
from elevation.planning.made import runners_of
from elevation.planning.pelmet_words import pelmet_lines
from elevation.planning.piece_names import names_of_layer
from elevation.room.find import layer_of, wall_of
from elevation.room.model import Ref, Room
from elevation.setting_out.model import LayerOut, SetOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.setting_out.tilt import axis_at
from elevation.trade.model import SubstrateRow, Trade
from elevation.trade.tables import row_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg, msg_plural, term


class HangStep(Struct, frozen=True):
    """One step: what to do, figures under it, what to beware of in it. ``places`` are marked or drilled in it.

    ``axes`` are places whose rod's axis is told from both sides, ``levels`` those where it is told over the floor alone:
    the sheet rounds these as it does in the table of places, so that one place has one figure.
    """

    text: Message
    details: tuple[Message, ...] = ()
    cautions: tuple[Message, ...] = ()
    places: tuple[DrillPlace, ...] = ()
    axes: tuple[DrillPlace, ...] = ()
    levels: tuple[DrillPlace, ...] = ()


class Mishap(Struct, frozen=True):
    """What can go wrong at the wall, whether to stop, and how to go on."""

    what: Message
    verdict: Message
    then: Message


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
    steps = [_ready(laid)]
    if places:
        if laid.mount == "wall":
            steps.extend(_level_line(places))
        elif laid.mount == "ceiling":
            steps.append(_ceiling_line(places))
        else:
            steps.append(_inside_marks(places))
        steps.append(_detect(laid, substrate))
        drill = _drill(laid, substrate, places)
        steps.append(replace(drill, details=(*drill.details, *fixing_lines(laid, places, trade, room.unit))))
        steps.append(_screw_on())
    names = {ref: name.name for layer in laid.layers for ref, name in names_of_layer(laid, layer, 0).items()}
    for layer in laid.layers:
        runners = runners_of(room, layer_of(room, layer.ref), layer, trade)
        steps.extend(_hang(layer, names, runners, trade))
    if laid.pelmet is not None:
        steps.append(HangStep(*pelmet_lines(wall, laid.pelmet)))
    steps.append(_look(wall, laid))
    return tuple(steps)


def _ready(laid: TreatmentOut) -> HangStep:
    longest = max((layer.support.length_mm for layer in laid.layers), default=0.0)
    details = [
        msg("The drilling sheet, a level at least as long as an arm, pencil, the tape, the fixings and their packet.")
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


def _level_line(places: Sequence[DrillPlace]) -> list[HangStep]:
    first, last = places[0], places[-1]
    level = abs(first.height_mm - last.height_mm) <= TOUCH_MM
    steps = [
        HangStep(
            msg(
                "Mark the rod's axis at bracket {mark}, measured up from the floor; check it down from the ceiling.",
                mark="1",
            ),
            axes=(first,),
        )
    ]
    if len(places) == 1:
        text = msg(
            "Mark the bracket's middle at that height, from both ends of the wall; both figures add up to its width."
        )
        return [*steps, HangStep(text, places=tuple(places))]
    if level:
        steps.append(
            HangStep(
                msg(
                    "From that mark draw a thin level line to the last bracket; turn the level end for end and look again."
                ),
                (msg("The floor may fall: the level governs, these figures check it."),),
                levels=(first, last),
            )
        )
    else:
        steps.append(
            HangStep(
                msg("The rod does not hang level: mark its axis at each bracket by its own figure and join the marks."),
                levels=tuple(places),
            )
        )
    text = msg("Mark each bracket's middle on the line, from both ends of the wall; both figures add up to its width.")
    return [*steps, HangStep(text, places=tuple(places))]


def _ceiling_line(places: Sequence[DrillPlace]) -> HangStep:
    out = places[0].out
    details = () if out is None else (msg("{figure} {where}, at both ends", figure=Mm(out[1]), where=out[0]),)
    return HangStep(
        msg("Draw the rod's line on the ceiling, and each bracket's middle on it, measured from both walls."),
        details,
        places=tuple(places),
    )


def _inside_marks(places: Sequence[DrillPlace]) -> HangStep:
    return HangStep(
        msg("Mark the rod's axis and each bracket inside the opening, from sill and head and from both jambs."),
        places=tuple(places),
    )


def _detect(laid: TreatmentOut, substrate: SubstrateRow) -> HangStep:
    details = []
    if substrate.build == "unknown":
        details.append(msg("What this wall is made of is not known: {knock}", knock=term(substrate.sounds)))
        details.append(term(substrate.pin))
    if laid.mount == "ceiling":
        details.append(msg("Find the joists: detector, then a thin bit to be sure."))
    elif substrate.build == "studs":
        details.append(msg("Find the studs: detector or magnet, then a thin nail where the plate will hide it."))
    return HangStep(
        msg("At every mark look for cables and pipes with a detector, a hand's width all round."),
        tuple(details),
        (
            msg("Switch the circuit off where a cable may run: no detector finds every cable, no place is proven free."),
            msg(
                "Old paint may hold lead, textured coats and old boards asbestos: if in doubt do not drill, have it tested "
                "first."
            ),
        ),
    )


def _drill(laid: TreatmentOut, substrate: SubstrateRow, places: Sequence[DrillPlace]) -> HangStep:
    order = ", ".join(place.mark for place in places)
    eyes = msg("Glasses and dust mask; a cup or a folded note under the hole; stop if anything but dust comes out.")
    if laid.mount == "ceiling":
        return HangStep(
            msg(
                "Prick through the crosses and drill pilot holes into the joists, bracket by bracket: {order}.", order=order
            ),
            (msg("Screws must go into the joist by the length that their packet says."),),
            (eyes, msg("Never a plug in board over your head.")),
        )
    if laid.mount == "sash":
        return HangStep(
            msg("Drill shallow pilot holes into the sash, with a depth stop: {order}.", order=order),
            (msg("Half the sash's thickness at most; keep away from the pane."),),
            (msg("Glass breaks: glasses and gloves; never drill towards the pane."),),
        )
    texts = {
        "studs": msg("Drill pilot holes into the studs; where there is none, the hole that the packet asks for: {order}."),
        "battens": msg("Drill pilot holes into the battens, or through to the masonry for a long anchor: {order}."),
        "dabs": msg("Drill through the board into the masonry behind it for a long anchor: {order}."),
        "masonry": msg("Drill with a depth stop, to the depth on the anchor's packet, and clean the holes: {order}."),
        "timber": msg("Drill pilot holes into sound wood: {order}."),
        "unknown": msg("Drill one hole first and look at its dust; choose the fixing by it, then go on: {order}."),
    }
    text = texts[substrate.build]
    fix = msg("What holds here: {fix}.", fix=term(substrate.fix))
    if substrate.build == "unknown":
        fix = msg("What holds here is not known until the wall is tested.")
    return HangStep(Message(text.template, {"order": order}), (fix,), (eyes,))


def _screw_on() -> HangStep:
    return HangStep(
        msg("Set anchors where they are needed and screw the brackets on, the ends first, then those between."),
        (
            msg("Lay a straight edge over the brackets before the last turn of the screws: no bracket high, none low."),
            msg("Pull down on each bracket with the weight of your forearm: nothing moves, nothing creaks."),
        ),
    )


def _hang(layer: LayerOut, names: Mapping[Ref, Message], runners: Mapping[Ref, int], trade: Trade) -> list[HangStep]:
    steps: list[HangStep] = []
    support = layer.support
    if support.kind == "tension-rod":
        return [
            HangStep(
                msg("Thread the cloth on the tension rod, then set it between the jambs and turn it tight."),
                (
                    msg(
                        "{height} over the floor's datum at both ends: level it before the last turn.",
                        height=Mm(support.height_mm),
                    )
                    if support.line is None
                    else msg(
                        "{left} over the floor's datum at the left end, {right} at the right one: not level, as planned.",
                        left=Mm(axis_at(support, support.left_mm)),
                        right=Mm(axis_at(support, support.right_mm)),
                    ),
                ),
                (msg("The packet's load governs; it can fall when pulled: not over a bed or a cot."),),
            ),
            *_panels(layer, names),
        ]
    if support.kind == "track":
        steps.append(
            HangStep(
                msg("Thread the glides into the track, clip or screw the track on, and close its ends with stops."),
                _rings_of(layer, names, runners),
                (msg("One holds each end until the last clip is closed."),),
            )
        )
        return [*steps, *_panels(layer, names)]
    heading = row_of(trade.headings, layer.heading, "heading")
    inner = [bracket for bracket in layer.brackets[1:-1] if not bracket.rings_pass]
    if heading.carries == "rings":
        details = [*_rings_of(layer, names, runners)]
        if inner:
            details.append(
                msg("No ring passes a closed bracket: share them out between the brackets before the rod goes in.")
            )
        details.append(msg("One ring of each panel stays outside the end bracket: it parks the edge."))
        details.extend(_straps(layer, trade))
        steps.append(
            HangStep(msg("Thread the rings on the rod, then lay it in its brackets and lock it."), tuple(details), (_HOLD,))
        )
    else:
        steps.append(
            HangStep(
                msg("Thread the cloth itself on the rod, panel by panel, then lay the rod in its brackets and lock it."),
                (),
                (_HOLD,),
            )
        )
    steps.append(HangStep(msg("Put on the end pieces; push the rod in both directions: it stays.")))
    return [*steps, *_panels(layer, names)]


def _straps(layer: LayerOut, trade: Trade) -> tuple[Message, ...]:
    """What a closed strap asks for: the rod is laid in from above, with the rings on it, and the strap goes on last."""
    straps = [
        place
        for place in layer.brackets
        for kit in [row_of(trade.brackets, place.kit, "bracket kit")]
        if kit.holds_down and not kit.rings_pass and kit.mount == "wall" and kit.arm_wide_mm > 0
    ]
    if not straps:
        return ()
    return (
        msg("A closed strap needs room to load: take all straps off, lay the rod in from above, then screw the straps on."),
    )


_HOLD = msg("One holds each end of the rod until both brackets are locked; nobody stands under it.")


def _rings_of(layer: LayerOut, names: Mapping[Ref, Message], runners: Mapping[Ref, int]) -> tuple[Message, ...]:
    return tuple(
        msg_plural(
            "{panel}: {count} ring or glide",
            "{panel}: {count} rings or glides",
            count=runners[panel.ref],
            panel=names[panel.ref],
        )
        for panel in layer.panels
        if panel.rings
    )


def _panels(layer: LayerOut, names: Mapping[Ref, Message]) -> list[HangStep]:
    if not layer.panels:
        return []
    details = [
        msg(
            "{panel}: finished length {length}",
            panel=names[panel.ref],
            length=Mm(panel.finished_length_mm),
        )
        for panel in layer.panels
        if panel.finished_length_mm is not None
    ]
    return [
        HangStep(
            msg("Hang the panels and let them hang a day before a hem is sewn: cloth drops."),
            tuple(details),
            (msg("Cords and loops out of reach of children; nothing that burns near a heater."),),
        )
    ]


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


MISHAPS = (
    Mishap(
        msg("A hole is off by less than the plate hides"),
        msg("Go on"),
        msg("fill it, drill the right one a screw's length away or turn the plate; the plate hides both."),
    ),
    Mishap(
        msg("A hole is off by more"),
        msg("Go on, in the program first"),
        msg("type where the bracket stands now; look what moves and what breaks, and whether the other end should follow."),
    ),
    Mishap(
        msg("An anchor spins or pulls out"),
        msg("Stop at this bracket"),
        msg("do not hang on it: a larger or another kind of anchor by its packet, or move to framing, or a board across."),
    ),
    Mishap(
        msg("The bit meets metal, or the dust is bright or dark of a sudden"),
        msg("Stop"),
        msg(
            "current off; it may be a cable, a pipe, a nail plate. Look before any other hole; if in doubt call the trade."
        ),
    ),
    Mishap(
        msg("The bit falls into a void"),
        msg("Stop at this hole"),
        msg("the wall is not what was thought: say so in the program, and choose the fixing anew."),
    ),
    Mishap(
        msg("The rod is not level"),
        msg("Go on"),
        msg("if it is less than the holes' play, loosen and set again; else move one bracket, and type its height."),
    ),
)
"""What goes wrong at walls (common practice, no source)."""
