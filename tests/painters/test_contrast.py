"""Every text of real drawings against what is really painted under it: 4.5 to 1 (WCAG 2.2, 1.4.3, level AA)."""

from __future__ import annotations

import numpy as np
import pytest
from msgspec.structs import replace

from elevation import places
from elevation.commands.draw import picture_of
from elevation.output.painters.png import to_png
from elevation.planning.comparing import compare, pages_of
from elevation.planning.dressed import dress
from elevation.room.file import load_room
from elevation.sheet import inks
from elevation.sheet.post import post_pages
from elevation.sheet.records import Group, Picture, Text
from elevation.sheet.schemes import scheme_sheet
from elevation.sheet.type_metrics import text_width
from elevation.trade import load_trade
from tests.painters.golden import opened

TRADE = load_trade()
DPI = 60
LEAST = 4.5


def texts(picture: Picture) -> list[tuple[Group, Text]]:
    return [(group, record) for group in picture.groups for record in group.records if isinstance(record, Text)]


def without_texts(picture: Picture) -> Picture:
    groups = (
        replace(group, records=tuple(record for record in group.records if not isinstance(record, Text)))
        for group in picture.groups
    )
    return replace(picture, groups=tuple(groups))


def middle_mm(picture: Picture, group: Group, text: Text) -> tuple[float, float]:
    """The middle of a text on the page, paper mm from its lower left corner."""
    x, y = text.at
    if group.frame == "wall":
        x, y = picture.origin[0] + x / picture.scale, picture.origin[1] + y / picture.scale
    wide = text_width(text.text, text.height)
    along = {"left": wide / 2, "middle": 0.0, "right": -wide / 2}[text.align]
    turn = np.radians(text.turn)
    up = text.height * 0.35
    return x + along * np.cos(turn) - up * np.sin(turn), y + along * np.sin(turn) + up * np.cos(turn)


def pale_texts(picture: Picture) -> list[str]:
    """Texts whose ink is less than 4.5 to 1 against the ground under their middle."""
    assert picture.page is not None
    ground = opened(to_png(without_texts(picture), DPI))
    px = DPI / 25.4
    found = []
    for group, text in texts(picture):
        x, y = middle_mm(picture, group, text)
        row, column = round((picture.page.height_mm - y) * px), round(x * px)
        near = ground[max(row - 1, 0) : row + 2, max(column - 1, 0) : column + 2].reshape(-1, 3)
        if len(near) == 0:
            continue  # Past the page's edge: other tests hold texts inside.
        # A line that crosses a text is no ground: the middle of what is near is.
        under = "#{:02x}{:02x}{:02x}".format(*(int(part) for part in np.median(near, axis=0)))
        ratio = inks.contrast(text.ink, under)
        if ratio < LEAST:
            found.append(f"{text.text} {inks.colour(text.ink)} on {under}: {ratio:.2f}")
    return found


@pytest.mark.parametrize("name", ["1-bedroom", "4-flat", "7-guest-room", "9-bay"])
@pytest.mark.parametrize("light", [None, "day"])
def test_texts_of_an_elevation(name, light, qapp):
    room = load_room(places.demo_rooms() / f"{name}.room.json")
    wall = room.walls[0]
    picture = picture_of(room, wall, wall.schemes[0], TRADE, light=light)
    assert len(texts(picture)) > 10
    assert pale_texts(picture) == []


def test_texts_of_schemes_and_of_a_picture_to_post(qapp):
    room = load_room(places.demo_rooms() / "1-bedroom.room.json")
    wall = room.walls[0].id
    assert pale_texts(scheme_sheet(compare(room, wall, pages_of(room, wall)[0], TRADE), TRADE)) == []
    assert pale_texts(post_pages([dress(room, TRADE, wall)], TRADE, before=True)[0]) == []


def test_a_pale_text_is_found(qapp):
    room = load_room(places.demo_rooms() / "1-bedroom.room.json")
    picture = picture_of(room, room.walls[0], room.walls[0].schemes[0], TRADE)
    groups = [
        replace(
            group, records=tuple(replace(one, ink=inks.HATCH) if isinstance(one, Text) else one for one in group.records)
        )
        for group in picture.groups
    ]
    assert len(pale_texts(replace(picture, groups=tuple(groups)))) > 10
