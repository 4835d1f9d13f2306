"""The names that parts have in tables and prices: ``kind:row``, in plain letters."""

from __future__ import annotations

import re

from elevation.room.model import Fabric

_NOT_PLAIN = re.compile(r"[^0-9a-z]+")


def slug(text: str) -> str:
    """A person's own words as part of a name: lower case letters and figures with hyphens between."""
    folded = text.casefold().replace("ä", "ae").replace("ö", "oe").replace("ü", "ue").replace("ß", "ss")
    return _NOT_PLAIN.sub("-", folded).strip("-")


def cloth_part(fabric: Fabric) -> str:
    """The face cloth of a layer: by its own name, else by its row (or body) and colour."""
    own = slug(fabric.name)
    return f"cloth:{own}" if own else f"cloth:{fabric.row or fabric.body}-{fabric.colour[1:].lower()}"


def size(*lengths_mm: float) -> str:
    """Lengths in whole mm, for a name: ``1372x2134``."""
    return "x".join(f"{length:.0f}" for length in lengths_mm)
