"""What a remedy is and does; and that every rule has a case with one and a case without."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import RULES
from elevation.findings.model import Weight
from elevation.planning.remedies import helps
from elevation.room.find import layer_of
from tests.findings import test_limits as limits
from tests.findings.rooms import (
    INCH,
    LAYER,
    at,
    found,
    good_room,
    held,
    inch,
    rod,
)
from tests.planning.asking import asked, labels
from tests.planning.test_remedies_none import NONE
from tests.planning.test_remedies_work import WORKS

# What the tape says of the opening itself: no change to what hangs puts it right.
AS_MEASURED = {"out-of-square", "readings-differ"}

# Who lives there: what is asked for can be done, or (two openings on one rod) no change is offered at all. Where brackets
# are not at framing a board can be put across it, and a board can always be taken away,
# and so can tie-backs,
# pelmets and blinds; and a rod can always hang level, leading edges meet
# without overlap, and what is bent be joined on the mitre.
PEOPLE = {"no-holes", "child-puddle", "child-climb", "off-framing", "board-place", "crooked", "tie-place", "child-loop"} | {
    "pelmet-clear", "pelmet-cover", "pelmet-depth", "pelmet-meets", "blind-behind", "child-cord", "shutter-box",
    "runs-down", "overlap-arm", "bent-round", "pelmet-heat",
}  # fmt: skip

# Cloth can always be washed before it is cut, and a panel made wider.
WASH = {"wash", "cloth-narrow"}

# Brackets of her own: both cases stand in tests/findings/test_bracket_out.py.
HERS = {"bracket-out"}

# Another mount or support is always at hand.
HUNG = {"no-room", "past-jamb", "below-sill", "reveal-depth", "tension-rod", "no-cross", "track-fixings", "corner-bracket"}


def test_every_rule_has_a_remedy_and_a_case_without_one() -> None:
    rules = {rule.id for rule in RULES}
    works, never = {rule for rule, _, _ in WORKS}, {rule for rule, _, _ in NONE}
    # Cloth that is too long can always be taken up.
    assert rules - works == AS_MEASURED | HERS
    assert (
        rules - never
        == {"hem-low", "hem-varies", "cannot-pass", "no-meet", "reading-used", "near-edge"}
        | AS_MEASURED
        | PEOPLE
        | HUNG
        | WASH
        | HERS
    )


@pytest.mark.parametrize(
    ("on_floor", "wish"),
    [
        # A break is 1 to 3 in of cloth, a puddle up to 18 in; more than that is only too long. Common practice, no source.
        (3, "Let the cloth break on the floor with 3 in"),
        (3 + 1 / 16, "Let the cloth puddle on the floor with 3 1/16 in"),
        (18, "Let the cloth puddle on the floor with 18 in"),
        (18 + 1 / 16, None),
    ],
)
def test_cloth_on_the_floor_may_be_wished_as_long_as_that_is_a_way_of_hanging(on_floor, wish) -> None:
    # Wished is half an inch clear of the floor.
    offered = labels(limits.hem_lower((on_floor + 0.5) * INCH), "hem-low")
    wished = [label for label in offered if label.startswith("Let the cloth")]
    assert wished == ([] if wish is None else [wish.replace("3 1/16", "3¹⁄₁₆")])


def test_a_remedy_may_not_put_another_thing_wrong() -> None:
    low = found(limits.rod_above_casing(2 * INCH))
    clean = found(good_room())
    both = found(rod(limits.rod_above_casing(2 * INCH), left=held("beyond-opening", inch(5))))
    finding = low[0]
    assert helps(finding, low, clean)
    assert not helps(finding, low, low)
    other = tuple(one for one in both if one.rule == "reach-short")
    assert other
    assert not helps(finding, low, other)
    assert helps(finding, both, other)
    advice = replace(other[0], weight=Weight.CONSIDER)
    assert helps(advice, (advice,), ())
    assert helps(advice, (advice, *low), low)
    assert not helps(advice, (advice,), low)


def test_remedies_do_not_touch_the_room_they_are_asked_about() -> None:
    room = limits.rod_above_casing(2 * INCH)
    before = layer_of(room, LAYER).rod
    answer = asked(room, "rod-low")
    assert layer_of(room, LAYER).rod is before
    assert layer_of(answer.offered[0].room, LAYER).rod.height.at.text == "3 in"


def test_a_remedy_lands_on_the_graduation_in_the_rooms_unit() -> None:
    metric = at(limits.rod_above_casing(50.3), (), unit="mm")
    held_at = layer_of(asked(metric, "rod-low").offered[0].room, LAYER).rod.height.at
    # 76.2 mm are asked for; 76 mm reads as no less than that.
    assert held_at.text == "76 mm"
