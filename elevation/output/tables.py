"""Tables for other programs and for plain eyes: CSV of which no cell is taken for a formula, and text in columns."""

from __future__ import annotations

import csv
import io
import textwrap
from collections.abc import Sequence

_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""What makes a table program take a cell for a formula: the signs, their wide forms, and what it may skip before them.

https://owasp.org/www-community/attacks/CSV_Injection
"""
_MOST_WIDE = 44
"""Text columns break their cells beyond so many characters."""


def to_csv(rows: Sequence[Sequence[str]]) -> bytes:
    """Rows as CSV after RFC 4180, in UTF-8 with a byte-order mark so that table programs read umlauts.

    A cell that a program would take for a formula gets an apostrophe before it.
    """
    out = io.StringIO()
    csv.writer(out, lineterminator="\r\n").writerows([_safe(cell) for cell in row] for row in rows)
    return out.getvalue().encode("utf-8-sig")


def _safe(cell: str) -> str:
    return "'" + cell if cell.lstrip(" ").startswith(_STARTS) else cell


def to_text(rows: Sequence[Sequence[str]]) -> bytes:
    """Rows as lines in columns, the first one underlined; long cells go on below; columns without a word are left out.

    Parameters
    ----------
    rows : sequence of sequence of str
        As many cells in each; the head first.
    """
    if not rows:
        return b""
    kept = [at for at in range(len(rows[0])) if any(row[at] for row in rows[1:])]
    # Tabs and ends of lines would break the columns.
    broken = [[_lines(" ".join(row[at].split())) for at in kept] for row in rows]
    widths = [max(len(line) for row in broken for line in row[at]) for at in range(len(kept))]
    lines: list[str] = []
    for number, row in enumerate(broken):
        for nth in range(max(len(cell) for cell in row)):
            cells = (cell[nth] if nth < len(cell) else "" for cell in row)
            lines.append("  ".join(text.ljust(wide) for text, wide in zip(cells, widths, strict=True)).rstrip())
        if number == 0:
            lines.append("  ".join("-" * wide for wide in widths))
    return ("\n".join(lines) + "\n").encode("utf-8")


def _lines(cell: str) -> list[str]:
    return textwrap.wrap(cell, _MOST_WIDE) or [""]
