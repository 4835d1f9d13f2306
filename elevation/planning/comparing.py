"""Schemes of one wall side by side: each set out, what was found in it, and a table of what differs.

A bare wall is a scheme like any other here: the view *before*. Nothing is drawn in this module.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.planning.buying.model import BuyingList
from elevation.planning.buying.shelf import saw_of
from elevation.planning.buying.whole import buying_list
from elevation.planning.compared_rows import Row, Seen, rows_of
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import Dressed
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.called import scheme_title
from elevation.room.find import scheme_of, wall_of
from elevation.room.model import Room
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.words import Message, msg

MOST = 4
"""More schemes than this are no longer taken in at a glance."""
_SECONDS = 2.0
"""How long the cut of one scheme's few rods may be looked for."""


class Comparison(Struct, frozen=True):
    """Two to four schemes of one wall."""

    room: Room
    wall: str
    schemes: tuple[Seen, ...]
    rows: tuple[Row, ...]

    @property
    def differing(self) -> tuple[Row, ...]:
        """The rows worth a look."""
        return tuple(row for row in self.rows if row.differs)

    @property
    def alike(self) -> tuple[Row, ...]:
        """What reads the same in every scheme."""
        return tuple(row for row in self.rows if not row.differs)


def choices(room: Room, wall_id: str) -> tuple[tuple[str | None, Message], ...]:
    """What of a wall can be compared: the bare wall, and every scheme in which something hangs or could."""
    wall = wall_of(room, wall_id)
    named: list[tuple[str | None, Message]] = [(None, msg("Bare wall"))]
    for number, scheme in enumerate(wall.schemes, 1):
        named.append((scheme.id, scheme_title(scheme, number)))
    return tuple(named)


def pages_of(room: Room, wall_id: str) -> tuple[tuple[str | None, ...], ...]:
    """Which schemes of a wall are compared together: up to four, more of them parted as evenly as can be.

    A wall with one scheme is shown before and after; one without any not at all.
    """
    ids = [scheme.id for scheme in wall_of(room, wall_id).schemes]
    if not ids:
        return ()
    if len(ids) == 1:
        return ((None, ids[0]),)
    count = -(-len(ids) // MOST)
    least, over = divmod(len(ids), count)
    found: list[tuple[str | None, ...]] = []
    at = 0
    for page in range(count):
        size = least + (page < over)
        found.append(tuple(ids[at : at + size]))
        at += size
    return tuple(found)


def compare(
    room: Room,
    wall_id: str,
    scheme_ids: Sequence[str | None],
    trade: Trade,
    *,
    is_cancelled: Callable[[], bool] = lambda: False,
) -> Comparison:
    """Set out the schemes of a wall and lay their figures side by side.

    Parameters
    ----------
    room : Room
    wall_id : str
    scheme_ids : sequence of str or None
        In the order in which they are shown; None is the bare wall.
    trade : Trade
    is_cancelled : callable
        Asked while rods are cut.

    Raises
    ------
    NoSuch
        The wall has no such scheme.
    """
    names = dict(choices(room, wall_id))
    shown: list[Seen] = []
    bought: list[BuyingList] = []
    for key in scheme_ids:
        scheme_of(room, wall_id, key)
        laid = set_out(room, wall_id, key, trade)
        findings = find(Scene(room, laid, trade)) if key is not None else ()
        shown.append(Seen(key, names[key], laid, findings))
        bought.append(_bought(Dressed(room, (laid,), (findings,)), trade, is_cancelled))
    return Comparison(room, wall_id, tuple(shown), rows_of(room, shown, bought, trade))


def _bought(dressed: Dressed, trade: Trade, is_cancelled: Callable[[], bool]) -> BuyingList:
    saw = saw_of(trade)
    cuts = cut_list(rod_pieces((dressed,), trade), saw, trade, seconds=_SECONDS, is_cancelled=is_cancelled)
    return buying_list((dressed,), cuts, trade)
