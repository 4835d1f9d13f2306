"""child-cord: a blind with a free cord or loop of chain, where children are.

Stop for a free loop or loose cords, consider for a loop that a holder keeps taut; rooms with children or pets. Free-hanging
operating cords are excluded by ANSI/WCMA A100.1-2022 (USA); in Europe EN 13120 asks for safety devices. The packet's own
safety sheet and local rules govern.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_dress import cordless, no_blind
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import opening_name
from elevation.setting_out.model import TreatmentOut
from elevation.words import msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.room.children or not treatment.blinds or treatment.blinds[0].cord == "none":
        return
    blind = treatment.blinds[0]
    name = opening_name(treatment.openings[0])
    weight = Weight.STOP
    if blind.cord == "cords":
        text = msg("{opening}: the blind has loose cords, in which a child can be strangled.", opening=name)
    elif blind.cord == "loop":
        text = msg("{opening}: the blind has a loop that hangs free, in which a child can be strangled.", opening=name)
    else:
        weight = Weight.CONSIDER
        text = msg(
            "{opening}: the blind's loop is safe only while its holder is screwed to the wall and keeps it taut.",
            opening=name,
        )
    at = (blind.cord_x_mm if blind.cord_x_mm is not None else blind.right_mm, blind.bottom_mm)
    yield Finding(
        "child-cord",
        weight,
        treatment.ref,
        text,
        msg("safety standards for window coverings: ANSI/WCMA A100.1, EN 13120"),
        at=at,
        caution=msg("A child can be strangled by a loop: keep to the packet's safety sheet and to local rules."),
    )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    yield from cordless(scene, finding.subject)
    yield from no_blind(scene, finding.subject)


RULE = Rule("child-cord", msg("no free cord where children are"), _find, changes=_changes, mounts=EVERY_MOUNT)
