"""The rod as a beam: where loads hang, what every bracket carries, and the line that it sags to.

Euler and Bernoulli's beam of one stiffness over any number of supports, with free ends beyond the outer ones, hinges where
two pieces are joined, and supports that give. The moments over the supports follow from Clapeyron's theorem of three
moments with settled supports (any text on strength of materials, for example Timoshenko, Strength of Materials I,
chapter 7); between two places where the load changes the line is a quartic, kept as its coefficients, so that lines of
several loads add up by adding those.

Forces in N, lengths in mm, stiffness in N mm2; loads, reactions of a support and sags are positive as they usually are:
a load and a sag downwards, a reaction upwards.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from elevation.units.tolerance import TOUCH_MM

Array = NDArray[np.float64]

_SAMPLES = 13
_STEPS = np.linspace(0.0, 1.0, _SAMPLES)
_POWERS = np.vander(_STEPS, 5, increasing=True)
"""Powers 0 to 4 of where a stretch is looked at first, before its deepest place is found exactly."""


class Load(Struct, frozen=True, gc=False):
    """A force spread evenly from ``left_mm`` to ``right_mm`` along the rod; at one place where both are the same."""

    left_mm: float
    right_mm: float
    force_n: float


class Beam(Struct, frozen=True, gc=False):
    """A rod as a beam.

    Attributes
    ----------
    left_mm, right_mm : float
        Its ends.
    supports_mm : tuple of float
        Where it is carried, rising.
    stiffness_n_mm2 : float
        Modulus of elasticity times second moment of area.
    hinges_mm : tuple of float
        Joints that carry no bending. Those at or beyond the outer supports count for nothing: what stands out there is
        held by its spigot.
    gives_mm_per_n : tuple of float
        How far each support gives under 1 N; empty: none does.
    """

    left_mm: float
    right_mm: float
    supports_mm: tuple[float, ...]
    stiffness_n_mm2: float
    hinges_mm: tuple[float, ...] = ()
    gives_mm_per_n: tuple[float, ...] = ()


class Bent(Struct, frozen=True, gc=False):
    """What one set of loads does to a beam.

    Attributes
    ----------
    beam : Beam
    reactions_n : tuple of float
        Of each support, upwards; negative where the rod pulls up on it.
    moments_nmm : tuple of float
        Over each support; negative where the rod is bent upwards (hogging).
    breaks_mm : tuple of float
        Places where load or support changes; the line is one quartic between two of them.
    quartics : array, shape (stretches, 5)
        Sag in mm over u mm from the stretch's left end: coefficients of 1, u, u2, u3, u4.
    """

    beam: Beam
    reactions_n: tuple[float, ...]
    moments_nmm: tuple[float, ...]
    breaks_mm: tuple[float, ...]
    quartics: Array

    def plus(self, other: Bent) -> Bent:
        """Both sets of loads together; they must have been worked out in one call of ``bend``."""
        return Bent(
            self.beam,
            tuple(a + b for a, b in zip(self.reactions_n, other.reactions_n, strict=True)),
            tuple(a + b for a, b in zip(self.moments_nmm, other.moments_nmm, strict=True)),
            self.breaks_mm,
            self.quartics + other.quartics,
        )

    def _stretch(self, x_mm: float) -> tuple[int, float]:
        last = len(self.breaks_mm) - 2
        index = next((i for i in range(last) if x_mm <= self.breaks_mm[i + 1]), last)
        return index, x_mm - self.breaks_mm[index]

    def sag_at(self, x_mm: float) -> float:
        """Sag in mm at one place."""
        index, u = self._stretch(x_mm)
        return _value(self.quartics[index], u)

    def slope_at(self, x_mm: float) -> float:
        """Slope of the line at one place: sag per mm to the right; at a break, that just left of it."""
        index, u = self._stretch(x_mm)
        return _slope(self.quartics[index], u)

    def moment_at(self, x_mm: float) -> float:
        """Bending moment in N mm at one place."""
        index, u = self._stretch(x_mm)
        return -self.beam.stiffness_n_mm2 * _curvature(self.quartics[index], u)

    def greatest_moment(self) -> float:
        """The greatest bending moment either way, in N mm."""
        most = 0.0
        for index, (left, right) in enumerate(pairwise(self.breaks_mm)):
            _, _, c2, c3, c4 = (float(c) for c in self.quartics[index])
            places = [0.0, right - left]
            if c4 != 0 and 0 < -c3 / (4 * c4) < right - left:
                # Where the shear is nothing.
                places.append(-c3 / (4 * c4))
            most = max(most, *(abs(2 * c2 + 6 * c3 * u + 12 * c4 * u * u) for u in places))
        return most * self.beam.stiffness_n_mm2

    def line(self) -> tuple[Array, Array]:
        """The line at closely spaced places: x in mm, sag in mm."""
        starts, long = np.array(self.breaks_mm[:-1]), np.diff(np.array(self.breaks_mm))
        return (starts[:, None] + long[:, None] * _STEPS).ravel(), _sampled(self.quartics, long).ravel()

    def deepest(self, left_mm: float, right_mm: float, *, from_chord: bool = True) -> tuple[float, float]:
        """Where the line is deepest between two breaks, and by how much: x and sag in mm.

        ``from_chord``: below the straight line through both places, so that supports that give do not count.
        """
        low = next(i for i, x in enumerate(self.breaks_mm) if x >= left_mm - TOUCH_MM)
        high = next(i for i, x in enumerate(self.breaks_mm) if x >= right_mm - TOUCH_MM)
        if high <= low:
            return left_mm, 0.0
        quartics = self.quartics[low:high].copy()
        breaks = np.array(self.breaks_mm[low : high + 1])
        if from_chord:
            first, last = self.sag_at(left_mm), self.sag_at(right_mm)
            steep = (last - first) / (right_mm - left_mm)
            quartics[:, 0] -= first + steep * (breaks[:-1] - left_mm)
            quartics[:, 1] -= steep
        long = np.diff(breaks)
        found = _sampled(quartics, long)
        index, step = divmod(int(np.argmax(found)), _SAMPLES)
        best = [(float(found[index, step]), index, float(_STEPS[step] * long[index]))]
        # The deepest place may lie just across a break from the deepest one that was looked at.
        for near in {max(index - (step == 0), 0), index, min(index + (step == _SAMPLES - 1), len(long) - 1)}:
            u = _flattest(quartics[near], best[0][2] if near == index else (0.0 if near > index else float(long[near])))
            if 0 < u < long[near]:
                best.append((_value(quartics[near], u), near, u))
        sag, index, u = max(best)
        return float(breaks[index]) + u, sag


def _value(c: Array, u: float) -> float:
    return float(c[0] + u * (c[1] + u * (c[2] + u * (c[3] + u * c[4]))))


def _slope(c: Array, u: float) -> float:
    return float(c[1] + u * (2 * c[2] + u * (3 * c[3] + u * 4 * c[4])))


def _curvature(c: Array, u: float) -> float:
    return float(2 * c[2] + u * (6 * c[3] + u * 12 * c[4]))


def _sampled(quartics: Array, long: Array) -> Array:
    """Sag of every stretch at the places looked at, shape (stretches, samples)."""
    sampled: Array = (quartics * np.vander(long, 5, increasing=True)) @ _POWERS.T
    return sampled


def _flattest(c: Array, start: float) -> float:
    """Where the line of one quartic is level, by Newton's method from near by."""
    u = start
    for _ in range(12):
        bend_here = _curvature(c, u)
        if bend_here == 0:
            break
        step = _slope(c, u) / bend_here
        u -= step
        if abs(step) < 1e-10:
            break
    return u


class _Part(Struct, gc=False):
    """One case of loads cut at the breaks: per stretch the force on each mm, per break the force at it."""

    even: list[float]
    at: list[float]


def _cut(beam: Beam, loads: Sequence[Load]) -> list[Load]:
    """Loads brought onto the rod: what would hang beside it hangs at its end."""
    found = []
    for load in loads:
        left = min(max(load.left_mm, beam.left_mm), beam.right_mm)
        right = max(min(load.right_mm, beam.right_mm), left)
        found.append(Load(left, right if right - left > TOUCH_MM else left, load.force_n))
    return found


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
    cut = [_cut(beam, loads) for loads in cases]
    places = {beam.left_mm, beam.right_mm, *nodes}
    places.update(x for loads in cut for load in loads for x in (load.left_mm, load.right_mm))
    breaks = sorted(places)
    parts = _parts(cut, breaks)
    at = [breaks.index(x) for x in nodes]
    spans = [[_spanned(part, breaks, low, high) for low, high in pairwise(at)] for part in parts]
    ends = [_ends(part, breaks, at) for part in parts]
    solved = _solved(beam, nodes, hinges, free, spans, ends)
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
    beam: Beam,
    nodes: Sequence[float],
    hinges: Sequence[float],
    free: Sequence[float],
    spans: Sequence[Sequence[_Spanned]],
    ends: Sequence[_Ends],
) -> list[tuple[list[float], list[float]]] | None:
    """Moment and sag (times stiffness) at every node, for each case.

    Two unknowns a node. The moment: known at the outer ones, nothing at a hinge, else such that the line has no corner.
    The sag: such that a free hinge carries nothing, and a support gives as much as it is pressed.
    """
    count, scale = len(nodes), nodes[-1] - nodes[0]
    long = [(b - a) / scale for a, b in pairwise(nodes)]
    is_free = [x in free for x in nodes]
    is_hinge = [any(abs(x - hinge) <= TOUCH_MM for hinge in hinges) for x in nodes]
    gives = iter(beam.gives_mm_per_n or (0.0,) * len(beam.supports_mm))
    give = [0.0 if is_free[i] else next(gives) * beam.stiffness_n_mm2 / scale**3 for i in range(count)]
    known = np.zeros((2 * count, len(spans)))
    matrix = np.zeros((2 * count, 2 * count))
    for i in range(count):
        row = matrix[i]
        row[i] = 1.0
        if 0 < i < count - 1 and not is_hinge[i]:
            before, after = long[i - 1], long[i]
            row[i - 1], row[i], row[i + 1] = before, 2 * (before + after), after
            row[count + i - 1], row[count + i + 1] = 6 / before, 6 / after
            row[count + i] = -6 / before - 6 / after
            known[i] = [-(case[i - 1].right_term + case[i].left_term) / scale**2 for case in spans]
        # The reaction of this node, as far as the moments make it.
        row = matrix[count + i]
        press = 1.0 if is_free[i] else give[i]
        if i > 0:
            row[i - 1] += press / long[i - 1]
            row[i] -= press / long[i - 1]
        if i < count - 1:
            row[i + 1] += press / long[i]
            row[i] -= press / long[i]
        if not is_free[i]:
            row[count + i] = -1.0
        hung = [_hung(case, end, i, count) for case, end in zip(spans, ends, strict=True)]
        known[count + i] = [-press * force for force in hung]
    known[0] = [end.left_nmm / scale for end in ends]
    known[count - 1] = [end.right_nmm / scale for end in ends]
    try:
        found = np.linalg.solve(matrix, known)
    except np.linalg.LinAlgError:
        return None
    if not np.all(np.abs(found) <= 1e9 * (1 + np.max(np.abs(known)))):
        # As good as singular: a hinge lets it fall.
        return None
    return [
        ([float(m) * scale for m in column[:count]], [float(v) * scale**3 for v in column[count:]]) for column in found.T
    ]


def _hung(spans: Sequence[_Spanned], ends: _Ends, index: int, count: int) -> float:
    """Reaction of a node if no span were bent over it."""
    force = 0.0
    if index > 0:
        force += spans[index - 1].right_n
    else:
        force += ends.left_n
    if index < count - 1:
        force += spans[index].left_n
    else:
        force += ends.right_n
    return force


def _quartics(
    beam: Beam,
    part: _Part,
    breaks: Sequence[float],
    at: Sequence[int],
    moments: Sequence[float],
    settled: Sequence[float],
    spans: Sequence[_Spanned],
) -> Array:
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
    quartics: Array = np.array(found) / beam.stiffness_n_mm2
    return quartics


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
