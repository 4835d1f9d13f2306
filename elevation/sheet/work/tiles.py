"""Drilling tiles: from the casing's corner to a bracket's holes at true size, on sheets that are laid over each other.

Made only where they are asked for: every seam between two sheets is an error that a tape does not make.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from elevation.planning.tiles import MOST_SHEETS, OVERLAP_MM, Box, Tiling, tiles_of
from elevation.setting_out.model import Point
from elevation.sheet.paths import circle, rectangle
from elevation.sheet.records import Fill, Group, Ink, Line, Path, Pen, Picture, Record, Text
from elevation.sheet.type_metrics import shorten, text_width, wrap
from elevation.sheet.work.drilling_figures import figure_lines
from elevation.sheet.work.page import MARGIN, WHITE, Head, Sheet, head_records
from elevation.sheet.work.parts import SMALL, paragraph
from elevation.sheet.work.true_size import AXIS, CROSS, LINE, PLATE, WIDE, bar_along
from elevation.words import Message, Style, msg, msg_plural, say, term

_CASING = Pen(Ink.ACCENT, 0.5)
_EDGE = Pen(Ink.THIN, 0.18, (1.0, 1.6))
_HEAD, _FOOT = 46.0, 30.0


def tile_sheets(tilings: Sequence[Tiling], sheet: Sheet) -> tuple[Picture, ...]:
    """The sheets of one treatment.

    Parameters
    ----------
    tilings : sequence of Tiling
    sheet : Sheet

    Returns
    -------
    tuple of Picture
        True size; a page that says so in place of a bracket that stands too far from the corner.
    """
    return tuple(one for tiling in tilings for one in _of_bracket(tiling, sheet))


def _of_bracket(tiling: Tiling, sheet: Sheet) -> Iterator[Picture]:
    style = sheet.style
    wide, high = sheet.width, sheet.page.height_mm - _HEAD - _FOOT
    # The bracket's plate is whole on one sheet: it stands at the end away from the corner.
    tiles = tiles_of(tiling.box, wide, high, from_right=tiling.place.x_mm > tiling.corner[0])
    title = msg("Drilling tiles: bracket {mark}", mark=tiling.place.mark)
    if len(tiles) > MOST_SHEETS:
        text = say(
            msg(
                "Bracket {mark} stands too far from the casing's corner: {count} sheets would add up their errors. "
                "Mark it by these figures:",
                mark=tiling.place.mark,
                count=len(tiles),
            ),
            style,
        )
        parts = [paragraph(text, wide), *(paragraph(line, wide) for line in figure_lines(tiling.place, style))]
        yield from sheet.lay(title, parts)
        return
    for name, box in tiles:
        yield _sheet(tiling, name, box, tiles, say(title, style), sheet)


def _sheet(tiling: Tiling, name: str, box: Box, tiles: Sequence[tuple[str, Box]], title: str, sheet: Sheet) -> Picture:
    style, page = sheet.style, sheet.page
    left, right = MARGIN, page.width_mm - MARGIN
    count = msg_plural("sheet {name} of {count}", "sheet {name} of {count}", count=len(tiles), name=name)
    head = f"{title} · {say(count, style)}"
    records: list[Record] = [
        Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), WHITE),
        *head_records(Head(head, sheet.subject), left, right, page.height_mm - 14.0, sheet.day),
    ]
    how = say(_how(tiling, len(tiles)), style)
    for number, line in enumerate(wrap(how, SMALL, right - left)[:3]):
        records.append(Text((left, page.height_mm - 31.5 - SMALL - number * SMALL * 1.25), line, SMALL))
    records.extend(_drawn(tiling, box, (left - box[0], _FOOT - box[1]), style))
    records.extend(_seams(name, box, tiles, (left, _FOOT)))
    records.extend(bar_along(tiling.place, left, style))
    label = shorten(f"{head} · {sheet.subject}", 3.0, right - left)
    group = Group(tiling.place.ref, "sheet", title, tuple(records), "paper")
    return Picture((group,), 1.0, (0.0, 0.0), page, label, f"{head}. {how}")


def _how(tiling: Tiling, count: int) -> Message:
    kit = term(tiling.place.kit.name)
    if count == 1:
        return msg(
            "{kit}. Print at 100 percent. Lay the drawn corner on the casing's, the thick line level; prick through.",
            kit=kit,
        )
    return msg(
        "{kit}. Print at 100 percent. Cut each sheet at its dotted lines on the right and above, lay it on the next so "
        "that the small crosses meet, tape. Then lay the drawn corner on the casing's, the thick line level; "
        "prick through.",
        kit=kit,
    )


def _drawn(tiling: Tiling, box: Box, move: Point, style: Style) -> Iterator[Record]:
    """What of the drawing one sheet shows, moved to its place on it."""
    place = tiling.place
    x, y = place.x_mm, place.height_mm
    corner_x, corner_y = tiling.corner
    half = place.kit.plate_width_mm / 2
    low, high = y - place.kit.plate_below_mm, y + place.kit.plate_above_mm
    left, bottom, right, top = tiling.box
    lines = [
        ((left, y), (right, y), WIDE),
        ((x, bottom), (x, top), AXIS),
        ((x - half, low), (x + half, low), PLATE),
        ((x + half, low), (x + half, high), PLATE),
        ((x - half, high), (x + half, high), PLATE),
        ((x - half, low), (x - half, high), PLATE),
        # The casing goes on from its corner along its head and down its side.
        ((corner_x, corner_y), (right if tiling.inward > 0 else left, corner_y), _CASING),
        ((corner_x, bottom), (corner_x, corner_y), _CASING),
    ]
    for a, b, pen in lines:
        cut = _clipped(a, b, box)
        if cut is not None:
            yield Line(_moved(cut[0], move), _moved(cut[1], move), pen)
    for hole in place.holes:
        if _is_inside(hole, box, CROSS):
            at_x, at_y = _moved(hole, move)
            yield Line((at_x - CROSS, at_y), (at_x + CROSS, at_y), LINE)
            yield Line((at_x, at_y - CROSS), (at_x, at_y + CROSS), LINE)
            yield Path(circle(at_x, at_y, 2.5), LINE)
    word = say(msg("level"), style)
    wide = text_width(word, SMALL, "semibold")
    # Clear of the plate: before it, or beyond it.
    for start in (max(left, box[0]) + 2.0, x + half + 3.0):
        meets = start < x + half + 1.0 and start + wide > x - half - 1.0
        if not meets and _is_inside((start, y + 1.4 + SMALL), box, 0.0) and start + wide < min(right, box[2]):
            yield Text(_moved((start, y + 1.4), move), word, SMALL, weight="semibold")
            break


def _seams(name: str, box: Box, tiles: Sequence[tuple[str, Box]], at: Point) -> Iterator[Record]:
    """Dotted lines where a sheet is cut off, and crosses that meet those of its neighbours."""
    wide, high = box[2] - box[0], box[3] - box[1]
    others = [other for other_name, other in tiles if other_name != name]
    left, bottom = at
    seam_right = any(other[0] > box[0] and other[1] == box[1] for other in others)
    seam_left = any(other[0] < box[0] and other[1] == box[1] for other in others)
    seam_up = any(other[1] > box[1] and other[0] == box[0] for other in others)
    seam_down = any(other[1] < box[1] and other[0] == box[0] for other in others)
    half = OVERLAP_MM / 2
    if seam_right:
        yield Line((left + wide - half, bottom), (left + wide - half, bottom + high), _EDGE)
    if seam_up:
        yield Line((left, bottom + high - half), (left + wide, bottom + high - half), _EDGE)
    xs = [*([left + half] if seam_left else []), *([left + wide - half] if seam_right else [])]
    ys = [*([bottom + half] if seam_down else []), *([bottom + high - half] if seam_up else [])]
    marks = [(x, bottom + part * high) for x in xs for part in (0.2, 0.8)]
    marks += [(left + part * wide, y) for y in ys for part in (0.2, 0.8)]
    for x, y in marks:
        yield Line((x - 3.0, y), (x + 3.0, y), LINE)
        yield Line((x, y - 3.0), (x, y + 3.0), LINE)


def _moved(at: Point, move: Point) -> Point:
    return at[0] + move[0], at[1] + move[1]


def _is_inside(at: Point, box: Box, by: float) -> bool:
    return box[0] + by <= at[0] <= box[2] - by and box[1] + by <= at[1] <= box[3] - by


def _clipped(a: Point, b: Point, box: Box) -> tuple[Point, Point] | None:
    """A level or upright line inside a box; None where nothing of it is."""
    left, bottom, right, top = box
    (x1, x2), (y1, y2) = sorted((a[0], b[0])), sorted((a[1], b[1]))
    x1, x2, y1, y2 = max(x1, left), min(x2, right), max(y1, bottom), min(y2, top)
    return None if x1 > x2 or y1 > y2 or (x1 == x2 and y1 == y2) else ((x1, y1), (x2, y2))
