"""The rod as a beam: where loads hang, what every bracket carries, and the line that it sags to.

Euler and Bernoulli's beam of one stiffness over any number of supports, with free ends beyond the outer ones, hinges where
two pieces are joined. Between two places where load or support changes the line is a quartic, kept as its coefficients, so
that the lines of several loads add up by adding those. How it is worked out stands in ``bending``.

Forces in N, lengths in mm, stiffness in N mm2; loads, reactions of a support and sags are positive as they usually are:
a load and a sag downwards, a reaction upwards.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.units.tolerance import TOUCH_MM

Quartic = tuple[float, float, float, float, float]
"""Coefficients of 1, u, u2, u3, u4."""
Quartics = tuple[Quartic, ...]
Samples = list[list[float]]
"""Sag at closely spaced places: for every stretch, from its left end to its right."""

# Plain floats on purpose: a rod has a handful of stretches, for which a library of arrays is no faster, and every window
# and every check would wait for it to load.
_SAMPLES = 13
_STEPS = tuple(step / (_SAMPLES - 1) for step in range(_SAMPLES))
"""Where a stretch is looked at first, before its deepest place is found exactly."""


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
    """

    left_mm: float
    right_mm: float
    supports_mm: tuple[float, ...]
    stiffness_n_mm2: float
    hinges_mm: tuple[float, ...] = ()


class Sagged(Struct, frozen=True, gc=False):
    """A sagged line as plain numbers: places along the rod, and between two of them the coefficients of a quartic.

    ``quartics`` give the sag in mm over u mm from the stretch's left end: coefficients of 1, u, u2, u3, u4.
    """

    breaks_mm: tuple[float, ...]
    quartics: tuple[tuple[float, ...], ...]

    def at(self, x_mm: float) -> float:
        """Sag in mm at one place."""
        last = len(self.quartics) - 1
        index = next((i for i in range(last) if x_mm <= self.breaks_mm[i + 1]), last)
        u = x_mm - self.breaks_mm[index]
        c0, c1, c2, c3, c4 = self.quartics[index]
        return c0 + u * (c1 + u * (c2 + u * (c3 + u * c4)))


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
    quartics : tuple of Quartic, one a stretch
        Sag in mm over u mm from the stretch's left end: coefficients of 1, u, u2, u3, u4.
    """

    beam: Beam
    reactions_n: tuple[float, ...]
    moments_nmm: tuple[float, ...]
    breaks_mm: tuple[float, ...]
    quartics: Quartics

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
            _, _, c2, c3, c4 = self.quartics[index]
            places = [0.0, right - left]
            if c4 != 0 and 0 < -c3 / (4 * c4) < right - left:
                # Where the shear is nothing.
                places.append(-c3 / (4 * c4))
            most = max(most, *(abs(2 * c2 + 6 * c3 * u + 12 * c4 * u * u) for u in places))
        return most * self.beam.stiffness_n_mm2

    def line(self, times: float = 1.0) -> Sagged:
        """The line as plain numbers, ``times`` as deep."""
        return Sagged(self.breaks_mm, tuple(tuple(c * times for c in quartic) for quartic in self.quartics))

    def deepest(self, left_mm: float, right_mm: float) -> tuple[float, float]:
        """Where the line is deepest between two supports, or a support and an end, and by how much: x and sag in mm."""
        low = next(i for i, x in enumerate(self.breaks_mm) if x >= left_mm - TOUCH_MM)
        high = next(i for i, x in enumerate(self.breaks_mm) if x >= right_mm - TOUCH_MM)
        if high <= low:
            return left_mm, 0.0
        quartics, breaks = self.quartics[low:high], self.breaks_mm[low : high + 1]
        long = [b - a for a, b in pairwise(breaks)]
        found = [sag for stretch in _sampled(quartics, long) for sag in stretch]
        return self.deepest_by(low, high, low * _SAMPLES + found.index(max(found)))

    def deepest_by(self, low: int, high: int, place: int) -> tuple[float, float]:
        """Where the line is deepest between the breaks ``low`` and ``high``: x and sag in mm.

        ``place`` is where it is deepest of all that ``sampled`` looks at, counted along the whole rod.
        """
        quartics, breaks = self.quartics[low:high], self.breaks_mm[low : high + 1]
        long = [b - a for a, b in pairwise(breaks)]
        index, step = divmod(place - low * _SAMPLES, _SAMPLES)
        start = _STEPS[step] * long[index]
        best = [(_value(quartics[index], start), index, start)]
        # The deepest place may lie just across a break from the deepest one that was looked at.
        for near in {max(index - (step == 0), 0), index, min(index + (step == _SAMPLES - 1), len(long) - 1)}:
            u = _flattest(quartics[near], start if near == index else (0.0 if near > index else long[near]))
            if 0 < u < long[near]:
                best.append((_value(quartics[near], u), near, u))
        sag, index, u = max(best)
        return breaks[index] + u, sag


def under(loads: Sequence[tuple[Bent, float]]) -> Bent:
    """What several sets of loads do together, each so many times as heavy as it was worked out for.

    All must have been worked out in one call of ``bend``: a beam's loads add up.
    """
    (first, force), *others = loads
    quartics = [(a * force, b * force, c * force, d * force, e * force) for a, b, c, d, e in first.quartics]
    reactions = [one * force for one in first.reactions_n]
    moments = [one * force for one in first.moments_nmm]
    for more, force in others:
        quartics = [
            (a + force * f, b + force * g, c + force * h, d + force * i, e + force * j)
            for (a, b, c, d, e), (f, g, h, i, j) in zip(quartics, more.quartics, strict=True)
        ]
        reactions = [one + force * another for one, another in zip(reactions, more.reactions_n, strict=True)]
        moments = [one + force * another for one, another in zip(moments, more.moments_nmm, strict=True)]
    return Bent(first.beam, tuple(reactions), tuple(moments), first.breaks_mm, tuple(quartics))


def sampled(bent: Sequence[Bent]) -> list[Samples]:
    """Sag under each set of loads at closely spaced places of every stretch."""
    long = [b - a for a, b in pairwise(bent[0].breaks_mm)]
    return [_sampled(one.quartics, long) for one in bent]


def _value(c: Quartic, u: float) -> float:
    return c[0] + u * (c[1] + u * (c[2] + u * (c[3] + u * c[4])))


def _slope(c: Quartic, u: float) -> float:
    return c[1] + u * (2 * c[2] + u * (3 * c[3] + u * 4 * c[4]))


def _curvature(c: Quartic, u: float) -> float:
    return 2 * c[2] + u * (6 * c[3] + u * 12 * c[4])


def _sampled(quartics: Sequence[Quartic], long: Sequence[float]) -> Samples:
    """Sag of every stretch at the places looked at."""
    found = []
    for (c0, c1, c2, c3, c4), wide in zip(quartics, long, strict=True):
        places = [step * wide for step in _STEPS]
        found.append([c0 + u * (c1 + u * (c2 + u * (c3 + u * c4))) for u in places])
    return found


def _flattest(c: Quartic, start: float) -> float:
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
