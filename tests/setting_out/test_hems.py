"""Hems over the real floor: worked by hand; targets by common practice, no source."""

from __future__ import annotations

import msgspec
import pytest

from elevation.room.model import Hem, Panel, Rod, Room, Stool
from elevation.setting_out.model import PanelOut, SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from tests.setting_out.rooms import INCH, Head, held, inch, pair, room, treatment, window

TRADE = load_trade()
ROD = Rod(height=held("above-floor", 90), left=held("beyond-opening", 10), right=held("beyond-opening", 10))
# Clip rings on 3/4 in conduit: the cloth's top stands 1 3/4 in below the rod's centre.
TOP = 90 - 1.75


def panels_of(hem: Hem | None = None, panels=None, opening=None, made: Room | None = None, **more) -> tuple[PanelOut, ...]:
    if made is None:
        made = room([opening or window()], [treatment(rod=ROD, hem=hem, panels=panels)], **more)
    out: SetOut = set_out_afresh(made, "a", "s", TRADE)
    return out.treatments[0].layers[0].panels


def inches(value: float | None) -> float | None:
    return None if value is None else value / INCH


@pytest.mark.parametrize(
    ("hem", "length", "gap"),
    [
        (Hem(), TOP - 0.5, 0.5),
        (Hem("clear", inch(0.375)), TOP - 0.375, 0.375),
        (Hem("kiss"), TOP, 0.0),
        (Hem("break"), TOP + 1, -1.0),
        (Hem("break", inch(3)), TOP + 3, -3.0),
        (Hem("puddle"), TOP + 6, -6.0),
    ],
)
def test_floor_targets(hem: Hem, length: float, gap: float) -> None:
    for panel in panels_of(hem):
        assert inches(panel.finished_length_mm) == pytest.approx(length)
        assert inches(panel.gap_low_mm) == pytest.approx(gap)
        assert inches(panel.gap_high_mm) == pytest.approx(gap)
        assert inches(panel.target_gap_mm) == pytest.approx(gap)
        assert panel.hem[0][1] / INCH == pytest.approx(max(gap, 0.0))
        assert panel.hem_low_mm / INCH == pytest.approx(gap)


def test_a_sill_and_an_apron() -> None:
    # Sill at 30 in; stool 1 in and apron 3 in under it.
    opening = window(stool=Stool(inch(1), inch(1), inch(2)), apron=inch(3))
    for hem, level in (
        (Hem("sill"), 30.5),
        (Hem("sill", inch(0.25)), 30.25),
        (Hem("apron"), 26.0),
        (Hem("apron", inch(1)), 25.0),
    ):
        for panel in panels_of(hem, opening=opening):
            assert [y / INCH for _, y in panel.hem] == pytest.approx([level, level])
            assert inches(panel.finished_length_mm) == pytest.approx(TOP - level)
            assert inches(panel.gap_low_mm) == pytest.approx(level)
            assert panel.target_gap_mm is None


def test_an_apron_without_a_stool_however_low() -> None:
    for high in (3.0, 1 / 25.4):
        opening = window(apron=inch(high))
        assert panels_of(Hem("apron"), opening=opening)[0].hem_low_mm / INCH == pytest.approx(30 - high)


def test_a_figure_beside_a_panel_in_hand_is_no_length() -> None:
    assert panels_of(Hem("panel", inch(60)))[0].finished_length_mm is None


def test_without_an_apron_the_hem_is_four_inches_below_the_sill() -> None:
    # A workroom's guide: to the apron's bottom or 4 in below the sill.
    assert panels_of(Hem("apron"))[0].hem_low_mm / INCH == pytest.approx(26)


def test_the_measured_length_wins_over_the_label_and_the_target() -> None:
    hand = pair(label_length=inch(84), measured_length=inch(83.25))
    for panel in panels_of(Hem(), hand):
        assert inches(panel.finished_length_mm) == pytest.approx(83.25)
        assert inches(panel.gap_low_mm) == pytest.approx(TOP - 83.25)
        assert inches(panel.target_gap_mm) == pytest.approx(0.5)
    assert inches(panels_of(Hem("panel"), pair(label_length=inch(84)))[0].gap_low_mm) == pytest.approx(TOP - 84)


def test_a_length_is_a_length() -> None:
    assert inches(panels_of(Hem("length", inch(60)))[0].hem_low_mm) == pytest.approx(TOP - 60)


def test_a_panel_in_hand_without_a_length_is_said_to_be_missing() -> None:
    made = room([window()], [treatment(rod=ROD, hem=Hem("panel"))])
    out = set_out_afresh(made, "a", "s", TRADE)
    assert out.treatments[0].layers[0].panels[0].finished_length_mm is None
    assert [fact.field for fact in out.missing] == ["measured_length", "measured_length"]


FLOOR = ((0, 0), (60, 1), (120, 0.5))


def test_a_hem_made_for_the_floor_follows_it_and_is_as_long_as_its_shortest_drop() -> None:
    left, right = panels_of(Hem("clear", inch(0.5)), floor=FLOOR)
    # The left panel closes from 31.5 to 58 in: the floor is highest at 58, 58/60 in.
    assert left.closed[1] / INCH == pytest.approx(58)
    assert inches(left.finished_length_mm) == pytest.approx(TOP - 58 / 60 - 0.5)
    assert inches(right.finished_length_mm) == pytest.approx(TOP - 1 - 0.5)
    assert inches(left.gap_low_mm) == inches(left.gap_high_mm) == pytest.approx(0.5)
    for x, y in left.hem:
        assert y / INCH == pytest.approx(x / INCH / 60 + 0.5)


def test_a_level_hem_over_a_floor_that_is_not_shows_least_and_greatest_gap() -> None:
    left, right = panels_of(Hem("panel"), pair(measured_length=inch(87)), floor=FLOOR)
    level = TOP - 87
    assert inches(left.gap_low_mm) == pytest.approx(level - 58 / 60)
    assert inches(left.gap_high_mm) == pytest.approx(level - left.closed[0] / INCH / 60)
    # The floor's highest point, 60 in, lies under the right panel.
    assert inches(right.gap_low_mm) == pytest.approx(level - 1)
    assert len(left.hem) == 2


def test_cloth_that_is_too_long_lies_on_the_floor() -> None:
    left, _ = panels_of(Hem("panel"), pair(measured_length=inch(TOP - 0.7), drawn=inch(20)), floor=FLOOR)
    # Level at 0.7 in; the floor reaches that at 42 in, under the drawn panel.
    xs = [x / INCH for x, _ in left.hem]
    assert xs == pytest.approx([xs[0], 42.0, xs[-1]])
    assert left.hem[0][1] / INCH == pytest.approx(0.7)
    assert left.hem[-1][1] / INCH == pytest.approx(xs[-1] / 60)
    assert left.gap_low_mm is not None
    assert left.gap_low_mm < 0


def test_a_floor_to_come_comes_off_every_drop() -> None:
    plain = room([window()], [treatment(rod=ROD)])
    laid = msgspec.structs.replace(plain, floor_to_come=inch(0.75))
    before, after = panels_of(made=plain), panels_of(made=laid)
    for one, other in zip(before, after, strict=True):
        assert one.finished_length_mm is not None
        assert other.finished_length_mm is not None
        assert inches(one.finished_length_mm - other.finished_length_mm) == pytest.approx(0.75)
        assert inches(other.gap_low_mm) == pytest.approx(0.5)
    hand = room([window()], [treatment(rod=ROD, panels=pair(measured_length=inch(87)))])
    sunk = msgspec.structs.replace(hand, floor_to_come=inch(0.75))
    assert panels_of(made=hand)[0].gap_low_mm - panels_of(made=sunk)[0].gap_low_mm == pytest.approx(0.75 * INCH)  # type: ignore[operator]


def test_a_rod_stands_over_the_highest_side_of_a_raked_head() -> None:
    # A raked head has its highest point at one side, its casing at the outer corner there; the rod goes over that.
    opening = window(head=Head(kind="raked", right_height=inch(60)))
    made = room([opening], [treatment(above=4)])
    rod = set_out_afresh(made, "a", "s", TRADE).treatments[0].layers[0].support
    slope = (60 - 54) / 36
    assert rod.height_mm / INCH == pytest.approx(30 + 60 + 3.5 * ((1 + slope**2) ** 0.5 + slope) + 4)


def test_several_pieces_hang_as_one_panel() -> None:
    one = Panel(id="p", flat_width=inch(48), count=2, parks="left")
    (panel,) = panels_of(panels=[one])
    assert panel.flat_width_mm / INCH == pytest.approx(96)
    assert panel.rings == 2 * 9
    assert panel.fold_count == 2 * 8
    assert panel.stack_mm / INCH == pytest.approx(2 * 48 / 54 * 4.5)
