"""Cross-sections and materials against handbook tables."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.trade import cells, load_trade
from elevation.trade.section import GRAVITY, section_of, weight_n_per_mm

TRADE = load_trade()
INCH = 25.4
LB_PER_FT = 0.45359237 * GRAVITY / 304.8  # N/mm


# Second moment (in4) and modulus (in3) of schedule 40 pipe: Mott, Machine Elements in Mechanical Design, table A16-6.
# Weights of pipe: ASME B36.10M; of conduit: Steel Tube Institute; of copper tube: ASTM B88 tables (lb/ft).
@pytest.mark.parametrize(("row", "inertia", "modulus"), [
    ("pipe-1/2", 0.01709, 0.04070), ("pipe-3/4", 0.03704, 0.07055), ("pipe-1", 0.08734, 0.1328),
])  # fmt: skip
def test_pipe_has_the_handbooks_stiffness(row: str, inertia: float, modulus: float) -> None:
    size = TRADE.sections[row]
    found = section_of(size.outer_mm, size.wall_mm)
    assert found is not None
    assert found.inertia_mm4 / INCH**4 == pytest.approx(inertia, rel=1e-3)
    assert found.modulus_mm3 / INCH**3 == pytest.approx(modulus, rel=1e-3)


@pytest.mark.parametrize(("row", "weight"), [
    ("conduit-1/2", 0.30), ("conduit-3/4", 0.46), ("conduit-1", 0.67), ("conduit-1-1/4", 1.01),
    ("pipe-1/2", 0.851), ("pipe-3/4", 1.131), ("pipe-1", 1.679),
    ("copper-l-1/2", 0.285), ("copper-l-3/4", 0.455), ("copper-l-1", 0.655),
    ("copper-1/2", 0.204), ("copper-3/4", 0.328), ("copper-1", 0.465),
])  # fmt: skip
def test_a_rod_weighs_what_its_table_says_within_a_hundredth(row: str, weight: float) -> None:
    size = TRADE.sections[row]
    found = section_of(size.outer_mm, size.wall_mm)
    assert found is not None
    assert weight_n_per_mm(found, TRADE.materials[size.material]) / LB_PER_FT == pytest.approx(weight, rel=0.011)


# From the formula pi/64 (D4 - d4), by hand: 25 mm by 1.5 mm and 16 mm by 1 mm tube; a 1 in dowel is pi/64 in4.
@pytest.mark.parametrize(("outer", "wall", "inertia", "modulus", "area"), [
    (25.0, 1.5, 7675.75, 614.060, 110.7411), (16.0, 1.0, 1331.25, 166.406, 47.1239),
    (25.4, 0.0, 0.04908739 * INCH**4, 0.09817477 * INCH**3, 0.785398 * INCH**2),
    (25.4, 40.0, 0.04908739 * INCH**4, 0.09817477 * INCH**3, 0.785398 * INCH**2),
])  # fmt: skip
def test_tubes_and_bars(outer: float, wall: float, inertia: float, modulus: float, area: float) -> None:
    found = section_of(outer, wall)
    assert found is not None
    assert found.inertia_mm4 == pytest.approx(inertia, rel=2e-6)
    assert found.modulus_mm3 == pytest.approx(modulus, rel=2e-6)
    assert found.area_mm2 == pytest.approx(area, rel=2e-6)


@pytest.mark.parametrize(("outer", "wall"), [(0.0, 1.0), (-1.0, 0.0), (float("nan"), 1.0), (20.0, -1.0)])
def test_a_rod_without_size_has_no_section(outer: float, wall: float) -> None:
    assert section_of(outer, wall) is None


def test_every_section_is_of_a_material_and_every_material_creeps_no_less_than_it_sags() -> None:
    for row in TRADE.sections.values():
        assert row.material in TRADE.materials
    for material in TRADE.materials.values():
        # National Design Specification, 3.5.2: 1.5 for seasoned wood in dry use; metals do not creep at room temperature.
        assert material.creep == (1.5 if material.looks == "wood" else 1.0)
        assert 0 < material.bends_to < material.yields < material.elastic


def test_wood_that_is_not_told_promises_no_more_than_any_other() -> None:
    least = TRADE.materials["wood"]
    for row in TRADE.materials.values():
        if row.looks == "wood" and row.id != "bamboo":
            assert least.elastic <= row.elastic
            assert least.bends_to <= row.bends_to


@pytest.mark.parametrize(("read", "cell", "value"), [
    (cells.stress, "200 GPa", 200e3), (cells.stress, "36 ksi", 248.211), (cells.stress, "8600 psi", 59.295),
    (cells.stress, "34.6 MPa", 34.6), (cells.force, "20 lbf", 88.9644), (cells.force, "90 N", 90.0),
    (cells.force, "1.2 kN", 1200.0), (cells.density, "7850 kg/m3", 7850.0),
    (cells.mass, "20 g", 0.02), (cells.mass, "2 kg", 2),
])  # fmt: skip
def test_cells_with_units(read, cell: str, value: float) -> None:
    assert read(cell) == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize("read", [cells.stress, cells.force, cells.density, cells.mass])
@pytest.mark.parametrize("cell", ["", "20", "GPa", "20 furlongs", "-3 N", "nan N", "1e400 GPa"])
def test_cells_without_or_with_wrong_units_are_refused(read, cell: str) -> None:
    with pytest.raises(BadInput):
        read(cell)
