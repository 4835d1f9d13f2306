"""cannot-pass: a panel's way crosses a bracket that its rings cannot pass.

Broken; wall mounts; panels that draw. Eyelets, tabs and pockets never pass a middle bracket; rings pass an open arm.
Geometry of travel; common practice, no source for kits.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, passing_kit
from elevation.findings.changing_cloth import panel_changed
from elevation.findings.limits import common_practice
from elevation.findings.looking import layer_at, panel_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import side_name, where
from elevation.room.model import Ref
from elevation.setting_out.model import TreatmentOut
from elevation.words import msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        for panel in layer.panels:
            if not panel.cannot_pass:
                continue
            bracket = next((one for one in layer.brackets if one.ref == panel.cannot_pass[0]), None)
            if bracket is None:
                continue
            yield Finding(
                "cannot-pass",
                Weight.BROKEN,
                panel.ref,
                msg(
                    "{where}: the {side} panel would have to pass {bracket} to close, and cannot.",
                    where=where(treatment),
                    side=side_name(panel.side),
                    bracket=bracket_name(scene, bracket.ref),
                ),
                common_practice(),
                at=(bracket.x_mm, bracket.height_mm),
            )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer, panel = layer_at(scene, finding.subject), panel_at(scene, finding.subject)
    heading = scene.trade.headings.get(layer.heading)
    for ref in panel.cannot_pass:
        if heading is None or heading.carries == "rings":
            yield from passing_kit(scene, ref)
        far = panel.travel[1] if panel.side == "left" else panel.travel[0]
        yield from bracket_to(scene, ref, far)
        yield from _parks(scene, finding.subject, ref)


def _parks(scene: Scene, panel: Ref, bracket: Ref) -> Iterator[Change]:
    """The panel parked at the bracket in its way, so that it draws away from it."""
    name = bracket_name(scene, bracket)
    side = panel_at(scene, panel).side
    if side == "left":
        label = msg("Park the panel to the left of {bracket}", bracket=name)
        yield panel_changed(label, panel, parks=f"left-of:{bracket[-1]}")
    else:
        label = msg("Park the panel to the right of {bracket}", bracket=name)
        yield panel_changed(label, panel, parks=f"right-of:{bracket[-1]}")


RULE = Rule("cannot-pass", msg("rings past brackets"), _find, changes=_changes)
