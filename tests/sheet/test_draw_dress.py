"""A pelmet is drawn before rods and brackets, a blind behind all cloth, where the set-out says; read from the records."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.sheet.draw_dress import blind_group, pelmet_group
from elevation.sheet.drawing import draw_wall
from elevation.sheet.records import LAYERS, Fill, Group, Path
from elevation.words import Style
from tests.findings.rooms import INCH, LAYER, at, good_room, inch, scene, trade
from tests.findings.test_blind import INSIDE, ON_WALL, blinded
from tests.findings.test_pelmet import USUAL, dressed


def box(group: Group, kind: type[Fill] | type[Path] = Path) -> tuple[float, float, float, float]:
    """Inches round everything that is drawn with an outline."""
    xs, ys = [], []
    for record in group.records:
        if isinstance(record, kind):
            for step in record.steps:
                xs += [float(part) for part in step[1::2]]
                ys += [float(part) for part in step[2::2]]
    return tuple(round(side / INCH, 3) for side in (min(xs), min(ys), max(xs), max(ys)))  # type: ignore[return-value]


@pytest.mark.parametrize("kind", ["board", "valance"])
def test_a_pelmet_is_drawn_where_it_lands_before_everything_that_hangs(kind: str) -> None:
    groups = draw_wall(scene(dressed(kind=kind)).set_out, trade())
    (pelmet,) = [group for group in groups if group.layer == "pelmet"]
    left, bottom, right, top = box(pelmet)
    assert (left, right, top) == (38, 106, 88.25)
    # A valance's scallops hang a little below its edge.
    assert 74.25 - (0 if kind == "board" else 1.5) <= bottom <= 74.25
    assert pelmet.ref == LAYER[:3]
    last = max(LAYERS.index(group.layer) for group in groups if group.ref[:3] == LAYER[:3] and group is not pelmet)
    assert LAYERS.index("pelmet") > last


def test_a_valance_is_of_the_front_cloth_and_a_board_is_not() -> None:
    def colours(kind: str) -> set[str]:
        room = at(
            dressed(kind=kind),
            LAYER,
            fabric=replace(good_room().walls[0].schemes[0].treatments[0].layers[0].fabric, colour="#123456"),
        )
        laid = scene(room).set_out.treatments[0]
        assert laid.pelmet is not None
        return {
            record.paint
            for record in pelmet_group(laid, laid.pelmet, Style()).records
            if isinstance(record, Fill) and isinstance(record.paint, str)
        }

    assert "#123456" in colours("valance")
    assert "#123456" not in colours("board")
    assert USUAL.kind == "board"


@pytest.mark.parametrize(("blind", "bottom"), [(ON_WALL, 80.25), (INSIDE, 75.0)])
def test_a_blind_is_drawn_behind_all_cloth(blind, bottom: float) -> None:
    groups = draw_wall(scene(blinded(blind)).set_out, trade())
    (group,) = [group for group in groups if group.layer == "blind"]
    assert box(group)[1] == bottom
    assert LAYERS.index("blind") < LAYERS.index("board") < LAYERS.index("panel-open")
    let_down = scene(blinded(blind, drop=inch(20), cord="none")).set_out.treatments[0]
    assert box(blind_group(let_down, Style()))[1] == bottom - 20


def test_every_cord_looks_different() -> None:
    drawn = {
        blind_group(scene(blinded(cord=cord)).set_out.treatments[0], Style()).records  # type: ignore[arg-type]
        for cord in ("none", "loop", "held-loop", "cords")
    }
    assert len(drawn) == 4
