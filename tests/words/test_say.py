"""Messages said in a reader's language, unit and number style."""

from __future__ import annotations

import pytest

from elevation.words import Message, Mm, Percent, Ratio, Style, languages, msg, msg_plural, say, style_of, term

INCH = style_of("in", 25.4 / 16, "en")
GERMAN = style_of("mm", 1.0, "de")


def test_lengths_in_the_reader_s_unit_and_graduation() -> None:
    message = msg("{low} to {high}", low=Mm(1279.525), high=Mm(1300.3))
    assert say(message, INCH) == "50³⁄₈ in to 51³⁄₁₆+ in"
    assert say(message, style_of("mm", 5.0, "en")) == "1280− mm to 1300+ mm"
    assert say(message, style_of("in", 25.4 / 8, "en", plain=True)) == "50 3/8 in to 51 1/4- in"


def test_numbers_in_the_reader_s_style() -> None:
    message = msg(
        "{ratio} {share} {count} {whole} {part}", ratio=Ratio(1.25), share=Percent(0.354), count=3, whole=2.0, part=-0.5
    )
    assert say(message, INCH) == "1.25 35% 3 2 −0.5"
    assert say(message, Style("mm", 1.0, ",", "en")) == "1,25 35% 3 2 −0,5"
    assert say(message, Style("in", 1.0, ".", "en", plain=True)) == "1.25 35% 3 2 -0.5"
    assert say(msg("{ratio}", ratio=Ratio(-0.001)), INCH) == "0.00"
    assert say(msg("{ratio}", ratio=Ratio(2 / 3, digits=3)), INCH) == "0.667"


def test_messages_nest() -> None:
    message = msg("{what} is {size}", what=msg("bracket {n}", n=2), size=Mm(76.2))
    assert say(message, INCH) == "bracket 2 is 3 in"


def test_braces_in_values_are_only_text() -> None:
    assert say(msg("wall {name}", name="{evil.__class__}"), INCH) == "wall {evil.__class__}"
    assert say(term("rings {odd}"), INCH) == "rings {odd}"


@pytest.mark.parametrize(("count", "said"), [(0, "0 rings"), (1, "1 ring"), (2, "2 rings")])
def test_plural(count: int, said: str) -> None:
    assert say(msg_plural("{count} ring", "{count} rings", count=count), INCH) == said


def test_what_cannot_be_said() -> None:
    with pytest.raises(TypeError, match="list"):
        say(msg("{x}", x=[1]), INCH)
    with pytest.raises(ValueError, match="nan"):
        say(msg("{x}", x=float("nan")), INCH)
    with pytest.raises(TypeError, match="whole number"):
        say(Message("{count} ring", {"count": 1.5}, "{count} rings"), INCH)


def test_languages_and_their_marks() -> None:
    assert languages()[0] == "en"
    assert "de" in languages()
    assert Style("mm", 1.0, ",", "de") == GERMAN
    assert style_of("mm", 1.0, "de_AT.UTF-8").language == "de"
    assert style_of("mm", 1.0, "de-CH").language == "de"
    assert style_of("in", 1.0, "xx") == Style("in", 1.0, ".", "en")
    assert style_of("in", 1.0, "../../etc") == Style("in", 1.0, ".", "en")


def test_german_from_the_catalogue() -> None:
    # DIN 5008: a space stands between figure and per cent sign.
    assert say(msg("{share}", share=Percent(0.35)), GERMAN) == "35\u00a0%"
    assert say(msg("{size}", size=Mm(1280.4)), style_of("mm", 0.5, "de")) == "1280,5− mm"
    assert say(msg("a text that no catalogue has"), GERMAN) == "a text that no catalogue has"
