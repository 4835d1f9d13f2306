"""One drawing three times: our PNG, our PDF drawn by poppler, our SVG drawn by librsvg.

Measured at 300 dpi, any channel more than 16 of 255 apart (``tests/cross/rasters.py``), in two ways:

- *displaced*: pixels that an edge one pixel (0.085 mm) to the side does not explain. This is what a person would see.
- *plain*: every pixel, edges included. That is the smoothing of edges, which each program does in its own way; it grows
  with the amount of small type on the sheet. pdftoppm is left out of it: it moves thin lines, rectangles and
  glyphs to whole pixels, and so differs by 1.5 to 3 % from pdftocairo on the very same PDF.
"""

from __future__ import annotations

import pytest

from elevation import places
from elevation.commands.draw import picture_of
from elevation.output.painters.pdf import to_pdf
from elevation.output.painters.png import to_png
from elevation.output.svg import to_svg
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from tests.cross.rasters import (
    missing_programs,
    of_pdf,
    of_svg,
    opened,
    private_fonts,
    share_different,
    share_displaced,
)

pytestmark = pytest.mark.skipif(bool(missing_programs()), reason=f"not on this machine: {missing_programs()}")

DPI = 300
AT_MOST = 0.005
STRICT = 0.0005
EDGES = 0.01

_WALLS = [(demo, wall.id) for demo in sorted(places.demo_rooms().glob("*.room.json")) for wall in load_room(demo).walls]


def _marks(demo):
    # One wall in the everyday run; all of them where slow tests run.
    return [] if "kitchen" in demo.name else [pytest.mark.slow]


_CASES = [pytest.param(demo, wall, id=f"{demo.name[:-10]}-{wall}", marks=_marks(demo)) for demo, wall in _WALLS]


@pytest.mark.parametrize(("demo", "wall_id"), _CASES)
def test_png_svg_and_pdf_show_the_same_picture(demo, wall_id, tmp_path, qapp):
    room = load_room(demo)
    wall = next(wall for wall in room.walls if wall.id == wall_id)
    picture = picture_of(room, wall, wall.schemes[0] if wall.schemes else None, load_trade())
    svg, pdf = tmp_path / "one.svg", tmp_path / "one.pdf"
    svg.write_bytes(to_svg(picture))
    pdf.write_bytes(to_pdf([picture]))
    ours = opened(to_png(picture, DPI))
    drawn_svg = of_svg(svg, DPI, private_fonts(tmp_path))
    drawn_pdf = of_pdf(pdf, DPI)
    cairo_pdf = of_pdf(pdf, DPI, "pdftocairo")
    displaced = {
        "PNG and SVG": share_displaced(ours, drawn_svg),
        "PNG and PDF": share_displaced(ours, cairo_pdf),
        "PNG and PDF by pdftoppm": share_displaced(ours, drawn_pdf),
        "SVG and PDF by pdftoppm": share_displaced(drawn_svg, drawn_pdf),
    }
    plain = {"PNG and SVG": share_different(ours, drawn_svg), "PNG and PDF": share_different(ours, cairo_pdf)}
    for kind, shares in (("displaced", displaced), ("plain", plain)):
        print(demo.name, wall_id, kind, {name: f"{share:.3%}" for name, share in shares.items()})
    assert max(displaced.values()) < AT_MOST
    assert max(displaced["PNG and SVG"], displaced["PNG and PDF"]) < STRICT
    assert max(plain.values()) < EDGES
