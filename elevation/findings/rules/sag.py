"""sag: a rod sags more than looks neat, more than is acceptable, or is bent for good.

Broken past L/240 of a span or past what its material may be bent to, consider past L/360; every mount; rods. No standard
says how far a rod may sag: both limits are borrowed from those for finishes that crack, and are our own choice. A free end
counts twice its length. Panels stand where the sag is worst, and wood has crept as far as it will.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_strength import bracket_between, bracket_evened, more_brackets, stiffer_rod
from elevation.findings.limits import authority_of
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.setting_out.carried import SpanOut
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import less_ratio
from elevation.words import Message, Mm, msg


def worst(layer: LayerOut) -> SpanOut | None:
    """The span that comes nearest its limit or is farthest past it; None where the sag is not known."""
    if layer.loads is None or not layer.loads.spans:
        return None
    return max(layer.loads.spans, key=lambda span: span.sag_mm / span.neat_mm)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        span = worst(layer)
        if span is None or layer.loads is None:
            continue
        at = (span.at_mm, layer.support.height_mm)
        stress, bends_to = layer.loads.stress, layer.loads.stress_limit
        if stress is not None and bends_to is not None and less_ratio(bends_to, stress):
            text = msg(
                "{where}: what hangs on the {support} would bend it for good; it takes more brackets or a stiffer "
                "{support}.",
                support=noun_of(layer),
                where=where(treatment),
            )
            yield Finding("sag", Weight.BROKEN, layer.ref, text, _strength(), at=at)
        elif less_ratio(span.fair_mm, span.sag_mm):
            yield Finding(
                "sag",
                Weight.BROKEN,
                layer.ref,
                _said(treatment, layer, span, span.fair_mm),
                authority_of(scene, "sag-fair"),
                span.sag_mm,
                span.fair_mm,
                at,
            )
        elif less_ratio(span.neat_mm, span.sag_mm):
            yield Finding(
                "sag",
                Weight.CONSIDER,
                layer.ref,
                _said(treatment, layer, span, span.neat_mm),
                authority_of(scene, "sag-neat"),
                span.sag_mm,
                span.neat_mm,
                at,
            )


def _strength() -> Message:
    return msg("strength of materials: 0.6 of the yield of metals, less of wood")


def _said(treatment: TreatmentOut, layer: LayerOut, span: SpanOut, limit_mm: float) -> Message:
    params = {
        "where": where(treatment),
        "sag": Mm(span.sag_mm, about=True),
        "long": Mm(span.right_mm - span.left_mm, about=True),
        "limit": Mm(limit_mm, about=True),
    }
    if span.is_end:
        return msg(
            "{where}: the {support}'s free end of {long} sags {sag} below its bracket; {limit} is the most.",
            support=noun_of(layer),
            **params,
        )
    if limit_mm == span.neat_mm:
        return msg(
            "{where}: the {support} sags {sag} between two brackets {long} apart; up to {limit} looks neat.",
            support=noun_of(layer),
            **params,
        )
    return msg(
        "{where}: the {support} sags {sag} between two brackets {long} apart; {limit} is the most.",
        support=noun_of(layer),
        **params,
    )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    span = worst(layer)
    if span is None:  # pragma: no cover - the finding was made of it
        return
    if not span.is_end:
        yield from bracket_evened(scene, layer.ref, span.left_mm, span.right_mm)
        yield from bracket_between(scene, layer.ref, span.left_mm, span.right_mm)
        yield from more_brackets(scene, layer.ref)
    yield from stiffer_rod(scene, layer.ref)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        xs = [bracket.x_mm for bracket in layer.brackets]
        for index, bracket in enumerate(layer.brackets):
            if 0 < index < len(xs) - 1:
                middle = (xs[index - 1] + xs[index + 1]) / 2
                yield Sticking("bracket", bracket.ref, middle, msg("midway between its neighbours"))


RULE = Rule("sag", msg("how far the rod sags"), _find, changes=_changes, stickings=_stickings, mounts=EVERY_MOUNT)
