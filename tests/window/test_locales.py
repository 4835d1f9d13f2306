"""What a locale may break in Qt's Python binding."""

from __future__ import annotations

import ast
from pathlib import Path

import elevation.window

FOLDER = Path(elevation.window.__file__).parent


def test_no_property_that_begins_with_i_is_given_to_a_constructor() -> None:
    """In a Turkish locale the binding looks for "setİnterval" and finds nothing: an i is set by calling its setter."""
    found = [
        f"{path.name}:{call.lineno} {word.arg}"
        for path in sorted(FOLDER.glob("*.py"))
        for call in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id.startswith("Q")
        for word in call.keywords
        if word.arg is not None and word.arg.startswith("i")
    ]
    assert found == []
