"""The room file's format and version, and the way from an old version to the newest."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from elevation.errors import BadInput, said
from elevation.room.nearest import quoted

FORMAT = "elevation-room"
VERSION = 1
"""The version that is written."""

Step = Callable[[dict[str, Any]], dict[str, Any]]
"""A pure function from the plain values of version v (without format and version) to those of v + 1."""

STEPS: Mapping[int, Step] = {}
"""The steps by the version they start from; version 1 is the first, so there is none yet."""


def to_newest(value: Any, name: str, steps: Mapping[int, Step] = STEPS, newest: int = VERSION) -> dict[str, Any]:
    """The plain values of the newest version, without format and version.

    Parameters
    ----------
    value : object
        What the file holds.
    name : str
        The file's name, for sentences.
    steps : mapping
        The steps by the version they start from.
    newest : int
        The version to arrive at.

    Raises
    ------
    BadInput
        Not a room file, or of a version that cannot be read.
    """
    if not isinstance(value, dict):
        raise BadInput(
            name,
            "",
            said("holds {value}, not a room", value=quoted(value)),
            said('a room file starts {{"format": "{format}", …}}', format=FORMAT),
        )
    if "format" not in value:
        raise BadInput(
            name,
            "",
            said('has no "format", so it is not a room file'),
            said('a room file says "format": "{format}"', format=FORMAT),
        )
    if value["format"] != FORMAT:
        raise BadInput(
            name,
            "format",
            said("is {value}, not a room file", value=quoted(value["format"])),
            said('it should be "{format}"', format=FORMAT),
        )
    version = value.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise BadInput(
            name,
            "version",
            said("is {version}, not a version", version=quoted(version)),
            said("it should be {newest}", newest=newest),
        )
    if version > newest:
        raise BadInput(
            name,
            "version",
            said("is {version}, but this program reads up to {newest}", version=quoted(version), newest=newest),
            said("open it with a newer Elevation"),
        )
    plain = {key: inner for key, inner in value.items() if key not in ("format", "version")}
    for step in range(version, newest):
        plain = steps[step](plain)
    return plain
