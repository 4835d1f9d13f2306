"""Running marks of a heading as tables that are read down, figures large enough for arm's length."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.sewing.model import Marks
from elevation.planning.sewing.said import KIND_NAMES, mark_rows
from elevation.sheet.work.page import Part
from elevation.sheet.work.parts import BODY, SMALL, TableColumn, paragraph, table
from elevation.words import Message, Mm, Style, msg, say


class Fit(Struct, frozen=True):
    """How a page is made to hold what is on it: how high drawings are, and whether long tables are set small."""

    high: float
    is_small: bool = False


_MANY = 16
"""Marks up to so many are always set large."""


def marks_parts(marks: Marks, panels: Sequence[Message], width: float, style: Style, fit: Fit) -> list[Part]:
    """The marks of panels that are marked alike; nothing where there are none.

    Parameters
    ----------
    marks : Marks
    panels : sequence of Message
        The marks of those panels.
    width : float
    style : Style
    fit : Fit
    """
    if marks.kind == "pocket" or (marks.pleats is None and not marks.flat):
        return []
    names = ", ".join(say(name, style) for name in panels)
    return [
        paragraph(_marks_title(marks, names, style), width, BODY, sticks=True),
        *_blocks(marks, mark_rows(marks, style), width, style, fit),
    ]


def _marks_title(marks: Marks, panels: str, style: Style) -> str:
    name = KIND_NAMES[marks.kind]
    if marks.pleats is not None:
        text = msg(
            "{what} of {panels} from the leading edge, panel flat and hemmed: each takes up {pleat}, {space} between.",
            what=name,
            panels=panels,
            pleat=Mm(marks.pleats.take_up_mm, about=True),
            space=Mm(marks.pleats.space_mm, about=True),
        )
    elif len(marks.flat) > 1:
        text = msg(
            "{what} of {panels} from the leading edge, panel flat and hemmed: {apart} apart.",
            what=name,
            panels=panels,
            apart=Mm(marks.flat[1] - marks.flat[0], about=True),
        )
    else:
        text = msg("{what} of {panels} from the leading edge, panel flat and hemmed.", what=name, panels=panels)
    return say(text, style)


def _blocks(marks: Marks, rows: Sequence[tuple[str, ...]], width: float, style: Style, fit: Fit) -> tuple[Part, ...]:
    """Marks in columns beside each other, read down."""
    heads: tuple[tuple[Message, float], ...]
    if marks.pleats is not None:
        heads = ((msg("Pleat"), 1.3), (msg("From"), 2.0), (msg("To"), 2.0), (msg("hook, finished"), 2.2))
        across = 2
    else:
        heads = ((msg("No."), 1.0), (msg("at"), 2.2))
        across = 5
    across = min(across, max(1, len(rows)))
    high = -(-len(rows) // across)
    columns: list[TableColumn] = []
    for block in range(across):
        if block:
            columns.append(TableColumn("", 0.5))
        columns.extend(
            TableColumn(say(head, style), share, "left" if at == 0 else "right") for at, (head, share) in enumerate(heads)
        )
    blank = ("",) * len(heads)
    lines = []
    for line in range(high):
        cells: list[str] = []
        for block in range(across):
            at = block * high + line
            cells += ["", *(rows[at] if at < len(rows) else blank)] if block else rows[at]
        lines.append(cells)
    return table(columns, lines, width, SMALL if fit.is_small and len(rows) > _MANY else BODY)
