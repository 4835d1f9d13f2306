"""Conversions: NIST's exact factors against our own, with pint as the independent reference, and pint at its edge.

NIST SP 811 (2008), appendix B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 yd = 0.9144 m, 1 ft2 = 0.09290304 m2,
1 lb = 0.45359237 kg, 1 lbf = 4.448 221 615 260 5 N, all exact but the rounding of the last.
"""

from __future__ import annotations

import os
import subprocess
import sys
from fractions import Fraction

import pint
import pytest

from elevation.units import parse_length
from elevation.units.quantity import KNOWN, convert, factor, format_area, format_force, format_mass, registry
from elevation.units.scan import MM_OF


@pytest.mark.parametrize(
    ("text", "mm"),
    [("1 in", 25.4), ("1 ft", 304.8), ("1 yd", 914.4), ("1 m", 1000.0), ("1 cm", 10.0), ("1 mm", 1.0), ("1 dm", 100.0)],
)
def test_nist_exact_lengths(text: str, mm: float) -> None:
    assert parse_length(text).mm == mm


@pytest.mark.parametrize(
    ("unit", "to", "exact"),
    [
        ("inch", "mm", 25.4),
        ("foot", "m", 0.3048),
        ("yard", "m", 0.9144),
        ("foot**2", "m**2", 0.09290304),
        ("inch**2", "mm**2", 645.16),
        ("pound", "kg", 0.45359237),
        ("force_pound", "N", 4.4482216152605),
        ("ounce/yard**2", "g/m**2", 28.349523125 / 0.83612736),
    ],
)
def test_nist_factors(unit: str, to: str, exact: float) -> None:
    assert factor(unit, to) == pytest.approx(exact, rel=1e-14)


def test_our_exact_sizes_agree_with_the_reference_library() -> None:
    exact = pint.UnitRegistry(non_int_type=Fraction)
    for unit, size_mm in MM_OF.items():
        assert exact.Quantity(Fraction(1), "inch" if unit == "in" else unit).m_as("mm") == size_mm


def test_every_known_unit_is_one() -> None:
    for unit in KNOWN:
        assert registry().Unit(unit) is not None


@pytest.mark.parametrize("pair", [("63 1/2 in", "mm"), ("mm", "furlong"), ("mm", "kg")])
def test_only_known_units_of_one_kind(pair: tuple[str, str]) -> None:
    with pytest.raises(ValueError, match=r"no such unit|Cannot convert"):
        convert(1.0, *pair)


def test_shown() -> None:
    # 36 x 60 in = 2160 sq in = 15 sq ft = 1.3935 m2 (by hand).
    area_mm2 = 36 * 60 * 25.4**2
    assert format_area(area_mm2, "in") == "15.0 sq ft"
    assert format_area(area_mm2, "mm", decimal_mark=",") == "1,39 m²"
    assert format_mass(2.0, "in") == "4.4 lb"
    assert format_mass(2.0, "mm", decimal_mark=",") == "2,0 kg"
    assert format_force(100.0, "in") == "22 lbf"
    assert format_force(100.0, "mm") == "100 N"


def _python(code: str, **environment: str) -> str:
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", code],
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    return done.stdout.strip()


def test_lengths_load_without_the_quantity_library() -> None:
    code = "import sys, elevation.units, elevation.units.quantity, elevation.words; print('pint' in sys.modules)"
    assert _python(code) == "False"


def test_works_where_no_cache_can_be_written() -> None:
    code = "from elevation.units.quantity import convert; print(convert(1, 'inch', 'mm'))"
    assert float(_python(code, HOME="/dev/null", XDG_CACHE_HOME="/dev/null")) == pytest.approx(25.4)


def test_where_no_cache_can_be_written_pint_does_without(monkeypatch: pytest.MonkeyPatch) -> None:
    usual = pint.UnitRegistry

    def refuses(**given: str) -> pint.UnitRegistry:
        if given:
            raise OSError(30, "Read-only file system")
        return usual()

    monkeypatch.setattr(pint, "UnitRegistry", refuses)
    made = registry.__wrapped__()
    assert made.Quantity(1, "inch").to("mm").magnitude == pytest.approx(25.4)
