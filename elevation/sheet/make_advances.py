"""Script: read the bundled fonts and write the advance table that the sheets measure text with.

Run ``python -m elevation.sheet.make_advances`` after the font package changed; commit the table.
"""

from __future__ import annotations

import json

from fontTools.ttLib import TTFont

from elevation.places import resources
from elevation.sheet.type_files import FAMILY, WEIGHTS, font_path


def table_text() -> str:
    """The advance table as JSON text: per cut, every character of the font with its advance in thousandths of an em."""
    weights = {}
    for weight in WEIGHTS:
        font = TTFont(font_path(weight), lazy=True)
        per_em = font["head"].unitsPerEm
        metrics = font["hmtx"]
        weights[weight] = {
            chr(code): round(metrics[glyph][0] * 1000 / per_em, 3) for code, glyph in sorted(font.getBestCmap().items())
        }
        font.close()
    cuts = ",\n".join(
        f'  "{weight}": ' + json.dumps(advances, ensure_ascii=True, separators=(",", ":"))
        for weight, advances in weights.items()
    )
    return f'{{\n "family": "{FAMILY}",\n "weights": {{\n{cuts}\n }}\n}}\n'


def main() -> None:
    """Write the table."""
    path = resources() / "type" / "advances.json"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(table_text(), encoding="utf-8")


if __name__ == "__main__":
    main()
