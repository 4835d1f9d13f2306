"""Pelmets near heaters, and the irons that hold them. The pelmet is that of ``test_pelmet.py`` in the room of ``rooms``."""

from __future__ import annotations

from itertools import pairwise

import pytest

from elevation.findings.model import Weight
from elevation.planning.hanging import hanging_steps
from elevation.planning.remedies import remedies
from elevation.room.model import Room
from tests.findings.rooms import HALF, INCH, good_room, obstacle, said, scene, the, trade, with_obstacle
from tests.findings.rooms import found as found_in
from tests.findings.test_pelmet import dressed


def heater(top_in: float, kind: str = "electric-heater", **more: object) -> Room:
    """A heater 20 in wide under the pelmet whose top stands that high."""
    room = dressed()
    return with_obstacle(room, obstacle(kind, 60 * INCH, top_in * INCH - 100, 20 * INCH, 100, 3 * INCH, **more))


def bottom() -> float:
    pelmet = scene(dressed()).set_out.treatments[0].pelmet
    assert pelmet is not None
    return pelmet.bottom_mm / INCH


def test_a_pelmet_keeps_as_far_from_an_electric_heater_as_cloth() -> None:
    # 12 in without the heater's own sheet (the table of limits).
    low = bottom()
    assert not found_in(heater(low - 12), "pelmet-heat")
    assert not found_in(heater(low - 12 + HALF / INCH), "pelmet-heat")
    one = the(heater(low - 12 + (HALF + 0.1) / INCH), "pelmet-heat")
    assert one.weight is Weight.BROKEN
    assert "comes within" in said(one.text)
    offered = remedies(heater(low - 11), "w1", "s1", the(heater(low - 11), "pelmet-heat"), trade()).offered
    assert said(offered[0].label).startswith("Make the pelmet 13 in deep") or "Take the pelmet" in said(offered[-1].label)


@pytest.mark.parametrize("kind", ["board", "valance"])
def test_one_that_touches_a_heater_is_a_stop(kind: str) -> None:
    low = bottom()
    room = heater(low + 1)
    room = with_obstacle(dressed(kind=kind), obstacle("flame-heater", 60 * INCH, (low - 5) * INCH, 500, 7 * INCH, 80))
    one = the(room, "pelmet-heat")
    assert one.weight is Weight.STOP
    assert ("the valance hangs at" if kind == "valance" else "the pelmet stands at") in said(one.text)


def test_a_radiator_or_no_pelmet_is_no_matter() -> None:
    low = bottom()
    assert not found_in(heater(low - 2, "hot-water-radiator"), "pelmet-heat")
    assert not found_in(good_room(), "pelmet-heat")


def test_angle_irons_stand_evenly_not_more_than_20_in_apart_and_are_told() -> None:
    # Common practice, no source: the outer ones 2 in in from the ends.
    laid = scene(dressed()).set_out
    pelmet = laid.treatments[0].pelmet
    assert pelmet is not None
    irons = [x / INCH for x in pelmet.irons_mm]
    assert irons[0] == pytest.approx(pelmet.left_mm / INCH + 2)
    assert irons[-1] == pytest.approx(pelmet.right_mm / INCH - 2)
    gaps = [b - a for a, b in pairwise(irons)]
    assert max(gaps) <= 20 + 1e-9
    assert max(gaps) == pytest.approx(min(gaps))
    assert (len(irons) - 2) * 20 < irons[-1] - irons[0]
    steps = hanging_steps(dressed(), laid, laid.treatments[0], trade())
    step = next(one for one in steps if "angle irons" in said(one.text))
    assert len(step.details) == len(irons) + 1
