"""reach-short: the end bracket stands too little beyond the opening for a panel to draw clear.

Broken; wall and ceiling mounts; at ends to which a panel draws clear. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_to, ends_or_end
from elevation.findings.changing_ends import narrow_side
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import opening_name, side_name
from elevation.findings.rules.reach import reach_at, reach_places, reaches
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import falls_short
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "reach-short")
    for _layer, side, bracket, opening, _panel, reach in reaches(treatment):
        if not falls_short(reach, limit, scene.half_mm):
            continue
        params = {
            "opening": opening_name(opening),
            "side": side_name(side),
            "limit": said_limit(scene, "reach-short"),
        }
        if reach < 0:
            text = msg(
                "{opening}: the {side} end bracket stands {inside} inside the opening; "
                "to draw the cloth clear it needs to be {limit} beyond it.",
                inside=Mm(-reach),
                **params,
            )
        else:
            text = msg(
                "{opening}: the {side} end bracket is {reach} beyond the opening, "
                "{short} less than the {limit} it needs to draw the cloth clear.",
                reach=Mm(reach),
                short=Mm(limit - reach),
                **params,
            )
        yield Finding(
            "reach-short",
            Weight.BROKEN,
            bracket.ref,
            text,
            authority_of(scene, "reach-short"),
            measured_mm=reach,
            limit_mm=limit,
            at=(bracket.x_mm, bracket.height_mm),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    found = reach_at(treatment_at(scene, finding.subject), finding.subject)
    if found is None:  # pragma: no cover - the finding was made of it
        return
    side, bracket, reach = found
    short = limit_mm(scene, "reach-short") - reach
    yield from ends_or_end(scene, finding.subject, side, short, scene.half_mm)
    wanted = bracket.x_mm - short if side == "left" else bracket.x_mm + short
    yield from bracket_to(scene, finding.subject, wanted, scene.half_mm)
    yield from narrow_side(scene, finding.subject, side)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    limit = limit_mm(scene, "reach-short")
    reason = msg("end bracket {limit} beyond the opening, the least to draw clear", limit=Mm(limit, about=True))
    yield from reach_places(treatment, limit, reason)


RULE = Rule(
    "reach-short",
    msg("the least reach beyond the opening"),
    _find,
    changes=_changes,
    stickings=_stickings,
    mounts=BEFORE_WALL,
)
