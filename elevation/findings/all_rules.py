"""All rules, and the way in: what is wrong with a wall, and where its handles may stick."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import EVERY_MOUNT, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.rules import (
    below_sill,
    bent_round,
    blind_behind,
    board_place,
    bracket_level,
    bracket_out,
    cannot_pass,
    child_climb,
    child_cord,
    child_loop,
    child_puddle,
    cloth_below_head,
    cloth_narrow,
    corner_bracket,
    crooked,
    double_bracket,
    escape,
    fixing,
    folds_rub,
    fullness,
    heat,
    hem_high,
    hem_low,
    hem_varies,
    meets,
    near_edge,
    no_bracket,
    no_cross,
    no_holes,
    no_meet,
    no_room,
    off_framing,
    on_casing,
    on_leaf,
    out_of_square,
    over_box,
    overlap_arm,
    panel_length,
    past_jamb,
    pelmet_clear,
    pelmet_cover,
    pelmet_depth,
    pelmet_framing,
    pelmet_heat,
    pelmet_meets,
    reach_long,
    reach_short,
    reading_used,
    readings_differ,
    reveal_depth,
    rings_tight,
    rod_high,
    rod_low,
    rod_under_ceiling,
    runs_down,
    sag,
    shutter_box,
    splice,
    stack_on_glass,
    swing,
    tension_rod,
    tie_place,
    track_fixings,
    uneven_rods,
    uplift,
    wash,
)
from elevation.room.model import Ref
from elevation.setting_out.model import TreatmentOut

RULES: tuple[Rule, ...] = (
    no_bracket.RULE,
    tension_rod.RULE,
    no_cross.RULE,
    overlap_arm.RULE,
    bent_round.RULE,
    double_bracket.RULE,
    no_holes.RULE,
    on_casing.RULE,
    on_leaf.RULE,
    shutter_box.RULE,
    board_place.RULE,
    tie_place.RULE,
    pelmet_meets.RULE,
    pelmet_clear.RULE,
    blind_behind.RULE,
    child_cord.RULE,
    past_jamb.RULE,
    meets.RULE,
    swing.RULE,
    escape.RULE,
    heat.RULE,
    splice.RULE,
    track_fixings.RULE,
    fixing.RULE,
    corner_bracket.RULE,
    sag.RULE,
    uplift.RULE,
    no_room.RULE,
    rod_low.RULE,
    rod_under_ceiling.RULE,
    reach_short.RULE,
    over_box.RULE,
    no_meet.RULE,
    cannot_pass.RULE,
    bracket_level.RULE,
    bracket_out.RULE,
    hem_low.RULE,
    below_sill.RULE,
    reveal_depth.RULE,
    stack_on_glass.RULE,
    child_loop.RULE,
    child_puddle.RULE,
    child_climb.RULE,
    off_framing.RULE,
    pelmet_framing.RULE,
    near_edge.RULE,
    cloth_below_head.RULE,
    pelmet_cover.RULE,
    pelmet_depth.RULE,
    pelmet_heat.RULE,
    panel_length.RULE,
    rings_tight.RULE,
    runs_down.RULE,
    folds_rub.RULE,
    fullness.RULE,
    cloth_narrow.RULE,
    wash.RULE,
    hem_high.RULE,
    hem_varies.RULE,
    reach_long.RULE,
    rod_high.RULE,
    uneven_rods.RULE,
    crooked.RULE,
    reading_used.RULE,
    out_of_square.RULE,
    readings_differ.RULE,
)
"""Every rule, in the order in which findings of one weight are told."""

_WEIGHTS = {Weight.STOP: 0, Weight.BROKEN: 1, Weight.CONSIDER: 2}


def rule_of(rule_id: str) -> Rule:
    """The rule of that id."""
    return next(rule for rule in RULES if rule.id == rule_id)


_ORDER = {rule.id: number for number, rule in enumerate(RULES)}

_OF_TREATMENT = {
    (mount, near): tuple(
        rule.find_in_treatment
        for rule in RULES
        if rule.find_in_treatment is not None and mount in rule.mounts and near in (None, rule.is_near)
    )
    for mount in EVERY_MOUNT
    for near in (None, True, False)
}


def find_afresh(scene: Scene, treatment: TreatmentOut, near: bool | None = None) -> tuple[Finding, ...]:
    """The findings of the rules about one treatment, nothing remembered.

    Parameters
    ----------
    scene : Scene
    treatment : TreatmentOut
    near : bool or None
        Of those rules that look no farther than its reach (True), of the others (False), of all (None).
    """
    found: list[Finding] = []
    for find_in_treatment in _OF_TREATMENT[treatment.mount, near]:
        found.extend(find_in_treatment(scene, treatment))
    return tuple(found)


MEMO = TreatmentMemo(find_afresh)
"""Remembers the findings of each treatment; ``MEMO.calls`` counts real runs."""


def every(scene: Scene, memo: TreatmentMemo | None = None) -> tuple[Finding, ...]:
    """Like ``find``, but with all that a rule has to say about one subject, where that is more than one thing."""
    keep = MEMO if memo is None else memo
    found: list[Finding] = []
    for treatment in scene.set_out.treatments:
        found.extend(sorted(keep(scene, treatment), key=lambda finding: _ORDER[finding.rule]))
    for rule in RULES:
        if rule.find_in_wall is not None:
            found.extend(rule.find_in_wall(scene))
    # Sorting is stable: within a weight, treatments stay in order and rules in theirs.
    return tuple(sorted(found, key=lambda finding: _WEIGHTS[finding.weight]))


def find(scene: Scene, memo: TreatmentMemo | None = None) -> tuple[Finding, ...]:
    """Everything that is wrong with a wall or worth a thought: stops first, then what is broken, then advice.

    Parameters
    ----------
    scene : Scene
    memo : TreatmentMemo or None
        What remembers treatments that did not change; None takes the common one.

    Returns
    -------
    tuple of Finding
        One at most of each rule and subject, the gravest: what else the rule has to say about it comes out once that is
        put right.
    """
    first: dict[tuple[str, Ref], Finding] = {}
    for finding in every(scene, memo):
        first.setdefault((finding.rule, finding.subject), finding)
    return tuple(first.values())


def stickings(scene: Scene, treatment: TreatmentOut) -> tuple[Sticking, ...]:
    """Every place that a handle of ``treatment`` may stick to because of a rule; computed once, at press."""

    def each() -> Iterator[Sticking]:
        for rule in RULES:
            if treatment.mount in rule.mounts:
                yield from rule.stickings(scene, treatment)

    return tuple(each())
