"""The picture to post: its pixels, what stands on it, its figures measured back."""

from __future__ import annotations

import pytest

from elevation import places
from elevation.commands.main import main
from elevation.errors import Missing
from elevation.planning.dressed import Dressed, dress
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.paper import TO_POST
from elevation.sheet.post import figures_of, post_pages
from elevation.sheet.records import Dimension, Text
from elevation.trade import load_trade
from elevation.words import say

TRADE = load_trade()
ROOM = load_room(places.demo_rooms() / "2-living-room.room.json")


# The shapes are what 1080 and 1920 pixels at 200 dots to the inch of 25.4 mm come to.
@pytest.mark.parametrize(("name", "pixels"), [("4:5", (1080, 1350)), ("1:1", (1080, 1080)), ("16:9", (1920, 1080))])
def test_the_shapes_are_whole_pixels(name, pixels):
    page = TO_POST[name]
    assert (page.width_mm / 25.4 * 200, page.height_mm / 25.4 * 200) == pytest.approx(pixels, abs=1e-6)


@pytest.mark.parametrize("name", ["4:5", "1:1", "16:9"])
def test_the_whole_wall_and_three_figures_lie_on_the_page(name):
    page = TO_POST[name]
    dressed = dress(ROOM, TRADE)
    for picture in post_pages([dressed], TRADE, page):
        wall = next(one for one in dressed.walls if one.wall_name in picture.title)
        right = picture.origin[0] + wall.width_mm / picture.scale
        top = picture.origin[1] + max(y for _, y in wall.ceiling.points) / picture.scale
        assert 0 < picture.origin[0] < right < page.width_mm
        assert top < page.height_mm
        texts = [record for record in picture.groups[-1].records if isinstance(record, Text)]
        assert len(texts) == 6
        assert all(0 < text.at[1] < picture.origin[1] for text in texts)
        assert not any(isinstance(record, Dimension) for group in picture.groups for record in group.records)


def test_the_figures_are_those_of_the_set_out():
    # By hand: casing top 83 1/2 in and the rod 6 in above it are 89 1/2 in; 140 in of windows and 14 in beyond each.
    wall = dress(ROOM, TRADE).walls[0]
    style = style_for(ROOM)
    assert [say(value, style) for _, value in figures_of(wall)][:2] == ["89¹⁄₂ in", "168 in"]


def test_a_bare_wall_is_said():
    with pytest.raises(Missing, match="nothing to hang"):
        post_pages([Dressed(ROOM, (set_out(ROOM, ROOM.walls[0].id, None, TRADE),))], TRADE)


def test_the_shape_of_a_picture_is_for_pictures_only(tmp_path, capsys):
    room = str(places.demo_rooms() / "2-living-room.room.json")
    assert main(["draw", room, "--paper", "4:5", "--out", str(tmp_path / "a.svg")]) == 2
    assert "--sheet picture" in capsys.readouterr().err
    assert main(["draw", room, "--sheet", "picture", "--paper", "1:1", "--out", str(tmp_path / "a.svg")]) == 0
    assert (tmp_path / "a.svg").read_bytes().startswith(b"<?xml")
