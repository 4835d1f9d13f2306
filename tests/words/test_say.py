"""Messages said in a reader's language, unit and number style."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.units import BadLength, parse_length
from elevation.words import (
    Message,
    Mm,
    Percent,
    Ratio,
    Style,
    languages,
    msg,
    msg_plural,
    say,
    say_error,
    style_of,
    term,
)

INCH = style_of("in", 25.4 / 16, "en")
GERMAN = style_of("mm", 1.0, "de")


def test_lengths_in_the_reader_s_unit_and_graduation() -> None:
    message = msg("{low} to {high}", low=Mm(1279.525), high=Mm(1300.3))
    assert say(message, INCH) == "50³⁄₈ in to 51³⁄₁₆+ in"
    assert say(msg("about {size}", size=Mm(114.3, about=True)), style_of("mm", 1.0, "en")) == "about 114 mm"
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


def test_a_typed_length_s_error_in_german() -> None:
    with pytest.raises(BadLength) as caught:
        parse_length("50 3/", what="den.room.json", where="walls[0].width")
    assert say_error(caught.value, INCH) == str(caught.value)
    assert say_error(caught.value, GERMAN) == (
        "den.room.json: walls[0].width: „50 3/“, Zeichen 6: "
        "der Text endet, wo die untere Zahl eines Bruchs erwartet wurde; zum Beispiel 50 3/8 in schreiben"
    )


def test_an_error_without_its_template_is_said_as_it_is() -> None:
    error = BadInput("den.room.json", "", "is not a room file", "")
    assert say_error(error, GERMAN) == str(error) == "den.room.json: is not a room file"


@pytest.mark.parametrize("text", ["", "{wrong}", "3 {x}", "x" * 200, "2 in * 3 in", "50 9/8", "5 in 3 ft", "9" * 13])
def test_every_refused_length_can_be_said(text: str) -> None:
    with pytest.raises(BadLength) as caught:
        parse_length(text)
    assert say_error(caught.value, INCH) == str(caught.value)
    assert say_error(caught.value, GERMAN)
