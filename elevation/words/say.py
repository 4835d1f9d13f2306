"""Messages become words: the one place where templates are translated and filled."""

from __future__ import annotations

from math import isfinite
from typing import TypeVar

from elevation.errors import ElevationError, Said
from elevation.units.format import MINUS, format_length
from elevation.units.wrong import ZERO, Amount
from elevation.words.languages import SOURCE_LANGUAGE, catalogue_of
from elevation.words.message import Message, Mm, Percent, Ratio, Style, msg

_MOST_DECIMALS = 6
_E = TypeVar("_E", bound=ElevationError)


def say(message: Message, style: Style) -> str:
    """Say a message in a reader's language, unit and number style.

    Parameters
    ----------
    message : Message
        Its template is translated if the language has it, else said in English.
    style : Style
        The reader.

    Returns
    -------
    str
        Lengths come with their unit ("50³⁄₈ in", "1280 mm"), per cents with their sign ("35%").
    """
    template = message.template
    if style.language != SOURCE_LANGUAGE:
        catalogue = catalogue_of(style.language)
        if message.other:
            template = catalogue.ngettext(template, message.other, _count(message))
        else:
            template = catalogue.gettext(template)
    elif message.other and _count(message) != 1:
        template = message.other
    return template.format_map({name: say_value(value, style) for name, value in message.params.items()})


def say_value(value: object, style: Style) -> str:
    """Say one parameter: Mm, Ratio, Percent, Message, number or text.

    Raises
    ------
    TypeError
        For any other kind of value.
    """
    if isinstance(value, str):
        return value
    if isinstance(value, Mm):
        return format_length(
            value.value,
            style.unit,
            style.graduation_mm,
            decimal_mark=style.decimal_mark,
            with_unit=True,
            plain=style.plain,
            sign=not value.about,
        )
    if isinstance(value, Message):
        return say(value, style)
    if isinstance(value, Ratio):
        return _number(value.value, value.digits, style)
    if isinstance(value, Percent):
        return say(msg("{figure}%", figure=_number(value.value * 100, 0, style)), style)
    if isinstance(value, int | float):
        return _number(value, _MOST_DECIMALS, style, pad=False)
    raise TypeError(f"a message cannot say {type(value).__name__}")


def say_error(error: ElevationError, style: Style) -> str:
    """Say an error as one sentence, in the reader's language wherever it carries its template."""
    return str(ElevationError(*(_said(part, style) for part in (error.what, error.where, error.wrong, error.right))))


def with_lengths_said(error: _E, style: Style, but: tuple[str, ...] = ()) -> _E:
    """The same error with its lengths said in ``style`` already, for who reads it without knowing the room.

    Parameters
    ----------
    error : ElevationError
    style : Style
    but : tuple of str
        Places of its templates that stay as they are.
    """
    parts = (error.what, error.where, error.wrong, error.right)
    return type(error)(*(_lengths_said(part, style, but) for part in parts))


def _lengths_said(part: str, style: Style, but: tuple[str, ...]) -> str:
    if not isinstance(part, Said):
        return part
    params = part.params.items()
    return Said(part.template, {name: value if name in but else _length_said(value, style, but) for name, value in params})


def _length_said(value: object, style: Style, but: tuple[str, ...]) -> object:
    if isinstance(value, Said):
        return _lengths_said(value, style, but)
    return say_value(_param(value), style) if isinstance(value, Amount) and value else value


def _said(part: str, style: Style) -> str:
    return say(_message(part), style) if isinstance(part, Said) else part


def _message(text: Said) -> Message:
    return Message(text.template, {name: _param(value) for name, value in text.params.items()})


def _param(value: object) -> object:
    if isinstance(value, Said):
        return _message(value)
    if isinstance(value, Amount):
        return Mm(float(value), about=True) if value else Message(ZERO)
    return value


def _count(message: Message) -> int:
    count = message.params["count"]
    if not isinstance(count, int):
        raise TypeError(f"a count must be a whole number, not {count!r}")
    return count


def _number(value: float, digits: int, style: Style, *, pad: bool = True) -> str:
    if not isfinite(value):
        raise ValueError(f"a message cannot say {value!r}")
    text = f"{value:.{digits}f}"
    if not pad:
        text = text.rstrip("0").rstrip(".")
    if text.strip("-0.") == "":
        text = text.lstrip("-")
    if text.startswith("-") and not style.plain:
        text = MINUS + text[1:]
    return text.replace(".", style.decimal_mark)
