"""Each bracket along its rod."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from elevation.findings.model import Sticking
from elevation.findings.naming import bracket_place, opening_name
from elevation.handles.context import (
    Context,
    Dressed,
    Family,
    HoldFigure,
    Scale,
    dressed_layers,
    dressed_of,
    make,
    place_of,
)
from elevation.handles.model import Handle
from elevation.handles.neat_span import neat_places
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import move_bracket
from elevation.room.model import Held, Ref, Room
from elevation.setting_out.model import BracketOut
from elevation.units import Length
from elevation.words import Message, msg

AXIS = "bracket"

SHOWN_AS: dict[str, Message] = {
    "from-left-end": msg("inside the left end"),
    "from-right-end": msg("inside the right end"),
    "from-centre": msg("right of the rod's middle"),
    "from-wall-left": msg("from the wall's left end"),
}


def sign_of(hold: str) -> int:
    """Whether the figure grows to the right (1) or to the left (-1)."""
    return -1 if hold == "from-right-end" else 1


def hold_place(ref: Ref, hold: str, is_end: bool) -> HoldFigure:
    """Writes the place of the bracket at ``ref``; where it is the first or last (``is_end``) their reading goes."""

    def write(room: Room, figure: Length, _alone: bool) -> Room:
        return move_bracket(room, ref, Held(hold, figure), is_end=is_end)  # type: ignore[arg-type]

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        support = dressed.landed.support
        places = {bracket.id: bracket.place for bracket in dressed.layer.brackets}
        in_order = _in_order(dressed)
        for order, bracket in enumerate(in_order):
            held = places[bracket.ref[-1]]
            sign = sign_of(held.hold)
            yield make(
                AXIS,
                bracket.ref,
                (bracket.x_mm, bracket.height_mm),
                "x",
                bracket.x_mm,
                (support.left_mm, support.right_mm),
                Scale(bracket.x_mm - bracket.shift_mm - sign * held.at.mm, sign),
                held.at,
                hold_place(bracket.ref, held.hold, order in (0, len(in_order) - 1)),
                msg("{bracket}, {where}", bracket=bracket_place(order, len(in_order)), where=place_of(dressed)),
                SHOWN_AS[held.hold],
                low_why=msg("the rod's left end"),
                high_why=msg("the rod's right end"),
            )


def _in_order(dressed: Dressed) -> list[BracketOut]:
    return sorted(dressed.landed.brackets, key=lambda bracket: bracket.x_mm)


def _places(handle: Handle, context: Context, alone: bool) -> Iterable[Sticking]:
    dressed = dressed_of(context, handle)
    for value_mm, reason, rank in (*_neighbours(handle, context, dressed), *_proportions(handle, dressed)):
        yield Sticking(handle.axis, handle.ref, value_mm, reason, rank)
    yield from neat_places(handle, context, dressed, alone)


def _neighbours(handle: Handle, context: Context, dressed: Dressed) -> Iterable[tuple[float, Message, int]]:
    for other in dressed_layers(context):
        if other.landed.ref == dressed.landed.ref or other.landed.ref[:3] != handle.ref[:3]:
            continue
        for bracket in other.landed.brackets:
            yield bracket.x_mm, msg("in line with a bracket of the other rod"), NEIGHBOUR


def _proportions(handle: Handle, dressed: Dressed) -> Iterable[tuple[float, Message, int]]:
    support = dressed.landed.support
    yield (support.left_mm + support.right_mm) / 2, msg("the middle of the rod"), PROPORTION
    in_order = _in_order(dressed)
    if len(in_order) > 1:
        first, last = in_order[0], in_order[-1]
        if handle.ref == first.ref:
            value_mm = support.left_mm + support.right_mm - last.x_mm
            yield value_mm, msg("as far in as the right end bracket"), PROPORTION
        if handle.ref == last.ref:
            value_mm = support.left_mm + support.right_mm - first.x_mm
            yield value_mm, msg("as far in as the left end bracket"), PROPORTION
    openings = dressed.landed_treatment.openings
    for opening in openings:
        middle_mm = (opening.left_mm + opening.right_mm) / 2
        yield middle_mm, msg("over the middle of {opening}", opening=opening_name(opening)), PROPORTION
    for left, right in pairwise(openings):
        middle_mm = (left.right_mm + right.left_mm) / 2
        reason = msg("half way between {left} and {right}", left=opening_name(left), right=opening_name(right))
        yield middle_mm, reason, PROPORTION


FAMILY = Family(frozenset({AXIS}), _handles, _places)
