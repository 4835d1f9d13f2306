"""Remedies of a finding: candidate changes tried on the whole wall, and only those kept that make it better.

Asked for, never computed each frame: each candidate sets the wall out again.
"""

from __future__ import annotations

from collections import Counter

from msgspec import Struct

from elevation.errors import ElevationError
from elevation.findings.all_rules import RULES, every, find_afresh, rule_of
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Change, Finding, Scene, Weight
from elevation.room.model import Ref, Room
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.words import Message, msg

Key = tuple[str, Ref]
"""A rule and its subject: what a finding is, whatever its figures."""

MOST_OFFERED = 3
"""More than a few remedies are a puzzle, not a help."""

BOTH_NEEDED = {"no-room": ("rod-low", "rod-under-ceiling")}
"""Rules that already say that two others leave no room."""


class Remedy(Struct, frozen=True):
    """A change that helps: what to do, and the room once it is done."""

    label: Message
    room: Room


class Remedies(Struct, frozen=True):
    """What can be offered for a finding.

    ``none_because`` says why nothing can, naming the two rules that leave no room where it is rules that do; None where
    something is offered.
    """

    offered: tuple[Remedy, ...]
    none_because: Message | None = None


def key_of(finding: Finding) -> Key:
    """Rule and subject of a finding."""
    return finding.rule, finding.subject


def grave(findings: tuple[Finding, ...]) -> Counter[Key]:
    """Rule and subject of every stop and everything broken, with how much each rule has to say about each subject."""
    return Counter(key_of(finding) for finding in findings if finding.weight is not Weight.CONSIDER)


def helps(finding: Finding, before: tuple[Finding, ...], after: tuple[Finding, ...]) -> bool:
    """Whether a change that led from ``before`` to ``after`` is a remedy of ``finding``.

    The finding is gone, nothing is newly a stop or broken, and of a stop or something broken there is less than before.
    """
    if key_of(finding) in {key_of(one) for one in after}:
        return False
    had, has = grave(before), grave(after)
    return has <= had if finding.weight is Weight.CONSIDER else has < had


def remedies(room: Room, wall_id: str, scheme_id: str | None, finding: Finding, trade: Trade) -> Remedies:
    """What would put a finding right.

    Parameters
    ----------
    room : Room
    wall_id, scheme_id : str
        The wall and scheme that the finding is about.
    finding : Finding
        One of the findings of that wall in that scheme.
    trade : Trade

    Returns
    -------
    Remedies
        Best first, at most ``MOST_OFFERED``; each changes one quantity, or a mirrored pair, to the nearest graduation
        that clears the rule.
    """
    memo = TreatmentMemo(find_afresh)  # candidates must not push the drag's own results out of the common memo
    scene = Scene(room, set_out(room, wall_id, scheme_id, trade), trade)
    before = every(scene, memo)
    offered: list[Remedy] = []
    blockers: Counter[str] = Counter()
    for change in rule_of(finding.rule).changes(scene, finding):
        tried = _tried(change, room, wall_id, scheme_id, trade, memo)
        if tried is None or tried[0] is room or any(tried[0] == remedy.room for remedy in offered):
            continue
        if change.is_possible and helps(finding, before, tried[1]):
            offered.append(Remedy(change.label, tried[0]))
            if len(offered) == MOST_OFFERED:
                break
        elif key_of(finding) not in {key_of(one) for one in tried[1]}:
            blockers.update({rule for rule, _ in grave(tried[1]) - grave(before)})
    return Remedies(tuple(offered), None if offered else _why(finding, blockers))


def _tried(
    change: Change, room: Room, wall_id: str, scheme_id: str | None, trade: Trade, memo: TreatmentMemo
) -> tuple[Room, tuple[Finding, ...]] | None:
    """The room after a change, and its findings; None where the change cannot be set out."""
    try:
        changed = change.edit(room)
        return changed, every(Scene(changed, set_out(changed, wall_id, scheme_id, trade), trade), memo)
    except ElevationError:
        return None


def _why(finding: Finding, blockers: Counter[str]) -> Message:
    if finding.rule in BOTH_NEEDED:
        first, second = BOTH_NEEDED[finding.rule]
    elif blockers:
        # The rule that most of the changes would break; of several the one that comes first in the list of rules.
        order = {rule.id: index for index, rule in enumerate(RULES)}
        first, second = finding.rule, min(blockers, key=lambda rule: (-blockers[rule], order[rule]))
    else:
        return msg("No single change to rod, brackets or cloth puts this right.")
    if first == second:
        return msg(
            "Every change that puts this right breaks {rule} ({rule_id}) elsewhere.",
            rule=rule_of(first).name,
            rule_id=first,
        )
    return msg(
        "Two rules leave no room: {first} ({first_id}) and {second} ({second_id}).",
        first=rule_of(first).name,
        first_id=first,
        second=rule_of(second).name,
        second_id=second,
    )
