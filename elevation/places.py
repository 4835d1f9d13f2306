"""Where the program's own files are, and where a person's are."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _packed_or_sibling(packed: str, sibling: str) -> Path:
    # A wheel packs the folder inside the package; an editable install leaves it beside it.
    inside = _PACKAGE / packed
    return inside if inside.is_dir() else _PACKAGE.parent / sibling


def resources() -> Path:
    """The folder of tables, catalogues, schemas and other resources."""
    return _packed_or_sibling("_resources", "resources")


def demo_rooms() -> Path:
    """The folder of demo rooms."""
    return _packed_or_sibling("_demo_rooms", "demo_rooms")
