"""Cloth that reaches the floor and more: the break of a long hem, the pool of a puddled one."""

from __future__ import annotations

import math

from elevation.setting_out.model import PanelOut
from elevation.sheet.draw_cloth import Drape
from elevation.sheet.paths import Step
from elevation.sheet.records import Fill, Gradient, Path, Pen, Record, Stop

_LOBE_MM = 110.0
_HIGHEST_MM = 120.0


def pool_records(panel: PanelOut, drape: Drape) -> list[Record]:
    """Folds of cloth lying on the floor before a panel, as deep as it has cloth to spare.

    Parameters
    ----------
    panel : PanelOut
        ``target_gap_mm`` below zero is the length that lies on the floor.
    drape : Drape

    Returns
    -------
    list of Record
        Empty where the hem hangs free.
    """
    extra = -(panel.target_gap_mm or 0.0)
    if extra <= 1e-6:
        return []
    high = min(_HIGHEST_MM, extra * 0.55 + 4.0)
    spread = min(extra * 0.28, 70.0)
    left, right = drape.left_mm - spread, drape.right_mm + spread
    count = max(3, math.ceil((right - left) / _LOBE_MM))
    width = (right - left) / count
    floor_left, floor_right = drape.foot[0], drape.foot[-1]
    back: list[Step] = []
    front: list[Step] = []
    for index in range(count):
        share = (index + 0.5) / count
        floor = floor_left + (floor_right - floor_left) * share
        x = left + width * (index + 0.5)
        vary = 0.72 + 0.28 * math.sin(index * 2.1 + 0.6)
        back.extend(_lobe(x, floor, width * 0.72, high * vary))
        front.extend(_lobe(x + width * 0.3 * math.sin(index * 1.7), floor, width * 0.58, high * (0.34 + 0.16 * vary)))
    paint = drape.tones
    top = max(floor_left, floor_right) + high
    low = min(floor_left, floor_right)
    stops = paint.folds[0]
    tone = Gradient(
        (0.0, top), (0.0, low), (Stop(0.0, stops[3].colour), Stop(0.45, stops[4].colour), Stop(1.0, stops[6].colour))
    )
    records: list[Record] = [Fill(part, tone) for part in _parts(back)]
    records.append(Path(tuple(_open(back)), Pen(paint.line, 0.18)))
    records.extend(Fill(part, tone) for part in _parts(front))
    records.append(Path(tuple(_open(front)), Pen(paint.edge, 0.2)))
    return records


def _lobe(x: float, floor: float, half: float, high: float) -> tuple[Step, ...]:
    return (
        ("M", x - half, floor),
        ("C", x - half * 1.02, floor + high * 0.85, x - half * 0.4, floor + high, x - half * 0.05, floor + high),
        ("C", x + half * 0.45, floor + high, x + half * 1.02, floor + high * 0.6, x + half, floor),
        ("Z",),
    )


def _parts(steps: list[Step]) -> list[tuple[Step, ...]]:
    return [tuple(steps[start : start + 4]) for start in range(0, len(steps), 4)]


def _open(steps: list[Step]) -> list[Step]:
    return [step for step in steps if step[0] != "Z"]
