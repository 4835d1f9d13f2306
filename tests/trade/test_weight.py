"""Weights of cloth, against figures computed from the definitions and a stage curtain dealer's handbook."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.trade import load_trade
from elevation.trade.weight import Cloth, cloth_of, cut_area, weight_of
from elevation.units.mass import read_grams, say_grams
from elevation.words import msg

INCH = 25.4
TRADE = load_trade()
LIGHT = TRADE.bodies["light"]


def test_one_width_of_54_by_96_at_250_grams() -> None:
    # 54 in x 96 in = 3.3445 m2; at 250 g/m2 0.836 kg = 1.84 lb: computed from the definitions of inch and pound.
    assert cut_area(54 * INCH, 96 * INCH, 0.0) == pytest.approx(3.3445, abs=5e-5)
    weight = weight_of(Cloth(250.0, msg("x")), 54 * INCH, 80 * INCH, 16 * INCH, 1, None)
    assert weight is not None
    assert weight.kg == pytest.approx(0.836, abs=5e-4)
    assert weight.kg / 0.45359237 == pytest.approx(1.84, abs=5e-3)


# Stage velours of 16, 20, 25 and 32 oz a linear yard of 54 in as g/m2: ounces from a stage curtain dealer's handbook of
# 2009 (issuu.com/thespecialtygroup/docs/dealer_book); 28.349523 g an ounce, 0.9144 m a yard.
@pytest.mark.parametrize(("ounces", "grams"), [(16, 362), (20, 452), (25, 565), (32, 723)])
def test_ounces_a_linear_yard_of_54_inches(ounces: float, grams: int) -> None:
    a_square_yard = ounces * 36 / 54
    assert round(read_grams(f"{a_square_yard!r} oz", "mm")) == grams


@pytest.mark.parametrize("row", ["velour-16", "velour-25"])
def test_the_tables_velours_are_those(row: str) -> None:
    assert TRADE.fabrics[row].grams == {"velour-16": 362, "velour-25": 565}[row]


# ASTM D3776 reports g/m2 and oz/yd2 side by side: 1 oz/yd2 is 33.906 g/m2.
def test_an_ounce_a_square_yard() -> None:
    assert read_grams("1 oz", "mm") == pytest.approx(33.906, abs=5e-4)


@pytest.mark.parametrize(
    ("text", "unit", "grams"),
    [
        ("180", "mm", 180.0),
        ("180 g/m²", "in", 180.0),
        ("180", "in", 180.0),
        ("40", "in", 40 * 33.9057475),
        ("41", "in", 41.0),
        ("5 g", "in", 5.0),
        ("5,3 oz/yd2", "mm", 5.3 * 33.9057475),
    ],
)
def test_typed_weights(text: str, unit: str, grams: float) -> None:
    assert read_grams(text, unit) == pytest.approx(grams)


@pytest.mark.parametrize("text", ["", "heavy", "-3 g", "5 kg", "1.2.3"])
def test_no_weight_of_cloth(text: str) -> None:
    with pytest.raises(BadInput):
        read_grams(text, "in")


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_said_weights_are_read_again(unit: str) -> None:
    assert read_grams(say_grams(240.0, unit), unit) == pytest.approx(240.0, rel=1e-3)
    assert say_grams(240.0, unit) == {"in": "7.078 oz", "mm": "240 g"}[unit]


def test_a_scale_wins_over_the_cloth() -> None:
    cloth = cloth_of(LIGHT, TRADE.fabrics["velvet"], 500.0)
    weight = weight_of(cloth, 2000.0, 2000.0, 400.0, 2, 1.5)
    assert weight is not None
    assert weight.kg == 3.0
    assert "scale" in weight.basis.template


def test_a_typed_weight_wins_over_the_row_and_linings_are_added() -> None:
    lining, bump = TRADE.fabrics["lining-sateen"], TRADE.fabrics["bump"]
    assert cloth_of(LIGHT, TRADE.fabrics["velvet"], 100.0, lining, bump).grams == 100 + 205 + 345
    assert cloth_of(LIGHT, TRADE.fabrics["velvet"], None, lining, None).grams == 360 + 205
    assert cloth_of(TRADE.bodies["lined"]).grams == TRADE.bodies["lined"].grams


def test_no_weight_without_a_length() -> None:
    assert weight_of(Cloth(100.0, msg("x")), 1000.0, None, 400.0, 1, None) is None


@pytest.mark.parametrize("row", TRADE.fabrics.values(), ids=lambda row: row.id)
def test_rows_can_be(row) -> None:
    assert 20 <= row.grams <= 1000
    assert 0 <= row.transmits < 1
    assert 0 <= row.shrinks <= 0.1
    assert 1000 <= row.width_mm <= 3100
    assert row.body in TRADE.bodies


def test_every_kind_of_cloth_has_rows() -> None:
    assert {row.kind for row in TRADE.fabrics.values()} == {"face", "lining", "interlining"}
