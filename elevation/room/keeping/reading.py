"""Reading a file that a person named, with a sentence for everything that can go wrong."""

from __future__ import annotations

from pathlib import Path

from elevation.errors import BadInput, said
from elevation.room.keeping.reasons import reason_of


def read_bytes(path: Path | str, most: int) -> bytes:
    """The bytes of a plain file.

    Parameters
    ----------
    path : Path or str
    most : int
        Largest size in bytes that is read.

    Raises
    ------
    BadInput
        There is no such file, it is a folder or a device, it may not be read, or it is too large.
    """
    shown = str(path)
    try:
        file = Path(path)
        if file.is_dir():
            raise BadInput(shown, "", said("is a folder"), said("name a file in it"))
        # A pipe or a device would be read for ever.
        if file.exists() and not file.is_file():
            raise BadInput(shown, "", said("is not a plain file"), said("choose a room file"))
        with file.open("rb") as stream:
            data = stream.read(most + 1)
    except FileNotFoundError:
        raise BadInput(shown, "", said("does not exist"), said("check its name and folder")) from None
    except PermissionError:
        raise BadInput(shown, "", said("may not be read"), said("ask its owner for permission")) from None
    except (OSError, ValueError) as error:
        reason = reason_of(error)
        raise BadInput(
            shown, "", said("cannot be read ({reason})", reason=reason), said("check its name and folder")
        ) from None
    if len(data) > most:
        raise BadInput(
            shown, "", said("is larger than {most} MB", most=most // 2**20), said("no room file is; choose another file")
        )
    return data
