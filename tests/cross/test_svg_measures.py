"""Lengths, scales, line widths and sheets, read back from the SVG with an XML parser."""

import re
import xml.etree.ElementTree as ET

import pytest

from elevation import places
from elevation.commands.draw import picture_of
from elevation.output.svg import to_svg
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from tests.cross.scales import FOOT_INCH, ISO_5455, printed_ratio
from tests.cross.vectors import SVG, overall, svg_strokes

WALLS = [
    pytest.param(demo, number, id=f"{demo.name[:-10]}-{wall.id}")
    for demo in sorted(places.demo_rooms().glob("*.room.json"))
    for number, wall in enumerate(load_room(demo).walls)
]


@pytest.fixture(scope="module")
def trade():
    return load_trade()


def drawn(demo, number, trade):
    room = load_room(demo)
    wall = room.walls[number]
    return room, wall, to_svg(picture_of(room, wall, wall.schemes[0] if wall.schemes else None, trade))


@pytest.mark.parametrize(("demo", "number"), WALLS)
def test_the_walls_width_is_true_at_the_scale_the_sheet_names(demo, number, trade):
    room, wall, data = drawn(demo, number, trade)
    ratio = printed_ratio(" ".join("".join(text.itertext()) for text in ET.fromstring(data).iter(f"{SVG}text")))
    assert ratio in (FOOT_INCH if room.unit == "in" else ISO_5455)
    length, _, _ = overall(svg_strokes(data, "dimension"))
    assert length * ratio == pytest.approx(wall.width.mm, abs=0.1)  # on the wall, not on paper: far stricter


@pytest.mark.parametrize(("demo", "number"), WALLS)
def test_wide_lines_are_twice_as_wide_as_narrow_ones(demo, number, trade):
    # ISO 128-2:2020, 5.1: wide to narrow is 2:1, widths from the series 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.
    _, _, data = drawn(demo, number, trade)
    _, wide, line = overall(svg_strokes(data, "dimension"))
    assert wide == 2 * line.width
    assert {wide, line.width} <= {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0}
    outline = {
        float(element.get("stroke-width", ""))
        for group in ET.fromstring(data).iter(f"{SVG}g")
        if group.get("class") == "wall"
        for element in group.iter()
        if element.get("stroke-width")
    }
    assert max(outline) == wide


@pytest.mark.parametrize(("demo", "number"), WALLS)
def test_every_character_has_a_glyph_in_the_type_that_the_svg_carries(demo, number, trade):
    """What a browser sets the text in: the embedded cut that family, weight and style ask for."""
    import base64
    import io

    from fontTools.ttLib import TTFont

    _, _, data = drawn(demo, number, trade)
    root = ET.fromstring(data)
    style = "".join(root.find(f"{SVG}defs/{SVG}style").itertext())
    rule = re.compile(
        r"@font-face\{font-family:'([^']+)';font-weight:(\d+);font-style:(\w+);"
        r"src:url\(data:font/ttf;base64,([A-Za-z0-9+/=]+)\) format\('truetype'\)\}"
    )
    cuts = {
        (weight, slope): (family, TTFont(io.BytesIO(base64.b64decode(font))))
        for family, weight, slope, font in rule.findall(style)
    }
    # CSS Fonts 4 matches by these three; OS/2 usWeightClass and fsSelection bit 0 say what the font itself is.
    for (weight, slope), (_, font) in cuts.items():
        assert font["OS/2"].usWeightClass == int(weight)
        assert bool(font["OS/2"].fsSelection & 1) == (slope == "italic")
        assert not {"GPOS", "GSUB", "kern"} & set(font.keys()), "nothing may move a letter"
    named = next(group.get("font-family") for group in root.iter(f"{SVG}g") if group.get("font-family"))
    for text in root.iter(f"{SVG}text"):
        family, font = cuts[text.get("font-weight", "400"), text.get("font-style", "normal")]
        assert named.startswith(f"'{family}'")
        words = "".join(text.itertext())
        glyphs = font.getBestCmap()
        assert {ord(sign) for sign in words} <= set(glyphs), words
        advance = sum(font["hmtx"][glyphs[ord(sign)]][0] for sign in words) / font["head"].unitsPerEm
        # The font's own advances, against the length that the SVG promises to a viewer without it.
        assert advance * float(text.get("font-size")) == pytest.approx(float(text.get("textLength")), abs=0.02)
