"""no-cross: cloth is asked to do what its support cannot.

Stop; every mount. Rings on a straight rod cannot cross, so leading edges overlap only on a track, whose arm carries one
past the other; and eyelets, tabs and pockets do not hang on a track's glides. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import without_overlap
from elevation.findings.changing_cloth import layer_changed
from elevation.findings.changing_support import hang_on
from elevation.findings.limits import common_practice
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg


def crosses(layer: LayerOut) -> bool:
    """Whether leading edges are asked to overlap where nothing carries one past the other."""
    return layer.support.kind != "track" and layer.support.overlap_mm > TOUCH_MM


def is_sleeve(scene: Scene, layer: LayerOut) -> bool:
    """Whether the heading is a sleeve round a rod, and hangs on a track."""
    row = scene.trade.headings.get(layer.heading)
    return layer.support.kind == "track" and row is not None and row.carries == "sleeve"


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        text: Message
        if crosses(layer):
            text = msg(
                "{where}: the leading edges are to overlap by {by}, and rings on a straight rod cannot cross; "
                "a track with an overlap arm can.",
                where=where(treatment),
                by=Mm(layer.support.overlap_mm),
            )
        elif is_sleeve(scene, layer):
            text = msg(
                "{where}: eyelets, tabs and pockets go round a rod; they do not hang on a track.", where=where(treatment)
            )
        else:
            continue
        support = layer.support
        at = ((support.left_mm + support.right_mm) / 2, support.height_mm)
        yield Finding("no-cross", Weight.STOP, layer.ref, text, common_practice(), at=at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    if crosses(layer):
        yield from without_overlap(layer.ref)
        yield from hang_on(scene, layer.ref, "track")
        return
    for row in scene.trade.headings.values():
        if row.carries == "rings" and row.stack_model == "pleated-on-cord":
            label = msg("Give the cloth another heading: {heading}", heading=Message(row.name))
            yield layer_changed(label, layer.ref, heading=row.id)
    yield from hang_on(scene, layer.ref, "rod")


RULE = Rule("no-cross", msg("cloth that its support can carry so"), _find, changes=_changes, mounts=EVERY_MOUNT)
