"""What treatments need, part by part: brackets, ends, rings, panels, fixings, boards, what dresses them."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.buying.cloth import add_cloth, add_valance
from elevation.planning.buying.model import Tally, Window
from elevation.planning.buying.parts import size, slug
from elevation.planning.dressed import Dressed
from elevation.planning.made import runners_of
from elevation.planning.shop_made import kits_made
from elevation.room.find import layer_of, wall_of
from elevation.room.model import Layer, Panel, Room
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.model import LayerOut, PelmetOut, SetOut, SupportOut, TreatmentOut
from elevation.trade.model import HeadingRow, RingRow, Trade
from elevation.trade.tables import limit_of, row_of
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg, term


def add_needs(tally: Tally, rooms: Sequence[Dressed], windows: Sequence[Window], trade: Trade) -> None:
    """Everything but rods, tools and consumables.

    Parameters
    ----------
    tally : Tally
        Added to.
    rooms : sequence of Dressed
    windows : sequence of Window
        Every treatment of these rooms, in their order.
    trade : Trade
    """
    numbers = {(window.room, window.ref): index for index, window in enumerate(windows)}
    for at, dressed in enumerate(rooms):
        placed: set[tuple[str, float, float]] = set()
        for wall in dressed.walls:
            for laid in wall.treatments:
                _treatment(tally, dressed.room, wall, laid, numbers[at, laid.ref], placed, trade)


def _treatment(
    tally: Tally,
    room: Room,
    wall: SetOut,
    laid: TreatmentOut,
    window: int,
    placed: set[tuple[str, float, float]],
    trade: Trade,
) -> None:
    substrate = wall_of(room, wall.wall).substrate
    for layer in laid.layers:
        mine = layer_of(room, layer.ref)
        _metal(tally, layer, mine, window, trade)
        _fixings(tally, layer, mine, substrate, window, trade)
        _end_fixings(tally, layer, mine, substrate, window, trade)
        _runners(tally, room, layer, mine, window, trade)
        for panel in mine.panels:
            _panel(tally, panel, mine, window)
        _board(tally, wall, layer, substrate, window, trade)
        _ties(tally, layer, mine, substrate, window, trade)
        add_cloth(tally, room, mine, layer, window, placed, trade)
    if laid.pelmet is not None and laid.layers:
        add_valance(tally, room, layer_of(room, laid.layers[0].ref), laid.pelmet, window, placed, trade)
    _dress(tally, laid, window)


def _metal(tally: Tally, layer: LayerOut, mine: Layer, window: int, trade: Trade) -> None:
    support = layer.support
    for bracket in layer.brackets:
        kit = row_of(trade.brackets, bracket.kit, "bracket kit")
        # The back rod's place is part of the front layer's double bracket.
        if kit.mount != "layer" and (bracket.is_there or kit.id not in kits_made(trade)):
            notes = (msg("one that hangs there already is at hand"),) if bracket.is_there else ()
            there = 1 if bracket.is_there else 0
            tally.add(f"bracket:{kit.id}", "brackets", term(kit.name), 1, window, there=there, notes=notes)
    if support.kind == "tension-rod":
        note: tuple[Message, ...] = ()
        if support.least_mm is not None and support.most_mm is not None:
            note = (msg("its packet: {least} to {most}", least=Mm(support.least_mm), most=Mm(support.most_mm)),)
        tally.add(
            f"tension-rod:{size(support.length_mm)}",
            "rods",
            msg("tension rod for {width} from jamb to jamb", width=Mm(support.length_mm)),
            1,
            window,
            notes=note,
        )
        return
    for end in (support.left_ends or support.ends, support.right_ends or support.ends):
        # A rod that goes on round a corner ends in a joint, which is no row of the table.
        row = trade.ends.get(end)
        if row is not None and (row.shape in ("cap", "ball", "spear", "socket") or row.id == "elbow"):
            tally.add(f"end:{row.id}", "ends", term(row.name), 1, window, notes=(_fits(support),))
    if support.splices_mm:
        section = row_of(trade.sections, mine.rod.section, "section")
        name = msg("joint for {section}", section=term(section.name))
        tally.add(f"joint:{section.id}", "ends", name, len(support.splices_mm), window)


def _fits(support: SupportOut) -> Message:
    return msg("for a rod of {diameter}", diameter=Mm(support.diameter_mm, about=True))


def _fixings(tally: Tally, layer: LayerOut, mine: Layer, substrate: str, window: int, trade: Trade) -> None:
    chosen = {bracket.id: bracket.fixing for bracket in mine.brackets}
    for bracket in layer.brackets:
        count = len(row_of(trade.brackets, bracket.kit, "bracket kit").holes_mm)
        if not count or bracket.is_there:
            continue
        row = trade.fixings.get(chosen.get(bracket.ref[-1]) or bracket.fixing or "")
        if row is not None:
            tally.add(f"fixing:{row.id}", "fixings", term(row.name), count, window)
        else:
            _by_the_wall(tally, "timber" if layer.board is not None else substrate, count, window, trade)


def _end_fixings(tally: Tally, layer: LayerOut, mine: Layer, substrate: str, window: int, trade: Trade) -> None:
    """Screws of the ends that carry the rod; a side wall's own kind is asked on the spot where it is not known."""
    support, held = layer.support, (None, None) if layer.loads is None else layer.loads.held
    chosen = (mine.rod.left_fixing, mine.rod.right_fixing)
    for side, end in enumerate((support.left_ends, support.right_ends)):
        if not support.carried[side] or end not in trade.ends:
            continue
        told = held[side]
        row = trade.fixings.get(chosen[side] or ("" if told is None else told.fixing))
        count = len(trade.ends[end].holes_mm)
        if row is not None:
            tally.add(f"fixing:{row.id}", "fixings", term(row.name), count, window)
        elif trade.ends[end].shape == "return":
            _by_the_wall(tally, substrate, count, window, trade)
        else:
            _by_the_wall(tally, "not-known", count, window, trade)


def _by_the_wall(tally: Tally, substrate: str, count: int, window: int, trade: Trade) -> None:
    row = row_of(trade.substrates, substrate, "substrate")
    tally.add(
        f"fixing:{substrate}",
        "fixings",
        msg("screws or anchors by the wall: {wall}", wall=term(row.name)),
        count,
        window,
        notes=(term(row.fix),),
    )


def _runners(tally: Tally, room: Room, layer: LayerOut, mine: Layer, window: int, trade: Trade) -> None:
    """Rings on a rod, glides in a track, and the hooks that pleats hang on them by."""
    heading = row_of(trade.headings, layer.heading, "heading")
    count = sum(runners_of(room, mine, layer, trade).values())
    is_track = layer.support.kind == "track"
    if not count or not (is_track or heading.carries == "rings"):
        return
    parked = msg("those that are held beyond the end brackets are counted in")
    if is_track:
        tally.add("glide:track", "rings", msg("glides for the track"), count, window)
    else:
        _rings(
            tally,
            heading,
            layer.support,
            layer.wish.ring_mm,
            count,
            window,
            (parked,) if heading.parks_outside else (),
            trade,
        )
    if heading.is_pleated or heading.drawing in ("pencil", "wave") or (is_track and heading.carries == "rings"):
        tally.add(f"hook:{heading.id}", "rings", msg("hooks for {heading}", heading=term(heading.name)), count, window)


def _rings(
    tally: Tally,
    heading: HeadingRow,
    support: SupportOut,
    own_mm: float | None,
    count: int,
    window: int,
    parked: tuple[Message, ...],
    trade: Trade,
) -> None:
    least = limit_of(trade, "rings-tight")
    ring = ring_for(support.diameter_mm, trade)
    kind = "clip-ring" if heading.id == "clip-rings" else "ring"
    what = term(heading.name) if heading.drawing == "rings" else msg("rings with an eye")
    if own_mm is not None:
        part = f"{kind}:{own_mm:.0f}"
        name = msg("{what}, bore {bore}", what=what, bore=Mm(own_mm))
        note = _play(own_mm, support) if own_mm - support.diameter_mm + TOUCH_MM >= least else _TIGHT
    elif ring is None:
        part = f"{kind}:wide"
        name = msg("{what}, wide enough for a rod of {diameter}", what=what, diameter=Mm(support.diameter_mm, about=True))
        note = msg("No ring of the table runs on it: ask for one with room to spare.")
    else:
        part = f"{kind}:{ring.id}"
        name = msg("{what}, bore {bore}", what=what, bore=Mm(ring.bore_mm, about=True))
        note = _play(ring.bore_mm, support)
    tally.add(part, "rings", name, count, window, notes=(note, *parked))


_TIGHT = msg("the ring that was measured is tight on this rod: see the findings")


def _play(bore_mm: float, support: SupportOut) -> Message:
    return msg(
        "bore checked: {play} more than the rod's {diameter}",
        play=Mm(bore_mm - support.diameter_mm, about=True),
        diameter=Mm(support.diameter_mm, about=True),
    )


def ring_for(diameter_mm: float, trade: Trade) -> RingRow | None:
    """The smallest ring that runs on a rod of that diameter; None where none of the table does."""
    least = diameter_mm + limit_of(trade, "rings-tight")
    fits = [row for row in trade.rings.values() if row.bore_mm + TOUCH_MM >= least]
    return min(fits, key=lambda row: row.bore_mm, default=None)


def _panel(tally: Tally, own: Panel, mine: Layer, window: int) -> None:
    """A ready-made panel: one that has a label, or that was measured as it lies there."""
    length = own.label_length or own.measured_length or own.hung_length
    if length is None:
        return
    name = mine.fabric.name
    part = f"panel:{size(own.flat_width.mm, length.mm)}" + (f"-{slug(name)}" if slug(name) else "")
    what = msg("panel {width} wide, {length} long", width=Mm(own.flat_width.mm), length=Mm(length.mm))
    if name:
        what = msg("{panel}, {cloth}", panel=what, cloth=name)
    in_hand = own.measured_length is not None or own.hung_length is not None
    notes = (msg("measured, so it is in your hand already"),) if in_hand else ()
    tally.add(part, "panels", what, own.count, window, there=own.count if in_hand else 0, notes=notes)


def _board(tally: Tally, wall: SetOut, layer: LayerOut, substrate: str, window: int, trade: Trade) -> None:
    board = layer.board
    if board is None:
        return
    length, height = board.right_mm - board.left_mm, board.top_mm - board.bottom_mm
    name = msg(
        "mounting board {length} long, {height} by {thick}",
        length=Mm(length),
        height=Mm(height, about=True),
        thick=Mm(board.thick_mm, about=True),
    )
    tally.add(f"board:{size(length, height, board.thick_mm)}", "boards", name, 1, window)
    # Two screws at each piece of framing; where none is known, two behind each bracket.
    middle = (board.bottom_mm + board.top_mm) / 2
    studs = [
        zone
        for zone in wall.zones
        if zone.kind in FRAMING
        and zone.kind != "header"
        and zone.bottom_mm <= middle <= zone.top_mm
        and board.left_mm <= (zone.left_mm + zone.right_mm) / 2 <= board.right_mm
    ]
    row = None if board.held is None else trade.fixings.get(board.held.fixing)
    if row is not None and studs:
        tally.add(f"fixing:{row.id}", "fixings", term(row.name), 2 * len(studs), window)
    else:
        _by_the_wall(tally, substrate, 2 * len(layer.brackets), window, trade)


def _ties(tally: Tally, layer: LayerOut, mine: Layer, substrate: str, window: int, trade: Trade) -> None:
    tie = mine.tie
    if tie is None or not layer.panels:
        return
    count = len(layer.panels)
    if tie.kind == "loop":
        tally.add("tie:loop", "dress", msg("tie-backs of cord or cloth"), count, window)
    if tie.there:
        return
    if tie.kind == "loop":
        tally.add("tie:hook", "dress", msg("hooks for tie-backs"), count, window)
    else:
        tally.add("tie:arm", "dress", msg("arms that hold the cloth back"), count, window)
    # A hook takes one screw, an arm two (common practice, no source).
    _by_the_wall(tally, substrate, count if tie.kind == "loop" else 2 * count, window, trade)


def _dress(tally: Tally, laid: TreatmentOut, window: int) -> None:
    if laid.pelmet is not None:
        _pelmet(tally, laid.pelmet, window)
    for blind in laid.blinds:
        wide = blind.right_mm - blind.left_mm
        name = msg("blind, its box {width} wide", width=Mm(wide))
        tally.add(f"blind:{size(wide)}", "dress", name, 1, window)


def _pelmet(tally: Tally, pelmet: PelmetOut, window: int) -> None:
    wide, deep = pelmet.length_mm, pelmet.top_mm - pelmet.bottom_mm
    iron = msg("angle iron for a shelf {out} deep", out=Mm(pelmet.out_mm))
    screws = (msg("with its screws for the shelf, and for this wall what its kind asks for"),)
    tally.add(f"iron:{size(pelmet.out_mm)}", "brackets", iron, len(pelmet.irons_mm), window, notes=screws)
    if pelmet.kind == "board":
        name = msg("pelmet board {width} wide, {depth} deep", width=Mm(wide), depth=Mm(deep))
        notes = (msg("with two returns of {out} and a shelf on top", out=Mm(pelmet.out_mm)),)
        tally.add(f"pelmet:{size(wide, deep, pelmet.out_mm)}", "boards", name, 1, window, notes=notes)
        return
    name = msg("shelf for a valance, {width} long, {out} deep", width=Mm(wide), out=Mm(pelmet.out_mm))
    tally.add(f"shelf:{size(wide, pelmet.out_mm)}", "boards", name, 1, window)
