"""panel-length: a panel in hand is longer or shorter than its hem at sill or apron, or the length wished, asks for.

Consider where it is too short, broken where it is too long; every mount; panels with a label or a measured length. Hems at
the floor are watched by hem-low and hem-high, cloth on a sill inside an opening by below-sill. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import mark_down, rod_height
from elevation.findings.changing_cloth import finished_length
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import side_name, where
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def wished_mm(layer: LayerOut, panel: PanelOut) -> float | None:
    """The finished length that the hem asks for, in mm; None where it asks for none, or lies at the floor."""
    wish = layer.wish
    if wish.length_mm is not None:
        return wish.length_mm
    return None if wish.hem_mm is None else panel.top_mm - wish.hem_mm


def _off(layer: LayerOut) -> tuple[PanelOut, float, float] | None:
    """The panel that misses its length by most, its wish, and by how much it is too long (minus: too short)."""
    missed = []
    for panel in layer.panels:
        wish = wished_mm(layer, panel)
        if wish is not None and panel.length_by and panel.finished_length_mm is not None:
            missed.append((panel, wish, panel.finished_length_mm - wish))
    return max(missed, key=lambda entry: abs(entry[2]), default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "panel-length")
    for layer in treatment.layers:
        found = _off(layer)
        if found is None or not exceeds(abs(found[2]), limit, scene.half_mm):
            continue
        panel, wish, by = found
        params = {
            "where": where(treatment),
            "side": side_name(panel.side),
            "long": Mm(wish + by),
            "by": Mm(abs(by)),
            "limit": said_limit(scene, "panel-length"),
        }
        if by > 0:
            text = msg(
                "{where}: the {side} panel in hand, {long} long, is {by} too long for its hem; {limit} is the most.",
                **params,
            )
        else:
            text = msg(
                "{where}: the {side} panel in hand, {long} long, is {by} too short for its hem; {limit} is the most.",
                **params,
            )
        at = ((panel.closed[0] + panel.closed[1]) / 2, panel.hem_low_mm)
        weight = Weight.BROKEN if by > 0 else Weight.CONSIDER
        yield Finding("panel-length", weight, layer.ref, text, authority_of(scene, "panel-length"), wish + by, wish, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    found = _off(layer)
    if found is None:  # pragma: no cover - the finding was made of it
        return
    _, wish, by = found
    if by > 0:
        yield from finished_length(scene, layer.ref, mark_down(wish, scene.room.graduation_mm))
    if layer.wish.length_mm is None:
        yield from rod_height(scene, layer.ref, layer.support.height_mm + by)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        found = _off(layer)
        if found is not None and layer.wish.length_mm is None:
            yield Sticking(
                "rod-height", layer.ref, layer.support.height_mm + found[2], msg("the panels in hand just reach their hem")
            )


RULE = Rule(
    "panel-length",
    msg("panels as long as their hem asks"),
    _find,
    changes=_changes,
    stickings=_stickings,
    mounts=BEFORE_WALL,
)
