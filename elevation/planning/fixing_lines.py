"""Which screw or anchor goes into which bracket's holes, with which drill and how deep."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from elevation.errors import BadInput
from elevation.planning.drilling import DrillPlace
from elevation.setting_out.model import TreatmentOut
from elevation.trade import cells
from elevation.trade.drills import drill_for
from elevation.trade.model import FixingRow, Trade
from elevation.words import Message, Mm, msg, term

_PACKET, _NO_HOLE = "as its packet says", "none"
"""Words of the table of fixings where no drill is named."""


def fixing_lines(
    laid: TreatmentOut, places: Sequence[DrillPlace], trade: Trade, unit: Literal["in", "mm"]
) -> tuple[Message, ...]:
    """A line for each fixing, with the brackets that it holds; those whose fixing nobody knows yet have none.

    Parameters
    ----------
    laid : TreatmentOut
    places : sequence of DrillPlace
        Its brackets.
    trade : Trade
    unit : {"in", "mm"}
        Whose drills are in hand.
    """
    chosen = {bracket.ref: bracket.fixing for layer in laid.layers for bracket in layer.brackets}
    marks: dict[str, list[str]] = {}
    for place in places:
        marks.setdefault(chosen.get(place.ref, ""), []).append(place.mark)
    return tuple(
        _line(row, ", ".join(which), _drill(row, trade, unit))
        for key, which in marks.items()
        for row in [trade.fixings.get(key)]
        if row is not None
    )


def _drill(row: FixingRow, trade: Trade, unit: Literal["in", "mm"]) -> str | Message:
    """The drill that a fixing asks for; beside it the one to take where the set in hand has none of its size."""
    try:
        hole_mm = cells.length(row.drill)
    except BadInput:
        return row.drill
    same_mm = trade.limits["drill-same"].value
    found = drill_for(hole_mm, is_pilot=row.into == "wood", market=unit, same_mm=same_mm, drills=trade.drills.values())
    if found is None or found.name == row.drill:
        return row.drill
    return msg("{hole} (of your drills: {drill})", hole=row.drill, drill=term(found.name))


def _line(row: FixingRow, marks: str, drill: str | Message) -> Message:
    name = term(row.name)
    if row.drill == _PACKET:
        return msg("{marks}: {fixing}; drill and depth as its packet says", marks=marks, fixing=name)
    if row.drill == _NO_HOLE:
        return msg("{marks}: {fixing}, driven without a hole", marks=marks, fixing=name)
    if row.into == "wood" and row.length_mm > 0:
        return msg(
            "{marks}: {fixing}; drill {drill}, depth stop at {depth} at most",
            marks=marks,
            fixing=name,
            drill=drill,
            depth=Mm(row.length_mm, about=True),
        )
    return msg("{marks}: {fixing}; drill {drill}, as deep as its packet says", marks=marks, fixing=name, drill=drill)
