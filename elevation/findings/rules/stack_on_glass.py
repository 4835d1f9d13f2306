"""stack-on-glass: the open panels stand over glass.

Consider past the usual limit; broken past the scheme's own stated goal (``clear_glass_to``). Wall and ceiling mounts, every
arrangement; measured per panel, so that each side of a pair speaks for itself. One source: a maker's advice.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_to, ends_or_end
from elevation.findings.changing_cloth import narrower
from elevation.findings.changing_ends import narrow_side
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import draws_from, ends_of, layer_at, panel_at, treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import opening_name, side_name
from elevation.room.find import scheme_of
from elevation.setting_out.model import OpeningOut, PanelOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def over_glass(panel: PanelOut, openings: tuple[OpeningOut, ...]) -> tuple[float, OpeningOut] | None:
    """The most glass of one opening that a panel stands over when open, in mm of width, and that opening."""
    worst: tuple[float, OpeningOut] | None = None
    for opening in openings:
        if panel.hem_low_mm >= opening.glass_top_mm or panel.top_mm <= opening.glass_bottom_mm:
            continue
        wide = min(panel.open[1], opening.glass_right_mm) - max(panel.open[0], opening.glass_left_mm)
        if wide > 0 and (worst is None or wide > worst[0]):
            worst = wide, opening
    return worst


def goal_mm(scene: Scene) -> float | None:
    """The scheme's own stated goal, in mm; None where it states none."""
    scheme = scheme_of(scene.room, scene.set_out.wall, scene.set_out.scheme)
    return None if scheme is None or scheme.clear_glass_to is None else scheme.clear_glass_to.mm


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    usual, goal = limit_mm(scene, "stack-on-glass"), goal_mm(scene)
    for layer in treatment.layers:
        for panel in layer.panels:
            found = over_glass(panel, treatment.openings)
            if found is None:
                continue
            wide, opening = found
            params = {"opening": opening_name(opening), "side": side_name(panel.side), "wide": Mm(wide)}
            at = ((panel.open[0] + panel.open[1]) / 2, (opening.glass_bottom_mm + opening.glass_top_mm) / 2)
            if goal is not None and exceeds(wide, goal, scene.half_mm):
                yield Finding(
                    "stack-on-glass",
                    Weight.BROKEN,
                    panel.ref,
                    msg(
                        "{opening}: the open {side} panel covers {wide} of the glass, {more} more than "
                        "this scheme's own goal of {goal}.",
                        more=Mm(wide - goal),
                        goal=Mm(goal),
                        **params,
                    ),
                    msg("this scheme's own goal"),
                    measured_mm=wide,
                    limit_mm=goal,
                    at=at,
                )
            elif panel.stationary and panel.tie is not None:
                continue  # tied for good it is meant to sweep over glass, and frees it lower down
            elif exceeds(wide, usual, scene.half_mm):
                yield Finding(
                    "stack-on-glass",
                    Weight.CONSIDER,
                    panel.ref,
                    msg(
                        "{opening}: the open {side} panel covers {wide} of the glass, {more} more than the {limit} "
                        "usually accepted.",
                        more=Mm(wide - usual),
                        limit=said_limit(scene, "stack-on-glass"),
                        **params,
                    ),
                    authority_of(scene, "stack-on-glass"),
                    measured_mm=wide,
                    limit_mm=usual,
                    at=at,
                )


def _least(scene: Scene) -> float:
    """What clears both the goal and the usual limit: a remedy leaves no finding behind."""
    usual, goal = limit_mm(scene, "stack-on-glass"), goal_mm(scene)
    return usual if goal is None else min(usual, goal)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    panel, layer = panel_at(scene, finding.subject), layer_at(scene, finding.subject)
    found = over_glass(panel, treatment_at(scene, finding.subject).openings)
    if found is None:  # pragma: no cover - the finding was made of it
        return
    more = found[0] - _least(scene)
    if draws_from(layer, panel.side) is panel or panel.stationary:
        yield from ends_or_end(scene, finding.subject, panel.side, more, scene.half_mm)
    ends = ends_of(layer)
    if ends is not None and draws_from(layer, panel.side) is panel:
        end = ends[0] if panel.side == "left" else ends[1]
        yield from bracket_to(scene, end.ref, end.x_mm + (-more if panel.side == "left" else more), scene.half_mm)
    yield from narrow_side(scene, finding.subject, panel.side)
    yield from narrower(scene, finding.subject, more)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    del scene
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    reason = msg("the open cloth just clears the glass")
    for layer in treatment.layers:
        left, right = draws_from(layer, "left"), draws_from(layer, "right")
        if left is not None:
            place = layer.support.left_mm + treatment.openings[0].glass_left_mm - left.open[1]
            yield Sticking("rod-left", layer.ref, place, reason)
        if right is not None:
            place = layer.support.right_mm + treatment.openings[-1].glass_right_mm - right.open[0]
            yield Sticking("rod-right", layer.ref, place, reason)


RULE = Rule(
    "stack-on-glass", msg("the glass left clear"), _find, changes=_changes, stickings=_stickings, mounts=BEFORE_WALL
)
