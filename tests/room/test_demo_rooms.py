"""The demo rooms are what a stranger sees first: complete, possible, and together they show everything."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from collections.abc import Set as AbstractSet

import pytest

from elevation import places
from elevation.findings.model import BEFORE_WALL, EVERY_MOUNT
from elevation.room.file import load_bytes, load_room
from elevation.room.first import FirstFacts, first_room
from elevation.room.model import Opening, Room, Wall
from elevation.room.style import style_for
from elevation.room.validate import check_rows
from elevation.setting_out.whole import set_out
from elevation.trade import load_trade
from elevation.units import parse_length
from tests.strategies import HEAD_KINDS, OBSTACLE_KINDS, OPENING_KINDS, SASH_KINDS

PATHS = sorted(places.demo_rooms().glob("*.room.json"))
ROOMS = [load_room(path) for path in PATHS]
TRADE = load_trade()


def walls() -> Iterator[Wall]:
    for room in ROOMS:
        yield from room.walls


def openings() -> Iterator[Opening]:
    for wall in walls():
        yield from wall.openings


def test_the_first_one_is_the_bedroom() -> None:
    assert len(PATHS) >= 6
    bedroom = ROOMS[0]
    assert bedroom.sleeping
    assert bedroom.unit == "in"
    (window,) = bedroom.walls[0].openings
    assert window.escape
    assert window.sash.kind == "double-hung"
    assert window.casing is not None
    assert window.casing.mm > 0


@pytest.mark.parametrize("room", ROOMS, ids=lambda room: room.name)
def test_every_row_is_in_the_tables(room: Room) -> None:
    check_rows(room, TRADE, room.name)
    assert style_for(room).unit == room.unit


@pytest.mark.parametrize("room", ROOMS, ids=lambda room: room.name)
def test_every_wall_is_measured_closes_and_has_a_scheme(room: Room) -> None:
    for wall in room.walls:
        assert wall.schemes
        assert wall.name
        for scheme in wall.schemes:
            assert scheme.name
            out = set_out(room, wall.id, scheme.id, TRADE)
            # What its fixings hold only the packet in the shop says.
            assert [fact.field for fact in out.missing if not fact.field.endswith(("fixing", "pull_kg"))] == []
            assert out.chain.closing_error_mm in (None, pytest.approx(0.0, abs=1e-6))
            assert out.treatments


@pytest.mark.parametrize("room", ROOMS, ids=lambda room: room.name)
def test_curtains_do_what_curtains_are_for(room: Room) -> None:
    for wall in room.walls:
        scheme = wall.schemes[0]
        for treatment in set_out(room, wall.id, scheme.id, TRADE).treatments:
            if treatment.mount in BEFORE_WALL:
                assert treatment.glass.clear_open > 0.97, (wall.id, treatment.name)
                assert treatment.clearances.above_casing_mm > 0
                assert treatment.clearances.above_casing_mm <= 12 * 25.4 or treatment.mount == "ceiling"
            else:
                # Cloth between the jambs always stands on some of the glass.
                assert treatment.glass.clear_open > 0.75, (wall.id, treatment.name)
            assert treatment.glass.clear_closed < 0.01 or treatment.mount == "sash", (wall.id, treatment.name)
            for layer in treatment.layers:
                assert layer.support.splice_free == ()
                for panel in layer.panels:
                    assert panel.cannot_pass == ()
                    assert panel.fullness is None or 1.5 <= panel.fullness <= 3


def ceiling_kind(wall: Wall) -> str:
    heights = [station.height.mm for station in wall.ceiling]
    if len(heights) == 1:
        return "level"
    return "sloping" if len(heights) == 2 else "gable"


SHOWN: list[tuple[str, Callable[[], set[str]], AbstractSet[str]]] = [
    ("openings", lambda: {opening.kind for opening in openings()}, set(OPENING_KINDS)),
    ("heads", lambda: {opening.head.kind for opening in openings()}, set(HEAD_KINDS)),
    ("sashes", lambda: {opening.sash.kind for opening in openings()}, set(SASH_KINDS)),
    ("ceilings", lambda: {ceiling_kind(wall) for wall in walls()}, {"level", "sloping", "gable"}),
    ("floors", lambda: {str(min(len(wall.floor), 3)) for wall in walls()}, {"0", "2", "3"}),
    ("obstacles", lambda: {obstacle.kind for wall in walls() for obstacle in wall.obstacles}, set(OBSTACLE_KINDS)),
    ("units", lambda: {room.unit for room in ROOMS}, {"in", "mm"}),
    ("languages", lambda: {room.language for room in ROOMS}, {"en", "de"}),
    (
        "mounts",
        lambda: {one.mount for wall in walls() for scheme in wall.schemes for one in scheme.treatments},
        EVERY_MOUNT,
    ),
    ("ends", lambda: {end.kind for wall in walls() for end in (wall.left, wall.right)}, {"corner", "open"}),
]


@pytest.mark.parametrize(("what", "shown", "wanted"), SHOWN, ids=[row[0] for row in SHOWN])
def test_together_they_show_every_kind(what: str, shown: Callable[[], set[str]], wanted: AbstractSet[str]) -> None:
    assert shown() >= wanted, what


def test_one_has_four_walls_and_one_twelve_openings() -> None:
    assert 4 in {len(room.walls) for room in ROOMS}
    assert 12 in {len(wall.openings) for wall in walls()}


def test_one_rod_runs_over_two_windows_and_a_door_with_a_middle_bracket() -> None:
    def is_it(wall: Wall) -> bool:
        kinds = {opening.id: opening.kind for opening in wall.openings}
        return any(
            sorted(kinds[key] for key in treatment.openings) == ["door", "window", "window"]
            and any(bracket.place.hold == "from-centre" for bracket in treatment.layers[0].brackets)
            for scheme in wall.schemes
            for treatment in scheme.treatments
        )

    assert any(is_it(wall) for wall in walls())


def test_the_room_written_by_hand_in_the_readme_is_the_first_room_of_the_same_facts() -> None:
    text = (places.demo_rooms() / "README.md").read_text(encoding="utf-8")
    example = text.split("```json\n")[1].split("```")[0]
    by_hand = load_bytes(example.encode(), "README.md")
    typed = {
        "width": "144",
        "ceiling": "96",
        "opening_width": "36",
        "opening_height": "54",
        "sill": "26",
        "casing": "3 1/2",
    }
    by_form = first_room(FirstFacts(name="Study", **{key: parse_length(value) for key, value in typed.items()}), TRADE)
    # 12 ft are 144 in: the same wall, written otherwise.
    wall, scheme = by_hand.walls[0], by_hand.walls[0].schemes[0]
    assert wall.schemes == by_form.walls[0].schemes
    out, other = set_out(by_hand, wall.id, scheme.id, TRADE), set_out(by_form, "wall-1", "s1", TRADE)
    assert out.width_mm == other.width_mm
    assert out.treatments[0].glass == other.treatments[0].glass
    assert out.treatments[0].clearances == other.treatments[0].clearances
