"""The table of a wall's openings on the measuring sheet: a column an opening, a row a measurement."""

from __future__ import annotations

from elevation.room.model import Ref, Wall
from elevation.sheet.furniture import Inside
from elevation.sheet.measuring_lines import Figures, Numbers, blank, small_blank, title_record, words_record
from elevation.sheet.records import Ink, Record, Text
from elevation.words import Message, Style, msg, say

LABEL = 52.0
"""Width of the words before the columns, in mm."""

_SIDE_BY_SIDE = 33.0
"""In a column as wide as this three readings have room beside each other to be written by hand."""

_Row = tuple[tuple[str, ...], Message]

_ROWS: tuple[_Row, ...] = (
    (("gap", "left"), msg("from the casing (or wall end) before it")),
    (("casing",), msg("width of its casing, one side")),
    (("width",), msg("width between the jambs")),
    (("sill",), msg("floor to sill")),
    (("height",), msg("sill (or floor) to head")),
    (("head.rise",), msg("rise of the arch")),
    (("head.right_height",), msg("height at the right side")),
    (("reveal",), msg("depth of the reveal")),
    (("frame",), msg("opening to glass")),
    (("stool.thickness",), msg("stool: thickness")),
    (("stool.horn",), msg("stool: past the casing")),
    (("stool.projection",), msg("stool: out from the wall")),
    (("apron",), msg("height of the apron")),
    (("sash.handle_out",), msg("handle out from the wall")),
    (("sash.handle_stands",), msg("handle out from the sash")),
)

# Rows of readings by the row that they stand under; side by side, or each by itself where columns are narrow.
_READ: dict[str, tuple[_Row, ...]] = {
    "width": ((("taken.width_top", "taken.width_middle", "taken.width_bottom"), msg("widths: a top, b middle, c bottom")),),
    "height": (
        (("taken.height_left", "taken.height_middle", "taken.height_right"), msg("heights: a left, b middle, c right")),
        (("taken.diagonal_rising", "taken.diagonal_falling"), msg("diagonals: d up to the right, e down")),
    ),
}
_ONE: dict[str, Message] = {
    "taken.width_top": msg("width at the top"),
    "taken.width_middle": msg("width in the middle"),
    "taken.width_bottom": msg("width at the bottom"),
    "taken.height_left": msg("height at the left"),
    "taken.height_middle": msg("height in the middle"),
    "taken.height_right": msg("height at the right"),
    "taken.diagonal_rising": msg("diagonal up to the right"),
    "taken.diagonal_falling": msg("diagonal down to the right"),
}


def cell_width(place: Inside, count: int) -> float:
    """Width of a column, in mm."""
    return min(44.0 if count > 2 else 56.0, (place.right - place.left - LABEL) / max(1, count))


def rows_of(wall: Wall, numbers: Numbers, cell: float) -> list[_Row]:
    """The rows that at least one opening has, in columns ``cell`` mm wide."""
    refs = [(wall.id, opening.id) for opening in wall.openings]
    found: list[_Row] = []
    for row in _ROWS:
        if not any((ref, field) in numbers for ref in refs for field in row[0]):
            continue
        found.append(row)
        for names, words in _READ.get(row[0][0], ()):
            if cell >= _SIDE_BY_SIDE:
                found.append((names, words))
            else:
                found.extend(((name,), _ONE[name]) for name in names)
    return found


def openings_table(
    wall: Wall, numbers: Numbers, figures: Figures, place: Inside, height: float, style: Style
) -> list[Record]:
    """The table inside ``place``, its rows ``height`` mm apart."""
    left = place.left
    step = cell_width(place, len(wall.openings))
    size = min(3.1, height * 0.62)
    y = place.top - 7.6
    records: list[Record] = [title_record(say(msg("Openings"), style), left, y)]
    records.extend(title_record(str(index + 1), left + LABEL + index * step, y) for index in range(len(wall.openings)))
    y -= 1.4
    for names, words in rows_of(wall, numbers, step):
        y -= height
        records.append(words_record(say(words, style), left, y, size, LABEL - 2.0))
        for index, opening in enumerate(wall.openings):
            ref = (wall.id, opening.id)
            x = left + LABEL + index * step
            if names[0].startswith("taken."):
                records.extend(_readings(ref, names, numbers, figures, (x, x + step - 2.5), y, size))
                continue
            name = next((name for name in names if (ref, name) in numbers), None)
            if name is not None:
                records.extend(blank(numbers[ref, name], x, x + step - 2.5, y, size, figures.get((ref, name), "")))
            else:
                records.append(Text((x, y), "–", size, Ink.QUIET))
    return records


def _readings(
    ref: Ref,
    names: tuple[str, ...],
    numbers: Numbers,
    figures: Figures,
    span: tuple[float, float],
    y: float,
    size: float,
) -> list[Record]:
    """Several readings of one opening beside each other; one alone has its whole number."""
    left, right = span
    if len(names) == 1:
        return blank(numbers[ref, names[0]], left, right, y, size, figures.get((ref, names[0]), ""))
    each = (right - left + 1.2) / len(names)
    records: list[Record] = []
    for index, name in enumerate(names):
        x = left + index * each
        letter = numbers[ref, name].lstrip("0123456789")
        records.extend(small_blank(letter, x, x + each - 1.2, y, size, figures.get((ref, name), "")))
    return records
