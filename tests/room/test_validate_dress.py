"""Each bound of a possible tie-back just inside, at, and just outside it."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.edits import replace_at
from elevation.room.model import Blind, Offer, Pelmet, TieBack
from tests.room.test_validate_scheme import LAYER, ROOM, fault, layer, mm


@pytest.mark.parametrize(("share", "right"), [(0.01, True), (0.99, True), (0.0, False), (1.0, False), (-0.1, False)])
def test_a_tie_backs_share_of_the_drop(share: float, right: bool) -> None:
    assert (layer(tie=TieBack(share=share)) == "") is right


def test_a_tie_back_above_the_floor_needs_its_height() -> None:
    assert layer(tie=TieBack(hold="above-floor", at=mm(900))) == ""
    assert "add its height above the floor" in layer(tie=TieBack(hold="above-floor"))
    assert ".tie.at" in layer(tie=TieBack(hold="above-floor", at=mm(0)))


@pytest.mark.parametrize(("key", "inside", "outside"), [("out", 0, -0.1), ("out", 500, 500.1), ("waist", 0.1, 0)])
def test_a_tie_backs_lengths(key: str, inside: float, outside: float) -> None:
    assert layer(tie=TieBack(**{key: mm(inside)})) == ""
    assert f".tie.{key}" in layer(tie=TieBack(**{key: mm(outside)}))


PELMET = Pelmet(mm(300), mm(50), mm(80), mm(80), mm(200))
BLIND = Blind(mm(70), mm(60))


@pytest.mark.parametrize(
    ("fields", "right"),
    [
        ({"price": 0.0}, True),
        ({"price": 1e7}, True),
        ({"price": -0.01}, False),
        ({"price": 1e7 + 1}, False),
        ({"currency": "12345678"}, True),
        ({"currency": "123456789"}, False),
        ({"date": "2028-02-29"}, True),
        ({"date": "2026-02-29"}, False),
        ({"date": "31.3.2026"}, False),
    ],
)
def test_a_shops_offer(fields: dict[str, object], right: bool) -> None:
    (key,) = fields
    told = around(offer=replace(Offer(240.0), **fields))
    assert (told == "") is right
    assert right or f".offer.{key}" in told


def around(**fields: object) -> str:
    return fault(replace_at(ROOM, LAYER[:3], **fields))


@pytest.mark.parametrize(
    ("key", "inside", "outside"),
    [("depth", 0.1, 0), ("above", 2000, 2000.1), ("above", -2000, -2000.1), ("projection", 0.1, 0), ("left", 0, 100_001)],
)
def test_a_pelmets_lengths(key: str, inside: float, outside: float) -> None:
    assert around(pelmet=replace(PELMET, **{key: mm(inside)})) == ""
    assert f".pelmet.{key}" in around(pelmet=replace(PELMET, **{key: mm(outside)}))


@pytest.mark.parametrize(
    ("key", "inside", "outside"),
    [("height", 500, 500.1), ("height", 0.1, 0), ("projection", 500, 500.1), ("width", 0.1, 0), ("drop", 0, -0.1)],
)
def test_a_blinds_lengths(key: str, inside: float, outside: float) -> None:
    assert around(blind=replace(BLIND, **{key: mm(inside)})) == ""
    assert f".blind.{key}" in around(blind=replace(BLIND, **{key: mm(outside)}))
