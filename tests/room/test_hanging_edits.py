"""Edits that hang a treatment otherwise, where they leave things alone or find them as they cannot stay."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.dressing import usual_blind
from elevation.room.find import layer_of
from elevation.room.keep_places import keep_places
from elevation.room.layering import with_back_layer
from elevation.room.model import Opening, Wall
from elevation.room.mounting import mounted
from elevation.room.stand import stands
from elevation.room.supports import hung_on
from elevation.units import parse_length
from tests.findings.rooms import LAYER, at, good_room, held, inch, rod, trade


def test_a_rod_that_hangs_so_already_stays_as_it_is() -> None:
    room = good_room()
    assert hung_on(room, LAYER, "rod", 2000.0, trade()) == room


def test_a_height_that_no_mount_needs_stays_when_a_rod_comes_off_the_ceiling() -> None:
    # Held above the head, not by the bracket's drop: as good before the wall as under the ceiling.
    under = replace(layer_of(mounted(good_room(), LAYER[:3], "ceiling", trade()), LAYER))
    room = mounted(good_room(), LAYER[:3], "ceiling", trade())
    room = at(room, LAYER, rod=replace(under.rod, height=held("above-head", inch(9))))
    back = layer_of(mounted(room, LAYER[:3], "wall", trade()), LAYER)
    assert back.rod.height == held("above-head", inch(9))
    dropped = layer_of(mounted(at(room, LAYER, rod=under.rod), LAYER[:3], "wall", trade()), LAYER)
    assert under.rod.height.hold == "bracket-drop"
    assert dropped.rod.height.hold == "above-casing"


@pytest.mark.parametrize(("kind", "section"), [("rod", "conduit-1/2"), ("track", "track-slim")])
def test_behind_a_rod_hangs_a_thin_one_behind_a_track_its_like(kind: str, section: str) -> None:
    room = rod(good_room(), kind=kind, section="track-slim" if kind == "track" else "conduit-1")
    made, ref = with_back_layer(room, LAYER, trade())
    front, back = layer_of(made, LAYER), layer_of(made, ref)
    assert back.rod.kind == kind
    assert (back.rod.section == front.rod.section) is (kind == "track")
    assert back.rod.projection.mm < front.rod.projection.mm


@pytest.mark.parametrize(("unit", "graduation", "deep"), [("in", 25.4 / 16, 76.2), ("mm", 1.0, 70.0)])
def test_a_usual_blind_is_seventy_to_the_next_mark(unit: str, graduation: float, deep: float) -> None:
    # 70 mm is 2.7559 in; the next half inch up is 3 in.
    room = replace(good_room(), unit=unit, graduation=parse_length(f"{graduation} mm"))
    blind = usual_blind(room)
    assert [length.mm for length in (blind.height, blind.projection)] == pytest.approx([deep, deep])


def chain(*gaps: str) -> Wall:
    """Openings ``a``, ``b`` and so on, 30 in wide and uncased, each a gap after the one before."""
    return Wall(
        "w",
        width=inch(200),
        openings=tuple(
            Opening(key, inch(30), inch(40), sill=inch(20), gap=parse_length(gap), casing=inch(0))
            for key, gap in zip("abc", gaps, strict=False)
        ),
    )


def test_a_gap_over_a_sum_that_cannot_be_typed_is_a_plain_length() -> None:
    # The last gap is -1 in: two windows were measured over each other. A sum with a part that begins with a minus is no
    # length; what it comes to is.
    before = chain("20 in", "10 in", "-1 in")
    after = replace(before, openings=(before.openings[0], before.openings[2]))
    kept = keep_places(before, after, "in", 25.4 / 16)
    assert stands(kept)[1] == pytest.approx(stands(before)[2])
    assert kept.openings[1].gap is not None
    assert kept.openings[1].gap.text == "39 in"


def test_a_gap_that_would_be_less_than_nothing_becomes_a_place() -> None:
    # It stands over the first opening too: 20 + 30 + 10 + 30 - 45 is 45 in, and the first one ends at 50.
    before = chain("20 in", "10 in", "-45 in")
    after = replace(before, openings=(before.openings[0], before.openings[2]))
    kept = keep_places(before, after, "in", 25.4 / 16)
    assert stands(kept)[1] == pytest.approx(stands(before)[2])
    assert (kept.openings[1].gap, kept.openings[1].left) == (None, parse_length("45 in"))
