"""pelmet-heat: a pelmet or valance too near something hot.

Mounts before the wall. Electric, fan, portable and flame heaters: the distance that the heater's own sheet asks for, else
the limit of its kind; broken, and a stop where they meet. Wood and cloth burn alike, so the limits are those of cloth. Of
a hot-water radiator nothing is said here: what matters there is the cloth before it.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from elevation.findings.changing_dress import no_pelmet, pelmet_depth
from elevation.findings.limits import authority_of, said_limit
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, where
from elevation.findings.rules.heat import HEATERS, asked_mm, limit_id
from elevation.findings.shapes import pelmet_over
from elevation.setting_out.model import ObstacleOut, PelmetOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, falls_short
from elevation.words import Mm, msg


def free_mm(pelmet: PelmetOut, obstacle: ObstacleOut) -> float:
    """Free distance between a pelmet, all it stands out from the wall, and a heater, in mm."""
    along = max(obstacle.left_mm - pelmet.right_mm, pelmet.left_mm - obstacle.right_mm, 0.0)
    _, bottom, _, top = pelmet_over(pelmet, obstacle.left_mm, obstacle.right_mm)
    up = max(bottom - obstacle.top_mm, obstacle.bottom_mm - top, 0.0)
    return sqrt(along * along + up * up)


def _worst(scene: Scene, pelmet: PelmetOut) -> tuple[float, float, ObstacleOut] | None:
    """The heater that a pelmet comes nearest to by what that asks for, with the distances there are and are asked for."""
    found = [(free_mm(pelmet, one), asked_mm(scene, one), one) for one in scene.set_out.obstacles if one.kind in HEATERS]
    short = [one for one in found if falls_short(one[0], one[1], scene.half_mm)]
    return min(short, key=lambda one: one[0] - one[1], default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    pelmet = treatment.pelmet
    worst = None if pelmet is None else _worst(scene, pelmet)
    if pelmet is None or worst is None:
        return
    free, asked, obstacle = worst
    own = obstacle.clearance_mm is not None
    params: dict[str, object] = {
        "where": where(treatment),
        "obstacle": obstacle_name(obstacle),
        "limit": msg("{limit}", limit=Mm(asked)) if own else said_limit(scene, limit_id(obstacle.kind)),
    }
    is_valance = pelmet.kind == "valance"
    if free <= TOUCH_MM:
        weight = Weight.STOP
        text = (
            msg("{where}: the valance hangs at {obstacle}; it has to keep {limit} away.", **params)
            if is_valance
            else msg("{where}: the pelmet stands at {obstacle}; it has to keep {limit} away.", **params)
        )
    else:
        weight = Weight.BROKEN
        params |= {"free": Mm(free), "short": Mm(asked - free)}
        text = (
            msg("{where}: the valance comes within {free} of {obstacle}, {short} less than the {limit} to keep.", **params)
            if is_valance
            else msg(
                "{where}: the pelmet comes within {free} of {obstacle}, {short} less than the {limit} to keep.", **params
            )
        )
    authority = msg("the heater's own sheet") if own else authority_of(scene, limit_id(obstacle.kind))
    at = ((pelmet.left_mm + pelmet.right_mm) / 2, pelmet.bottom_mm)
    caution = msg("The heater's own sheet governs: read it before you hang cloth near it.")
    yield Finding("pelmet-heat", weight, treatment.ref, text, authority, free, asked, at, caution)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    pelmet = treatment_at(scene, finding.subject).pelmet
    worst = None if pelmet is None else _worst(scene, pelmet)
    if pelmet is None or worst is None:  # pragma: no cover - the finding was made of both
        return
    free, asked, obstacle = worst
    if obstacle.top_mm < pelmet.bottom_mm and free > TOUCH_MM:
        depth = pelmet.top_mm - pelmet.bottom_mm - (asked - free)
        yield from pelmet_depth(scene, finding.subject, depth, is_deeper=False)
    yield from no_pelmet(scene, finding.subject)


RULE = Rule("pelmet-heat", msg("a pelmet clear of heat"), _find, changes=_changes, mounts=BEFORE_WALL)
