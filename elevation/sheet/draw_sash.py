"""What fills an opening: frame, sashes or leaves, glass, glazing bars and the signs of how they move."""

from __future__ import annotations

from elevation.setting_out.model import OpeningOut, Point, Span
from elevation.sheet import inks
from elevation.sheet.draw_leaf import KNOB_UP_MM, panelled_leaf, reveal_shade
from elevation.sheet.paths import (
    Step,
    head_at,
    opening_path,
    path_through,
    polygon,
    rectangle,
    rounded,
    segment,
)
from elevation.sheet.records import NARROW, Fill, Gradient, Ink, Path, Pen, Record, Stop

_NARROW = Pen(Ink.OUTLINE, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.13)
_SIGN = Pen(Ink.THIN, 0.13)
_SIGN_AWAY = Pen(Ink.THIN, 0.13, (2.0, 1.0))
_RAIL_MM = 42.0
_BAR_MM = 20.0
_PULL_UP_MM = 1020.0

Box = tuple[float, float, float, float]


def sash_records(opening: OpeningOut) -> list[Record]:
    """Everything inside the opening's outline, in the order it is laid down.

    Windows and glazed doors show their glass; a door without a frame figure is a panelled leaf.
    The sign of a hinged sash has its apex at the hinge, drawn full where it opens towards us and dashed where it
    opens away (common practice, no source).
    """
    if opening.kind == "door" and opening.frame_mm <= 0:
        return panelled_leaf(opening)
    if len(opening.glass) < 3:
        # The frame takes all of the opening.
        return [Fill(opening_path(opening), inks.FRAME), *reveal_shade(opening)]
    records: list[Record] = [Fill(opening_path(opening), inks.FRAME), *_glass(opening)]
    for bars in _bars(opening):
        if bars:
            records.append(Fill(bars, Ink.TRIM))
            records.append(Path(bars, _FINE))
    records.extend(_moving_parts(opening))
    records.extend(reveal_shade(opening))
    return records


def glass_path(opening: OpeningOut) -> tuple[Step, ...]:
    """The outline of the glass as steps: the opening's, narrowed by its frame all round."""
    if opening.head in ("flat", "raked"):
        return polygon(opening.glass)
    return opening_path(opening, -opening.frame_mm, opening.bottom_mm + opening.frame_mm)


def _glass(opening: OpeningOut) -> list[Record]:
    outline = glass_path(opening)
    low, high = opening.glass_bottom_mm, opening.glass_top_mm
    sky = Gradient((0.0, high), (0.0, low), (Stop(0.0, inks.SKY_HIGH), Stop(0.6, inks.SKY_MIDDLE), Stop(1.0, inks.SKY_LOW)))
    records: list[Record] = [Fill(outline, sky)]
    gleam = Gradient((0.0, high), (0.0, low), (Stop(0.0, inks.SHEEN_HIGH), Stop(1.0, inks.SHEEN_LOW)))
    records.extend(Fill(band, gleam) for band in _sheen(opening))
    records.append(Path(outline, _NARROW))
    return records


def _sheen(opening: OpeningOut) -> tuple[tuple[Step, ...], ...]:
    """Two slanted bands of reflected light from the sill to the head, whatever its shape."""
    left, right = opening.glass_left_mm, opening.glass_right_mm
    low, high = opening.glass_bottom_mm, opening.glass_top_mm
    if high - low < 60 or right - left < 60:
        return ()
    lean = min((right - left) * 0.35, (high - low) * 0.35)
    bands: list[tuple[Step, ...]] = []
    for start, width in ((0.16, 0.10), (0.31, 0.04)):
        x, wide = left + (right - left) * start, (right - left) * width
        feet = (x, x + wide)
        tops = [_ray_to_head(opening, foot, lean, (low, high)) for foot in feet]
        bands.append(polygon(((feet[0], low), (feet[1], low), tops[1], tops[0])))
    return tuple(bands)


def _ray_to_head(opening: OpeningOut, foot: float, lean: float, heights: Span) -> Point:
    """Where a slanted line from the sill at ``foot`` meets the head of the glass, found by halving."""
    low, high = heights
    under, over = 0.0, 1.0
    for _ in range(20):
        share = (under + over) / 2
        if low + (high - low) * share <= head_at(opening, foot + lean * share, -opening.frame_mm):
            under = share
        else:
            over = share
    return foot + lean * under, low + (high - low) * under


def _bars(opening: OpeningOut) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """Glazing bars as rectangles that end at the glass, those across and those up; rails of sashes are drawn apart."""
    left, right = opening.glass_left_mm, opening.glass_right_mm
    low, high = opening.glass_bottom_mm, opening.glass_top_mm
    half = min(_BAR_MM, (right - left) / opening.columns * 0.1, (high - low) / opening.rows * 0.1) / 2
    rail = (low + high) / 2 if opening.sash == "double-hung" else None
    across: list[Step] = []
    for row in range(1, opening.rows):
        y = low + (high - low) * row / opening.rows
        if rail is not None and abs(y - rail) < _RAIL_MM:
            continue
        near, far = _width_at(opening, y + half)
        if far > near:
            across.extend(rectangle(near, y - half, far, y + half))
    up: list[Step] = []
    for column in range(1, opening.columns):
        x = left + (right - left) * column / opening.columns
        top = min(head_at(opening, x - half, -opening.frame_mm), head_at(opening, x + half, -opening.frame_mm))
        if top > low:
            up.extend(rectangle(x - half, low, x + half, top))
    return tuple(across), tuple(up)


def _width_at(opening: OpeningOut, y: float) -> tuple[float, float]:
    """Left and right edge of the glass at height ``y``, found by halving under a sloped or round head."""
    grow = -opening.frame_mm
    left, right = opening.glass_left_mm, opening.glass_right_mm
    middle = max((left, (left + right) / 2, right), key=lambda x: head_at(opening, x, grow))

    def edge(outer: float) -> float:
        if head_at(opening, outer, grow) >= y:
            return outer
        inner = middle
        for _ in range(24):
            half = (outer + inner) / 2
            if head_at(opening, half, grow) >= y:
                inner = half
            else:
                outer = half
        return inner

    return (edge(left), edge(right)) if head_at(opening, middle, grow) >= y else (middle, middle)


def _glass_box(opening: OpeningOut) -> Box:
    left, right = opening.glass_left_mm, opening.glass_right_mm
    return left, opening.glass_bottom_mm, right, opening.glass_top_mm


def _moving_parts(opening: OpeningOut) -> list[Record]:
    left, low, right, high = _glass_box(opening)
    if opening.sash == "double-hung":
        return _double_hung(opening, (left, low, right, high))
    if opening.sash == "sliding" or opening.kind == "sliding-door":
        return _sliding(opening, (left, low, right, high))
    if opening.sash in ("casement-in", "casement-out", "swing-in", "swing-out"):
        return _hinged(opening, (left, low, right, high))
    if opening.sash == "tilt-in":
        middle = (left + right) / 2
        sign = path_through(
            (
                (left, head_at(opening, left, -opening.frame_mm)),
                (middle, low),
                (right, head_at(opening, right, -opening.frame_mm)),
            )
        )
        return [Path(sign, _SIGN)]
    return []


def _double_hung(opening: OpeningOut, box: Box) -> list[Record]:
    left, low, right, high = box
    middle, half = (low + high) / 2, min(_RAIL_MM, (high - low) * 0.12) / 2
    near, far = _width_at(opening, middle + half)
    rail = rectangle(near, middle - half, far, middle + half)
    tone = Gradient((0.0, middle + half), (0.0, middle - half), (Stop(0.0, Ink.TRIM), Stop(1.0, inks.TRIM_DEEP)))
    centre, lock = (near + far) / 2, min(26.0, (far - near) * 0.1)
    inset = min(opening.frame_mm * 0.45, 22.0)
    # The lower sash stands nearer to us: its stiles are seen whole, the upper one's behind the stops.
    stiles = (
        *segment(left - inset, low - inset, left - inset, middle + half),
        *segment(right + inset, low - inset, right + inset, middle + half),
        *segment(left - inset, low - inset, right + inset, low - inset),
        *segment(left - inset, middle + half, right + inset, middle + half),
    )
    return [
        Fill(rectangle(near, middle - half * 1.8, far, middle - half), inks.SHADE),
        Fill(rail, tone),
        Path(stiles, _FINE),
        Path(rail, _NARROW),
        Fill(
            rounded(centre - lock, middle + half * 0.65, centre + lock, middle + half * 1.35, half / 4), inks.METAL_MIDDLE
        ),
    ]


def _sliding(opening: OpeningOut, box: Box) -> list[Record]:
    left, low, right, _ = box
    middle, half = (left + right) / 2, min(max(opening.frame_mm, 36.0) / 2 + 8, (right - left) * 0.1)
    top = head_at(opening, middle, -opening.frame_mm)
    stile = rectangle(middle - half, low, middle + half, top)
    height = low + (top - low) * 0.5
    reach = (right - left) * 0.09
    barb = min(reach * 0.22, (top - low) * 0.2)
    arrows: list[Step] = []
    quarter = (left + middle) / 2 if opening.hinge != "left" else (middle + right) / 2
    way = 1.0 if quarter < middle else -1.0
    arrows.extend(segment(quarter - way * reach, height, quarter + way * reach, height))
    arrows.extend(
        path_through(
            (
                (quarter + way * reach * 0.55, height + barb),
                (quarter + way * reach, height),
                (quarter + way * reach * 0.55, height - barb),
            )
        )
    )
    track = (*segment(left, low - opening.frame_mm * 0.5, right, low - opening.frame_mm * 0.5),)
    # The grip stands on the moving leaf's frame, or just inside the glass where no frame was measured.
    wide = min(14.0, (right - left) * 0.03, opening.frame_mm * 0.6 or 14.0)
    aside = opening.frame_mm / 2 if opening.frame_mm > 0 else -wide
    grip_x = left - aside if way > 0 else right + aside
    grip, tall = (low + top) / 2, min(90.0, (top - low) * 0.16)
    if opening.kind == "sliding-door":
        grip = min(opening.bottom_mm + _PULL_UP_MM, grip)
    return [
        Fill(stile, Gradient((middle - half, 0.0), (middle + half, 0.0), (Stop(0.0, Ink.TRIM), Stop(1.0, inks.TRIM_DEEP)))),
        Path((*stile, *segment(middle, low, middle, top)), _NARROW),
        Path(track, _FINE),
        Path(tuple(arrows), Pen(Ink.THIN, NARROW)),
        Fill(rounded(grip_x - wide / 2, grip - tall, grip_x + wide / 2, grip + tall, wide * 0.4), inks.METAL_MIDDLE),
    ]


def _hinged(opening: OpeningOut, box: Box) -> list[Record]:
    left, low, right, _ = box
    grow = -opening.frame_mm
    middle = (left + right) / 2
    records: list[Record] = []
    leaves = [(left, right, opening.hinge)]
    if opening.hinge == "both":
        half = min(max(opening.frame_mm, 30.0) * 0.75, (right - left) * 0.12)
        top = head_at(opening, middle, grow)
        stile = rectangle(middle - half, low, middle + half, top)
        records += [Fill(stile, Ink.TRIM), Path((*stile, *segment(middle, low, middle, top)), _NARROW)]
        leaves = [(left, middle - half, "left"), (middle + half, right, "right")]
    sign: list[Step] = []
    grips: list[Step] = []
    for near, far, hinge in leaves:
        apex, open_side = (near, far) if hinge == "left" else (far, near)
        open_top, apex_top = head_at(opening, open_side, grow), head_at(opening, apex, grow)
        sign.extend(path_through(((open_side, open_top), (apex, (low + apex_top) / 2), (open_side, low))))
        wide, tall = min(12.0, opening.frame_mm * 0.6 or 12.0, (far - near) * 0.05), min(42.0, (open_top - low) * 0.16)
        out = opening.frame_mm / 2 if opening.frame_mm > 0 else -wide
        x = open_side + (out if hinge == "left" else -out)
        y = min((low + open_top) / 2, opening.bottom_mm + KNOB_UP_MM) if opening.kind != "window" else (low + open_top) / 2
        grips.extend(rounded(x - wide / 2, y - tall * 1.5, x + wide / 2, y + tall / 2, wide / 2))
    pen = _SIGN if opening.sash in ("casement-in", "swing-in") else _SIGN_AWAY
    return [*records, Path(tuple(sign), pen), Fill(tuple(grips), inks.METAL_MIDDLE)]
