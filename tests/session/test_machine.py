"""A random person: short lives in the suite, long ones in rooms of every kind run apart."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import settings

from elevation.room.model import Room
from tests.session.machine import SessionMachine
from tests.strategies import random_room


class LongLife(SessionMachine):
    """Begins with random rooms too, which can say everything a room file can say."""

    @staticmethod
    @cache
    def _random() -> tuple[Room, ...]:
        return tuple(random_room(seed) for seed in range(60))

    def starts(self) -> tuple[Room, ...]:
        return *super().starts(), *self._random()


class TestShortLives(SessionMachine.TestCase):
    settings = settings(max_examples=20, stateful_step_count=20)


@pytest.mark.slow
class TestLongLives(LongLife.TestCase):
    settings = settings(max_examples=100, stateful_step_count=40)
