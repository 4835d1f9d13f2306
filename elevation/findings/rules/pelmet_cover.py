"""pelmet-cover: a pelmet that shows the heading under it, or that covers much of the glass.

Consider; mounts before the wall. A pelmet is there to hide rod and heading: its lower edge belongs below the top of the
cloth. Glass that it covers is dark for good; from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_dress import pelmet_depth, pelmet_top
from elevation.findings.limits import authority_of, common_practice, limit_mm, said_limit
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import where
from elevation.findings.shapes import hanging, pelmet_over
from elevation.setting_out.model import OpeningOut, PelmetOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _shows(treatment: TreatmentOut, pelmet: PelmetOut) -> float:
    """How far the pelmet's lower edge stands over the lowest heading, in mm."""
    return pelmet.bottom_mm - min(_tops(treatment, pelmet), default=pelmet.bottom_mm)


def _tops(treatment: TreatmentOut, pelmet: PelmetOut) -> list[float]:
    """The heights that headings hang at, in the pelmet's middle; under a rod that leans otherwise that of its lower end."""
    middle = (pelmet.left_mm + pelmet.right_mm) / 2
    return [
        panel.top_mm
        + pelmet.tilt * (middle - (layer.support.left_mm + layer.support.right_mm) / 2)
        - abs(layer.support.tilt - pelmet.tilt) * (layer.support.right_mm - layer.support.left_mm) / 2
        for layer in treatment.layers
        for panel in hanging(layer)
    ]


def _covers(treatment: TreatmentOut, pelmet: PelmetOut) -> float:
    """How far the pelmet hangs down over the glass of the opening that it covers most, in mm."""
    return max((_over_glass(opening, pelmet) for opening in treatment.openings), default=0.0)


def _over_glass(opening: OpeningOut, pelmet: PelmetOut) -> float:
    if not pelmet.tilt or opening.head != "raked":
        return opening.glass_top_mm - pelmet_over(pelmet, opening.glass_left_mm, opening.glass_right_mm)[1]
    inset = opening.top_mm - opening.glass_top_mm
    corners = (opening.left_mm, opening.left_top_mm), (opening.right_mm, opening.right_top_mm)
    return max(y - inset - pelmet.bottom_mm - pelmet.up_at(x) for x, y in corners)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    pelmet = treatment.pelmet
    if pelmet is None:
        return
    at = ((pelmet.left_mm + pelmet.right_mm) / 2, pelmet.bottom_mm)
    shows, covers, limit = _shows(treatment, pelmet), _covers(treatment, pelmet), limit_mm(scene, "pelmet-glass")
    if exceeds(shows, 0.0, scene.half_mm):
        text = msg(
            "{where}: the pelmet ends {shows} above the top of the cloth and shows the heading.",
            where=where(treatment),
            shows=Mm(shows),
        )
        yield Finding("pelmet-cover", Weight.CONSIDER, treatment.ref, text, common_practice(), -shows, 0.0, at)
    elif exceeds(covers, limit, scene.half_mm):
        text = msg(
            "{where}: the pelmet covers the top {covers} of the glass for good; {limit} is usually accepted.",
            where=where(treatment),
            covers=Mm(covers),
            limit=said_limit(scene, "pelmet-glass"),
        )
        authority = authority_of(scene, "pelmet-glass")
        yield Finding("pelmet-cover", Weight.CONSIDER, treatment.ref, text, authority, covers, limit, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment = treatment_at(scene, finding.subject)
    pelmet = treatment.pelmet
    if pelmet is None:  # pragma: no cover - the finding was made of it
        return
    depth, above = pelmet.top_mm - pelmet.bottom_mm, pelmet.top_mm - pelmet.over_mm
    shows = _shows(treatment, pelmet)
    if exceeds(shows, 0.0, scene.half_mm):
        yield from pelmet_depth(scene, finding.subject, depth + shows, is_deeper=True)
        yield from pelmet_top(scene, finding.subject, above - shows, is_higher=False)
    else:
        over = _covers(treatment, pelmet) - limit_mm(scene, "pelmet-glass")
        yield from pelmet_top(scene, finding.subject, above + over, is_higher=True)
        yield from pelmet_depth(scene, finding.subject, depth - over, is_deeper=False)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    if treatment.pelmet is not None:
        tops = _tops(treatment, treatment.pelmet)
        if tops:
            yield Sticking("pelmet-depth", treatment.ref, min(tops), msg("just hides the heading"))
        for opening in treatment.openings:
            yield Sticking("pelmet-depth", treatment.ref, opening.glass_top_mm, msg("just clears the glass"))


RULE = Rule(
    "pelmet-cover",
    msg("a pelmet that hides the heading and not the glass"),
    _find,
    changes=_changes,
    stickings=_stickings,
    mounts=BEFORE_WALL,
)
