"""no-meet: closed panels do not meet, or do not cover the opening, within their travel.

Broken; wall mounts; layers with panels that draw. Geometry of travel; compared with half a graduation.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import ends_or_end, mark_up, passing_kit
from elevation.findings.changing_cloth import counts, flat_width
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import drawing_panels, layer_at, treatment_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import opening_name
from elevation.setting_out.model import LayerOut, OpeningOut, PanelOut, Span, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, exceeds
from elevation.words import Mm, msg


def bare(layer: LayerOut, opening: OpeningOut) -> Span | None:
    """The widest part of an opening that the closed cloth of a layer leaves bare; None where it covers all."""
    widest: Span | None = None
    at = opening.left_mm
    for left, right in sorted(panel.closed for panel in layer.panels):
        end = min(left, opening.right_mm)
        if end - at > TOUCH_MM and (widest is None or end - at > widest[1] - widest[0]):
            widest = at, end
        at = max(at, right)
    if opening.right_mm - at > TOUCH_MM and (widest is None or opening.right_mm - at > widest[1] - widest[0]):
        widest = at, opening.right_mm
    return widest


def _worst(treatment: TreatmentOut, layer: LayerOut) -> tuple[Span, OpeningOut] | None:
    worst: tuple[Span, OpeningOut] | None = None
    for opening in treatment.openings:
        span = bare(layer, opening)
        if span is not None and (worst is None or span[1] - span[0] > worst[0][1] - worst[0][0]):
            worst = span, opening
    return worst


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "no-meet")
    for layer in treatment.layers:
        if not drawing_panels(layer):
            continue
        found = _worst(treatment, layer)
        if found is None or not exceeds(found[0][1] - found[0][0], limit, scene.half_mm):
            continue
        (left, right), opening = found
        params = {
            "opening": opening_name(opening),
            "gap": Mm(right - left),
            "limit": said_limit(scene, "no-meet"),
        }
        if left > opening.left_mm + TOUCH_MM and right < opening.right_mm - TOUCH_MM:
            text = msg("{opening}: the closed panels stay {gap} apart; {limit} is the most.", **params)
        elif left > opening.left_mm + TOUCH_MM:
            text = msg("{opening}: the closed cloth leaves {gap} bare on the right; {limit} is the most.", **params)
        elif right < opening.right_mm - TOUCH_MM:
            text = msg("{opening}: the closed cloth leaves {gap} bare on the left; {limit} is the most.", **params)
        else:
            text = msg("{opening}: the closed cloth covers nothing of it; {gap} stay bare, {limit} is the most.", **params)
        yield Finding(
            "no-meet",
            Weight.BROKEN,
            layer.ref,
            text,
            authority_of(scene, "no-meet"),
            measured_mm=right - left,
            limit_mm=limit,
            at=((left + right) / 2, (opening.bottom_mm + opening.top_mm) / 2),
        )


def _panel_at(layer: LayerOut, span: Span) -> PanelOut | None:
    """The drawing panel whose leading edge is nearest to a bare part."""
    panels = drawing_panels(layer)
    if not panels:
        return None
    return min(panels, key=lambda panel: min(abs(panel.closed[1] - span[0]), abs(panel.closed[0] - span[1])))


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    found = _worst(treatment, layer)
    if found is None:
        return
    (left, right), opening = found
    panel = _panel_at(layer, (left, right))
    if right >= opening.right_mm - TOUCH_MM:
        yield from ends_or_end(scene, finding.subject, "right", right - left, scene.half_mm)
    if left <= opening.left_mm + TOUCH_MM:
        yield from ends_or_end(scene, finding.subject, "left", right - left, scene.half_mm)
    yield from counts(scene, finding.subject, 1)
    if panel is not None:
        missing = (right - left) / panel.count
        wide = panel.flat_width_mm / panel.count
        yield from flat_width(scene, panel.ref, mark_up(wide + missing / 2, scene.room.graduation_mm))
        yield from flat_width(scene, panel.ref, mark_up(wide + missing, scene.room.graduation_mm))
    for bracket in layer.brackets[1:-1]:
        if not bracket.rings_pass:
            yield from passing_kit(scene, bracket.ref)


RULE = Rule("no-meet", msg("panels that close over the opening"), _find, changes=_changes)
