"""The wall itself: face, floor, ceiling, crown, baseboard and how it ends."""

from __future__ import annotations

from elevation.setting_out.model import Point, Profile, SetOut
from elevation.sheet import inks
from elevation.sheet.paths import along, height_at, lowered, path_through, polygon
from elevation.sheet.records import NARROW, WIDE, Fill, Gradient, Group, Ink, Path, Pen, Polyline, Record, Stop

GHOST_DASH = (2.0, 1.0)
FLOOR_DEEP_MM = 45.0
_CORNER_SHADES_MM = (24.0, 60.0)
_CROWN_SHADE_MM = 160.0

_GHOST = Pen(Ink.GHOST, NARROW, GHOST_DASH)
_EDGE = Pen(Ink.OUTLINE, WIDE)
_TRIM_EDGE = Pen(Ink.OUTLINE, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.13)


def draw_face(set_out: SetOut, title: str) -> Group:
    """The wall's face with floor, ceiling and mouldings, as one group.

    Parameters
    ----------
    set_out : SetOut
        Its wall facts and openings (the baseboard stops at doors).
    title : str
        Plain words for the group.

    Returns
    -------
    Group
        Layer ``wall``, wall coordinates in mm. What was not measured is dashed.
    """
    floor = along(set_out.floor, 0.0, set_out.width_mm)
    ceiling = along(set_out.ceiling, 0.0, set_out.width_mm)
    records: list[Record] = [*_ground(set_out, floor, ceiling)]
    if set_out.crown_mm > 0 and set_out.ceiling.known:
        records.extend(_crown(ceiling, set_out.crown_mm))
    if set_out.baseboard_mm > 0:
        records.extend(_baseboard(set_out))
    records.extend(_edges(set_out, floor, ceiling))
    return Group((set_out.wall,), "wall", title, tuple(records))


def _ground(set_out: SetOut, floor: tuple[Point, ...], ceiling: tuple[Point, ...]) -> list[Record]:
    width = set_out.width_mm
    low = min(y for _, y in floor)
    face = polygon((*floor, *reversed(ceiling)))
    records: list[Record] = [
        Fill(polygon((*floor, *reversed(lowered(floor, FLOOR_DEEP_MM)))), _floor_tone(low)),
        Fill(face, _face_tone(set_out, floor, ceiling)),
    ]
    for is_corner, outer, way in ((set_out.ends[0] == "corner", 0.0, 1.0), (set_out.ends[1] == "corner", width, -1.0)):
        if not is_corner:
            continue
        for reach in _CORNER_SHADES_MM:
            inner = outer + way * min(reach, width / 4)
            near, far = min(outer, inner), max(outer, inner)
            area = (*along(set_out.floor, near, far), *reversed(along(set_out.ceiling, near, far)))
            records.append(Fill(polygon(area), inks.SHADE_FAINT))
    return records


def _face_tone(set_out: SetOut, floor: tuple[Point, ...], ceiling: tuple[Point, ...]) -> Gradient:
    """Paper-warm, a little deeper toward the floor, and in the shade of a level ceiling or its crown."""
    high, low = max(y for _, y in ceiling), min(y for _, y in floor)
    tall = max(high - low, 1.0)
    stops = [Stop(0.0, Ink.WALL)]
    if set_out.ceiling.known and len({y for _, y in ceiling}) == 1:
        edge = min(set_out.crown_mm / tall, 0.2)
        shade = edge + min(_CROWN_SHADE_MM / tall, 0.1)
        middle = inks.blend(Ink.WALL, inks.WALL_UNDER_CROWN, 0.35)
        stops = [
            Stop(0.0, inks.WALL_UNDER_CROWN),
            Stop(edge + 1e-4, inks.WALL_UNDER_CROWN),
            Stop((edge + shade) / 2, middle),
            Stop(shade, Ink.WALL),
        ]
    return Gradient((0.0, high), (0.0, low), (*stops, Stop(0.55, Ink.WALL), Stop(1.0, inks.WALL_LOW)))


def _floor_tone(low: float) -> Gradient:
    return Gradient((0.0, low), (0.0, low - FLOOR_DEEP_MM), (Stop(0.0, Ink.FLOOR), Stop(1.0, Ink.PAPER)))


def _crown(ceiling: tuple[Point, ...], depth: float) -> list[Record]:
    under = lowered(ceiling, depth)
    high = max(y for _, y in ceiling)
    tone = Gradient(
        (0.0, high), (0.0, high - depth), (Stop(0.0, inks.TRIM_SHADE), Stop(0.5, Ink.TRIM), Stop(1.0, inks.TRIM_SHADE))
    )
    level = len({y for _, y in ceiling}) == 1
    lines = (*path_through(lowered(ceiling, depth * 0.3)), *path_through(lowered(ceiling, depth * 0.72)))
    return [
        Fill(polygon((*ceiling, *reversed(under))), tone if level else Ink.TRIM),
        Path(lines, _FINE),
        Polyline(under, _TRIM_EDGE),
    ]


def baseboard_runs(set_out: SetOut) -> list[tuple[float, float]]:
    """The stretches (left, right) where the baseboard runs: between the doors and low windows, casings included."""
    runs = [(0.0, set_out.width_mm)]
    for opening in set_out.openings:
        left, right = opening.left_mm - opening.casing_mm, opening.right_mm + opening.casing_mm
        middle = (opening.left_mm + opening.right_mm) / 2
        if opening.bottom_mm - height_at(set_out.floor, middle) >= set_out.baseboard_mm:
            continue
        runs = [
            piece
            for near, far in runs
            for piece in ((near, min(far, left)), (max(near, right), far))
            if piece[1] - piece[0] > 1e-6
        ]
    return runs


def _baseboard(set_out: SetOut) -> list[Record]:
    high = set_out.baseboard_mm
    faces: list[tuple[str | float, ...]] = []
    edges: list[tuple[str | float, ...]] = []
    fine: list[tuple[str | float, ...]] = []
    for left, right in baseboard_runs(set_out):
        foot = along(set_out.floor, left, right)
        top = lowered(foot, -high)
        faces.extend(polygon((*foot, *reversed(top))))
        edges.extend(path_through(top))
        fine.extend(path_through(lowered(foot, -high * 0.84)))
        if left > 0:
            edges.extend(path_through((foot[0], top[0])))
        if right < set_out.width_mm:
            edges.extend(path_through((foot[-1], top[-1])))
    if not faces:
        return []
    return [Fill(tuple(faces), Ink.TRIM), Path(tuple(fine), _FINE), Path(tuple(edges), _TRIM_EDGE)]


def _edges(set_out: SetOut, floor: tuple[Point, ...], ceiling: tuple[Point, ...]) -> list[Record]:
    width = set_out.width_mm
    records: list[Record] = [_edge(floor, set_out.floor), _edge(ceiling, set_out.ceiling)]
    for x, kind, low, high, is_known in (
        (0.0, set_out.ends[0], floor[0][1], ceiling[0][1], True),
        (width, set_out.ends[1], floor[-1][1], ceiling[-1][1], set_out.known_width),
    ):
        if not is_known:
            records.append(Polyline(((x, low), (x, high)), _GHOST))
        elif kind == "corner":
            records.append(Polyline(((x, low), (x, high)), _EDGE))
        else:
            records.append(Polyline(_break_line(x, low, high, 1.0 if x > 0 else -1.0), _TRIM_EDGE))
    return records


def _edge(points: tuple[Point, ...], profile: Profile) -> Polyline:
    return Polyline(points, _EDGE if profile.known else _GHOST)


def _break_line(x: float, low: float, high: float, out: float) -> tuple[Point, ...]:
    """The long break line of drawing practice: straight with one zigzag halfway, for a wall that goes on."""
    middle, reach = (low + high) / 2, min(40.0, (high - low) / 12)
    return (
        (x, low),
        (x, middle - reach),
        (x + out * reach * 0.6, middle - reach * 0.3),
        (x - out * reach * 0.6, middle + reach * 0.3),
        (x, middle + reach),
        (x, high),
    )
