"""Reactions and line of a continuous beam.

The moments over the supports follow from Clapeyron's theorem of three moments, with settlements where a hinge hangs free
(any text on strength of materials, for example Timoshenko, Strength of Materials, part I, chapter 7).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.trade.beam import Beam, Bent, Load, Quartics
from elevation.units.tolerance import TOUCH_MM


class _Part(Struct, gc=False):
    """One case of loads cut at the breaks: per stretch the force on each mm, per break the force at it."""

    even: list[float]
    at: list[float]


def _onto(load: Load, fixed: Sequence[float]) -> Load:
    """A load brought onto the rod: what would hang beside it hangs at its end, what is as good as at a support is at it."""
    left, right = (_place(x, fixed) for x in (load.left_mm, load.right_mm))
    return Load(left, right if right - left > TOUCH_MM else left, load.force_n)


def _place(x: float, fixed: Sequence[float]) -> float:
    x = min(max(x, fixed[0]), fixed[-1])
    for place in fixed:
        if abs(x - place) <= TOUCH_MM:
            return place
    # Places that only float noise tells apart are one.
    return round(x, 6)


def _parts(cases: Sequence[Sequence[Load]], breaks: Sequence[float]) -> list[_Part]:
    place = {x: index for index, x in enumerate(breaks)}
    parts = []
    for loads in cases:
        part = _Part([0.0] * (len(breaks) - 1), [0.0] * len(breaks))
        for load in loads:
            low, high = place[load.left_mm], place[load.right_mm]
            if low == high:
                part.at[low] += load.force_n
                continue
            each = load.force_n / (load.right_mm - load.left_mm)
            for index in range(low, high):
                part.even[index] += each
        parts.append(part)
    return parts


class _Spanned(Struct, gc=False):
    """A span's loads as its ends feel them: reactions of the span alone, and the terms of the three moments."""

    left_n: float = 0.0
    right_n: float = 0.0
    left_term: float = 0.0
    right_term: float = 0.0


def _spanned(part: _Part, breaks: Sequence[float], low: int, high: int) -> _Spanned:
    """Loads between breaks ``low`` and ``high``, those at ``low`` with them (they go straight into its support)."""
    found = _Spanned(left_n=part.at[low])
    start, long = breaks[low], breaks[high] - breaks[low]
    for index in range(low, high):
        a, b = breaks[index] - start, breaks[index + 1] - start
        each, point = part.even[index], part.at[index]
        if each:
            force, middle = each * (b - a), (a + b) / 2
            found.right_n += force * middle / long
            found.left_n += force * (long - middle) / long
            found.left_term += each * (_left_integral(b, long) - _left_integral(a, long))
            found.right_term += each * (_right_integral(b, long) - _right_integral(a, long))
        if point and index > low:
            found.right_n += point * a / long
            found.left_n += point * (long - a) / long
            found.left_term += point * a * (long - a) * (2 * long - a) / long
            found.right_term += point * a * (long * long - a * a) / long
    return found


def _left_integral(s: float, long: float) -> float:
    """Of s (L - s) (2 L - s) / L."""
    return s * s * (long - s + s * s / (4 * long))


def _right_integral(s: float, long: float) -> float:
    """Of s (L2 - s2) / L."""
    return s * s * (long / 2 - s * s / (4 * long))


def bend(beam: Beam, cases: Sequence[Sequence[Load]]) -> tuple[Bent, ...] | None:
    """Reactions and line of a beam under each of several sets of loads.

    Parameters
    ----------
    beam : Beam
    cases : sequence of sequences of Load
        Each is worked out by itself; they may be added to one another afterwards.

    Returns
    -------
    tuple of Bent, or None
        None where the beam cannot stand (fewer than two supports, a hinge that lets it fall) or has no stiffness.
    """
    if len(beam.supports_mm) < 2 or not beam.stiffness_n_mm2 > 0:
        return None
    first, last = beam.supports_mm[0], beam.supports_mm[-1]
    hinges = [x for x in beam.hinges_mm if first + TOUCH_MM < x < last - TOUCH_MM]
    free = [x for x in hinges if all(abs(x - at) > TOUCH_MM for at in beam.supports_mm)]
    nodes = sorted((*beam.supports_mm, *free))
    if any(b - a <= TOUCH_MM for a, b in pairwise(nodes)):
        return None
    left = first if first - beam.left_mm <= TOUCH_MM else beam.left_mm
    right = last if beam.right_mm - last <= TOUCH_MM else beam.right_mm
    fixed = (left, *nodes, right)
    cut = [[_onto(load, fixed) for load in loads] for loads in cases]
    places = {left, right, *nodes}
    places.update(x for loads in cut for load in loads for x in (load.left_mm, load.right_mm))
    breaks = sorted(places)
    parts = _parts(cut, breaks)
    at = [breaks.index(x) for x in nodes]
    spans = [[_spanned(part, breaks, low, high) for low, high in pairwise(at)] for part in parts]
    ends = [_ends(part, breaks, at) for part in parts]
    solved = _solved(nodes, hinges, free, spans, ends)
    if solved is None:
        return None
    supported = [index for index, x in enumerate(nodes) if x not in free]
    bent = []
    for number, part in enumerate(parts):
        moments, settled = solved[number]
        reactions = _reactions(nodes, moments, spans[number], ends[number])
        quartics = _quartics(beam, part, breaks, at, moments, settled, spans[number])
        bent.append(
            Bent(
                beam,
                tuple(reactions[index] for index in supported),
                tuple(moments[index] for index in supported),
                tuple(breaks),
                quartics,
            )
        )
    return tuple(bent)


class _Ends(Struct, gc=False):
    """What hangs beyond the outer supports: force and moment there, with what hangs right at the last one."""

    left_n: float
    left_nmm: float
    right_n: float
    right_nmm: float


def _ends(part: _Part, breaks: Sequence[float], at: Sequence[int]) -> _Ends:
    found = _Ends(0.0, 0.0, part.at[at[-1]], 0.0)
    for index in range(at[0]):
        force = part.even[index] * (breaks[index + 1] - breaks[index])
        found.left_n += force + part.at[index]
        found.left_nmm -= force * (breaks[at[0]] - (breaks[index] + breaks[index + 1]) / 2)
        found.left_nmm -= part.at[index] * (breaks[at[0]] - breaks[index])
    for index in range(at[-1], len(breaks) - 1):
        force = part.even[index] * (breaks[index + 1] - breaks[index])
        found.right_n += force + part.at[index + 1]
        found.right_nmm -= force * ((breaks[index] + breaks[index + 1]) / 2 - breaks[at[-1]])
        found.right_nmm -= part.at[index + 1] * (breaks[index + 1] - breaks[at[-1]])
    return found


def _reactions(nodes: Sequence[float], moments: Sequence[float], spans: Sequence[_Spanned], ends: _Ends) -> list[float]:
    found = [0.0] * len(nodes)
    found[0], found[-1] = ends.left_n, ends.right_n
    for index, (a, b) in enumerate(pairwise(nodes)):
        turned = (moments[index + 1] - moments[index]) / (b - a)
        found[index] += spans[index].left_n + turned
        found[index + 1] += spans[index].right_n - turned
    return found


def _solved(
    nodes: Sequence[float],
    hinges: Sequence[float],
    free: Sequence[float],
    spans: Sequence[Sequence[_Spanned]],
    ends: Sequence[_Ends],
) -> list[tuple[list[float], list[float]]] | None:
    """Moment and sag (times stiffness) at every node, for each case.

    Two unknowns a node. The moment: known at the outer ones, nothing at a hinge, else such that the line has no corner.
    The sag: nothing at a support, and such that a free hinge carries nothing.
    """
    count, scale = len(nodes), nodes[-1] - nodes[0]
    long = [(b - a) / scale for a, b in pairwise(nodes)]
    is_free = [x in free for x in nodes]
    is_hinge = [any(abs(x - hinge) <= TOUCH_MM for hinge in hinges) for x in nodes]
    known = [[0.0] * len(spans) for _ in range(2 * count)]
    matrix = [[0.0] * (2 * count) for _ in range(2 * count)]
    for i in range(count):
        row = matrix[i]
        row[i] = 1.0
        if 0 < i < count - 1 and not is_hinge[i]:
            before, after = long[i - 1], long[i]
            row[i - 1], row[i], row[i + 1] = before, 2 * (before + after), after
            row[count + i - 1], row[count + i + 1] = 6 / before, 6 / after
            row[count + i] = -6 / before - 6 / after
            known[i] = [-(case[i - 1].right_term + case[i].left_term) / scale**2 for case in spans]
        row = matrix[count + i]
        if not is_free[i]:
            row[count + i] = 1.0
            continue
        # What the two spans leave on a free hinge comes to nothing.
        row[i - 1], row[i], row[i + 1] = 1 / long[i - 1], -1 / long[i - 1] - 1 / long[i], 1 / long[i]
        known[count + i] = [-case[i - 1].right_n - case[i].left_n for case in spans]
    known[0] = [end.left_nmm / scale for end in ends]
    known[count - 1] = [end.right_nmm / scale for end in ends]
    greatest = max(abs(value) for row in known for value in row)
    found = _eliminated(matrix, known)
    if found is None or not all(abs(value) <= 1e9 * (1 + greatest) for row in found for value in row):
        # As good as singular: a hinge lets it fall.
        return None
    return [
        ([m * scale for m in column[:count]], [v * scale**3 for v in column[count:]]) for column in zip(*found, strict=True)
    ]


def _eliminated(matrix: list[list[float]], known: list[list[float]]) -> list[list[float]] | None:
    """Unknowns of linear equations for several right-hand sides, by Gauss with pivots; None where they are singular.

    ``matrix`` and ``known`` hold a row an equation and are used up.
    """
    size = len(matrix)
    for i in range(size):
        pivot = max(range(i, size), key=lambda row: abs(matrix[row][i]))
        if matrix[pivot][i] == 0.0:
            return None
        matrix[i], matrix[pivot] = matrix[pivot], matrix[i]
        known[i], known[pivot] = known[pivot], known[i]
        row, right = matrix[i], known[i]
        for below in range(i + 1, size):
            times = matrix[below][i] / row[i]
            # Each equation names few unknowns: most have nothing to be taken away.
            if times:
                matrix[below] = [a - times * b for a, b in zip(matrix[below], row, strict=True)]
                known[below] = [a - times * b for a, b in zip(known[below], right, strict=True)]
    for i in reversed(range(size)):
        row, right = matrix[i], known[i]
        for j in range(i + 1, size):
            if row[j]:
                right = [a - row[j] * b for a, b in zip(right, known[j], strict=True)]
        known[i] = [value / row[i] for value in right]
    return known


def _quartics(
    beam: Beam,
    part: _Part,
    breaks: Sequence[float],
    at: Sequence[int],
    moments: Sequence[float],
    settled: Sequence[float],
    spans: Sequence[_Spanned],
) -> Quartics:
    """The line, span by span from what is known at its left end; then out over the free ends."""
    found: list[list[float]] = [[] for _ in range(len(breaks) - 1)]
    slope = last_slope = 0.0
    for number, (low, high) in enumerate(pairwise(at)):
        long = breaks[high] - breaks[low]
        m, m_end, v = moments[number], moments[number + 1], settled[number]
        q = spans[number].left_n - part.at[low] + (m_end - m) / long
        slope = (settled[number + 1] - v) / long + spans[number].left_term / 6 + (2 * m + m_end) * long / 6
        if number == 0:
            first_slope = slope
        for index in range(low, high):
            if index > low:
                q -= part.at[index]
            h, w = breaks[index + 1] - breaks[index], part.even[index]
            found[index] = [v, slope, -m / 2, -q / 6, w / 24]
            v += h * (slope - h * (m / 2 + h * (q / 6 - h * w / 24)))
            slope -= h * (m + h * (q / 2 - h * w / 6))
            m += h * (q - h * w / 2)
            q -= h * w
        last_slope = slope
    _right_end(found, part, breaks, at[-1], moments[-1], settled[-1], last_slope)
    _left_end(found, part, breaks, at[0], settled[0], first_slope)
    stiffness = beam.stiffness_n_mm2
    return tuple((a / stiffness, b / stiffness, c / stiffness, d / stiffness, e / stiffness) for a, b, c, d, e in found)


def _right_end(
    found: list[list[float]], part: _Part, breaks: Sequence[float], last: int, m: float, v: float, slope: float
) -> None:
    q = sum(part.even[i] * (breaks[i + 1] - breaks[i]) + part.at[i + 1] for i in range(last, len(breaks) - 1))
    for index in range(last, len(breaks) - 1):
        if index > last:
            q -= part.at[index]
        h, w = breaks[index + 1] - breaks[index], part.even[index]
        found[index] = [v, slope, -m / 2, -q / 6, w / 24]
        v += h * (slope - h * (m / 2 + h * (q / 6 - h * w / 24)))
        slope -= h * (m + h * (q / 2 - h * w / 6))
        m += h * (q - h * w / 2)
        q -= h * w


def _left_end(found: list[list[float]], part: _Part, breaks: Sequence[float], first: int, v: float, slope: float) -> None:
    """Moments from the free end inward, then slope and sag from the support outward."""
    q = m = 0.0
    starts = []
    for index in range(first):
        q -= part.at[index]
        h, w = breaks[index + 1] - breaks[index], part.even[index]
        starts.append((m, q))
        m += h * (q - h * w / 2)
        q -= h * w
    for index in reversed(range(first)):
        (m, q), h, w = starts[index], breaks[index + 1] - breaks[index], part.even[index]
        slope += h * (m + h * (q / 2 - h * w / 6))
        v -= h * (slope - h * (m / 2 + h * (q / 6 - h * w / 24)))
        found[index] = [v, slope, -m / 2, -q / 6, w / 24]
