"""The display list on a QPainter, measured in pixels."""

from __future__ import annotations

import pytest

pytest.importorskip("PySide6")

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF, QImage, QPainter

from elevation.output.dimension_lines import CLEAR, PAST, dimension_lines
from elevation.output.painters.fonts import SET_AT, drawing_font
from elevation.output.painters.replay import Placing, Replay, page_rect, placing_of, replay
from elevation.sheet.records import Dimension, Fill, Gradient, Group, Line, Page, Path, Pen, Picture, Polyline, Stop, Text

BLACK = "#000000"


def image(width: int = 200, height: int = 100) -> QImage:
    made = QImage(width, height, QImage.Format.Format_RGB32)
    made.fill(Qt.GlobalColor.white)
    return made


def painted(groups: list[Group], placing: Placing, made: QImage | None = None) -> QImage:
    made = made or image()
    painter = QPainter(made)
    Replay().paint(groups, painter, placing)
    painter.end()
    return made


def group(*records, frame="wall") -> Group:
    return Group((), "wall", "", records, frame)


def dark(made: QImage, x: int, y: int) -> bool:
    return made.pixelColor(x, y).lightness() < 128


def dark_box(made: QImage) -> tuple[int, int, int, int]:
    spots = [(x, y) for x in range(made.width()) for y in range(made.height()) if dark(made, x, y)]
    xs, ys = [x for x, _ in spots], [y for _, y in spots]
    return min(xs), min(ys), max(xs), max(ys)


# One wall mm is a tenth of a pixel, a paper mm four pixels; the wall's origin stands at (10, 90).
PLACING = Placing(4.0, 0.1, 10.0, 90.0, 0.0, 100.0)


def test_up_on_the_wall_is_up_in_the_picture(qapp):
    steps = (("M", 100, 200), ("L", 300, 200), ("L", 300, 600), ("L", 100, 600), ("Z",))
    made = painted([group(Fill(steps, BLACK))], PLACING)
    # By hand: x 10 + 100/10 .. 10 + 300/10, y 90 - 600/10 .. 90 - 200/10.
    assert dark_box(made) == (20, 30, 39, 69)


def test_paper_frame_starts_at_the_lower_left(qapp):
    steps = (("M", 5, 5), ("L", 10, 5), ("L", 10, 10), ("L", 5, 10), ("Z",))
    made = painted([group(Fill(steps, BLACK), frame="paper")], PLACING)
    assert dark_box(made) == (20, 60, 39, 79)


@pytest.mark.parametrize("px_per_wall_mm", [0.05, 0.1, 0.4])
def test_a_pen_keeps_its_width_on_paper_at_any_scale(qapp, px_per_wall_mm):
    placing = Placing(4.0, px_per_wall_mm, 10.0, 50.0)
    made = painted([group(Line((0, 0), (400 / px_per_wall_mm, 0), Pen(BLACK, 2.0)))], placing)
    column = [dark(made, 100, y) for y in range(100)]
    assert sum(column) == 8  # 2 paper mm at 4 px a mm


def test_caps_are_flat(qapp):
    made = painted([group(Line((100, 400), (300, 400), Pen(BLACK, 2.0)))], PLACING)
    assert dark_box(made)[0] == 20
    assert dark_box(made)[2] == 39


def test_dashes_are_paper_mm(qapp):
    made = painted([group(Line((0, 400), (1800, 400), Pen(BLACK, 1.0, (2.0, 2.0))))], PLACING)
    row = [dark(made, x, 50) for x in range(10, 42)]
    assert row == ([True] * 8 + [False] * 8) * 2  # 2 paper mm are 8 px


def test_text_stands_upright_and_is_as_high_as_its_type(qapp):
    # A capital E: its top bar is longer than nothing, its stem on the left; cap height 0.66 em
    # (Source Sans Pro, OS/2 sCapHeight 660 of 1000, from the font file itself).
    placing = Placing(4.0, 0.1, 0.0, 100.0)
    made = painted([group(Text((200, 200), "L", 15.0, BLACK))], placing)
    left, top, right, bottom = dark_box(made)
    assert bottom - top + 1 == pytest.approx(0.66 * 15 * 4, abs=1.5)
    assert bottom == pytest.approx(79, abs=1)
    assert dark(made, right - 1, bottom - 1)  # the foot of an L runs right, at the bottom
    assert not dark(made, right - 1, top + 1)
    assert left >= 20


@pytest.mark.parametrize(("align", "low", "high"), [("left", 100, 200), ("middle", 50, 150), ("right", 0, 100)])
def test_text_is_aligned_at_its_anchor(qapp, align, low, high):
    placing = Placing(4.0, 1.0, 0.0, 100.0)
    made = painted([group(Text((100, 50), "HHHH", 5.0, BLACK, align))], placing)
    left, _, right, _ = dark_box(made)
    assert low - 1 <= left
    assert right <= high + 1
    # An H stands clear of its advance by its side bearings, about 0.1 em.
    assert (left + right) / 2 == pytest.approx(
        {"left": 100 + (right - left) / 2, "middle": 100, "right": 100 - (right - left) / 2}[align], abs=4
    )


def test_turned_text_reads_from_the_right(qapp):
    placing = Placing(4.0, 1.0, 0.0, 100.0)
    made = painted([group(Text((100, 10), "LLLLL", 5.0, BLACK, "left", 90.0))], placing)
    left, top, right, bottom = dark_box(made)
    assert bottom - top > right - left
    assert right == pytest.approx(99, abs=1)  # baseline on the right


def test_the_figure_of_a_dimension_is_not_lost(qapp):
    plain = Dimension((), "", (0, 0), (1000, 0), "x", 300, "", (500, 320), "between")
    named = Dimension((), "", (0, 0), (1000, 0), "x", 300, "100", (500, 320), "between")
    assert painted([group(plain)], PLACING) != painted([group(named)], PLACING)


def test_a_dimension_is_lines_strokes_and_a_figure():
    dimension = Dimension((), "", (0, 100), (1000, 100), "x", 300, "1000", (500, 320), "between")
    records = dimension_lines(dimension, 10.0)
    lines = [record for record in records if isinstance(record, Line)]
    extensions = [line for line in lines if line.a[0] == line.b[0]]
    assert {line.a[0] for line in extensions} == {0, 1000}
    assert all(line.a[1] == 100 + CLEAR * 10 and line.b[1] == 300 + PAST * 10 for line in extensions)
    oblique = [line for line in lines if abs(line.b[0] - line.a[0]) == abs(line.b[1] - line.a[1])]
    assert len(oblique) == 2
    assert all((line.a[0] + line.b[0]) / 2 in (0, 1000) and (line.a[1] + line.b[1]) / 2 == 300 for line in oblique)
    # ISO 128-2: wide to narrow 2:1 between strokes and lines.
    assert {line.pen.width for line in oblique} == {2 * extensions[0].pen.width}
    assert records[-1] == Text((500, 320), "1000", 2.5, "text", "middle", 0.0)


def test_an_upright_dimension_is_the_flat_one_turned_a_quarter():
    flat = dimension_lines(Dimension((), "", (0, 100), (1000, 100), "x", 300, "", (500, 320), "between"), 10.0)
    upright = dimension_lines(Dimension((), "", (-100, 0), (-100, 1000), "y", -300, "", (-320, 500), "between"), 10.0)
    turned = {frozenset(((-y, x) for x, y in (line.a, line.b))) for line in flat if isinstance(line, Line)}
    assert {frozenset((line.a, line.b)) for line in upright if isinstance(line, Line)} == turned


def test_gradient_runs_along_its_axis(qapp):
    steps = (("M", 0, 0), ("L", 1800, 0), ("L", 1800, 800), ("L", 0, 800), ("Z",))
    paint = Gradient((0, 0), (0, 800), (Stop(0, BLACK), Stop(1, "#ffffff")))
    made = painted([group(Fill(steps, paint))], PLACING)
    assert made.pixelColor(100, 88).lightness() < 10  # low on the wall
    assert made.pixelColor(100, 12).lightness() > 240


def test_alpha_stands_last_in_a_colour(qapp):
    steps = (("M", 0, 0), ("L", 1800, 0), ("L", 1800, 800), ("L", 0, 800), ("Z",))
    made = painted([group(Fill(steps, "#ff000080"))], PLACING)
    red, green, blue, _ = made.pixelColor(100, 50).getRgb()
    assert red == 255
    assert green == blue == pytest.approx(127, abs=1)


def test_even_odd_leaves_a_hole(qapp):
    outer = (("M", 0, 0), ("L", 800, 0), ("L", 800, 800), ("L", 0, 800), ("Z",))
    inner = (("M", 200, 200), ("L", 600, 200), ("L", 600, 600), ("L", 200, 600), ("Z",))
    made = painted([group(Fill(outer + inner, BLACK))], PLACING)
    assert dark(made, 20, 80)
    assert not dark(made, 50, 50)


def test_curves_and_polylines_are_stroked(qapp):
    pen = Pen(BLACK, 1.0)
    arc = Path((("M", 100, 400), ("C", 100, 700, 700, 700, 700, 400)), pen)
    box = Polyline(((900, 100), (1500, 100), (1500, 700)), pen, closed=True)
    made = painted([group(arc, box)], PLACING)
    assert any(dark(made, 50, y) for y in range(25, 32))  # the crown of the arc: 400 + 3/4 of 300 up
    assert dark(made, 130, 49) or dark(made, 130, 50)  # the closing diagonal's middle


def test_only_a_new_group_is_compiled(qapp):
    first, second = group(Line((0, 0), (1, 1), Pen())), group(Text((0, 0), "a", 2.5))
    keeper = Replay()
    made = image()
    painter = QPainter(made)
    keeper.paint([first, second], painter, PLACING)
    assert keeper.compiled == 2
    keeper.paint([first, second], painter, Placing(4.0, 0.2, 0.0, 0.0))
    assert keeper.compiled == 2
    keeper.paint([first, group(Text((0, 0), "b", 2.5))], painter, PLACING)
    assert keeper.compiled == 3
    keeper.forget_all_but([first])
    keeper.paint([first], painter, PLACING)
    assert keeper.compiled == 3
    painter.end()


def test_painter_is_left_as_it_was(qapp):
    made = image()
    painter = QPainter(made)
    painter.translate(7, 9)
    before, pen = painter.transform(), painter.pen()
    Replay().paint([group(Text((0, 0), "a", 2.5), Line((0, 0), (9, 9), Pen()))], painter, PLACING)
    assert painter.transform() == before
    assert painter.pen() == pen
    painter.end()


def test_the_painters_own_transform_stays_the_base(qapp):
    def draw(shift: float, placing: Placing) -> QImage:
        made = image()
        painter = QPainter(made)
        painter.translate(shift, 0)
        records = (Text((100, 300), "Hem", 4.0, BLACK), Line((0, 0), (500, 500), Pen(BLACK)))
        Replay().paint([group(*records)], painter, placing)
        painter.end()
        return made

    assert draw(20, PLACING) == draw(0, Placing(4.0, 0.1, 30.0, 90.0))


def test_a_page_fills_the_painter(qapp):
    page = Page("a6", 148.0, 105.0)
    mark = group(Line((0, 0), (148, 105), Pen(BLACK)), frame="paper")
    picture = Picture((mark, group(Line((0, 0), (240, 0), Pen(BLACK, 1.0)))), 24.0, (20.0, 30.0), page)
    placing = placing_of(picture, 2.0)
    assert placing.mm_per_paper == pytest.approx(24.0)
    assert (placing.wall_x, placing.wall_y) == (40.0, 150.0)
    assert page_rect(picture, 2.0).width() == 296.0
    made = image(296, 210)
    painter = QPainter(made)
    replay(picture, painter, 2.0)
    painter.end()
    assert dark(made, 45, 150) or dark(made, 45, 149)  # 240 mm at 1:24 are 10 paper mm, 20 px from x 40


@pytest.mark.parametrize("weight", ["regular", "semibold", "italic"])
def test_advances_are_the_fonts_own(qapp, weight):
    fonts = pytest.importorskip("fontTools.ttLib")
    import font_source_sans_pro

    name = {"regular": "SourceSansPro", "semibold": "SourceSansProSemibold", "italic": "SourceSansProIt"}[weight]
    with fonts.TTFont(font_source_sans_pro.font_files_ttf[name]) as font:
        table, cmap, em = font["hmtx"], font.getBestCmap(), font["head"].unitsPerEm
        text = "AVATo 50 ³⁄₈ ffi"
        own = sum(table[cmap[ord(char)]][0] for char in text) / em
    measured = QFontMetricsF(drawing_font(weight)).horizontalAdvance(text) / SET_AT
    assert measured == pytest.approx(own, rel=3e-4)
