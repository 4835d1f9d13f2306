"""track-fixings: the fixings of a track stand too far apart, or too far from its ends.

Broken; every mount; layers on a track. The spacing is the packet's, else the limit ``track-spacing``; ``track-end`` at the
ends. The track's own sheet governs; the usual figures are from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from elevation.findings.changing import bracket_added
from elevation.findings.changing_support import fixings_spread
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def spacing_mm(scene: Scene, layer: LayerOut) -> float:
    """The most from one fixing to the next, in mm."""
    own = layer.support.spacing_mm
    return limit_mm(scene, "track-spacing") if own is None else own


def widest(layer: LayerOut) -> tuple[float, float]:
    """The widest stretch of a track between two fixings: from and to, in mm along the wall."""
    xs = sorted(bracket.x_mm for bracket in layer.brackets)
    return max(pairwise(xs), key=lambda pair: pair[1] - pair[0], default=(0.0, 0.0))


def overhang(scene: Scene, layer: LayerOut) -> tuple[float, float]:
    """The end of a track beyond its last fixing that is too long by most, and the most it may be, in mm.

    Bent round a corner it does not end there: each leg has half of the stretch from fixing to fixing.
    """
    xs = [bracket.x_mm for bracket in layer.brackets]
    support, free, half = layer.support, limit_mm(scene, "track-end"), spacing_mm(scene, layer) / 2
    ends = (min(xs) - support.left_mm, support.right_mm - max(xs))
    found = [(end, half if bent else free) for end, bent in zip(ends, support.tangents_mm, strict=True)]
    return max(found, key=lambda one: one[0] - one[1])


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        if layer.support.kind != "track" or len(layer.brackets) < 2:
            continue  # no-bracket speaks
        limit, (left, right) = spacing_mm(scene, layer), widest(layer)
        free, most = overhang(scene, layer)
        params = {"where": where(treatment)}
        if exceeds(right - left, limit, scene.half_mm):
            text = msg(
                "{where}: two fixings of the track stand {apart} apart; {limit} is the most.",
                apart=Mm(right - left),
                limit=Mm(limit),
                **params,
            )
            measured, bound = right - left, limit
        elif exceeds(free, most, scene.half_mm):
            text = msg(
                "{where}: the track's end is {free} from its last fixing; {limit} is the most.",
                free=Mm(free),
                limit=Mm(most),
                **params,
            )
            measured, bound = free, most
        else:
            continue
        at = ((left + right) / 2, layer.support.height_mm)
        authority = authority_of(scene, "track-spacing")
        yield Finding("track-fixings", Weight.BROKEN, layer.ref, text, authority, measured, bound, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    yield from fixings_spread(scene, layer.ref)
    left, right = widest(layer)
    if exceeds(right - left, spacing_mm(scene, layer), scene.half_mm):
        yield from bracket_added(scene, layer.ref, (left + right) / 2)
        return
    xs = [bracket.x_mm for bracket in layer.brackets]
    support, inset = layer.support, limit_mm(scene, "track-end") / 2
    if min(xs) - support.left_mm >= support.right_mm - max(xs):
        yield from bracket_added(scene, layer.ref, support.left_mm + inset)
    else:
        yield from bracket_added(scene, layer.ref, support.right_mm - inset)


RULE = Rule("track-fixings", msg("fixings of the track"), _find, changes=_changes, mounts=EVERY_MOUNT)
