"""What a bracket carries and what holds it, in words."""

from __future__ import annotations

from elevation.findings.carrying_words import carries, holds
from elevation.findings.rules.fixing import weakest
from elevation.setting_out.carried import HoldOut
from tests.findings.rooms import said, trade
from tests.findings.test_fixing import in_board, landed

LBF = 4.4482216152605


def test_what_a_bracket_carries_is_said_in_the_rooms_unit() -> None:
    bracket = landed(in_board(3.0)).brackets[0]
    assert bracket.load_n is not None
    told = said(carries(bracket, "in"))
    assert f"carries {bracket.load_n / LBF:.1f} lb at most, {bracket.load_n / LBF + 15:.1f} lb when somebody tugs" == told
    assert f"carries {bracket.load_n / 9.80665:.1f} kg at most" in said(carries(bracket, "mm"))


def test_how_many_times_it_holds_is_said_with_its_safety_factor() -> None:
    bracket = landed(in_board(3.0)).brackets[0]
    text = holds(bracket.held, trade())
    assert text is not None
    assert bracket.holds_times is not None
    digits = 2 if bracket.holds_times < 2 else 1
    assert f"holds {bracket.holds_times:.{digits}f} times that, with a safety factor of 4" in said(text)
    assert weakest(landed(in_board(0.1))) is None


def test_why_no_figure_is_given() -> None:
    for why in ("wall", "chosen", "packet", "short", "there", "friction"):
        text = holds(HoldOut("plug", None, why), trade())
        assert text is not None
        assert said(text)
    assert holds(None, trade()) is None
