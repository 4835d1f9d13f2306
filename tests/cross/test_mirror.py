"""A wall mirrored, said in the other unit, or lengthened at its left: what the SVG's groups show of it."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET

import pytest

from elevation.commands.draw import picture_of
from elevation.output.svg import to_svg
from elevation.room.file import load_bytes
from elevation.trade.tables import load_trade

SVG = "{http://www.w3.org/2000/svg}"
SCALE = 20.0
INCH = 25.4

# Inches; every length is a whole number of them, so that the same wall in millimetres reads the same.
WIDTH, LEFT, WIDE = 150, 40, 36


def wall(unit: str = "in", mirrored: bool = False, before: float = 0) -> bytes:
    """A wall with a window off its centre, an outlet, a ceiling that rises and a pair of panels, as a file."""

    def length(inches: float) -> str:
        return f"{inches:g} in" if unit == "in" else f"{inches * INCH:.1f} mm"

    def turned(left: float, width: float) -> float:
        return WIDTH - left - width if mirrored else left + before

    whole = WIDTH + before
    low, high = {"x": length(0), "height": length(92)}, {"x": length(whole), "height": length(100)}
    if mirrored:
        low, high = {"x": length(0), "height": length(100)}, {"x": length(whole), "height": length(92)}
    panel = {"flat_width": length(54), "measured_length": length(80)}
    room = {
        "format": "elevation-room",
        "version": 1,
        "name": "Mirror",
        "unit": unit,
        "walls": [
            {
                "id": "n",
                "width": length(whole),
                "ceiling": [low, high],
                "openings": [
                    {
                        "id": "w1",
                        "left": length(turned(LEFT, WIDE)),
                        "width": length(WIDE),
                        "height": length(50),
                        "sill": length(24),
                        "casing": length(3),
                        "columns": 2,
                        "rows": 2,
                        "sash": {"kind": "double-hung"},
                    }
                ],
                "obstacles": [
                    {
                        "id": "x1",
                        "kind": "outlet",
                        "left": length(turned(110, 3)),
                        "bottom": length(14),
                        "width": length(3),
                        "height": length(5),
                    }
                ],
                "schemes": [
                    {
                        "id": "s1",
                        "name": "Pair",
                        "treatments": [
                            {
                                "id": "t1",
                                "openings": ["w1"],
                                "layers": [
                                    {
                                        "id": "l1",
                                        "rod": {
                                            "height": {"hold": "above-casing", "at": length(4)},
                                            "left": {"hold": "beyond-opening", "at": length(8)},
                                            "right": {"hold": "beyond-opening", "at": length(8)},
                                        },
                                        "brackets": [
                                            {"id": "b1", "place": {"hold": "from-left-end", "at": length(2)}},
                                            {"id": "b2", "place": {"hold": "from-right-end", "at": length(2)}},
                                        ],
                                        "panels": [
                                            panel | {"id": "p2" if mirrored else "p1", "parks": "left"},
                                            panel | {"id": "p1" if mirrored else "p2", "parks": "right"},
                                        ],
                                    }
                                ],
                            }
                        ],
                    }
                ],
            }
        ],
    }
    return json.dumps(room).encode()


def bounds(data: bytes) -> tuple[dict[str, tuple[float, float, float, float]], float]:
    """Where each group of the drawing of a wall stands (left, top, right, bottom, paper mm), and the wall's middle."""
    room = load_bytes(data, "mirror")
    scheme = room.walls[0].schemes[0]
    picture = picture_of(room, room.walls[0], scheme, load_trade(), paper="a3", scale=f"1:{SCALE:g}")
    found = {}
    for group in ET.fromstring(to_svg(picture)).iter(f"{SVG}g"):
        name = group.get("id", "")
        if name.partition(".")[0] not in {"opening", "rod", "bracket", "panel-drawn", "stack", "obstacle"}:
            continue
        xs, ys = [], []
        for element in group.iter():
            # Outlines only: light falls from the left on every wall, so washes of shadow are never mirrored.
            if element.get("stroke-width") is None:
                continue
            numbers = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", element.get("d") or element.get("points") or "")]
            xs += numbers[::2]
            ys += numbers[1::2]
        if xs:
            found[name] = (min(xs), min(ys), max(xs), max(ys))
    middle = picture.origin[0] + room.walls[0].width.mm / 2 / SCALE
    return found, middle


def test_a_mirrored_wall_is_drawn_mirrored():
    here, middle = bounds(wall())
    there, other_middle = bounds(wall(mirrored=True))
    assert set(here) == set(there)
    assert {name.partition(".")[0] for name in here} >= {"opening", "rod", "bracket", "panel-drawn"}
    for name, (left, top, right, bottom) in here.items():
        # The left bracket of the one is the right bracket of the other.
        twin = name[:-1] + {"1": "2", "2": "1"}[name[-1]] if name.startswith("bracket") else name
        found = there[twin]
        wanted = (middle - right, middle - left)
        assert (found[0] - other_middle, found[2] - other_middle) == pytest.approx(wanted, abs=0.002), name
        assert (found[1], found[3]) == pytest.approx((top, bottom), abs=0.002), name


def test_inches_and_millimetres_draw_the_same_wall():
    here, middle = bounds(wall("in"))
    there, other_middle = bounds(wall("mm"))
    assert set(here) == set(there)
    for name, box in here.items():
        # The sheets differ (the figures are longer), so the drawing may stand elsewhere on the paper.
        widths = (box[2] - box[0], box[3] - box[1], box[0] - middle)
        other = there[name]
        assert (other[2] - other[0], other[3] - other[1], other[0] - other_middle) == pytest.approx(widths, abs=0.002)


def test_a_wall_with_more_at_its_left_is_the_same_wall_shifted():
    here, middle = bounds(wall())
    there, other_middle = bounds(wall(before=20))
    shift = 20 * INCH / SCALE
    start, other_start = middle - 75 * INCH / SCALE, other_middle - 85 * INCH / SCALE
    assert set(here) == set(there)
    for name, box in here.items():
        wanted = (box[0] - start + shift, box[2] - start + shift)
        assert (there[name][0] - other_start, there[name][2] - other_start) == pytest.approx(wanted, abs=0.002), name
