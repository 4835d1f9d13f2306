"""The room file: bytes to ``Room`` and back.

A length keeps the text it was written with, so saving never rewrites what somebody typed, and every file
that this program wrote is written again byte for byte.
"""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.decode import decode_room
from elevation.room.encode import encode_room
from elevation.room.keeping.atomic import write_atomically
from elevation.room.keeping.reading import read_bytes
from elevation.room.model import Room
from elevation.room.raw_json import MOST_BYTES, decode_text, parse_json, to_bytes
from elevation.room.validate import check_room
from elevation.room.versions import FORMAT, VERSION, to_newest
from elevation.words import style_of, with_lengths_said

ENDING = ".room.json"
"""How the names of room files end."""

_LIMITS = ("low", "high", "most")
"""What the file may hold at all is round in metric and said so; what is worked out of this room is said in its unit."""


def load_bytes(data: bytes, name: str) -> Room:
    """The room in the bytes of a room file.

    Parameters
    ----------
    data : bytes
    name : str
        What to call the file in sentences.

    Raises
    ------
    BadInput
        The bytes are no room, or a room that cannot be; one sentence with the path inside the file.
    """
    value = parse_json(decode_text(data, name), name)
    room = decode_room(to_newest(value, name), name)
    try:
        check_room(room, name)
    except BadInput as error:
        # Who prints the sentence has no room to take the unit from. The graduation may be what is wrong.
        style = style_of(room.unit, replace(room, graduation=None).graduation_mm, "en", plain=True)
        raise with_lengths_said(error, style, _LIMITS) from None
    return room


def load_room(path: Path | str) -> Room:
    """The room in a file.

    Raises
    ------
    BadInput
        The file cannot be read, is no room, or a room that cannot be.
    """
    return load_bytes(read_bytes(path, MOST_BYTES), str(path))


def dump_room(room: Room) -> bytes:
    """The bytes of the room's file: UTF-8, two-space indent, defaults left out, always the same for equal rooms."""
    return to_bytes({"format": FORMAT, "version": VERSION, **encode_room(room)})


def save_room(room: Room, path: Path | str) -> bytes:
    """Write the room to a file, wholly or not at all; a file that already says the same is left alone.

    Returns
    -------
    bytes
        What the file holds now.

    Raises
    ------
    BadInput
        The room could not be read back (an edit made it impossible); nothing is written.
    BadOutput
        The file cannot be written; what was there is still there.
    """
    data = dump_room(room)
    load_bytes(data, str(path))
    held = _held(path, room)
    if held is not None:
        return held
    write_atomically(path, data)
    return data


def _held(path: Path | str, room: Room) -> bytes | None:
    """The bytes of the file, if they say that very room in whatever form."""
    try:
        data = read_bytes(path, MOST_BYTES)
        return data if load_bytes(data, str(path)) == room else None
    except BadInput:
        return None
