"""readings-differ: like readings of one opening are farther apart than those of a square one.

Consider; every opening of which two widths, or two heights, were read. A shutter maker's squareness test: the largest
less the smallest within 3/16 in.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.model import Finding, Rule, Scene, Weight
from elevation.findings.naming import opening_name
from elevation.findings.reading import measured
from elevation.room.readings import readings_of
from elevation.setting_out.model import OpeningOut
from elevation.units import Length
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _find(scene: Scene) -> Iterator[Finding]:
    for opening, out in measured(scene):
        widths, heights = readings_of(opening.taken, "width"), readings_of(opening.taken, "height")
        # One finding an opening: that of the readings that are farther apart.
        wide, high = _spread(widths), _spread(heights)
        if not exceeds(max(wide, high), limit_mm(scene, "readings-differ"), scene.half_mm):
            continue
        yield _finding(scene, out, max(wide, high), wide >= high)


def _spread(readings: tuple[Length, ...]) -> float:
    figures = [length.mm for length in readings]
    return max(figures) - min(figures) if figures else 0.0


def _finding(scene: Scene, out: OpeningOut, by: float, is_wide: bool) -> Finding:
    params: dict[str, object] = {
        "opening": opening_name(out),
        "by": Mm(by),
        "limit": said_limit(scene, "readings-differ"),
    }
    if is_wide:
        text = msg("{opening}: its widths differ by {by}, more than {limit}. Measure again, or take it as it is.", **params)
    else:
        text = msg(
            "{opening}: its heights differ by {by}, more than {limit}. Measure again, or take it as it is.", **params
        )
    return Finding(
        "readings-differ",
        Weight.CONSIDER,
        out.ref,
        text,
        authority_of(scene, "readings-differ"),
        measured_mm=by,
        limit_mm=limit_mm(scene, "readings-differ"),
        at=((out.left_mm + out.right_mm) / 2, out.bottom_mm),
    )


RULE = Rule("readings-differ", msg("like readings of an opening"), find_in_wall=_find)
