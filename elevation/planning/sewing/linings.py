"""Lining and interlining on the bolt: whole widths for each panel, and what is still missing as strips of shared widths."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.piece_names import PanelName
from elevation.planning.sewing.model import Area, CutPiece
from elevation.setting_out.cloth import Bolt
from elevation.units.tolerance import TOUCH_MM

Run = tuple[int, float]
"""A stretch across one width: of which panel, and how wide."""


def lining_strips(
    bolt: Bolt, names: Sequence[PanelName], sides: Sequence[str], seam_mm: float
) -> tuple[tuple[Area, ...], ...]:
    """What lies across each cut.

    Parameters
    ----------
    bolt : Bolt
        With the flat width of each panel; its widths suffice for all of them together.
    names : sequence of PanelName
    sides : sequence of str
    seam_mm : float
        Added to a strip at both edges where the width has room for it.

    Returns
    -------
    tuple of tuple of Area
        As many as there are widths.
    """
    width = bolt.usable_mm
    count = int(-(-bolt.widths // 1))
    rows = _shared(bolt.each_mm, width, count) or _continuous(bolt.each_mm, width)
    pieces_of = [sum(1 for row in rows for panel, _ in row if panel == index) for index in range(len(bolt.each_mm))]
    numbers = [0] * len(bolt.each_mm)
    found = []
    for row in rows:
        spare = width - sum(wide for _, wide in row)
        more = min(2 * seam_mm, spare / len(row)) if row else 0.0
        areas, at = [], 0.0
        for index, wide in row:
            numbers[index] += 1
            cut = wide + (more if pieces_of[index] > 1 else 0.0)
            is_whole = cut >= width - TOUCH_MM
            piece = CutPiece(
                names[index],
                numbers[index],
                pieces_of[index],
                bolt.cut_mm,
                cut,
                share=1.0 if is_whole else 0.0,
                cut_edge="" if is_whole else sides[index],
            )
            areas.append(Area(at, at + cut, "piece", piece))
            at += cut
        if width - at > TOUCH_MM:
            areas.append(Area(at, width, "strip"))
        found.append(tuple(areas))
    return tuple(found)


def _shared(each: Sequence[float], width: float, count: int) -> list[list[Run]] | None:
    """Whole widths, then strips put into as few widths as are left; None where they do not go in."""
    rows: list[list[Run]] = []
    rest: list[Run] = []
    for index, flat in enumerate(each):
        whole = int((flat + TOUCH_MM) // width)
        rows.extend([[(index, width)] for _ in range(whole)])
        left = flat - whole * width
        if left > TOUCH_MM:
            rest.append((index, left))
    shared: list[list[Run]] = []
    for run in sorted(rest, key=lambda one: -one[1]):
        place = next((row for row in shared if sum(wide for _, wide in row) + run[1] <= width + TOUCH_MM), None)
        if place is None:
            shared.append([run])
        else:
            place.append(run)
    if len(rows) + len(shared) > count:
        return None
    return [*rows, *shared]


def _continuous(each: Sequence[float], width: float) -> list[list[Run]]:
    """Widths side by side as one cloth, parted where each panel ends: always enough, with a seam more."""
    rows: list[list[Run]] = [[]]
    free = width
    for index, flat in enumerate(each):
        left = flat
        while left > TOUCH_MM:
            if free <= TOUCH_MM:
                rows.append([])
                free = width
            take = min(left, free)
            rows[-1].append((index, take))
            left -= take
            free -= take
    return rows
