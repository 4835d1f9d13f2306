"""board-place: a mounting board lies on a casing or over an opening, past the ceiling's line, or covers an outlet.

Stop where it cannot be flat on the wall, broken where it covers a box; wall mounts. Geometry.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import by_geometry
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, opening_name, where
from elevation.findings.shapes import Rect, extremes, meet, on_casing
from elevation.room.boards import with_board
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

COVERED = frozenset({"outlet", "switch", "light", "smoke-alarm", "shelf", "picture", "pipe"})


def _face(layer: LayerOut) -> Rect | None:
    board = layer.board
    return None if board is None else (board.left_mm, board.bottom_mm, board.right_mm, board.top_mm)


def _trouble(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> tuple[Weight, Message, float] | None:
    """Weight, sentence, and how high the board's lower edge would have to come to be clear of it."""
    face = _face(layer)
    if face is None:
        return None
    for opening in scene.set_out.openings:
        if on_casing(opening, face):
            text = msg("{where}: the mounting board meets the casing or the opening of {opening}.",
                       where=where(treatment), opening=opening_name(opening))  # fmt: skip
            return Weight.STOP, text, opening.casing_top_mm
    low, _ = extremes(scene.set_out.ceiling, face[0], face[2])
    past_end = face[0] < -TOUCH_MM or (scene.set_out.known_width and face[2] > scene.set_out.width_mm + TOUCH_MM)
    if past_end or (scene.set_out.ceiling.known and face[3] > low - scene.set_out.crown_mm + TOUCH_MM):
        text = msg("{where}: the mounting board reaches past the wall's end, the ceiling or the crown.",
                   where=where(treatment))  # fmt: skip
        return Weight.STOP, text, low - scene.set_out.crown_mm - (face[3] - face[1])
    for obstacle in scene.set_out.obstacles:
        box = (obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm)
        if obstacle.kind in COVERED and meet(box, face):
            text = msg("{where}: the mounting board covers {obstacle}.",
                       where=where(treatment), obstacle=obstacle_name(obstacle))  # fmt: skip
            return Weight.BROKEN, text, obstacle.top_mm
    return None


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        found = _trouble(scene, treatment, layer)
        if found is not None and layer.board is not None:
            at = (layer.board.left_mm, layer.board.bottom_mm)
            yield Finding("board-place", found[0], layer.ref, found[1], by_geometry(), at=at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    treatment = next(one for one in scene.set_out.treatments if one.ref == finding.subject[:3])
    found = _trouble(scene, treatment, layer)
    if found is None or layer.board is None:  # pragma: no cover - the finding was made of it
        return
    yield from rod_height(scene, finding.subject, layer.support.height_mm + found[2] - layer.board.bottom_mm)
    yield Change(msg("Take the mounting board away"), lambda room: with_board(room, finding.subject, None))


RULE = Rule("board-place", msg("the mounting board flat on bare wall"), _find, changes=_changes)
