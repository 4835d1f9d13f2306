"""The picture to post: its pixels, what stands on it, its figures measured back."""

from __future__ import annotations

import pytest

from elevation import places
from elevation.commands.arguments import FIGURES as NAMES
from elevation.commands.main import main
from elevation.errors import BadInput, Missing
from elevation.planning.dressed import Dressed, dress
from elevation.planning.photograph import photograph_words, stand_for
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.paper import TO_POST
from elevation.sheet.post import post_pages
from elevation.sheet.post_figures import FIGURES, figures_named, figures_of
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


def test_the_figures_of_her_choice():
    # By hand: the ceiling is at 108 in and the rod at 89 1/2 in; 36 in of door and two windows of 32 in stand 13 in and
    # their casings of 7 in apart.
    wall = dress(ROOM, TRADE).walls[0]
    style = style_for(ROOM)
    told = figures_of(wall, ("under-ceiling", "reach", "wall"))
    assert [say(value, style) for _, value in told] == ["18¹⁄₂ in", "14 in", "216 in"]
    assert set(FIGURES) == set(NAMES)
    for name in FIGURES:
        ((label, value),) = figures_of(wall, (name,))
        assert say(label, style)
        assert say(value, style)


@pytest.mark.parametrize("text", ["", "rod-height,rod-height", "colour", "rod-height,reach,wall,hem"])
def test_figures_that_are_none_are_refused(text):
    with pytest.raises(BadInput):
        figures_named(text)


@pytest.mark.parametrize("name", ["4:5", "1:1", "16:9"])
def test_before_and_after_have_one_viewpoint(name):
    page = TO_POST[name]
    (wall,) = dress(ROOM, TRADE, ROOM.walls[0].id).walls
    (alone,) = post_pages([Dressed(ROOM, (wall,))], TRADE, page)
    (both,) = post_pages([Dressed(ROOM, (wall,))], TRADE, page, ("wall",), before=True)
    assert both.scale > alone.scale
    faces = [group for group in both.groups if group.layer == "wall"]
    assert len(faces) == 2
    # The same drawing twice, moved: the step leads from any point of the one to the same point of the other.
    first, second = ([point for record in face.records for point in getattr(record, "points", ())] for face in faces)
    steps = {(round(b[0] - a[0], 3), round(b[1] - a[1], 3)) for a, b in zip(first, second, strict=True)}
    assert len(steps) == 1
    ((right, down),) = steps
    high = max(y for _, y in wall.ceiling.points)
    # Beside each other, or one over the other; never on each other, and both on the page.
    assert right > wall.width_mm or -down > high
    for x, y in ((0.0, 0.0), (right, 0.0), (0.0, high)):
        assert 0 < both.origin[0] + x / both.scale < page.width_mm
        assert 0 < both.origin[1] + y / both.scale < page.height_mm
    words = [record.text for group in both.groups for record in group.records if isinstance(record, Text)]
    assert {"before", "after", "216 in"} <= set(words)


def test_where_to_stand_for_the_photograph():
    # By hand, from similar triangles: 216 in wide need 216 x 26 / 36 = 156 in, 108 in high 108 x 26 / 24 = 117 in; the
    # greater and a tenth are 171.6 in. Half of 108 in is 54 in, half of 216 in is 108 in.
    wall = dress(ROOM, TRADE).walls[0]
    stand = stand_for(wall, TRADE)
    assert (stand.x_mm / 25.4, stand.up_mm / 25.4, stand.out_mm / 25.4) == pytest.approx((108, 54, 171.6))
    text = say(photograph_words(wall, TRADE, "in"), style_for(ROOM))
    assert "54 in over the floor" in text
    assert "172 in away" in text


def test_figures_and_before_on_the_command_line(tmp_path, capsys):
    room, out = str(places.demo_rooms() / "2-living-room.room.json"), tmp_path / "a.svg"
    asked = ["draw", room, "--sheet", "picture", "--out", str(out)]
    assert main([*asked, "--before", "--figures", "wall,opening"]) == 0
    text = out.read_text()
    assert "before" in text
    assert "wall, end to end" in text
    assert main([*asked, "--figures", "colour"]) == 2
    assert "rod-height" in capsys.readouterr().err
    assert main(["draw", room, "--before", "--out", str(out)]) == 2
    assert "--sheet picture" in capsys.readouterr().err


@pytest.mark.parametrize("sheet", ["picture", "elevation"])
def test_light_on_the_command_line(sheet, tmp_path, capsys):
    room = str(places.demo_rooms() / "2-living-room.room.json")
    asked = ["draw", room, "--sheet", sheet, "--out"]
    texts = {}
    for light in (None, "day", "evening"):
        out = tmp_path / f"{light}.svg"
        assert main([*asked, str(out), *([] if light is None else ["--light", light])]) == 0
        texts[light] = out.read_text()
    assert 'class="light"' not in texts[None]
    assert all('class="light"' in texts[light] for light in ("day", "evening"))
    assert texts["day"] != texts["evening"]
    if sheet == "elevation":
        assert "in the evening" in texts["evening"]
    assert main(["draw", room, "--sheet", "plan", "--light", "day", "--out", str(tmp_path / "a.svg")]) == 2
    assert "--light" in capsys.readouterr().err


def test_before_and_after_have_one_light_each_of_its_own():
    # By day the bare wall keeps all of its light, the dressed one what its cloth leaves: shade on the one only.
    (both,) = post_pages([dress(ROOM, TRADE, ROOM.walls[0].id)], TRADE, before=True, light="day")
    bare, dressed = (group for group in both.groups if group.layer == "light")
    assert bare.records == ()
    assert bare.ref == dressed.ref
