"""The whole wall: what is remembered, what is missing, what does not exist."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from elevation.errors import NoSuch
from elevation.room.model import Head, Obstacle, Room, Sash, Scheme, Treatment
from elevation.setting_out.keeper import Keeper
from elevation.setting_out.memo import Memo, Same
from elevation.setting_out.whole import keeper_of, set_out, set_out_afresh
from elevation.trade import load_trade
from tests.setting_out.rooms import INCH, held, inch, mm, room, treatment, window

TRADE = load_trade()
change: Any = msgspec.structs.replace


def four() -> Room:
    openings = [window(f"w{i}", left=40 + 60 * i) for i in range(4)]
    return room(openings, [treatment(f"t{i}", (f"w{i}",)) for i in range(4)], width=300.0)


def with_treatment(made: Room, index: int, treatment_: Treatment) -> Room:
    wall = made.walls[0]
    scheme = wall.schemes[0]
    treatments = tuple(treatment_ if i == index else t for i, t in enumerate(scheme.treatments))
    return change(made, walls=(change(wall, schemes=(change(scheme, treatments=treatments),)),))


def raised(made: Room, index: int, by: float) -> Room:
    old = made.walls[0].schemes[0].treatments[index]
    rod = change(old.layers[0].rod, height=held("above-casing", 4 + by))
    return with_treatment(made, index, change(old, layers=(change(old.layers[0], rod=rod),)))


def run(keeper: Keeper, made: Room):
    wall = made.walls[0]
    return keeper.set_out(made, wall, wall.schemes[0], TRADE, keeper_of)


def test_dragging_one_rod_sets_out_that_treatment_only() -> None:
    keeper, made = Keeper(), four()
    before = run(keeper, made)
    for step in range(1, 11):
        after = run(keeper, raised(made, 2, step / 16))
    assert keeper.treatment_runs() == {("a", "s", f"t{i}"): 11 if i == 2 else 1 for i in range(4)}
    assert set(keeper.opening_runs().values()) == {1}
    for i in (0, 1, 3):
        assert after.treatments[i] is before.treatments[i]
    assert after.openings is before.openings
    assert after.treatments[2].layers[0].support.height_mm == pytest.approx((30 + 54 + 3.5 + 4 + 10 / 16) * INCH)


def test_dragging_one_side_of_an_opening_sets_out_what_depends_on_it_only() -> None:
    keeper, made = Keeper(), four()
    before = run(keeper, made)
    wall = made.walls[0]
    openings = tuple(change(o, width=inch(37)) if o.id == "w1" else o for o in wall.openings)
    after = run(keeper, change(made, walls=(change(wall, openings=openings),)))
    assert [a is b for a, b in zip(after.openings, before.openings, strict=True)] == [True, False, True, True]
    assert [a is b for a, b in zip(after.treatments, before.treatments, strict=True)] == [True, False, True, True]


def test_the_floor_is_everybodys() -> None:
    keeper, made = Keeper(), four()
    run(keeper, made)
    lower = room(made.walls[0].openings, made.walls[0].schemes[0].treatments, width=300.0, floor=((0, 0), (300, -1)))
    run(keeper, lower)
    assert set(keeper.treatment_runs().values()) == {2}


def test_back_and_forth_between_two_rooms_costs_nothing() -> None:
    keeper, made = Keeper(), four()
    other = raised(made, 0, 1)
    for _ in range(5):
        run(keeper, made)
        run(keeper, other)
    assert keeper.treatment_runs()[("a", "s", "t0")] == 2


def test_remembering_changes_nothing() -> None:
    made = four()
    for step in range(5):
        candidate = raised(made, step % 4, step / 8)
        assert set_out(candidate, "a", "s", TRADE) == set_out_afresh(candidate, "a", "s", TRADE)


def test_memo_keeps_two_and_compares_by_identity() -> None:
    memo: Memo[[list[int]], int] = Memo(sum)
    a, b, c = [1], [2], [3]
    assert [memo(a), memo(b), memo(a), memo(b)] == [1, 2, 1, 2]
    assert memo.calls == 2
    memo(c)
    memo(b)
    assert memo.calls == 3
    memo(a)
    assert memo.calls == 4
    assert memo([1]) == 1
    assert memo.calls == 5


def test_same_hands_back_the_equal_value_it_had() -> None:
    same: Same[tuple[float, ...]] = Same()
    first = same.keep((1.0, 2.0))
    assert same.keep((0.5 + 0.5, 2.0)) is first
    assert same.keep((1.0, 2.5)) is not first
    assert same.keep((1.0, 2.0)) is first


@pytest.mark.parametrize(("wall", "scheme", "named"), [("b", "s", "wall"), ("a", "z", "scheme")])
def test_what_does_not_exist_is_named(wall: str, scheme: str, named: str) -> None:
    with pytest.raises(NoSuch, match=named):
        set_out(room(), wall, scheme, TRADE)


def test_an_unknown_row_is_named_with_the_nearest() -> None:
    with pytest.raises(NoSuch, match="clip-rings"):
        set_out(room(None, [treatment(heading="clip-ring")]), "a", "s", TRADE)


def test_a_bare_wall_has_no_scheme() -> None:
    out = set_out(room(), "a", None, TRADE)
    assert (out.scheme, out.scheme_name, out.treatments) == (None, "", ())
    assert len(out.openings) == 1


def test_what_hangs_before_nothing_is_left_out() -> None:
    out = set_out(
        room(None, [treatment(openings=("gone",)), change(treatment("t2"), layers=()), treatment("t3")]), "a", "s", TRADE
    )
    assert [t.ref[-1] for t in out.treatments] == ["t3"]


def test_what_is_not_measured_is_none_and_said() -> None:
    made = room([window(left=None, casing=None)], None, width=None, ceiling=None)
    out = set_out_afresh(made, "a", "s", TRADE)
    assert not out.known_width
    assert not out.ceiling.known
    assert [fact.field for fact in out.missing] == ["width", "ceiling", "left", "casing"]
    clear = out.treatments[0].clearances
    assert clear.below_ceiling_mm is None
    assert clear.head_to_ceiling_mm is None
    assert not out.openings[0].placed
    assert not out.openings[0].known_casing
    assert out.openings[0].casing_mm == 0.0


def test_a_wall_of_unknown_width_reaches_to_what_stands_on_it() -> None:
    shelf = Obstacle(id="o", kind="shelf", left=inch(150), bottom=inch(50), width=inch(30), height=inch(1))
    assert set_out_afresh(room(width=None, obstacles=(shelf,)), "a", "s", TRADE).width_mm / INCH == pytest.approx(180)
    assert set_out_afresh(room(width=190, obstacles=(shelf,)), "a", "s", TRADE).width_mm / INCH == pytest.approx(190)


def test_a_crown_that_was_not_looked_at_is_said() -> None:
    assert [fact.field for fact in set_out_afresh(room(crown=None), "a", "s", TRADE).missing] == ["crown"]


def test_a_wall_that_is_all_measured_misses_nothing() -> None:
    assert set_out_afresh(room(), "a", "s", TRADE).missing == ()


@pytest.mark.parametrize(("off", "is_said"), [(0, False), (1 / 16, False), (1 / 8, True), (-5, True)])
def test_a_chain_that_does_not_close_is_said_wherever_facts_are_missing(off: float, is_said: bool) -> None:
    """Within one mark of the tape nobody measured wrong."""
    made = room(openings=[window(left=None, gap=inch(20))], width=120, gap_right=inch(57 + off))
    texts = [fact.text for fact in set_out_afresh(made, "a", "s", TRADE).missing if fact.field == "width"]
    assert bool(texts) == is_said
    if texts:
        assert texts[0].params["error"].value == pytest.approx(abs(off) * INCH)
        assert ("longer" in texts[0].template) == (off > 0)


def test_a_tall_opening_lifts_a_ceiling_that_was_not_measured() -> None:
    out = set_out_afresh(room([window(height=90)], None, ceiling=None), "a", "s", TRADE)
    assert out.ceiling.points[0][1] > out.openings[0].casing_top_mm


def test_obstacles_stand_where_they_were_measured() -> None:
    box = Obstacle(id="o", kind="outlet", left=inch(10), bottom=inch(12), width=inch(3), height=inch(5), projection=mm(5))
    (out,) = set_out_afresh(room(obstacles=(box,)), "a", "s", TRADE).obstacles
    assert (out.left_mm, out.right_mm, out.bottom_mm, out.top_mm) == pytest.approx((254, 330.2, 304.8, 431.8))
    assert out.clearance_mm is None
    assert out.out_mm == 5


def test_a_room_may_override_a_default() -> None:
    made = change(room(), limits={"hem-clear-default": inch(1)})
    assert set_out_afresh(made, "a", "s", TRADE).treatments[0].layers[0].panels[0].gap_low_mm == pytest.approx(INCH)


def test_two_schemes_of_one_wall_do_not_mix() -> None:
    made = room()
    wall = made.walls[0]
    high = Scheme(id="high", name="High", treatments=(treatment(above=5),))
    both = change(made, walls=(change(wall, schemes=(*wall.schemes, high)),))
    low_out, high_out = set_out(both, "a", "s", TRADE), set_out(both, "a", "high", TRADE)
    assert high_out.scheme_name == "High"
    lift = high_out.treatments[0].layers[0].support.height_mm - low_out.treatments[0].layers[0].support.height_mm
    assert lift == pytest.approx(INCH)


def test_proportions_add_up() -> None:
    out = set_out_afresh(four(), "a", "s", TRADE)
    names = [proportion.name.template for proportion in out.proportions]
    assert names[0] == "openings in the wall"
    assert sum(mm_ for _, mm_ in out.proportions[0].parts) == pytest.approx(300 * INCH)
    assert out.proportions[0].ratio == pytest.approx(4 * 36 / 300)
    between = next(p for p in out.proportions if p.name.template == "{support} between head and ceiling")
    # 4 in over the casing of 8 1/2 in between casing and ceiling.
    assert between.ratio == pytest.approx(4 / 8.5)
    sides = next(p for p in out.proportions if p.name.template == "left and right of the opening")
    assert sides.ratio == pytest.approx(0.5)
    assert out.proportions[-1].ratio == pytest.approx(1.0)


def test_a_wall_kind_that_nobody_tested_is_said_where_brackets_are_to_be_drilled() -> None:
    made = room(substrate="not-known")
    assert [fact.field for fact in set_out_afresh(made, "a", "s", TRADE).missing] == ["substrate"]
    assert set_out_afresh(made, "a", None, TRADE).missing == ()  # nothing hangs: nothing is to be drilled
    bare = room(None, [treatment(brackets=())], substrate="not-known")
    assert set_out_afresh(bare, "a", "s", TRADE).missing == ()


def test_without_a_frame_the_opening_is_all_glass() -> None:
    out = set_out_afresh(room([change(window(), frame=None)]), "a", "s", TRADE).openings[0]
    assert (out.glass_left_mm, out.glass_right_mm) == (out.left_mm, out.right_mm)
    assert (out.glass_bottom_mm, out.glass_top_mm) == (out.bottom_mm, out.top_mm)


def test_an_arc_is_never_higher_than_a_half_circle() -> None:
    high = set_out_afresh(room([window(head=Head(kind="segmental", rise=inch(30)))]), "a", "s", TRADE).openings[0]
    assert high.rise_mm / INCH == pytest.approx(18)


def test_the_handle_of_two_leaves_is_where_they_meet() -> None:
    made = window(sash=Sash(kind="casement-out", hinge="both", handle_out=inch(2)))
    (box,) = set_out_afresh(room([made]), "a", "s", TRADE).openings[0].sweep
    # 4 in about the middle of 40 to 76 in.
    assert [value / INCH for value in box] == pytest.approx([56, 30, 60, 84, 2])


def test_the_rod_in_the_walls_height_over_a_floor_that_is_not_level() -> None:
    out = set_out_afresh(room(floor=((0, 0), (120, 1.2))), "a", "s", TRADE)
    share = next(p for p in out.proportions if p.name.template == "{support} in the wall's height")
    # The rod's middle is at 58 in, where the floor is 0.58 in high; 91 1/2 in up, 4 1/2 in under the ceiling.
    assert [part / INCH for _, part in share.parts] == pytest.approx([90.92, 4.5])
    assert share.ratio == pytest.approx(90.92 / 95.42)
    # One rod is level with itself.
    assert "rods of one wall" not in [p.name.template for p in out.proportions]


def test_rods_are_called_by_their_name_or_number() -> None:
    made = four()
    named = with_treatment(made, 1, change(made.walls[0].schemes[0].treatments[1], name="Desk"))
    names = [name for name, _ in set_out_afresh(named, "a", "s", TRADE).proportions[-1].parts]
    assert [name.params for name in names] == [{"number": 1}, {"name": "Desk"}, {"number": 3}, {"number": 4}]
