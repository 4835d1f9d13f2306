"""What a layer takes in cloth where it hangs: a published workroom example through the whole set-out, and by arithmetic."""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from msgspec.structs import replace

from elevation.planning.cloth_words import cloth_lines
from elevation.room.find import layer_of
from elevation.room.model import Fabric, Hem, Making, Panel, Room
from elevation.setting_out.cloth import LayerCloth, cloth_of_layer
from elevation.setting_out.faces import faces_of
from elevation.setting_out.whole import set_out_afresh
from tests.findings.rooms import INCH, INCHES, LAYER, at, good_room, held, inch, mm, panels, rod, said, trade

YARD = 36 * INCH


def cloth(room: Room) -> LayerCloth:
    out = set_out_afresh(room, "w1", "s1", trade()).treatments[0].layers[0]
    made = cloth_of_layer(room, layer_of(room, LAYER), out, trade())
    assert made is not None
    return made


def faces(room: Room) -> dict[str, float]:
    out = set_out_afresh(room, "w1", "s1", trade()).treatments[0].layers[0]
    return {ref[-1]: face for ref, face in faces_of(out).items()}


def workroom(**fabric: Any) -> Room:
    """The contract workroom's window: rod 56, overlap 4, two returns of 4, finished length 64."""
    room = rod(good_room(), kind="track", section="track-slim", overlap=inch(4), projection=inch(3.5))
    making = Making(fullness=2.0, returns=True, heading=inch(7), hem=inch(8))
    facts = {"width": inch(54), **fabric}
    return at(room, LAYER, making=making, hem=Hem("length", inch(64)), fabric=Fabric(**facts))


def test_a_contract_workrooms_pair_through_the_whole_set_out() -> None:
    # contractdecor.com/contentmgr/showdetails.php/id/8713: 56 + 12 = 68, 136 flat, 3 widths, 1.5 each side, cut 79, with a
    # repeat of 8 cut 80, 240 in, 6.67 yd.
    made = cloth(workroom(repeat=inch(8)))
    assert made.finished_mm == pytest.approx(68 * INCH)
    assert made.flat_mm == pytest.approx(136 * INCH)
    assert made.face is not None
    assert made.face.widths == 3
    assert [panel.widths for panel in made.panels] == [1.5, 1.5]
    assert made.parted is not None
    assert (made.parted.whole, made.parted.half) == (1, True)
    assert made.face.cut_mm == pytest.approx(80 * INCH)
    assert made.face.total_mm == pytest.approx(240 * INCH)
    assert round(made.face.total_mm / YARD, 2) == 6.67
    assert made.face.sold_mm == pytest.approx(7 * YARD)
    plain = cloth(workroom())
    assert plain.face is not None
    assert plain.face.cut_mm == pytest.approx(79 * INCH)


def test_the_other_conventions_of_the_same_window() -> None:
    def flat(rule: Any) -> float:
        return cloth(replace(workroom(), fullness_rule=rule)).flat_mm / INCH

    # rod x 2 + overlap + returns + four side hems of 3 in; rod x 2 + 40 cm; as all, but 51 in of each 54 count.
    assert flat("all") == pytest.approx(136)
    assert flat("rod") == pytest.approx(112 + 4 + 8 + 12)
    assert flat("fixed") == pytest.approx(112 + 40 / 2.54)
    assert flat("narrower") == pytest.approx(136)
    tight = replace(workroom(width=inch(136 / 3 + 1)), fullness_rule="narrower")
    assert cloth(tight).face.widths == 4
    assert cloth(replace(tight, fullness_rule="all")).face.widths == 3


def test_a_half_drop_takes_one_repeat_more_unless_there_is_slack() -> None:
    # A cut of 79: repeats of 8 leave 1 in, less than half a repeat; repeats of 17 make 85 and leave 6, less than 8.5;
    # repeats of 12 make 84 and leave 5; of 11 make 88 and leave 9, more than 5.5.
    for repeat, extra in ((8, 8), (17, 17), (12, 12), (11, 0)):
        made = cloth(workroom(repeat=inch(repeat), half_drop=True))
        assert made.face.extra_mm == pytest.approx(extra * INCH)


def test_cloth_on_its_side() -> None:
    wide = cloth(workroom(width=inch(79), railroaded=True))
    assert wide.railroaded
    # 136 in of flat cloth and two side hems of 3 in on each of two panels.
    assert wide.face.total_mm == pytest.approx((136 + 12) * INCH)
    # Washed first: so much longer along the bolt, where 4 % go in the wash; as long across it as ever.
    washed = Making(2.0, True, inch(7), inch(8), washed_first=True)
    shrunk = cloth(at(workroom(width=inch(79), railroaded=True, shrinks=0.04), LAYER, making=washed))
    assert shrunk.railroaded
    assert shrunk.face.total_mm == pytest.approx((136 + 12) / 0.96 * INCH)
    assert shrunk.face.cut_mm == pytest.approx(79 * INCH)
    narrow = cloth(workroom(width=inch(78.99), railroaded=True))
    assert (narrow.railroaded, narrow.cannot_railroad) == (False, "too-narrow")
    for fabric in ({"one_way": True}, {"row": "velvet"}):
        piled = cloth(workroom(width=inch(118), railroaded=True, **fabric))
        assert (piled.railroaded, piled.cannot_railroad) == (False, "one-way")
        assert "one way" in " ".join(said(line) for line in cloth_lines(piled, "in", INCH / 16))


def test_lining_and_interlining() -> None:
    # A sewing book: lining 6 in narrower; cut = finished length + 2.5 with a 2 in double hem (pattern-making.com).
    made = cloth(workroom(lining="lining-light", interlining="bump"))
    assert made.lining is not None
    assert made.lining.cut_mm == pytest.approx(66.5 * INCH)
    assert made.lining.widths == 3  # 136 - 12 = 124 in of 54
    assert made.interlining is not None
    assert made.interlining.cut_mm == pytest.approx(64 * INCH)


def test_shrinking_and_settling() -> None:
    washed = Making(2.0, True, inch(7), inch(8), washed_first=True)
    made = cloth(at(workroom(shrinks=0.04), LAYER, making=washed))
    assert made.face.cut_mm == pytest.approx(79 * INCH / 0.96)
    assert cloth(workroom(shrinks=0.04)).face.cut_mm == pytest.approx(79 * INCH)
    # A cut is made on the tape's marks, up to the next one: 79 in and a hair are 79 1/16 in.
    longer = at(workroom(), LAYER, making=replace(washed, washed_first=False, hem=mm(8 * INCH + 0.01)))
    assert cloth(longer).face.cut_mm == pytest.approx((79 + 1 / 16) * INCH)
    settling = at(workroom(), LAYER, making=replace(washed, settles=inch(1)))
    assert cloth(settling).face.cut_mm == pytest.approx(78 * INCH)
    # The row's own figure, where none is typed: linen loses 4 % (from memory).
    assert cloth(at(workroom(row="linen-light"), LAYER, making=washed)).face.cut_mm == pytest.approx(79 * INCH / 0.96)


def test_pleats_use_up_the_whole_widths() -> None:
    room = at(workroom(), LAYER, heading="pinch-pleat")
    made = cloth(room)
    pleats = made.panels[0].pleats
    assert pleats is not None
    # One width and a half, less two side hems of 3 in and the seam between them, two edges of 1/2 in.
    flat, finished = 81 - 6 - 1, 34
    assert made.panels[0].hemmed_mm == pytest.approx(flat * INCH)
    assert pleats.count * pleats.take_up_mm == pytest.approx((flat - finished) * INCH)
    assert (pleats.count - 1) * pleats.space_mm == pytest.approx((finished - 2 - 4) * INCH)
    assert 4.5 <= pleats.take_up_mm / INCH <= 6
    assert all(b - a == pytest.approx(pleats.space_mm) for a, b in itertools.pairwise(pleats.at_mm))
    assert "pleats a panel" in " ".join(said(line) for line in cloth_lines(made, "in", INCH / 16))


def test_nothing_is_bought_by_a_length_that_is_not_known() -> None:
    room = at(good_room(), LAYER, hem=Hem("panel"))
    made = cloth(room)
    assert (made.finished_length_mm, made.face, made.lining) == (None, None, None)
    assert "known once" in " ".join(said(line) for line in cloth_lines(made, "in", INCH / 16))


def test_no_panels_no_cloth() -> None:
    room = at(good_room(), LAYER, panels=())
    out = set_out_afresh(room, "w1", "s1", trade()).treatments[0].layers[0]
    assert cloth_of_layer(room, layer_of(room, LAYER), out, trade()) is None


@pytest.mark.parametrize(
    ("parks", "expected"),
    [
        (("left",), [56]),
        (("right",), [56]),
        (("left", "right"), [28, 28]),
        (("left", "left-of:b2"), None),
        (("left", "left-of:m", "right-of:m", "right"), [14, 14, 14, 14]),
    ],
)
def test_each_panel_has_its_stretch_of_the_rod(parks: tuple[str, ...], expected: list[float] | None) -> None:
    from elevation.room.model import Bracket

    passes = len(parks) == 1

    def edit(room: Room) -> Room:
        brackets = (*layer_of(room, LAYER).brackets, Bracket("m", held("from-centre", inch(0)), rings_pass=passes))
        made = tuple(Panel(f"p{number}", inch(54), parks=place) for number, place in enumerate(parks, 1))
        return at(room, LAYER, brackets=brackets, panels=made)

    found = [face / INCH for face in faces(edit(good_room())).values()]
    if expected is None:
        assert sum(found) <= 56 + 1e-6
    else:
        # A bracket that rings cannot pass has a width; a panel beside it covers to its side.
        assert found == pytest.approx(expected, abs=0.75)


def test_a_panel_that_never_draws_needs_what_it_has() -> None:
    room = panels(good_room(), stationary=True)
    made = cloth(room)
    assert faces(room) == {}
    assert made.flat_mm == pytest.approx(108 * INCH)
    assert made.face.widths == 2


def test_mirrored_walls_take_the_same() -> None:
    one = at(workroom(), LAYER, panels=(Panel("p1", inch(54)),))
    other = at(workroom(), LAYER, panels=(Panel("p1", inch(54), parks="right"),))
    assert cloth(one).face == cloth(other).face
    assert cloth(one).flat_mm == cloth(other).flat_mm


def test_no_silly_number_of_widths() -> None:
    room = at(workroom(), LAYER, panels=tuple(Panel(f"p{n}", mm(100_000), 100, stationary=True) for n in range(2)))
    assert cloth(room).face is None


def test_lines_are_said_up_to_the_next_mark() -> None:
    room = at(workroom(shrinks=0.04), LAYER, making=Making(2.0, True, inch(7), inch(8), washed_first=True))
    lines = [said(line) for line in cloth_lines(cloth(room), "in", INCH / 16)]
    # 79 / 0.96 = 82.29: the next sixteenth is 5/16.
    assert any("82⁵⁄₁₆ in" in line for line in lines), lines
    assert INCHES.unit == "in"


@pytest.mark.parametrize(("parks", "parted"), [(("left", "right"), True), (("left", "left"), False)])
@pytest.mark.parametrize("repeat", [8.0, None])
def test_a_patterned_width_is_parted_only_between_a_left_and_a_right_panel(
    parks: tuple[str, str], parted: bool, repeat: float | None
) -> None:
    # Half widths stand at the return side, so the halves of one patterned width go to opposite panels.
    room = workroom(repeat=None if repeat is None else inch(repeat))
    still = replace(layer_of(room, LAYER).panels[0], flat_width=inch(75), stationary=True)
    room = at(room, LAYER, panels=tuple(replace(still, id=f"p{n}", parks=side) for n, side in enumerate(parks)))
    made = cloth(room)
    assert (made.parted is not None and made.parted.half) is (parted or repeat is None)
