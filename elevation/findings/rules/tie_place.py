"""tie-place: the hook of a tie-back past the wall's end, before the clear opening, over a box, or in a cable band.

Stop past the wall's end and before the opening, where nothing holds a screw; broken over a box, a shelf or a heater;
consider in a likely cable or pipe band. Mounts before the wall; a hook that was there before is not drilled.
Geometry; the hook's size is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_tie import tie_height, tie_out, untied
from elevation.findings.limits import by_geometry, common_practice, drilling, limit_mm
from elevation.findings.looking import panel_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, opening_name, side_name, where
from elevation.findings.shapes import Rect, meet
from elevation.setting_out.model import BandOut, PanelOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

Hit = tuple[Weight, Message, Rect | None]
"""How much it matters, what is wrong, and what is in the way."""

_MOVES = frozenset({"door-swing", "furniture", "smoke-alarm"})


def _plate(scene: Scene, panel: PanelOut) -> Rect:
    half = limit_mm(scene, "tie-plate") / 2
    x, y = (0.0, 0.0) if panel.tie is None else panel.tie.hook
    return x - half, y - half, x + half, y + half


def _reach(band: BandOut) -> Rect:
    return band.left_mm, band.bottom_mm, band.right_mm, band.top_mm


def _hit(scene: Scene, treatment: TreatmentOut, panel: PanelOut) -> Hit | None:
    """The gravest thing that is wrong with a hook's place."""
    plate = _plate(scene, panel)
    params = {"where": where(treatment), "side": side_name(panel.side)}
    passes_left = scene.set_out.ends[0] == "corner" and plate[0] < -TOUCH_MM
    passes_right = (
        scene.set_out.ends[1] == "corner" and scene.set_out.known_width and plate[2] > scene.set_out.width_mm + TOUCH_MM
    )
    if passes_left or passes_right:
        return Weight.STOP, msg("{where}: the hook of the {side} tie-back passes the wall's end.", **params), None
    for opening in scene.set_out.openings:
        clear = (opening.left_mm, opening.bottom_mm, opening.right_mm, opening.top_mm)
        if meet(clear, plate):
            text = msg(
                "{where}: the hook of the {side} tie-back stands in {opening}, where no wall is.",
                **params,
                opening=opening_name(opening),
            )
            return Weight.STOP, text, clear
    for obstacle in scene.set_out.obstacles:
        outline = (obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm)
        if obstacle.kind not in _MOVES and meet(outline, plate):
            text = msg(
                "{where}: the hook of the {side} tie-back lies over {obstacle}.", **params, obstacle=obstacle_name(obstacle)
            )
            # Clear of the box and, where it has one, of its own cable up and down.
            own = (one for one in scene.set_out.bands if one.ref == obstacle.ref and one.is_upright)
            return Weight.BROKEN, text, next((_reach(band) for band in own), outline)
    if panel.tie is not None and panel.tie.is_there:
        return None
    for band in scene.set_out.bands:
        reach = _reach(band)
        if meet(reach, plate):
            if band.kind == "pipe":
                text = msg("{where}: a pipe likely runs where the hook of the {side} tie-back is to be drilled.", **params)
            else:
                text = msg("{where}: a cable likely runs where the hook of the {side} tie-back is to be drilled.", **params)
            return Weight.CONSIDER, text, reach
    return None


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        for panel in layer.panels:
            if panel.tie is None:
                continue
            hit = _hit(scene, treatment, panel)
            if hit is not None:
                weight, text, _ = hit
                authority = common_practice() if weight is Weight.CONSIDER else by_geometry()
                caution = None if weight is Weight.STOP else drilling()
                yield Finding("tie-place", weight, panel.ref, text, authority, at=panel.tie.hook, caution=caution)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment = next(one for one in scene.set_out.treatments if one.ref == finding.subject[:3])
    panel = panel_at(scene, finding.subject)
    hit = _hit(scene, treatment, panel)
    if hit is None or panel.tie is None:  # pragma: no cover - the finding was made of it
        return
    reach, plate = hit[2], _plate(scene, panel)
    half = (plate[2] - plate[0]) / 2
    fixed = panel.drawn[0] if panel.side == "left" else panel.drawn[1]
    sign = 1 if panel.side == "left" else -1
    (x, y) = panel.tie.hook
    if reach is None:
        edge = half if x < scene.set_out.width_mm / 2 else scene.set_out.width_mm - half
        yield from tie_out(scene, finding.subject, (fixed - edge) * sign, is_farther=False)
    else:
        farther, nearer = (reach[0] - half, reach[2] + half) if sign > 0 else (reach[2] + half, reach[0] - half)
        yield from tie_out(scene, finding.subject, (fixed - farther) * sign, is_farther=True)
        yield from tie_out(scene, finding.subject, (fixed - nearer) * sign, is_farther=False)
        up, down = (reach[3] + half, True), (reach[1] - half, False)
        for wanted, is_up in sorted((up, down), key=lambda way: abs(way[0] - y)):
            yield from tie_height(scene, finding.subject, wanted, is_up=is_up)
    yield from untied(finding.subject)


RULE = Rule("tie-place", msg("hooks of tie-backs where they can be fixed"), _find, changes=_changes, mounts=BEFORE_WALL)
