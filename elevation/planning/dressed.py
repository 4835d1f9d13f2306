"""Rooms set out for making: every wall in the scheme that is to be made."""

from __future__ import annotations

from msgspec import Struct

from elevation.findings.all_rules import find
from elevation.findings.model import Finding, Scene
from elevation.room.model import Room
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade


class Dressed(Struct, frozen=True):
    """A room, its walls as they are set out in the schemes that are to be made, and what was found on each."""

    room: Room
    walls: tuple[SetOut, ...]
    findings: tuple[tuple[Finding, ...], ...] = ()


def dress(room: Room, trade: Trade, wall: str | None = None, scheme: str | None = None) -> Dressed:
    """A room with its walls set out.

    Parameters
    ----------
    room : Room
    trade : Trade
    wall : str or None
        The id of the one wall that is meant; None: all.
    scheme : str or None
        The id of that wall's scheme; None: the first of each wall.
    """
    walls = [one for one in room.walls if wall is None or one.id == wall]
    laid = tuple(
        set_out(room, one.id, scheme if scheme is not None else one.schemes[0].id if one.schemes else None, trade)
        for one in walls
    )
    return Dressed(room, laid, tuple(find(Scene(room, one, trade)) for one in laid))
