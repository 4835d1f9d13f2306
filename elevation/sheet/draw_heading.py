"""How the top of a panel is made and held: rings, sewn pleats, pencil pleats, wave, tabs, eyelets, a rod pocket."""

from __future__ import annotations

import itertools
from typing import Literal, cast, get_args

from elevation.setting_out.model import PanelOut, Span, SupportOut
from elevation.sheet import inks
from elevation.sheet.draw_drape import Drape
from elevation.sheet.draw_pleats import PLEATS, back_tabs, deep, middles, wave
from elevation.sheet.paths import Step, ellipse, rectangle, segment
from elevation.sheet.records import Fill, Gradient, Path, Pen, Record, Stop
from elevation.trade.model import HeadingRow

Heading = Literal[
    "rings", "pinch", "two-finger", "goblet", "cartridge", "inverted", "box", "pencil", "wave", "tabs", "back-tabs",
    "eyelets", "pocket",
]  # fmt: skip

_RING = Pen(inks.METAL_DARK, 0.13)
_CLIP = Pen(inks.METAL_DARK, 0.35)
_RING_ROOM_MM = 7.0
_MOST_RINGS = 60
_TAPE_MM = 76.0


def heading_kind(row: HeadingRow | None) -> Heading:
    """The kind of drawing for a heading: its row's; what has none is decided by how it is carried."""
    if row is None:
        return "rings"
    if row.drawing in get_args(Heading):
        return cast("Heading", row.drawing)
    return "rings" if row.carries == "rings" else "pocket"


def ring_places(panel: PanelOut, drape: Drape, kind: Heading) -> tuple[float, ...]:
    """Where along the wall the cloth is carried (mm): at rings between its edges, or amid each pleat."""
    if kind in PLEATS:
        return tuple(middles(drape))
    count = max(2, min(panel.rings, _MOST_RINGS))
    inset = min(_RING_ROOM_MM, (drape.right_mm - drape.left_mm) / 4)
    left, right = drape.left_mm + inset, drape.right_mm - inset
    return tuple(left + (right - left) * index / (count - 1) for index in range(count))


def before_rod(panel: PanelOut, drape: Drape, kind: Heading, support: SupportOut) -> tuple[Span, ...]:
    """Where something of this panel passes in front of the tube, as (left, right) in mm."""
    if kind in ("pocket", "back-tabs"):
        return ((drape.left_mm, drape.right_mm),)
    if kind == "tabs":
        half = _tab_half(drape, panel)
        return tuple((max(x - half, drape.left_mm), min(x + half, drape.right_mm)) for x in ring_places(panel, drape, kind))
    if kind == "eyelets":
        tops = drape.valleys_top
        return tuple((near + (far - near) * 0.2, near + (far - near) * 0.8) for near, far in itertools.pairwise(tops))
    half = _ring_across(support) * 0.8
    return tuple((x - half, x + half) for x in ring_places(panel, drape, kind))


def heading_records(panel: PanelOut, drape: Drape, kind: Heading, support: SupportOut) -> list[Record]:
    """The heading's own lines and hardware, over the cloth."""
    pleats = PLEATS.get(kind)
    if pleats is not None:
        return [*pleats(drape), *_rings(panel, drape, kind, support)]
    if kind == "wave":
        return [*wave(drape), *_rings(panel, drape, kind, support)]
    if kind == "back-tabs":
        return back_tabs(drape)
    if kind == "pencil":
        return [*_pencil(panel, drape), *_rings(panel, drape, kind, support)]
    if kind == "tabs":
        return _tabs(panel, drape, support)
    if kind == "eyelets":
        return _eyelets(drape, support)
    if kind == "pocket":
        return _pocket(drape, support)
    return _rings(panel, drape, kind, support)


def _ring_across(support: SupportOut) -> float:
    return max(1.8, support.diameter_mm * 0.09)


def _rings(panel: PanelOut, drape: Drape, kind: Heading, support: SupportOut) -> list[Record]:
    """Rings seen edge-on around the tube, each with its clip or hook down to the cloth."""
    high = support.height_mm + support.diameter_mm / 2 + 2.0
    drop = max(high - drape.top_mm, support.diameter_mm + 4.0)
    low = max(drape.top_mm + 0.28 * max(0.0, support.height_mm - support.diameter_mm / 2 - drape.top_mm), high - drop)
    across = _ring_across(support)
    rings: list[Step] = []
    clips: list[Step] = []
    for x in ring_places(panel, drape, kind):
        rings.extend(ellipse(x, (high + low) / 2, across, (high - low) / 2))
        clips.extend(segment(x, low, x, drape.top_mm - (9.0 if kind == "rings" else 4.0)))
    records: list[Record] = []
    if kind == "rings":
        records.append(Path(_tension(drape), Pen(drape.tones.line, 0.1)))
    shine = Gradient(
        (0.0, high), (0.0, low), (Stop(0.0, inks.METAL_LIGHT), Stop(0.4, inks.METAL_MIDDLE), Stop(1.0, inks.METAL_DARK))
    )
    return [*records, Path(tuple(clips), _CLIP), Fill(tuple(rings), shine), Path(tuple(rings), _RING)]


def _tension(drape: Drape) -> tuple[Step, ...]:
    """The creases that run down and out from where a clip holds the cloth."""
    steps: list[Step] = []
    reach = drape.pitch_mm
    last = len(drape.valleys_top) - 1
    for index, x in enumerate(drape.valleys_top):
        for side in (-1.0, 1.0):
            if (index == 0 and side < 0) or (index == last and side > 0):
                continue
            y = drape.top_mm - 5.0
            steps.append(("M", x + side * reach * 0.03, y))
            steps.append(
                (
                    "C",
                    x + side * reach * 0.08, y - reach * 0.12,
                    x + side * reach * 0.2, y - reach * 0.2,
                    x + side * reach * 0.27, y - reach * (0.36 + 0.06 * side),
                )
            )  # fmt: skip
    return tuple(steps)


def _pencil(panel: PanelOut, drape: Drape) -> list[Record]:
    """A gathered tape: close upright pleats under two lines of cord."""
    width = drape.right_mm - drape.left_mm
    count = max(4, min(90, round(panel.flat_width_mm / 24.0), round(width / 5.0)))
    lines: list[Step] = []
    for index in range(1, count):
        x = drape.left_mm + width * index / count
        lines.extend(
            segment(x, drape.top_mm, x, drape.top_mm - deep(drape, _TAPE_MM) * (0.86 + 0.14 * ((index * 7) % 3) / 2))
        )
    cords: list[Step] = []
    for share in (0.22, 0.78):
        y = drape.top_mm - deep(drape, _TAPE_MM) * share
        cords.extend(segment(drape.left_mm, y, drape.right_mm, y))
    return [Path(tuple(lines), Pen(drape.tones.line, 0.13)), Path(tuple(cords), Pen(drape.tones.line, 0.1, (0.5, 0.35)))]


def _tab_half(drape: Drape, panel: PanelOut) -> float:
    between = (drape.right_mm - drape.left_mm) / max(1, panel.rings - 1)
    return min(26.0, between * 0.27)


def _tabs(panel: PanelOut, drape: Drape, support: SupportOut) -> list[Record]:
    """Loops of the cloth over the tube."""
    half, top = _tab_half(drape, panel), support.height_mm + support.diameter_mm / 2 + 4.0
    loops: list[Step] = []
    for x in ring_places(panel, drape, "tabs"):
        loops.extend(rectangle(max(x - half, drape.left_mm), drape.top_mm - 14, min(x + half, drape.right_mm), top))
    paint = drape.tones
    tone = Gradient(
        (0.0, top),
        (0.0, drape.top_mm - 14),
        (Stop(0.0, paint.folds[0][5].colour), Stop(0.3, paint.folds[0][3].colour), Stop(1.0, paint.folds[0][4].colour)),
    )
    stitches: list[Step] = []
    for x in ring_places(panel, drape, "tabs"):
        stitches.extend(segment(max(x - half, drape.left_mm), drape.top_mm, min(x + half, drape.right_mm), drape.top_mm))
    return [
        Fill(tuple(loops), tone),
        Path(tuple(stitches), Pen(paint.line, 0.13)),
        Path(tuple(loops), Pen(paint.edge, 0.2)),
    ]


def _eyelets(drape: Drape, support: SupportOut) -> list[Record]:
    """Metal eyelets where the tube goes through the cloth, turned with the folds."""
    radius = support.diameter_mm / 2 + 9.0
    across = min(radius, max(2.5, drape.pitch_mm * 0.16))
    outer: list[Step] = []
    holes: list[Step] = []
    for near, far in zip(drape.valleys_top, drape.valleys_top[1:], strict=False):
        for share in (0.2, 0.8):
            x = near + (far - near) * share
            outer.extend(ellipse(x, support.height_mm, across, radius))
            holes.extend(ellipse(x, support.height_mm, across * 0.66, radius * 0.72))
    shine = Gradient(
        (0.0, support.height_mm + radius),
        (0.0, support.height_mm - radius),
        (Stop(0.0, inks.METAL_LIGHT), Stop(0.5, inks.METAL_MIDDLE), Stop(1.0, inks.METAL_DARK)),
    )
    return [
        Fill((*outer, *holes), shine),
        Fill(tuple(holes), drape.tones.edge),
        Path((*outer,), Pen(inks.METAL_DARK, 0.13)),
    ]


def _pocket(drape: Drape, support: SupportOut) -> list[Record]:
    """A pocket gathered on the tube: the tube's swelling, stitches under it, gathers."""
    half = support.diameter_mm / 2 + 3.0
    high, low = support.height_mm + half, support.height_mm - half
    paint = drape.tones
    gathers: list[Step] = []
    width = drape.right_mm - drape.left_mm
    count = max(4, min(70, round(width / 9.0)))
    for index in range(1, count):
        x = drape.left_mm + width * index / count
        gathers.extend(segment(x, min(high + 6 + (index * 5) % 9, drape.top_mm), x, low - 12 - (index * 7) % 23))
    stitches = (
        *segment(drape.left_mm, low, drape.right_mm, low),
        *segment(drape.left_mm, high, drape.right_mm, high),
    )
    return [
        Fill(
            rectangle(drape.left_mm, high - half * 0.9, drape.right_mm, high - half * 0.4),
            inks.with_alpha(paint.crest, 0.3),
        ),
        Fill(rectangle(drape.left_mm, low, drape.right_mm, low + half * 0.7), paint.deep),
        Path(tuple(gathers), Pen(paint.line, 0.1)),
        Path(stitches, Pen(paint.line, 0.13)),
    ]
