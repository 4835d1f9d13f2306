"""Pages to work by: a table that goes on over the page has its head again, and no page begins or ends with it alone."""

from __future__ import annotations

import pytest

from elevation.sheet.work.page import Head, Part, height_of, lay, together, upright, width_of
from elevation.sheet.work.parts import TableColumn, heading, table
from elevation.words import Style
from tests.sheet.pages import check_inside, texts

STYLE = Style()
PAGE = upright("in")


def laid(rows: int, before: float = 0.0):
    width = width_of(PAGE)
    cells = [(str(number), "what it is") for number in range(rows)]
    parts = [
        Part(before, ()),
        heading("A table", width),
        *table((TableColumn("No", 1), TableColumn("What", 4)), cells, width),
    ]
    return lay(parts, Head("Test", "of pages"), PAGE, STYLE, date="2026-03-01")


@pytest.mark.parametrize("rows", [1, 10, 30, 60, 120])
def test_every_page_of_a_table_has_its_head_once_and_every_row_stands_once(rows: int) -> None:
    pages = laid(rows)
    check_inside(pages)
    said = [[text.text for text in texts([page])] for page in pages]
    for page in said:
        assert page.count("What") == 1
        # Never a head without a row under it.
        assert page.count("what it is") >= 1
    assert sum(page.count("what it is") for page in said) == rows


@pytest.mark.parametrize("room", [2.0, 12.0, 18.0, 24.0, 40.0])
def test_a_heading_goes_to_the_page_of_its_table_s_first_row(room: float) -> None:
    pages = laid(5, height_of(PAGE) - room)
    for page in pages:
        said = [text.text for text in texts([page])]
        if "A table" in said:
            assert "What" in said
            assert "0" in said


def test_what_is_kept_together_is_one_part_where_a_page_holds_it() -> None:
    tall = Part(height_of(PAGE) / 2 + 1.0, ())
    assert len(together([tall, tall], PAGE)) == 2
    (one,) = together([Part(10.0, ()), Part(20.0, ())], PAGE)
    assert one.height == 30.0
    assert together([], PAGE) == ()
