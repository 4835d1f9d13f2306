"""A tied panel as drawn: its outline follows the set-out's sweep, and its tie is seen; read from the display list."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.edits import replace_at
from elevation.room.model import Room, TieBack
from elevation.setting_out.model import PanelOut
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.records import Fill, Group, Path
from elevation.trade.tables import load_trade
from tests.findings.rooms import LAYER, at, good_room, inch, panels

TRADE = load_trade()


def tied(**fields: object) -> Room:
    return at(panels(good_room(), drawn=inch(22)), LAYER, tie=replace(TieBack(), **fields))


def drawn(room: Room, panels: str = "drawn") -> tuple[list[Group], tuple[PanelOut, ...]]:
    landed = set_out_afresh(room, "w1", "s1", TRADE)
    view = View(panels=panels)  # type: ignore[arg-type]
    groups = [group for group in draw_wall(landed, TRADE, view) if group.layer == f"panel-{panels}"]
    return groups, landed.treatments[0].layers[0].panels


def outline(group: Group) -> list[tuple[float, float]]:
    """End points of the steps of the cloth's outline: the second fill, after its shadow."""
    cloth = [record for record in group.records if isinstance(record, Fill)][1]
    return [(float(step[-2]), float(step[-1])) for step in cloth.steps if len(step) > 1]


@pytest.mark.parametrize("which", [0, 1])
def test_the_outline_goes_through_the_hook_the_waist_the_lead_and_the_lifted_corner(which: int) -> None:
    groups, landed = drawn(tied())
    panel = landed[which]
    assert panel.tie is not None
    points = outline(groups[which])
    far = panel.tie.waist[1] if which == 0 else panel.tie.waist[0]
    foot = panel.tie.foot[1] if which == 0 else panel.tie.foot[0]
    for wanted in (
        panel.tie.hook,
        (far, panel.tie.hook[1]),
        panel.tie.edge[0],
        (foot, panel.tie.hem_mm + panel.tie.lift_mm),
    ):
        assert min(abs(x - wanted[0]) + abs(y - wanted[1]) for x, y in points) < 1e-6


def test_the_swept_edge_is_the_set_outs_parabola() -> None:
    groups, landed = drawn(tied())
    tie, panel = landed[0].tie, landed[0]
    assert tie is not None
    cloth = [record for record in groups[0].records if isinstance(record, Fill)][1]
    # The cubic from the waist up to the leading edge's top, halved: de Casteljau at one half.
    index = next(i for i, step in enumerate(cloth.steps) if len(step) > 1 and abs(float(step[-2]) - tie.edge[0][0]) < 1e-6)
    a, b, c, d = (
        (float(cloth.steps[index - 1][-2]), float(cloth.steps[index - 1][-1])),
        *((float(cloth.steps[index][k]), float(cloth.steps[index][k + 1])) for k in (1, 3, 5)),
    )
    half = tuple((a[k] + 3 * b[k] + 3 * c[k] + d[k]) / 8 for k in (0, 1))
    middle = tie.edge[len(tie.edge) // 2]
    assert half == pytest.approx(middle)
    assert panel.side == "left"


def test_a_loop_and_an_arm_look_different_and_open_panels_hang_free() -> None:
    (loop, _), _ = drawn(tied())
    (arm, _), _ = drawn(tied(kind="arm"))
    assert loop.records != arm.records
    (free, _), _ = drawn(good_room(), "open")
    (untied, _), _ = drawn(
        replace_at(tied(), LAYER, panels=good_room().walls[0].schemes[0].treatments[0].layers[0].panels), "open"
    )
    assert [type(record) for record in untied.records] == [type(record) for record in free.records]
    assert any(isinstance(record, Path) for record in loop.records)


def test_what_never_draws_hangs_tied_in_every_view() -> None:
    room = panels(tied(), stationary=True)
    (open_left, _), landed = drawn(room, "open")
    assert landed[0].tie is not None
    far = (landed[0].tie.waist[1], landed[0].tie.hook[1])
    assert min(abs(x - far[0]) + abs(y - far[1]) for x, y in outline(open_left)) < 1e-6
