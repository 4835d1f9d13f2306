"""A subset of the bundled type for one SVG file: only the characters it uses, nothing that moves them."""

from __future__ import annotations

import base64
import io
from functools import lru_cache

from elevation.sheet.type_files import FAMILY, font_path

_CSS_WEIGHT = {"regular": "400", "semibold": "600", "italic": "400"}
_CSS_STYLE = {"regular": "normal", "semibold": "normal", "italic": "italic"}


@lru_cache(maxsize=64)
def subset(weight: str, characters: str) -> bytes:
    """The TrueType font of a cut reduced to ``characters``.

    Kerning and ligatures go with the layout tables, so that a viewer sets the text as wide as it was measured.

    Parameters
    ----------
    weight : str
    characters : str
        Sorted characters, each once.

    Returns
    -------
    bytes
        The same for the same input: the time stamp inside the font is left alone, nothing is compressed.
    """
    # fontTools takes 0.2 s to import, and only an SVG file needs it.
    from fontTools import subset as subsetting
    from fontTools.ttLib import TTFont

    options = subsetting.Options()
    options.layout_features = []
    options.drop_tables += ["GPOS", "GSUB", "GDEF", "kern", "DSIG", "FFTM"]
    options.hinting = False
    options.notdef_outline = True
    options.recalc_timestamp = False
    options.name_IDs = [0, 1, 2, 13, 14]
    with TTFont(font_path(weight), recalcTimestamp=False, lazy=True) as font:
        subsetter = subsetting.Subsetter(options)
        subsetter.populate(text=characters)
        subsetter.subset(font)
        stream = io.BytesIO()
        font.save(stream, reorderTables=None)
    return stream.getvalue()


def font_faces(used: dict[str, set[str]]) -> str:
    """The ``@font-face`` rules for the characters used in each cut, fonts embedded."""
    rules = []
    for weight in sorted(used):
        characters = "".join(sorted(used[weight]))
        data = base64.b64encode(subset(weight, characters)).decode("ascii")
        rules.append(
            f"@font-face{{font-family:'{FAMILY}';font-weight:{_CSS_WEIGHT[weight]};font-style:{_CSS_STYLE[weight]};"
            f"src:url(data:font/ttf;base64,{data}) format('truetype')}}"
        )
    return "\n".join(rules)
