"""cloth-narrow: a panel has less flat cloth than the fullness that was wished takes, with its return.

Consider; every mount; panels that draw, of layers whose making names a fullness or a return to the wall. The wish is hers.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from elevation.findings.changing import mark_up
from elevation.findings.changing_cloth import flat_width, layer_changed, ready_pieces
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, side_name, where
from elevation.room.find import layer_of
from elevation.room.model import Making
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import falls_short
from elevation.words import Mm, Ratio, msg


def _short(scene: Scene, layer: LayerOut) -> tuple[PanelOut, float, float] | None:
    """The panel that has least of the cloth it is wished, how much that is, and the fullness wished."""
    if layer.wish.fullness is None and not layer.wish.returns:
        return None
    made = cloth_of_layer(scene.room, layer_of(scene.room, layer.ref), layer, scene.trade)
    if made is None:
        return None
    short = [
        (panel, cloth.flat_mm, made.fullness)
        for panel, cloth in zip(layer.panels, made.panels, strict=True)
        if not panel.stationary and falls_short(panel.flat_width_mm, cloth.flat_mm, scene.half_mm * panel.count)
    ]
    return min(short, key=lambda entry: entry[0].flat_width_mm / entry[1], default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        found = _short(scene, layer)
        if found is None:
            continue
        panel, wanted, fullness = found
        text = msg(
            "{where}: the {side} panel has {flat} of flat cloth; at the wished fullness of {fullness} its part "
            "of the {support} "
            "takes {wanted}.",
            support=noun_of(layer),
            where=where(treatment),
            side=side_name(panel.side),
            flat=Mm(panel.flat_width_mm),
            fullness=Ratio(fullness, 2),
            wanted=Mm(wanted),
        )
        at = ((panel.closed[0] + panel.closed[1]) / 2, (panel.top_mm + panel.hem_low_mm) / 2)
        authority = msg("the fullness that was wished here")
        yield Finding("cloth-narrow", Weight.CONSIDER, layer.ref, text, authority, panel.flat_width_mm, wanted, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    found = _short(scene, layer)
    if found is None:  # pragma: no cover - the finding was made of it
        return
    panel, wanted, _ = found
    yield from ready_pieces(scene, finding.subject)
    yield from flat_width(scene, panel.ref, mark_up(wanted / panel.count, scene.room.graduation_mm))
    making = layer_of(scene.room, layer.ref).making
    if making.fullness is not None and wanted > 0:
        # Down to what the cloth gives, to a hundredth: less than once is no curtain.
        wish = int(making.fullness * panel.flat_width_mm / wanted * 100 + 1e-9) / 100
        if wish >= 1:
            label = msg("Be content with a fullness of {fullness}", fullness=Ratio(wish, 2))
            yield layer_changed(label, layer.ref, making=_with(making, wish))


def _with(making: Making, fullness: float) -> Making:
    return replace(making, fullness=fullness)


RULE = Rule("cloth-narrow", msg("cloth for the wished fullness"), _find, changes=_changes, mounts=EVERY_MOUNT)
