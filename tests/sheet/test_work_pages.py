"""Pages to work by: a table that goes on over the page has its head again, and no page begins or ends with it alone."""

from __future__ import annotations

import pytest

from elevation.sheet.work.page import Head, Part, Sheet, height_of, lay, together, upright, width_of
from elevation.sheet.work.parts import TableColumn, heading, paragraph, table
from elevation.words import Style, msg
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


def test_parts_kept_together_stand_under_each_other_where_they_stood() -> None:
    width = width_of(PAGE)
    parts = [heading("A", width), paragraph("B", width), paragraph("C", width)]
    one = together(parts, PAGE)

    def places(given):
        pages = lay(given, Head("Test", ""), PAGE, STYLE, date="2026-03-01")
        return [(text.text, *(round(at, 6) for at in text.at)) for text in texts(pages)]

    assert places(one) == places(parts)
    # As high as a page is still one part; a hair more is not.
    full = height_of(PAGE)
    assert len(together([Part(full / 2, ()), Part(full / 2, ())], PAGE)) == 1
    assert len(together([Part(full / 2, ()), Part(full / 2 + 0.01, ())], PAGE)) == 2


def test_the_date_that_is_given_stands_on_the_page(monkeypatch) -> None:
    def dates(date):
        said = [text.text for text in texts(Sheet("x", STYLE, date=date).lay(msg("Labels"), []))]
        return [text for text in said if text.startswith("20")]

    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    assert dates("2026-03-01") == ["2026-03-01"]
    assert dates(None) == ["2023-11-14"]


def test_a_band_stands_over_the_parts_of_every_page() -> None:
    sheet = Sheet("x", STYLE, band="STOP: not this", date="")
    width = sheet.width
    pages = sheet.lay(msg("Labels"), [paragraph(f"line {number}", width) for number in range(60)])
    assert len(pages) > 1
    check_inside(pages)
    for page in pages:
        said = {text.text: text.at[1] for text in texts([page])}
        assert said["STOP: not this"] > max(at for text, at in said.items() if text.startswith("line"))
