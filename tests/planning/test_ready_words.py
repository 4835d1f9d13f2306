"""Ready-made panels both ways, by hand from the room in ``tests/findings/rooms.py``: the top of the cloth is at 82 1/2 in,
so 82 in of finished length hang half an inch clear of the floor, and the rod's centre is at 84 1/4 in.

Lengths in the shops: 63, 84, 95 ... in (US sellers' guides), 137, 183, 229 cm (UK sellers' guides).
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.findings.rules.fullness import RULE
from elevation.planning.ready_words import Ready, _fitting, ready_for, ready_lines
from elevation.room.edits import edit_at
from elevation.room.find import layer_of
from elevation.room.model import Held, Hem, Layer, Room, Station
from elevation.setting_out.model import LayerOut
from elevation.setting_out.ready_width import ready_width
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.model import ReadyWidthRow
from elevation.trade.ready import Fit, best, best_width, fits, next_longer, width_fits
from elevation.units import Length
from tests.findings.rooms import HALF, INCH, LAYER, at, good_room, inch, mm, panels, rod, said, trade


def landed(room: Room) -> LayerOut:
    return set_out_afresh(room, "w1", "s1", trade()).treatments[0].layers[0]


def ready(room: Room) -> Ready:
    made = ready_for(room, landed(room), trade())
    assert made is not None
    return made


def test_the_best_length_for_this_height_and_the_height_for_the_next() -> None:
    made = ready(good_room())
    assert made.wished_mm == pytest.approx(82 * INCH)
    assert made.best is not None
    assert made.longer is not None
    assert (made.best.row.id, made.longer.row.id) == ("us-63", "us-84")
    assert made.best.over_mm == pytest.approx(-19 * INCH)
    assert made.longer.rod_mm == pytest.approx((84.25 + 2) * INCH)


@pytest.mark.parametrize(
    ("lift_mm", "chosen"),
    [
        # 2 in higher the 84 in panel hangs as wished; it may hang 1/4 in and half a mark lower.
        (2 * INCH, "us-84"),
        (1.75 * INCH - HALF + 0.01, "us-84"),
        (1.75 * INCH - HALF - 0.01, "us-63"),
    ],
)
def test_just_long_enough_and_just_too_long(lift_mm: float, chosen: str) -> None:
    room = rod(good_room(), height=Held("above-casing", mm(4 * INCH + lift_mm)))
    made = ready(room)
    assert made.best is not None
    assert made.best.row.id == chosen


def test_at_the_height_it_says_the_panel_hangs_as_wished() -> None:
    made = ready(panels(good_room(), label_length=inch(95)))
    assert made.longer is not None
    higher = rod(good_room(), height=Held("above-floor", mm(made.longer.rod_mm)))
    hung = panels(higher, measured_length=Length(made.longer.row.length_mm, ""))
    panel = landed(hung).panels[0]
    assert panel.gap_low_mm == pytest.approx(0.5 * INCH)
    rules = {one.rule for one in find(Scene(hung, set_out_afresh(hung, "w1", "s1", trade()), trade()))}
    assert not rules & {"hem-low", "hem-high"}


def test_the_highest_point_of_the_floor_counts() -> None:
    uneven = at(good_room(), ("w1",), floor=(Station(inch(0), inch(0)), Station(inch(144), inch(1))))
    for room in (uneven, panels(uneven, measured_length=inch(60))):
        made = ready(room)
        # The left panel parks 8 1/2 in, the right one 98 1/2 in from the wall's left end and hangs over floor up to there.
        assert made.wished_mm < 82 * INCH
        assert made.wished_mm > 81 * INCH


def test_a_metric_room_is_offered_metric_panels() -> None:
    made = ready(at(good_room(), (), unit="mm"))
    assert made.best is not None
    assert made.longer is not None
    # 82 in are 208.3 cm: 183 cm fits, 229 cm wants a higher rod.
    assert (made.best.row.id, made.longer.row.id) == ("uk-183", "uk-229")


def test_a_label_is_no_length() -> None:
    room = panels(good_room(), label_length=inch(80))
    lines = [said(line) for line in ready_lines(ready(room), landed(room))]
    # 80 in hang 2 1/2 in clear; off by up to an inch (from memory): 1 1/2 to 3 1/2 in.
    assert any("1½ in to 3½ in" in line.replace("¹⁄₂", "½") for line in lines), lines
    missing = set_out_afresh(room, "w1", "s1", trade()).missing
    assert "measured_length" in {fact.field for fact in missing}
    measured = panels(room, measured_length=inch(80.25))
    assert ready(measured).off_mm == 0
    assert "measured_length" not in {fact.field for fact in set_out_afresh(measured, "w1", "s1", trade()).missing}
    assert not any("label" in said(line) for line in ready_lines(ready(measured), landed(measured)))


def test_the_height_for_the_panel_in_hand() -> None:
    room = panels(good_room(), measured_length=inch(84))
    lines = [said(line) for line in ready_lines(ready(room), landed(room))]
    assert any("from a rod at 86¹⁄₄ in" in line for line in lines), lines


def test_a_hem_at_the_sill_asks_for_its_own_length() -> None:
    # Sill at 30 in, hem 1/2 in above it: 82 1/2 less 30 1/2.
    assert ready(at(good_room(), LAYER, hem=Hem("sill"))).wished_mm == pytest.approx(52 * INCH)
    assert ready(at(good_room(), LAYER, hem=Hem("length", inch(70)))).wished_mm == pytest.approx(70 * INCH)


def test_nothing_to_say_without_panels_or_shops() -> None:
    bare = at(good_room(), LAYER, panels=())
    assert ready_for(bare, landed(bare), trade()) is None
    assert layer_of(bare, LAYER).panels == ()
    assert best((), 0.0) is None
    assert next_longer((), None) is None
    assert fits(trade().ready_made.values(), "mm", 1.0, 0.0)[0].row.length_mm == 1370


def test_the_width_whose_pieces_come_nearest_to_the_fullness() -> None:
    # By hand: each panel of the pair covers 40 in; clip rings are usual at 2 and at least 1.5 times. Two of 40 in are 2.0.
    covers = 40 * INCH
    found = width_fits(trade().ready_widths.values(), "in", covers, 1.5)
    counts = {fit.row.id: (fit.count, round(fit.fullness, 6)) for fit in found}
    assert counts["us-w40"] == (2, 2.0)
    assert counts["us-w54"] == (2, 2.7)
    chosen = best_width(found, 2.0, 3.0)
    assert chosen is not None
    assert chosen.row.id == "us-w40"


@pytest.mark.parametrize(("covers_mm", "count"), [(1120.0, 2), (1120.0001, 3), (1119.9, 2), (560.0, 1), (560.001, 2)])
def test_pieces_at_and_beside_the_least_fullness(covers_mm: float, count: int) -> None:
    # 140 cm at 2.5 times cover 560 mm, two of them 1120 mm: exactly enough is enough.
    rows = [row for row in trade().ready_widths.values() if row.id == "fr-w140"]
    (fit,) = width_fits(rows, "mm", covers_mm, 2.5)
    assert fit.count == count
    assert fit.fullness == pytest.approx(count * 1400 / covers_mm)


def test_no_width_beyond_the_most_the_heading_takes() -> None:
    rows = [row for row in trade().ready_widths.values() if row.id == "uk-w229"]
    found = width_fits(rows, "mm", 763.0, 1.5)
    assert best_width(found, 2.0, 2290 / 763.0) is not None
    assert best_width(found, 2.0, 2290 / 763.0 - 1e-6) is None
    assert width_fits(rows, "mm", 0.0, 1.5) == ()
    assert best_width((), 2.0, 3.0) is None


def test_of_equal_fullness_the_fewest_pieces() -> None:
    one = ReadyWidthRow("a", "a", "mm", 1000.0, "", "from memory")
    two = ReadyWidthRow("b", "b", "mm", 2000.0, "", "from memory")
    chosen = best_width(width_fits([one, two], "mm", 1000.0, 1.5), 2.0, 3.0)
    assert chosen is not None
    assert (chosen.row.id, chosen.count) == ("b", 1)


def test_the_width_is_said_and_hung_by_one_click() -> None:
    room = panels(good_room(), flat_width=inch(30))
    made = ready(room)
    assert made.width is not None
    lines = [said(line) for line in ready_lines(made, landed(room))]
    assert any("ready-made piece" in line and f"{made.width.row.name} wide" in line for line in lines), lines
    scene = Scene(room, set_out_afresh(room, "w1", "s1", trade()), trade())
    thin = next(one for one in find(scene) if one.rule == "fullness")
    label = next(change for change in RULE.changes(scene, thin) if "ready-made" in said(change.label))
    hung = label.edit(room)
    after = landed(hung)
    assert {panel.count for panel in layer_of(hung, LAYER).panels} == {made.width.count}
    assert after.panels[0].flat_width_mm == pytest.approx(made.width.count * made.width.row.width_mm)
    assert not any(one.rule == "fullness" for one in find(Scene(hung, set_out_afresh(hung, "w1", "s1", trade()), trade())))


@pytest.mark.parametrize(("over", "said_of"), [(0.0, "hangs just as wished"), (25.4, "1 in lower"), (-25.4, "1 in higher")])
def test_how_a_ready_made_panel_would_hang(over: float, said_of: str) -> None:
    row = next(iter(trade().ready_made.values()))
    assert said_of in said(_fitting(Fit(row, over, 2000.0)))


def test_panels_that_stand_still_are_not_asked_for_a_width() -> None:
    def still(*which: bool) -> Room:
        def put(one: Layer) -> Layer:
            pairs = zip(one.panels, which, strict=True)
            return replace(one, panels=tuple(replace(each, stationary=stays) for each, stays in pairs))

        return edit_at(good_room(), LAYER, put)

    found, wished = ready_width(still(False, False), landed(still(False, False)), trade())
    assert found is not None
    assert wished > 1
    assert ready_width(still(True, False), landed(still(True, False)), trade())[0] is not None
    assert ready_width(still(True, True), landed(still(True, True)), trade())[0] is None
    bare = edit_at(good_room(), LAYER, lambda one: replace(one, panels=()))
    assert ready_width(bare, landed(bare), trade()) == (None, 0.0)
