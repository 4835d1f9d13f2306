"""Over 300 random rooms: each offered remedy, applied, removes its finding and adds no stop or broken.

The rooms come from ``tests/strategies.py`` with fixed seeds. In each room the findings of one wall are asked, up to
``ASKED`` of different rules, those first that were asked least so far, so that every rule comes up.
"""

from __future__ import annotations

from collections import Counter

from elevation.findings.all_rules import RULES, find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Finding, Scene, Weight
from elevation.planning.remedies import MOST_OFFERED, remedies
from elevation.planning.stops import stopped
from elevation.room.find import has
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out_afresh
from elevation.words import say
from tests.findings.rooms import trade
from tests.strategies import random_room

ROOMS = 300
ASKED = 3


def findings_of(room: Room, wall: str, scheme: str) -> tuple[Finding, ...]:
    """Nothing remembered: the answer must not depend on what was asked before."""
    return find(Scene(room, set_out_afresh(room, wall, scheme, trade()), trade()), TreatmentMemo(find_afresh))


def some(findings: tuple[Finding, ...], seen: Counter[str], offered: Counter[str]) -> list[Finding]:
    """A few findings of different rules: those first that had no remedy yet, then those that came up least so far."""
    chosen: dict[str, Finding] = {}
    for finding in findings:
        chosen.setdefault(finding.rule, finding)
    order = {rule.id: number for number, rule in enumerate(RULES)}
    rare = sorted(chosen, key=lambda rule: (offered[rule] > 0, seen[rule], order[rule]))
    return [chosen[rule] for rule in rare[:ASKED]]


def test_each_remedy_removes_its_finding_and_adds_nothing_grave() -> None:
    seen: Counter[str] = Counter()
    offered: Counter[str] = Counter()
    for seed in range(ROOMS):
        room = random_room(seed)
        wall = room.walls[seed % len(room.walls)]
        if not wall.schemes:
            continue
        scheme = wall.schemes[seed % len(wall.schemes)].id
        before = findings_of(room, wall.id, scheme)
        grave = {(one.rule, one.subject) for one in before if one.weight is not Weight.CONSIDER}
        for finding in some(before, seen, offered):
            seen[finding.rule] += 1
            answer = remedies(room, wall.id, scheme, finding, trade())
            assert bool(answer.offered) is (answer.none_because is None)
            assert len(answer.offered) <= MOST_OFFERED
            for remedy in answer.offered:
                offered[finding.rule] += 1
                assert remedy.room != room
                after = findings_of(remedy.room, wall.id, scheme)
                keys = {(one.rule, one.subject) for one in after}
                still = {(one.rule, one.subject) for one in after if one.weight is not Weight.CONSIDER}
                what = (seed, finding.rule, finding.subject, say(remedy.label, style_for(room)))
                assert (finding.rule, finding.subject) not in keys, what
                assert still <= grave, what
                if finding.weight is not Weight.CONSIDER:
                    assert still < grave, what
    # Every rule came up, and every one that can have a remedy had one somewhere. What the tape says of an opening is no
    # matter of what hangs; level hems over these floors, back rods and ways past brackets drawn by lot are past one
    # change, and furniture under a window stands mostly between others: those that are not have their cases in
    # test_remedies_work.
    # No kit of the program's says how far out it holds a rod: brackets of her own have their tests in test_bracket_out.
    assert set(seen) == {rule.id for rule in RULES} - {"bracket-out"}
    # Rods round corners by lot have their brackets near enough, and end on the mitre whatever else is in the way there.
    # A bracket drilled near a reveal's edge comes up about once in these rooms: whether it can be moved there is chance.
    # Irons of pelmets drawn by lot miss framing by more than the pelmet's end can be let out, or where none is found.
    none = {
        "readings-differ", "out-of-square", "hem-varies", "double-bracket", "near-edge", "cannot-pass", "child-climb",
        "corner-bracket", "pelmet-framing",
    }  # fmt: skip
    assert {rule.id for rule in RULES} - set(offered) <= none | {"bracket-out"}


def test_findings_are_well_formed_in_random_rooms() -> None:
    order = {Weight.STOP: 0, Weight.BROKEN: 1, Weight.CONSIDER: 2}
    for seed in range(0, ROOMS, 5):
        room = random_room(seed)
        style = style_for(room)
        for wall in room.walls:
            for scheme in wall.schemes:
                findings = findings_of(room, wall.id, scheme.id)
                weights = [order[one.weight] for one in findings]
                assert weights == sorted(weights)
                keys = [(one.rule, one.subject) for one in findings]
                assert len(keys) == len(set(keys))
                for one in findings:
                    assert has(room, one.subject)
                    text = say(one.text, style)
                    assert "{" not in text
                    assert text.endswith(".")
                    assert say(one.authority, style)
                stops = [one for one in findings if one.weight is Weight.STOP]
                assert sum(len(each) for each in stopped(findings).values()) == len(stops)
