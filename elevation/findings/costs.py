"""What a change costs in cover and fullness, told beside it: a bracket on a stud may take cloth's way from it."""

from __future__ import annotations

from collections.abc import Callable

from elevation.errors import ElevationError
from elevation.findings.looking import layer_at
from elevation.findings.model import Scene
from elevation.room.model import Ref, Room
from elevation.setting_out.model import LayerOut
from elevation.setting_out.whole import set_out_afresh
from elevation.units.tolerance import exceeds
from elevation.words import Message, Mm, Ratio, msg


def covered_mm(layer: LayerOut) -> float:
    """Width along the wall that the closed panels of a layer cover together."""
    return sum(panel.closed[1] - panel.closed[0] for panel in layer.panels)


def fullness_of(layer: LayerOut) -> float | None:
    """The least fullness of its panels; None where none draws."""
    return min((panel.fullness for panel in layer.panels if panel.fullness is not None), default=None)


def with_cost(scene: Scene, ref: Ref, label: Message, edit: Callable[[Room], Room]) -> Message:
    """A change's label with what it does to cover and fullness; the label alone where that is nothing to be seen.

    Parameters
    ----------
    scene : Scene
    ref : Ref
        The layer.
    label : Message
    edit : callable
        The change.
    """
    before = layer_at(scene, ref)
    try:
        out = set_out_afresh(edit(scene.room), scene.set_out.wall, scene.set_out.scheme, scene.trade)
    except ElevationError:  # pragma: no cover - an edit that cannot be says so itself, where it is tried
        return label
    hung = (layer for treatment in out.treatments for layer in treatment.layers)
    after = next((layer for layer in hung if layer.ref == ref[:4]), None)
    now, then = fullness_of(before), None if after is None else fullness_of(after)
    if after is None or now is None or then is None:
        return label
    more = covered_mm(after) - covered_mm(before)
    if not exceeds(abs(more), 0.0, scene.half_mm):
        return label
    params = {"change": label, "by": Mm(abs(more)), "now": Ratio(now), "then": Ratio(then)}
    if more < 0:
        return msg("{change}: the cloth covers {by} less, its fullness is {then} instead of {now}", **params)
    return msg("{change}: the cloth covers {by} more, its fullness is {then} instead of {now}", **params)
