"""cannot-pass: a panel's way crosses a bracket that its rings cannot pass.

Broken; every mount; panels that draw. Eyelets, tabs and pockets never pass a middle bracket; rings pass an open arm.
Geometry of travel; common practice, no source for kits.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, passing_kit
from elevation.findings.limits import common_practice
from elevation.findings.looking import layer_at, panel_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import side_name, where
from elevation.setting_out.model import TreatmentOut
from elevation.words import msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        for panel in layer.panels:
            if not panel.cannot_pass:
                continue
            bracket = next((one for one in layer.brackets if one.ref == panel.cannot_pass[0]), None)
            if bracket is None:  # pragma: no cover - what it cannot pass is a bracket of the layer
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
    heading = scene.trade.headings.get(layer_at(scene, finding.subject).heading)
    if heading is None or heading.carries == "rings":
        for ref in panel_at(scene, finding.subject).cannot_pass:
            yield from passing_kit(scene, ref)


RULE = Rule("cannot-pass", msg("rings past brackets"), _find, changes=_changes, mounts=EVERY_MOUNT)
