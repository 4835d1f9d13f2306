"""The buying list over rooms."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from elevation.findings.naming import where
from elevation.planning.buying.made import add_made
from elevation.planning.buying.model import HOUSE, BuyingList, Line, Tally, Window
from elevation.planning.buying.needs import add_needs
from elevation.planning.buying.shelf import shelf_parts
from elevation.planning.cut_list import SectionCut
from elevation.planning.cutting.carrying import shop_cuts, too_long_to_carry
from elevation.planning.cutting.model import Bar
from elevation.planning.dressed import Dressed
from elevation.planning.made import is_made
from elevation.room.find import layer_of, treatment_of, wall_of
from elevation.trade.model import Trade
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg, msg_plural, term

_MASONRY = ("masonry", "dabs", "battens", "unknown")


def buying_list(rooms: Sequence[Dressed], cuts: Sequence[SectionCut], trade: Trade) -> BuyingList:
    """Everything that these rooms need, bought once.

    Parameters
    ----------
    rooms : sequence of Dressed
    cuts : sequence of SectionCut
        The cut list of the same rooms.
    trade : Trade

    Returns
    -------
    BuyingList
    """
    windows = windows_of(rooms)
    tally = Tally()
    _rods(tally, cuts, windows)
    add_made(tally, rooms, windows, trade)
    add_needs(tally, rooms, windows, trade)
    _tools(tally, rooms, cuts, trade)
    packs = {row.id: row.count for row in trade.packs.values()}
    lines: tuple[Line, ...] = tuple(tally.lines(shelf_parts(trade), packs, trade.prices))
    return BuyingList(windows, lines)


def windows_of(rooms: Sequence[Dressed]) -> tuple[Window, ...]:
    """Every treatment, in the order of rooms, walls and windows; rooms are named where there are several."""
    found = []
    for at, dressed in enumerate(rooms):
        for wall in dressed.walls:
            for laid in wall.treatments:
                name = msg("{name}", name=laid.name) if laid.name else where(laid)
                name = msg("{wall}, {window}", wall=wall.wall_name or wall.wall, window=name)
                if len(rooms) > 1 and dressed.room.name:
                    name = msg("{room}, {place}", room=dressed.room.name, place=name)
                found.append(Window(at, laid.ref, name, treatment_of(dressed.room, laid.ref).offer))
    return tuple(found)


def _rods(tally: Tally, cuts: Sequence[SectionCut], windows: Sequence[Window]) -> None:
    for cut in cuts:
        weights: dict[int, float] = {}
        for piece in cut.pieces.values():
            index = next(at for at, one in enumerate(windows) if (one.room, one.ref) == (piece.room, piece.ref[:3]))
            weights[index] = weights.get(index, 0.0) + piece.length_mm
        bars: dict[float, list[Bar]] = {}
        for bar in cut.plan.bars:
            bars.setdefault(bar.stock.length_mm, []).append(bar)
        for length, alike in bars.items():
            # A length that the shop does not keep as a rule has a name of its own, for it has its own price.
            is_usual = abs(length - cut.section.stock_mm) <= TOUCH_MM
            part = f"rod:{cut.section.id}" + ("" if is_usual else f"-{length:.0f}")
            name = msg("{section}, {length} long", section=term(cut.section.name), length=Mm(length, about=True))
            there = sum(bar.stock.count is not None for bar in alike)
            tally.add(part, "rods", name, len(alike), HOUSE, there=there, notes=_rod_notes(cut, alike))
            tally.weigh(part, weights)


def _rod_notes(cut: SectionCut, bars: Sequence[Bar]) -> tuple[Message, ...]:
    count = sum(len(bar.pieces) for bar in bars)
    notes: list[Message] = [msg_plural("{count} piece is cut from it", "{count} pieces are cut from it", count=count)]
    if cut.carry_mm is not None and any(shop_cuts(bar, cut.carry_mm) for bar in bars):
        text = msg("let the shop cut it to no more than {length}: marks on the bench sheet", length=Mm(cut.carry_mm))
        notes.append(text)
    far = [one.key for one in too_long_to_carry(cut.plan, cut.carry_mm) if any(one in bar.pieces for bar in bars)]
    if far:
        notes.append(msg("{marks} must be delivered: longer than you carry", marks=", ".join(far)))
    if not cut.plan.is_proven:
        over = cut.plan.cost - cut.plan.bound
        notes.append(msg_plural("at most {count} more than the fewest", "at most {count} more than the fewest", count=over))
    if cut.plan.too_long:
        marks = ", ".join(piece.key for piece in cut.plan.too_long)
        notes.append(msg("no bar is long enough for {marks}", marks=marks))
    return tuple(notes)


def _tools(tally: Tally, rooms: Sequence[Dressed], cuts: Sequence[SectionCut], trade: Trade) -> None:
    """Tools once for all rooms, and what is used up."""
    met = _work(rooms, cuts, trade)
    if "always" not in met:
        return
    for row in trade.tools.values():
        if met.get(row.when, False):
            group = "tools" if row.kind == "tool" else "consumables"
            tally.add(f"{row.kind}:{row.id}", group, term(row.name), 1)


def _work(rooms: Sequence[Dressed], cuts: Sequence[SectionCut], trade: Trade) -> Mapping[str, bool]:
    """What kinds of work these rooms bring, as the table of tools names them."""
    met: dict[str, bool] = {}
    for dressed in rooms:
        for wall in dressed.walls:
            build = trade.substrates[wall_of(dressed.room, wall.wall).substrate].build
            for laid in wall.treatments:
                met["always"] = True
                for layer in laid.layers:
                    if any(bracket.on != "layer" for bracket in layer.brackets):
                        met["holes"] = True
                        if build in _MASONRY and laid.mount != "sash":
                            met["masonry"] = True
                    if is_made(layer_of(dressed.room, layer.ref)):
                        met["cloth"] = True
                    if layer.support.kind == "rod":
                        met["rod"] = True
                        met["metal"] = met.get("metal", False) or layer.support.material != "wood"
    met["cut"] = bool(cuts)
    return met
