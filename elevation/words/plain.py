"""Which signs may stand in a text that is kept and drawn."""

from __future__ import annotations


def is_plain(text: str) -> bool:
    """Whether every sign of ``text`` may stand in a file and in a drawing: no control, no half of a pair."""
    if text.isprintable():
        # None of what is refused is printable; nearly every text is, and that is found out at once.
        return True
    # XML 1.0, section 2.2, leaves out the same; a tab or a line end has no place in a name.
    return not any(
        sign < " " or "\x7f" <= sign <= "\x9f" or "\ud800" <= sign <= "\udfff" or ord(sign) & 0xFFFE == 0xFFFE
        for sign in text
    )
