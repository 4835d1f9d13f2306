"""A track is called a track: whatever is wrong with a wall, no sentence about one says rod."""

from __future__ import annotations

import re

import pytest

from elevation.findings.naming import noun_of
from elevation.room.edits import replace_rod
from elevation.room.model import Room
from elevation.setting_out.whole import set_out
from elevation.words import Style, say
from tests.findings.rooms import found, good_room, held, inch, reach, rod, said, trade
from tests.findings.test_texts import CASES

# These compare with other supports, or name what to take in place of it.
OF_OTHERS = re.compile(r"the other rods of this|tension rod|eyelets, tabs and pockets|straight rod")


def on_tracks(room: Room) -> Room:
    """The room with every layer of its first scheme on a track."""
    wall = room.walls[0]
    for scheme in wall.schemes:
        for treatment in scheme.treatments:
            for layer in treatment.layers:
                ref = (wall.id, scheme.id, treatment.id, layer.id)
                room = replace_rod(room, ref, kind="track", section="track-slim", ends="cap")
    return room


@pytest.mark.parametrize("number", range(0, len(CASES), 2))
def test_no_sentence_of_a_track_says_rod(number: int) -> None:
    for finding in found(on_tracks(CASES[number][0])):
        text = OF_OTHERS.sub("", said(finding.text))
        assert not re.search(r"\brods?\b", text), text


def test_the_track_is_named_in_both_languages() -> None:
    room = on_tracks(rod(good_room(), height=held("above-casing", inch(1))))
    low = next(one for one in found(room) if one.rule == "rod-low")
    assert said(low.text).startswith("Window 1: the track's centre line is 1 in above the casing")
    german = say(low.text, Style("mm", 1.0, ",", "de"))
    assert "die Schienenachse" in german
    layer = set_out(reach(good_room(), inch(8)), "w1", "s1", trade()).treatments[0].layers[0]
    assert said(noun_of(layer)) == "rod"
