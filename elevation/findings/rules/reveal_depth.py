"""reveal-depth: a rod inside an opening stands too near to the sash and its handle, or out of the reveal.

Reveal and sash mounts; every arrangement. Broken where the rod stands in the way of the handle on the sash that carries it
(in a reveal ``swing`` speaks of handles); consider where folds press against the sash or the rod stands out past the wall's
face. Only what was measured is compared. Geometry; cloth gives way, so folds are never more than a thought.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import from_sash
from elevation.findings.limits import by_geometry
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import INSIDE, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, opening_name
from elevation.setting_out.model import LayerOut, OpeningOut, TreatmentOut
from elevation.units.tolerance import exceeds, falls_short
from elevation.words import Message, Mm, msg


def fold_mm(layer: LayerOut) -> float:
    """How far folds reach back from the rod's centre line: half of the deepest, in mm."""
    return max((panel.fold_depth_mm for panel in layer.panels), default=0.0) / 2


def past_face(layer: LayerOut) -> float:
    """How far the rod's front stands out past the wall's face, in mm (negative: inside the reveal)."""
    return layer.support.projection_mm + layer.support.diameter_mm / 2


def handle_mm(treatment: TreatmentOut, opening: OpeningOut) -> float | None:
    """How far the handle of a sash that carries the rod itself stands out from it, in mm; None: not known, or not asked."""
    return opening.handle_stands_mm if treatment.mount == "sash" else None


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    opening = treatment.openings[0]
    for layer in treatment.layers:
        found = _one(scene, treatment, opening, layer)
        if found is not None:
            weight, text, measured, limit = found
            support = layer.support
            at = ((support.left_mm + support.right_mm) / 2, support.height_mm)
            yield Finding("reveal-depth", weight, layer.ref, text, by_geometry(), measured, limit, at)


def _one(
    scene: Scene, treatment: TreatmentOut, opening: OpeningOut, layer: LayerOut
) -> tuple[Weight, Message, float, float] | None:
    support = layer.support
    depth = support.from_sash_mm
    if depth is None:  # pragma: no cover - the finding was made of it
        return None
    name = opening_name(opening)
    handle = handle_mm(treatment, opening)
    back = depth - support.diameter_mm / 2
    if handle is not None and falls_short(back, handle, scene.half_mm):
        text = msg(
            "{opening}: the back of the {support} is {back} off the sash, and the handle stands out {handle}.",
            support=noun_of(layer),
            opening=name,
            back=Mm(back),
            handle=Mm(handle),
        )
        return Weight.BROKEN, text, back, handle
    fold = fold_mm(layer)
    if falls_short(depth, fold, scene.half_mm):
        text = msg(
            "{opening}: folds reach back {fold} from the {support}, which is {depth} off the sash: "
            "they will press against it by {by}.",
            support=noun_of(layer),
            opening=name,
            fold=Mm(fold),
            depth=Mm(depth),
            by=Mm(fold - depth),
        )
        return Weight.CONSIDER, text, depth, fold
    out = past_face(layer)
    if treatment.mount == "reveal" and opening.reveal_mm is not None and exceeds(out, 0.0, scene.half_mm):
        text = msg(
            "{opening}: the reveal is {reveal} deep, and the {support} stands {out} out of it.",
            support=noun_of(layer),
            opening=name,
            reveal=Mm(opening.reveal_mm),
            out=Mm(out),
        )
        return Weight.CONSIDER, text, out, 0.0
    return None


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    opening, support = treatment.openings[0], layer.support
    handle = handle_mm(treatment, opening)
    if handle is not None:
        yield from from_sash(scene, layer.ref, handle + support.diameter_mm / 2)
    if support.from_sash_mm is not None and support.from_sash_mm < fold_mm(layer):
        yield from from_sash(scene, layer.ref, fold_mm(layer))
    if opening.reveal_mm is not None and past_face(layer) > 0:
        yield from from_sash(scene, layer.ref, opening.reveal_mm - support.diameter_mm / 2)


RULE = Rule("reveal-depth", msg("the depth of the reveal"), _find, changes=_changes, mounts=INSIDE)
