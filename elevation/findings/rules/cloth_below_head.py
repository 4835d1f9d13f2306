"""cloth-below-head: the closed cloth begins below the casing's top, so that light shows above it.

Consider; wall and ceiling mounts; layers with panels that draw. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import drawing_panels, layer_at, treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import where
from elevation.findings.shapes import casing_top, top_name
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.setting_out.tilt import over_tops
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _cloth_top(layer: LayerOut) -> float | None:
    return min((panel.top_mm for panel in drawing_panels(layer)), default=None)


def _below(treatment: TreatmentOut, layer: LayerOut) -> float | None:
    """How far the cloth begins below the casing's top, where it does most; None without cloth or openings."""
    top, cloth = casing_top(treatment.openings), _cloth_top(layer)
    if top is None or cloth is None:
        return None
    support = layer.support
    if not support.tilt:
        return top - cloth
    return support.height_mm - cloth - over_tops(support, treatment.openings, with_casing=True)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    limit = limit_mm(scene, "cloth-below-head")
    for layer in treatment.layers:
        cloth, below = _cloth_top(layer), _below(treatment, layer)
        if cloth is None or below is None or not exceeds(below, limit, scene.half_mm):
            continue
        params = {"where": where(treatment), "below": Mm(below), "top": top_name(treatment.openings)}
        if limit > 0:
            text = msg(
                "{where}: the closed cloth begins {below} below the top of {top}, where {limit} is the most; "
                "light will show above it.",
                limit=said_limit(scene, "cloth-below-head"),
                **params,
            )
        else:
            text = msg(
                "{where}: the closed cloth begins {below} below the top of {top}; light will show above it.", **params
            )
        yield Finding(
            "cloth-below-head",
            Weight.CONSIDER,
            layer.ref,
            text,
            authority_of(scene, "cloth-below-head"),
            measured_mm=below,
            limit_mm=limit,
            at=((treatment.openings[0].left_mm + treatment.openings[-1].right_mm) / 2, cloth),
        )


def _wanted(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> float | None:
    below = _below(treatment, layer)
    return None if below is None else layer.support.height_mm + below - limit_mm(scene, "cloth-below-head")


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    wanted = _wanted(scene, treatment_at(scene, finding.subject), layer_at(scene, finding.subject))
    if wanted is not None:  # pragma: no branch - the finding was made of it
        yield from rod_height(scene, finding.subject, wanted, scene.half_mm)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        wanted = _wanted(scene, treatment, layer)
        if wanted is not None:
            reason = msg("the cloth begins level with the top of {top}", top=top_name(treatment.openings))
            yield Sticking("rod-height", layer.ref, wanted, reason)


RULE = Rule(
    "cloth-below-head", msg("the cloth over the head"), _find, changes=_changes, stickings=_stickings, mounts=BEFORE_WALL
)
