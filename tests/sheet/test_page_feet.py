"""Where pages to work by end: no heading, nor words about what follows, stands alone at the foot of a page."""

from __future__ import annotations

import pytest

from elevation.errors import Missing
from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.room.file import load_room
from elevation.sheet.records import Text
from elevation.sheet.work import page as pages_of_work
from elevation.sheet.work.page import Head, Part, height_of, lay, upright, width_of
from elevation.sheet.work.parts import HEADING, SMALL, gap, heading, paragraph
from elevation.sheet.work.whole import WORK_SHEETS
from elevation.trade.tables import load_trade
from elevation.words import Style
from tests.sheet.pages import texts

TRADE = load_trade()
PAGE = upright("in")


@pytest.fixture
def placed(monkeypatch):
    """What stands on every page that is laid, from the top down."""
    found: list[list[Part]] = []
    real = pages_of_work._page

    def kept(parts, *rest):
        found.append([part for _, part in parts])
        return real(parts, *rest)

    monkeypatch.setattr(pages_of_work, "_page", kept)
    return found


def is_heading(part: Part) -> bool:
    return [one.height for one in part.records if isinstance(one, Text)] == [HEADING]


def is_small(part: Part) -> bool:
    return all(isinstance(one, Text) and one.height <= SMALL for one in part.records)


@pytest.mark.parametrize("path", sorted(demo_rooms().glob("*.room.json")), ids=lambda path: path.name.split(".")[0])
def test_no_page_of_any_sheet_of_a_demo_room_ends_with_a_heading(path, placed) -> None:
    rooms = [dress(load_room(path), TRADE)]
    for _, maker in WORK_SHEETS.values():
        try:
            maker(rooms, TRADE, None)
        except Missing:
            continue
    assert len(placed) > 5
    for parts in placed:
        assert not parts[-1].sticks, parts[-1]
        # Nor with a heading and small words alone.
        last = max((at for at, part in enumerate(parts) if is_heading(part)), default=None)
        assert last is None or not all(is_small(part) for part in parts[last + 1 :]), parts[last:]


@pytest.mark.parametrize("room", [10.0, 18.0, 25.0, 40.0])
def test_a_heading_its_words_and_a_space_go_to_the_page_of_what_they_are_about(room: float) -> None:
    width = width_of(PAGE)
    parts = [
        Part(height_of(PAGE) - room, ()),
        heading("A title", width),
        paragraph("What it is about", width, sticks=True),
        gap(2.0),
        paragraph("The thing itself", width),
    ]
    needed = sum(part.height for part in parts[1:])
    said = [[text.text for text in texts([page])] for page in lay(parts, Head("Test", ""), PAGE, Style(), date="")]
    assert len(said) == (1 if needed <= room else 2)
    assert {"A title", "What it is about", "The thing itself"} <= set(said[-1])


def test_no_page_but_the_first_begins_with_an_empty_space() -> None:
    width = width_of(PAGE)

    def top(parts):
        last = lay([Part(height_of(PAGE), ()), *parts], Head("Test", ""), PAGE, Style(), date="")[-1]
        return next(text.at[1] for text in texts([last]) if text.text == "It")

    assert top([gap(9.0), paragraph("It", width)]) == top([paragraph("It", width)])
