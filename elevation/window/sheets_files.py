"""What a sheet can be written as beside pages: a table, a file for a cutting machine."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial

from elevation.errors import Missing
from elevation.planning.dressed import Dressed
from elevation.planning.plate import Plate
from elevation.sheet.work.whole import TO_CUT, WORK_TABLES
from elevation.trade.model import Trade
from elevation.words import Message, msg

Writer = Callable[[], bytes]

_FILTERS: dict[str, Message] = {
    ".pdf": msg("PDF to print (*.pdf)"),
    ".svg": msg("Drawing for editing (*.svg)"),
    ".png": msg("Picture (*.png)"),
    ".csv": msg("Table for other programs (*.csv)"),
    ".txt": msg("Table as text (*.txt)"),
    ".dxf": msg("DXF for a cutting machine (*.dxf)"),
}
_SVG_TO_CUT = msg("SVG for a cutting machine (*.svg)")


def other_writers(name: str, rooms: Sequence[Dressed], trade: Trade) -> Mapping[str, Writer]:
    """By the file's ending, what makes a sheet's table or file for a cutting machine; empty where it has none.

    Parameters
    ----------
    name : str
        The sheet's.
    rooms : sequence of Dressed
    trade : Trade
    """
    found: dict[str, Writer] = {}
    if name in TO_CUT:
        try:
            plates = TO_CUT[name](rooms, trade)
        except Missing:
            return {}  # its page says why
        found |= {".dxf": partial(_dxf, plates), ".svg": partial(_svg, plates)}
    if name in WORK_TABLES:
        found |= {".csv": partial(_table, name, rooms, trade, True), ".txt": partial(_table, name, rooms, trade, False)}
    return found


def _table(name: str, rooms: Sequence[Dressed], trade: Trade, is_csv: bool) -> bytes:
    from elevation.output.tables import to_csv, to_text

    return (to_csv if is_csv else to_text)(WORK_TABLES[name](rooms, trade))


def _dxf(plates: Sequence[Plate]) -> bytes:
    from elevation.output.cutting_files import to_dxf

    return to_dxf(plates)


def _svg(plates: Sequence[Plate]) -> bytes:
    from elevation.output.cutting_files import to_cutting_svg

    return to_cutting_svg(plates)


def filters_of(others: Mapping[str, Writer]) -> tuple[Message, ...]:
    """What the dialog that asks for a file offers, the pages' own kinds first."""
    kinds = dict(_FILTERS)
    if ".svg" in others:
        kinds[".svg"] = _SVG_TO_CUT
    return tuple(text for ending, text in kinds.items() if ending in (".pdf", ".svg", ".png") or ending in others)
