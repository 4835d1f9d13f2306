"""Blocks of text for the margin: measured, broken into lines, and flowed through columns. Paper mm, y up."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.sheet.records import Ink, Record, Text
from elevation.sheet.type_metrics import shorten, wrap

LABEL = 2.8
BODY = 3.3
HEADING = 3.7
NOTE = 2.8
_LEADING = 1.28


class Run(Struct, frozen=True, gc=False):
    """One line of text in a block: distances from its upper left corner to the baseline."""

    right: float
    down: float
    text: str
    size: float
    ink: str = Ink.TEXT
    weight: str = "regular"


class Block(Struct, frozen=True):
    """What moves through the columns as one.

    Attributes
    ----------
    height : float
        With the space under it.
    runs : tuple of Run
    mark : tuple of (Weight, int) or None
        A finding's mark at its left.
    sticks : bool
        A heading: never the last in a column.
    """

    height: float
    runs: tuple[Run, ...]
    mark: tuple[str, int] | None = None
    sticks: bool = False


class Column(Struct, frozen=True, gc=False):
    """A column on the sheet."""

    left: float
    top: float
    width: float
    height: float


class Placed(Struct, frozen=True):
    """A block and its upper left corner."""

    block: Block
    left: float
    top: float


def heading(text: str, width: float) -> Block:
    """A heading over blocks."""
    line = shorten(text, HEADING, width, "semibold")
    return Block(HEADING * 1.55 + 0.8, (Run(0.0, HEADING * 1.05, line, HEADING, Ink.TEXT, "semibold"),), sticks=True)


def fact(label: str, value: str, width: float) -> Block:
    """A quiet label and its value under it."""
    runs = [Run(0.0, LABEL, shorten(label, LABEL, width), LABEL, Ink.QUIET)]
    down = LABEL + 0.6
    for line in wrap(value, BODY, width):
        down += BODY * 1.05
        runs.append(Run(0.0, down, line, BODY))
        down += BODY * (_LEADING - 1.05)
    return Block(down + 1.3, tuple(runs))


def paragraph(text: str, width: float, size: float = NOTE, ink: str = Ink.TEXT) -> Block:
    """Plain lines."""
    runs = []
    down = 0.0
    for line in wrap(text, size, width):
        down += size
        runs.append(Run(0.0, down, line, size, ink))
        down += size * (_LEADING - 1.0)
    return Block(down + 1.2, tuple(runs))


def finding_block(weight: str, number: int, word: str, text: str, authority: str, width: float, caution: str = "") -> Block:
    """A finding: its mark, the word for its weight with the sentence, who says so, and what to beware of in the act."""
    indent = 8.4
    runs = []
    down = 0.0
    for line in wrap(f"{word}: {text}", BODY, width - indent):
        down += BODY
        runs.append(Run(indent, down, line, BODY))
        down += BODY * (_LEADING - 1.0)
    for quiet, ink in ((authority, Ink.QUIET), (caution, Ink.TEXT)):
        for line in wrap(quiet, NOTE, width - indent) if quiet else ():
            down += NOTE
            runs.append(Run(indent, down, line, NOTE, ink))
            down += NOTE * (_LEADING - 1.0)
    return Block(max(down, 6.2) + 1.6, tuple(runs), mark=(weight, number))


def key_rows(keys: Sequence[tuple[str, str]], width: float) -> tuple[Block, ...]:
    """The key table: letters and figures, as many side by side as the column holds."""
    across = max(1, int(width // 21.0))
    step = width / across
    rows = []
    for start in range(0, len(keys), across):
        runs: list[Run] = []
        for place, (letter, figure) in enumerate(keys[start : start + across]):
            runs.append(Run(place * step, BODY, letter, BODY, Ink.TEXT, "semibold"))
            runs.append(Run(place * step + 6.0, BODY, shorten(figure, BODY, step - 7.0), BODY))
        rows.append(Block(BODY * 1.45, tuple(runs)))
    return tuple(rows)


def flow(blocks: Sequence[Block], columns: Sequence[Column]) -> tuple[Placed, ...] | None:
    """The blocks one under the other through the columns, the columns filled alike; None where they do not fit."""
    full = _flow(blocks, columns, 1e9)
    if full is None or len(columns) == 1:
        return full
    low, high = 0.0, max(column.height for column in columns)
    for _ in range(12):
        middle = (low + high) / 2
        even = _flow(blocks, columns, middle)
        if even is None:
            low = middle
        else:
            full, high = even, middle
    return full


def _flow(blocks: Sequence[Block], columns: Sequence[Column], most: float) -> tuple[Placed, ...] | None:
    placed: list[Placed] = []
    index, used = 0, 0.0
    for place, block in enumerate(blocks):
        need = block.height
        if block.sticks and place + 1 < len(blocks):
            need += blocks[place + 1].height
        while index < len(columns) and used + need > min(columns[index].height, most) + 1e-6:
            index, used = index + 1, 0.0
        if index == len(columns):
            return None
        column = columns[index]
        placed.append(Placed(block, column.left, column.top - used))
        used += block.height
    return tuple(placed)


def text_records(placed: Sequence[Placed]) -> tuple[Record, ...]:
    """The texts of placed blocks."""
    return tuple(
        Text((item.left + run.right, item.top - run.down), run.text, run.size, run.ink, "left", 0.0, run.weight)  # type: ignore[arg-type]
        for item in placed
        for run in item.block.runs
    )
