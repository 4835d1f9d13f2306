"""A pattern at its true scale on the folds: stripes, bands, a check, a grid of lines, dots.

The pattern is laid out on the flat cloth. Each fold is the wave of a sine whose length along the cloth is the flat cloth of
that fold (``trade.folds``), seen from the front: so stripes crowd on the flanks of a fold and open on its front, as on real
cloth, and what a panel shows adds up to its flat width. Down the cloth bands droop and scallop as heading and hem do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache, partial
from itertools import pairwise

from msgspec import Struct

from elevation.setting_out.model import PanelOut, PatternOut, Point
from elevation.sheet.cloth import across, bunched_share, depth_share, key_of
from elevation.sheet.draw_drape import Drape, valley, wandering
from elevation.sheet.inks import blend
from elevation.sheet.paths import Step
from elevation.sheet.records import Fill, Gradient, Record
from elevation.trade.folds import GREATEST_FULLNESS, wave_places

# Shares of a repeat: a stripe is half of it, a line of a grid a sixteenth, a dot reaches a fifth to each side.
_STRIPE, _LINE, _DOT = 0.5, 1 / 16, 0.2
_HALF = 0.5
"""Stripes and bands of a check, between the colours of cloth and pattern; where they cross it is the pattern's."""
_DOT_CORNERS = (
    (1.0, 0.0),
    (0.71, 0.71),
    (0.0, 1.0),
    (-0.71, 0.71),
    (-1.0, 0.0),
    (-0.71, -0.71),
    (0.0, -1.0),
    (0.71, -0.71),
)
_MOST = 1500
"""More marks than this on one panel are finer than any line: they are left out."""


At = Callable[[int, float, float], Point]


class Folded(Struct, frozen=True, gc=False):
    """What maps a place on the flat cloth (mm from the leading edge, mm from its top) to the wall.

    ``count`` folds between two valleys; ``places`` are those of ``wave_places``. ``from_left``: the leading edge is the
    left one. ``steps`` is how many pieces the edge of a stripe is drawn in. ``at`` tells where on the wall a place is: its
    fold, how far across that as it is drawn, and how far down, from 0 at the top of the cloth to 1 at its hem.
    """

    count: int
    places: tuple[float, ...]
    flat_mm: float
    drop_mm: float
    from_left: bool
    steps: int
    at: At

    def share(self, flat_mm: float) -> tuple[int, float]:
        """The fold in which a place along the flat cloth lies, and how far across it as it is drawn."""
        along = min(max(flat_mm / self.flat_mm, 0.0), 1.0)
        if not self.from_left:
            along = 1.0 - along
        fold = min(int(along * self.count), self.count - 1)
        steps = len(self.places) - 1
        place = min(max(along * self.count - fold, 0.0), 1.0) * steps
        index = min(int(place), steps - 1)
        low, high = self.places[index], self.places[index + 1]
        return fold, low + (high - low) * (place - index)


def _hanging(drape: Drape, fold: int, across_share: float, down: float) -> Point:
    """A place of a panel that hangs free."""
    near, far = (_cubic(valley(drape, index), down) for index in (fold, fold + 1))
    bow = 4 * across_share * (1 - across_share)
    top = drape.top_mm - drape.dip_mm * bow
    foot = drape.foot[fold] + (drape.foot[fold + 1] - drape.foot[fold]) * across_share
    low = foot + drape.lift_mm * (1 - bow)
    return near + (far - near) * across_share, top + (low - top) * down


def places_of(flat_mm: float, wide_mm: float) -> tuple[float, ...]:
    """Where equal lengths of flat cloth end across a fold, for cloth drawn to ``wide_mm``."""
    return wave_places(round(min(max(flat_mm / max(wide_mm, 1e-6), 1.0), GREATEST_FULLNESS), 2))


def pattern_records(panel: PanelOut, drape: Drape, pattern: PatternOut, colour: str, body: str) -> list[Record]:
    """The pattern of a panel that hangs free, in its own colour with the light and shade of the folds.

    Parameters
    ----------
    panel : PanelOut
    drape : Drape
        The same panel as it hangs.
    pattern : PatternOut
    colour, body : str
        Of the cloth.

    Returns
    -------
    list of Record
        Empty where a repeat is finer than can be drawn.
    """
    flat, width = panel.flat_width_mm, max(drape.right_mm - drape.left_mm, 1e-6)
    drop, count = drape.top_mm - min(drape.foot), len(drape.foot) - 1
    # What everybody sees beside the glass is the leading edge: there the pattern begins.
    folded = Folded(count, places_of(flat, width), flat, drop, panel.side == "right", 6, partial(_hanging, drape))
    depth, bunched = depth_share(flat / width), bunched_share(flat / width)
    records: list[Record] = []
    for mark in pattern_marks(folded, pattern):
        key = key_of(blend(colour, pattern.ink, mark.strength), body, depth, bunched)
        stops = across(key, wandering(count, body, key[3])[1])
        records.append(Fill(mark.steps, Gradient((drape.left_mm, 0.0), (drape.right_mm, 0.0), stops)))
    return records


class Mark(Struct, frozen=True, gc=False):
    """Areas of one tone of a pattern: ``strength`` 0 to 1, from the cloth's colour to the pattern's."""

    steps: tuple[Step, ...]
    strength: float = 1.0


def pattern_marks(folded: Folded, pattern: PatternOut) -> list[Mark]:
    """The areas of a pattern on folded cloth; none where a repeat is finer than can be drawn."""
    flat, drop = folded.flat_mm, folded.drop_mm
    if drop <= 0 or flat <= 0 or flat / pattern.across_mm * max(1.0, drop / pattern.up_mm) > _MOST:
        return []
    return [mark for mark in _marks(folded, pattern) if mark.steps]


def _marks(folded: Folded, pattern: PatternOut) -> Iterator[Mark]:
    if pattern.kind == "stripes":
        yield Mark(tuple(_stripes(folded, pattern.across_mm, _STRIPE)))
    elif pattern.kind == "bands":
        yield Mark(tuple(_bands(folded, pattern.up_mm, _STRIPE)))
    elif pattern.kind == "grid":
        # Each by itself: where two cross in one area they would cancel.
        yield Mark(tuple(_stripes(folded, pattern.across_mm, _LINE)))
        yield Mark(tuple(_bands(folded, pattern.up_mm, _LINE * pattern.across_mm / pattern.up_mm)))
    elif pattern.kind == "check":
        yield Mark(tuple(_stripes(folded, pattern.across_mm, _STRIPE)), _HALF)
        yield Mark(tuple(_bands(folded, pattern.up_mm, _STRIPE)), _HALF)
        yield Mark(tuple(_crossings(folded, pattern)))
    else:
        yield Mark(tuple(_dots(folded, pattern)))


def stripe_spans(flat_mm: float, repeat_mm: float, part: float = _STRIPE) -> tuple[tuple[float, float], ...]:
    """Stripes along flat cloth as (start, end) in mm from the leading edge, each in the middle of its repeat.

    Parameters
    ----------
    flat_mm, repeat_mm : float
    part : float
        Share of a repeat that is stripe.
    """
    found, start = [], 0.0
    while start < flat_mm:
        a, b = start + repeat_mm * (1 - part) / 2, start + repeat_mm * (1 + part) / 2
        if a < flat_mm:
            found.append((a, min(b, flat_mm)))
        start += repeat_mm
    return tuple(found)


def _stripes(folded: Folded, repeat_mm: float, part: float) -> Iterator[Step]:
    downs = tuple(step / folded.steps for step in range(folded.steps + 1))
    for fold, first, last in _strips(folded, repeat_mm, part):
        yield from _area(folded, fold, first, last, downs)


def _crossings(folded: Folded, pattern: PatternOut) -> Iterator[Step]:
    """Where stripes and bands of a check cross."""
    bands = stripe_spans(folded.drop_mm, pattern.up_mm)
    for fold, first, last in _strips(folded, pattern.across_mm, _STRIPE):
        for a, b in bands:
            yield from _area(folded, fold, first, last, (a / folded.drop_mm, b / folded.drop_mm))


def _strips(folded: Folded, repeat_mm: float, part: float) -> Iterator[tuple[int, float, float]]:
    """Stripes fold by fold, each having its own scallop: the fold, and between which shares of it as it is drawn."""
    each = folded.flat_mm / folded.count
    for a, b in stripe_spans(folded.flat_mm, repeat_mm, part):
        cuts = [a, *(each * index for index in range(int(a / each) + 1, folded.count) if a < each * index < b), b]
        for near, far in pairwise(cuts):
            if far - near > 1e-6:
                # From a hair inside, so that both edges are found in the same fold.
                hair = (far - near) * 1e-6
                (fold, first), (_, last) = folded.share(near + hair), folded.share(far - hair)
                yield fold, first, last


def _area(folded: Folded, fold: int, first: float, last: float, downs: Sequence[float]) -> Iterator[Step]:
    middle = (first + last) / 2
    yield ("M", *folded.at(fold, first, downs[0]))
    yield ("L", *folded.at(fold, middle, downs[0]))
    for down in downs:
        yield ("L", *folded.at(fold, last, down))
    yield ("L", *folded.at(fold, middle, downs[-1]))
    for down in reversed(downs[1:]):
        yield ("L", *folded.at(fold, first, down))
    yield ("Z",)


_BAND_SHARES = (0.0, 0.2, 0.4, 0.6, 0.8, 1.0)


def _bands(folded: Folded, repeat_mm: float, part: float) -> Iterator[Step]:
    for a, b in stripe_spans(folded.drop_mm, repeat_mm, part):
        edges = [(fold, share) for fold in range(folded.count) for share in _BAND_SHARES]
        yield ("M", *folded.at(*edges[0], a / folded.drop_mm))
        for edge in edges[1:]:
            yield ("L", *folded.at(*edge, a / folded.drop_mm))
        for edge in reversed(edges):
            yield ("L", *folded.at(*edge, b / folded.drop_mm))
        yield ("Z",)


def _dots(folded: Folded, pattern: PatternOut) -> Iterator[Step]:
    columns = int(folded.flat_mm / pattern.across_mm) + 1
    reach = min(pattern.across_mm, pattern.up_mm) * _DOT
    for column in range(columns):
        x = (column + 0.5) * pattern.across_mm
        down = 0.5 if pattern.half_drop and column % 2 else 0.0
        for row in range(-1, int(folded.drop_mm / pattern.up_mm) + 1):
            y = (row + 0.5 + down) * pattern.up_mm
            if x + reach <= folded.flat_mm and reach <= y <= folded.drop_mm - reach:
                corners = [
                    folded.at(*folded.share(x + reach * right), (y + reach * up) / folded.drop_mm)
                    for right, up in _DOT_CORNERS
                ]
                yield ("M", *corners[0])
                yield from (("L", *corner) for corner in corners[1:])
                yield ("Z",)


@lru_cache(maxsize=1024)
def _cubic(curve: tuple[Point, Point, Point, Point], down: float) -> float:
    """The x of a valley at a share of its way down; its y runs nearly evenly along it."""
    back = 1 - down
    p0, p1, p2, p3 = (point[0] for point in curve)
    return back**3 * p0 + 3 * back * back * down * p1 + 3 * back * down * down * p2 + down**3 * p3
