"""folds-rub: the folds of the cloth rub against the wall or the casing behind them.

Consider; before the wall; panels that draw. Behind the rod's centre line a closed fold takes half its depth, and cloth
stacked on rings half of what lies flat between two of them (a rod and bracket maker's guide); over a casing that stands
out too.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_projection
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, side_name, where
from elevation.setting_out.model import LayerOut, PanelOut, Span, TreatmentOut
from elevation.trade.model import HeadingRow
from elevation.units.tolerance import falls_short
from elevation.words import Mm, msg


def stacked_mm(heading: HeadingRow | None, panel: PanelOut) -> float:
    """How far stacked cloth reaches behind the rod's centre line, in mm.

    Half of the flat cloth between two rings, eyelets or tabs; of pleats, half of what lies between two.
    """
    if heading is None:  # pragma: no cover - a room that names no known heading is refused
        return 0.0
    if heading.is_pleated:
        return heading.space_high_mm / 2
    gaps = max(1, panel.rings // max(1, panel.count) - 1)
    return panel.flat_width_mm / panel.count / gaps / 2


def needed_mm(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> float:
    """How far from the wall the rod's centre line has to stand so that one panel's folds hang free."""
    free = limit_mm(scene, "folds-free")
    heading = scene.trade.headings.get(layer.heading)
    behind = {"open": stacked_mm(heading, panel), "closed": panel.fold_depth_mm / 2}
    spans = {"open": panel.open, "closed": panel.closed}
    return max(
        reach + (limit_mm(scene, "casing-out") if _over_casing(treatment, spans[key], panel) else 0.0) + free
        for key, reach in behind.items()
    )


def _over_casing(treatment: TreatmentOut, span: Span, panel: PanelOut) -> bool:
    return any(
        opening.casing_mm > 0
        and span[0] < opening.right_mm + opening.casing_mm
        and span[1] > opening.left_mm - opening.casing_mm
        and panel.hem_low_mm < opening.casing_top_mm
        for opening in treatment.openings
    )


def _worst(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> tuple[float, PanelOut] | None:
    return max(
        ((needed_mm(scene, treatment, layer, panel), panel) for panel in layer.panels if not panel.stationary),
        key=lambda pair: pair[0],
        default=None,
    )


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        found = _worst(scene, treatment, layer)
        out = layer.support.projection_mm
        if found is None or out <= 0 or not falls_short(out, found[0], scene.half_mm):
            continue
        needed, panel = found
        text = msg(
            "{where}: the folds of the {side} panel rub: the {support}'s centre stands {out} out from the wall, "
            "and folds with "
            "what is behind them need {needed}.",
            support=noun_of(layer),
            where=where(treatment),
            side=side_name(panel.side),
            out=Mm(out),
            needed=Mm(needed),
        )
        at = ((panel.open[0] + panel.open[1]) / 2, panel.top_mm)
        yield Finding("folds-rub", Weight.CONSIDER, layer.ref, text, authority_of(scene, "folds-free"), out, needed, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    found = _worst(scene, treatment_at(scene, finding.subject), layer)
    if found is not None:  # pragma: no branch - the finding was made of it
        yield from rod_projection(scene, layer.ref, found[0])


RULE = Rule("folds-rub", msg("folds clear of the wall"), _find, changes=_changes, mounts=BEFORE_WALL)
