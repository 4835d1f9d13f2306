"""What reaches a terminal: no sign that would steer it.

Names of files, walls and schemes come from strangers. A control character in one could colour, clear or retitle the
terminal, and a direction mark could turn the rest of the line round; all are written as their codes instead.
"""

from __future__ import annotations

import re
import sys

_STEERING = (
    "[\x00-\x09\x0b-\x1f\x7f-\x9f"  # control characters but the line feed, with the one-character CSI
    "\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069"  # direction marks, overrides and isolates
    "\u2028\u2029\ufeff\ufff9-\ufffb\ud800-\udfff]"  # other line ends, marks without a shape, halves of a character
)
"""A pattern as text: it is seldom needed, and only then made ready."""


def _code(found: re.Match[str]) -> str:
    number = ord(found[0])
    return f"\\x{number:02x}" if number < 0x100 else f"\\u{number:04x}"


def shown(text: str) -> str:
    """Text with everything that steers a terminal written as its code (backslash, x1b); line feeds stay."""
    return re.sub(_STEERING, _code, text)


def shown_json(text: str) -> str:
    """The same for JSON text, as escapes that JSON knows: what it decodes to stays as it was."""
    return re.sub(_STEERING, lambda found: f"\\u{ord(found[0]):04x}", text)


def encodable(text: str) -> str:
    """Text that UTF-8 can hold: bytes of a file's name that are no text become the replacement character."""
    return re.sub("[\ud800-\udfff]", "\N{REPLACEMENT CHARACTER}", text)


def say_sentence(text: str) -> None:
    """One sentence of the program on a line of standard error."""
    print(f"elevation: {shown(text)}", file=sys.stderr)
