"""The random walls can say everything the file can say, each kind in at least a tenth of the walls."""

from __future__ import annotations

from collections import Counter
from functools import cache
from typing import get_args, get_type_hints

import pytest
from hypothesis import given
from msgspec.structs import fields

from elevation.room.file import dump_room
from elevation.room.model import Held, Layer, Making, Opening, Room, Wall, WallEnd
from elevation.room.stand import stands
from elevation.room.validate import check_room, check_rows
from elevation.trade import load_trade
from tests import strategies
from tests.strategies import random_room, random_walls, rooms

COUNT = 500
TENTH = COUNT // 10


@cache
def fixed_walls() -> tuple[tuple[Room, Wall], ...]:
    return tuple(random_walls(COUNT))


def layers(wall: Wall) -> list[Layer]:
    return [layer for scheme in wall.schemes for treatment in scheme.treatments for layer in treatment.layers]


def floor_kind(wall: Wall) -> str:
    return ("level", "", "out of level")[len(wall.floor)] if len(wall.floor) < 3 else "wavy"


def ceiling_kind(wall: Wall) -> str:
    return ("unmeasured", "level", "sloping", "gable")[len(wall.ceiling)]


def panels_kind(layer: Layer) -> str:
    if any(panel.stationary for panel in layer.panels):
        return "side panels"
    return ("none", "one way", "pair", "", "parked at a bracket")[len(layer.panels)]


def kinds_of(room: Room, wall: Wall) -> set[str]:
    found = {
        f"fullness multiplies {room.fullness_rule}",
        f"unit {room.unit}",
        f"ceiling {ceiling_kind(wall)}",
        f"floor {floor_kind(wall)}",
    }
    found |= {"a tug of its own"} if room.tug_kg is not None else set()
    found |= {f"end {end.kind}" for end in (wall.left, wall.right)}
    found |= {f"opening {opening.kind}" for opening in wall.openings}
    found |= {f"head {opening.head.kind}" for opening in wall.openings}
    found |= {f"sash {opening.sash.kind}" for opening in wall.openings}
    found |= {"shutter box" for opening in wall.openings if opening.shutter_box is not None}
    found |= {f"hinge {opening.sash.hinge}" for opening in wall.openings}
    found |= {f"obstacle {obstacle.kind}" for obstacle in wall.obstacles}
    found |= {f"mount {one.mount}" for scheme in wall.schemes for one in scheme.treatments}
    found |= {"neighbour" for end in (wall.left, wall.right) if end.neighbour is not None}
    found |= {"leg" for scheme in wall.schemes for one in scheme.treatments if one.continues is not None}
    for scheme in wall.schemes:
        found |= {f"pelmet {one.pelmet.kind}" for one in scheme.treatments if one.pelmet is not None}
        found |= {f"offer {bool(one.offer.place)}" for one in scheme.treatments if one.offer is not None}
        blinds = [one.blind for one in scheme.treatments if one.blind is not None]
        found |= {f"blind {word}" for blind in blinds for word in (blind.place, blind.cord)}
    for layer in layers(wall):
        found |= {f"height {layer.rod.height.hold}", f"rod end {layer.rod.left.hold}", f"rod end {layer.rod.right.hold}"}
        found |= {
            f"heading {layer.heading}",
            f"support {layer.rod.kind}",
            f"ends {layer.rod.ends}",
            f"tilt {layer.rod.tilt}",
            f"bent {layer.rod.bend is not None}",
            *(f"packet's {key}" for key in ("stack", "arm", "least_bend") if getattr(layer.rod.packet, key) is not None),
            f"hem {layer.hem.target}",
            f"body {layer.fabric.body}",
        }
        found |= {f"cloth {row}" for row in (layer.fabric.row, layer.fabric.lining, layer.fabric.interlining)}
        found |= {f"cloth that is {key}" for key in ("half_drop", "one_way", "railroaded") if getattr(layer.fabric, key)}
        found |= {"made up to wish" for _ in (1,) if layer.making != Making()}
        found |= {f"rod of {layer.rod.material}", f"rod wall {layer.rod.wall is not None}"}
        found |= {f"fixing {bracket.fixing}" for bracket in layer.brackets}
        found |= {"fixing of an end" for row in (layer.rod.left_fixing, layer.rod.right_fixing) if row is not None}
        found |= {f"pattern {layer.fabric.pattern}", f"repeat across {layer.fabric.repeat_across is not None}"}
        found |= {"packet's pull" for bracket in layer.brackets if bracket.pull_kg is not None}
        found |= {"packet's shear" for bracket in layer.brackets if bracket.shear_kg is not None}
        found |= {"panel on a scale" for panel in layer.panels if panel.weight_kg is not None}
        found |= {f"bracket {bracket.place.hold}" for bracket in layer.brackets}
        found |= {f"kit {bracket.kit}" for bracket in layer.brackets}
        found |= {f"panels {panels_kind(layer)}"}
        if layer.tie is not None:
            found |= {f"tie-back {layer.tie.hold}", f"tie-back {layer.tie.kind}"}
    return found


WANTED = sorted(
    {f"unit {unit}" for unit in ("in", "mm")}
    | {"neighbour", "leg"}
    | {f"ceiling {kind}" for kind in strategies.CEILINGS}
    | {f"floor {kind}" for kind in strategies.FLOORS}
    | {f"end {kind}" for kind in get_args(get_type_hints(WallEnd)["kind"])}
    | {f"opening {kind}" for kind in get_args(get_type_hints(Opening)["kind"])}
    | {f"head {kind}" for kind in strategies.HEAD_KINDS}
    | {f"sash {kind}" for kind in strategies.SASH_KINDS}
    | {f"hinge {kind}" for kind in ("left", "right", "both")}
    | {f"obstacle {kind}" for kind in strategies.OBSTACLE_KINDS}
    | {
        f"height {hold}"
        for hold in (
            "above-head",
            "above-casing",
            "below-ceiling",
            "above-floor",
            "bracket-drop",
            "below-head",
            "above-sill",
            "share-of-opening",
        )
    }
    | {f"mount {mount}" for mount in strategies.MOUNTS}
    | {f"tilt {tilt}" for tilt in ("level", "head", "ceiling", "split")}
    | {"bent True", "packet's stack", "packet's arm", "packet's least_bend"}
    | {f"support {kind}" for kind in strategies.KINDS}
    | {
        f"rod end {hold}"
        for hold in ("beyond-opening", "beyond-casing", "from-corner", "around-corner", "rod-length", "inside-opening")
    }
    | {f"bracket {hold}" for hold in ("from-left-end", "from-right-end", "from-centre", "from-wall-left")}
    | {f"hem {target}" for target in strategies.HEM_TARGETS}
    | {f"body {body}" for body in strategies.BODIES}
    | {f"cloth {row}" for row in (*strategies.FACES, *strategies.LININGS, "domette", "bump")}
    | {"panel on a scale", "made up to wish", "rod wall True", "packet's pull", "packet's shear", "a tug of its own"}
    | {f"cloth that is {key}" for key in ("half_drop", "one_way", "railroaded")}
    | {f"fullness multiplies {rule}" for rule in ("all", "rod", "fixed", "narrower")}
    | {f"rod of {row}" for row in strategies.MATERIALS}
    | {f"fixing {row}" for row in strategies.FIXINGS}
    | {"fixing of an end", "repeat across True", "pattern plain"}
    | {f"pattern {kind}" for kind in strategies.PATTERNS}
    | {f"heading {row}" for row in strategies.HEADINGS}
    | {f"kit {row}" for row in (*strategies.KITS, *strategies.CEILING_KITS, "sash-hook")}
    | {f"ends {row}" for row in strategies.ROD_ENDS}
    | {"shutter box"}
    | {f"pelmet {kind}" for kind in ("board", "valance")}
    | {"offer True", "offer False"}
    | {f"blind {kind}" for kind in ("reveal", "wall", "loop", "cords", "held-loop", "none")}
    | {f"tie-back {kind}" for kind in ("share-of-drop", "above-floor", "loop", "arm")}
    | {f"panels {kind}" for kind in ("none", "one way", "pair", "side panels", "parked at a bracket")}
)


@cache
def counts() -> Counter[str]:
    return Counter(kind for room, wall in fixed_walls() for kind in kinds_of(room, wall))


@pytest.mark.parametrize("kind", WANTED)
def test_each_kind_is_in_a_tenth_of_the_walls(kind: str) -> None:
    assert counts()[kind] >= TENTH


def test_every_hold_of_the_model_is_among_them() -> None:
    held = {kind.split(" ")[-1] for kind in WANTED}
    assert set(get_args(get_type_hints(Held)["hold"])) <= held


def test_walls_have_one_to_twelve_openings() -> None:
    sizes = Counter(len(wall.openings) for _, wall in fixed_walls())
    assert set(sizes) == set(range(1, 13))
    assert sum(count for size, count in sizes.items() if size >= 5) >= TENTH


def test_gaps_go_down_to_half_an_inch() -> None:
    least = []
    for _, wall in fixed_walls():
        places = stands(wall)
        for (left, here), (right, there) in zip(
            zip(places, wall.openings, strict=True), zip(places[1:], wall.openings[1:], strict=False), strict=False
        ):
            if left is None or right is None:
                continue
            casings = (here.casing.mm if here.casing else 0.0) + (there.casing.mm if there.casing else 0.0)
            least.append(right - left - here.width.mm - casings)
    assert min(least) >= 12.7 - 1e-6
    assert sum(gap < 14.3 for gap in least) >= TENTH


def test_every_wall_material_occurs() -> None:
    # There are twelve and a wall has one, so a tenth of the walls each cannot be.
    assert {wall.substrate for _, wall in fixed_walls()} == set(strategies.SUBSTRATES)


def test_every_field_of_the_file_is_used() -> None:
    from elevation.room import model

    used: set[tuple[str, str]] = set()
    fields_of = cache(fields)

    def note(value: object) -> None:
        if isinstance(value, tuple):
            for item in value:
                note(item)
        elif hasattr(value, "__struct_fields__") and type(value).__module__.startswith("elevation.room."):
            for field in fields_of(type(value)):
                inner = getattr(value, field.name)
                if inner != field.default:
                    used.add((type(value).__name__, field.name))
                note(inner)

    for room, _ in fixed_walls():
        note(room)
    known = {
        (kind.__name__, field.name)
        for kind in vars(model).values()
        if isinstance(kind, type) and hasattr(kind, "__struct_fields__") and kind.__module__.startswith("elevation.room.")
        for field in fields(kind)
    }
    assert known - used == set()


def test_every_fixed_room_is_possible_and_names_rows_that_exist() -> None:
    trade = load_trade()
    for room, _ in fixed_walls():
        check_room(room, "x")
        check_rows(room, trade, "x")


@given(rooms())
def test_every_drawn_room_is_possible(room: Room) -> None:
    check_room(room, "x")


def test_a_seed_makes_the_same_room_for_ever() -> None:
    assert dump_room(random_room(5)) == dump_room(random_room(5))
    assert len({dump_room(random_room(seed)) for seed in range(50)}) == 50
