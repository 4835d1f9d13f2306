"""What brackets that are made at the bench are bought as: flat bars, and screws that hold their parts together."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.buying.model import HOUSE, Tally, Window
from elevation.planning.buying.shelf import saw_of
from elevation.planning.dressed import Dressed
from elevation.planning.shop_made import flat_cuts, made_brackets
from elevation.trade.model import Trade
from elevation.words import Mm, msg, msg_plural, term


def add_made(tally: Tally, rooms: Sequence[Dressed], windows: Sequence[Window], trade: Trade) -> None:
    """Add the bars and screws of all brackets that are made; windows share their cost by how many brackets each has.

    Parameters
    ----------
    tally : Tally
        Added to.
    rooms : sequence of Dressed
    windows : sequence of Window
        Every treatment of these rooms.
    trade : Trade
    """
    made = made_brackets(rooms, trade)
    if not made:
        return
    count = sum(one.count for one in made)
    note = msg_plural("{count} bracket is made of it", "{count} brackets are made of it", count=count)
    weights = {
        index: float(many)
        for index, window in enumerate(windows)
        for many in [sum(one.of.get((window.room, window.ref), 0) for one in made)]
        if many
    }
    for one in flat_cuts(made, saw_of(trade), trade):
        part = f"flat:{one.flat.id}"
        name = msg("{section}, {length} long", section=term(one.flat.name), length=Mm(one.flat.stock_mm, about=True))
        tally.add(part, "brackets", name, len(one.plan.bars), HOUSE, notes=(note,))
        tally.weigh(part, weights)
    for brackets in made:
        for piece in brackets.parts:
            if piece.length_mm <= 0:
                part = f"made:{piece.row.id}"
                tally.add(part, "fixings", term(piece.row.name), piece.count, HOUSE)
                tally.weigh(part, weights)
