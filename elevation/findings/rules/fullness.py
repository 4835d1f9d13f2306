"""fullness: flat cloth over closed width lies outside the heading's own range.

Consider; every mount; panels that draw. The range is the heading's, or the common one where the heading has no row.
Ratios compare within 1e-9. Common practice, no source, unless the heading's row names one.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import mark_down, mark_up
from elevation.findings.changing_cloth import counts, flat_width, ready_pieces
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import side_name, where
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import less_ratio
from elevation.words import Ratio, msg


def range_of(scene: Scene, layer: LayerOut) -> tuple[float, float]:
    """Least and greatest fullness of a layer's heading."""
    heading = scene.trade.headings.get(layer.heading)
    if heading is None:  # pragma: no cover - a room that names no known heading is refused
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
    if found is None:  # pragma: no cover - the finding was made of it
        return
    panel, got, limit = found
    grad = scene.room.graduation_mm
    yield from ready_pieces(scene, finding.subject)
    if got > limit:
        yield from counts(scene, finding.subject, -1)
        yield from flat_width(scene, panel.ref, mark_down(panel.flat_width_mm / panel.count * limit / got, grad))
        return
    yield from counts(scene, finding.subject, 1)
    yield from flat_width(scene, panel.ref, mark_up(panel.flat_width_mm / panel.count * limit / got, grad))
    # With more cloth than it has now it also covers more: as far as its way is free.
    yield from flat_width(scene, panel.ref, mark_up(limit * _ample(scene, layer, panel) / panel.count, grad))


def _ample(scene: Scene, layer: LayerOut, panel: PanelOut) -> float:
    """What a panel would cover when closed if it had cloth enough, in mm along the rod.

    As far as the next stop; half way to a panel that comes toward it.
    """
    heading = scene.trade.headings.get(layer.heading)
    passes = heading is None or heading.carries == "rings"
    is_left = panel.side == "left"
    edge = layer.support.right_mm if is_left else layer.support.left_mm
    share = abs(edge - panel.parks_at_mm)
    for index, bracket in enumerate(layer.brackets):
        if passes and bracket.rings_pass:
            continue
        # The leading edge meets a middle bracket at its centre, an end bracket at its near side.
        near = bracket.half_width_mm if index in (0, len(layer.brackets) - 1) else 0.0
        away = (bracket.x_mm - panel.parks_at_mm if is_left else panel.parks_at_mm - bracket.x_mm) - near
        if near < away < share:
            share = away
    for other in layer.panels:
        away = other.parks_at_mm - panel.parks_at_mm if is_left else panel.parks_at_mm - other.parks_at_mm
        if other.side != panel.side and away > 0:
            share = min(share, away / 2)
    return share


RULE = Rule("fullness", msg("the fullness of the cloth"), _find, changes=_changes, mounts=EVERY_MOUNT)
