"""The plan of one wall on a sheet of its own."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.findings.model import Finding
from elevation.room.called import scheme_line
from elevation.room.model import Room
from elevation.setting_out.model import SetOut
from elevation.sheet.bare_sheet import Drawing, Words, bare_sheet
from elevation.sheet.bay import bay_frame, bay_of
from elevation.sheet.plan import plan_extent, plan_groups
from elevation.sheet.records import Page, Picture
from elevation.sheet.stops import stop_text
from elevation.trade.model import Trade
from elevation.words import Style, msg, say


def plan_sheet(
    room: Room,
    set_out: SetOut,
    findings: Sequence[Finding],
    trade: Trade,
    style: Style,
    page: Page | None = None,
    scale: float | None = None,
    date: str | None = None,
) -> Picture:
    """What stands and hangs on a wall, and on the others of its bay, seen from above.

    Parameters
    ----------
    room : Room
    set_out : SetOut
    findings : sequence of Finding
        A *stop* among them prints its band.
    trade : Trade
    style : Style
    page, scale, date
        As for ``bare_sheet``.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit.
    """
    bay = bay_of(room, set_out, trade)
    frame = bay_frame(set_out, bay)

    def draw(at: float) -> Drawing:
        groups = plan_groups(set_out, frame, style, at, "drawn", bay)
        return Drawing(tuple(groups), plan_extent(set_out, frame, at, bay))

    lefts = [one.set_out for one in bay if one.side == "left"]
    rights = [one.set_out for one in bay if one.side == "right"]
    wall = ", ".join(one.wall_name or one.wall for one in (*reversed(lefts), set_out, *rights))
    scheme = scheme_line(room, set_out.wall, set_out.scheme, style)
    name = room.name or say(msg("Room"), style)
    number = next((index for index, one in enumerate(room.walls, 1) if one.id == set_out.wall), 1)
    words = Words(
        name,
        wall,
        scheme,
        say(msg("Plan"), style),
        f"{number} / {len(room.walls)}",
        say(msg("Plan of {wall} in {room}.", wall=wall, room=name), style),
    )
    notes = [say(msg("dashed outer faces: the wall's thickness was not measured"), style)]
    return bare_sheet(draw, words, style, page, scale, date, notes, stop_text([set_out], findings, style))
