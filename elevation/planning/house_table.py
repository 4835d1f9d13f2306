"""The schedule of windows as a table for other programs: a cell that is a number holds nothing else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from elevation.findings.naming import opening_name, where
from elevation.planning.dressed import Dressed
from elevation.planning.house_schedule import HouseRow, HouseSchedule
from elevation.words import Style, msg, say

HEADS = (
    msg("No."),
    msg("Room"),
    msg("Wall"),
    msg("Opening"),
    msg("Treatment"),
    msg("Unit"),
    msg("Width"),
    msg("Height"),
    msg("Rod, length"),
    msg("Rod, height"),
    msg("Brackets"),
    msg("Panels"),
    msg("Flat width"),
    msg("Length"),
    msg("Stops"),
    msg("Broken"),
    msg("To consider"),
)
"""Columns of the table."""
_MM_OF = {"in": 25.4, "mm": 1.0}


def schedule_rows(rooms: Sequence[Dressed], schedule: HouseSchedule, style: Style) -> Iterator[tuple[str, ...]]:
    """The schedule, its head first: a row an opening and rod; what is not there or not known is an empty cell.

    Lengths are numbers in the unit of their room, which stands beside them.

    Parameters
    ----------
    rooms : sequence of Dressed
    schedule : HouseSchedule
        Of these rooms.
    style : Style
        Of the words.
    """
    yield tuple(say(head, style) for head in HEADS)
    for row in schedule.rows:
        yield from _of_row(rooms[row.room], row, style)


def _of_row(dressed: Dressed, row: HouseRow, style: Style) -> Iterator[tuple[str, ...]]:
    unit = dressed.room.unit

    def number(mm: float | None) -> str:
        return "" if mm is None else f"{mm / _MM_OF[unit]:.4f}".rstrip("0").rstrip(".")

    laid = row.laid
    name = "" if laid is None else laid.name or say(where(laid), style)
    layers = () if laid is None else laid.layers
    for at in range(max(len(row.openings), len(layers), 1)):
        opening = row.openings[at] if at < len(row.openings) else None
        layer = layers[at] if at < len(layers) else None
        panel = layer.panels[0] if layer is not None and layer.panels else None
        yield (
            str(row.numbers[at]) if opening is not None else "",
            dressed.room.name,
            row.wall.wall_name or row.wall.wall,
            "" if opening is None else say(opening_name(opening), style),
            name,
            unit,
            number(None if opening is None else opening.right_mm - opening.left_mm),
            number(None if opening is None else opening.top_mm - opening.bottom_mm),
            number(None if layer is None else layer.support.length_mm),
            number(None if layer is None else layer.support.height_mm),
            "" if layer is None else str(len(layer.brackets)),
            "" if layer is None else str(sum(one.count for one in layer.panels)),
            number(None if panel is None else panel.flat_width_mm),
            number(None if panel is None else panel.finished_length_mm),
            *((str(count) for count in row.found) if at == 0 else ("", "", "")),
        )
