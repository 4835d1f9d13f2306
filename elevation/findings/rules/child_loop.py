"""child-loop: the loop of a tie-back hangs where children reach it.

Consider; every mount; rooms with children or pets. Ends of cords at least 1.6 m above the floor: advice of the Irish
standards body (NSAI) on cords of window coverings. A fixed arm has no loop.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_tie import fixed_arm, tie_height, untied
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import panel_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import falls_short
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.room.children:
        return
    limit = limit_mm(scene, "child-loop")
    for layer in treatment.layers:
        for panel in layer.panels:
            tie = panel.tie
            if tie is None or not tie.is_loop:
                continue
            high = tie.hook[1] - tie.floor_mm
            if falls_short(high, limit, scene.half_mm):
                yield Finding(
                    "child-loop",
                    Weight.CONSIDER,
                    panel.ref,
                    msg(
                        "{where}: the loop of the tie-back hangs {high} above the floor, within reach of children; loops "
                        "and cords belong at least {limit} up.",
                        where=where(treatment),
                        high=Mm(high),
                        limit=said_limit(scene, "child-loop"),
                    ),
                    authority_of(scene, "child-loop"),
                    measured_mm=high,
                    limit_mm=limit,
                    at=tie.hook,
                    caution=msg(
                        "A child can be strangled by a loop: keep to the packet's safety sheet and to local rules."
                    ),
                )
                break  # the loops of one layer hang at one height


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    panel = panel_at(scene, finding.subject)
    yield from fixed_arm(scene, finding.subject)
    if panel.tie is not None:  # pragma: no branch - the finding was made of it
        yield from tie_height(scene, finding.subject, panel.tie.floor_mm + limit_mm(scene, "child-loop"), is_up=True)
    yield from untied(finding.subject)


RULE = Rule("child-loop", msg("no loop within reach where children pull"), _find, changes=_changes, mounts=EVERY_MOUNT)
