"""Finding the set-out things that a finding's subject names."""

from __future__ import annotations

from elevation.findings.model import Scene
from elevation.findings.naming import noun_of
from elevation.room.model import Ref, Wall
from elevation.setting_out.model import BracketOut, LayerOut, OpeningOut, PanelOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message


def wall_of_scene(scene: Scene) -> Wall:
    """The measured wall that the scene sets out."""
    return next(wall for wall in scene.room.walls if wall.id == scene.set_out.wall)


def treatment_at(scene: Scene, ref: Ref) -> TreatmentOut:
    """The treatment that ``ref`` belongs to."""
    return next(treatment for treatment in scene.set_out.treatments if treatment.ref == ref[:3])


def layer_at(scene: Scene, ref: Ref) -> LayerOut:
    """The layer that ``ref`` belongs to."""
    return next(layer for layer in treatment_at(scene, ref).layers if layer.ref == ref[:4])


def bracket_at(scene: Scene, ref: Ref) -> BracketOut:
    """The bracket at ``ref``."""
    return next(bracket for bracket in layer_at(scene, ref).brackets if bracket.ref == ref)


def panel_at(scene: Scene, ref: Ref) -> PanelOut:
    """The panel at ``ref``."""
    return next(panel for panel in layer_at(scene, ref).panels if panel.ref == ref)


def drawing_panels(layer: LayerOut) -> tuple[PanelOut, ...]:
    """The panels that draw, left to right as they park."""
    return tuple(panel for panel in layer.panels if not panel.stationary)


def ends_of(layer: LayerOut) -> tuple[BracketOut, BracketOut] | None:
    """The outermost brackets, left and right; None for a rod without brackets."""
    if not layer.brackets:
        return None
    return min(layer.brackets, key=_x), max(layer.brackets, key=_x)


def _x(bracket: BracketOut) -> float:
    return bracket.x_mm


def draws_from(layer: LayerOut, side: str) -> PanelOut | None:
    """The panel that draws clear to that end of the rod (``left``, ``right``); None where none does.

    A panel that parks at a middle bracket clears no end: it stands between two openings.
    """
    best: PanelOut | None = None
    for panel in layer.panels:
        if panel.stationary or panel.side != side:
            continue
        # Brackets stand in order along the rod; none but the end one may be at or beyond the panel's place.
        at = panel.parks_at_mm
        if side == "left":
            first = 0 if layer.support.carried[0] else 1
            is_inside = any(bracket.x_mm <= at + TOUCH_MM for bracket in layer.brackets[first:])
        else:
            last = len(layer.brackets) - (0 if layer.support.carried[1] else 1)
            is_inside = any(bracket.x_mm >= at - TOUCH_MM for bracket in layer.brackets[:last])
        if not is_inside and (best is None or (at < best.parks_at_mm) == (side == "left")):
            best = panel
    return best


def outer(openings: tuple[OpeningOut, ...], side: str) -> OpeningOut:
    """The first or last of some openings along the wall."""
    return openings[0] if side == "left" else openings[-1]


def noun_at(scene: Scene, ref: Ref) -> Message:
    """What a layer hangs on, or the front layer of a treatment, as a bare noun for the middle of a sentence."""
    if len(ref) < 4:
        return noun_of(treatment_at(scene, ref).layers[0])
    return noun_of(layer_at(scene, ref))
