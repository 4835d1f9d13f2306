"""Asking for remedies of the room in ``tests/findings/rooms.py``."""

from __future__ import annotations

from elevation.planning.remedies import Remedies, remedies
from elevation.room.model import Room
from tests.findings.rooms import (
    found,
    said,
    trade,
)


def asked(room: Room, rule: str) -> Remedies:
    """The remedies of the first finding of ``rule``."""
    return remedies(room, "w1", "s1", found(room, rule)[0], trade())


def labels(room: Room, rule: str) -> list[str]:
    return [said(remedy.label) for remedy in asked(room, rule).offered]
