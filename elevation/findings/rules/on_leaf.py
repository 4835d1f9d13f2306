"""on-leaf: a curtain on a sash that turns, where it hangs in that sash's own way.

Sash mounts before leaves that turn about an upright edge. One rod across both leaves of a pair holds them shut: stop. On a
leaf that turns in, rod and cloth stand out toward the hinge as it opens: where they begin nearer to the hinge than the
reveal is deep, they meet the jamb before the leaf stands square to the wall: broken. Geometry; only what was measured.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_end
from elevation.findings.changing_mount import mount_on
from elevation.findings.limits import by_geometry
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, opening_name
from elevation.setting_out.leaves import TURNS_IN, Leaf, leaves, load_on, opens_to
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg

_SQUARE = 89.5
"""A leaf that turns so far, in degrees, stands square to the wall for anybody."""


def _leaf_of(treatment: TreatmentOut, layer: LayerOut) -> tuple[Leaf, ...]:
    """The leaves that a layer's rod lies across."""
    support = layer.support
    return tuple(
        leaf
        for leaf in leaves(treatment.openings[0])
        if min(support.metal_right_mm, leaf.span[1]) - max(support.metal_left_mm, leaf.span[0]) > TOUCH_MM
    )


def _find(_scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    opening = treatment.openings[0]
    for layer in treatment.layers:
        support = layer.support
        found = _leaf_of(treatment, layer)
        at = ((support.left_mm + support.right_mm) / 2, support.height_mm)
        if len(found) > 1:
            text = msg(
                "{opening}: the {support} on the sash lies across both leaves, and neither opens.",
                opening=opening_name(opening),
                support=noun_of(layer),
            )
            yield Finding("on-leaf", Weight.STOP, layer.ref, text, by_geometry(), None, None, at)
            continue
        if not found or opening.sash not in TURNS_IN or opening.reveal_mm is None:
            continue
        load = load_on(found[0], [layer])
        if load is None:  # pragma: no cover - what hangs before the leaf's span is a load on it
            continue
        degrees = opens_to(load, opening.reveal_mm)
        if degrees >= _SQUARE:
            continue
        text = _held_up(treatment, layer, degrees, load.near_mm, opening.reveal_mm)
        yield Finding(
            "on-leaf",
            Weight.BROKEN,
            layer.ref,
            text,
            by_geometry(),
            load.near_mm,
            opening.reveal_mm,
            (found[0].hinge_mm, at[1]),
        )


def _held_up(treatment: TreatmentOut, layer: LayerOut, degrees: float, near_mm: float, reveal_mm: float) -> Message:
    params: dict[str, object] = {
        "opening": opening_name(treatment.openings[0]),
        "support": noun_of(layer),
        "near": Mm(near_mm),
        "reveal": Mm(reveal_mm),
    }
    if degrees < 1:
        return msg(
            "{opening}: with the curtain on it the leaf does not open: the {support} begins {near} from the hinge, in a"
            " reveal {reveal} deep.",
            **params,
        )
    return msg(
        "{opening}: with the curtain on it the leaf opens to about {degrees}° only: the {support} begins {near} from the"
        " hinge, and the jamb reaches {reveal} out beside it.",
        degrees=int(degrees),
        **params,
    )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    support, opening = layer.support, treatment.openings[0]
    found = _leaf_of(treatment, layer)
    if len(found) > 1:
        middle = (opening.left_mm + opening.right_mm) / 2
        yield from rod_end(scene, layer.ref, "right", middle - support.metal_right_mm)
        yield from rod_end(scene, layer.ref, "left", support.metal_left_mm - middle)
    elif found and opening.reveal_mm is not None:  # pragma: no branch - the finding was made of it
        load = load_on(found[0], [layer])
        if load is not None:  # pragma: no branch - the finding was made of it
            side = "left" if found[0].way > 0 else "right"
            yield from rod_end(scene, layer.ref, side, load.near_mm - opening.reveal_mm)
    yield from mount_on(scene, finding.subject, "wall")


RULE = Rule("on-leaf", msg("a curtain that moves with its leaf"), _find, changes=_changes, mounts=frozenset({"sash"}))
