"""Tables for other programs: read back by Python's csv module (RFC 4180); no cell starts a formula."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.output.tables import to_csv, to_text

STARTS = ("=1+1", "+1", "-2", "@SUM(A1)", "\tx", "\rx", " =x", "\uff1d1", "  -1")


@pytest.mark.parametrize("cell", STARTS)
def test_no_cell_starts_a_formula(cell):
    """The signs are those of https://owasp.org/www-community/attacks/CSV_Injection."""
    (row,) = csv.reader(io.StringIO(to_csv([[cell, "plain"]]).decode("utf-8-sig"), newline=""))
    assert row == ["'" + cell, "plain"]


@given(
    st.lists(st.lists(st.text(st.characters(exclude_categories=("Cs",))), min_size=2, max_size=4), min_size=1, max_size=4)
)
def test_what_is_written_is_read_back(rows):
    back = list(csv.reader(io.StringIO(to_csv(rows).decode("utf-8-sig"), newline="")))
    assert [len(row) for row in back] == [len(row) for row in rows]
    for row, own in zip(back, rows, strict=True):
        for cell, given_cell in zip(row, own, strict=True):
            assert cell in (given_cell, "'" + given_cell)
            assert not cell.lstrip(" ").startswith(("=", "+", "-", "@"))


def test_text_stands_in_columns():
    rows = [("What", "Empty", "How many"), ("ring", "", "2"), ("a very long name " * 4, "", "12")]
    lines = to_text(rows).decode().splitlines()
    assert "Empty" not in lines[0]
    at = lines[0].index("How many")
    assert lines[2][at:] == "2"
    assert lines[3][at:] == "12"
    assert max(map(len, lines)) <= 44 + 2 + len("How many")


def test_a_table_without_a_row_is_an_empty_file() -> None:
    assert to_text([]) == b""
