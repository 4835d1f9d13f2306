"""A label for every piece: rods, brackets, boards, pieces of cloth, panels, tie-backs, by the names that all sheets use."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.naming import where
from elevation.planning.dressed import Dressed
from elevation.planning.drilling import drill_places
from elevation.planning.piece_names import Hung, PanelName, hung_layers, panel_names
from elevation.planning.rod_pieces import RodPiece, rod_pieces
from elevation.planning.sewing.model import BoltPlan, CutPiece
from elevation.planning.sewing.said import piece_mark
from elevation.planning.sewing.valances import HungValance
from elevation.planning.sewing.whole import Sewing, sewing_of
from elevation.room.model import Ref
from elevation.setting_out.model import BoardOut, LayerOut, PanelOut
from elevation.trade.model import Trade
from elevation.words import Message, Mm, Style, msg, say, term

Arrow = Literal["up", "left", ""]


class Label(Struct, frozen=True):
    """What stands on one label.

    Attributes
    ----------
    kind : str
        ``rod``, ``bracket``, ``board``, ``cloth``, ``panel``, ``valance``, ``tie-back`` or ``pelmet``.
    mark : Message
        Large: the name that the other sheets use.
    name : Message
        What it is.
    size : Message or None
    side : Message
        Which way up, or which end lies where.
    arrow : str
        ``up``: an arrow to the label's top; ``left``: one to its left; empty: none.
    room : str
    place : Message
        Wall and window.
    at : int
        The number of its room, from 0.
    """

    kind: str
    mark: Message
    name: Message
    size: Message | None
    side: Message
    arrow: Arrow
    room: str
    place: Message
    at: int = 0


def labels_of(rooms: Sequence[Dressed], trade: Trade) -> tuple[Label, ...]:
    """Every label of these rooms, in the order of rooms, walls and windows.

    Parameters
    ----------
    rooms : sequence of Dressed
        The same as the bench sheet is made for: its letters run through all of them.
    trade : Trade
    """
    pieces = rod_pieces(rooms, trade)
    found: list[Label] = []
    for at, dressed in enumerate(rooms):
        sewing = sewing_of(dressed, trade)
        names = panel_names(dressed)
        rods: dict[Ref, list[RodPiece]] = {}
        for piece in pieces:
            if piece.room == at:
                rods.setdefault(piece.ref, []).append(piece)
        for hung in hung_layers(dressed):
            own = _of_layer(dressed, hung, rods.get(hung.layer.ref, ()), names, sewing, trade)
            found.extend(replace(label, at=at) for label in own)
    return tuple(found)


def _of_layer(
    dressed: Dressed,
    hung: Hung,
    rods: Sequence[RodPiece],
    names: Mapping[Ref, PanelName],
    sewing: Sewing,
    trade: Trade,
) -> Iterator[Label]:
    room = dressed.room.name
    laid, layer = hung.laid, hung.layer
    window = msg("{name}", name=laid.name) if laid.name else where(laid)
    place = msg("{wall}, {window}", wall=hung.wall.wall_name or hung.wall.wall, window=window)
    for piece in rods:
        yield Label("rod", msg("{mark}", mark=piece.mark), term(piece.section.name), *_rod(piece), "left", room, place)
    for hole in drill_places(hung.wall, laid, trade):
        if hole.ref[:-1] == layer.ref and not _hangs_there(layer, hole.ref):
            yield Label(
                "bracket",
                msg("Bracket {mark}", mark=hole.mark),
                term(hole.kit.name),
                msg("{figure} {where}", figure=Mm(hole.along.first_mm), where=hole.along.first),
                msg("this way up"),
                "up",
                room,
                place,
            )
    if layer.board is not None:
        yield _board(layer.board, room, place)
    if layer is laid.layers[0] and laid.pelmet is not None and laid.pelmet.kind == "board":
        pelmet = laid.pelmet
        size = msg("{wide} by {deep}", wide=Mm(pelmet.length_mm), deep=Mm(pelmet.top_mm - pelmet.bottom_mm))
        yield Label("pelmet", msg("Pelmet"), msg("pelmet board"), size, msg("this way up"), "up", room, place)
    for valance in sewing.valances:
        if layer is laid.layers[0] and valance.laid.ref == laid.ref:
            yield from _valance(valance, sewing, room, place)
    for panel in layer.panels:
        yield from _panel(panel, names[panel.ref], sewing, room, place)


def _rod(piece: RodPiece) -> tuple[Message, Message]:
    """Its size, and which end lies where."""
    size = msg("{length} long", length=Mm(piece.length_mm))
    end = msg("this end to the left")
    if piece.count > 1:
        end = msg("piece {number} of {count} from the left; {end}", number=piece.number, count=piece.count, end=end)
    if piece.bends[0] and piece.bends[1]:
        end = msg("{end}; both ends are bent back", end=end)
    elif piece.bends[0]:
        end = msg("{end}; the left end is bent back", end=end)
    elif piece.bends[1]:
        end = msg("{end}; the right end is bent back", end=end)
    return size, end


def _hangs_there(layer: LayerOut, ref: Ref) -> bool:
    return any(bracket.is_there for bracket in layer.brackets if bracket.ref == ref)


def _board(board: BoardOut, room: str, place: Message) -> Label:
    size = msg(
        "{length} long, {height} by {thick}",
        length=Mm(board.right_mm - board.left_mm),
        height=Mm(board.top_mm - board.bottom_mm, about=True),
        thick=Mm(board.thick_mm, about=True),
    )
    side = msg("this end to the left, this face to the room")
    return Label("board", msg("Board"), msg("mounting board"), size, side, "left", room, place)


def _panel(panel: PanelOut, name: PanelName, sewing: Sewing, room: str, place: Message) -> Iterator[Label]:
    face = [piece for bolt in sewing.bolts if bolt.use == "face" for piece in _own(bolt, panel.ref)]
    leading = msg("top up; leading edge on the right") if panel.side == "left" else msg("top up; leading edge on the left")
    made = [one for layer in sewing.layers for one in layer.panels if one.ref == panel.ref]
    if made:
        long = max(made[0].left.finished_mm, made[0].right.finished_mm)
        size: Message | None = msg(
            "finished {width} by {length}", width=Mm(made[0].finished_mm, about=True), length=Mm(long)
        )
    elif panel.finished_length_mm is not None and panel.length_by in ("measured", "hung"):
        size = msg(
            "{width} wide, {length} long",
            width=Mm(panel.flat_width_mm / panel.count),
            length=Mm(panel.finished_length_mm),
        )
    else:
        size = None
    yield Label("panel", name.mark, name.name, size, leading, "up", room, place)
    if len(face) > 1:
        for piece in face:
            yield _cloth(piece, msg("piece {number} of {count}, face", number=piece.number, count=piece.count), room, place)
    for use, words in (("lining", msg("lining")), ("interlining", msg("interlining"))):
        for bolt in sewing.bolts:
            if bolt.use == use:
                for piece in _own(bolt, panel.ref):
                    what = msg("piece {number} of {count}, {use}", number=piece.number, count=piece.count, use=words)
                    yield _cloth(piece, what, room, place)
    if panel.tie is not None and panel.tie.is_loop:
        size = msg("its hook {height} over the floor", height=Mm(panel.tie.hook[1] - panel.tie.floor_mm))
        yield Label(
            "tie-back", name.mark, msg("tie-back of the {panel}", panel=name.name), size, _hook_side(panel), "", room, place
        )


_WHOLE = msg("top up; 1 is at the leading edge")
"""Which way a whole width lies in its panel."""


def _hook_side(panel: PanelOut) -> Message:
    return msg("hook on the left") if panel.side == "left" else msg("hook on the right")


def _own(bolt: BoltPlan, ref: Ref) -> list[CutPiece]:
    return sorted((piece for piece in bolt.pieces if piece.panel.ref == ref), key=lambda piece: piece.number)


def _valance(one: HungValance, sewing: Sewing, room: str, place: Message) -> Iterator[Label]:
    size = msg("finished {width} by {length}", width=Mm(one.cloth.finished_mm, about=True), length=Mm(one.cloth.depth_mm))
    yield Label("valance", one.name.mark, one.name.name, size, msg("top up; gathering tape behind"), "up", room, place)
    pieces = [piece for bolt in sewing.bolts if bolt.use == "face" for piece in _own(bolt, one.name.ref)]
    if len(pieces) > 1:
        side = msg("top up; 1 is at the left end")
        for piece in pieces:
            what = msg("piece {number} of {count}, valance", number=piece.number, count=piece.count)
            yield _cloth(piece, what, room, place, side)


def _cloth(piece: CutPiece, what: Message, room: str, place: Message, whole: Message = _WHOLE) -> Label:
    size = msg("cut {length} by {width}", length=Mm(piece.length_mm, about=True), width=Mm(piece.width_mm, about=True))
    side = whole
    if piece.cut_edge:
        side = msg("top up; cut edge to the left") if piece.cut_edge == "left" else msg("top up; cut edge to the right")
    return Label("cloth", piece_mark(piece), what, size, side, "up", room, place)


HEADS = (
    msg("Mark"),
    msg("What"),
    msg("Size"),
    msg("Which way"),
    msg("Room"),
    msg("Place"),
)
"""Columns of the labels as a table."""


def label_cells(label: Label, style: Style) -> tuple[str, ...]:
    """A label as a row of the table."""
    return (
        say(label.mark, style),
        say(label.name, style),
        "" if label.size is None else say(label.size, style),
        say(label.side, style),
        label.room,
        say(label.place, style),
    )
