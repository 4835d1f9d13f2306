"""child-puddle: cloth lies on the floor where children or pets pull, trip and wrap themselves in it.

Consider; every mount; rooms with children or pets. A hem that breaks may lie by the usual inch. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_cloth import hem_to
from elevation.findings.limits import common_practice, limit_mm
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import TreatmentOut
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.room.children:
        return
    limit = limit_mm(scene, "hem-break-default")
    for layer in treatment.layers:
        # One hem is set for all panels of a layer.
        lies, at = max(
            ((-(panel.target_gap_mm or 0.0), (panel.parks_at_mm, panel.hem_low_mm)) for panel in layer.panels),
            default=(0.0, (0.0, 0.0)),
        )
        if lies > limit + scene.half_mm:
            yield Finding(
                "child-puddle",
                Weight.CONSIDER,
                layer.ref,
                msg("{where}: {lies} of cloth lie on the floor, within reach of children or pets.",
                    where=where(treatment), lies=Mm(lies)),
                common_practice(),
                measured_mm=lies,
                limit_mm=limit,
                at=at,
            )  # fmt: skip


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    yield from hem_to(scene, finding.subject, "clear", limit_mm(scene, "hem-clear-default"))


RULE = Rule(
    "child-puddle",
    msg("no cloth on the floor where children or pets pull"),
    _find,
    changes=_changes,
    mounts=frozenset({"wall", "ceiling", "reveal", "sash"}),
)
