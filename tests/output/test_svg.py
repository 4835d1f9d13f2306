"""SVG files read back with a kept XML parser and a kept font library."""

from __future__ import annotations

import base64
import io
import re
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from elevation.output.svg import number, to_svg
from elevation.room.style import style_for
from elevation.sheet.elevation import elevation_sheet
from elevation.sheet.paper import FOOT_INCH, ISO_5455
from elevation.sheet.records import Dimension, Fill, Gradient, Group, Line, Page, Path, Pen, Picture, Polyline, Stop, Text
from elevation.sheet.type_files import font_path
from elevation.sheet.type_metrics import text_width
from tests.sheet.sheet_cases import Case, demo_case, demo_cases, trade

NS = "{http://www.w3.org/2000/svg}"
PAGE = Page("a4", 297.0, 210.0)


def _picture(*records: object, frame: str = "wall", scale: float = 20.0, ref: tuple[str, ...] = ("w1",)) -> Picture:
    group = Group(ref, "wall", "Wall & <more>", records, frame)  # type: ignore[arg-type]
    return Picture((group,), scale, (30.0, 40.0), PAGE, "Title", "Description")


def _tree(picture: Picture) -> ElementTree.Element:
    return ElementTree.fromstring(to_svg(picture))


def _sheet(case: Case) -> Picture:
    room, set_out, findings = case
    return elevation_sheet(room, set_out, findings, trade(), style_for(room), date="2026-03-01")


def test_size_is_the_pages_in_millimetres() -> None:
    root = _tree(_picture())
    assert root.get("width") == "297mm"
    assert root.get("height") == "210mm"
    assert root.get("viewBox") == "0 0 297 210"


def test_wall_points_stand_to_scale_with_y_up() -> None:
    root = _tree(_picture(Line((0.0, 0.0), (1000.0, 500.0), Pen())))
    # Worked by hand: x 30 + 1000/20, y 210 - (40 + 500/20).
    path = root.find(f".//{NS}path")
    assert path is not None
    assert path.get("d") == "M30 170L80 145"


def test_paper_points_stand_where_they_say() -> None:
    root = _tree(_picture(Polyline(((0.0, 0.0), (297.0, 210.0)), Pen()), frame="paper"))
    line = root.find(f".//{NS}polyline")
    assert line is not None
    assert line.get("points") == "0,210 297,0"


def test_title_description_and_named_groups() -> None:
    root = _tree(_picture(Line((0.0, 0.0), (1.0, 1.0), Pen())))
    assert root.findtext(f"{NS}title") == "Title"
    assert root.findtext(f"{NS}desc") == "Description"
    group = root.find(f".//{NS}g[@id='wall.w1']")
    assert group is not None
    assert group.findtext(f"{NS}title") == "Wall & <more>"


def test_ids_are_unique_and_are_xml_names_whatever_the_refs_say() -> None:
    refs = (("w 1",), ("w<1>",), ("w1", "ö"), ("w1",), ("w1",))
    groups = tuple(Group(ref, "wall", "", ()) for ref in refs)
    root = _tree(Picture(groups, 1.0, page=PAGE))
    ids = [element.get("id") for element in root.iter(f"{NS}g") if element.get("id")]
    assert len(set(ids)) == len(refs)
    assert all(re.fullmatch(r"[A-Za-z_][A-Za-z0-9._-]*", name or "") for name in ids)


@given(st.text(max_size=40))
def test_any_text_survives_or_is_replaced_and_never_becomes_markup(text: str) -> None:
    root = _tree(_picture(Text((0.0, 0.0), "x" + text, 3.0)))
    found = root.find(f".//{NS}text")
    assert found is not None
    assert len(found) == 0
    allowed = re.sub("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]", "\ufffd", "x" + text)
    # XML reads line ends as line feeds.
    assert (found.text or "") == allowed.replace("\r\n", "\n").replace("\r", "\n")


def test_hostile_names_in_a_whole_sheet_stay_text() -> None:
    room, set_out, findings = demo_case("bedroom")
    from msgspec.structs import replace

    evil = replace(set_out, wall_name='</text><script>alert("1")</script>&\x00')
    root = ElementTree.fromstring(
        to_svg(elevation_sheet(replace(room, name="]]><!--"), evil, findings, trade(), style_for(room)))
    )
    assert root.find(f".//{NS}script") is None
    assert any("<script>" in (element.text or "") for element in root.iter(f"{NS}text"))


def test_the_same_picture_has_the_same_bytes() -> None:
    case = demo_case("bedroom")
    assert to_svg(_sheet(case)) == to_svg(_sheet(case))


def test_coordinates_have_at_most_three_decimals() -> None:
    data = to_svg(_sheet(demo_case("attic"))).decode()
    body = data[data.index("</defs>") :]
    body = re.sub(r">[^<]*<", "><", body)
    assert not re.search(r"\d\.\d{4,}", body)


@pytest.mark.parametrize(
    ("value", "text"), [(1.0, "1"), (0.12345, "0.123"), (-0.0001, "0"), (100.5, "100.5"), (-2.0, "-2")]
)
def test_numbers_are_short(value: float, text: str) -> None:
    assert number(value) == text


def _fonts(root: ElementTree.Element) -> dict[tuple[str, str], TTFont]:
    style = root.findtext(f".//{NS}style") or ""
    found = {}
    for weight, cut, data in re.findall(
        r"font-weight:(\d+);font-style:(\w+);src:url\(data:font/ttf;base64,([^)]+)\)", style
    ):
        found[weight, cut] = TTFont(io.BytesIO(base64.b64decode(data)))
    return found


def test_the_embedded_type_has_every_character_at_its_measured_width() -> None:
    # Reference: fontTools reads the embedded subset and the whole font file.
    root = _tree(_sheet(demo_case("living")))
    fonts = _fonts(root)
    checked = 0
    for element in root.iter(f"{NS}text"):
        key = (element.get("font-weight", "400"), element.get("font-style", "normal"))
        font = fonts[key]
        names, metrics = font.getBestCmap(), font["hmtx"]
        text, size = element.text or "", float(element.get("font-size", "0"))
        width = sum(metrics[names[ord(character)]][0] for character in text) / font["head"].unitsPerEm * size
        assert float(element.get("textLength", "0")) == pytest.approx(width, abs=6e-4)
        checked += 1
    assert checked > 40
    assert all("GPOS" not in font and "kern" not in font for font in fonts.values())
    whole = TTFont(font_path("regular"))
    assert len(fonts["400", "normal"].getGlyphOrder()) < len(whole.getGlyphOrder()) / 8


def test_turned_text_turns_the_right_way() -> None:
    root = _tree(_picture(Text((0.0, 0.0), "up", 3.0, turn=90.0)))
    text = root.find(f".//{NS}text")
    assert text is not None
    # Counter-clockwise on the sheet is a negative angle in SVG, whose y points down.
    assert text.get("transform") == "rotate(-90 30 170)"


def test_gradients_and_alpha() -> None:
    gradient = Gradient((0.0, 0.0), (0.0, 100.0), (Stop(0.0, "#ff0000"), Stop(1.0, "#00ff0080")))
    steps = (("M", 0.0, 0.0), ("L", 10.0, 0.0), ("C", 10.0, 5.0, 5.0, 10.0, 0.0, 10.0), ("Z",))
    root = _tree(_picture(Fill(steps, gradient), Fill(steps, "#11223344"), Path(steps, Pen("#445566", 0.5, (2.0, 1.0)))))
    stops = root.findall(f".//{NS}linearGradient/{NS}stop")
    assert [stop.get("stop-color") for stop in stops] == ["#ff0000", "#00ff00"]
    assert stops[1].get("stop-opacity") == "0.502"
    paths = root.findall(f".//{NS}path")
    assert paths[0].get("fill") == "url(#gradient-1)"
    assert paths[1].get("fill") == "#112233"
    assert paths[1].get("fill-opacity") == "0.267"
    assert paths[2].get("stroke-dasharray") == "2 1"


def _line_of_the_whole_width(root: ElementTree.Element, wall: str) -> float:
    """Length on paper of the wall's outermost horizontal dimension, between its strokes."""
    group = root.find(f".//{NS}g[@id='dimension.{wall}']")
    assert group is not None
    best = (0.0, 0.0)
    for path in group.iter(f"{NS}path"):
        x1, y1, x2, y2 = (float(part) for part in re.findall(r"-?[\d.]+", path.get("d", "")))
        if y1 == y2 and y1 > best[0]:
            best = (y1, abs(x2 - x1))
    # Dimension lines run past their strokes by 1.5 mm at each end.
    return best[1] - 3.0


@pytest.mark.parametrize("index", range(len(list(demo_cases()))))
def test_scale_read_back_from_the_drawing_is_a_standard_one(index: int) -> None:
    case = list(demo_cases())[index]
    room, set_out, _ = case
    root = _tree(_sheet(case))
    paper = _line_of_the_whole_width(root, set_out.wall)
    scale = set_out.width_mm / paper
    # ISO 5455 recommended scales; architects' foot-inch scales, 12 in over the inches that show a foot.
    standard = FOOT_INCH if room.unit == "in" else ISO_5455
    assert min(abs(scale / known - 1) for known in standard) < 2e-4
    said = [element.text or "" for element in root.iter(f"{NS}text")]
    nearest = min(standard, key=lambda known: abs(scale / known - 1))
    assert any(f"1:{nearest:g}" in text for text in said)


def test_line_widths_keep_the_ratio_of_iso_128() -> None:
    # ISO 128-2: line widths from the series 0.13 ... 2.0; wide to narrow 2:1.
    series = (0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0)
    root = _tree(_sheet(demo_case("bedroom")))
    # Fine lines inside cloth and furniture are shading, not drafting lines.
    drafting = [
        group for group in root.iter(f"{NS}g") if group.get("class") in ("sheet", "title", "wall", "dimension", "held")
    ]
    assert len(drafting) >= 5
    widths = {
        float(element.get("stroke-width", "0"))
        for group in drafting
        for element in group.iter()
        if element.get("stroke-width")
    }
    assert widths <= set(series)
    outline = root.find(f".//{NS}g[@id='wall.north']")
    dimensions = root.find(f".//{NS}g[@id='dimension.north']")
    assert outline is not None
    assert dimensions is not None
    wide = max(float(path.get("stroke-width", "0")) for path in outline.iter() if path.get("stroke-width"))
    narrow = min(float(path.get("stroke-width", "9")) for path in dimensions.iter(f"{NS}path") if path.get("stroke-width"))
    assert wide / narrow == 2.0


def test_a_picture_without_a_page_is_as_large_as_what_it_shows() -> None:
    picture = Picture((Group((), "wall", "", (Line((0.0, 0.0), (1000.0, 400.0), Pen()),)),), 10.0)
    root = _tree(picture)
    assert root.get("width") == "110mm"
    assert root.get("height") == "50mm"


def test_text_room_in_a_viewer_without_the_type_is_kept() -> None:
    root = _tree(_picture(Text((0.0, 0.0), "To AV 50³⁄₈", 3.8, weight="semibold")))
    text = root.find(f".//{NS}text")
    assert text is not None
    assert float(text.get("textLength", "0")) == pytest.approx(text_width("To AV 50³⁄₈", 3.8, "semibold"), abs=5e-4)


def test_a_picture_without_a_page_reaches_round_every_kind_of_record() -> None:
    def size(*records: object) -> tuple[str | None, str | None]:
        root = _tree(Picture((Group((), "wall", "", records),), 10.0))  # type: ignore[arg-type]
        return root.get("width"), root.get("height")

    steps = (("M", 0.0, 0.0), ("L", 1000.0, 0.0), ("L", 1000.0, 400.0), ("Z",))
    assert size(Polyline(((0.0, 0.0), (1000.0, 400.0)), Pen())) == ("110mm", "50mm")
    assert size(Path(steps, Pen())) == ("110mm", "50mm")
    assert size(Fill(steps, "#000000")) == ("110mm", "50mm")
    # Nothing at all is a sheet of 10 mm; a dimension reaches past its ends by its lines.
    assert size() == ("10mm", "10mm")
    measured = Dimension((), "", (0.0, 0.0), (1000.0, 0.0), "x", 200.0, "40 in", (500.0, 210.0), "between")
    wide, high = (float(length[:-2]) for length in size(measured) if length is not None)
    assert 110 < wide < 125
    assert high > 30
    # Text is kept in by its whole width to either side.
    word = Text((0.0, 0.0), "wide", 3.0)
    assert float(str(size(word)[0])[:-2]) == pytest.approx(2 * text_width("wide", 3.0) + 10, abs=0.01)
