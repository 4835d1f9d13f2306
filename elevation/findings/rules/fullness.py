"""fullness: flat cloth over closed width lies outside the heading's own range.

Consider; wall mounts; panels that draw. The range is the heading's, or the common one where the heading has no row.
Ratios compare within 1e-9. Common practice, no source, unless the heading's row names one.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import mark_down, mark_up
from elevation.findings.changing_cloth import counts, flat_width
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import side_name, where
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import less_ratio
from elevation.words import Ratio, msg


def range_of(scene: Scene, layer: LayerOut) -> tuple[float, float]:
    """Least and greatest fullness of a layer's heading."""
    heading = scene.trade.headings.get(layer.heading)
    if heading is None:
        return scene.trade.limits["fullness-low"].value, scene.trade.limits["fullness-high"].value
    return heading.fullness_low, heading.fullness_high


def _worst(layer: LayerOut, low: float, high: float) -> tuple[PanelOut, float, float] | None:
    """The panel furthest outside the range, its fullness, and the limit it misses."""
    worst: tuple[float, PanelOut, float, float] | None = None
    for panel in layer.panels:
        got = panel.fullness
        if got is None or panel.stationary or got <= 0:
            continue
        if less_ratio(got, low):
            entry = (low / got, panel, got, low)
        elif less_ratio(high, got):
            entry = (got / high, panel, got, high)
        else:
            continue
        if worst is None or entry[0] > worst[0]:
            worst = entry
    return None if worst is None else worst[1:]


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        low, high = range_of(scene, layer)
        found = _worst(layer, low, high)
        if found is None:
            continue
        panel, got, limit = found
        params = {
            "where": where(treatment),
            "side": side_name(panel.side),
            "got": Ratio(got, 2),
            "low": Ratio(low, 2),
            "high": Ratio(high, 2),
        }
        if got < limit:
            text = msg(
                "{where}: the {side} panel has only {got} times its closed width in cloth; "
                "{low} to {high} is usual for its heading.",
                **params,
            )
        else:
            text = msg(
                "{where}: the {side} panel has {got} times its closed width in cloth; "
                "{low} to {high} is usual for its heading.",
                **params,
            )
        at = ((panel.closed[0] + panel.closed[1]) / 2, (panel.top_mm + panel.hem_low_mm) / 2)
        authority = msg("the heading's usual range, common practice")
        yield Finding("fullness", Weight.CONSIDER, layer.ref, text, authority, at=at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    low, high = range_of(scene, layer)
    found = _worst(layer, low, high)
    if found is None:
        return
    panel, got, limit = found
    one = panel.flat_width_mm / panel.count * limit / got
    grad = scene.room.graduation_mm
    yield from counts(scene, finding.subject, 1 if got < limit else -1)
    yield from flat_width(scene, finding.subject, mark_up(one, grad) if got < limit else mark_down(one, grad))
    yield from flat_width(scene, panel.ref, mark_up(one, grad) if got < limit else mark_down(one, grad))


RULE = Rule("fullness", msg("the fullness of the cloth"), _find, changes=_changes)
