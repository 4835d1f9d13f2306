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
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _cloth_top(layer: LayerOut) -> float | None:
    return min((panel.top_mm for panel in drawing_panels(layer)), default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    top = casing_top(treatment.openings)
    if top is None:
        return
    limit = limit_mm(scene, "cloth-below-head")
    for layer in treatment.layers:
        cloth = _cloth_top(layer)
        if cloth is None or not exceeds(top - cloth, limit, scene.half_mm):
            continue
        params = {"where": where(treatment), "below": Mm(top - cloth), "top": top_name(treatment.openings)}
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
            measured_mm=top - cloth,
            limit_mm=limit,
            at=((treatment.openings[0].left_mm + treatment.openings[-1].right_mm) / 2, cloth),
        )


def _wanted(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> float | None:
    top, cloth = casing_top(treatment.openings), _cloth_top(layer)
    if top is None or cloth is None:
        return None
    return layer.support.height_mm + top - cloth - limit_mm(scene, "cloth-below-head")


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    wanted = _wanted(scene, treatment_at(scene, finding.subject), layer_at(scene, finding.subject))
    if wanted is not None:
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
