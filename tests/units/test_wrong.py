"""How lengths are said in an error: metric where nobody reads along, long texts cut short."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.units import parse_length
from elevation.units.wrong import Amount


@pytest.mark.parametrize(
    ("mm", "text"),
    [(999.9, "999.9 mm"), (1000.0, "1 m"), (-1000.0, "-1 m"), (2345.6, "2.346 m"), (0.5, "0.5 mm")],
)
def test_metres_from_one_metre_on(mm: float, text: str) -> None:
    assert Amount(mm).metric == text
    assert f"{Amount(mm)}" == text
    assert f"{Amount(mm):.1f}" == f"{mm:.1f}"


@pytest.mark.parametrize(("count", "is_cut"), [(3, False), (400, True)])
def test_a_long_text_is_cut_short(count: int, is_cut: bool) -> None:
    with pytest.raises(BadInput) as caught:
        parse_length("x" * count)
    said = str(caught.value)
    assert ("..." in said) is is_cut
    assert len(said) < 300
