from __future__ import annotations

from elevation.room.model import Head, Obstacle, Opening, Station, Stool, Wall
from elevation.sheet.tape_order import fields
from elevation.units import Length

ONE = Length(100.0, "100 mm")


def _wall() -> Wall:
    plain = Opening("o1", ONE, ONE, gap=ONE)
    rich = Opening("o2", ONE, ONE, left=ONE, head=Head("segmental", ONE), stool=Stool(ONE, ONE, ONE))
    door = Opening("o3", ONE, ONE, kind="door")
    heater = Obstacle("h1", "hot-water-radiator", ONE, ONE, ONE, ONE)
    stations = (Station(ONE, ONE), Station(ONE, ONE))
    return Wall("w1", ceiling=stations, floor=stations, openings=(plain, rich, door), obstacles=(heater,))


def test_numbers_run_from_one_without_a_gap() -> None:
    numbers = [entry.number for entry in fields(_wall())]
    assert numbers == list(range(1, len(numbers) + 1))


def test_each_fact_is_asked_for_once() -> None:
    facts = [(entry.ref, entry.field) for entry in fields(_wall())]
    assert len(set(facts)) == len(facts)


def test_every_field_exists_in_the_wall() -> None:
    wall = _wall()
    things = {(wall.id,): wall, **{(wall.id, part.id): part for part in (*wall.openings, *wall.obstacles)}}
    for entry in fields(wall):
        thing: object = things[entry.ref]
        for step in entry.field.split("."):
            thing = thing[int(step)] if step.isdigit() else getattr(thing, step)  # type: ignore[index]


def test_chain_comes_before_heights_and_left_before_right() -> None:
    order = [(entry.ref[-1], entry.field) for entry in fields(_wall())]
    assert order[:3] == [("w1", "width"), ("o1", "gap"), ("o1", "casing")]
    assert order.index(("o2", "left")) < order.index(("o3", "gap")) < order.index(("w1", "gap_right"))
    assert order.index(("w1", "gap_right")) < order.index(("o1", "sill")) < order.index(("h1", "left"))


def test_a_door_has_no_sill_and_an_unmeasured_wall_still_asks_for_its_ceiling() -> None:
    assert ("o3", "sill") not in [(entry.ref[-1], entry.field) for entry in fields(_wall())]
    assert [entry.field for entry in fields(Wall("w"))] == ["width", "ceiling.0.height", "crown", "baseboard"]
