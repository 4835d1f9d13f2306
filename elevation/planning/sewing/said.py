"""What is sewn, in words and figures on the tape: marks of pieces, running marks, and all of it as a table."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from elevation.findings.naming import where
from elevation.planning.dressed import Dressed
from elevation.planning.sewing.chains import running
from elevation.planning.sewing.model import Alteration, BoltPlan, CutPiece, Edge, Marks, SewnPanel
from elevation.planning.sewing.valances import HungValance
from elevation.planning.sewing.whole import Sewing, SewnLayer
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Style, msg, say


def piece_mark(piece: CutPiece) -> Message:
    """What is written on a piece: its panel, and which piece of it from the leading edge."""
    if piece.count == 1:
        return piece.panel.mark
    return msg("{panel}-{number}", panel=piece.panel.mark, number=piece.number)


def piece_notes(piece: CutPiece) -> list[Message]:
    """What is done with a piece once it is cut."""
    notes = []
    if piece.share == 0.5:
        # A half is the last of its panel, at the return.
        edge = msg("left") if piece.cut_edge == "left" else msg("right")
        notes.append(msg("half width, cut edge to the {side}", side=edge))
    elif piece.cut_edge and piece.share == 0.0:
        edge = msg("left") if piece.cut_edge == "left" else msg("right")
        notes.append(msg("strip, cut edge to the {side}", side=edge))
    elif piece.share == 0.0:
        notes.append(msg("on its side: its top lies along the cloth's edge"))
    if piece.trim_top_mm > TOUCH_MM:
        notes.append(msg("trim {length} off the top", length=Mm(piece.trim_top_mm, about=True)))
    if piece.trim_bottom_mm > TOUCH_MM:
        notes.append(msg("trim {length} off the bottom", length=Mm(piece.trim_bottom_mm, about=True)))
    return notes


def piece_rows(bolt: BoltPlan, style: Style) -> list[tuple[str, ...]]:
    """A row a piece: its mark, from, to, across, what is done with it then."""
    marks = running([0.0, *(strip.to_mm for strip in bolt.strips)], style.graduation_mm).marks_mm
    return [
        (
            say(piece_mark(area.piece), style),
            "0" if start == 0 else say(msg("{length}", length=Mm(start)), style),
            say(msg("{length}", length=Mm(end)), style),
            say(msg("{length}", length=Mm(area.to_mm - area.from_mm, about=True)), style),
            "; ".join(say(note, style) for note in piece_notes(area.piece)),
        )
        for strip, (start, end) in zip(bolt.strips, pairwise(marks), strict=True)
        for area in strip.areas
        if area.piece is not None
    ]


def mark_rows(marks: Marks, style: Style) -> tuple[tuple[str, ...], ...]:
    """The running marks of a heading from the leading edge, as rows: number, place, and for pleats end and hook."""

    def figure(place: float) -> str:
        return "0" if place <= TOUCH_MM else say(msg("{length}", length=Mm(place)), style)

    if marks.pleats is not None:
        places = [place for pair in marks.pleats.marks_mm for place in pair]
        flat = running(places, style.graduation_mm).marks_mm
        hooks = running(marks.hooks, style.graduation_mm).marks_mm
        rows = [
            (str(number), figure(flat[2 * number - 2]), figure(flat[2 * number - 1]), figure(hooks[number]))
            for number in range(1, marks.pleats.count + 1)
        ]
        edge = say(msg("edge"), style)
        return ((edge, "", "", figure(hooks[0])), *rows, (edge, "", "", figure(hooks[-1])))
    flat = running(marks.flat, style.graduation_mm).marks_mm
    return tuple((str(number), figure(place)) for number, place in enumerate(flat, start=1))


KIND_NAMES = {
    "pleats": msg("Pleats"),
    "rings": msg("Rings"),
    "eyelets": msg("Eyelets"),
    "tabs": msg("Tabs"),
    "back-tabs": msg("Tabs"),
    "hooks": msg("Hooks"),
}

STRIP_NAMES = {
    "place": msg("first motif"),
    "match": msg("half a repeat"),
    "left": msg("left over"),
    "cut": msg("strip left over"),
}

HEADS = (
    msg("Room"),
    msg("Window"),
    msg("Cloth or panel"),
    msg("What"),
    msg("From"),
    msg("To"),
    msg("Length"),
    msg("Across"),
    msg("Notes"),
)
"""Columns of the sheet as a table for other programs; From and To run from the squared end, the top or the leading edge."""


def table_rows(dressed: Dressed, sewing: Sewing, style: Style) -> Iterator[tuple[str, ...]]:
    """A room's sewing as rows of a table, without their head: bolts strip by strip, then panels line by line."""
    room = dressed.room.name
    for bolt in sewing.bolts:
        for cells in _bolt_rows(bolt, style):
            yield (room, "", *cells)
    for layer in sewing.layers:
        laid = layer.hung.laid
        window = laid.name or say(where(laid), style)
        for cells in _layer_rows(layer, style):
            yield (room, window, *cells)
    for one in sewing.valances:
        window = one.laid.name or say(where(one.laid), style)
        for cells in _valance_rows(one, style):
            yield (room, window, *cells)


def _length(mm: float, style: Style, *, about: bool = False) -> str:
    return say(msg("{length}", length=Mm(mm, about=about)), style)


def _bolt_rows(bolt: BoltPlan, style: Style) -> Iterator[tuple[str, ...]]:
    name = say(bolt.name, style)
    tape = running([0.0, *(strip.to_mm for strip in bolt.strips)], style.graduation_mm)
    for strip, (start, end), long in zip(bolt.strips, pairwise(tape.marks_mm), tape.between_mm, strict=True):
        for area in strip.areas:
            what = STRIP_NAMES[strip.kind] if area.piece is None else piece_mark(area.piece)
            if area.kind == "selvedge":
                what = msg("selvedge")
            notes = "" if area.piece is None else "; ".join(say(note, style) for note in piece_notes(area.piece))
            yield (
                name,
                say(what, style),
                _length(start, style),
                _length(end, style),
                _length(long, style),
                _length(area.to_mm - area.from_mm, style, about=True),
                notes,
            )


def _layer_rows(layer: SewnLayer, style: Style) -> Iterator[tuple[str, ...]]:
    for panel in layer.panels:
        mark = say(panel.name.mark, style)
        for side, edge in ((msg("left"), panel.left), (msg("right"), panel.right)):
            yield from _edge_rows(mark, say(side, style), edge, panel, style)
        wide = _length(panel.hemmed_mm, style, about=True)
        done = say(msg("{finished} finished", finished=Mm(panel.finished_mm, about=True)), style)
        yield (mark, say(msg("flat, hemmed at the sides"), style), "", "", "", wide, done)
        yield from _mark_cells(mark, panel.marks, style)
    for one in layer.alterations:
        yield from _altered(one, style)
        if one.marks is not None and one.what != "measure":
            yield from _mark_cells(say(one.name.mark, style), one.marks, style)


def _valance_rows(one: HungValance, style: Style) -> Iterator[tuple[str, ...]]:
    """From its cut top down, then its width."""
    mark, cloth = say(one.name.mark, style), one.cloth
    parts = ((msg("heading"), cloth.turned_mm), (msg("finished length"), cloth.depth_mm), (msg("hem"), cloth.hem_mm))
    places = [0.0]
    for _, long in parts:
        places.append(places[-1] + long)
    tape = running(places, style.graduation_mm)
    for (name, _), (start, end), long in zip(parts, pairwise(tape.marks_mm), tape.between_mm, strict=True):
        yield (mark, say(name, style), _length(start, style), _length(end, style), _length(long, style), "", "")
    done = say(msg("{finished} finished", finished=Mm(cloth.finished_mm, about=True)), style)
    wide = _length(cloth.hemmed_mm, style, about=True)
    yield (mark, say(msg("flat, hemmed at the sides"), style), "", "", "", wide, done)


def _edge_rows(mark: str, side: str, edge: Edge, panel: SewnPanel, style: Style) -> Iterator[tuple[str, ...]]:
    names = (msg("heading"), msg("finished length"), msg("hem"))
    places = [0.0, panel.heading_mm, panel.heading_mm + edge.finished_mm, panel.cut_mm]
    tape = running(places, style.graduation_mm)
    for name, (start, end), long in zip(names, pairwise(tape.marks_mm), tape.between_mm, strict=True):
        yield (mark, say(name, style), _length(start, style), _length(end, style), _length(long, style), "", side)


def _mark_cells(mark: str, marks: Marks, style: Style) -> Iterator[tuple[str, ...]]:
    if marks.kind == "pocket":
        return
    name = say(KIND_NAMES[marks.kind], style)
    for row in mark_rows(marks, style):
        start, end, hook = (*row[1:], "", "")[:3]
        notes = say(msg("hook at {place} of the finished heading", place=hook), style) if hook else ""
        what = msg("{what}, no. {number}", what=name, number=row[0]) if row[0].isdigit() else msg("{what}, edge", what=name)
        yield (mark, say(what, style), start, end, "", "", notes)


def _altered(one: Alteration, style: Style) -> Iterator[tuple[str, ...]]:
    mark = say(one.name.mark, style)
    length = "" if one.has_mm is None else _length(one.has_mm, style)
    notes = {
        "measure": msg("measure it before it is marked"),
        "as-it-is": msg("nothing is altered"),
        "fine": msg("nothing is altered"),
        "shorten": msg("fold, cut, hem"),
        "turn-up": msg("turn up, nothing is cut off"),
        "lift": msg("{by} too long, too little to fold", by=Mm(one.by_mm)),
        "short": msg("{by} too short", by=Mm(one.by_mm)),
    }
    wide = _length(one.width_mm, style)
    yield (mark, say(msg("ready-made panel"), style), "", "", length, wide, say(notes[one.what], style))
    if one.left is None or one.right is None or one.what == "short":
        return
    for side, edge in ((msg("left"), one.left), (msg("right"), one.right)):
        end = edge.finished_mm + edge.hem_mm
        cells = ((msg("fold line"), 0.0, edge.finished_mm), (msg("hem"), edge.finished_mm, end))
        for name, start, stop in cells:
            yield (
                mark,
                say(name, style),
                _length(start, style),
                _length(stop, style),
                _length(stop - start, style),
                "",
                say(side, style),
            )
