"""Valances: their cloth by hand, on the bolt, in the shop, on labels and in the totals; a board takes none."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.planning.buying.whole import buying_list
from elevation.planning.dressed import Dressed, dress
from elevation.planning.house_schedule import house_schedule
from elevation.planning.labels import labels_of
from elevation.planning.sewing.said import piece_mark, table_rows
from elevation.planning.sewing.valances import valance_steps
from elevation.planning.sewing.whole import sewing_of
from elevation.room.model import Fabric, Hem, Making, Pelmet, Room
from elevation.sheet.work.sewing_valance import valance_flat
from elevation.sheet.work.whole import sewing_pages
from elevation.words import say
from tests.findings.rooms import INCH, INCHES, LAYER, at, good_room, inch, panels, trade
from tests.planning.test_sewing import check_full, cuts
from tests.sheet.pages import check_inside, texts

TREATMENT = LAYER[:3]
PLAIN = Fabric(name="Ticking", width=inch(54))


def room_with(fabric: Fabric = PLAIN, *, more: float = 0.0, kind: str = "valance") -> Room:
    """A rod of 60 in: the valance's front 60 + 2 x 6 + more, 6 in out, 14 in deep. Made panels, 80 in finished."""
    pelmet = Pelmet(inch(14), inch(3), inch(6), inch(6 + more), inch(6), kind)  # type: ignore[arg-type]
    room = at(good_room(), LAYER, fabric=fabric, hem=Hem("length", inch(80)), making=Making(fullness=2.0))
    return at(room, TREATMENT, pelmet=pelmet)


def sewn(room: Room):
    one = dress(room, trade())
    return one, sewing_of(one, trade())


def front(one: Dressed) -> float:
    pelmet = one.walls[0].treatments[0].pelmet
    assert pelmet is not None
    return (pelmet.right_mm - pelmet.left_mm) / INCH


def test_by_hand() -> None:
    """Front and returns times 2.5 (a gathering tape takes 2 to 2.5: workroom course pages), in whole widths of 54 in;
    14 in deep, 3 in turned at the tape, 4 in for a doubled 2 in hem."""
    one, sewing = sewn(room_with())
    (valance,) = sewing.valances
    wide = front(one) + 2 * 6
    widths = -(-wide * 2.5 // 54)
    assert valance.cloth.finished_mm == pytest.approx(wide * INCH)
    assert valance.cloth.widths == widths
    assert valance.cloth.face.cut_mm == pytest.approx(21 * INCH)
    assert valance.cloth.face.total_mm == pytest.approx(widths * 21 * INCH)
    # Its ends are turned in 3 in each, each seam takes 1/2 in of both pieces.
    assert valance.cloth.hemmed_mm == pytest.approx((widths * 54 - 6 - (widths - 1)) * INCH)


@pytest.mark.parametrize(
    ("rule", "flat"),
    # 72 in front, 6 in at each end, 2.5 times: all; the front alone, returns and end hems after; a fixed sum of 40 cm.
    [("all", 84 * 2.5), ("rod", 72 * 2.5 + 12 + 6), ("fixed", 72 * 2.5 + 400 / 25.4), ("narrower", 84 * 2.5)],
)
def test_by_each_convention_of_fullness(rule: str, flat: float) -> None:
    room = room_with()
    one, _ = sewn(room)
    room = room_with(more=72 - front(one))
    _, sewing = sewn(replace(room, fullness_rule=rule))
    cloth = sewing.valances[0].cloth
    assert cloth.flat_mm == pytest.approx(flat * INCH)
    # Of a width less 3 in, what selvedge and seams take is gone already.
    hemmed = 5 * 51 - 6 if rule == "narrower" else 4 * 54 - 6 - 3
    assert cloth.hemmed_mm == pytest.approx(hemmed * INCH)


def test_its_steps_have_its_figures() -> None:
    one, _ = sewn(room_with())
    _, sewing = sewn(room_with(more=72 - front(one)))
    steps = valance_steps(sewing.valances[0], trade())
    said = [say(text, replace(INCHES, plain=True)) for step in steps for text in (step.text, *step.details)]
    assert said[:2] == [
        "Join the widths in the order of their numbers, 1 at the left end.",
        "Seam allowance 1/2 in on each piece; pin, so that any pattern meets; press the seams open.",
    ]
    assert said[2].startswith("Turn both ends over twice, 1 1/2 in each time")
    assert said[3].startswith("Turn its lower edge up twice, 2 in each time")
    assert said[4].startswith("Turn its top 3 in down")
    # 4 x 54 - 6 - 3 = 207 in for 84.
    assert said[6] == "Gather it to 84 in by the cords of the tape, 2.46 times the width, and knot them."


def test_its_seams_are_drawn_where_they_are_sewn() -> None:
    one, _ = sewn(room_with())
    _, sewing = sewn(room_with(more=72 - front(one)))
    flat = valance_flat(sewing.valances[0], 0.5 * INCH, INCHES)
    # The first width loses 3 in of end hem and 1/2 in of seam, those between 1/2 in at both edges.
    assert [seam / INCH for seam in flat.seams_mm] == pytest.approx([50.5, 103.5, 156.5])
    assert flat.width_mm == pytest.approx(207 * INCH)
    assert flat.pieces == ("1", "2", "3", "4")
    assert flat.titles[1:] == ("207 in wide flat, 84 in finished", "21 in long with heading and hem")


def test_one_width_is_joined_to_nothing() -> None:
    _, sewing = sewn(room_with(replace(PLAIN, width=inch(118 * 2))))
    (valance,) = sewing.valances
    assert valance.cloth.widths == 1
    assert valance.cloth.hemmed_mm == pytest.approx((236 - 6) * INCH)
    assert not any("Join" in say(step.text, INCHES) for step in valance_steps(valance, trade()))
    assert valance_flat(valance, 12.7, INCHES).pieces == ()


@pytest.mark.parametrize(("beyond", "widths"), [(-0.01, 4), (0.0, 4), (0.01, 5)])
def test_a_width_more_is_taken_only_beyond_whole_ones(beyond: float, widths: int) -> None:
    one, _ = sewn(room_with())
    # Four widths of 54 in at 2.5 make 86.4 in of front and returns.
    _, sewing = sewn(room_with(more=86.4 + beyond - 12 - front(one)))
    assert sewing.valances[0].cloth.widths == widths


@pytest.mark.parametrize("fabric", [PLAIN, replace(PLAIN, repeat=inch(8)), replace(PLAIN, repeat=inch(13), half_drop=True)])
def test_it_is_cut_from_the_bolt_of_the_panels_and_bought_with_them(fabric: Fabric) -> None:
    bare_room = at(room_with(fabric), TREATMENT, pelmet=None)
    (bare,) = sewn(bare_room)[1].bolts
    one, sewing = sewn(room_with(fabric))
    (bolt,) = sewing.bolts
    check_full(bolt)
    count = int(sewing.valances[0].cloth.widths)
    marks = [say(piece_mark(piece), INCHES) for piece in bolt.pieces if piece.panel.ref == TREATMENT]
    assert sorted(marks) == [f"1V-{number}" for number in range(1, count + 1)]
    assert len(cuts(bolt)) == len(cuts(bare)) + count
    lines = {line.part: line for line in buying_list((one,), (), trade()).lines}
    assert lines["cloth:ticking"].bought == pytest.approx(bolt.bought_mm)
    assert not any(part.startswith("valance:") for part in lines)
    assert "touch-tape:valance" in lines
    assert any(part.startswith("shelf:") for part in lines)


def test_totals_and_labels_have_it() -> None:
    one, sewing = sewn(room_with())
    bare = dress(at(room_with(), TREATMENT, pelmet=None), trade())
    more = house_schedule((one,), trade()).totals.cloth_mm - house_schedule((bare,), trade()).totals.cloth_mm
    (valance,) = sewing.valances
    assert more == pytest.approx(valance.cloth.face.total_mm)
    labels = [label for label in labels_of((one,), trade()) if say(label.mark, INCHES).startswith("1V")]
    assert [label.kind for label in labels] == ["valance", *["cloth"] * int(valance.cloth.widths)]
    rows = [row for row in table_rows(one, sewing, INCHES) if row[2] == "1V"]
    assert [row[6] for row in rows] == ["3 in", "14 in", "4 in", ""]


def test_a_board_and_ready_made_panels() -> None:
    assert sewn(room_with(kind="board"))[1].valances == ()
    # Panels from the shop: the valance's cloth is bought all the same, alone on its bolt.
    ready = panels(good_room(), measured_length=inch(84))
    ready = at(ready, TREATMENT, pelmet=Pelmet(inch(14), inch(3), inch(6), inch(6), inch(6), "valance"))
    _, sewing = sewn(ready)
    (bolt,) = sewing.bolts
    check_full(bolt)
    assert {piece.panel.ref for piece in bolt.pieces} == {TREATMENT}


def test_cloth_on_its_side_runs_through() -> None:
    _, sewing = sewn(room_with(replace(PLAIN, width=inch(118), railroaded=True)))
    (valance,) = sewing.valances
    (bolt,) = sewing.bolts
    check_full(bolt)
    (piece,) = [piece for piece in bolt.pieces if piece.panel.ref == TREATMENT]
    assert piece.width_mm == pytest.approx(valance.cloth.flat_mm + 6 * INCH)
    assert not any("Join the widths" in say(step.text, INCHES) for step in valance_steps(valance, trade()))


def test_the_window_s_page_draws_it_and_says_its_steps() -> None:
    pages = sewing_pages([dress(room_with(), trade())], trade())
    check_inside(pages)
    said = [text.text for text in texts(pages)]
    assert "Valance to sew" in said
    assert "1V: valance" in said
    assert any(text.startswith("Gather it to ") for text in said)
    assert "leading edge" not in [text.text for text in texts(pages[2:])]


def test_what_no_workroom_would_sew_has_no_cloth() -> None:
    one, _ = sewn(room_with())
    # 1,000 widths of 54 in at 2.5 are the most.
    most = 1000 * 54 / 2.5 - 12 - front(one)
    assert sewn(room_with(more=most))[1].valances[0].cloth.widths == 1000
    assert sewn(room_with(more=most + 0.1))[1].valances == ()
