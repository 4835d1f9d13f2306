"""Amounts of money: what both readers take for the same is read, what they do not is refused."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.units.money import read_money


@pytest.mark.parametrize(
    ("text", "amount"), [("249.50", 249.5), ("249,50", 249.5), (" 7 ", 7.0), ("0", 0.0), ("3,5", 3.5), ("10000000", 1e7)]
)
def test_amounts(text: str, amount: float) -> None:
    assert read_money(text) == amount


@pytest.mark.parametrize("text", ["", "1,000", "1.000", "1,000.00", "-3", "3 USD", "10000001", "3.", "nan"])
def test_what_is_no_amount(text: str) -> None:
    with pytest.raises(BadInput) as caught:
        read_money(text)
    assert "is not a price" in str(caught.value)
