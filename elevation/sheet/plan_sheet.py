"""The plan of one wall on a sheet of its own."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.findings.model import Finding
from elevation.room.model import Room
from elevation.setting_out.model import SetOut
from elevation.sheet.bare_sheet import Drawing, Words, bare_sheet
from elevation.sheet.plan import plan_extent, plan_groups
from elevation.sheet.plan_frame import frame_of
from elevation.sheet.records import Page, Picture
from elevation.sheet.stops import stop_text
from elevation.words import Style, msg, say


def plan_sheet(
    room: Room,
    set_out: SetOut,
    findings: Sequence[Finding],
    style: Style,
    page: Page | None = None,
    scale: float | None = None,
    date: str | None = None,
) -> Picture:
    """What stands and hangs on a wall, seen from above.

    Parameters
    ----------
    room : Room
    set_out : SetOut
    findings : sequence of Finding
        A *stop* among them prints its band.
    style : Style
    page, scale, date
        As for ``bare_sheet``.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit.
    """
    frame = frame_of(set_out)

    def draw(at: float) -> Drawing:
        return Drawing(tuple(plan_groups(set_out, frame, style, at, "drawn")), plan_extent(set_out, frame, at))

    wall = set_out.wall_name or set_out.wall
    scheme = say(msg("Scheme: {name}", name=set_out.scheme_name or set_out.scheme), style) if set_out.scheme else ""
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
