"""What a wall with its openings and obstacles may be."""

from __future__ import annotations

import math

from elevation.errors import said
from elevation.room.bounds import DEEP_MM, FAR_MM, TALL_MM, Place, check_count, check_length
from elevation.room.model import Head, Obstacle, Opening, Readings, Station, Wall, WallEnd
from elevation.room.stand import excess, height_at, stands
from elevation.units.tolerance import TOUCH_MM
from elevation.units.wrong import Amount, marked

LOW_MM = 2_000.0
"""A floor or a doorstep may lie this far under the datum."""

MISREAD_MM = 1000.0
"""What stands where a chain of gaps puts it may reach this far past its place: a tape is misread by a foot, not by more
than a yard. The closing error is shown and links are measured again; a chain that stays inside may miss by any amount."""


def check_wall(wall: Wall, place: Place) -> None:
    """Refuse a wall that cannot be; its schemes are checked apart.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    check_length(wall.width, place.at("width"), 0, FAR_MM, above=True)
    _check_profile(wall, "ceiling", place)
    _check_profile(wall, "floor", place)
    _check_between(wall, place)
    check_length(wall.crown, place.at("crown"), 0, 1000)
    check_length(wall.baseboard, place.at("baseboard"), 0, 1000)
    check_length(wall.gap_right, place.at("gap_right"), 0, FAR_MM)
    _check_end(wall.left, place.at("left"))
    _check_end(wall.right, place.at("right"))
    _check_studs(wall, place)
    for index, opening in enumerate(wall.openings):
        check_opening(opening, place.item("openings", index))
    _check_order(wall, place)
    _check_fit(wall, place)
    _check_under_ceiling(wall, place)
    for index, obstacle in enumerate(wall.obstacles):
        _check_obstacle(obstacle, wall, place.item("obstacles", index))


def _check_profile(wall: Wall, key: str, place: Place) -> None:
    stations: tuple[Station, ...] = getattr(wall, key)
    low_mm = 0.0 if key == "ceiling" else -LOW_MM
    high_mm = TALL_MM if key == "ceiling" else LOW_MM
    far_mm = wall.width.mm if wall.width else FAR_MM
    before = -math.inf
    for index, station in enumerate(stations):
        here = place.item(key, index)
        check_length(station.x, here.at("x"), 0, FAR_MM)
        check_length(station.height, here.at("height"), low_mm, high_mm)
        if station.x.mm > far_mm + TOUCH_MM:
            raise here.at("x").cannot(
                marked("is at {place}, past the wall's right end at {end}"),
                marked("make the wall at least {place} wide, or measure the point from the wall's left end again"),
                place=station.x.text,
                end=_end(wall),
            )
        if station.x.mm <= before + TOUCH_MM:
            raise here.at("x").cannot(
                marked("is {place}, not to the right of the point before"),
                marked("put the points in order from the left"),
                place=station.x.text,
            )
        before = station.x.mm


def _end(wall: Wall) -> str:
    return wall.width.text if wall.width is not None else ""


def _check_between(wall: Wall, place: Place) -> None:
    """Somewhere the ceiling is over the floor, and nowhere under it."""
    if not wall.ceiling:
        return
    most = 0.0
    for index, station in enumerate(wall.ceiling):
        clear = station.height.mm - (height_at(wall.floor, station.x.mm) or 0.0)
        most = max(most, clear)
        if clear < -TOUCH_MM:
            raise (
                place.item("ceiling", index)
                .at("height")
                .cannot(
                    marked("is {height}, under the floor"),
                    marked("measure it from the floor up"),
                    height=station.height.text,
                )
            )
    for index, station in enumerate(wall.floor):
        over = height_at(wall.ceiling, station.x.mm)
        if over is not None and over < station.height.mm - TOUCH_MM:
            raise (
                place.item("floor", index)
                .at("height")
                .cannot(
                    marked("is {height}, over the ceiling"),
                    marked("measure it from the level line through the floor's left end"),
                    height=station.height.text,
                )
            )
    if most < 300:
        raise place.at("ceiling").cannot(
            marked("leaves only {most} over the floor"),
            marked("write the ceiling's height over the floor"),
            most=Amount(most),
        )


def _check_studs(wall: Wall, place: Place) -> None:
    """Studs stand in order on the wall; their spacing is wider than a stud."""
    check_length(wall.stud_spacing, place.at("stud_spacing"), 100, 3000)
    far_mm = wall.width.mm if wall.width else FAR_MM
    before = -math.inf
    for index, stud in enumerate(wall.studs):
        here = place.item("studs", index)
        check_length(stud, here, 0, FAR_MM)
        if stud.mm > far_mm + TOUCH_MM:
            raise here.cannot(
                marked("is at {place}, past the wall's right end at {end}"),
                marked("make the wall at least {place} wide, or measure the stud from the wall's left end to its middle"),
                place=stud.text,
                end=_end(wall),
            )
        if stud.mm <= before + TOUCH_MM:
            raise here.cannot(
                marked("is {place}, not to the right of the stud before"),
                marked("put the studs in order from the left"),
                place=stud.text,
            )
        before = stud.mm


def _check_end(end: WallEnd, place: Place) -> None:
    if not 20 <= end.angle <= 340:
        raise place.at("angle").bad(
            said("is {angle} degrees", angle=end.angle), said("it must be from 20 to 340; a usual corner has 90")
        )
    if end.kind == "open" and end.neighbour is not None:
        raise place.at("neighbour").bad(said("stands beside an open end"), said('take it away, or make the end a "corner"'))


def check_opening(opening: Opening, place: Place) -> None:
    """Refuse an opening that cannot be.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    check_length(opening.width, place.at("width"), 0, TALL_MM, above=True)
    check_length(opening.height, place.at("height"), 0, TALL_MM, above=True)
    check_length(opening.left, place.at("left"), 0, FAR_MM)
    check_length(opening.gap, place.at("gap"), 0, FAR_MM)
    check_length(opening.sill, place.at("sill"), -LOW_MM, TALL_MM)
    check_length(opening.casing, place.at("casing"), 0, 1000)
    check_length(opening.apron, place.at("apron"), 0, 1000)
    check_length(opening.reveal, place.at("reveal"), 0, DEEP_MM)
    check_length(opening.shutter_box, place.at("shutter_box"), 0, DEEP_MM)
    check_length(opening.frame, place.at("frame"), 0, 500)
    check_length(opening.sash.handle_out, place.at("sash").at("handle_out"), 0, 1000)
    check_length(opening.sash.handle_stands, place.at("sash").at("handle_stands"), 0, 1000)
    if opening.stool is not None:
        stool = place.at("stool")
        check_length(opening.stool.thickness, stool.at("thickness"), 0, 500, above=True)
        check_length(opening.stool.horn, stool.at("horn"), 0, 1000)
        check_length(opening.stool.projection, stool.at("projection"), 0, 1000)
    for key in Readings.__struct_fields__:
        check_length(getattr(opening.taken, key), place.at("taken").at(key), 0, TALL_MM, above=True)
    check_count(opening.columns, place.at("columns"), 1, 40)
    check_count(opening.rows, place.at("rows"), 1, 40)
    _check_head(opening, opening.head, place.at("head"))
    least = min(opening.width.mm, opening.height.mm)
    if opening.head.right_height is not None:
        least = min(least, opening.head.right_height.mm)
    if opening.frame is not None and 2 * opening.frame.mm >= least - TOUCH_MM:
        raise place.at("frame").bad(
            said("is {frame}, so no glass is left", frame=opening.frame.text),
            said("measure from the opening's edge to the glass, on one side"),
        )


def _check_head(opening: Opening, head: Head, place: Place) -> None:
    half_mm = opening.width.mm / 2
    if head.rise is not None and head.kind != "segmental":
        raise place.at("rise").bad(
            said("stands beside a {kind} head", kind=head.kind), said("only a segmental head has a rise of its own")
        )
    if head.right_height is not None and head.kind != "raked":
        raise place.at("right_height").bad(
            said("stands beside a {kind} head", kind=head.kind), said("only a raked head has one")
        )
    if head.kind == "segmental":
        if head.rise is None:
            raise place.bad(said('is segmental but has no "rise"'), said("add how far the arc rises over its ends"))
        check_length(head.rise, place.at("rise"), 0, TALL_MM, above=True)
        if head.rise.mm > half_mm + TOUCH_MM:
            raise place.at("rise").bad(
                said("is {rise}, more than half the width", rise=head.rise.text),
                said('make it smaller, or the head "half-round"'),
            )
        if head.rise.mm > opening.height.mm + TOUCH_MM:
            raise place.at("rise").bad(
                said("is {rise}, more than the opening's height", rise=head.rise.text), said("measure both again")
            )
    if head.kind == "half-round" and half_mm > opening.height.mm + TOUCH_MM:
        raise place.bad(
            said("is half-round, but the opening is not as high as half its width"),
            said('make it "segmental" and give its rise'),
        )
    if head.kind == "raked":
        if head.right_height is None:
            raise place.bad(
                said('is raked but has no "right_height"'), said("add the height of its right side over the sill")
            )
        check_length(head.right_height, place.at("right_height"), 0, TALL_MM, above=True)


def _check_order(wall: Wall, place: Place) -> None:
    """Openings stand from left to right, inside the wall, none over another."""
    edge = 0.0
    before: int | None = None
    for index, left in enumerate(stands(wall)):
        if left is None:
            continue
        opening = wall.openings[index]
        here = place.item("openings", index)
        # What a tape read need not add up; what is given from the wall's end must.
        slack = TOUCH_MM if opening.left is not None else MISREAD_MM
        if left < -slack:
            raise here.cannot(marked("reaches past the wall's left end"), marked("measure the gaps and widths again"))
        if before is not None and left < edge - slack:
            raise here.cannot(
                marked("overlaps {other} by {by}"),
                marked("measure again, or put the openings in order from the left"),
                other=f"openings[{before}]",
                by=Amount(edge - left),
            )
        right = left + opening.width.mm
        if wall.width is not None and right > wall.width.mm + slack:
            raise here.cannot(
                marked("reaches {by} past the wall's right end at {end}"),
                marked("measure both again"),
                by=Amount(right - wall.width.mm),
                end=wall.width.text,
            )
        edge, before = right, index


def _check_fit(wall: Wall, place: Place) -> None:
    """Openings that nothing places yet fit between those that are placed."""
    start, edge = 0, 0.0
    places = stands(wall)
    for index, left in enumerate((*places, None if wall.width is None else wall.width.mm)):
        if left is None or (index < len(places) and places[index] is None):
            continue
        blank = range(start, index)
        after = wall.openings[index] if index < len(places) else None
        own = after.casing if after else None
        needed = sum(_overall_mm(wall.openings[nth]) for nth in blank)
        free = left - (own.mm if own else 0.0) - edge
        slack = TOUCH_MM if after is not None and after.left is not None else MISREAD_MM
        if blank and needed > free + slack:
            raise place.item("openings", start).cannot(
                marked("needs {more} more than there is between its neighbours"),
                marked("measure widths and casings again"),
                more=Amount(needed - free),
            )
        if index < len(places):
            opening = wall.openings[index]
            start, edge = index + 1, left + opening.width.mm + (opening.casing.mm if opening.casing else 0.0)


def _overall_mm(opening: Opening) -> float:
    """Opening, casings and a typed gap before it."""
    gap = opening.gap.mm if opening.gap else 0.0
    return gap + opening.width.mm + 2 * (opening.casing.mm if opening.casing else 0.0)


def head_height(opening: Opening, across_mm: float) -> float:
    """Height of the head over the datum at ``across_mm`` from the opening's left side, in mm.

    Parameters
    ----------
    opening : Opening
    across_mm : float
        From 0 to the opening's width.
    """
    width = opening.width.mm
    top = opening.sill.mm + opening.height.mm
    head = opening.head
    if head.kind == "raked" and head.right_height is not None:
        return top + (head.right_height.mm - opening.height.mm) * across_mm / width
    rise = width / 2 if head.kind == "half-round" else head.rise.mm if head.rise else 0.0
    if rise <= 0:
        return top
    # Circle through both springing points and the crown: r = (w^2/4 + h^2) / 2h.
    radius = (width * width / 4 + rise * rise) / (2 * rise)
    out = across_mm - width / 2
    return top - radius + math.sqrt(max(radius * radius - out * out, 0.0))


def _check_under_ceiling(wall: Wall, place: Place) -> None:
    if not wall.ceiling:
        return
    # Where a tape was misread, what follows stands that much farther to one side than it is drawn.
    shifts = {0.0, -excess(wall)}
    for index, left in enumerate(stands(wall)):
        opening = wall.openings[index]
        over = min(_over_ceiling(wall, opening, None if left is None else left + shift) for shift in shifts)
        if over > TOUCH_MM:
            raise place.item("openings", index).cannot(
                marked("reaches {by} over the ceiling"),
                marked("measure its sill and height and the ceiling again"),
                by=Amount(over),
            )


def _over_ceiling(wall: Wall, opening: Opening, left: float | None) -> float:
    """By how much an opening that stands at ``left`` is higher than the ceiling, at most; not over it: less than zero."""
    width = opening.width.mm
    if left is None:
        # Wherever it stands, it cannot be higher than the highest point.
        highest = max(station.height.mm for station in wall.ceiling)
        return min(head_height(opening, 0), head_height(opening, width)) - highest
    # A line of straight pieces is nearest to a rounded head at its own points or between close steps.
    steps = [width * step / 24 for step in range(25)]
    steps += [x - left for s in wall.ceiling if left < (x := s.x.mm) < left + width]
    return max(head_height(opening, step) - (height_at(wall.ceiling, left + step) or 0.0) for step in steps)


def _check_obstacle(obstacle: Obstacle, wall: Wall, place: Place) -> None:
    check_length(obstacle.left, place.at("left"), 0, FAR_MM)
    check_length(obstacle.bottom, place.at("bottom"), -LOW_MM, TALL_MM)
    check_length(obstacle.width, place.at("width"), 0, FAR_MM, above=True)
    check_length(obstacle.height, place.at("height"), 0, TALL_MM, above=True)
    check_length(obstacle.projection, place.at("projection"), 0, DEEP_MM)
    check_length(obstacle.clearance, place.at("clearance"), 0, DEEP_MM)
    right = obstacle.left.mm + obstacle.width.mm
    if wall.width is not None and right > wall.width.mm + TOUCH_MM:
        raise place.cannot(
            marked("reaches {by} past the wall's right end at {end}"),
            marked("make the wall at least {least} wide, or measure the obstacle from the wall's left end again"),
            by=Amount(right - wall.width.mm),
            end=wall.width.text,
            least=Amount(right),
        )
