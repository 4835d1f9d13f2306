"""How candidate changes are tried and which are kept: by a rule whose changes are made up here, tried on the real room.

The rod 2 in above the casing is broken (``rod-low`` asks for 3 in; common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.findings.all_rules import rule_of
from elevation.findings.model import Change
from elevation.planning import remedies as module
from elevation.planning.remedies import MOST_OFFERED, Remedies, remedies
from elevation.room.model import Room
from elevation.words import Message
from tests.findings import test_limits as limits
from tests.findings.rooms import (
    INCH,
    LAYER,
    OPENING,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    obstacle,
    rod,
    said,
    trade,
    window,
    with_obstacle,
)


def raised(inches: float) -> Callable[[Room], Room]:
    return lambda room: rod(room, height=held("above-casing", inch(inches)))


def cannot(room: Room) -> Room:
    raise BadInput("room", "", "cannot be", "")


def same(room: Room) -> Room:
    return room


GOOD = [Change(Message(f"to {inches} in"), raised(inches)) for inches in (3, 4, 5, 6)]


@pytest.fixture
def tried(monkeypatch: pytest.MonkeyPatch) -> Callable[..., Remedies]:
    """What is offered for a rod 2 in above the casing of those changes."""

    def ask(*changes: Change) -> Remedies:
        room = limits.rod_above_casing(2 * INCH)
        finding = found(room, "rod-low")[0]
        made_up = replace(rule_of("rod-low"), changes=lambda _scene, _finding: iter(changes))
        monkeypatch.setattr(module, "rule_of", lambda rule_id: made_up if rule_id == "rod-low" else rule_of(rule_id))
        return remedies(room, "w1", "s1", finding, trade())

    return ask


def labels(answer: Remedies) -> list[str]:
    return [said(one.label) for one in answer.offered]


def test_the_first_few_that_help_are_offered_in_their_order(tried) -> None:
    assert labels(tried(*GOOD)) == ["to 3 in", "to 4 in", "to 5 in"]
    assert MOST_OFFERED == 3
    assert labels(tried(*reversed(GOOD[:2]))) == ["to 4 in", "to 3 in"]


def test_what_cannot_be_changes_nothing_or_is_the_same_again_is_passed_over(tried) -> None:
    again = Change(Message("to 3 in, another way"), raised(3))
    answer = tried(Change(Message("cannot"), cannot), Change(Message("same"), same), GOOD[0], again, GOOD[1])
    assert labels(answer) == ["to 3 in", "to 4 in"]
    assert answer.none_because is None
    # Only the very room that is offered already is passed over, whichever it was.
    assert labels(tried(GOOD[0], GOOD[1], again, GOOD[2])) == ["to 3 in", "to 4 in", "to 5 in"]


def test_what_does_not_help_is_not_offered(tried) -> None:
    answer = tried(Change(Message("too little"), raised(2.5)))
    assert labels(answer) == []
    assert answer.none_because is not None
    assert said(answer.none_because) == "No single change to rod, brackets or cloth puts this right."


def test_a_figure_that_cannot_be_held_is_tried_and_not_offered(tried) -> None:
    assert labels(tried(Change(Message("not really"), raised(3), is_possible=False))) == []


def test_the_rule_that_most_changes_would_break_is_named(tried) -> None:
    # Ends 3 in beyond the opening reach too short; a left end in the corner takes its finial into the neighbour wall.
    def short(inches: float) -> Change:
        edit = raised(inches)
        beyond = held("beyond-opening", inch(3))
        return Change(Message(f"short {inches}"), lambda room: rod(edit(room), left=beyond, right=beyond))

    long = Change(Message("long"), lambda room: rod(raised(4)(room), left=held("from-corner", inch(0))))
    answer = tried(long, short(3), short(4))
    assert labels(answer) == []
    assert answer.none_because is not None
    assert "(rod-low)" in said(answer.none_because)
    assert "(reach-short)" in said(answer.none_because)


def test_a_change_that_breaks_the_same_rule_elsewhere_says_that(tried) -> None:
    # The rod goes up, and a second treatment with a low rod is hung with it.
    def and_another(room: Room) -> Room:
        wall = raised(4)(room).walls[0]
        other = replace(limits.rod_above_casing(2 * INCH).walls[0].schemes[0].treatments[0], id="t2", openings=("o2",))
        schemes = (replace(wall.schemes[0], treatments=(*wall.schemes[0].treatments, other)),)
        openings = (*wall.openings, window("o2", left=160))
        return replace(room, walls=(replace(wall, width=inch(260), openings=openings, schemes=schemes),))

    answer = tried(Change(Message("another"), and_another))
    assert labels(answer) == []
    assert answer.none_because is not None
    assert said(answer.none_because).startswith("Every change that puts this right breaks ")
    assert said(answer.none_because).endswith("(rod-low) elsewhere.")


def test_no_room_names_the_two_rules_that_leave_none() -> None:
    # Over two windows no reveal will do; 87 1/4 in high, a rod under the ceiling would run into the shelf before it.
    openings = (window(), window("o2", left=110, height=inch(50)))
    room = ceiling(good_room(width=inch(200), openings=openings), inch(87.25))
    room = rod(at(room, LAYER[:3], openings=("o1", "o2")), height=held("above-casing", inch(4.5)))
    room = with_obstacle(room, obstacle("shelf", 70 * INCH, 84 * INCH, 1000, 50, 300))
    finding = found(room, "no-room")[0]
    answer = remedies(room, "w1", "s1", finding, trade())
    assert answer.offered == ()
    assert answer.none_because is not None
    assert "(rod-low)" in said(answer.none_because)
    assert "(rod-under-ceiling)" in said(answer.none_because)
    assert OPENING[0] == finding.subject[0]
