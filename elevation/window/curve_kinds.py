"""The curves of the window: what each is over, which handle its line holds, and what it says in words."""

from __future__ import annotations

from msgspec import Struct

from elevation.handles.model import Handle
from elevation.planning.curves import Curve, gap_over_height, glass_over_length, sag_along
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.model import BracketOut, TreatmentOut
from elevation.units import format_length
from elevation.window.texts import tr
from elevation.words import Message, Mm, Percent, msg

_MOST_GLASS_MM = 1000.0
"""So far beyond the last opening the right end of a rod is tried."""
_AROUND_MM = 300.0
"""So far above and below where the rod is its height is shown."""


class Kind(Struct, frozen=True):
    """One curve.

    Attributes
    ----------
    name : str
    title : Message
        In the list of curves.
    axis : str
        The handle that the line holds.
    is_length : bool
        The values are lengths, not percent.
    share : float
        How far the handle moves for one mm of the line.
    """

    name: str
    title: Message
    axis: str
    is_length: bool
    share: float


GLASS = Kind("glass", msg("Glass clear over the rod's length"), "rod-right", False, 0.5)
HEM = Kind("hem", msg("Hem gap over the rod's height"), "rod-height", True, 1.0)
SAG = Kind("sag", msg("Sag along the rod"), "bracket", True, 1.0)
KINDS = (GLASS, HEM, SAG)


def handle_of(kind: Kind, session: Session, treatment: TreatmentOut) -> Handle | None:
    """The handle that the line holds; of brackets the inner one nearest to the rod's middle, else the last."""
    found = [one for one in session.handles() if one.axis == kind.axis and one.ref[:3] == treatment.ref]
    if kind is not SAG:
        return next(iter(found), None)
    bracket = _bracket(treatment)
    return next((one for one in found if bracket is not None and one.ref == bracket.ref), None)


def _bracket(treatment: TreatmentOut) -> BracketOut | None:
    layer = treatment.layers[0]
    brackets = sorted(layer.brackets, key=lambda bracket: bracket.x_mm)
    inner = brackets[1:-1] or brackets[-1:]
    middle = (layer.support.left_mm + layer.support.right_mm) / 2
    return min(inner, key=lambda bracket: abs(bracket.x_mm - middle), default=None)


def present_mm(kind: Kind, treatment: TreatmentOut) -> float:
    """Where the room stands on the curve."""
    support = treatment.layers[0].support
    if kind is SAG:
        bracket = _bracket(treatment)
        return support.left_mm if bracket is None else bracket.x_mm
    return support.height_mm if kind is HEM else support.length_mm


def worked(kind: Kind, session: Session, treatment: TreatmentOut, handle: Handle) -> Curve:
    """The curve for the committed room."""
    room = session.committed
    if kind is SAG:
        return sag_along(treatment.layers[0])
    if kind is HEM:
        here = present_mm(kind, treatment)
        low, high = max(handle.low_mm, here - _AROUND_MM), min(handle.high_mm, here + _AROUND_MM)
        return gap_over_height(room, session.set_out(), treatment.layers[0], session.trade, low, high)
    bound = handle.bound(False)
    low = bound.low_mm if not treatment.openings else max(bound.low_mm, treatment.openings[-1].right_mm)
    return glass_over_length(
        lambda value: handle.move(room, value, False),
        low,
        min(bound.high_mm, low + _MOST_GLASS_MM),
        session.wall_id,
        session.scheme_id,
        session.trade,
        treatment.ref,
    )


def labels(kind: Kind, unit: str) -> tuple[str, str]:
    """What stands under and beside the axes."""
    if kind is SAG:
        below = msg("along the wall, in") if unit == "in" else msg("along the wall, mm")
        return tr(below), tr(msg("sag, in") if unit == "in" else msg("sag, mm"))
    if kind is HEM:
        below = msg("rod over the floor, in") if unit == "in" else msg("rod over the floor, mm")
        return tr(below), tr(msg("gap, in") if unit == "in" else msg("gap, mm"))
    return tr(msg("rod, in") if unit == "in" else msg("rod, mm")), tr(msg("glass clear, %"))


def in_words(kind: Kind, session: Session, treatment: TreatmentOut, curve: Curve) -> str:
    """The curve for somebody who does not see it: where the room stands, and what is near."""
    style = style_for(session.room)
    here = present_mm(kind, treatment)
    if kind is SAG:
        support = treatment.layers[0].support
        if support.sag_mm is None or support.sag_limit_mm is None:
            return tr(msg("How far this rod sags is not known: say what it is made of and what hangs on it."))
        known = msg(
            "The rod sags {sag} at most; {limit} still looks neat there.",
            sag=Mm(support.sag_mm),
            limit=Mm(support.sag_limit_mm),
        )
        return tr(known, style)
    if kind is GLASS:
        said = msg(
            "A rod of {length} leaves {clear} of the glass clear; {most} would clear all of it.",
            length=Mm(here),
            clear=Percent(treatment.glass.clear_open),
            most=Mm(treatment.glass.support_to_clear_mm),
        )
        return tr(said, style)
    gap = treatment.clearances.hem_to_floor_low_mm
    parts = []
    if gap is not None:
        known = msg("At {height} the hem is {gap} over the floor.", height=Mm(here), gap=Mm(gap))
        lies = msg("At {height} the cloth lies {gap} on the floor.", height=Mm(here), gap=Mm(-gap))
        parts.append(tr(known if gap >= 0 else lies, style))
    for mark in curve.marks:
        at = msg("{length} panels just clear it at {height}.", length=Mm(mark.length_mm), height=Mm(mark.at_mm))
        parts.append(tr(at, style))
    if not curve.at_mm:
        parts.append(tr(msg("Nothing hangs here whose length is known.")))
    return " ".join(parts)


def mark_text(kind: Kind, session: Session, length_mm: float) -> str:
    """The figure beside a mark, its unit is the axis's; a bracket has none."""
    if kind is SAG:
        return ""
    room = session.room
    return format_length(length_mm, room.unit, room.graduation_mm)
