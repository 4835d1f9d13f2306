"""reach-long: the end bracket stands unusually far beyond the opening.

Consider; wall and ceiling mounts; at ends to which a panel draws clear. Not raised where the reach is what clears the
glass: with the reach at its limit, the open stack would stand over glass. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_to, ends_or_end
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import opening_name, side_name
from elevation.findings.rules.reach import reach_at, reach_places, reaches
from elevation.setting_out.model import OpeningOut, PanelOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def clears_glass(panel: PanelOut, opening: OpeningOut, side: str, less_mm: float) -> bool:
    """Whether the reach is what clears the glass: the open stack would cover glass with ``less_mm`` less of it."""
    if side == "left":
        return panel.open[1] + less_mm > opening.glass_left_mm
    return panel.open[0] - less_mm < opening.glass_right_mm


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "reach-long")
    for _layer, side, bracket, opening, panel, reach in reaches(treatment):
        if not exceeds(reach, limit, scene.half_mm) or clears_glass(panel, opening, side, reach - limit):
            continue
        yield Finding(
            "reach-long",
            Weight.CONSIDER,
            bracket.ref,
            msg(
                "{opening}: the {side} end bracket is {reach} beyond the opening, {more} more than the {limit} "
                "that is usual, and the open cloth would clear the glass with less.",
                opening=opening_name(opening),
                side=side_name(side),
                reach=Mm(reach),
                more=Mm(reach - limit),
                limit=said_limit(scene, "reach-long"),
            ),
            authority_of(scene, "reach-long"),
            measured_mm=reach,
            limit_mm=limit,
            at=(bracket.x_mm, bracket.height_mm),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    found = reach_at(treatment_at(scene, finding.subject), finding.subject)
    if found is None:  # pragma: no cover - the finding was made of it
        return
    side, bracket, reach = found
    more = reach - limit_mm(scene, "reach-long")
    yield from ends_or_end(scene, finding.subject, side, -more, scene.half_mm)
    wanted = bracket.x_mm + more if side == "left" else bracket.x_mm - more
    yield from bracket_to(scene, finding.subject, wanted, scene.half_mm)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    limit = limit_mm(scene, "reach-long")
    reason = msg("end bracket {limit} beyond the opening, the most that is usual", limit=Mm(limit, about=True))
    yield from reach_places(treatment, limit, reason)


RULE = Rule(
    "reach-long",
    msg("the usual reach beyond the opening"),
    _find,
    changes=_changes,
    stickings=_stickings,
    mounts=BEFORE_WALL,
)
