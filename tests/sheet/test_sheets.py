"""The composed elevation sheet: scale, paper, title block, findings, stop band."""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation.commands.draw import picture_of
from elevation.errors import BadInput
from elevation.findings.model import Finding, Weight
from elevation.room.style import style_for
from elevation.sheet.annotation import RUNGS
from elevation.sheet.dates import sheet_date
from elevation.sheet.elevation import arranged_sheet, elevation_sheet, screen_picture
from elevation.sheet.furniture import TITLE_HEIGHT, Title, frame, inside, notes, scale_bar, title_block
from elevation.sheet.paper import A3, A4, FOOT_INCH, ISO_5455, LETTER, TABLOID
from elevation.sheet.records import LAYERS, Fill, Group, Line, Page, Picture, Polyline, Text
from elevation.sheet.type_metrics import text_width
from elevation.words import Style, msg
from tests.sheet.sheet_cases import Case, case_of, demo_case, demo_cases, trade
from tests.strategies import random_walls


def _sheet(case: Case, **given: object) -> Picture:
    room, set_out, findings = case
    return elevation_sheet(room, set_out, findings, trade(), style_for(room), date="2026-03-01", **given)  # type: ignore[arg-type]


def _texts(picture: Picture) -> list[str]:
    return [record.text for group in picture.groups for record in group.records if isinstance(record, Text)]


def _said(picture: Picture) -> str:
    return " ".join(_texts(picture))


def test_inch_rooms_have_foot_inch_scales_and_their_sheets_metric_ones_iso() -> None:
    for case in demo_cases():
        picture = _sheet(case)
        if case[0].unit == "in":
            assert picture.scale in FOOT_INCH
            assert picture.page in (LETTER, TABLOID)
        else:
            assert picture.scale in ISO_5455
            assert picture.page in (A4, A3)


def test_the_largest_scale_that_fits_is_taken() -> None:
    for case in demo_cases():
        room, set_out, findings = case
        arranged = arranged_sheet(room, set_out, findings, trade(), style_for(room))
        scales = FOOT_INCH if room.unit == "in" else ISO_5455
        larger = [scale for scale in scales if scale < arranged.scale]
        if larger:
            with pytest.raises(BadInput, match="does not fit"):
                arranged_sheet(room, set_out, findings, trade(), style_for(room), arranged.page, max(larger))


def test_the_larger_sheet_is_proposed_only_where_the_smaller_would_force_less_than_1_to_24() -> None:
    for case in demo_cases():
        room, set_out, findings = case
        small = LETTER if room.unit == "in" else A4
        on_small = arranged_sheet(room, set_out, findings, trade(), style_for(room), small)
        chosen = arranged_sheet(room, set_out, findings, trade(), style_for(room))
        if on_small.scale <= 24.0:
            assert chosen.page is small
        else:
            assert chosen.scale <= on_small.scale


def test_a_scale_that_was_asked_for_is_kept_or_refused() -> None:
    case = demo_case("bedroom")
    assert _sheet(case, scale=30.0).scale == 30.0
    with pytest.raises(BadInput, match="1:2 does not fit on letter or tabloid; choose a smaller scale"):
        _sheet(case, scale=2.0)


def test_title_block_names_room_wall_scheme_scale_date_and_sheet() -> None:
    case = demo_case("living")
    texts = _texts(_sheet(case))
    room, set_out, _ = case
    for text in (room.name, set_out.wall_name, "2026-03-01", "1 / 4"):
        assert text in texts
    assert any(text.endswith("= 1 ft (1:24)") for text in texts)
    assert any(set_out.scheme_name in text for text in texts)


def test_sheet_says_its_unit_and_warns_where_drilling_is_shown() -> None:
    case = demo_case("bedroom")
    said = _said(_sheet(case))
    assert "dimensions in inches" in said
    assert "before drilling" in said
    bare = (case[0], replace(case[1], treatments=()), ())
    assert "before drilling" not in _said(_sheet(bare))


def _place(record: Text) -> tuple[tuple[float, float], str, float]:
    return record.at, record.text, record.height


def test_notes_that_need_it_take_a_second_line_and_keep_apart() -> None:
    texts = [
        "dimensions in inches",
        "probe for wiring and pipes before drilling",
        "a third one that is long enough to be led over",
    ]
    for width in (60.0, 90.0, 120.0, 400.0):
        records = [record for record in notes(texts, "held", 10.0, 5.0, width) if isinstance(record, Text)]
        spans = sorted(
            (record.at[1], record.at[0], record.at[0] + text_width(record.text, record.height)) for record in records
        )
        assert all(end <= 10.0 + width + 1e-6 for _, _, end in spans)
        assert all(a[2] < b[1] for a, b in pairwise(spans) if a[0] == b[0])
    assert len({record.at[1] for record in notes(texts, "held", 10.0, 5.0, 400.0) if isinstance(record, Text)}) == 1


def test_a_caution_stands_whole_with_its_finding_and_only_once() -> None:
    room, set_out, _ = demo_case("hall")
    subject = set_out.treatments[0].ref
    words = (
        "Switch the current off and find every cable and every pipe with a detector, long before you drill the first hole."
    )
    findings = tuple(
        Finding(
            "over-box", Weight.CONSIDER, subject, msg("One."), msg("common practice"), at=(x, 900.0), caution=msg(words)
        )
        for x in (900.0, 1900.0)
    )
    for paper in (A4, LETTER):
        texts = _texts(_sheet((room, set_out, findings), paper=paper))
        assert " ".join(texts).count(words) == 1
        first = next(index for index, text in enumerate(texts) if text.startswith("Switch the current off"))
        assert texts[first - 1] == "common practice"


def test_every_finding_is_told_with_its_word_and_its_authority() -> None:
    room, set_out, _ = demo_case("bedroom")
    subject = set_out.treatments[0].ref
    findings = tuple(
        Finding(
            "meets", weight, subject, msg("Something is {weight}.", weight=str(weight)), msg("IRC R310"), at=(900.0, 900.0)
        )
        for weight in Weight
    )
    said = _said(_sheet((room, set_out, findings)))
    for text in (
        "Stop: Something is stop.",
        "Broken: Something is broken.",
        "Consider: Something is consider.",
        "IRC R310",
    ):
        assert text in said


def _bands(picture: Picture) -> list[Text]:
    return [
        record
        for group in picture.groups
        for record in group.records
        if isinstance(record, Text) and record.text.startswith("Stop: do not build")
    ]


@pytest.mark.parametrize(("weight", "count"), [(Weight.STOP, 1), (Weight.BROKEN, 0), (Weight.CONSIDER, 0)])
def test_a_stop_prints_a_band_across_the_sheet_and_nothing_less_does(weight: Weight, count: int) -> None:
    room, set_out, _ = demo_case("bedroom")
    laid = set_out.treatments[0]
    finding = Finding("meets", weight, (*laid.ref, laid.layers[0].ref[-1]), msg("It meets."), msg("geometry"))
    bands = _bands(_sheet((room, set_out, (finding,))))
    assert len(bands) == count
    if bands:
        assert laid.name in bands[0].text


def test_a_stop_that_concerns_no_treatment_here_prints_no_band() -> None:
    room, set_out, _ = demo_case("bedroom")
    finding = Finding("meets", Weight.STOP, ("other", "s", "t"), msg("It meets."), msg("geometry"))
    assert _bands(_sheet((room, set_out, (finding,)))) == []


def test_findings_that_find_no_room_are_counted() -> None:
    room, set_out, _ = demo_case("bedroom")
    text = msg(
        "A long sentence about something that is wrong with this window and takes three lines of the margin at least."
    )
    findings = tuple(Finding("meets", Weight.BROKEN, ("w",), text, msg("geometry"), at=(900.0, 900.0)) for _ in range(40))
    picture = _sheet((room, set_out, findings))
    more = next(text for text in _texts(picture) if text.startswith("… and"))
    told = sum(text.startswith("Broken:") for text in _texts(picture))
    assert more == f"… and {40 - told} more"
    marks = [group for group in picture.groups if group.layer == "finding"]
    assert sum(isinstance(record, Text) for group in marks for record in group.records) == told


def test_who_says_so_stands_with_the_first_of_a_row_of_alike_findings() -> None:
    room, set_out, _ = demo_case("bedroom")
    said = [("meets", "IRC R310"), ("meets", "IRC R310"), ("rod-low", "common practice"), ("meets", "IRC R310")]
    findings = tuple(
        Finding(rule, Weight.BROKEN, ("w",), msg("Finding {number}.", number=number), msg(authority), at=(900.0, 900.0))
        for number, (rule, authority) in enumerate(said)
    )
    texts = [text for text in _texts(_sheet((room, set_out, findings))) if text in {"IRC R310", "common practice"}]
    assert texts == ["IRC R310", "common practice", "IRC R310"]


def test_what_is_not_known_is_told_and_counted_where_there_is_no_room_to_tell_it() -> None:
    room, set_out, findings = demo_case("hall")
    assert "Not known yet What the brackets are fixed with" in _said(_sheet((room, set_out, findings)))
    text = msg("A long sentence about something that is wrong with this wall and takes three lines of the margin at least.")
    crowd = tuple(Finding("meets", Weight.BROKEN, ("w",), text, msg("geometry"), at=(900.0, 900.0)) for _ in range(60))
    picture = _sheet((room, set_out, crowd))
    assert any(text.startswith("… and") for text in _texts(picture))
    assert "1 not known yet" in _texts(picture)
    assert "not known yet" not in _said(_sheet(demo_case("rented"))).lower()


def test_all_text_of_random_sheets_stays_inside_the_frame() -> None:
    for room, wall in random_walls(60, 7000):
        case = case_of(room, wall, wall.schemes[0].id if wall.schemes else None)
        picture = _sheet(case)
        assert picture.page is not None
        place = inside(picture.page)
        for group in picture.groups:
            if group.frame != "paper":
                continue
            for record in group.records:
                if isinstance(record, Text):
                    width = text_width(record.text, record.height, record.weight)
                    left = record.at[0] - {"left": 0.0, "middle": width / 2, "right": width}[record.align]
                    assert place.left <= left, record.text
                    assert left + width <= place.right, record.text
                    assert place.bottom <= record.at[1] <= place.top, record.text


def test_blocks_of_the_margin_do_not_run_into_the_title_block() -> None:
    for case in demo_cases():
        room, set_out, findings = case
        arranged = arranged_sheet(room, set_out, findings, trade(), style_for(room))
        for item in arranged.placed:
            column = next(column for column in arranged.layout.columns if abs(column.left - item.left) < 1e-6)
            assert item.top - item.block.height >= column.top - column.height - 1e-6


@pytest.mark.parametrize(
    ("unit", "scale"), [("in", 24.0), ("in", 16.0), ("in", 96.0), ("in", 4.0), ("mm", 20.0), ("mm", 50.0), ("mm", 2.0)]
)
def test_scale_bar_is_as_long_as_it_says(unit: str, scale: float) -> None:
    records, _ = scale_bar(scale, 0.0, 0.0, Style(unit))
    outline = next(record for record in records if isinstance(record, Polyline))
    long = max(x for x, _ in outline.points)
    text = next(record.text for record in records if isinstance(record, Text) and record.text != "0")
    number, name = text.split(" ")
    # NIST: 1 ft is 304.8 mm, 1 in is 25.4 mm, exactly.
    assert long * scale == pytest.approx(float(number) * {"ft": 304.8, "in": 25.4, "m": 1000.0, "mm": 1.0}[name])
    assert 8.0 < long <= 62.0
    assert sum(isinstance(record, Fill) for record in records) >= 1


@pytest.mark.parametrize(
    ("unit", "scale", "parts", "text"),
    [
        ("in", 24.0, 4, "4 ft"), ("in", 4.0, 2, "6 in"), ("in", 96.0, 4, "16 ft"), ("mm", 20.0, 5, "1 m"),
        ("mm", 50.0, 3, "3 m"), ("mm", 2.0, 5, "100 mm"), ("mm", 100.0, 5, "5 m"), ("mm", 10.0, 5, "500 mm"),
    ],
)  # fmt: skip
def test_scale_bar_in_equal_parts_every_other_one_filled(unit: str, scale: float, parts: int, text: str) -> None:
    records, wide = scale_bar(scale, 30.0, 7.0, Style(unit))
    outline = next(record for record in records if isinstance(record, Polyline))
    assert outline.closed
    left, right = min(x for x, _ in outline.points), max(x for x, _ in outline.points)
    low, high = min(y for _, y in outline.points), max(y for _, y in outline.points)
    assert (left, low) == (30.0, 7.0)
    fills = [[step[1:3] for step in record.steps if len(step) == 3] for record in records if isinstance(record, Fill)]
    assert len(fills) == (parts + 1) // 2
    for number, points in enumerate(fills):
        start = left + (right - left) * 2 * number / parts
        assert min(x for x, _ in points) == pytest.approx(start)
        assert max(x for x, _ in points) == pytest.approx(start + (right - left) / parts)
        assert (min(y for _, y in points), max(y for _, y in points)) == (low, high)
    zero, end = [record for record in records if isinstance(record, Text)]
    assert (zero.text, zero.at[0], end.text, end.at[0]) == ("0", left, text, pytest.approx(right))
    assert wide == pytest.approx(right - left + text_width(text, end.height) / 2)


@pytest.mark.parametrize("page", [A4, A3, LETTER, TABLOID])
def test_the_frame_leaves_the_binding_margin_of_iso_5457(page: Page) -> None:
    """ISO 5457: 20 mm at the left edge, where sheets are bound, and 10 mm at the others; a frame line of 0.7 mm."""
    _paper, line = frame(page)
    assert isinstance(line, Polyline)
    assert line.closed
    assert line.pen.width == 0.7
    assert sorted({x for x, _ in line.points}) == pytest.approx([20.0, page.width_mm - 10.0])
    assert sorted({y for _, y in line.points}) == pytest.approx([10.0, page.height_mm - 10.0])


@pytest.mark.parametrize("width", [45.0, 59.9, 60.0, 75.0])
def test_the_words_of_a_title_block_stay_in_their_cells(width: float) -> None:
    long = "An exceedingly long name of a room that nobody would ever give to any room of theirs"
    title = Title(long, long, long, long, "1 1/2 in = 1 ft (1:8)", "2026-11-25", "12 of 12")
    records = title_block(title, 100.0, 10.0, width, Style("in"))
    texts = [record for record in records if isinstance(record, Text)]
    upright = sorted(record.a[0] for record in records if isinstance(record, Line) and record.a[0] == record.b[0])
    assert len(upright) == 2
    edges = [100.0, *upright, 100.0 + width]
    for text in texts:
        right = text.at[0] + text_width(text.text, text.height, text.weight)
        in_cells = text.at[1] < 10.0 + 12.2
        end = min(edge for edge in edges if edge > text.at[0]) if in_cells else edges[-1]
        assert right <= end + 1e-6, text.text
        assert 10.0 < text.at[1] < 10.0 + TITLE_HEIGHT


def test_date_comes_from_the_environment_where_it_is_set(monkeypatch: pytest.MonkeyPatch) -> None:
    # 1767225600 s after the epoch is 2026-01-01T00:00:00Z (reproducible-builds.org, SOURCE_DATE_EPOCH).
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1767225600")
    assert sheet_date() == "2026-01-01"
    for odd in ("", "soon", "9" * 40):
        monkeypatch.setenv("SOURCE_DATE_EPOCH", odd)
        assert len(sheet_date()) == 10


def test_groups_are_of_known_layers_and_titled() -> None:
    for case in demo_cases():
        picture = _sheet(case)
        assert all(group.layer in LAYERS for group in picture.groups)
        assert all(group.title for group in picture.groups)
        assert picture.title
        assert picture.description


def test_the_screen_shows_the_same_drawing_without_a_page() -> None:
    room, set_out, findings = demo_case("bedroom")
    picture, annotation = screen_picture(set_out, findings, trade(), style_for(room), 8.0, room=room)
    assert picture.page is None
    assert picture.scale == 8.0
    on_paper = _sheet((room, set_out, findings))

    def drawn(groups: tuple[Group, ...]) -> list[Group]:
        return [
            group for group in groups if group.layer in ("wall", "opening", "obstacle", "rod", "bracket", "panel-drawn")
        ]

    assert drawn(picture.groups) == drawn(on_paper.groups)
    assert {step.split(":")[0] for step in annotation.rungs.values()} <= set(RUNGS)


@pytest.mark.parametrize("sheet", ["elevation", "plan", "unfolded"])
def test_a_scheme_without_a_name_has_a_number_and_never_its_id(sheet: str) -> None:
    room, set_out, _ = demo_case("bedroom")
    second = set_out.scheme
    schemes = tuple(
        replace(scheme, name="", id="k7") if scheme.id == second else scheme for scheme in room.walls[0].schemes
    )
    bare = replace(room, walls=(replace(room.walls[0], schemes=schemes), *room.walls[1:]))
    number = next(number for number, scheme in enumerate(schemes, 1) if scheme.id == "k7")
    picture = picture_of(bare, bare.walls[0], schemes[number - 1], trade(), sheet=sheet)
    assert f"Scheme {number}" in _texts(picture)
    assert "k7" not in _said(picture)
