"""Brackets that are made at the bench: their parts cut to length, and the flat bars that these come from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from elevation.findings.naming import where
from elevation.planning.cutting.model import CutPlan, Piece, Stock
from elevation.planning.cutting.whole import cut
from elevation.planning.dressed import Dressed
from elevation.room.model import Ref
from elevation.trade.model import BracketPartRow, BracketRow, FlatRow, SawRow, Trade
from elevation.trade.tables import row_of
from elevation.units import length_of
from elevation.words import Message, msg, msg_plural

GRAIN_MM = 25.4 / 64
NONE = "none"
"""Stands in the table for a part that is cut from nothing."""


class MadePart(Struct, frozen=True):
    """A part: its row, how long it is cut (0: it is counted), and how many of it all brackets of the kind take."""

    row: BracketPartRow
    length_mm: float
    count: int


class MadeBrackets(Struct, frozen=True):
    """Brackets that are alike: kit, way from plate to rod's axis, rod's diameter, how many, for what, of which parts.

    ``of`` says how many of them each treatment has, by the number of its room and its Ref.
    """

    kit: BracketRow
    arm_mm: float
    diameter_mm: float
    count: int
    uses: tuple[Message, ...]
    parts: tuple[MadePart, ...]
    of: Mapping[tuple[int, Ref], int]


class FlatCut(Struct, frozen=True):
    """A flat bar and how it is parted."""

    flat: FlatRow
    plan: CutPlan


def made_brackets(rooms: Sequence[Dressed], trade: Trade) -> tuple[MadeBrackets, ...]:
    """All brackets of rooms that are made, alike ones together; those that hang there already are left out.

    Parameters
    ----------
    rooms : sequence of Dressed
    trade : Trade
    """
    kinds: dict[tuple[str, float, float], dict[tuple[int, Ref], tuple[Message, int]]] = {}
    kits = kits_made(trade)
    for at, dressed in enumerate(rooms):
        room = dressed.room
        for wall in dressed.walls:
            for laid in wall.treatments:
                for layer in laid.layers:
                    board = 0.0 if layer.board is None else layer.board.thick_mm
                    arm = length_of(layer.support.projection_mm - board, room.unit, room.graduation_mm).mm
                    for bracket in layer.brackets:
                        if bracket.kit in kits and not bracket.is_there:
                            uses = kinds.setdefault((bracket.kit, arm, layer.support.diameter_mm), {})
                            name = msg("{name}", name=laid.name) if laid.name else where(laid)
                            name = msg("{wall}, {window}", wall=wall.wall_name or wall.wall, window=name)
                            if len(rooms) > 1 and room.name:
                                name = msg("{room}, {place}", room=room.name, place=name)
                            before = uses.get((at, laid.ref), (name, 0))[1]
                            uses[at, laid.ref] = (name, before + 1)
    return tuple(_made(key, uses, trade) for key, uses in kinds.items())


def kits_made(trade: Trade) -> frozenset[str]:
    """The kits that are made of parts."""
    return frozenset(part.kit for part in trade.bracket_parts.values())


def _made(key: tuple[str, float, float], uses: Mapping[tuple[int, Ref], tuple[Message, int]], trade: Trade) -> MadeBrackets:
    kit, arm, diameter = key
    count = sum(many for _, many in uses.values())
    parts = tuple(
        MadePart(
            row,
            0.0 if row.flat == NONE else row.fixed_mm + row.projections * max(arm, 0.0) + row.diameters * diameter,
            row.count * count,
        )
        for row in trade.bracket_parts.values()
        if row.kit == kit
    )
    of = {place: many for place, (_, many) in uses.items()}
    said = tuple(
        msg_plural("{count} for {place}", "{count} for {place}", count=many, place=name) for name, many in uses.values()
    )
    return MadeBrackets(row_of(trade.brackets, kit, "bracket kit"), arm, diameter, count, said, parts, of)


def flat_cuts(made: Sequence[MadeBrackets], saw: SawRow, trade: Trade) -> tuple[FlatCut, ...]:
    """The flat bars of these brackets, each parted at once: pieces are short, so the best of all is hardly better.

    Parameters
    ----------
    made : sequence of MadeBrackets
    saw : SawRow
        Its kerf counts.
    trade : Trade
    """
    wanted: dict[str, list[Piece]] = {}
    for brackets in made:
        for part in brackets.parts:
            if part.length_mm > 0:
                wanted.setdefault(part.row.flat, []).extend(Piece(part.row.id, part.length_mm) for _ in range(part.count))
    found = []
    for key, pieces in wanted.items():
        flat = row_of(trade.flats, key, "flat bar")
        found.append(FlatCut(flat, cut(pieces, [Stock(key, flat.stock_mm)], saw.kerf_mm, GRAIN_MM, seconds=0.0)))
    return tuple(found)
