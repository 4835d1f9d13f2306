"""Panels on a rod, each put where it is worst: what 1 N of each does is worked out once, cloth only makes it more.

A beam's loads add up, and a heavier panel is worst in the same place as a light one: so the worst place of each panel is
found for 1 N, and asked for again while cloth only grows longer or heavier, as it does for every treatment of a wall whose
floor is dragged.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.setting_out.model import Span
from elevation.trade.beam import Beam, Bent, Load, sampled, under
from elevation.trade.bending import bend

Place = tuple[Span, float]
"""Where a panel hangs on a rod, and what part of it hangs there: the rest of it may hang round a corner."""


class PanelUnit(Struct, frozen=True, gc=False):
    """1 N of one panel at each of its places, and the worst of them.

    Attributes
    ----------
    bent : tuple of Bent
        One a place, as drawn just now first.
    sags : tuple of list of float
        Likewise, at the places that are looked at first.
    deepest : list of float
        The most of ``sags`` at each of those.
    most_n, least_n : tuple of float
        The most and the least that each support carries of it.
    hogging_nmm : tuple of float
        The most that it bends the rod upwards over each support (negative).
    """

    bent: tuple[Bent, ...]
    sags: tuple[list[float], ...]
    deepest: list[float]
    most_n: tuple[float, ...]
    least_n: tuple[float, ...]
    hogging_nmm: tuple[float, ...]


class RodUnit(Struct, frozen=True, gc=False):
    """1 N along the rod, and of each panel on it; ``looks``: how often each stretch is looked at."""

    rod: Bent
    sags: list[float]
    panels: tuple[PanelUnit, ...]
    looks: int


def under_one_newton(beam: Beam, rod: Span, places: tuple[tuple[Place, ...], ...]) -> RodUnit | None:
    """What 1 N along the rod, and 1 N of each panel at each of its places, does; None where the rod cannot stand."""
    hung = [(rod, 1.0), *(place for panel in places for place in panel)]
    bent = bend(beam, [[Load(a, b, part)] for (a, b), part in hung])
    if bent is None:
        return None
    stretches = sampled(bent)
    flat = [[sag for stretch in one for sag in stretch] for one in stretches]
    panels, start = [], 1
    for panel in places:
        end = start + len(panel)
        panels.append(_panel(bent[start:end], flat[start:end]))
        start = end
    return RodUnit(bent[0], flat[0], tuple(panels), len(stretches[0][0]))


def _panel(bent: Sequence[Bent], sags: Sequence[list[float]]) -> PanelUnit:
    reactions = list(zip(*(one.reactions_n for one in bent), strict=True))
    moments = zip(*(one.moments_nmm for one in bent), strict=True)
    return PanelUnit(
        tuple(bent),
        tuple(sags),
        list(map(max, zip(*sags, strict=True))),
        tuple(map(max, reactions)),
        tuple(map(min, reactions)),
        tuple(map(min, moments)),
    )


class Hanging(Struct, frozen=True, gc=False):
    """The rod with what hangs on it, as heavy as that is.

    Attributes
    ----------
    unit : RodUnit
    rod_n : float
        What the rod weighs.
    panels_n : tuple of float
        What each panel weighs.
    """

    unit: RodUnit
    rod_n: float
    panels_n: tuple[float, ...]

    @property
    def beam(self) -> Beam:
        """The rod."""
        return self.unit.rod.beam

    @property
    def breaks_mm(self) -> tuple[float, ...]:
        """Places where load or support changes."""
        return self.unit.rod.breaks_mm

    def drawn(self) -> Bent:
        """With the panels as they are drawn just now."""
        hung = ((panel.bent[0], force) for panel, force in zip(self.unit.panels, self.panels_n, strict=True))
        return under([(self.unit.rod, self.rod_n), *hung])

    def most(self, index: int) -> float:
        """The most that a support carries, in N."""
        hung = sum(panel.most_n[index] * force for panel, force in zip(self.unit.panels, self.panels_n, strict=True))
        return self.unit.rod.reactions_n[index] * self.rod_n + hung

    def least(self, index: int) -> float:
        """The least that it carries; negative where the rod lifts on it."""
        hung = sum(panel.least_n[index] * force for panel, force in zip(self.unit.panels, self.panels_n, strict=True))
        return self.unit.rod.reactions_n[index] * self.rod_n + hung

    def hogging(self, index: int) -> float:
        """The most that the rod is bent upwards over a support, in N mm (negative)."""
        hung = sum(panel.hogging_nmm[index] * force for panel, force in zip(self.unit.panels, self.panels_n, strict=True))
        return self.unit.rod.moments_nmm[index] * self.rod_n + hung

    def worst(self, low: int, high: int, drawn: Bent) -> tuple[Bent, int]:
        """Each panel where the rod sags most between the breaks ``low`` and ``high``, and at which place looked at that is.

        ``drawn`` is given back where the panels are there already.
        """
        first, last = low * self.unit.looks, high * self.unit.looks
        rod_n = self.rod_n
        total = [sag * rod_n for sag in self.unit.sags[first:last]]
        for panel, force in zip(self.unit.panels, self.panels_n, strict=True):
            more = panel.deepest[first:last]
            total = [sag + force * by for sag, by in zip(total, more, strict=True)]
        at = first + total.index(max(total))
        chosen = []
        for panel in self.unit.panels:
            here = [sags[at] for sags in panel.sags]
            chosen.append(here.index(max(here)))
        if not any(chosen):
            return drawn, at
        hung = zip(self.unit.panels, chosen, self.panels_n, strict=True)
        return under([(self.unit.rod, rod_n), *((panel.bent[place], force) for panel, place, force in hung)]), at

    def tip(self, place: int) -> float:
        """The most that a free end sags at its tip: the first (0) or the last (-1) place looked at."""
        hung = sum(panel.deepest[place] * force for panel, force in zip(self.unit.panels, self.panels_n, strict=True))
        return self.unit.sags[place] * self.rod_n + hung
