"""What hangs on rods and brackets, through the set-out: closed forms of beams, sums of weights, mirrors."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.room.model import Bracket, Held, Hem, Panel
from elevation.setting_out.loads import drop_at
from elevation.setting_out.model import LayerOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from tests.setting_out.rooms import INCH, held, inch, mm, pair, room, treatment

TRADE = load_trade()
G = 9.80665


def layer_of(rod: dict[str, Any] | None = None, **more: Any) -> LayerOut:
    """The layer of a small room, with fields of its rod changed."""
    made = treatment(**more)
    first = replace(made.layers[0], rod=replace(made.layers[0].rod, **(rod or {})))
    out = set_out_afresh(room(treatments=[replace(made, layers=(first,))]), "a", "s", TRADE)
    return out.treatments[0].layers[0]


def weighing(kg: float, drawn: float | None = None, **more: Any) -> tuple[Panel, Panel]:
    return pair(weight_kg=kg, drawn=None if drawn is None else mm(drawn), **more)


def brackets(*places: Held) -> tuple[Bracket, ...]:
    return tuple(Bracket(id=f"b{number}", place=place) for number, place in enumerate(places, 1))


ENDS = (held("from-left-end", 0), held("from-right-end", 0))
BARE = {"ends": "cap"}


def test_a_rod_alone_sags_by_the_closed_form() -> None:
    # 5 w L4 / 384 E I; 3/4 in conduit over 56 in, I = pi/64 (0.922^4 - 0.824^4) in4, 7850 kg/m3, 200 GPa.
    found = layer_of(panels=(), brackets=brackets(*ENDS), rod=BARE)
    long, inertia = 56 * INCH, 0.012843 * INCH**4
    w = 0.13439 * INCH**2 * 7850e-9 * G
    assert found.support.sag_mm == pytest.approx(5 * w * long**4 / (384 * 200e3 * inertia), rel=1e-4)
    assert found.support.sag_limit_mm == pytest.approx(long / 360)
    assert [b.load_n for b in found.brackets] == pytest.approx([w * long / 2] * 2, rel=1e-4)
    assert [b.uplift_n for b in found.brackets] == [0.0, 0.0]
    assert found.loads is not None
    assert found.loads.hung_n == 0.0
    assert found.loads.stress == pytest.approx(w * long**2 / 8 / (0.027859 * INCH**3), rel=1e-4)
    # The slope at the bracket is w L3 / 24 E I.
    slope = w * long**3 / (24 * 200e3 * inertia) * 57.29577951
    assert found.loads.slopes == pytest.approx((slope, slope), rel=1e-3)


def test_brackets_share_what_hangs_as_a_continuous_beam_does() -> None:
    # Two spans under an even load: 3/8, 10/8, 3/8 of a span's load. Cloth drawn over the whole rod, ring by ring alike.
    middle = held("from-centre", 0)
    found = layer_of(panels=weighing(2.0), brackets=brackets(ENDS[0], middle, ENDS[1]), rod=BARE, heading="tab")
    assert found.loads is not None
    rod_n, cloth_n = found.loads.rod_n, found.loads.hung_n
    assert cloth_n == pytest.approx(4.0 * G)
    # Tabs do not pass the middle bracket, so both panels end there: drawn, they lie on the whole rod.
    assert found.panels[0].closed[0] == pytest.approx(found.support.left_mm, abs=10)
    assert found.panels[0].closed[1] == pytest.approx(found.brackets[1].x_mm, abs=15)
    assert found.brackets[1].load_n == pytest.approx((rod_n + cloth_n) * 10 / 16, rel=0.02)


def test_all_that_hangs_is_carried() -> None:
    # As drawn just now, what all brackets carry is all that hangs; the worst of each is no less.
    found = layer_of(panels=weighing(1.7, 300.0), brackets=brackets(held("from-left-end", 2), held("from-right-end", 2)))
    assert found.loads is not None
    assert sum(b.load_n or 0 for b in found.brackets) >= found.loads.rod_n + found.loads.hung_n - 1e-9
    rings = sum(panel.rings for panel in found.panels)
    assert found.loads.hung_n == pytest.approx((2 * 1.7 + rings * TRADE.limits["ring-weighs"].value) * G)


def test_a_panel_drawn_over_one_span_lifts_the_rod_off_the_far_bracket() -> None:
    # Two spans, one loaded: the far bracket is pulled up by w L / 16, less the rod's own weight (3/8 of a span).
    one = (Panel(id="p", flat_width=inch(54), parks="left", weight_kg=6.0),)
    found = layer_of(panels=one, brackets=brackets(ENDS[0], held("from-centre", 0), ENDS[1]), rod=BARE, heading="tab")
    assert found.loads is not None
    expected = 6.0 * G / 16 - found.loads.rod_n / 2 * 3 / 8
    assert expected > 0
    assert found.brackets[2].uplift_n == pytest.approx(expected, rel=0.06)
    assert found.brackets[0].uplift_n == 0.0


def test_wood_sags_half_as_much_again_in_the_end() -> None:
    # The same beam in wood: E 12.5 GPa and twice the sag's 1.5; a solid dowel, 706 kg/m3 (USDA Wood Handbook table 5-3).
    rod = {**BARE, "section": "dowel-1-1/4", "material": "oak"}
    found = layer_of(panels=(), brackets=brackets(*ENDS), rod=rod)
    long, inertia = 56 * INCH, 0.11984225 * INCH**4
    w = 1.227185 * INCH**2 * 706e-9 * G
    assert found.support.sag_mm == pytest.approx(1.5 * 5 * w * long**4 / (384 * 12.5e3 * inertia), rel=1e-5)
    assert found.support.material == "wood"


def test_a_published_dowel_case() -> None:
    # Red oak 1 1/4 in over 60 in with 2 lb/ft: 0.1531 in at first, 0.2297 in with 1.5 for creep (by the closed form
    # with 0.3754 lb/ft of its own). Cloth drawn from bracket to bracket stands in for the even load.
    cloth_kg = 2.0 * 5 * 0.45359237
    panel = (Panel(id="p", flat_width=inch(120), parks="left", weight_kg=cloth_kg),)
    rod = {**BARE, "section": "dowel-1-1/4", "material": "oak"}
    found = layer_of(panels=panel, brackets=brackets(*ENDS), rod=rod, beyond=12.0, heading="tab")
    assert found.support.length_mm == pytest.approx(60 * INCH)
    assert found.support.sag_mm is not None
    assert found.support.sag_mm / INCH == pytest.approx(0.2297, rel=0.01)


def test_typed_sizes_win_over_the_tables() -> None:
    plain = layer_of(panels=(), rod={"section": "tube-25"})
    typed = layer_of(panels=(), rod={"section": "tube-16", "diameter": mm(25), "wall": mm(1.5)})
    solid = layer_of(panels=(), rod={"section": "tube-25", "wall": mm(0)})
    assert typed.support.sag_mm == pytest.approx(plain.support.sag_mm)
    assert typed.loads is not None
    assert solid.loads is not None
    assert solid.loads.rod_n > 3 * typed.loads.rod_n


def test_a_joint_over_a_bracket_makes_two_simple_spans() -> None:
    places = brackets(ENDS[0], held("from-centre", 0), ENDS[1])
    whole = layer_of(panels=(), brackets=places, rod=BARE)
    joined = layer_of(panels=(), brackets=places, rod={**BARE, "stock": inch(30)})
    assert joined.support.splices_mm == pytest.approx([whole.brackets[1].x_mm])
    assert whole.support.sag_mm is not None
    # 5/384 over 0.0054161216: what a simple span sags more than one of two.
    assert joined.support.sag_mm == pytest.approx(whole.support.sag_mm * (5 / 384) / 0.0054161216058287, rel=1e-9)
    assert whole.brackets[1].load_n == pytest.approx((joined.brackets[1].load_n or 0) * 1.25, rel=1e-9)


def test_a_sag_is_below_the_brackets_and_free_ends_lift() -> None:
    found = layer_of(panels=(), brackets=brackets(held("from-left-end", 6), held("from-right-end", 6)), rod=BARE)
    assert found.loads is not None
    first, middle, last = found.loads.spans
    assert (first.is_end, middle.is_end, last.is_end) == (True, False, True)
    assert first.sag_mm == last.sag_mm == 0.0
    assert found.loads.line is not None
    assert found.loads.line.at(found.support.left_mm) < 0
    # A free end's limit is that of twice its length (IRC table R301.7, note b).
    assert first.neat_mm == pytest.approx(2 * 6 * INCH / 360)
    assert middle.fair_mm == pytest.approx((middle.right_mm - middle.left_mm) / 240)


def test_what_is_not_known_stays_so() -> None:
    unknown = layer_of(panels=(), rod={"kind": "tension-rod"})
    assert unknown.support.sag_mm is None
    assert unknown.loads is None
    for places in ((), brackets(held("from-left-end", 2))):
        bare = layer_of(panels=(), brackets=places)
        assert bare.support.sag_mm is None
        assert [b.load_n for b in bare.brackets] == [None] * len(places)


def test_a_panel_of_unknown_length_has_no_weight_and_the_rod_no_sag() -> None:
    out = set_out_afresh(room(treatments=[treatment(hem=Hem("panel"))]), "a", "s", TRADE)
    layer = out.treatments[0].layers[0]
    assert layer.panels[0].mass_kg is None
    assert layer.support.sag_mm is None
    assert "how far its rod sags" in out.missing[-1].text.template


def test_a_tracks_fixings_carry_though_its_stiffness_is_not_known() -> None:
    found = layer_of(panels=weighing(2.0), rod={"kind": "track", "section": "track-slim"})
    assert found.support.sag_mm is None
    assert all((b.load_n or 0) > 0 for b in found.brackets)
    assert found.loads is not None
    assert found.loads.spans == ()


def test_ends_that_carry_take_their_part() -> None:
    found = layer_of(panels=(), brackets=(), rod={"ends": "return"})
    assert found.loads is not None
    assert found.loads.ends_n == pytest.approx((found.loads.rod_n / 2, found.loads.rod_n / 2))
    assert found.support.sag_mm is not None


def test_a_bracket_beside_the_rod_carries_nothing_and_two_at_one_place_share() -> None:
    found = layer_of(panels=(), brackets=brackets(*ENDS, held("from-wall-left", 0)), rod=BARE)
    assert found.brackets[0].load_n == 0.0
    twin = layer_of(panels=(), brackets=brackets(*ENDS, ENDS[0]), rod=BARE)
    assert twin.brackets[0].load_n == twin.brackets[1].load_n
    assert sum(b.load_n or 0 for b in twin.brackets) == pytest.approx(sum(b.load_n or 0 for b in found.brackets))


def test_an_arm_gives_as_a_bar_held_in_the_wall() -> None:
    # p3 / 3 E I: the shop-made bracket's arm of 3/4 by 1/8 in, 3 1/2 in out, 200 GPa.
    found = layer_of(panels=(), brackets=brackets(*ENDS), rod=BARE)
    inertia = 0.75 * 0.125**3 / 12 * INCH**4
    give = (3.5 * INCH) ** 3 / (3 * 200e3 * inertia)
    assert found.brackets[0].droop_mm == pytest.approx((found.brackets[0].load_n or 0) * give)
    middle = (found.support.left_mm + found.support.right_mm) / 2
    assert drop_at(found, middle) == pytest.approx((found.support.sag_mm or 0) + found.brackets[0].droop_mm)
    assert drop_at(found, found.brackets[0].x_mm) == pytest.approx(found.brackets[0].droop_mm)


def test_a_mirrored_room_carries_alike() -> None:
    places = brackets(held("from-left-end", 2), held("from-centre", 5), held("from-right-end", 3))
    turned = brackets(held("from-left-end", 3), held("from-centre", -5), held("from-right-end", 2))
    here = layer_of(panels=weighing(1.5), brackets=places)
    there = layer_of(panels=weighing(1.5), brackets=turned)
    assert [b.load_n for b in there.brackets] == pytest.approx([b.load_n for b in reversed(here.brackets)], rel=1e-9)
    assert there.support.sag_mm == pytest.approx(here.support.sag_mm, rel=1e-9)


def test_heavier_cloth_never_sags_less_and_a_middle_bracket_never_more() -> None:
    sags = [layer_of(panels=weighing(kg)).support.sag_mm or 0 for kg in (0.5, 1.0, 2.0, 4.0)]
    assert sags == sorted(sags)
    ends = (held("from-left-end", 2), held("from-right-end", 2))
    two = layer_of(panels=weighing(4.0), brackets=brackets(*ends))
    three = layer_of(panels=weighing(4.0), brackets=brackets(ends[0], held("from-centre", 0), ends[1]))
    assert (three.support.sag_mm or 0) < (two.support.sag_mm or 0)


def test_the_worst_places_are_no_better_than_any_drawn_width() -> None:
    worst = layer_of(panels=weighing(2.0)).support.sag_mm or 0
    for drawn in (0.0, 150.0, 300.0, 600.0):
        found = layer_of(panels=weighing(2.0, drawn))
        assert found.loads is not None
        assert found.loads.line is not None
        xs = [found.support.left_mm + i * found.support.length_mm / 40 for i in range(41)]
        assert max(found.loads.line.at(x) for x in xs) <= (found.support.sag_mm or 0) + 1e-9
        assert (found.support.sag_mm or 0) >= worst - 1e-9


def test_a_span_that_only_lifts_sags_by_nothing_in_its_middle() -> None:
    # All cloth hangs in the long span; the short one beside it is lifted all along.
    places = brackets(ENDS[0], held("from-centre", 22), ENDS[1])
    one = (Panel(id="p", flat_width=inch(54), parks="left", weight_kg=8.0, stationary=True, stack=inch(30)),)
    found = layer_of(panels=one, brackets=places, rod=BARE)
    assert found.loads is not None
    short = found.loads.spans[-1]
    assert short.sag_mm == 0.0
    assert short.at_mm == pytest.approx((short.left_mm + short.right_mm) / 2)


def test_a_rod_hangs_below_its_line_by_what_it_sags_and_nothing_where_that_is_not_known() -> None:
    known = layer_of(panels=weighing(2.0))
    assert known.loads is not None
    assert known.loads.line is not None
    middle = (known.support.left_mm + known.support.right_mm) / 2
    assert drop_at(known, middle) > known.loads.line.at(middle) > 0  # and its brackets give
    assert drop_at(layer_of(panels=(), rod={"kind": "tension-rod"}), middle) == 0.0
    assert drop_at(replace(known, brackets=known.brackets[:1]), middle) == pytest.approx(known.loads.line.at(middle))


def test_a_rod_without_a_size_carries_nothing_that_can_be_told() -> None:
    # A wall of half its diameter and more leaves no tube that is a tube; the section's formula knows none.
    assert layer_of(panels=weighing(2.0), rod={"diameter": inch(0)}).support.sag_mm is None


def test_free_ends_and_ends_that_carry_are_told_side_by_side() -> None:
    # Both ends of unlike rods, once as they are and once mirrored: what is told of the left one is told of the right.
    where = (held("from-left-end", 4), held("from-centre", 5), held("from-right-end", 9))
    back = (held("from-left-end", 9), held("from-centre", -5), held("from-right-end", 4))
    found, turned = (layer_of(panels=(), brackets=brackets(*places), rod=BARE).loads for places in (where, back))
    assert found is not None
    assert turned is not None
    assert [span.is_end for span in found.spans] == [True, False, False, True]
    sags = [span.sag_mm for span in found.spans]
    assert [span.sag_mm for span in turned.spans] == pytest.approx(sags[::-1])
    assert sags[0] != pytest.approx(sags[-1])
    carried = {"left_ends": "socket", "right_ends": "socket"}
    middle, other = (
        layer_of(panels=(), brackets=brackets(held("from-centre", x)), rod={**BARE, **carried}).loads for x in (10, -10)
    )
    assert middle is not None
    assert other is not None
    assert other.ends_n == pytest.approx(middle.ends_n[::-1])
    assert middle.ends_n[0] != pytest.approx(middle.ends_n[1])


def test_between_brackets_that_give_the_rod_comes_down_straight() -> None:
    # Arms of spring steel that give unlike, each as its load says: what they give is added on a straight line.
    found = layer_of(
        panels=(), brackets=brackets(held("from-left-end", 2), held("from-centre", 5), held("from-right-end", 2))
    )
    assert found.loads is not None
    assert found.loads.line is not None
    first, middle, last = found.brackets
    assert first.droop_mm != pytest.approx(middle.droop_mm)
    for one, other in ((first, middle), (middle, last)):
        for part in (0.25, 0.5, 1.0):
            x = one.x_mm + part * (other.x_mm - one.x_mm)
            given = one.droop_mm + part * (other.droop_mm - one.droop_mm)
            assert drop_at(found, x) == pytest.approx(found.loads.line.at(x) + given)
    # And on beyond the outer ones, as steep as between the two next to them.
    for one, other, x in ((middle, last, found.support.right_mm), (middle, first, found.support.left_mm)):
        given = one.droop_mm + (other.droop_mm - one.droop_mm) * (x - one.x_mm) / (other.x_mm - one.x_mm)
        assert drop_at(found, x) == pytest.approx(found.loads.line.at(x) + given)
