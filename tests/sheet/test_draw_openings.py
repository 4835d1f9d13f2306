import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.room.model import Head, Opening, Room, Sash, Stool, Wall
from elevation.setting_out.whole import set_out
from elevation.sheet.draw_opening import draw_opening
from elevation.sheet.draw_sash import sash_records
from elevation.sheet.paths import opening_path
from elevation.sheet.records import Group, Path
from elevation.trade import load_trade
from elevation.units import Length
from tests.sheet.draw_cases import HEADS, IN, make_opening, mirrored_opening
from tests.sheet.draw_checks import SASHES, SHADOW_MM, check_grammar, extent, is_dashed
from tests.sheet.test_draw_paths import flattened


@pytest.mark.parametrize("kind", ["window", "door", "sliding-door"])
@pytest.mark.parametrize("sash", SASHES)
@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("hinge", ["left", "right", "both"])
def test_every_opening_draws_within_its_casing_and_sill(kind, sash, head, hinge):
    opening = make_opening(kind=kind, sash=sash, head=head, hinge=hinge, columns=3, rows=3, reveal_mm=90.0)
    for frame in (0.0, opening.frame_mm):
        group = draw_opening(replace(opening, frame_mm=frame), "Window 1")
        check_grammar([group])
        left, bottom, right, top = extent([group])
        horn = opening.stool[1] if opening.stool else 0.0
        assert left == pytest.approx(opening.left_mm - opening.casing_mm - horn)
        assert right <= opening.right_mm + opening.casing_mm + max(horn, SHADOW_MM)
        assert bottom >= opening.bottom_mm - (19.0 + opening.apron_mm if opening.stool else 0.0) - 1e-6
        assert top == pytest.approx(max(y for _, y in flattened(opening_path(opening, opening.casing_mm))), abs=0.1)
        assert len(group.records) <= 40


def test_openings_that_move_otherwise_are_drawn_otherwise():
    drawn = {sash: draw_opening(make_opening(sash=sash), "w").records for sash in SASHES[:6]}
    assert len(set(drawn.values())) == len(drawn)


def test_a_sash_that_opens_away_has_its_sign_dashed_and_its_apex_at_the_hinge():
    towards = draw_opening(make_opening(sash="casement-in", hinge="right"), "w")
    away = draw_opening(make_opening(sash="casement-out", hinge="right"), "w")
    assert not any(map(is_dashed, towards.records))
    (sign,) = filter(is_dashed, away.records)
    opening = make_opening(sash="casement-out", hinge="right")
    assert sign.steps[1][1] == pytest.approx(opening.right_mm - opening.frame_mm)


@pytest.mark.parametrize("head", HEADS)
def test_a_mirrored_wall_has_mirrored_bounds(head):
    width = 146 * IN
    here = make_opening(head=head, sash="casement-in")
    there = replace(mirrored_opening(here, width), hinge="right")
    # Shadows fall to the right on both, so only what is outlined is compared.
    first, second = (
        extent([Group(("w",), "opening", "w", tuple(r for r in draw_opening(o, "w").records if isinstance(r, Path)))])
        for o in (here, there)
    )
    assert (width - second[2], second[1], width - second[0], second[3]) == pytest.approx(first)


def mm(value):
    return Length(round(value, 1), f"{round(value, 1)} mm")


@st.composite
def openings(draw):
    width, height = draw(st.sampled_from([30, 120, 400, 900, 2400])), draw(st.sampled_from([30, 200, 600, 1400, 2100]))
    kind = draw(st.sampled_from(HEADS))
    rise = mm(min(width / 2, height) * draw(st.sampled_from([0.05, 0.5, 1.0]))) if kind == "segmental" else None
    right = mm(height * draw(st.sampled_from([0.0, 0.3, 1.0, 1.5]))) if kind == "raked" else None
    return Opening(
        "o1",
        mm(width),
        mm(height),
        kind=draw(st.sampled_from(["window", "door", "sliding-door"])),
        left=mm(500),
        sill=mm(draw(st.sampled_from([0, 600]))),
        head=Head(kind, rise, right),
        casing=draw(st.sampled_from([None, mm(0), mm(90)])),
        stool=draw(st.sampled_from([None, Stool(mm(19), mm(19), mm(40))])),
        reveal=draw(st.sampled_from([None, mm(0), mm(150)])),
        frame=draw(st.sampled_from([None, mm(0), mm(10), mm(50), mm(width * 0.6)])),
        columns=draw(st.sampled_from([1, 2, 12])),
        rows=draw(st.sampled_from([1, 3, 9])),
        sash=Sash(draw(st.sampled_from(SASHES)), draw(st.sampled_from(["left", "right", "both"]))),
    )


@given(openings())
def test_whatever_its_sizes_an_opening_fills_itself_and_no_more(opening):
    room = Room(walls=(Wall("w1", width=mm(4000), openings=(opening,)),))
    (out,) = set_out(room, "w1", None, load_trade()).openings
    check_grammar([draw_opening(out, "Window 1")])
    left, bottom, right, top = extent([Group(out.ref, "opening", "w", tuple(sash_records(out)))])
    assert left == pytest.approx(out.left_mm, abs=0.5)
    assert right == pytest.approx(out.right_mm, abs=0.5)
    assert bottom == pytest.approx(out.bottom_mm, abs=0.5)
    assert top == pytest.approx(out.top_mm, abs=0.5)
