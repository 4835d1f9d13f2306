"""What rules try on walls of every kind: each is another edit that says so, and none fails.

The seeds were chosen out of two thousand for what their findings ask: rods into things round a corner, boards over bands,
pelmets before heaters, brackets past the wall, tracks that end free.
"""

from __future__ import annotations

import pytest

from elevation.findings.all_rules import find, find_afresh, rule_of
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Scene
from elevation.handles.all_handles import handles
from elevation.handles.sticking import candidates
from elevation.setting_out.whole import set_out_afresh
from elevation.words import say
from tests.findings.rooms import INCHES, trade
from tests.strategies import random_room


@pytest.mark.parametrize("seed", [300, 316, 335, 345, 411, 412, 417])
def test_what_is_tried_is_an_edit_that_says_what_it_does(seed: int) -> None:
    room = random_room(seed)
    for wall in room.walls:
        for scheme in wall.schemes:
            scene = Scene(room, set_out_afresh(room, wall.id, scheme.id, trade()), trade())
            for finding in find(scene, TreatmentMemo(find_afresh)):
                for change in rule_of(finding.rule).changes(scene, finding):
                    assert say(change.label, INCHES)
                    assert change.edit(room).walls
            for handle in handles(room, scene.set_out, trade()):
                bound = handle.bound(False)
                places = candidates(bound, scene, alone=False)
                assert all(bound.low_mm - 1e-6 <= place.value_mm <= bound.high_mm + 1e-6 for place in places)
