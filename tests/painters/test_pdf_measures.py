"""Lengths, scales, line widths and sheets, read back from real PDF pages with pypdf."""

import io

import pypdf
import pytest

from elevation import places
from elevation.commands.draw import picture_of
from elevation.output.painters.pdf import to_pdf
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from tests.cross.scales import FOOT_INCH, ISO_5455, printed_ratio
from tests.cross.vectors import MM_PER_POINT, overall, pdf_strokes

DEMOS = sorted(places.demo_rooms().glob("*.room.json"))


def pages(room, **wanted):
    trade = load_trade()
    pictures = [picture_of(room, wall, wall.schemes[0] if wall.schemes else None, trade, **wanted) for wall in room.walls]
    return to_pdf(pictures)


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.name[:-10])
def test_walls_are_true_to_a_tenth_of_a_millimetre_on_the_page_and_lines_two_to_one(demo, qapp):
    room = load_room(demo)
    data = pages(room)
    reader = pypdf.PdfReader(io.BytesIO(data))
    assert len(reader.pages) == len(room.walls)
    for number, wall in enumerate(room.walls):
        ratio = printed_ratio(reader.pages[number].extract_text())
        assert ratio in (FOOT_INCH if room.unit == "in" else ISO_5455)
        length, wide, line = overall(pdf_strokes(data, number))
        assert length == pytest.approx(wall.width.mm / ratio, abs=0.1)
        # ISO 128-2:2020, 5.1; Qt writes widths with about eight figures.
        assert wide / line.width == pytest.approx(2, abs=1e-3)
        assert wide == pytest.approx(0.5, abs=1e-3)


@pytest.mark.parametrize(
    ("paper", "width", "height"),
    # ISO 216:2007 A4 and A3; ASME Y14.1 sizes A (8.5 x 11 in) and B (11 x 17 in), mm; on their long side.
    [("a4", 297, 210), ("a3", 420, 297), ("letter", 279.4, 215.9), ("tabloid", 431.8, 279.4)],
)
def test_pages_have_their_published_sizes(paper, width, height, qapp):
    page = pypdf.PdfReader(io.BytesIO(pages(load_room(DEMOS[0]), paper=paper))).pages[0]
    box = page.mediabox
    # Qt's writer rounds a page to whole points: half a point, 0.177 mm, at most.
    assert float(box.width) * MM_PER_POINT == pytest.approx(width, abs=0.177)
    assert float(box.height) * MM_PER_POINT == pytest.approx(height, abs=0.177)
    assert page.rotation == 0


@pytest.mark.parametrize(("scale", "ratio"), [("1:20", 20), ("1/2 in = 1 ft", 24), ("1:50", 50)])
def test_a_scale_that_was_asked_for_is_the_pages_scale(scale, ratio, qapp):
    room = load_room(DEMOS[0])
    data = pages(room, paper="a3", scale=scale)
    length, _, _ = overall(pdf_strokes(data))
    assert length == pytest.approx(room.walls[0].width.mm / ratio, abs=0.1)


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.name[:-10])
def test_the_page_is_vector_and_its_text_can_be_selected(demo, qapp):
    room = load_room(demo)
    reader = pypdf.PdfReader(io.BytesIO(pages(room)))
    for page, wall in zip(reader.pages, room.walls, strict=True):
        assert list(page.images) == []
        text = page.extract_text().replace("\n", " ")
        assert room.name in text
        assert wall.name in text, "with the spaces that were written"
        assert "\t" not in text
        # The three cuts, embedded (PDF 32000-1, 9.9: a TrueType program is /FontFile2).
        fonts = [font.get_object() for font in page["/Resources"]["/Font"].values()]
        assert fonts
        for font in fonts:
            inner = font["/DescendantFonts"][0].get_object() if "/DescendantFonts" in font else font
            assert "/FontFile2" in inner["/FontDescriptor"].get_object()
            assert "/ToUnicode" in font
