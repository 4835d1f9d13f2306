"""reading-used: an opening is drawn with another figure than the reading that counts.

Consider; every opening of which widths or heights were read. Makers' measuring guides: outside the opening the largest of
three, inside it the smallest.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import wall_of_scene
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import opening_name
from elevation.findings.reading import measured
from elevation.room.edits import replace_at
from elevation.room.find import opening_of
from elevation.room.model import Opening
from elevation.room.readings import Side, hangs_inside, used
from elevation.setting_out.model import OpeningOut
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg

_SIDES: tuple[Side, Side] = ("width", "height")


def _find(scene: Scene) -> Iterator[Finding]:
    wall = wall_of_scene(scene)
    for opening, out in measured(scene):
        is_inside = hangs_inside(wall, opening.id)
        for side in _SIDES:
            counts = used(opening.taken, side, is_inside)
            drawn: Length = opening.width if side == "width" else opening.height
            if counts is None or abs(counts.mm - drawn.mm) <= scene.half_mm + TOUCH_MM:
                continue
            yield Finding(
                "reading-used",
                Weight.CONSIDER,
                out.ref,
                _text(out, side, is_inside, drawn.mm, counts.mm),
                msg("makers' measuring guides: the largest of three outside, the smallest inside"),
                measured_mm=drawn.mm,
                limit_mm=counts.mm,
                at=((out.left_mm + out.right_mm) / 2, (out.bottom_mm + out.top_mm) / 2),
            )


def _text(out: OpeningOut, side: Side, is_inside: bool, drawn_mm: float, counts_mm: float) -> Message:
    params: dict[str, object] = {"opening": opening_name(out), "drawn": Mm(drawn_mm), "counts": Mm(counts_mm)}
    if side == "width":
        if is_inside:
            return msg("{opening}: it is drawn {drawn} wide, but the smallest width read is {counts}.", **params)
        return msg("{opening}: it is drawn {drawn} wide, but the largest width read is {counts}.", **params)
    if is_inside:
        return msg("{opening}: it is drawn {drawn} high, but the smallest height read is {counts}.", **params)
    return msg("{opening}: it is drawn {drawn} high, but the largest height read is {counts}.", **params)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    opening = opening_of(scene.room, finding.subject)
    is_inside = hangs_inside(wall_of_scene(scene), opening.id)
    both = {side: used(opening.taken, side, is_inside) for side in _SIDES}
    yield from _to(opening, finding, both["width"], both["height"])


def _to(opening: Opening, finding: Finding, width: Length | None, height: Length | None) -> Iterator[Change]:
    ref = finding.subject
    if width is not None and abs(width.mm - opening.width.mm) > TOUCH_MM:
        label = msg("Take the width that was read, {width}", width=Mm(width.mm))
        yield Change(label, lambda room: replace_at(room, ref, width=width))
    if height is not None and abs(height.mm - opening.height.mm) > TOUCH_MM:
        label = msg("Take the height that was read, {height}", height=Mm(height.mm))
        yield Change(label, lambda room: replace_at(room, ref, height=height))
    if width is not None and height is not None:
        label = msg("Take the width and the height that were read")
        yield Change(label, lambda room: replace_at(room, ref, width=width, height=height))


RULE = Rule("reading-used", msg("the reading that counts"), find_in_wall=_find, changes=_changes)
