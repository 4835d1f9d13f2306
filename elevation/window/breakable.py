"""Names that are longer than a column is wide: Qt's labels break between words only, and would be cut."""

from __future__ import annotations

import re

_ZERO_WIDTH = "\N{ZERO WIDTH SPACE}"
_LONG = re.compile(r"(\w{14})(?=\w{3})")


def breakable(text: str) -> str:
    """``text`` with places inside its very long words where a label may go on in the next line."""
    if not any(len(word) > 22 for word in text.split()):
        return text
    return " ".join(_LONG.sub(rf"\1{_ZERO_WIDTH}", word) if len(word) > 22 else word for word in text.split(" "))
