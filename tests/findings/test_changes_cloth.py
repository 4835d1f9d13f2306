"""Candidate changes to cloth before anything is tried, by hand from ``rooms.py``: pairs of 54 in, stacks of 4 1/2 in."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.changing_cloth import counts, finished_length, flat_width, hem_above, narrower
from elevation.findings.model import Change
from elevation.room.find import layer_of
from elevation.room.model import Hem, Panel, Room
from tests.findings.rooms import INCH, LAYER, LEFT_PANEL, at, good_room, inch, layer, panels, said_all, scene

FIRST, SECOND = layer().panels


def hung(*of: Panel) -> Room:
    return at(good_room(), LAYER, panels=of)


def metric() -> Room:
    """The same room, read to whole millimetres."""
    return at(good_room(), (), unit="mm")


def after(change: Change, room: Room) -> tuple[Panel, ...]:
    return layer_of(change.edit(room), LAYER).panels


def test_less_cloth_stacks_less_in_proportion() -> None:
    # 54 in of cloth stack to 4 1/2 in; 1 in less is 3 1/2 in: 54 x 3.5 / 4.5 = 42 in.
    offered = list(narrower(scene(good_room()), LEFT_PANEL, INCH))
    assert said_all(offered) == ["Make every panel 42 in wide laid flat", "Make the panel 42 in wide laid flat"]
    pair, single = (after(change, good_room()) for change in offered)
    assert [panel.flat_width.mm for panel in pair] == pytest.approx([42 * INCH, 42 * INCH])
    assert [panel.flat_width.mm for panel in single] == pytest.approx([42 * INCH, 54 * INCH])


def test_a_width_that_is_not_on_the_tape_goes_to_the_mark_below() -> None:
    # 1/4 in less: 54 x 4.25 / 4.5 = 51 in; 1/3 in less: 50 in; 0.3 in less: 50.4 in, 50 3/8 in on the tape.
    here = scene(good_room())
    for less, flat in ((1 / 4, "51"), (1 / 3, "50"), (0.3, "50³⁄₈")):
        assert said_all(narrower(here, LEFT_PANEL, less * INCH))[0] == f"Make every panel {flat} in wide laid flat"


def test_cloth_is_never_made_to_stack_to_nothing() -> None:
    here = scene(good_room())
    assert said_all(narrower(here, LEFT_PANEL, 4.5 * INCH + 1e-6)) == []
    assert said_all(narrower(here, LEFT_PANEL, 4.5 * INCH)) == []
    # 1/10 in of stack left: 1.2 in of cloth.
    assert said_all(narrower(here, LEFT_PANEL, 4.4 * INCH))[0] == "Make every panel 1³⁄₁₆ in wide laid flat"


def test_a_stack_that_was_measured_says_nothing_of_other_widths() -> None:
    assert said_all(narrower(scene(panels(good_room(), stack=inch(4.5))), LEFT_PANEL, INCH)) == []


def test_a_flat_width_for_the_pair_and_for_one() -> None:
    both, lone = good_room(), hung(FIRST)
    every, one = "Make every panel 40 in wide laid flat", "Make the panel 40 in wide laid flat"
    assert said_all(flat_width(scene(both), LEFT_PANEL, 40 * INCH)) == [every, one]
    assert said_all(flat_width(scene(both), LAYER, 40 * INCH)) == [every]
    for ref in (LEFT_PANEL, LAYER):
        (change,) = flat_width(scene(lone), ref, 40 * INCH)
        assert said_all([change]) == [one]
        assert [panel.flat_width.mm for panel in after(change, lone)] == pytest.approx([40 * INCH])
    assert said_all(flat_width(scene(hung()), LAYER, 40 * INCH)) == []


def test_no_flat_width_of_nothing() -> None:
    here = scene(metric())
    assert said_all(flat_width(here, LAYER, 0.0)) == []
    assert said_all(flat_width(here, LAYER, -1.0)) == []
    assert len(said_all(flat_width(here, LAYER, 1.0))) == 1


def test_a_piece_more_or_less_in_every_panel() -> None:
    (more,) = counts(scene(good_room()), LAYER, 1)
    assert said_all([more]) == ["Hang 2 pieces side by side in every panel"]
    assert [panel.count for panel in after(more, good_room())] == [2, 2]
    two = panels(good_room(), count=2)
    (less,) = counts(scene(two), LAYER, -1)
    assert said_all([less]) == ["Hang 1 piece in every panel"]
    assert [panel.count for panel in after(less, two)] == [1, 1]
    # None would be left; unlike panels are no pair; and where no cloth hangs none is added.
    assert said_all(counts(scene(good_room()), LAYER, -1)) == []
    assert said_all(counts(scene(hung(FIRST, replace(SECOND, count=2))), LAYER, 1)) == []
    assert said_all(counts(scene(hung(replace(FIRST, count=2), SECOND)), LAYER, 1)) == []
    assert said_all(counts(scene(hung()), LAYER, 1)) == []


def test_a_hem_ends_at_or_above_a_height() -> None:
    # Cloth begins at 82 1/2 in.
    here = scene(good_room())
    assert said_all(hem_above(here, LEFT_PANEL, 20 * INCH)) == ["Make the cloth 62¹⁄₂ in long"]
    assert said_all(hem_above(here, LEFT_PANEL, 20.03 * INCH)) == ["Make the cloth 62⁷⁄₁₆ in long"]
    assert said_all(hem_above(here, LEFT_PANEL, 82.5 * INCH)) == []
    assert said_all(hem_above(here, LEFT_PANEL, 83 * INCH)) == []
    assert len(said_all(hem_above(scene(metric()), LEFT_PANEL, 82.5 * INCH - 1.2))) == 1


def test_panels_in_hand_are_taken_up_and_never_let_down() -> None:
    def up(*long: float | None) -> list[str]:
        pair = zip((FIRST, SECOND), long, strict=True)
        of = [replace(panel, measured_length=None if inches is None else inch(inches)) for panel, inches in pair]
        return said_all(finished_length(scene(hung(*of)), LAYER, 80 * INCH))

    assert up(90, 84) == ["Take the panels up to 80 in long"]
    assert up(90, None) == ["Take the panels up to 80 in long"]
    assert up(None, 90) == ["Take the panels up to 80 in long"]
    assert up(90, 80) == []
    assert up(80, 90) == []
    assert up(90, 70) == []
    measured = panels(good_room(), measured_length=inch(90))
    (change,) = finished_length(scene(measured), LEFT_PANEL, 80 * INCH)
    assert [panel.measured_length.mm for panel in after(change, measured) if panel.measured_length] == pytest.approx(
        [80 * INCH, 80 * INCH]
    )


def test_packets_are_chosen_and_cloth_is_made() -> None:
    bought = panels(good_room(), label_length=inch(84))
    one_bought = hung(FIRST, replace(SECOND, label_length=inch(84)))
    as_it_hangs = at(good_room(), LAYER, hem=Hem("panel"))
    for room in (bought, one_bought, as_it_hangs):
        (change,) = finished_length(scene(room), LAYER, 80 * INCH)
        assert said_all([change]) == ["Choose panels 80 in long"]
        assert [panel.label_length.mm for panel in after(change, room) if panel.label_length] == pytest.approx(
            [80 * INCH, 80 * INCH]
        )
    for ref in (LAYER, LEFT_PANEL):
        (change,) = finished_length(scene(good_room()), ref, 80 * INCH)
        assert said_all([change]) == ["Make the cloth 80 in long"]
        hem = layer_of(change.edit(good_room()), LAYER).hem
        assert (hem.target, hem.at and hem.at.mm) == ("length", pytest.approx(80 * INCH))


@pytest.mark.parametrize("flat", [360, 700])
def test_cloth_that_fills_its_way_is_cut_to_the_stack_that_is_wanted(flat: float) -> None:
    # 12 in of cloth stack to 1 in: 360 and 700 in take more than the 26 1/2 in from 45 1/2 to 72 in that a panel has. To
    # stand 5 in less wide, in 21 1/2 in, it may have 258 in.
    offered = said_all(narrower(scene(panels(good_room(), flat_width=inch(flat))), LEFT_PANEL, 5 * INCH))
    assert offered[0] == "Make every panel 258 in wide laid flat"
