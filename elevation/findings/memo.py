"""Remembering what rules found in a treatment, as long as nothing they read has changed."""

from __future__ import annotations

from collections.abc import Callable

from elevation.findings.model import Finding, Scene
from elevation.room.find import scheme_of
from elevation.room.model import Ref
from elevation.setting_out.model import TreatmentOut

_MOST = 512  # treatments remembered; a house has fewer on the walls that are open


class TreatmentMemo:
    """A function of (scene, treatment) that remembers its last two answers for each treatment.

    The treatment is compared by identity, and so is what else rules about one treatment read: wall, openings, obstacles,
    limits, tables. Parts of the wall that were made anew but are equal count as the same.

    Parameters
    ----------
    run : callable
        ``(scene, treatment) -> findings``; must depend on nothing but what ``facts_of`` gives.

    Attributes
    ----------
    calls : int
        How often ``run`` really ran.
    """

    def __init__(self, run: Callable[[Scene, TreatmentOut], tuple[Finding, ...]]) -> None:
        self._run = run
        self._kept: dict[Ref, tuple[tuple[TreatmentOut, tuple[object, ...], tuple[Finding, ...]], ...]] = {}
        self.calls = 0

    def __call__(self, scene: Scene, treatment: TreatmentOut) -> tuple[Finding, ...]:
        """The findings of ``treatment``, remembered where nothing changed."""
        facts = facts_of(scene)
        kept = self._kept.get(treatment.ref, ())
        for known, known_facts, findings in kept:
            if known is treatment and _same(known_facts, facts):
                return findings
        findings = self._run(scene, treatment)
        self.calls += 1
        if len(self._kept) >= _MOST:
            self._kept.clear()
        self._kept[treatment.ref] = ((treatment, facts, findings), *kept[:1])
        return findings


def facts_of(scene: Scene) -> tuple[object, ...]:
    """What rules about one treatment read besides it."""
    room, out = scene.room, scene.set_out
    wall = next(wall for wall in room.walls if wall.id == out.wall)
    scheme = scheme_of(room, out.wall, out.scheme)
    return (
        out.openings,
        out.obstacles,
        out.ceiling,
        out.floor,
        (out.width_mm, out.known_width, out.ends, out.crown_mm),
        out.zones,
        out.beside,
        out.bands,
        wall.substrate,
        wall.left,
        wall.right,
        None if scheme is None else scheme.clear_glass_to,
        (room.graduation, room.unit, room.sleeping, room.no_holes, room.children, room.fullness_rule),
        room.limits,
        scene.trade,
    )


def _same(a: tuple[object, ...], b: tuple[object, ...]) -> bool:
    # The tables are one value for the program's life: comparing them row by row would cost more than the rules.
    return a[-1] is b[-1] and all(x is y or x == y for x, y in zip(a[:-1], b[:-1], strict=True))
