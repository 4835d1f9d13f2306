"""heat: cloth comes too near to something hot, in any position of its panel.

Electric, fan, portable and flame heaters: the distance that the heater's own sheet asks for, else the limit of its
kind; broken, and a stop where the cloth hangs before the heater and can touch it. Hot-water radiators: the hem clear
over the top, or the cloth clear to the sides; registers: not over them; consider. Every mount, every arrangement.
Sources stand in the table of limits; the heater's own sheet governs.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from msgspec.structs import replace

from elevation.findings.changing import ends_or_end
from elevation.findings.changing_cloth import hem_above
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at, panel_at, treatment_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import obstacle_name, side_name, where
from elevation.findings.rules import heat_beside
from elevation.findings.rules.heat_told import too_near
from elevation.findings.shapes import cloth_back, hanging, way
from elevation.setting_out.model import LayerOut, ObstacleOut, PanelOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, falls_short
from elevation.words import Message, Mm, msg

HEATERS = frozenset({"electric-heater", "fan-heater", "portable-heater", "flame-heater"})
RADIATOR = "hot-water-radiator"
REGISTERS = frozenset({"floor-register", "wall-register"})
_ORDER = {Weight.STOP: 0, Weight.BROKEN: 1, Weight.CONSIDER: 2}


def limit_id(kind: str) -> str:
    """The limit that holds for a kind of heat source."""
    return f"heat-{kind}"


def asked_mm(scene: Scene, obstacle: ObstacleOut) -> float:
    """The distance to keep, in mm: the obstacle's own sheet, else the room's or the trade's figure for its kind."""
    return limit_mm(scene, limit_id(obstacle.kind)) if obstacle.clearance_mm is None else obstacle.clearance_mm


def gaps(layer: LayerOut, panel: PanelOut, obstacle: ObstacleOut) -> tuple[float, float, float]:
    """Free distance between a panel on its whole way and a heater: along the wall, up the wall, out from it; in mm."""
    left, right = way(panel)
    along = max(obstacle.left_mm - right, left - obstacle.right_mm, 0.0)
    up = max(panel.hem_low_mm - obstacle.top_mm, obstacle.bottom_mm - panel.top_mm, 0.0)
    out = max(cloth_back(layer, panel) - obstacle.out_mm, 0.0)
    return along, up, out


def _said(scene: Scene, obstacle: ObstacleOut) -> tuple[Message, Message]:
    """The limit in words and its authority."""
    if obstacle.clearance_mm is not None:
        return msg("{limit}", limit=Mm(obstacle.clearance_mm)), msg("the heater's own sheet")
    return said_limit(scene, limit_id(obstacle.kind)), authority_of(scene, limit_id(obstacle.kind))


def _caution() -> Message:
    return msg("The heater's own sheet governs: read it before you hang cloth near it.")


def _heater(
    scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut, obstacle: ObstacleOut
) -> Finding | None:
    along, up, out = gaps(layer, panel, obstacle)
    free = sqrt(along * along + up * up + out * out)
    asked = asked_mm(scene, obstacle)
    if not falls_short(free, asked, scene.half_mm):
        return None
    limit, authority = _said(scene, obstacle)
    weight, text = too_near(
        treatment, panel, obstacle_name(obstacle), limit, free, asked, touches=along <= TOUCH_MM and up <= TOUCH_MM
    )
    return Finding("heat", weight, panel.ref, text, authority, free, asked, _middle(obstacle), _caution())


def _radiator(scene: Scene, treatment: TreatmentOut, panel: PanelOut, obstacle: ObstacleOut) -> Finding | None:
    left, right = way(panel)
    over = panel.hem_low_mm - obstacle.top_mm
    asked = asked_mm(scene, obstacle)
    is_beside = right <= obstacle.left_mm + TOUCH_MM or left >= obstacle.right_mm - TOUCH_MM
    if is_beside or not falls_short(over, asked, scene.half_mm):
        return None
    limit, authority = _said(scene, obstacle)
    params = {
        "where": where(treatment),
        "side": side_name(panel.side),
        "obstacle": obstacle_name(obstacle),
        "limit": limit,
    }
    if over < 0:
        text = msg(
            "{where}: the {side} panel covers {obstacle} by {by} and traps its heat; end the cloth {limit} above its "
            "top, or keep it clear to the sides.",
            by=Mm(-over),
            **params,
        )
    else:
        text = msg(
            "{where}: the {side} panel ends {over} above {obstacle}; {limit} lets the heat out, or keep it clear to "
            "the sides.",
            over=Mm(over),
            **params,
        )
    return Finding("heat", Weight.CONSIDER, panel.ref, text, authority, over, asked, _middle(obstacle))


def _register(
    scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut, obstacle: ObstacleOut
) -> Finding | None:
    along, up, _ = gaps(layer, panel, obstacle)
    # Air rises out of a register in the floor: cloth that ends well above it is not over it.
    high = limit_mm(scene, "heat-default") if obstacle.kind == "floor-register" else 0.0
    asked = asked_mm(scene, obstacle)
    left, right = way(panel)
    overlap = min(right, obstacle.right_mm) - max(left, obstacle.left_mm)
    is_near = falls_short(along, asked, scene.half_mm) if asked > 0 else overlap > TOUCH_MM
    is_low = up < high - TOUCH_MM if high > 0 else up <= TOUCH_MM and obstacle.top_mm > panel.hem_low_mm + TOUCH_MM
    if not (is_near and is_low):
        return None
    text = msg(
        "{where}: the {side} panel reaches {by} across {obstacle}, whose air would go into the cloth.",
        where=where(treatment),
        side=side_name(panel.side),
        by=Mm(max(overlap, 0.0)),
        obstacle=obstacle_name(obstacle),
    )
    _, authority = _said(scene, obstacle)
    return Finding("heat", Weight.CONSIDER, panel.ref, text, authority, -overlap, asked, _middle(obstacle))


def _middle(obstacle: ObstacleOut) -> tuple[float, float]:
    return (obstacle.left_mm + obstacle.right_mm) / 2, (obstacle.bottom_mm + obstacle.top_mm) / 2


def _all(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> Iterator[tuple[Finding, ObstacleOut]]:
    """What each heat source has against a panel."""
    for obstacle in scene.set_out.obstacles:
        if obstacle.kind in HEATERS:
            found = _heater(scene, treatment, layer, panel, obstacle)
        elif obstacle.kind == RADIATOR:
            found = _radiator(scene, treatment, panel, obstacle)
        elif obstacle.kind in REGISTERS:
            found = _register(scene, treatment, layer, panel, obstacle)
        else:
            continue
        if found is not None:
            yield found, obstacle


def _key(finding: Finding) -> tuple[int, float]:
    return _ORDER[finding.weight], (finding.measured_mm or 0.0) - (finding.limit_mm or 0.0)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.set_out.obstacles and not scene.set_out.beside:
        return
    for layer in treatment.layers:
        for panel in hanging(layer):
            found = [one for one, _ in _all(scene, treatment, layer, panel)]
            found.extend(heat_beside.find(scene, treatment, layer, panel))
            worst = min(found, key=_key, default=None)
            if worst is not None:
                # Cloth of another leg that passes the corner is told of here, where the heat is; its remedies are there.
                yield worst if panel.ref[:4] == layer.ref else replace(worst, subject=layer.ref)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    if len(finding.subject) == 4:
        return
    layer, panel = layer_at(scene, finding.subject), panel_at(scene, finding.subject)
    sources = [obstacle for _, obstacle in _all(scene, treatment_at(scene, finding.subject), layer, panel)]
    if not sources:
        return
    above = max(obstacle.top_mm + _asked_above(scene, obstacle) for obstacle in sources)
    yield from hem_above(scene, finding.subject, above)
    left, right = way(panel)
    if panel.side == "left":
        clear = max(obstacle.right_mm + _asked_aside(scene, obstacle) for obstacle in sources)
        yield from ends_or_end(scene, finding.subject, "left", left - clear)
    else:
        clear = min(obstacle.left_mm - _asked_aside(scene, obstacle) for obstacle in sources)
        yield from ends_or_end(scene, finding.subject, "right", clear - right)


def _asked_above(scene: Scene, obstacle: ObstacleOut) -> float:
    if obstacle.kind in REGISTERS:
        return limit_mm(scene, "heat-default") if obstacle.kind == "floor-register" else 0.0
    return asked_mm(scene, obstacle)


def _asked_aside(scene: Scene, obstacle: ObstacleOut) -> float:
    return asked_mm(scene, obstacle) if obstacle.kind in HEATERS else 0.0


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        for panel in layer.panels:
            left, right = way(panel)
            for obstacle in scene.set_out.obstacles:
                is_source = obstacle.kind in HEATERS or obstacle.kind == RADIATOR
                if is_source and left < obstacle.right_mm and right > obstacle.left_mm:
                    asked = asked_mm(scene, obstacle)
                    reason = msg(
                        "hem {limit} above {obstacle}, the least", limit=Mm(asked), obstacle=obstacle_name(obstacle)
                    )
                    yield Sticking("hem", panel.ref, obstacle.top_mm + asked, reason)


RULE = Rule("heat", msg("cloth clear of heat"), _find, changes=_changes, stickings=_stickings, mounts=EVERY_MOUNT)
