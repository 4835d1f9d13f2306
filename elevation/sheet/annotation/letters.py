"""Key letters: a letter for a figure that found no room on the drawing; equal figures share one."""

from __future__ import annotations

from elevation.sheet.type_metrics import text_width

# Without I, O and Q, which read as figures, and without the wide M and W.
ALPHABET = "ABCDEFGHJKLNPRSTUVXYZ"
WEIGHT = "regular"


def letter(index: int) -> str:
    """The key letter of that place: A, B ... Z, AA, AB ..."""
    text = ""
    index += 1
    while index > 0:
        index, rest = divmod(index - 1, len(ALPHABET))
        text = ALPHABET[rest] + text
    return text


def letter_room(count: int, height: float) -> float:
    """Width to reserve for any of the first ``count`` letters, mm, so that a place does not depend on which it gets."""
    one = max(text_width(character, height, WEIGHT) for character in ALPHABET)
    digits, reach = 1, len(ALPHABET)
    while reach < count:
        digits += 1
        reach += len(ALPHABET) ** digits
    return one * digits
