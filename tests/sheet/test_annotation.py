"""Dimensions, held marks and finding marks around a wall."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation.findings.model import Finding, Weight
from elevation.room.style import style_for
from elevation.sheet.annotation import Annotation, lay_annotation
from elevation.sheet.annotation.figures import figures
from elevation.sheet.annotation.marks import finding_mark
from elevation.sheet.records import Dimension, Fill, Path, Polyline, Text
from elevation.words import Style, msg
from tests.sheet.sheet_cases import Case, case_of, demo_case, demo_cases, lay
from tests.strategies import random_walls

_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁄₀₁₂₃₄₅₆₇₈₉", "0123456789/0123456789")
_SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹"


def value_of(figure: str) -> Fraction:
    """A set figure read back as a number, its sign of remainder left out."""
    figure = figure.rstrip("+−")
    cut = next((place for place, character in enumerate(figure) if character in _SUPERSCRIPTS), len(figure))
    whole, part = figure[:cut], figure[cut:].translate(_RAISED)
    return Fraction(whole or 0) + (Fraction(part) if part else 0)


def dimensions(annotation: Annotation) -> list[Dimension]:
    return [record for group in annotation.groups for record in group.records if isinstance(record, Dimension)]


def _figure_of(dimension: Dimension, annotation: Annotation) -> str:
    keys = {key.letter: key.figure for key in annotation.keys}
    text = keys.get(dimension.text, dimension.text) if dimension.rung == "key" else dimension.text
    return text.split(",")[0].split(" ")[-1]


@pytest.mark.parametrize("index", range(len(list(demo_cases()))))
def test_chains_add_up_to_the_wall(index: int) -> None:
    case = list(demo_cases())[index]
    set_out = case[1]
    annotation = lay(case, 24.0)
    below = [
        item
        for item in dimensions(annotation)
        if item.along == "x" and item.line < 0 and item.ref[:2] != (set_out.wall, set_out.scheme)
    ]
    lines = {item.line for item in below}
    assert len(lines) == 2
    outer, inner = min(lines), max(lines)
    whole = [value_of(_figure_of(item, annotation)) for item in below if item.line == outer]
    parts = [value_of(_figure_of(item, annotation)) for item in below if item.line == inner]
    assert len(whole) == 1
    assert sum(parts) == whole[0]


def test_a_chain_adds_up_and_what_was_moved_says_so() -> None:
    # Thirds of 10 in to the sixteenth: 3 5/16 three times is 9 15/16, so one takes the missing mark (worked by hand).
    texts = figures([254.0 / 3] * 3, Style())
    assert sum(value_of(text) for text in texts) == 10
    assert sorted(texts) == ["3³⁄₈−", "3⁵⁄₁₆+", "3⁵⁄₁₆+"]


def test_a_measured_link_keeps_its_figure() -> None:
    texts = figures([254.0 / 3] * 3, Style(), [False, True, True])
    assert texts[1:] == ("3⁵⁄₁₆+", "3⁵⁄₁₆+")


def test_each_treatment_has_its_own_groups_and_the_wall_one() -> None:
    case = demo_case("hall")
    annotation = lay(case, 50.0)
    owners = [group.ref for group in annotation.groups if group.layer == "dimension"]
    assert owners == [(case[1].wall,), *(laid.ref for laid in case[1].treatments)]


def test_what_is_held_is_marked_and_nothing_else() -> None:
    case = demo_case("bedroom")
    annotation = lay(case, 20.0)
    rod = case[0].walls[0].schemes[0].treatments[0].layers[0].rod
    marks = [group for group in annotation.groups if group.layer == "held"]
    expected = len((rod.height, rod.left, rod.right))
    assert [len(group.records) for group in marks] == [expected]
    bare = lay_annotation(case[1], (), style_for(case[0]), 20.0)
    assert not [group for group in bare.groups if group.layer == "held"]


HOLDS = ("above-head", "above-casing", "below-ceiling", "above-floor")
END_HOLDS = ("beyond-opening", "beyond-casing", "from-corner", "rod-length")


@pytest.mark.parametrize("height", HOLDS)
@pytest.mark.parametrize("end", END_HOLDS)
def test_whatever_is_held_has_a_dimension_with_its_mark(height: str, end: str) -> None:
    room, set_out, _ = demo_case("bedroom")
    wall = room.walls[0]
    scheme = wall.schemes[0]
    treatment = scheme.treatments[0]
    layer = treatment.layers[0]
    rod = replace(layer.rod, height=replace(layer.rod.height, hold=height), left=replace(layer.rod.left, hold=end))
    held = replace(treatment, layers=(replace(layer, rod=rod),))
    dressed = replace(wall, schemes=(replace(scheme, treatments=(held,)),))
    annotation = lay_annotation(set_out, (), style_for(room), 20.0, room=replace(room, walls=(dressed,)))
    marks = [group for group in annotation.groups if group.layer == "held"]
    assert [len(group.records) for group in marks] == [3]


def test_dimension_lines_stand_outside_the_wall_nearest_first() -> None:
    case = demo_case("bedroom")
    lines = sorted({-item.line for item in dimensions(lay(case, 20.0)) if item.along == "x" and item.line < 0})
    # Classroom rule of ISO and ASME texts: 10 mm to the first line, then at least 6 mm.
    assert lines[0] == pytest.approx(10.0 * 20.0)
    assert all(far - near >= 6.0 * 20.0 for near, far in pairwise(lines))


def test_the_same_wall_in_both_units_has_the_same_lines() -> None:
    _, set_out, _ = demo_case("bedroom")
    inches = lay_annotation(set_out, (), Style("in", 25.4 / 16), 20.0)
    metric = lay_annotation(set_out, (), Style("mm", 1.0), 20.0)
    spans = [
        [(item.a[0], item.b[0], item.ref, item.field) for item in dimensions(made) if item.along == "x"]
        for made in (inches, metric)
    ]
    assert spans[0] == spans[1]


def _mirrored(case: Case) -> Case:
    """The wall's own facts mirrored: openings and chain; treatments are left out."""
    room, set_out, _ = case
    width = set_out.width_mm
    links = tuple(
        replace(link, left_mm=width - link.right_mm, right_mm=width - link.left_mm)
        for link in reversed(set_out.chain.links)
    )
    return room, replace(set_out, chain=replace(set_out.chain, links=links), treatments=(), openings=()), ()


@pytest.mark.parametrize("scale", [12.0, 24.0, 48.0])
def test_mirroring_the_wall_mirrors_its_chain(scale: float) -> None:
    case = demo_case("bedroom")
    plain = replace(case[1], treatments=(), openings=())
    one = dimensions(lay((case[0], plain, ()), scale))
    other = dimensions(lay(_mirrored(case), scale))
    width = case[1].width_mm
    ours = sorted((round(item.text_at[0], 6), item.rung) for item in one if item.along == "x")
    theirs = sorted((round(width - item.text_at[0], 6), item.rung) for item in other if item.along == "x")
    assert ours == theirs


def test_what_nobody_measured_has_no_figure() -> None:
    room, set_out, _ = demo_case("bedroom")
    guessed = replace(set_out, known_width=False)
    texts = {(item.field, item.text) for item in dimensions(lay((room, guessed, ()), 20.0))}
    assert ("width", "?") in texts
    assert ("gap_right", "?") in texts
    assert ("width", "144") not in texts
    assert ("gap", "?") not in texts
    loose = replace(set_out, openings=tuple(replace(opening, placed=False) for opening in set_out.openings))
    assert ("gap", "?") in {(item.field, item.text) for item in dimensions(lay((room, loose, ()), 20.0))}
    unknown = replace(set_out, ceiling=replace(set_out.ceiling, known=False))
    fields = {item.field for item in dimensions(lay((room, unknown, ()), 20.0))}
    assert not any(field.startswith("ceiling") for field in fields)


def test_equal_heights_stand_once() -> None:
    case = demo_case("hall")
    annotation = lay(case, 50.0)
    left = {item.line for item in dimensions(annotation) if item.along == "y" and item.line < 0}
    # Four bays dressed alike, windows alike: one column for them and one for the whole height.
    assert len(left) == 2


def test_no_extension_line_crosses_the_wall() -> None:
    for room, wall in random_walls(60, 900):
        case = case_of(room, wall, wall.schemes[0].id if wall.schemes else None)
        width = case[1].width_mm
        for item in dimensions(lay(case, 50.0)):
            if item.along == "y":
                # From the outline outward, on its own side.
                assert (max(item.a[0], item.b[0]) < width and item.line < 0) or item.line > width


def test_everything_laid_is_within_the_extent() -> None:
    for room, wall in random_walls(60, 900):
        case = case_of(room, wall, wall.schemes[0].id if wall.schemes else None)
        annotation = lay(case, 50.0)
        left, bottom, right, top = annotation.extent
        for item in dimensions(annotation):
            along_x = item.along == "x"
            for end in (item.a, item.b):
                x, y = (end[0], item.line) if along_x else (item.line, end[1])
                assert left <= x / 50.0 <= right
                assert bottom <= y / 50.0 <= top
        for box, text, _ in annotation.labels:
            assert left <= box[0] and bottom <= box[1] and box[2] <= right and box[3] <= top, text  # noqa: PT018


def test_labels_of_a_treatment_do_not_move_when_another_changes() -> None:
    case = demo_case("hall")
    room, set_out, _ = case
    before = lay_annotation(set_out, (), style_for(room), 50.0)
    first = set_out.treatments[0]
    layer = first.layers[0]
    wider = replace(layer, support=replace(layer.support, left_mm=layer.support.left_mm - 3.0))
    moved = replace(first, layers=(wider, *first.layers[1:]))
    after = lay_annotation(
        replace(set_out, treatments=(moved, *set_out.treatments[1:])), (), style_for(room), 50.0, previous=before.rungs
    )
    unchanged = [group for group in before.groups if group.ref != first.ref]
    assert unchanged == [group for group in after.groups if group.ref != first.ref]
    assert before.groups != after.groups


def test_laying_again_moves_nothing() -> None:
    for case in demo_cases():
        for scale in (9.0, 24.0, 70.0):
            room, set_out, findings = case
            once = lay_annotation(set_out, findings, style_for(room), scale, room=room)
            again = lay_annotation(set_out, findings, style_for(room), scale, room=room, previous=once.rungs)
            assert once == again


def _finding(weight: Weight, at: tuple[float, float] | None = (800.0, 900.0)) -> Finding:
    return Finding("meets", weight, ("w",), msg("It meets."), msg("common practice"), at=at)


def test_weights_are_told_apart_by_shape() -> None:
    stop = finding_mark(Weight.STOP, 1, (0.0, 0.0))
    broken = finding_mark(Weight.BROKEN, 2, (0.0, 0.0))
    consider = finding_mark(Weight.CONSIDER, 3, (0.0, 0.0))
    assert isinstance(stop[0], Fill)
    assert len(stop[0].steps) == 9  # an octagon and its close
    assert isinstance(broken[1], Polyline)
    assert len(broken[1].points) == 3
    assert isinstance(consider[1], Path)
    assert {step[0] for step in consider[1].steps} == {"M", "C", "Z"}
    numbers = [record.text for mark in (stop, broken, consider) for record in mark if isinstance(record, Text)]
    assert numbers == ["1", "2", "3"]


def test_many_findings_at_one_place_have_marks_apart() -> None:
    room, set_out, _ = demo_case("bedroom")
    findings = tuple(_finding(weight) for weight in Weight for _ in range(8))
    annotation = lay_annotation(set_out, findings, style_for(room), 24.0)
    boxes = [box for box, _, rung in annotation.labels if rung == "mark"]
    assert len(boxes) == len(findings)
    for place, one in enumerate(boxes):
        for other in boxes[place + 1 :]:
            assert (
                one[2] <= other[0] + 1e-6
                or other[2] <= one[0] + 1e-6
                or one[3] <= other[1] + 1e-6
                or other[3] <= one[1] + 1e-6
            )


def test_a_finding_without_a_place_has_no_mark() -> None:
    room, set_out, _ = demo_case("bedroom")
    annotation = lay_annotation(set_out, (_finding(Weight.BROKEN, None),), style_for(room), 24.0)
    assert not [group for group in annotation.groups if group.layer == "finding"]


def test_a_key_table_shows_every_letter_on_the_drawing() -> None:
    case = demo_case("hall")
    annotation = lay_annotation(case[1], (), style_for(case[0]), 400.0)
    letters = {item.text for item in dimensions(annotation) if item.rung == "key"}
    assert letters
    assert letters == {key.letter for key in annotation.keys}
    table = [
        record.text
        for group in annotation.groups
        if group.layer == "title"
        for record in group.records
        if isinstance(record, Text)
    ]
    assert letters <= set(table)
