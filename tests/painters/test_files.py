"""PNG and PDF read back with other programs' eyes (pypdf, Pillow)."""

import io

import pypdf
import pytest
from PIL import Image

from elevation import places
from elevation.commands.draw import picture_of
from elevation.commands.main import main
from elevation.output.painters.pdf import to_pdf
from elevation.output.painters.png import to_png
from elevation.room.file import load_room
from elevation.sheet.records import Group, Line, Page, Pen, Picture, Text
from elevation.trade.tables import load_trade

DEMOS = sorted(places.demo_rooms().glob("*.room.json"))


@pytest.fixture
def ruler(qapp):
    """A page with one line of 100 mm from (50, 50), and a word."""
    records = (Line((50, 50), (150, 50), Pen("#000000", 0.5)), Text((50, 60), "fifty", 5.0))
    return Picture((Group((), "sheet", "ruler", records, "paper"),), 1.0, page=Page("A4", 297.0, 210.0), title="Ruler")


def test_a_known_length_is_true_in_the_pdf_to_a_tenth_of_a_millimetre(ruler):
    page = pypdf.PdfReader(io.BytesIO(to_pdf([ruler]))).pages[0]
    ends = []

    def visit(operator, operands, cm, _tm):
        if operator in (b"m", b"l"):
            x, y = (float(value) for value in operands)
            a, b, c, d, e, f = cm
            ends.append((a * x + c * y + e, b * x + d * y + f))

    page.extract_text(visitor_operand_before=visit)
    points_per_mm = 72 / 25.4
    horizontal = sorted({round(x / points_per_mm, 3) for x, y in ends if abs(y / points_per_mm - 50) < 0.4})
    assert horizontal[0] == pytest.approx(50, abs=0.1)
    assert horizontal[-1] - horizontal[0] == pytest.approx(100, abs=0.1)


def test_the_pdf_page_has_the_sheets_size_and_its_text_can_be_selected(ruler):
    page = pypdf.PdfReader(io.BytesIO(to_pdf([ruler]))).pages[0]
    # Qt rounds a page to whole points (1/72 in): 0.18 mm at most.
    assert float(page.mediabox.width) * 25.4 / 72 == pytest.approx(297, abs=0.18)
    assert float(page.mediabox.height) * 25.4 / 72 == pytest.approx(210, abs=0.18)
    assert "fifty" in page.extract_text()


@pytest.mark.parametrize("dpi", [72, 150, 300])
def test_the_png_says_its_true_resolution(ruler, dpi):
    image = Image.open(io.BytesIO(to_png(ruler, dpi)))
    assert image.size == (round(297 / 25.4 * dpi), round(210 / 25.4 * dpi))
    assert image.info["dpi"] == pytest.approx((dpi, dpi), abs=0.1)


def test_a_pdf_has_a_page_a_wall(tmp_path, qapp):
    trade = load_trade()
    for demo in DEMOS:
        room = load_room(demo)
        out = tmp_path / "x.pdf"
        assert main(["draw", str(demo), "--out", str(out)]) == 0
        pages = pypdf.PdfReader(out).pages
        assert len(pages) == len(room.walls)
        picture = picture_of(room, room.walls[0], room.walls[0].schemes[0] if room.walls[0].schemes else None, trade)
        assert picture.title
