"""The rod: tube, splices, ends and brackets."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.model import BracketOut, Span, SupportOut
from elevation.sheet import inks
from elevation.sheet.draw_track import between, tension_records, track_records
from elevation.sheet.paths import Step, circle, polygon, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Gradient, Ink, Path, Pen, Record, Stop

_EDGE = Pen(inks.METAL_DARK, NARROW)


def rod_records(support: SupportOut, shapes: tuple[str, str], hidden: Sequence[Span]) -> list[Record]:
    """Tube, splices and ends of a rod.

    Parameters
    ----------
    support : SupportOut
        Where the rod lies, wall mm.
    shapes : (str, str)
        Of its left and right end: ``none``, ``cap``, ``ball``, ``spear``, ``socket`` or ``return``.
    hidden : sequence of (left, right)
        Where cloth or a ring passes in front of the tube.

    Returns
    -------
    list of Record
    """
    if support.kind == "track":
        return track_records(support, hidden)
    half = support.diameter_mm / 2
    low, high = support.height_mm - half, support.height_mm + half
    tube: list[Step] = []
    edges: list[Step] = []
    for near, far in between(support.cut_left_mm, support.cut_right_mm, hidden):
        tube.extend(rectangle(near, low, far, high))
        edges.extend(segment(near, low, far, low))
        edges.extend(segment(near, high, far, high))
    for shape, x in zip(shapes, (support.cut_left_mm, support.cut_right_mm), strict=True):
        if shape == "none" and not any(near < x < far for near, far in hidden):
            edges.extend(segment(x, low, x, high))
    records: list[Record] = []
    if tube:
        records += [Fill(tuple(tube), _tone(support, half)), Path(tuple(edges), _edge(support, NARROW))]
    if support.kind == "tension-rod":
        records.extend(tension_records(support, hidden, _tone(support, half), _edge(support, NARROW)))
    records.extend(_splices(support, hidden))
    records.extend(_ends(support, shapes, hidden))
    return records


def _tone(support: SupportOut, half: float) -> Gradient:
    """Light across a round thing of the rod's material, ``half`` mm to either side of its centre line."""
    light, body, shade, _ = inks.ROD_TONES.get(support.material, inks.ROD_TONES["steel"])
    stops = (
        Stop(0.0, body),
        Stop(0.26, light),
        Stop(0.46, body),
        Stop(0.82, shade),
        Stop(1.0, inks.blend(shade, body, 0.3)),
    )
    return Gradient((0.0, support.height_mm + half), (0.0, support.height_mm - half), stops)


def _edge(support: SupportOut, width: float) -> Pen:
    return Pen(inks.ROD_TONES.get(support.material, inks.ROD_TONES["steel"])[3], width)


def _splices(support: SupportOut, hidden: Sequence[Span]) -> list[Record]:
    seen = [x for x in support.splices_mm if not any(near < x < far for near, far in hidden)]
    if not seen:
        return []
    half, reach = support.diameter_mm * 0.56, support.diameter_mm * 1.3
    sleeves: list[Step] = []
    joints: list[Step] = []
    for x in seen:
        sleeves.extend(
            rounded(x - reach, support.height_mm - half, x + reach, support.height_mm + half, support.diameter_mm * 0.12)
        )
        joints.extend(segment(x, support.height_mm - half, x, support.height_mm + half))
    return [
        Fill(tuple(sleeves), _tone(support, half)),
        Path((*sleeves, *joints), _edge(support, 0.13)),
    ]


def _ends(support: SupportOut, shapes: tuple[str, str], hidden: Sequence[Span]) -> list[Record]:
    steps: list[Step] = []
    rims: list[Step] = []
    y = support.height_mm
    places = ((support.cut_left_mm, support.metal_left_mm, -1.0), (support.cut_right_mm, support.metal_right_mm, 1.0))
    for shape, (end, tip, side) in zip(shapes, places, strict=True):
        length = abs(tip - end)
        if shape == "none" or length <= 1e-6:
            continue
        if any(near <= min(end, tip) and max(end, tip) <= far for near, far in hidden):
            continue
        half = max(support.finial_diameter_mm, support.diameter_mm) / 2
        if shape == "ball":
            radius = min(half, length / 2)
            collar = min(length - 2 * radius + radius * 0.12, length)
            neck = support.diameter_mm * 0.62
            steps.extend(rectangle(min(end, end + side * collar), y - neck, max(end, end + side * collar), y + neck))
            steps.extend(circle(tip - side * radius, y, radius))
        elif shape == "spear":
            steps.extend(_spear(end, tip, y, half, support.diameter_mm / 2))
            rims.extend(segment(end + side * length * 0.14, y - half * 0.6, end + side * length * 0.14, y + half * 0.6))
        elif shape == "socket":
            # A flange on the side wall, seen edge-on, and the cup that takes the rod.
            flange, cup = tip - side * length * 0.3, support.diameter_mm * 0.66
            steps.extend(rounded(min(flange, tip), y - half, max(flange, tip), y + half, length * 0.1))
            steps.extend(rectangle(min(end, flange), y - cup, max(end, flange), y + cup))
        elif shape == "return":
            # The leg to the wall, seen end-on, round as the tube is.
            steps.extend(circle(end, y, length))
            rims.extend(circle(end, y, length * 0.55))
        else:
            steps.extend(rounded(min(end, tip), y - half, max(end, tip), y + half, half * 0.35))
    if not steps:
        return []
    # Collar and ball overlap; each is filled by itself, since an even-odd fill would leave a hole.
    tone = _tone(support, max(support.finial_diameter_mm, support.diameter_mm) / 2)
    records: list[Record] = [Fill(part, tone) for part in _closed_parts(steps)]
    records.append(Path((*steps, *rims), _edge(support, NARROW)))
    return records


def _closed_parts(steps: Sequence[Step]) -> list[tuple[Step, ...]]:
    found: list[tuple[Step, ...]] = []
    start = 0
    for index, step in enumerate(steps):
        if step[0] == "Z":
            found.append(tuple(steps[start : index + 1]))
            start = index + 1
    return found


def _spear(end: float, tip: float, y: float, half: float, neck: float) -> tuple[Step, ...]:
    length = tip - end
    waist, belly = end + length * 0.2, end + length * 0.42
    return (
        ("M", end, y - neck * 1.2),
        ("C", end + length * 0.08, y - half * 0.9, end + length * 0.14, y - half * 0.5, waist, y - half * 0.45),
        ("C", waist + length * 0.08, y - half * 0.5, belly - length * 0.08, y - half, belly, y - half),
        ("C", belly + length * 0.22, y - half, tip - length * 0.12, y - half * 0.2, tip, y),
        ("C", tip - length * 0.12, y + half * 0.2, belly + length * 0.22, y + half, belly, y + half),
        ("C", belly - length * 0.08, y + half, waist + length * 0.08, y + half * 0.5, waist, y + half * 0.45),
        ("C", end + length * 0.14, y + half * 0.5, end + length * 0.08, y + half * 0.9, end, y + neck * 1.2),
        ("Z",),
    )


def bracket_records(bracket: BracketOut, diameter_mm: float, cloth_top_mm: float | None) -> list[Record]:
    """One bracket: the wall plate above and below the rod, and the cradle that holds it.

    Parameters
    ----------
    bracket : BracketOut
    diameter_mm : float
        Of the rod.
    cloth_top_mm : float or None
        Top of the cloth that hangs before it, which hides the plate's lower part; None: nothing hangs there.

    Returns
    -------
    list of Record
    """
    if bracket.on == "ceiling":
        return _hanging_records(bracket, diameter_mm)
    left, bottom, right, top = bracket.plate
    x, y, rod = bracket.x_mm, bracket.height_mm, diameter_mm / 2
    foot = y + rod
    if cloth_top_mm is not None:
        bottom = max(bottom, min(cloth_top_mm, y - rod))
        foot = max(foot, cloth_top_mm)
    plates: list[Step] = []
    screws: list[Step] = []
    radius = (right - left) * (0.5 if "flange" in bracket.kit else 0.25)
    if top > foot:
        plates.extend(_tab(left, foot, right, top, radius))
        screw = foot + (top - foot) * 0.6
        screws.extend(circle(x, screw, min(3.5, (right - left) * 0.16)))
    if bottom < y - rod:
        plates.extend(_tab(left, y - rod, right, bottom, radius if cloth_top_mm is None else 0.0))
        if cloth_top_mm is None:
            screw = y - rod - (y - rod - bottom) * 0.6
            screws.extend(circle(x, screw, min(3.5, (right - left) * 0.16)))
    half = max(bracket.half_width_mm, 3.0)
    wrap = rod * 1.22 + 1.0
    if "strap" not in bracket.kit or bracket.rings_pass:
        # The rod lies in a cup or cradle from below; only a strap goes all round.
        cradle = polygon(
            ((x - half, y - wrap), (x + half, y - wrap), (x + half, y - rod * 0.15), (x - half, y - rod * 0.15))
        )
    else:
        cradle = rounded(x - half, y - wrap, x + half, y + wrap, half * 0.4)
    shine = Gradient(
        (x - half, 0.0), (x + half, 0.0), (Stop(0.0, inks.METAL_LIGHT), Stop(0.5, Ink.METAL), Stop(1.0, inks.METAL_DARK))
    )
    records: list[Record] = []
    if plates:
        face = Gradient((left, 0.0), (right, 0.0), (Stop(0.0, inks.METAL_MIDDLE), Stop(1.0, Ink.METAL)))
        records += [Fill(tuple(plates), face), Path(tuple(plates), _EDGE)]
    if screws:
        records.append(Fill(tuple(screws), inks.METAL_LIGHT))
    if cloth_top_mm is None or cloth_top_mm <= y + rod:
        records += [Fill(cradle, shine), Path(cradle, _EDGE)]
    return records


def _hanging_records(bracket: BracketOut, diameter_mm: float) -> list[Record]:
    """A bracket under the ceiling: plate seen edge-on, stem, and what holds the rod; cloth hangs below it."""
    left, bottom, right, top = bracket.plate
    x, y, rod = bracket.x_mm, bracket.height_mm, diameter_mm / 2
    half, wrap = max(bracket.half_width_mm, 3.0), rod * 1.22 + 1.0
    stem = min(half * 0.5, 5.0)
    shine = Gradient(
        (x - half, 0.0), (x + half, 0.0), (Stop(0.0, inks.METAL_LIGHT), Stop(0.5, Ink.METAL), Stop(1.0, inks.METAL_DARK))
    )
    plate = rectangle(left, bottom, right, top)
    cup = rounded(x - half, y - wrap, x + half, y + wrap, half * 0.4)
    parts: list[tuple[Step, ...]] = [tuple(plate), tuple(cup)]
    if bottom > y + wrap:
        parts.insert(0, tuple(rectangle(x - stem, y + wrap, x + stem, bottom)))
    screws = tuple(step for at in (left, right) for step in segment((at + x) / 2, bottom - 1.5, (at + x) / 2, top))
    return [*(record for part in parts for record in (Fill(part, shine), Path(part, _EDGE))), Path(screws, _EDGE)]


def _tab(left: float, root: float, right: float, end: float, radius: float) -> tuple[Step, ...]:
    """A plate from the rod to ``end`` with that end rounded, upward or downward."""
    way = 1.0 if end > root else -1.0
    r = min(radius, abs(end - root), (right - left) / 2)
    k = r * 0.4477
    return (
        ("M", left, root),
        ("L", left, end - way * r),
        ("C", left, end - way * k, left + k, end, left + r, end),
        ("L", right - r, end),
        ("C", right - k, end, right, end - way * k, right, end - way * r),
        ("L", right, root),
        ("Z",),
    )
