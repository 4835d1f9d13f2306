"""The label ladder: where the figures of one chain of dimensions stand.

Everything here is paper mm: ``s`` along the dimension line, ``t`` outward from it (away from the wall).
A label climbs down these rungs until one holds:

1. between the strokes of its own dimension;
2. beside them, over the neighbour's free part (or past the end of the chain);
3. staggered: on the second level, under (or over) its own dimension;
4. in the next free row, with a short leader;
5. a key letter in its place, the figure in the key table. This one always works: rows can be added.

Extension lines of lines farther out cross the rows; labels keep clear of them.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from functools import lru_cache

from msgspec import Struct

from elevation.sheet.annotation.model import FIGURE, Label, Segment
from elevation.sheet.annotation.segments import crosses, crosses_box
from elevation.sheet.type_metrics import text_width

GAP = 1.2
"""Baseline above the dimension line."""
RISE = 0.74 * FIGURE
"""From the baseline to the top of raised figures."""
FALL = 0.17 * FIGURE
"""From the baseline to the bottom of lowered figures."""
PAST = 1.5
"""Extension lines run this far past the dimension line (see ``output.dimension_lines``)."""
STROKE = 1.1
"""Half the extent of an oblique stroke."""
ROW = RISE + FALL + 0.9
CLEAR = 0.7
"""Between a label and a line that passes it."""
APART = 1.7
"""Between two labels of one row: two spaces at least, else "90  310" would be read as one figure."""
SPARE = 0.5
"""What a label may lose on each side and still keep its rung: 1 mm in all before it lets go."""
_WIDEST = 2 * (STROKE + 0.2) + CLEAR
"""Wider than what any line or stroke takes."""
CLEAR_ROWS = 6
"""Rows in which a key letter is sought with a leader that crosses nothing, then with one that crosses no label."""
MOST_ROWS = 60


_Span = tuple[float, float]


class Rows(Struct, frozen=True, gc=False):
    """The geometry of a side: whether figures above the line stand on its outward side (top, left)."""

    above_is_out: bool

    def box(self, row: int) -> tuple[float, float]:
        """Near and far edge of a row, outward from the line; row 0 is the one above the line."""
        if row == 0:
            return (GAP - FALL, GAP + RISE) if self.above_is_out else (-GAP - RISE, -GAP + FALL)
        first = (GAP + RISE if self.above_is_out else PAST) + 0.9
        near = first + (row - 1) * ROW
        return near, near + RISE + FALL

    def baseline(self, near: float, far: float) -> float:
        """Where the baseline of a label with that box stands, outward from the line."""
        return near + FALL if self.above_is_out else far - FALL


class Line(Struct, frozen=True, gc=False):
    """One dimension line to be labelled, paper mm.

    Attributes
    ----------
    segments : tuple of Segment
        For their texts and priorities.
    ends : tuple of (float, float)
        Where each segment starts and ends.
    bounds : (float, float)
        Labels stay within.
    crossing : tuple of float
        Extension lines of farther lines pass here.
    letter_room : float
        Width to reserve for a key letter.
    """

    segments: tuple[Segment, ...]
    ends: tuple[tuple[float, float], ...]
    bounds: tuple[float, float]
    crossing: tuple[float, ...]
    letter_room: float


@lru_cache(maxsize=1024)
def climb(line: Line, rows: Rows, previous: tuple[str | None, ...]) -> tuple[Label, ...]:
    """Give every segment of a line its label; kept, since a drag changes few lines of a wall.

    Parameters
    ----------
    line : Line
    rows : Rows
    previous : tuple of str or None
        The ``step`` each label had when it was laid last.

    Returns
    -------
    tuple of Label
        One per segment, in order. A key letter's ``text`` is still the figure: letters are given out at the end.
    """
    ladder = _Ladder(line, rows)
    order = sorted(range(len(line.segments)), key=lambda index: (-line.segments[index].priority, index))
    for index in order:
        ladder.between(index, previous[index])
    for index in order:
        if index not in ladder.placed:
            ladder.descend(index, previous[index])
    return tuple(ladder.placed[index] for index in range(len(line.segments)))


def _spare(step: str, previous: str | None) -> float:
    # A place that it did not have asks for room to spare; the one it had lets go only when that is used up.
    return 0.0 if step == previous else SPARE


def _within(spans: list[_Span], low: float, high: float, widest: float) -> list[_Span]:
    """Those of ``spans``, which rise and are at most ``widest`` wide, that reach past ``low`` and begin before ``high``."""
    first, last = bisect_left(spans, (low - widest,)), bisect_left(spans, (high,))
    return [span for span in spans[first:last] if span[1] > low]


def _end(span: tuple[float, float]) -> float:
    return span[1]


class _Ladder:
    """One line being labelled: what is taken in each row so far."""

    def __init__(self, line: Line, rows: Rows) -> None:
        self.line = line
        self.rows = rows
        self.placed: dict[int, Label] = {}
        self.taken: dict[int, list[tuple[float, float]]] = {}
        # From where to where each reaches along the line, and its two ends.
        self.leaders: list[tuple[float, float, _Span, _Span]] = []
        self.farthest = 0.0
        strokes = {place for ends in line.ends for place in ends}
        # From left to right, so that what stands near a place is found without looking at the whole line.
        self.crossing = sorted((place - CLEAR, place + CLEAR) for place in line.crossing)
        self.above = sorted([*self.crossing, *((place - STROKE - 0.2, place + STROKE + 0.2) for place in strokes)])
        self.widest = 0.0

    def _find(self, row: int, low: float, high: float, width: float, wish: float) -> float | None:
        """The centre nearest to ``wish`` at which ``width`` stands free within ``low`` to ``high``."""
        half = width / 2
        first, last = max(low, self.line.bounds[0]) + half, min(high, self.line.bounds[1]) - half
        if last < first - 1e-9:
            return None
        wish = min(max(wish, first), last)
        near, far = first - half, last + half
        standing = self.above if row == 0 else self.crossing
        spans = [(a - half, b + half) for a, b in _within(standing, near, far, _WIDEST)]
        taken = self.taken.get(row)
        if taken is not None:
            labels = _within(taken, near - APART, far + APART, self.widest)
            spans += [(a - half - APART, b + half + APART) for a, b in labels]
        # What blocks the wish may be several spans that run into each other: the free places nearest to it are their ends.
        left = right = wish
        spans.sort()
        for a, b in spans:
            if a + 1e-9 < right and right < b - 1e-9:
                right = b
        spans.sort(key=_end, reverse=True)
        for a, b in spans:
            if a + 1e-9 < left and left < b - 1e-9:
                left = a
        free = [place for place in (left, right) if first - 1e-9 <= place <= last + 1e-9]
        return min(free, key=lambda place: (abs(place - wish), place), default=None)

    def _settle(self, row: int, low: float, high: float, width: float, wish: float, spare: float) -> float | None:
        """As ``_find``, but only where there is ``spare`` on both sides; where it then stands does not depend on that."""
        if spare and self._find(row, low, high, width + 2 * spare, wish) is None:
            return None
        return self._find(row, low, high, width, wish)

    def _put(self, index: int, text: str, step: str, row: int, centre: float, width: float, leader: bool = False) -> None:
        near, far = self.rows.box(row)
        middle = sum(self.line.ends[index]) / 2
        points = self._leader(middle, near, centre, width) if leader else None
        if points is not None:
            (x1, y1, x2, y2) = points
            insort(self.leaders, (min(x1, x2), max(x1, x2), (x1, y1), (x2, y2)))
            self.farthest = max(self.farthest, 1.5 * abs(x2 - x1) + 0.1)
        insort(self.taken.setdefault(row, []), (centre - width / 2, centre + width / 2))
        # Half a label's width more than the widest: what is rounded away must hide nothing.
        self.widest = max(self.widest, 1.5 * width)
        figure = self.line.segments[index].texts[-1]
        self.placed[index] = Label(text, figure, step.split(":")[0], centre, near, far, width, points, step)

    def _leader(self, middle: float, near: float, centre: float, width: float) -> tuple[float, float, float, float]:
        reach = max(0.0, width / 2 - 0.8)
        return (middle, 0.0, min(max(middle, centre - reach), centre + reach), near - 0.2)

    def _is_clear(self, leader: tuple[float, float, float, float], row: int, *, of_leaders: bool = True) -> bool:
        """Whether a leader to that row runs through no label nearer the line, and across no other leader."""
        a, b = (leader[0], leader[1]), (leader[2], leader[3])
        west, east = min(a[0], b[0]) - 0.5, max(a[0], b[0]) + 0.5
        if of_leaders and any(crosses(a, b, other[0], other[1]) for other in self._leaders_by(west, east)):
            return False
        # Row 0 lies on the leader's way only where it is on the outward side.
        for lower in range(0 if self.rows.above_is_out else 1, row):
            taken = self.taken.get(lower)
            if taken is None:
                continue
            near, far = self.rows.box(lower)
            for low, high in _within(taken, west, east, self.widest):
                if crosses_box(a, b, (low - 0.4, near, high + 0.4, far)):
                    return False
        return True

    def _is_untouched(self, row: int, centre: float, width: float) -> bool:
        """Whether no leader placed so far runs through a label there."""
        near, far = self.rows.box(row)
        box = (centre - width / 2 - 0.3, near, centre + width / 2 + 0.3, far)
        return not any(crosses_box(a, b, box) for a, b in self._leaders_by(box[0] - 0.1, box[2] + 0.1))

    def _leaders_by(self, west: float, east: float) -> list[tuple[_Span, _Span]]:
        """Both ends of the leaders that pass anywhere between two places along the line."""
        first = bisect_left(self.leaders, (west - self.farthest,))
        last = bisect_left(self.leaders, (east,))
        return [(a, b) for _, reach, a, b in self.leaders[first:last] if reach > west]

    def _width(self, text: str) -> float:
        return text_width(text, FIGURE)

    def between(self, index: int, previous: str | None) -> bool:
        """Rung 1, the fuller text before the bare figure."""
        low, high = self.line.ends[index]
        texts = self.line.segments[index].texts
        for place, text in enumerate(texts):
            step = f"between:{place}"
            centre = self._settle(0, low, high, self._width(text), (low + high) / 2, _spare(step, previous))
            if centre is not None:
                self._put(index, text, step, 0, centre, self._width(text))
                return True
        return False

    def descend(self, index: int, previous: str | None) -> None:
        """Rungs 2 to 5."""
        if not (self._beside(index, previous) or self._staggered(index, previous) or self._led(index, previous)):
            self._key(index)

    def _beside(self, index: int, previous: str | None) -> bool:
        text = self.line.segments[index].texts[-1]
        width = self._width(text)
        low, high = self.line.ends[index]
        count = len(self.line.ends)
        for neighbour, start, way in self._ways(index, low, high):
            if 0 <= neighbour < count:
                if abs(self.line.ends[neighbour][0 if way > 0 else 1] - start) > 0.05:
                    continue
                # Over a neighbour whose own figure stands elsewhere this one would be read as the neighbour's.
                own = self.placed.get(neighbour)
                if own is None or own.rung != "between":
                    continue
                far = own.centre - way * (own.width / 2 + 2.5)
            else:
                far = start + way * (width + 4.0)
            wish = start + way * (STROKE + 0.3 + width / 2)
            left, right = min(start, far), max(start, far)
            step = f"beside:{way:+.0f}"
            centre = self._settle(0, left, right, width, wish, _spare(step, previous))
            if centre is not None and abs(centre - wish) < 1.5 and self._is_untouched(0, centre, width):
                self._put(index, text, step, 0, centre, width)
                return True
        return False

    def _ways(self, index: int, low: float, high: float) -> list[tuple[int, float, float]]:
        # Past the end first, then over the neighbour that matters less (a gap, not a window), then the wider one: so the
        # two casings of a window are led out alike.
        def rank(way: tuple[int, float, float]) -> tuple[int, float]:
            neighbour = way[0]
            if not 0 <= neighbour < len(self.line.ends):
                return -1, 0.0
            start, end = self.line.ends[neighbour]
            return self.line.segments[neighbour].priority, round(start - end, 3)

        return sorted([(index + 1, high, 1.0), (index - 1, low, -1.0)], key=rank)

    def _staggered(self, index: int, previous: str | None) -> bool:
        text = self.line.segments[index].texts[-1]
        width = self._width(text)
        low, high = self.line.ends[index]
        middle = (low + high) / 2
        slack = max(0.0, width / 2 - 1.5)
        reach = width / 2 + slack + SPARE
        centre = self._settle(1, middle - reach, middle + reach, width, middle, _spare("staggered", previous))
        if centre is None or not self._is_untouched(1, centre, width):
            return False
        self._put(index, text, "staggered", 1, centre, width)
        return True

    def _led(self, index: int, previous: str | None) -> bool:
        text = self.line.segments[index].texts[-1]
        width = self._width(text)
        return any(
            self._try_led(index, text, "leader", row, width, width + reach + SPARE, previous)
            for row, reach in ((1, 2.5), (2, 6.0))
        )

    def _try_led(
        self,
        index: int,
        text: str,
        rung: str,
        row: int,
        width: float,
        reach: float,
        previous: str | None,
        *,
        of_leaders: bool = True,
    ) -> bool:
        middle = sum(self.line.ends[index]) / 2
        near, _ = self.rows.box(row)
        for place, wish in enumerate((middle, middle - reach / 2, middle + reach / 2)):
            step = f"{rung}:{row}:{place}"
            spare = 0.0 if rung == "key" else _spare(step, previous)
            centre = self._settle(row, middle - reach, middle + reach, width, wish, spare)
            if (
                centre is not None
                and self._is_untouched(row, centre, width)
                and self._is_clear(self._leader(middle, near, centre, width), row, of_leaders=of_leaders)
            ):
                self._put(index, text, step, row, centre, width, leader=True)
                return True
        return False

    def _key(self, index: int) -> None:
        text = self.line.segments[index].texts[-1]
        width = self.line.letter_room
        low, high = self.line.ends[index]
        middle = (low + high) / 2
        centre = self._find(0, low, high, width, middle)
        if centre is not None:
            self._put(index, text, "key", 0, centre, width)
            return
        centre = self._find(1, middle - width * 0.9, middle + width * 0.9, width, middle)
        if centre is not None:
            self._put(index, text, "key", 1, centre, width)
            return
        for of_leaders in (True, False):
            for row in range(1, CLEAR_ROWS):
                reach = width + (3.0 if of_leaders else 6.0) * row
                if self._try_led(index, text, "key", row, width, reach, None, of_leaders=of_leaders):
                    return
        for row in range(1, MOST_ROWS):
            centre = self._find(row, middle - width - 3.0 * row, middle + width + 3.0 * row, width, middle)
            if centre is not None:
                self._put(index, text, "key", row, centre, width, leader=True)
                return
        # Every row is crossed by lines from farther out: the letter takes a row of its own, over a line.
        row = max(self.taken, default=0) + 1
        centre = min(max(middle, self.line.bounds[0] + width / 2), self.line.bounds[1] - width / 2)
        self._put(index, text, "key", row, centre, width, leader=True)
