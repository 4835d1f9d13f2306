"""Reading a file that a person named, with a sentence for everything that can go wrong."""

from __future__ import annotations

from pathlib import Path

from elevation.errors import BadInput


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
            raise BadInput(shown, "", "is a folder", "name a file in it")
        # A pipe or a device would be read for ever.
        if file.exists() and not file.is_file():
            raise BadInput(shown, "", "is not a plain file", "choose a room file")
        with file.open("rb") as stream:
            data = stream.read(most + 1)
    except FileNotFoundError:
        raise BadInput(shown, "", "does not exist", "check its name and folder") from None
    except PermissionError:
        raise BadInput(shown, "", "may not be read", "ask its owner for permission") from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise BadInput(shown, "", f"cannot be read ({reason.lower()})", "check its name and folder") from None
    if len(data) > most:
        raise BadInput(shown, "", f"is larger than {most // 2**20} MB", "no room file is; choose another file")
    return data
