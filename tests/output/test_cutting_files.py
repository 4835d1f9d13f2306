"""Files for cutting machines, read back: audited, true to size, what is cut apart from what is marked, without words."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ElementTree
from itertools import pairwise
from math import dist

import ezdxf
import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.output.cutting_files import CUT, MARKS, to_cutting_svg, to_dxf
from elevation.places import demo_rooms
from elevation.planning.dressed import Dressed, dress
from elevation.planning.drilling import drill_places
from elevation.planning.plate import HOLE_MM, plate_of, plates, size_of
from elevation.planning.stops import stopped
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from tests.strategies import random_room

TRADE = load_trade()
KITS = [row for row in TRADE.brackets.values() if row.holes_mm]
SVG = "{http://www.w3.org/2000/svg}"


def dxf_of(data: bytes):
    return ezdxf.read(io.StringIO(data.decode("utf-8")))


@pytest.mark.parametrize("kit", KITS, ids=lambda kit: kit.id)
def test_a_plate_s_holes_read_back_from_dxf_are_the_kit_s(kit) -> None:
    document = dxf_of(to_dxf([plate_of(kit, kit.mount)]))
    assert not document.audit().has_errors
    assert not document.audit().has_fixes
    # $INSUNITS 4 is mm: DXF reference, HEADER section.
    assert document.header["$INSUNITS"] == 4
    space = document.modelspace()
    assert {entity.dxftype() for entity in space} == {"LWPOLYLINE", "CIRCLE", "LINE"}
    assert {entity.dxf.layer for entity in space.query("LWPOLYLINE CIRCLE")} == {CUT}
    assert {entity.dxf.layer for entity in space.query("LINE")} == {MARKS}
    (outline,) = space.query("LWPOLYLINE")
    assert outline.closed
    # The rod's axis is where the side notches point: the outline's points that lie inside its box.
    xs, ys = zip(*((x, y) for x, y, *_ in outline.get_points()), strict=True)
    level = next(y for x, y in zip(xs, ys, strict=True) if x == pytest.approx(min(xs) + 4.0))
    middle = next(x for x, y in zip(xs, ys, strict=True) if y == pytest.approx(min(ys) + 4.0))
    along = kit.mount == "ceiling"
    got = sorted((c.dxf.center.x - middle) if along else (c.dxf.center.y - level) for c in space.query("CIRCLE"))
    assert got == pytest.approx(sorted(kit.holes_mm), abs=0.001)
    other = [(c.dxf.center.y - level) if along else (c.dxf.center.x - middle) for c in space.query("CIRCLE")]
    assert other == pytest.approx([0.0] * len(other), abs=0.001)
    assert {2 * c.dxf.radius for c in space.query("CIRCLE")} == {HOLE_MM}


def test_nothing_of_a_plate_lies_nearer_to_its_edge_than_a_hole_needs() -> None:
    for kit in KITS:
        plate = plate_of(kit, kit.mount)
        left, bottom, right, top = size_of(plate)
        for x, y in plate.holes:
            assert min(x - left, right - x, y - bottom, top - y) >= 15.0 - 1e-9
        # Once round, each corner once, and no two edges touch but neighbours.
        assert len(set(plate.outline)) == len(plate.outline)


def test_all_plates_stand_apart_and_are_the_same_in_svg() -> None:
    found = [plate_of(kit, kit.mount) for kit in KITS]
    data = to_dxf(found)
    assert data == to_dxf(found)
    circles = [(c.dxf.center.x, c.dxf.center.y) for c in dxf_of(data).modelspace().query("CIRCLE")]
    boxes = [
        (min(x for x, *_ in line.get_points()), max(x for x, *_ in line.get_points()))
        for line in dxf_of(data).modelspace().query("LWPOLYLINE")
    ]
    assert all(b[0] - a[1] == pytest.approx(10.0, abs=0.002) for a, b in pairwise(boxes))
    root = ElementTree.fromstring(to_cutting_svg(found))
    assert root.get("width", "").endswith("mm")
    _, _, wide, high = (float(part) for part in root.get("viewBox", "").split())
    assert float(root.get("width", "").removesuffix("mm")) == wide
    groups = {group.get("id"): group for group in root.findall(f"{SVG}g")}
    assert set(groups) == {CUT, MARKS}
    assert {element.tag for element in groups[CUT]} == {f"{SVG}polygon", f"{SVG}circle"}
    assert {element.tag for element in groups[MARKS]} == {f"{SVG}line"}
    drawn = [(float(c.get("cx")), high - float(c.get("cy"))) for c in groups[CUT].findall(f"{SVG}circle")]
    for one, other in zip(sorted(circles), sorted(drawn), strict=True):
        assert dist(one, other) < 0.003
    assert not re.search(rb"<text|TEXT|font", to_cutting_svg(found))


@pytest.mark.parametrize("path", sorted(demo_rooms().glob("*.room.json")), ids=lambda path: path.name.split(".")[0])
def test_a_demo_room_s_plates_are_its_kits(path) -> None:
    dressed = dress(load_room(path), TRADE)
    found = plates([dressed], TRADE)
    stops = {ref for findings in dressed.findings for ref in stopped(findings)}
    wanted = {
        place.kit.id
        for wall in dressed.walls
        for laid in wall.treatments
        if laid.ref not in stops
        for place in drill_places(wall, laid, TRADE)
    }
    assert {plate.kit.id for plate in found} == wanted
    if found:
        assert not dxf_of(to_dxf(found)).audit().has_errors


def test_a_treatment_with_a_stop_has_no_plate() -> None:
    withheld = 0
    for seed in range(12):
        dressed = dress(random_room(seed), TRADE)
        for at, (wall, findings) in enumerate(zip(dressed.walls, dressed.findings, strict=True)):
            stops = stopped(findings)
            alone = Dressed(dressed.room, (wall,), (dressed.findings[at],))
            if wall.treatments and all(laid.ref in stops for laid in wall.treatments):
                assert plates([alone], TRADE) == ()
                calm = tuple(one for one in findings if one.weight is not Weight.STOP)
                brackets = [place for laid in wall.treatments for place in drill_places(wall, laid, TRADE)]
                assert bool(plates([replace(alone, findings=(calm,))], TRADE)) is bool(brackets)
                withheld += 1
    assert withheld
