"""Each bound of cloth, making and weights just inside, at, and just outside it; rows that the tables do not hold."""

from __future__ import annotations

import math
from typing import Any

import pytest

from elevation.errors import BadInput
from elevation.room.edits import replace_at
from elevation.room.model import Fabric, Making, Room
from elevation.room.validate import check_room, check_rows
from elevation.trade import load_trade
from elevation.units import Length
from tests.room.test_validate_scheme import LAYER, ROOM

TRADE = load_trade()


def mm(value: float) -> Length:
    return Length(float(value), f"{value:g} mm")


def wrong(room: Room) -> str:
    try:
        check_room(room, "x")
        check_rows(room, TRADE, "x")
    except BadInput as error:
        return str(error)
    return ""


def fabric(**fields: Any) -> str:
    return wrong(replace_at(ROOM, LAYER, fabric=Fabric(**fields)))


def making(**fields: Any) -> str:
    return wrong(replace_at(ROOM, LAYER, making=Making(**fields)))


@pytest.mark.parametrize(
    ("field", "inside", "outside"),
    [
        ("grams", (1e-9, 3000.0), (0.0, -1.0, 3000.001, math.nan, math.inf)),
        ("shrinks", (0.0, 0.3), (-0.001, 0.3001, math.nan)),
    ],
)
def test_figures_of_cloth(field: str, inside: tuple[float, ...], outside: tuple[float, ...]) -> None:
    assert [fabric(**{field: value}) for value in inside] == ["" for _ in inside]
    assert all(f"fabric.{field}" in fabric(**{field: value}) for value in outside)


@pytest.mark.parametrize(
    ("field", "low", "high"), [("width", 50, 6000), ("repeat", 5, 3000)],
)  # fmt: skip
def test_lengths_of_cloth(field: str, low: float, high: float) -> None:
    assert fabric(**{field: mm(low)}) == fabric(**{field: mm(high)}) == ""
    for off in (low - 0.01, high + 0.01, 0.0, -low, math.inf):
        assert f"fabric.{field}" in fabric(**{field: mm(off)})


@pytest.mark.parametrize(("value", "right"), [(1.0, True), (6.0, True), (0.999, False), (6.001, False), (math.nan, False)])
def test_fullness_wished(value: float, right: bool) -> None:
    assert (making(fullness=value) == "") is right


@pytest.mark.parametrize(("field", "high"), [("heading", 1000), ("hem", 1000), ("settles", 300)])
def test_lengths_of_making(field: str, high: float) -> None:
    assert making(**{field: mm(0)}) == making(**{field: mm(high)}) == ""
    assert f"making.{field}" in making(**{field: mm(-0.01)})
    assert f"making.{field}" in making(**{field: mm(high + 0.01)})


@pytest.mark.parametrize(("value", "right"), [(3.0, True), (300.0, True), (2.99, False), (300.01, False), (0.0, False)])
def test_ring(value: float, right: bool) -> None:
    assert (wrong(replace_at(ROOM, LAYER, ring=mm(value))) == "") is right


@pytest.mark.parametrize(("value", "right"), [(1e-9, True), (100.0, True), (0.0, False), (-2.0, False), (100.01, False)])
def test_weight_of_a_panel(value: float, right: bool) -> None:
    room = replace_at(ROOM, (*LAYER, "p1"), weight_kg=value)
    assert (wrong(room) == "") is right


@pytest.mark.parametrize(
    ("field", "row", "advice"),
    [
        ("row", "velvett", 'did you mean "velvet"'),
        ("row", "bump", "no such cloth"),
        ("lining", "velvet", "no such lining"),
        ("lining", "lining-satin", 'did you mean "lining-sateen"'),
        ("interlining", "bumpp", 'did you mean "bump"'),
    ],
)
def test_rows_that_are_not_there(field: str, row: str, advice: str) -> None:
    said = fabric(**{field: row})
    assert f"fabric.{field}" in said
    assert row in said
    assert advice.split('"')[-2 if '"' in advice else 0] in said
