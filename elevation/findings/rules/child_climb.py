"""child-climb: something to climb on stands under a window in a room with children or pets.

Consider; compares the wall's furniture and shelves with its windows. Safety bodies advise to keep cots, beds and seats away
from windows (their leaflets, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from elevation.findings.changing import length, mark_down, mark_up
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, opening_name
from elevation.findings.shapes import height_at
from elevation.room.edits import replace_at
from elevation.setting_out.model import ObstacleOut, OpeningOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg

CLIMBED = frozenset({"furniture", "shelf"})
LEAST_MM = 150.0
"""Lower than this nothing helps to climb (about one step; from memory)."""


def _under(scene: Scene, obstacle: ObstacleOut) -> OpeningOut | None:
    """The window over something to climb on, None where there is none."""
    floor = height_at(scene.set_out.floor, (obstacle.left_mm + obstacle.right_mm) / 2)
    if obstacle.kind not in CLIMBED or obstacle.top_mm - floor < LEAST_MM:
        return None
    for opening in scene.set_out.openings:
        is_over = obstacle.left_mm < opening.right_mm - TOUCH_MM and obstacle.right_mm > opening.left_mm + TOUCH_MM
        if opening.kind == "window" and is_over and obstacle.bottom_mm < opening.bottom_mm + TOUCH_MM:
            return opening
    return None


def _find(scene: Scene) -> Iterator[Finding]:
    if not scene.room.children:
        return
    for obstacle in scene.set_out.obstacles:
        opening = _under(scene, obstacle)
        if opening is not None:
            yield Finding(
                "child-climb",
                Weight.CONSIDER,
                obstacle.ref,
                msg(
                    "{opening}: a child may climb on {obstacle}, which stands under it.",
                    opening=opening_name(opening),
                    obstacle=obstacle_name(obstacle),
                ),
                msg("safety bodies' advice: nothing to climb on under a window"),
                at=((obstacle.left_mm + obstacle.right_mm) / 2, obstacle.top_mm),
            )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    obstacle = next(one for one in scene.set_out.obstacles if one.ref == finding.subject)
    opening = _under(scene, obstacle)
    if opening is None:  # pragma: no cover - the finding was made of it
        return
    wide = obstacle.right_mm - obstacle.left_mm
    grad = scene.room.graduation_mm
    to_left, to_right = mark_down(opening.left_mm - wide, grad), mark_up(opening.right_mm, grad)
    for left in sorted((to_left, to_right), key=lambda x: abs(x - obstacle.left_mm)):
        at = length(scene, left)
        if at.mm < 0 or at.mm + wide > scene.set_out.width_mm:
            continue
        by = Mm(abs(at.mm - obstacle.left_mm))
        if left < obstacle.left_mm:
            label = msg("Move {obstacle} {by} to the left", obstacle=obstacle_name(obstacle), by=by)
        else:
            label = msg("Move {obstacle} {by} to the right", obstacle=obstacle_name(obstacle), by=by)
        yield Change(label, partial(replace_at, ref=finding.subject, left=at))


RULE = Rule("child-climb", msg("nothing to climb on under a window"), None, _find, changes=_changes)
