"""Walls that meet in corners, unfolded: side by side to one scale, with the corner lines and their angles between them."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.model import Finding
from elevation.room.called import scheme_line
from elevation.room.corners import beside, datum_steps
from elevation.room.model import Room, Wall
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out
from elevation.sheet.bare_sheet import Drawing, Words, bare_sheet
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.records import NARROW, Dimension, Group, Ink, Line, Page, Pen, Picture, Record, Text
from elevation.sheet.stops import stop_text
from elevation.sheet.type_metrics import text_width
from elevation.sheet.work.moved import moved
from elevation.trade.model import Trade
from elevation.units.format import LESS, MORE
from elevation.words import Mm, Style, msg, say

_CORNER = Pen(Ink.THIN, NARROW, (6.0, 1.0, 0.8, 1.0))
_FIGURE = 2.5
_NAME = 3.2
_PAST = 7.0
"""How far a corner line runs beyond floor and ceiling, paper mm."""


class Unfolded(Struct, frozen=True, gc=False):
    """One wall of the row: set out, where its left end stands, and how far its datum lies over the first one's."""

    set_out: SetOut
    left_mm: float
    step_mm: float


def row_of(room: Room, wall: Wall) -> tuple[Wall, ...]:
    """The walls that corners lead to from ``wall``, from the leftmost on; a ring begins at ``wall``."""
    row = [wall]
    while (there := beside(room, row[0], "left")) is not None and there.wall not in row:
        row.insert(0, there.wall)
    if beside(room, row[0], "left") is not None:
        # The walls go all the way round: the row is cut open to the left of the wall that is looked at.
        row = [wall]
    while (there := beside(room, row[-1], "right")) is not None and there.wall not in row:
        row.append(there.wall)
    return tuple(row)


def unfold(room: Room, wall: Wall, scheme_id: str | None, trade: Trade) -> tuple[Unfolded, ...]:
    """The walls of a row set out side by side; on each the scheme of that id, else of that name, else the first."""
    name = next((one.name for one in wall.schemes if one.id == scheme_id), "")
    row = row_of(room, wall)
    steps = datum_steps(room, row[0].id)
    found: list[Unfolded] = []
    left = 0.0
    for one in row:
        schemes = {scheme.id: scheme for scheme in one.schemes}
        chosen = schemes.get(scheme_id or "") or next((s for s in one.schemes if s.name == name), None)
        if chosen is None and one.schemes and scheme_id is not None:
            chosen = one.schemes[0]
        laid = set_out(room, one.id, None if chosen is None else chosen.id, trade)
        found.append(Unfolded(laid, left, steps.get(one.id, 0.0)))
        left += laid.width_mm
    return tuple(found)


def measured_groups(walls: Sequence[Unfolded], style: Style, mm_per_paper: float) -> tuple[Group, ...]:
    """What is measured along the walls and the corner lines between them: all that depends on the scale."""
    groups: list[Group] = []
    for index, one in enumerate(walls):
        groups.append(measured_group(one, style, mm_per_paper))
        if index:
            groups.append(corner_group(walls[index - 1], one, style, mm_per_paper))
    return tuple(groups)


def wall_groups(one: Unfolded, trade: Trade, style: Style, view: View) -> tuple[Group, ...]:
    """One wall of the row as it is drawn, at its place."""
    drawn = draw_wall(one.set_out, trade, view, style)
    return tuple(replace(group, records=moved(group.records, one.left_mm, one.step_mm)) for group in drawn)


def _low(one: Unfolded) -> float:
    return one.step_mm + min([0.0, *(y for _, y in one.set_out.floor.points)])


def _high(one: Unfolded) -> float:
    return one.step_mm + max(y for _, y in one.set_out.ceiling.points)


def corner_group(before: Unfolded, after: Unfolded, style: Style, unit: float) -> Group:
    """The line along which two walls are folded, and their inside angle over it."""
    x = after.left_mm
    low, high = min(_low(before), _low(after)) - _PAST * unit, max(_high(before), _high(after)) + _PAST * unit
    text = say(msg("corner, {angle}°", angle=round(before.set_out.angles[1], 2)), style)
    records: tuple[Record, ...] = (
        Line((x, low), (x, high), _CORNER),
        Text((x, high + 1.2 * unit), text, _FIGURE, Ink.TEXT, "middle"),
    )
    return Group((after.set_out.wall, "corner"), "title", text, records)


def measured_group(one: Unfolded, style: Style, unit: float) -> Group:
    """The wall's name and width under it, and over it the length of each rod or leg."""
    wall = one.set_out
    low, high = _low(one) - 6.0 * unit, _high(one) + 5.0 * unit
    middle = one.left_mm + wall.width_mm / 2
    records: list[Record] = [
        Text((middle, low - 6.5 * unit), wall.wall_name or wall.wall, _NAME, Ink.TEXT, "middle", 0.0, "semibold")
    ]
    if wall.known_width:
        figure = say(msg("{figure}", figure=Mm(wall.width_mm)), style)
        records.append(
            _level((wall.wall,), "width", one.left_mm, one.left_mm + wall.width_mm, _low(one), low, figure, unit)
        )
    for treatment in wall.treatments:
        for layer in treatment.layers[:1]:
            support = layer.support
            figure = say(msg("{figure}", figure=Mm(support.length_mm)), style)
            a, b = one.left_mm + support.left_mm, one.left_mm + support.right_mm
            if text_width(figure, _FIGURE) * unit < b - a:
                y = one.step_mm + support.height_mm
                records.append(_level(layer.ref, "rod.left", a, b, y, high, figure, unit))
    return Group((wall.wall, "measured"), "dimension", wall.wall_name or wall.wall, tuple(records))


def _level(
    ref: tuple[str, ...], field: str, a: float, b: float, y: float, line: float, text: str, unit: float
) -> Dimension:
    return Dimension(ref, field, (a, y), (b, y), "x", line, text, ((a + b) / 2, line + 0.9 * unit), "between", _FIGURE)


def unfolded_extent(walls: Sequence[Unfolded], unit: float) -> tuple[float, float, float, float]:
    """All that the row takes up, wall mm."""
    last = walls[-1]
    return (
        walls[0].left_mm - 3.0 * unit,
        min(_low(one) for one in walls) - 14.5 * unit,
        last.left_mm + last.set_out.width_mm + 3.0 * unit,
        max(_high(one) for one in walls) + (_PAST + 5.0) * unit,
    )


def unfolded_sheet(
    room: Room,
    walls: Sequence[Unfolded],
    findings: Sequence[Finding],
    trade: Trade,
    style: Style,
    page: Page | None = None,
    scale: float | None = None,
    date: str | None = None,
) -> Picture:
    """The row of walls on a sheet.

    Parameters
    ----------
    room : Room
    walls : sequence of Unfolded
        From ``unfold``.
    findings : sequence of Finding
        Of all these walls: a *stop* among them prints its band.
    trade, style
    page, scale, date
        As for ``bare_sheet``.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit.
    """
    # Once, and not again for every scale that is tried.
    standing = tuple(group for one in walls for group in wall_groups(one, trade, style, View()))

    def draw(at: float) -> Drawing:
        return Drawing((*standing, *measured_groups(walls, style, at)), unfolded_extent(walls, at))

    laid = [one.set_out for one in walls]
    names = ", ".join(one.wall_name or one.wall for one in laid)
    named = next((one for one in laid if one.scheme), None)
    scheme = "" if named is None else scheme_line(room, named.wall, named.scheme, style)
    name = room.name or say(msg("Room"), style)
    words = Words(
        name,
        names,
        scheme,
        say(msg("Unfolded elevation"), style),
        f"{len(laid)} / {len(room.walls)}",
        say(msg("Unfolded elevation of {walls} in {room}.", walls=names, room=name), style),
    )
    notes = [say(msg("rods measured at their axis, to the mitre in a corner"), style)]
    figures = [
        record.text
        for group in (*standing, *measured_groups(walls, style, 20.0))
        for record in group.records
        if isinstance(record, Dimension)
    ]
    if any(text.rstrip(" inm").endswith((MORE, LESS)) for text in figures):
        notes.append(say(msg("{more} {less} a little more, less than the figure", more=MORE, less=LESS), style))
    return bare_sheet(draw, words, style, page, scale, date, notes, stop_text(laid, findings, style))
