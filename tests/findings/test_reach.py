"""What stands out of a treatment's reach changes neither how it lands nor what is found in it, and costs nothing."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import RULES, find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Scene
from elevation.findings.reach import greatest_limit
from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.room.model import Held, Obstacle, Room, Scheme, Station, Wall
from elevation.setting_out import whole
from elevation.setting_out.hold_facts import hold_facts
from elevation.setting_out.holding import with_fixings
from elevation.setting_out.keeper import Keeper
from elevation.setting_out.model import BandOut, BesideOut, ObstacleOut, Profile, SetOut, TieOut, TreatmentOut, ZoneOut
from elevation.setting_out.profile import around
from elevation.setting_out.reach import reach_of
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from elevation.units import Length
from tests.bench.rooms import windows
from tests.strategies import random_room

TRADE = load_trade()
SHIFTED = ("left_mm", "right_mm", "glass_left_mm", "glass_right_mm")
SEEDS = range(24)


def mm(value: float) -> Length:
    return Length(value, f"{value:g} mm")


def rooms() -> Iterator[Room]:
    yield from (load_room(path) for path in sorted(demo_rooms().glob("*.room.json")))
    # Children, a sleeping room and so on switch rules on that would else say nothing.
    yield from (replace(random_room(seed), children=bool(seed % 2), sleeping=bool(seed % 3)) for seed in SEEDS)


def dressed(room: Room) -> Iterator[tuple[Wall, str, SetOut]]:
    for wall in room.walls:
        for scheme in wall.schemes:
            yield wall, scheme.id, set_out_afresh(room, wall.id, scheme.id, TRADE)


def put_at(thing: Any, *, left: float | None = None, right: float | None = None) -> Any:
    """The same thing wherever its span, with all that belongs to it, begins at ``left`` or ends at ``right``."""
    beside = 0.0
    if hasattr(thing, "sweep"):
        beside = thing.casing_mm + (thing.stool[1] if thing.stool else 0.0)
    low, high = thing.left_mm - beside, thing.right_mm + beside
    for swept in getattr(thing, "sweep", ()):
        low, high = min(low, swept[0]), max(high, swept[2])
    free = getattr(thing, "clearance_mm", None) or 0.0
    by = left - (low - free) if left is not None else right - (high + free)
    moved = {name: getattr(thing, name) + by for name in SHIFTED if hasattr(thing, name)}
    if hasattr(thing, "sweep"):
        moved["sweep"] = tuple((a + by, b, c + by, d, out) for a, b, c, d, out in thing.sweep)
        moved["glass"] = tuple((x + by, y) for x, y in thing.glass)
    return replace(thing, **moved)


def beside_at(thing: Any, *, left: float | None = None, right: float | None = None) -> Any:
    xs = [x for x, _ in thing.outline]
    free = thing.clearance_mm or 0.0
    by = left - (min(xs) - free) if left is not None else right - (max(xs) + free)
    return replace(thing, outline=tuple((x + by, y) for x, y in thing.outline))


def crowded(out: SetOut, low: float, high: float) -> SetOut:
    """The same wall with all that stands on it once more on both sides, from just beyond ``low`` and ``high``."""
    more: dict[str, tuple[Any, ...]] = {}
    for name, put in (
        ("openings", put_at),
        ("obstacles", put_at),
        ("zones", put_at),
        ("bands", put_at),
        ("beside", beside_at),
    ):
        things = getattr(out, name)
        more[name] = (
            *(put(thing, right=low - 1) for thing in things),
            *things,
            *(put(thing, left=high + 1) for thing in things),
        )
    return replace(out, floor=bent(out.floor, low, high), ceiling=bent(out.ceiling, low, high), **more)


def bent(line: Profile, low: float, high: float) -> Profile:
    """A line that is the same from ``low`` to ``high`` and another before and after."""
    known, points = around(line, low, high)
    first, last = min(points[0][0], low), max(points[-1][0], high)
    return Profile(
        ((first - 900, -700.0), (first - 1, points[0][1]), *points, (last + 1, points[-1][1]), (last + 900, 5e3)), known
    )


def test_what_stands_out_of_reach_changes_nothing_that_is_found() -> None:
    seen = 0
    for room in rooms():
        far = greatest_limit(room.limits, TRADE)
        for _, _, out in dressed(room):
            scene = Scene(room, out, TRADE)
            for treatment in out.treatments:
                reach = reach_of(treatment)
                other = Scene(room, crowded(out, reach[0] - far, reach[1] + far), TRADE)
                assert find_afresh(scene, treatment, True) == find_afresh(other, treatment, True), room.name
                seen += bool(find_afresh(scene, treatment, True))
    assert seen > 20


def test_the_rules_that_look_farther_are_those_that_find_other_things() -> None:
    # The nearest stud of a wall without any near the bracket: 6 m off.
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    wall = replace(room.walls[0], substrate="board-timber-studs", studs=())
    room = replace(room, walls=(wall, *room.walls[1:]))
    out = set_out_afresh(room, wall.id, wall.schemes[0].id, TRADE)
    treatment = out.treatments[0]
    bracket = treatment.layers[0].brackets[0]
    far = reach_of(treatment)[1] + greatest_limit(room.limits, TRADE)
    stud = replace(
        out.zones[0], kind="stud", left_mm=far + 6000, right_mm=far + 6038, bottom_mm=0.0, top_mm=bracket.plate[3] + 9
    )
    scenes = [Scene(room, replace(out, zones=zones), TRADE) for zones in ((), (stud,))]
    found = [find_afresh(scene, treatment, False) for scene in scenes]
    assert [[one.rule for one in each] for each in found] == [["off-framing"], ["off-framing"]]
    assert found[0] != found[1]
    memo = TreatmentMemo(find_afresh)
    assert [memo(scene, treatment)[-1:] for scene in scenes] == found
    assert [rule.id for rule in RULES if not rule.is_near] == ["off-framing", "pelmet-framing"]


def test_lines_out_of_reach_change_no_set_out() -> None:
    for room in rooms():
        for wall, scheme, out in dressed(room):
            for number, treatment in enumerate(out.treatments):
                low, high = reach_of(treatment)
                lines = {}
                for name, line in (("floor", out.floor), ("ceiling", out.ceiling)):
                    if getattr(wall, name):
                        lift = room.floor_to_come.mm if room.floor_to_come and name == "floor" else 0.0
                        points = bent(line, low, high).points
                        lines[name] = tuple(Station(mm(x), mm(y - lift)) for x, y in points)
                other = replace(room, walls=tuple(replace(one, **lines) if one is wall else one for one in room.walls))
                made = set_out_afresh(other, wall.id, scheme, TRADE).treatments[number]
                assert made == treatment, (room.name, wall.id)


# --- what is remembered is what would be made anew ------------------------------------------------------------


def edits(chance: random.Random) -> list[Callable[[Wall], Wall]]:
    def opening(wall: Wall) -> Wall:
        number = chance.randrange(len(wall.openings))
        one = wall.openings[number]
        by = chance.choice((-40.0, -15.0, 15.0, 40.0, 120.0))
        moved = chance.choice(
            (
                {"left": mm((one.left.mm if one.left else 0.0) + by)},
                {"width": mm(one.width.mm + by)},
                {"height": mm(one.height.mm + by)},
                {"casing": mm(chance.choice((0.0, 40.0, 90.0)))},
            )
        )
        return replace(wall, openings=(*wall.openings[:number], replace(one, **moved), *wall.openings[number + 1 :]))

    def lines(name: str, low: float, high: float) -> Callable[[Wall], Wall]:
        def edit(wall: Wall) -> Wall:
            stations = list(getattr(wall, name))
            number = chance.randrange(len(stations))
            stations[number] = replace(stations[number], height=mm(chance.uniform(low, high)))
            return replace(wall, **{name: tuple(stations)})

        return edit

    def obstacles(wall: Wall) -> Wall:
        assert wall.width is not None
        kept = list(wall.obstacles)
        if len(kept) > 5 or (kept and chance.random() < 0.3):
            kept.pop(chance.randrange(len(kept)))
        else:
            kind = chance.choice(("outlet", "shelf", "electric-heater", "fan-heater", "furniture", "door-swing", "pipe"))
            left, high = chance.uniform(0, wall.width.mm - 900), chance.uniform(0, 1500)
            number = max((int(one.id[1:]) for one in kept), default=0) + 1
            clearance = mm(chance.uniform(0, 3000)) if kind == "electric-heater" and chance.random() < 0.5 else None
            kept.append(Obstacle(f"x{number}", kind, mm(left), mm(600), mm(high), mm(700), mm(150), clearance=clearance))
        return replace(wall, obstacles=tuple(kept))

    def whole(wall: Wall) -> Wall:
        assert wall.width is not None
        more = {"width": mm(wall.width.mm + chance.uniform(-5, 40)), "crown": mm(chance.uniform(0, 120))}
        name = chance.choice(sorted(more))
        return replace(wall, **{name: more[name]})

    def cloth(wall: Wall) -> Wall:
        scheme = wall.schemes[0]
        number = chance.randrange(len(scheme.treatments))
        layer = scheme.treatments[number].layers[0]
        panel = replace(layer.panels[0], drawn=mm(chance.uniform(200, 900)), flat_width=mm(chance.uniform(900, 1500)))
        layer = replace(layer, panels=(panel, *layer.panels[1:]))
        treatments = list(scheme.treatments)
        treatments[number] = replace(treatments[number], layers=(layer,))
        return replace(wall, schemes=(replace(scheme, treatments=tuple(treatments)),))

    return [opening, opening, whole, cloth, lines("floor", -60, 60), lines("ceiling", 2500, 2800), obstacles]


def long_wall(count: int, substrate: str) -> Room:
    room = windows(count)
    wall = room.walls[0]
    assert wall.width is not None
    stations = tuple(Station(mm(x * wall.width.mm / count), mm(0.0)) for x in range(count + 1))
    ceiling = tuple(Station(one.x, mm(2743.2)) for one in stations)
    # The first rod hangs from the ceiling, the last ends at the corner.
    schemes = wall.schemes
    for number, rod in ((0, {"height": Held("below-ceiling", mm(250))}), (-1, {"right": Held("from-corner", mm(300))})):
        schemes = (with_rod(schemes[0], number, **rod),)
    wall = replace(wall, schemes=schemes, floor=stations, ceiling=ceiling, substrate=substrate, stud_spacing=mm(400))
    return replace(room, walls=(wall,), children=True, sleeping=True)


def with_rod(scheme: Scheme, number: int, **rod: Any) -> Scheme:
    treatments = list(scheme.treatments)
    layer = treatments[number].layers[0]
    layer = replace(layer, rod=replace(layer.rod, **rod))
    treatments[number] = replace(treatments[number], layers=(layer,))
    return replace(scheme, treatments=tuple(treatments))


def memo_and_fresh(room: Room, keeper: Keeper, memo: TreatmentMemo) -> tuple[Any, Any]:
    out = kept_out(room, keeper)
    fresh = set_out_afresh(room, "w1", "s1", TRADE)
    assert out == fresh
    return find(Scene(room, out, TRADE), memo), find(Scene(room, fresh, TRADE), TreatmentMemo(find_afresh))


def kept_out(room: Room, keeper: Keeper) -> SetOut:
    wall = room.walls[0]
    return keeper.set_out(room, wall, wall.schemes[0], TRADE, lambda _: keeper)


@pytest.mark.parametrize("substrate", ["unknown", "board-timber-studs", "solid-brick"])
def test_remembered_equals_fresh_over_random_edits_of_a_long_wall(substrate: str) -> None:
    chance = random.Random(substrate)
    room, keeper, memo = long_wall(16, substrate), Keeper(), TreatmentMemo(find_afresh)
    before = room
    rules: set[str] = set()
    for _ in range(45):
        # Now and then back to the last room but one, as a drag does.
        made = before if chance.random() < 0.2 else replace(room, walls=(chance.choice(edits(chance))(room.walls[0]),))
        remembered, fresh = memo_and_fresh(made, keeper, memo)
        assert remembered == fresh
        rules.update(finding.rule for finding in fresh)
        before, room = room, made
    assert len(rules) >= 5, rules
    # Memos that never remember would pass all this.
    assert memo.calls < 45 * 16 * 0.7


def one_window(**more: Any) -> tuple[Room, SetOut]:
    room = windows(1)
    opening = replace(room.walls[0].openings[0], escape=True)
    room = replace(room, walls=(replace(room.walls[0], openings=(opening,)),), sleeping=True, children=True, **more)
    return room, set_out_afresh(room, "w1", "s1", TRADE)


def _on_bracket(out: SetOut) -> dict[str, float]:
    left, bottom, right, top = out.treatments[0].layers[0].brackets[0].plate
    return {"left_mm": left - 20, "bottom_mm": bottom - 20, "right_mm": right + 20, "top_mm": top + 20}


def another_window(out: SetOut) -> SetOut:
    there = {**_on_bracket(out), "casing_top_mm": 5e3, "casing_mm": 0.0}
    return replace(out, openings=(*out.openings, replace(out.openings[0], ref=("w1", "o9"), sweep=(), **there)))


def a_sash_from_afar(out: SetOut) -> SetOut:
    # A leaf of 4 m that sweeps from an opening 4 m away.
    x = out.treatments[0].layers[0].support.right_mm
    swept = ((x - 30, 0.0, x + 4000, 5e3, 900.0),)
    there = {"left_mm": x + 4000, "right_mm": x + 5000, "sweep": swept}
    return replace(out, openings=(*out.openings, replace(out.openings[0], ref=("w1", "o9"), **there)))


def an_obstacle(kind: str, **more: Any) -> Callable[[SetOut], SetOut]:
    def put(out: SetOut) -> SetOut:
        there = {**_on_bracket(out), **{name: value(out) for name, value in more.items()}}
        thing = ObstacleOut(("w1", "x1"), kind, "", out_mm=100.0, **{"clearance_mm": None, **there})
        return replace(out, obstacles=(thing,))

    return put


def a_zone(kind: str) -> Callable[[SetOut], SetOut]:
    return lambda out: replace(out, zones=(ZoneOut(kind, out.openings[0].ref, **_on_bracket(out)),))


def a_band(name: str) -> Callable[[SetOut], SetOut]:
    """A cable of an outlet that hangs 9 m off."""

    def put(out: SetOut) -> SetOut:
        there = {**_on_bracket(out), "left_mm": 9000.0, "right_mm": 9070.0}
        outlet = ObstacleOut(("w1", "x1"), "outlet", name, out_mm=5.0, clearance_mm=None, **there)
        band = BandOut("cable", ("w1", "x1"), "", **{**_on_bracket(out), "right_mm": 9070.0})
        return replace(out, obstacles=(outlet,), bands=(band,))

    return put


def raised(out: SetOut) -> SetOut:
    """The same with the band over the bracket."""
    return replace(out, bands=tuple(replace(band, bottom_mm=band.top_mm, top_mm=band.top_mm + 70) for band in out.bands))


def a_neighbour(out: SetOut) -> SetOut:
    left, y = out.treatments[0].layers[0].support.left_mm, out.treatments[0].layers[0].support.height_mm
    outline = ((left - 50, 0.0), (left + 50, 0.0), (left + 50, 400.0), (left - 50, 400.0))
    return replace(out, beside=(BesideOut("left", "Side", ("w2", "x1"), "shelf", "", outline, y - 90, y + 90),))


def _far_right(out: SetOut) -> float:
    return out.treatments[0].layers[0].support.right_mm + 4000


def _same(out: SetOut) -> SetOut:
    return out


A_HEATER = {
    "left_mm": _far_right,
    "right_mm": lambda out: _far_right(out) + 400,
    "clearance_mm": lambda _: 5000.0,
}


@pytest.mark.parametrize(
    ("first", "then"),
    [
        pytest.param(_same, another_window, id="openings"),
        pytest.param(_same, a_sash_from_afar, id="a sash's sweep"),
        pytest.param(_same, an_obstacle("picture"), id="obstacles"),
        pytest.param(_same, an_obstacle("electric-heater", **A_HEATER), id="a heater's own distance"),
        pytest.param(_same, a_zone("shutter-box"), id="zones"),
        pytest.param(a_band(""), lambda out: raised(a_band("")(out)), id="bands"),
        pytest.param(a_band(""), a_band("behind the desk"), id="the name of what a band comes from"),
        pytest.param(_same, a_neighbour, id="beside"),
        pytest.param(_same, lambda out: replace(out, floor=Profile(((0.0, -900.0),), known=True)), id="floor"),
        pytest.param(_same, lambda out: replace(out, ceiling=Profile(((0.0, 2270.0),), known=True)), id="ceiling"),
        pytest.param(_same, lambda out: replace(out, width_mm=out.width_mm - 900.0), id="what holds for the whole wall"),
    ],
)
def test_rules_look_again_where_something_near_has_changed(
    first: Callable[[SetOut], SetOut], then: Callable[[SetOut], SetOut]
) -> None:
    room, out = one_window()
    memo = TreatmentMemo(find_afresh)
    scenes = [Scene(room, make(out), TRADE) for make in (first, then)]
    fresh = [find_afresh(scene, out.treatments[0]) for scene in scenes]
    # The same treatment in other surroundings: only these tell.
    assert fresh[0] != fresh[1]
    for scene, found in zip(scenes, fresh, strict=True):
        assert sorted(map(str, memo(scene, out.treatments[0]))) == sorted(map(str, found))


def test_a_treatment_reaches_as_far_as_the_hook_of_its_tie_back() -> None:
    # The floor under a hook that stands beside all else tells how high it is.
    _, out = one_window()
    treatment = out.treatments[0]
    layer, (left, right) = treatment.layers[0], reach_of(treatment)
    tie = TieOut((right + 70, 900.0), (left, left + 9), (left, left + 9), (), 0.0, 0.0, is_loop=True, is_there=False)
    tied = replace(layer, panels=(replace(layer.panels[0], tie=tie), *layer.panels[1:]))
    assert reach_of(replace(treatment, layers=(tied,))) == (left, right + 70)


def test_framing_out_of_reach_holds_no_bracket() -> None:
    seen = 0
    for room in rooms():
        for wall, scheme, out in dressed(room):
            facts = hold_facts(room, wall, TRADE)
            own = {one.id: one for one in next(one for one in wall.schemes if one.id == scheme).treatments}
            for treatment in out.treatments:
                assert with_fixings(treatment, own[treatment.ref[-1]], out.zones, facts, TRADE) == treatment
                seen += bool(out.zones)
    assert seen > 5


# --- and costs nothing ----------------------------------------------------------------------------------------


def moved_ids(before: tuple[TreatmentOut, ...], after: tuple[TreatmentOut, ...]) -> list[str]:
    return [one.ref[-1] for one, other in zip(after, before, strict=True) if one is not other]


def drag(room: Room, move: Callable[[Wall, int], Wall]) -> tuple[set[str], int]:
    """Which treatments were set out again over ten frames, and how many findings were looked for again."""
    keeper, memo = Keeper(), TreatmentMemo(find_afresh)
    frames = [kept_out(replace(room, walls=(move(room.walls[0], step),)), keeper) for step in range(11)]
    again: set[str] = set()
    calls = 0
    for step, out in enumerate(frames):
        find(Scene(replace(room, walls=(move(room.walls[0], step),)), out, TRADE), memo)
        calls = memo.calls if step == 0 else calls
    for before, after in pairwise(frames):
        again.update(moved_ids(before.treatments, after.treatments))
    return again, memo.calls - calls


@pytest.mark.parametrize("substrate", ["unknown", "board-timber-studs"])
def test_a_floor_point_under_one_of_forty_windows_moves_that_window_alone(
    monkeypatch: pytest.MonkeyPatch, substrate: str
) -> None:
    monkeypatch.setattr(whole, "_keepers", {})

    def move(wall: Wall, step: int) -> Wall:
        # Between the 20th window and the 21st: both hang over a stretch that it bends.
        floor = list(wall.floor)
        floor[20] = replace(floor[20], height=mm(1.5 * step))
        return replace(wall, floor=tuple(floor))

    again, calls = drag(long_wall(40, substrate), move)
    assert again == {"t20", "t21"}
    # Findings see a little farther: those of the windows beside are looked at as well.
    assert calls <= 10 * 6


def test_a_side_of_one_of_forty_windows_moves_that_window_alone() -> None:
    def move(wall: Wall, step: int) -> Wall:
        one = wall.openings[19]
        wider = replace(one, width=mm(one.width.mm + 2.0 * step))
        return replace(wall, openings=(*wall.openings[:19], wider, *wall.openings[20:]))

    again, calls = drag(long_wall(40, "unknown"), move)
    assert again == {"t20"}
    assert calls <= 10 * 5
