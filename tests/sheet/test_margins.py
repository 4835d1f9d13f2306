"""What the margin of an elevation says, the fullest first: nothing is left out without being counted."""

from __future__ import annotations

import itertools
import re

import pytest
from msgspec.structs import replace

from elevation.findings.model import Finding, Weight
from elevation.room.style import style_for
from elevation.sheet.annotation import Annotation
from elevation.sheet.blocks import Block
from elevation.sheet.margins import MOST_IN_FULL, margins
from elevation.words import msg
from tests.sheet.sheet_cases import demo_case, lay, trade

WIDTH = 60.0


def told(block: Block) -> str:
    return " ".join(run.text for run in block.runs)


@pytest.fixture(scope="module")
def ways() -> list[list[Block]]:
    """The hall: four treatments, five findings, one thing not known, and key letters."""
    room, set_out, _ = case = demo_case("hall")
    findings = tuple(
        Finding("meets", Weight.BROKEN, ("w",), msg("Finding {number}.", number=number), msg("geometry"), at=(900.0, 900.0))
        for number in range(1, 6)
    )
    annotation: Annotation = lay(case, 200.0)
    assert annotation.keys
    return [list(way) for way in margins(set_out, findings, {}, trade(), style_for(room), annotation, WIDTH)]


def count_of(block: Block) -> int:
    found = re.fullmatch(r"… and (\d+) more", told(block))
    return int(found[1]) if found else 0


def test_each_way_takes_less_room_than_the_one_before(ways: list[list[Block]]) -> None:
    heights = [sum(block.height for block in way) for way in ways]
    assert all(a >= b for a, b in itertools.pairwise(heights))
    assert len(ways) == 2 + 3 + 2 + 5 + 1  # digests three times shorter, without them, unknown counted, findings fewer


def test_findings_keep_their_numbers_and_those_left_out_are_counted(ways: list[list[Block]]) -> None:
    for way in ways[:-1]:
        numbers = [block.mark[1] for block in way if block.mark is not None]
        assert numbers == list(range(1, len(numbers) + 1))
        after = [count_of(block) for block in way[1:] if count_of(block)]
        left_out = 5 - len(numbers)
        assert left_out == 0 or left_out in after
    assert {len([block for block in way if block.mark]) for way in ways} == {0, 1, 2, 3, 4, 5}


def test_treatments_left_out_are_counted(ways: list[list[Block]]) -> None:
    for way in ways[2:5]:
        place = next(index for index, block in enumerate(way) if count_of(block))
        assert place + count_of(way[place]) == 4
    assert [count_of(block) for block in ways[5] if count_of(block)] == []


def test_keys_are_always_there_and_what_is_not_known_as_long_as_findings_are(ways: list[list[Block]]) -> None:
    for way in ways:
        assert told(way[-1])
        assert any(told(block) == "Key" and block.sticks for block in way)
    assert all(any("not known yet" in told(block).lower() for block in way) for way in ways[:-1])


def test_a_digest_stands_under_its_name_and_no_line_on_another(ways: list[list[Block]]) -> None:
    for block in ways[1]:
        if block.mark is not None:
            continue
        downs = [(run.down, run.size) for run in block.runs if run.right == block.runs[0].right]
        for (upper, _), (lower, size) in itertools.pairwise(downs):
            assert lower - size >= upper - 0.01
        assert block.runs[-1].down < block.height


def test_facts_stand_in_full_for_as_many_treatments_as_have_room() -> None:
    room, set_out, _ = case = demo_case("hall")
    annotation = replace(lay(case, 50.0), keys=(), unshown=())
    style = style_for(room)
    for count, is_full in ((MOST_IN_FULL, True), (MOST_IN_FULL + 1, False)):
        fewer = replace(set_out, treatments=set_out.treatments[:count], missing=())
        way = next(iter(margins(fewer, (), {}, trade(), style, annotation, WIDTH)))
        assert any(told(block).startswith("Height ") for block in way) == is_full
        # Nothing found, all known, no letters: no headings over nothing.
        assert not {"Findings", "Not known yet", "Key"} & {told(block) for block in way}
