"""Where the bundled type is: the one module that touches the font package.

Source Sans Pro, SIL Open Font License 1.1, three cuts. Every output uses the TrueType files, so that the advance
table, the screen, PDF and SVG agree.
"""

from __future__ import annotations

from importlib.util import find_spec
from pathlib import Path

from elevation.errors import Missing

FAMILY = "Source Sans Pro"
WEIGHTS = ("regular", "semibold", "italic")

_FILES = {
    "regular": "SourceSansPro-Regular.ttf",
    "semibold": "SourceSansPro-Semibold.ttf",
    "italic": "SourceSansPro-It.ttf",
}


def font_path(weight: str) -> Path:
    """The font file of a cut.

    Parameters
    ----------
    weight : str
        ``regular``, ``semibold`` or ``italic``.

    Returns
    -------
    Path
        A TrueType file.

    Raises
    ------
    Missing
        The font package is not installed.
    """
    # find_spec instead of an import: importing the package globs its folder, which costs start-up time.
    spec = find_spec("font_source_sans_pro")
    if spec is None or spec.origin is None:  # pragma: no cover - a broken installation
        raise Missing("font-source-sans-pro", wrong="is not installed", right="install the program again")
    path = Path(spec.origin).parent / "files" / _FILES[weight]
    if not path.is_file():  # pragma: no cover - a broken installation
        raise Missing(str(path), wrong="is not there", right="install font-source-sans-pro again")
    return path
