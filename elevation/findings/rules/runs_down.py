"""runs-down: rings on a rod so far out of level that a panel runs down it by itself.

Consider; every mount; layers with panels that draw. A ring begins to slide where the slope passes its friction: 0.15 to 0.2
for smooth dry metal on metal in handbooks, less once it shakes. From memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_tilt import tilt_to
from elevation.findings.limits import authority_of
from elevation.findings.looking import drawing_panels
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.setting_out.model import TreatmentOut
from elevation.trade.tables import limit_of
from elevation.units.tolerance import less_ratio
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_of(scene.trade, "runs-down")
    for layer in treatment.layers:
        support = layer.support
        if not less_ratio(limit, abs(support.tilt)) or not drawing_panels(layer):
            continue
        fall = abs(support.tilt) * support.length_mm
        params: dict[str, object] = {"where": where(treatment), "fall": Mm(fall), "length": Mm(support.length_mm)}
        if support.tilt > 0:
            text = msg(
                "{where}: over its {length} the {support} falls {fall} to the left: cloth runs down it by itself and "
                "does not"
                " stay at the right.",
                support=noun_of(layer),
                **params,
            )
        else:
            text = msg(
                "{where}: over its {length} the {support} falls {fall} to the right: cloth runs down it by itself "
                "and does not"
                " stay at the left.",
                support=noun_of(layer),
                **params,
            )
        low = support.left_mm if support.tilt > 0 else support.right_mm
        yield Finding(
            "runs-down",
            Weight.CONSIDER,
            layer.ref,
            text,
            authority_of(scene, "runs-down"),
            measured_mm=fall,
            limit_mm=limit * support.length_mm,
            at=(low, support.height_mm - fall / 2),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    yield from tilt_to(scene, finding.subject, "level", "split")


RULE = Rule("runs-down", msg("cloth that stays where it is drawn"), _find, changes=_changes, mounts=EVERY_MOUNT)
