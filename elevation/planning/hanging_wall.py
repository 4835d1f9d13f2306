"""The steps on wall, ceiling or sash before anything hangs: mark, detect, drill, screw on (common practice, no source)."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.drilling import DrillPlace
from elevation.planning.end_places import EndPlace
from elevation.planning.hang_step import HangStep
from elevation.setting_out.model import TreatmentOut
from elevation.trade.model import SubstrateRow
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg, term

_EYES = msg("Glasses and dust mask; a cup or a folded note under the hole; stop if anything but dust comes out.")


def level_line(places: Sequence[DrillPlace]) -> list[HangStep]:
    """Mark the axis, draw the level line, mark each middle on it from both ends of the wall."""
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


def ceiling_line(places: Sequence[DrillPlace]) -> HangStep:
    """The rod's line on the ceiling and the brackets' middles on it."""
    out = places[0].out
    details = () if out is None else (msg("{figure} {where}, at both ends", figure=Mm(out[1]), where=out[0]),)
    return HangStep(
        msg("Draw the rod's line on the ceiling, and each bracket's middle on it, measured from both walls."),
        details,
        places=tuple(places),
    )


def inside_marks(places: Sequence[DrillPlace]) -> HangStep:
    """Axis and brackets inside an opening, from both jambs."""
    return HangStep(
        msg("Mark the rod's axis and each bracket inside the opening, from sill and head and from both jambs."),
        places=tuple(places),
    )


def detect(laid: TreatmentOut, substrate: SubstrateRow) -> HangStep:
    """Look for cables, pipes and framing before any hole; what to do where the wall is not known."""
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


def drill(laid: TreatmentOut, substrate: SubstrateRow, places: Sequence[DrillPlace]) -> HangStep:
    """The holes that this kind of wall asks for, bracket by bracket."""
    order = ", ".join(place.mark for place in places)
    if laid.mount == "ceiling":
        return HangStep(
            msg(
                "Prick through the crosses and drill pilot holes into the joists, bracket by bracket: {order}.", order=order
            ),
            (msg("Screws must go into the joist by the length that their packet says."),),
            (_EYES, msg("Never a plug in board over your head.")),
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
    return HangStep(Message(text.template, {"order": order}), (fix,), (_EYES,))


def screw_on() -> HangStep:
    """The brackets up and tried by hand."""
    return HangStep(
        msg("Set anchors where they are needed and screw the brackets on, the ends first, then those between."),
        (
            msg("Lay a straight edge over the brackets before the last turn of the screws: no bracket high, none low."),
            msg("Pull down on each bracket with the weight of your forearm: nothing moves, nothing creaks."),
        ),
    )


def end_steps(ends: Sequence[EndPlace]) -> list[HangStep]:
    """Sockets and tubes bent back: mark them, then drill for them and screw them on."""
    holes = dict.fromkeys(tuple(sorted(end.holes_mm, reverse=True)) for end in ends if end.holes_mm)
    where = tuple(
        msg("its screws {over} over and {under} under that middle", over=Mm(max(one)), under=Mm(-min(one)))
        for one in holes
        if max(one) > 0 > min(one)
    )
    mark = (
        msg("Mark the middle of each socket on its side wall: its height from two sides, and how far it stands out.")
        if all(end.is_socket for end in ends)
        else msg("Mark where the rod's ends are screwed on: each height from two sides.")
    )
    return [
        HangStep(mark, where, ends=tuple(ends)),
        HangStep(
            msg("Hold each plate on its mark, prick its holes, drill what that wall asks for and screw it on.")
            if all(end.is_socket for end in ends)
            else msg(
                "Hold the rod's ends on their marks, prick and drill; they are screwed on once the rings are on the rod."
            ),
            (
                msg("Wood takes pilot holes and screws; masonry an anchor by its packet; board alone holds no rod."),
                msg("Lay a level from one mark to the other before the second is drilled."),
            ),
            (_EYES,),
        ),
    ]
