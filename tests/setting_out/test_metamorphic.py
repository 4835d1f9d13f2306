"""What must stay so when a wall is mirrored, shifted or measured in other units, for walls of every kind."""

from __future__ import annotations

import itertools
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.room.model import (
    Bracket,
    Fabric,
    Head,
    Held,
    Hem,
    Layer,
    Opening,
    Panel,
    Rod,
    Room,
    Sash,
    Scheme,
    Station,
    Treatment,
    Wall,
)
from elevation.room.mounting import mounted
from elevation.setting_out.model import SetOut
from elevation.setting_out.mounting import INSIDE
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from elevation.units import Length
from tests.setting_out.rooms import mm

TRADE = load_trade()
CLOSE = 1e-6
WIDE = 6000.0


def lengths(low: int, high: int) -> st.SearchStrategy[Length]:
    return st.integers(low, high).map(mm)


HEADS = st.one_of(
    st.just(Head()),
    st.builds(Head, kind=st.just("segmental"), rise=lengths(20, 150)),
    st.just(Head(kind="half-round")),
    st.builds(Head, kind=st.just("raked"), right_height=lengths(300, 1500)),
)
HINGES = st.sampled_from(["left", "right", "both"])
HANDLES = st.one_of(st.none(), lengths(5, 80))
RODS = st.builds(
    Rod,
    height=st.one_of(
        st.builds(Held, st.sampled_from(["above-head", "above-casing", "below-ceiling"]), lengths(20, 250)),
        st.builds(Held, st.just("above-floor"), lengths(2100, 2400)),
    ),
    left=st.builds(Held, st.sampled_from(["beyond-opening", "beyond-casing"]), lengths(0, 400)),
    right=st.builds(Held, st.sampled_from(["beyond-opening", "beyond-casing"]), lengths(0, 400)),
    ends=st.sampled_from(["bare", "cap", "ball-finial"]),
    stock=st.one_of(st.none(), lengths(700, 2000)),
    left_ends=st.sampled_from([None, None, "socket", "return"]),
    right_ends=st.sampled_from([None, None, "socket", "elbow"]),
)
HEMS = st.builds(
    Hem,
    target=st.sampled_from(["sill", "apron", "clear", "kiss", "break", "puddle", "length", "panel"]),
    at=st.one_of(st.none(), lengths(5, 2000)),
)


@st.composite
def rooms(draw: st.DrawFn) -> Room:
    count = draw(st.integers(1, 3))
    openings, treatments = [], []
    for index in range(count):
        width = draw(st.integers(400, 1500))
        left = 250 + index * 1900 + draw(st.integers(0, 1600 - width)) if width < 1600 else 250 + index * 1900
        kind = draw(st.sampled_from(["casement-in", "double-hung", "fixed", "swing-in"]))
        openings.append(
            Opening(
                id=f"w{index}",
                width=mm(width),
                left=mm(left),
                height=mm(draw(st.integers(800, 1300))),
                sill=mm(draw(st.integers(0, 900))),
                head=draw(HEADS),
                casing=mm(draw(st.integers(0, 100))),
                frame=draw(st.one_of(st.none(), lengths(0, 80))),
                sash=Sash(
                    kind, draw(st.sampled_from(["left", "right", "both"])), draw(st.one_of(st.none(), lengths(5, 80)))
                ),
            )
        )
        parks = ["left", "right", *draw(st.lists(st.sampled_from(["left-of:m", "right-of:m"]), unique=True, max_size=2))]
        panels = [
            Panel(
                id=f"p{number}",
                flat_width=mm(draw(st.integers(500, 2600))),
                parks=place,
                stationary=draw(st.integers(0, 4)) == 0,
                drawn=draw(st.one_of(st.none(), lengths(0, 900))),
                measured_length=draw(st.one_of(st.none(), lengths(1500, 2400))),
            )
            for number, place in enumerate(parks)
        ]
        layer = Layer(
            id="l",
            rod=draw(RODS),
            brackets=(
                Bracket(id="a", place=Held("from-left-end", draw(lengths(0, 90)))),
                Bracket(id="m", place=Held("from-centre", draw(lengths(-150, 150))), rings_pass=draw(st.booleans())),
                Bracket(id="b", place=Held("from-right-end", draw(lengths(0, 90)))),
            ),
            heading=draw(st.sampled_from(sorted(TRADE.headings))),
            fabric=Fabric(body=draw(st.sampled_from(["sheer", "lined"]))),
            hem=draw(HEMS),
            panels=tuple(panels),
        )
        treatments.append(Treatment(id=f"t{index}", openings=(f"w{index}",), layers=(layer,)))
    wall = Wall(
        id="a",
        width=mm(WIDE),
        ceiling=tuple(Station(mm(x), draw(lengths(2500, 2900))) for x in (0, 2000, 6000)),
        floor=tuple(Station(mm(x), draw(lengths(-20, 20))) for x in (0, 3000, 6000)),
        crown=mm(draw(st.integers(0, 90))),
        openings=tuple(openings),
        schemes=(Scheme(id="s", treatments=tuple(treatments)),),
    )
    room = Room(name="R", unit="mm", walls=(wall,))
    for treatment in treatments:
        mount = draw(st.sampled_from(["wall", "wall", "ceiling", "reveal", "sash"]))
        room = mounted(room, ("a", "s", treatment.id), mount, TRADE)
    return room


SWAP = {
    "from-left-end": "from-right-end", "from-right-end": "from-left-end", "left": "right", "right": "left", "both": "both",
    "left-of:m": "right-of:m", "right-of:m": "left-of:m",
}  # fmt: skip


def mirrored(room: Room) -> Room:
    change: Any = msgspec.structs.replace
    wall = room.walls[0]

    def turn(opening: Opening) -> Opening:
        assert opening.left is not None
        head, height = opening.head, opening.height
        if head.kind == "raked":
            assert head.right_height is not None
            head, height = change(head, right_height=height), head.right_height
        left = mm(WIDE - opening.left.mm - opening.width.mm)
        return change(
            opening, left=left, head=head, height=height, sash=change(opening.sash, hinge=SWAP[opening.sash.hinge])
        )

    def turn_bracket(bracket: Bracket) -> Bracket:
        hold = bracket.place.hold
        at = mm(-bracket.place.at.mm) if hold == "from-centre" else bracket.place.at
        return change(bracket, place=Held(SWAP.get(hold, hold), at))  # type: ignore[arg-type]

    def turn_layer(layer: Layer) -> Layer:
        own = layer.rod
        rod = change(own, left=own.right, right=own.left, left_ends=own.right_ends, right_ends=own.left_ends)
        panels = tuple(change(panel, parks=SWAP[panel.parks]) for panel in layer.panels)
        return change(layer, rod=rod, panels=panels, brackets=tuple(turn_bracket(b) for b in layer.brackets))

    def stations(made: tuple[Station, ...]) -> tuple[Station, ...]:
        return tuple(Station(mm(WIDE - s.x.mm), s.height) for s in reversed(made))

    treatments = tuple(
        change(t, layers=tuple(turn_layer(layer) for layer in t.layers)) for t in reversed(wall.schemes[0].treatments)
    )
    return change(
        room,
        walls=(
            change(
                wall,
                ceiling=stations(wall.ceiling),
                floor=stations(wall.floor),
                openings=tuple(turn(opening) for opening in reversed(wall.openings)),
                schemes=(change(wall.schemes[0], treatments=treatments),),
            ),
        ),
    )


def of(room: Room) -> SetOut:
    return set_out_afresh(room, "a", "s", TRADE)


def close(a: Any, b: Any) -> None:
    assert (a is None) == (b is None)
    if a is not None:
        assert a == pytest.approx(b, abs=CLOSE, rel=1e-9)


def agree(a: Any, b: Any, *fields: str) -> None:
    for field in fields:
        close(getattr(a, field), getattr(b, field))


def flip(span: tuple[float, float]) -> tuple[float, float]:
    return WIDE - span[1], WIDE - span[0]


@given(rooms())
def test_a_mirrored_wall_mirrors_everything(room: Room) -> None:
    here, there = of(room), of(mirrored(room))
    for one, other in zip(here.openings, reversed(there.openings), strict=True):
        close((one.left_mm, one.right_mm), flip((other.left_mm, other.right_mm)))
        close(
            (one.top_mm, one.casing_top_mm, one.glass_area_mm2), (other.top_mm, other.casing_top_mm, other.glass_area_mm2)
        )
        close((one.left_top_mm, one.right_top_mm), (other.right_top_mm, other.left_top_mm))
        for mine, theirs in zip(one.sweep, other.sweep, strict=True):
            close((mine[0], mine[2]), flip((theirs[0], theirs[2])))
            close((mine[1], mine[3], mine[4]), (theirs[1], theirs[3], theirs[4]))
    by_ref = {treatment.ref: treatment for treatment in there.treatments}
    for one in here.treatments:
        other = by_ref[one.ref]
        a, b = one.layers[0], other.layers[0]
        close((a.support.left_mm, a.support.right_mm), flip((b.support.left_mm, b.support.right_mm)))
        close((a.support.cut_length_mm, a.support.height_mm), (b.support.cut_length_mm, b.support.height_mm))
        assert a.support.pieces == b.support.pieces
        assert len(a.support.splice_free) == len(b.support.splice_free)
        for mine, theirs in zip(a.brackets, reversed(b.brackets), strict=True):
            close(mine.x_mm, WIDE - theirs.x_mm)
        for mine, theirs in zip(a.panels, b.panels, strict=True):
            assert mine.side != theirs.side
            close(mine.parks_at_mm, WIDE - theirs.parks_at_mm)
            for span in ("travel", "open", "closed", "drawn"):
                close(getattr(mine, span), flip(getattr(theirs, span)))
            for figure in ("finished_length_mm", "fullness", "gap_low_mm", "gap_high_mm", "hem_low_mm", "fold_depth_mm"):
                close(getattr(mine, figure), getattr(theirs, figure))
            assert set(mine.cannot_pass) == set(theirs.cannot_pass)
            assert len(mine.hem) == len(theirs.hem)
            for (x, y), (u, v) in zip(mine.hem, reversed(theirs.hem), strict=True):
                close((x, y), (WIDE - u, v))
        g, h = one.glass, other.glass
        close(
            (g.clear_open, g.clear_closed, g.clear_drawn, g.area_mm2),
            (h.clear_open, h.clear_closed, h.clear_drawn, h.area_mm2),
        )
        close((g.stack_over_left_mm, g.stack_over_right_mm), (h.stack_over_right_mm, h.stack_over_left_mm))
        c, d = one.clearances, other.clearances
        close(
            (c.above_opening_mm, c.above_casing_mm, c.below_ceiling_mm),
            (d.above_opening_mm, d.above_casing_mm, d.below_ceiling_mm),
        )
        close(c.left_of_opening_mm, d.right_of_opening_mm)
        close(c.bracket_left_mm, d.bracket_right_mm)
        agree(c, d, "hem_to_floor_low_mm", "hem_to_floor_high_mm")


def scaled(room: Room) -> Room:
    """The same room typed in inches: every length keeps its size and changes its text."""

    def turn(value: Any) -> Any:
        if isinstance(value, Length):
            inches = value.mm / 25.4
            return Length(inches * 25.4, f"{inches!r} in")
        if isinstance(value, tuple):
            return tuple(turn(part) for part in value)
        if isinstance(value, msgspec.Struct):
            fields = {field: turn(getattr(value, field)) for field in value.__struct_fields__}
            return type(value)(**fields)
        return value

    made: Room = turn(room)
    return msgspec.structs.replace(made, unit="in")


def same(a: Any, b: Any) -> None:
    if isinstance(a, float):
        assert a == pytest.approx(b, abs=CLOSE, rel=1e-9)
    elif isinstance(a, tuple):
        assert len(a) == len(b)
        for one, other in zip(a, b, strict=True):
            same(one, other)
    elif isinstance(a, msgspec.Struct):
        assert type(a) is type(b)
        for field in a.__struct_fields__:
            same(getattr(a, field), getattr(b, field))
    elif isinstance(a, dict):
        assert a.keys() == b.keys()
        for key, value in a.items():
            same(value, b[key])
    else:
        assert a == b


@given(rooms())
def test_inches_and_millimetres_agree(room: Room) -> None:
    same(of(room), of(scaled(room)))


@given(rooms(), st.integers(1, 900))
def test_a_wall_longer_at_the_left_shifts_everything(room: Room, by: int) -> None:
    change: Any = msgspec.structs.replace
    wall = room.walls[0]

    def right(made: tuple[Station, ...]) -> tuple[Station, ...]:
        return tuple(Station(mm(s.x.mm + by), s.height) for s in made)

    moved = change(
        wall,
        width=mm(WIDE + by),
        ceiling=right(wall.ceiling),
        floor=right(wall.floor),
        openings=tuple(change(o, left=mm(o.left.mm + by)) for o in wall.openings if o.left),
    )
    here, there = of(room), of(change(room, walls=(moved,)))
    for one, other in zip(here.treatments, there.treatments, strict=True):
        same(one.clearances, other.clearances)
        same(one.glass, other.glass)
        for a, b in zip(one.layers[0].panels, other.layers[0].panels, strict=True):
            for span in ("travel", "open", "closed", "drawn"):
                close(getattr(b, span), tuple(x + by for x in getattr(a, span)))
            close(tuple(y for _, y in a.hem), tuple(y for _, y in b.hem))
            close(a.fullness, b.fullness)


@given(rooms())
def test_an_opening_that_nothing_covers_changes_no_treatment(room: Room) -> None:
    change: Any = msgspec.structs.replace
    wall = room.walls[0]
    more = Opening(id="extra", width=mm(100), height=mm(200), left=mm(5880), sill=mm(1000), casing=mm(10))
    there = of(change(room, walls=(change(wall, openings=(*wall.openings, more)),)))
    same(of(room).treatments, there.treatments)


def widened(room: Room, by: float) -> Room:
    change: Any = msgspec.structs.replace

    def wider(layer: Layer) -> Layer:
        rod = layer.rod
        # What is held from the jamb inward goes the other way.
        out = -by if rod.left.hold == "inside-opening" else by
        left, right = (Held(end.hold, mm(end.at.mm + out)) for end in (rod.left, rod.right))
        return change(layer, rod=change(rod, left=left, right=right))

    wall = room.walls[0]
    treatments = tuple(change(t, layers=tuple(wider(layer) for layer in t.layers)) for t in wall.schemes[0].treatments)
    return change(room, walls=(change(wall, schemes=(change(wall.schemes[0], treatments=treatments),)),))


@given(rooms(), st.integers(1, 300))
def test_glass_clear_never_falls_as_the_rod_widens(room: Room, by: int) -> None:
    for one, other in zip(of(room).treatments, of(widened(room, by)).treatments, strict=True):
        panels = one.layers[0].panels
        stacks = sum(panel.open[1] - panel.open[0] if panel.stationary else panel.stack_mm for panel in panels)
        if one.mount in INSIDE and any(opening.head != "flat" for opening in one.openings):
            # Inside an opening stacks stay before the glass: one that moves out may come to stand where it is taller.
            continue
        squeezed = any(not panel.stationary and panel.open[1] - panel.open[0] < panel.stack_mm - CLOSE for panel in panels)
        if len(panels) > 2 or stacks > one.layers[0].support.length_mm - 4 * 25.4 or squeezed:
            # Panels parked in the middle stay before the glass; stacks that do not fit on the rod, or between the brackets
            # that they cannot pass, grow with their rod.
            continue
        assert other.glass.clear_open >= one.glass.clear_open - 1e-12


@given(rooms())
def test_panels_keep_to_their_order(room: Room) -> None:
    for treatment in of(room).treatments:
        for panel in treatment.layers[0].panels:
            for span in (panel.travel, panel.open, panel.closed, panel.drawn):
                assert span[0] <= span[1] + CLOSE
            assert panel.closed[1] - panel.closed[0] <= panel.flat_width_mm + CLOSE
            if panel.fullness is not None:
                assert panel.fullness >= 1 - 1e-9
        glass = treatment.glass
        assert 0 <= glass.clear_closed <= 1
        assert 0 <= glass.clear_open <= 1
        ordered = sorted(treatment.layers[0].panels, key=lambda panel: panel.parks_at_mm)
        for name in ("open", "closed"):
            spans = sorted(getattr(panel, name) for panel in ordered)
            for a, b in itertools.pairwise(spans):
                assert a[1] <= b[0] + CLOSE
