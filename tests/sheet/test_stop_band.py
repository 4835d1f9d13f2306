"""The band of a stop names every treatment that it is about, however long their names are."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.setting_out.whole import set_out
from elevation.sheet.stops import stop_text_within
from elevation.trade.tables import load_trade
from elevation.words import Style
from tests.findings.rooms import good_room

LONG = "Blackout curtain towards the street, the heavy one that was bought last year"


@pytest.mark.parametrize(("name", "width", "shown"), [(LONG, 400.0, LONG), (LONG, 120.0, "Window 1"), ("A", 120.0, "A")])
def test_long_names_give_way_to_the_openings_they_cover(name, width, shown):
    laid = set_out(good_room(), "w1", "s1", load_trade()).treatments[0]
    text = stop_text_within([replace(laid, name=name)], Style("in", 25.4 / 16, ".", "en"), width)
    assert text == f"Stop: do not build as drawn — {shown}"
