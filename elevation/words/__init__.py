"""Texts: templates, plurals, languages and number style."""

from elevation.words.message import Message, Mm, Percent, Ratio, Style, msg

__all__ = ["Message", "Mm", "Percent", "Ratio", "Style", "msg"]
