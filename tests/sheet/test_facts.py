"""The quiet facts beside a drawing read as a person would say them."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.model import Treatment
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.facts import facts_of
from elevation.trade import load_trade
from elevation.words import Style
from tests.setting_out.rooms import held, room, treatment

TRADE = load_trade()


def facts(made: Treatment) -> dict[str, str]:
    out = set_out_afresh(room(None, [made]), "a", "s", TRADE)
    return dict(facts_of(out.treatments[0], made, TRADE, Style(plain=True)))


def with_rod(made: Treatment, **more: object) -> Treatment:
    layer = made.layers[0]
    return replace(made, layers=(replace(layer, rod=replace(layer.rod, **more)),))


@pytest.mark.parametrize(
    ("above", "said"),
    [
        (7.5, "7 1/2 in above the opening"),
        (0, "0 in above the opening"),
        (-1.5, "1 1/2 in below the opening's head"),
    ],
)
def test_a_rod_below_the_head_is_said_to_be_below(above: float, said: str) -> None:
    text = facts(with_rod(treatment(), height=held("above-head", above)))["Height"]
    assert text.endswith(f", {said}")
    assert "-" not in text


def test_fullness_is_said_only_where_the_cloth_has_room_to_close() -> None:
    # 54 in of cloth on each half of a rod of 50 in, and 54 in on nothing but the width of its own stack.
    assert "fullness" in facts(treatment())["Panels"]
    short = with_rod(treatment(), left=held("beyond-opening", 10), right=held("rod-length", 9))
    out = set_out_afresh(room(None, [short]), "a", "s", TRADE).treatments[0].layers[0]
    assert [panel.fullness for panel in out.panels] == [None, None]
    assert facts(short)["Panels"].endswith("no fullness: no room to close")


@pytest.mark.parametrize(
    ("height", "said"), [(8, "8 in above the sill"), (0, "0 in above the sill"), (-2, "2 in below the sill")]
)
def test_inside_an_opening_a_height_is_told_from_the_sill(height: float, said: str) -> None:
    made = replace(with_rod(treatment(brackets=()), height=held("above-sill", height)), mount="reveal")
    assert f", {said}" in facts(made)["Height"]
