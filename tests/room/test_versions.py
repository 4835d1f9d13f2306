"""Old files are read through pure steps from version to version; a sample of each version is kept here."""

from __future__ import annotations

import copy
import re
from pathlib import Path
from typing import Any

import pytest

from elevation.errors import BadInput
from elevation.room.file import dump_room, load_room
from elevation.room.versions import FORMAT, STEPS, VERSION, to_newest

SAMPLES = Path(__file__).parent / "samples"


def test_there_is_a_step_from_every_old_version() -> None:
    assert sorted(STEPS) == list(range(1, VERSION))


@pytest.mark.parametrize("version", range(1, VERSION + 1))
def test_the_sample_of_each_version_is_read(version: int) -> None:
    path = SAMPLES / f"version_{version}.room.json"
    room = load_room(path)
    assert room.name == f"Sample of version {version}"
    assert len(room.walls) == 2
    if version == VERSION:
        assert dump_room(room) == path.read_bytes()


def test_the_newest_sample_uses_every_key_of_the_file() -> None:
    from elevation.room import model

    text = (SAMPLES / f"version_{VERSION}.room.json").read_text(encoding="utf-8")
    used = set(re.findall(r'"(\w+)":', text))
    known = {
        field
        for kind in vars(model).values()
        if isinstance(kind, type) and hasattr(kind, "__struct_fields__") and kind.__module__.startswith("elevation.room.")
        for field in kind.__struct_fields__
    }
    # It stands at its default: inches.
    assert known - used == {"unit"}


def test_steps_are_taken_in_order_and_change_nothing_in_place() -> None:
    def first(value: dict[str, Any]) -> dict[str, Any]:
        return {**value, "trace": [*value.get("trace", []), 1]}

    def second(value: dict[str, Any]) -> dict[str, Any]:
        return {**value, "trace": [*value.get("trace", []), 2]}

    old = {"format": FORMAT, "version": 1, "name": "x"}
    kept = copy.deepcopy(old)
    assert to_newest(old, "f", {1: first, 2: second}, 3) == {"name": "x", "trace": [1, 2]}
    assert old == kept
    assert to_newest({**old, "version": 2}, "f", {1: first, 2: second}, 3) == {"name": "x", "trace": [2]}
    assert to_newest({**old, "version": 3}, "f", {1: first, 2: second}, 3) == {"name": "x"}
    with pytest.raises(BadInput, match="reads up to 3"):
        to_newest({**old, "version": 4}, "f", {1: first, 2: second}, 3)
