"""Which ending a file gets: the one typed, else that of the kind chosen in the dialog."""

from __future__ import annotations

import re
from pathlib import Path

_ENDINGS = re.compile(r"\*(\.[\w.]+)")


def with_ending(typed: Path, proposed: str, filters: str, chosen: str) -> Path:
    """The file to write.

    Parameters
    ----------
    typed : Path
        What the dialog gave back.
    proposed : str
        The file name that it proposed.
    filters : str
        All kinds it offered, as Qt writes them: ``"PDF to print (*.pdf);;Picture (*.png)"``.
    chosen : str
        The kind that was chosen.

    Returns
    -------
    Path
        ``typed`` where it ends as one of the kinds and was typed by hand; with the chosen kind's ending where it has
        none, or where the name was left as proposed and another kind was chosen.
    """
    wanted = _ENDINGS.search(chosen) or _ENDINGS.search(filters)
    if wanted is None:
        return typed
    has = next((known for known in _ENDINGS.findall(filters) if typed.name.lower().endswith(known)), "")
    if not has and typed.suffix == Path(f"name{wanted[1]}").suffix:
        # "kitchen.json" for "*.room.json": short, but it says what it is.
        return typed
    if has and (typed.name != proposed or has == wanted[1]):
        return typed
    return typed.with_name(typed.name[: len(typed.name) - len(has)] + wanted[1])
