"""Each bound of a possible tie-back just inside, at, and just outside it."""

from __future__ import annotations

import pytest

from elevation.room.model import TieBack
from tests.room.test_validate_scheme import layer, mm


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
