"""A length as it was typed, with its exact size in millimetres."""

from __future__ import annotations

from msgspec import Struct


class Length(Struct, frozen=True, gc=False):
    """A length that remembers how it was written.

    Attributes
    ----------
    mm : float
        The size in millimetres, from the exact rational that the text says.
    text : str
        The text as typed, with its unit ("50 3/8 in", "1280 mm"); files hold this text.
    """

    mm: float
    text: str
