"""Remembering what rules found in a treatment, as long as nothing they read has changed."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.looking import wall_of_scene
from elevation.findings.model import Finding, Scene
from elevation.findings.reach import Near, greatest_limit, near_of
from elevation.room.find import scheme_of
from elevation.room.model import Ref
from elevation.setting_out.memo import Memo, Same
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.trade.model import Trade

_MOST = 512  # treatments remembered; a house has fewer on the walls that are open

Run = Callable[[Scene, TreatmentOut, bool | None], tuple[Finding, ...]]
Facts = tuple[object, ...]


class _Known(Struct, frozen=True):
    """What was found in a treatment, and all that it was found from.

    ``set_out`` is the last one that was seen to be the same near the treatment, ``near`` what stands there;
    ``near_in`` tells what of another one does.
    """

    treatment: TreatmentOut
    facts: Facts
    trade: Trade
    set_out: SetOut
    findings: tuple[Finding, ...]
    near_in: Callable[[SetOut], Near] | None = None
    near: Near = ()


class TreatmentMemo:
    """A function of (scene, treatment) that remembers its last two answers for each treatment.

    The treatment is compared by identity, and so is what else rules about one treatment read. Parts of the wall that were
    made anew but are equal count as the same, and so does all that stands out of the treatment's reach, but for those
    rules that look farther.

    Parameters
    ----------
    run : callable
        ``(scene, treatment, near) -> findings`` of the rules that look no farther than the treatment's reach (True), or of
        those that do (False); must depend on nothing but the treatment, what stands there, and ``facts_of``.

    Attributes
    ----------
    calls : int
        How often the rules that look near really ran.
    """

    def __init__(self, run: Run) -> None:
        self._run = run
        self._facts: Same[Facts] = Same()
        self._facts_of = Memo(facts_of)
        self._far_facts: Same[Facts] = Same()
        self._far_facts_of = Memo(far_facts_of)
        self._near: dict[Ref, tuple[_Known, ...]] = {}
        self._far: dict[Ref, tuple[_Known, ...]] = {}
        self.calls = 0

    def __call__(self, scene: Scene, treatment: TreatmentOut) -> tuple[Finding, ...]:
        """The findings of ``treatment``, remembered where nothing changed: first of rules that look near."""
        facts = self._facts.keep(self._facts_of(scene))
        return self._near_found(scene, treatment, facts) + self._far_found(scene, treatment, facts)

    def _near_found(self, scene: Scene, treatment: TreatmentOut, facts: Facts) -> tuple[Finding, ...]:
        kept = self._near.get(treatment.ref, ())
        for number, known in enumerate(kept):
            if known.treatment is not treatment or known.facts is not facts or known.trade is not scene.trade:
                continue
            if known.set_out is not scene.set_out:
                seen = _seen_again(known, scene)
                if seen is None:
                    continue
                kept = tuple(seen if index == number else one for index, one in enumerate(kept))
                self._near[treatment.ref] = kept
            return known.findings
        self.calls += 1
        findings = self._run(scene, treatment, True)
        _keep(self._near, treatment.ref, _Known(treatment, facts, scene.trade, scene.set_out, findings))
        return findings

    def _far_found(self, scene: Scene, treatment: TreatmentOut, facts: Facts) -> tuple[Finding, ...]:
        facts = self._far_facts.keep(self._far_facts_of(scene, facts))
        for known in self._far.get(treatment.ref, ()):
            if known.treatment is treatment and known.facts is facts and known.trade is scene.trade:
                return known.findings
        findings = self._run(scene, treatment, False)
        _keep(self._far, treatment.ref, _Known(treatment, facts, scene.trade, scene.set_out, findings))
        return findings


def _keep(found: dict[Ref, tuple[_Known, ...]], ref: Ref, made: _Known) -> None:
    if len(found) >= _MOST:
        found.clear()
    found[ref] = (made, *found.get(ref, ())[:1])


def _seen_again(known: _Known, scene: Scene) -> _Known | None:
    """The same for another set-out, where what stands near the treatment is the same in it; None where it is not."""
    # What stands near is asked for only once the wall has changed and the treatment has not: most that are made anew are
    # thrown away before.
    near_in, near = known.near_in, known.near
    if near_in is None:
        near_in = near_of(known.treatment, greatest_limit(scene.room.limits, scene.trade))
        near = near_in(known.set_out)
    if near_in(scene.set_out) != near:
        return None
    return replace(known, set_out=scene.set_out, near_in=near_in, near=near)


def facts_of(scene: Scene) -> Facts:
    """What rules about one treatment read besides it, wherever it hangs."""
    room, out = scene.room, scene.set_out
    wall = wall_of_scene(scene)
    scheme = scheme_of(room, out.wall, out.scheme)
    return (
        (out.width_mm, out.known_width, out.ends, out.crown_mm),
        wall.substrate,
        wall.left,
        wall.right,
        None if scheme is None else scheme.clear_glass_to,
        (room.graduation, room.unit, room.sleeping, room.no_holes, room.children, room.fullness_rule),
        room.limits,
    )


def far_facts_of(scene: Scene, facts: Facts) -> Facts:
    """The same with all that stands on and in the wall."""
    out = scene.set_out
    return (facts, out.openings, out.obstacles, out.zones, out.bands, out.beside, out.floor, out.ceiling)
