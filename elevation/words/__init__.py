"""Texts: templates, plurals, languages and number style."""

from elevation.words.languages import languages
from elevation.words.message import Message, Mm, Percent, Ratio, Style, msg, msg_plural, term
from elevation.words.say import say, say_error, say_value, with_lengths_said
from elevation.words.style import style_of

__all__ = [
    "Message",
    "Mm",
    "Percent",
    "Ratio",
    "Style",
    "languages",
    "msg",
    "msg_plural",
    "say",
    "say_error",
    "say_value",
    "style_of",
    "term",
    "with_lengths_said",
]
