"""The tape trial says the set-out's figures, and the order of work keeps what cannot go back for later."""

from __future__ import annotations

import pytest

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.order import days_of
from elevation.planning.trial import trial_steps
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from elevation.words import Style, say
from tests.strategies import random_room

TRADE = load_trade()
PLAIN = Style(plain=True)


def said(steps):
    return [say(text, PLAIN) for step in steps for text in (step.text, *step.details, *step.cautions)]


def test_the_bedroom_by_hand():
    """Rod 42 to 102 in at 86 1/4 in; stacks end at the casing's inner edges, 48 and 96 in; 84 in panels."""
    wall = dress(load_room(demo_rooms() / "1-bedroom.room.json"), TRADE).walls[0]
    text = "\n".join(said(trial_steps(wall, wall.treatments[0])))
    for wanted in (
        "60 in long",
        "86 1/4 in over the floor there, 42 in",
        "102 in from",
        "48 in from",
        "96 in from",
        "84 in down",
    ):
        assert wanted in text


@pytest.mark.parametrize("seed", range(30))
def test_every_rod_has_its_strip_and_every_drawn_panel_its_stack(seed):
    for wall in dress(random_room(seed), TRADE).walls:
        for laid in wall.treatments:
            texts = said(trial_steps(wall, laid))
            assert sum("Stick a strip where the rod goes" in text for text in texts) == len(laid.layers)
            drawn = [panel for layer in laid.layers for panel in layer.panels if not panel.stationary]
            assert sum("its stack is" in text for text in texts) == len(drawn)


def test_measuring_and_looking_come_before_buying_and_cutting():
    rooms = [dress(load_room(path), TRADE) for path in sorted(demo_rooms().glob("*.room.json"))]
    names = [say(day.name, PLAIN) for day in days_of(rooms)]
    assert [name.split()[0] for name in names] == ["First:", "Then:", "A", "A", "Last:"]
    texts = [text for day in days_of(rooms) for text in said(day.steps)]
    places = [
        next(n for n, text in enumerate(texts) if word in text) for word in ("Tape trial", "Buy cloth", "Cut,", "drill")
    ]
    assert places == sorted(places)


def test_a_room_of_tension_rods_has_no_day_at_the_bench_and_none_on_the_ladder_to_drill():
    room = dress(load_room(demo_rooms() / "8-rented-room.room.json"), TRADE)
    texts = " ".join(text for day in days_of((room,)) for text in said(day.steps))
    assert "drill" not in texts
    assert "bench sheet" not in texts
