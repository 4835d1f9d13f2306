"""Cloth that reaches the floor and more: the break of a long hem, the pool of a puddled one.

The folds flare out over the last stretch above the floor, and the cloth to spare lies before them in long low rolls.
"""

from __future__ import annotations

import math

from elevation.setting_out.model import PanelOut, Point, Profile
from elevation.sheet.draw_drape import Drape
from elevation.sheet.paths import Step, height_at
from elevation.sheet.records import Fill, Gradient, Path, Pen, Record, Stop

_HIGHEST_FLARE_MM = 260.0
_WIDEST_SPREAD_MM = 85.0
_HIGHEST_ROLL_MM = 58.0
_MOST_FLARES = 12

# Where the rolls lie across the pool (0 to 1) and how high each is beside the highest, back to front.
_ROLLS = (
    (0.02, 0.48, 0.86), (0.40, 0.97, 1.0), (0.22, 0.70, 0.74), (0.0, 0.34, 0.52), (0.58, 1.0, 0.56), (0.30, 0.62, 0.4),
)  # fmt: skip


def pool_records(panel: PanelOut, drape: Drape, floor: Profile) -> list[Record]:
    """The flare of the folds and the cloth lying before a panel, as deep as it has cloth to spare.

    Parameters
    ----------
    panel : PanelOut
        ``target_gap_mm`` below zero is the length that lies on the floor.
    drape : Drape
    floor : Profile

    Returns
    -------
    list of Record
        Empty where the hem hangs free.
    """
    extra = -(panel.target_gap_mm or 0.0)
    if extra <= 1e-6:
        return []
    spread = min(extra * 0.36, _WIDEST_SPREAD_MM)
    high = min(_HIGHEST_FLARE_MM, extra * 1.15 + 18.0, (drape.top_mm - max(drape.foot)) * 0.4)
    records = _flare(drape, floor, spread, high)
    records.extend(_rolls(drape, floor, spread, min(_HIGHEST_ROLL_MM, extra * 0.34 + 4.0)))
    return records


def _flare(drape: Drape, floor: Profile, spread: float, high: float) -> list[Record]:
    """The lowest part of the folds, spreading as the cloth meets the floor."""
    last = len(drape.foot) - 1
    share = math.ceil(last / _MOST_FLARES)
    middle, width = (drape.left_mm + drape.right_mm) / 2, drape.right_mm - drape.left_mm
    heads: list[Point] = []
    feet: list[Point] = []
    for index in sorted({*range(0, last, share), last}):
        x = drape.valleys_foot[index]
        foot = middle + (x - middle) * (1 + 2 * spread / width)
        heads.append((x, drape.foot[index] + high))
        feet.append((foot, height_at(floor, foot)))
    paint = drape.tones
    clothing: list[Step] = []
    for head, foot in ((heads[0], feet[0]), (heads[-1], feet[-1])):
        clothing.extend((("M", *head), _curl(head, foot), ("L", head[0], foot[1]), ("Z",)))
    records: list[Record] = [Fill(tuple(clothing), paint.hollow)]
    lines: list[Step] = []
    for index in range(1, len(heads)):
        head, foot = heads[index], feet[index]
        near = (foot[0] - (foot[0] - feet[index - 1][0]) * 0.5, foot[1])
        flank = (("M", *head), _curl(head, foot), ("L", *near), _curl_up(head, near), ("Z",))
        records.append(Fill(flank, paint.hollow if index % 2 else paint.crease))
        if index < len(heads) - 1:
            lines.extend((("M", *head), _curl(head, foot)))
    sides = (("M", *heads[0]), _curl(heads[0], feet[0]), ("M", *heads[-1]), _curl(heads[-1], feet[-1]))
    if lines:
        records.append(Path(tuple(lines), Pen(paint.line, 0.1)))
    records.append(Path(sides, Pen(paint.edge, 0.2)))
    return records


def _curl(head: Point, foot: Point) -> Step:
    """From a fold's edge down to where it runs out on the floor."""
    drop = head[1] - foot[1]
    return ("C", head[0], head[1] - drop * 0.6, head[0] + (foot[0] - head[0]) * 0.35, foot[1] + drop * 0.06, *foot)


def _curl_up(head: Point, foot: Point) -> Step:
    drop = head[1] - foot[1]
    return ("C", head[0] + (foot[0] - head[0]) * 0.35, foot[1] + drop * 0.06, head[0], head[1] - drop * 0.6, *head)


def _rolls(drape: Drape, floor: Profile, spread: float, high: float) -> list[Record]:
    """Long low rolls of cloth, each in front of the last."""
    left, right = drape.left_mm - spread, drape.right_mm + spread
    width = right - left
    high = min(high, width * 0.22)
    paint = drape.tones
    stops = paint.folds[0]
    records: list[Record] = []
    for near, far, rise in _ROLLS:
        a, b, up = left + width * near, left + width * far, high * rise
        ground_a, ground_b = height_at(floor, a), height_at(floor, b)
        across, top = b - a, ground_a + up
        crest: tuple[Step, ...] = (
            ("M", a, ground_a),
            (
                "C",
                a - across * 0.01,
                ground_a + up * 0.9,
                a + across * 0.16,
                ground_a + up,
                a + across * 0.36,
                ground_a + up,
            ),
            ("C", a + across * 0.62, ground_b + up, b - across * 0.04, ground_b + up * 0.72, b, ground_b),
        )
        tone = Gradient(
            (0.0, top),
            (0.0, min(ground_a, ground_b)),
            (
                Stop(0.0, stops[2].colour),
                Stop(0.3, stops[3].colour),
                Stop(0.62, stops[5].colour),
                Stop(1.0, stops[6].colour),
            ),
        )
        records.append(Fill((*crest, ("Z",)), tone))
        records.append(Path(crest, Pen(paint.edge, 0.13)))
    return records
