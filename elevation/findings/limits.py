"""Limits of rules: the trade's figure, or the room's own where it has one.

Measuring is plain arithmetic (``limit_mm``); words are made only once a finding exists.
"""

from __future__ import annotations

from elevation.findings.model import Scene
from elevation.words import Message, Mm, msg


def limit_mm(scene: Scene, limit_id: str) -> float:
    """The limit in mm that holds in this room: its own figure, else the trade's."""
    own = scene.room.limits.get(limit_id)
    return scene.trade.limits[limit_id].value if own is None else own.mm


def is_own(scene: Scene, limit_id: str) -> bool:
    """Whether the room overrides that limit."""
    return limit_id in scene.room.limits


def said_limit(scene: Scene, limit_id: str) -> Message:
    """The limit as words: the trade's is a round figure of a rule of thumb; a room's own says that it is one."""
    if is_own(scene, limit_id):
        return msg("{limit} (this room's own limit)", limit=Mm(limit_mm(scene, limit_id)))
    return msg("{limit}", limit=Mm(limit_mm(scene, limit_id), about=True))


def authority_of(scene: Scene, limit_id: str) -> Message:
    """Who sets the limit; where the room overrides it, both figures are named."""
    row = scene.trade.limits[limit_id]
    usual = Message(row.authority)
    if is_own(scene, limit_id):
        return msg(
            "this room's own limit, instead of {usual} ({authority})", usual=Mm(row.value, about=True), authority=usual
        )
    return usual


def drilling() -> Message:
    """The caution of every new hole."""
    return msg("Find cables and pipes with a detector, current off, and stand on a firm ladder before you drill.")


def common_practice() -> Message:
    """The authority of what the trade does without a printed source."""
    return msg("common practice")


def by_geometry() -> Message:
    """The authority of what cannot be: two solid things in one place."""
    return msg("geometry of the set-out")
