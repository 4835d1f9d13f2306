"""no-meet: closed panels do not meet, or do not cover the opening, within their travel.

Broken; every mount; layers with panels that draw. Geometry of travel; compared with half a graduation.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import ends_or_end, mark_up, passing_kit
from elevation.findings.changing_cloth import counts, flat_width
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import drawing_panels, layer_at, treatment_at
from elevation.findings.model import EVERY_MOUNT, INSIDE, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import opening_name
from elevation.setting_out.model import LayerOut, OpeningOut, Span, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, exceeds
from elevation.words import Mm, msg


def bare(layer: LayerOut, opening: OpeningOut, mount: str = "wall") -> Span | None:
    """The widest part of an opening that the closed cloth of a layer leaves bare; None where it covers all.

    What is asked for is ``asked``.
    """
    widest: Span | None = None
    at, last = asked(layer, opening, mount)
    for left, right in sorted(panel.closed for panel in layer.panels):
        end = min(left, last)
        if end - at > TOUCH_MM and (widest is None or end - at > widest[1] - widest[0]):
            widest = at, end
        at = max(at, right)
    if last - at > TOUCH_MM and (widest is None or last - at > widest[1] - widest[0]):
        widest = at, last
    return widest


def asked(layer: LayerOut, opening: OpeningOut, mount: str) -> Span:
    """What of an opening closed cloth should cover: all of it, or from inside it the glass between the rod's ends."""
    if mount not in INSIDE:
        return opening.left_mm, opening.right_mm
    return max(opening.glass_left_mm, layer.support.left_mm), min(opening.glass_right_mm, layer.support.right_mm)


def _worst(treatment: TreatmentOut, layer: LayerOut) -> tuple[Span, OpeningOut] | None:
    worst: tuple[Span, OpeningOut] | None = None
    for opening in treatment.openings:
        span = bare(layer, opening, treatment.mount)
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
        }
        first, last = asked(layer, opening, treatment.mount)
        if left > first + TOUCH_MM and right < last - TOUCH_MM:
            text = msg("{opening}: the closed panels stay {gap} apart.", **params)
        elif left > first + TOUCH_MM:
            text = msg("{opening}: the closed cloth leaves {gap} bare on the right.", **params)
        elif right < last - TOUCH_MM:
            text = msg("{opening}: the closed cloth leaves {gap} bare on the left.", **params)
        else:
            text = msg("{opening}: the closed cloth covers none of it; {gap} stay bare.", **params)
        if limit > 0:
            text = msg("{text} Limit: {limit}.", text=text, limit=said_limit(scene, "no-meet"))
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


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    bares = [span for span in (bare(layer, opening, treatment.mount) for opening in treatment.openings) if span is not None]
    if not bares:  # pragma: no cover - the finding was made of it
        return
    left, right = min(span[0] for span in bares), max(span[1] for span in bares)
    if right >= treatment.openings[-1].right_mm - TOUCH_MM:
        yield from ends_or_end(scene, finding.subject, "right", right - left, scene.half_mm)
    if left <= treatment.openings[0].left_mm + TOUCH_MM:
        yield from ends_or_end(scene, finding.subject, "left", right - left, scene.half_mm)
    for bracket in layer.brackets[1:-1]:
        if not bracket.rings_pass:
            yield from passing_kit(scene, bracket.ref)
    yield from counts(scene, finding.subject, 1)
    yield from _wider(scene, layer, left, right)


def _wider(scene: Scene, layer: LayerOut, left: float, right: float) -> Iterator[Change]:
    """Cloth enough for its leading edge to get over the bare part: half of it each for two that draw toward each other."""
    panels = drawing_panels(layer)
    from_left = [panel for panel in panels if panel.side == "left" and panel.closed[1] <= left + TOUCH_MM]
    from_right = [panel for panel in panels if panel.side == "right" and panel.closed[0] >= right - TOUCH_MM]
    part = 2 if from_left and from_right else 1
    for panel in (*from_left[-1:], *from_right[:1]):
        lead = panel.closed[1] if panel.side == "left" else panel.closed[0]
        extra = (right - lead if panel.side == "left" else lead - left) / part
        flat = (panel.flat_width_mm + extra) / panel.count
        yield from flat_width(scene, panel.ref, mark_up(flat, scene.room.graduation_mm))


RULE = Rule("no-meet", msg("panels that close over the opening"), _find, changes=_changes, mounts=EVERY_MOUNT)
