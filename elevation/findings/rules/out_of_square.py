"""out-of-square: an opening is not square, or leans, by what its diagonals tell.

Consider; every opening of which both diagonals were read. A shutter maker's squareness test: diagonals within 3/16 in; a
window installer's guide: plumb within 1/8 in. How far it leans follows from the diagonals by geometry.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.model import Finding, Rule, Scene, Weight
from elevation.findings.naming import opening_name
from elevation.findings.reading import measured
from elevation.setting_out.model import OpeningOut
from elevation.trade.squareness import lean_mm
from elevation.units.tolerance import exceeds
from elevation.words import Message, Mm, msg


def _find(scene: Scene) -> Iterator[Finding]:
    for opening, out in measured(scene):
        rising, falling = opening.taken.diagonal_rising, opening.taken.diagonal_falling
        if rising is None or falling is None:
            continue
        differ = abs(rising.mm - falling.mm)
        lean = lean_mm(rising.mm, falling.mm, opening.width.mm)
        if exceeds(differ, limit_mm(scene, "out-of-square"), scene.half_mm):
            yield _finding(scene, out, "out-of-square", differ, _square_text(scene, out, differ, lean))
        elif exceeds(abs(lean), limit_mm(scene, "out-of-plumb"), scene.half_mm):
            yield _finding(scene, out, "out-of-plumb", abs(lean), _plumb_text(scene, out, lean))


def _finding(scene: Scene, out: OpeningOut, limit_id: str, measured_mm: float, text: Message) -> Finding:
    return Finding(
        "out-of-square",
        Weight.CONSIDER,
        out.ref,
        text,
        authority_of(scene, limit_id),
        measured_mm=measured_mm,
        limit_mm=limit_mm(scene, limit_id),
        at=((out.left_mm + out.right_mm) / 2, out.top_mm),
    )


def _square_text(scene: Scene, out: OpeningOut, differ: float, lean: float) -> Message:
    params: dict[str, object] = {
        "opening": opening_name(out),
        "differ": Mm(differ),
        "lean": Mm(abs(lean)),
        "limit": said_limit(scene, "out-of-square"),
    }
    if lean > 0:
        return msg(
            "{opening}: its diagonals differ by {differ}, more than {limit}: its head stands {lean} to the right of its"
            " sill. Hang the cloth before the wall, not inside.",
            **params,
        )
    return msg(
        "{opening}: its diagonals differ by {differ}, more than {limit}: its head stands {lean} to the left of its"
        " sill. Hang the cloth before the wall, not inside.",
        **params,
    )


def _plumb_text(scene: Scene, out: OpeningOut, lean: float) -> Message:
    params: dict[str, object] = {
        "opening": opening_name(out),
        "lean": Mm(abs(lean)),
        "limit": said_limit(scene, "out-of-plumb"),
    }
    if lean > 0:
        return msg("{opening}: by its diagonals it leans {lean} to the right, more than {limit}.", **params)
    return msg("{opening}: by its diagonals it leans {lean} to the left, more than {limit}.", **params)


RULE = Rule("out-of-square", msg("openings square and plumb"), find_in_wall=_find)
