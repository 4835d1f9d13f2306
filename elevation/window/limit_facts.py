"""The limits of the rules as rows of a form: what holds in this room, and the trade's own figure where nothing is typed."""

from __future__ import annotations

from functools import partial
from typing import Any

from msgspec.structs import replace

from elevation.room.model import Room
from elevation.room.validate import check_room
from elevation.trade.model import LimitRow, Trade
from elevation.units import format_length
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import msg, term

_NO_RULE = ("assumed-",)
"""Figures that stand in for a missing measurement are no limits."""


def limit_facts(room: Room, trade: Trade) -> tuple[Fact, ...]:
    """One row for each limit that is a length; an empty one leaves the trade's figure, shown faint."""
    rows = [row for row in trade.limits.values() if row.kind == "length" and not row.id.startswith(_NO_RULE)]
    note = msg("What you write here holds in this room in place of the trade's figure.")
    return (
        Fact((), "limits", note, "note"),
        *(
            Fact(
                (),
                f"limits.{row.id}",
                term(row.name),
                edit=partial(put_limit, row.id),
                read=partial(own_limit, row.id),
                hint=_faint(row, room),
            )
            for row in rows
        ),
    )


def own_limit(key: str, room: Room) -> Any:
    """The room's own figure for a limit; None where it has none."""
    return room.limits.get(key)


def put_limit(key: str, room: Room, value: Any) -> Room:
    """A room with its own figure for a limit; None gives the trade's back.

    Raises
    ------
    BadInput
        The figure is below zero or beyond everything.
    """
    limits = {name: at for name, at in room.limits.items() if name != key}
    if value is not None:
        limits[key] = value
    made = replace(room, limits=limits)
    check_room(made, "")
    return made


def _faint(row: LimitRow, room: Room) -> str:
    return tr(msg("= {figure}", figure=format_length(row.value, room.unit, room.graduation_mm, plain=True)))
