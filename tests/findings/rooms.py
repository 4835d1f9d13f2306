"""A room in which nothing is wrong, and ways to put one thing wrong: figures are worked by hand from it.

Wall 144 in wide, ceiling 96 in. Window 1: left side at 54 in, 36 in wide, sill 30 in, head at 78 in; casing 2 1/4 in,
so its top is at 80 1/4 in. Rod 4 in above the casing: centre at 84 1/4 in. Rod ends 10 in beyond the opening, brackets 2 in
in from them: 8 in beyond the opening. Strap brackets: plate 1 1/2 in wide, 1 1/2 in above and 2 1/2 in below the axis.
Rod of 3/4 in conduit, 0.922 in thick: on it the clips let the cloth begin 1 3/4 in under the axis, at 82 1/2 in. The
parked ring stands half a strap (3/8 in) and half a ring (1/8 in) beyond the bracket: cloth begins 8 1/2 in beyond the
opening. Panels 54 in flat: stack 4 1/2 in, closed
26 1/2 in each, fullness 2.04. Hem 1/2 in clear of the floor.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Any

from msgspec.structs import replace

from elevation.findings.all_rules import find, find_afresh, rule_of
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Change, Finding, Scene
from elevation.room.edits import edit_at, replace_at, replace_rod
from elevation.room.model import (
    Bracket,
    Held,
    Layer,
    Obstacle,
    Opening,
    Panel,
    Rod,
    Room,
    Scheme,
    Station,
    Treatment,
    Wall,
)
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.trade.tables import load_trade
from elevation.units import Length
from elevation.words import Message, Style, say

INCH = 25.4

TOO_FAR = 0.01
"""mm: well past the 1e-6 mm within which things touch."""

HALF = INCH / 32
"""Half a graduation of 1/16 in, mm."""

LAYER = ("w1", "s1", "t1", "l1")
OPENING = ("w1", "o1")
LEFT_BRACKET = (*LAYER, "b1")
RIGHT_BRACKET = (*LAYER, "b2")
LEFT_PANEL = (*LAYER, "p1")
RIGHT_PANEL = (*LAYER, "p2")
INCHES = Style("in", INCH / 16, ".", "en")


def mm(value: float) -> Length:
    return Length(float(value), f"{value!r} mm")


def inch(value: float) -> Length:
    return Length(value * INCH, f"{value!r} in")


def held(hold: Any, value: Length) -> Held:
    return Held(hold, value)


def window(key: str = "o1", left: float = 54, **fields: Any) -> Opening:
    facts: dict[str, Any] = {"width": inch(36), "height": inch(48), "sill": inch(30), "casing": inch(2.25)}
    return Opening(id=key, left=inch(left), **{**facts, **fields})


def layer(key: str = "l1", **fields: Any) -> Layer:
    rod = Rod(
        height=held("above-casing", inch(4)),
        left=held("beyond-opening", inch(10)),
        right=held("beyond-opening", inch(10)),
    )
    brackets = (
        Bracket(id="b1", place=held("from-left-end", inch(2))),
        Bracket(id="b2", place=held("from-right-end", inch(2))),
    )
    panels = (Panel(id="p1", flat_width=inch(54)), Panel(id="p2", flat_width=inch(54), parks="right"))
    facts: dict[str, Any] = {"rod": rod, "brackets": brackets, "panels": panels}
    return Layer(id=key, **{**facts, **fields})


def treatment(key: str = "t1", openings: tuple[str, ...] = ("o1",), **fields: Any) -> Treatment:
    facts: dict[str, Any] = {"layers": (layer(),)}
    return Treatment(id=key, openings=openings, **{**facts, **fields})


def good_room(**fields: Any) -> Room:
    """The room of this module's first lines; ``fields`` are of the wall."""
    facts: dict[str, Any] = {
        "width": inch(144),
        "ceiling": (Station(inch(0), inch(96)),),
        "openings": (window(),),
        "schemes": (Scheme(id="s1", treatments=(treatment(),)),),
    }
    return Room(walls=(Wall(id="w1", **{**facts, **fields}),))


def rod(room: Room, **fields: Any) -> Room:
    return replace_rod(room, LAYER, **fields)


def reach(room: Room, beyond: Length) -> Room:
    """Both rod ends ``beyond`` the opening."""
    return rod(room, left=held("beyond-opening", beyond), right=held("beyond-opening", beyond))


def at(room: Room, ref: tuple[str, ...], **fields: Any) -> Room:
    return replace_at(room, ref, **fields)


def ceiling(room: Room, height: Length) -> Room:
    return at(room, ("w1",), ceiling=(Station(inch(0), height),))


def panels(room: Room, **fields: Any) -> Room:
    """Every panel of the layer with ``fields``."""
    return edit_at(room, LAYER, lambda one: replace(one, panels=tuple(replace(p, **fields) for p in one.panels)))


def obstacle(kind: Any, left: float, bottom: float, width: float, height: float, out: float = 0.0, **more: Any) -> Obstacle:
    """An obstacle by plain mm."""
    return Obstacle(
        id="x1", kind=kind, left=mm(left), bottom=mm(bottom), width=mm(width), height=mm(height), projection=mm(out), **more
    )


def with_obstacle(room: Room, *obstacles: Obstacle) -> Room:
    named = tuple(replace(one, id=f"x{number}") for number, one in enumerate(obstacles, 1))
    return at(room, ("w1",), obstacles=named)


@cache
def trade() -> Trade:
    return load_trade()


def scene(room: Room, wall: str = "w1", scheme: str = "s1") -> Scene:
    return Scene(room, set_out(room, wall, scheme, trade()), trade())


def found(room: Room, rule: str | None = None) -> tuple[Finding, ...]:
    """Findings of the wall, of one rule or of all; nothing remembered from another test."""
    findings = find(scene(room), TreatmentMemo(find_afresh))
    return tuple(one for one in findings if rule is None or one.rule == rule)


def the(room: Room, rule: str) -> Finding:
    """The one finding of ``rule``."""
    findings = found(room, rule)
    assert len(findings) == 1, [said(one.text) for one in findings]
    return findings[0]


def said(text: Message) -> str:
    return say(text, INCHES)


def said_all(changes: Iterable[Change]) -> list[str]:
    """What changes are called."""
    return [said(change.label) for change in changes]


def candidates(room: Room, rule: str, which: int = 0) -> list[Change]:
    """What a rule would try for one of its findings, before anything is tried."""
    return list(rule_of(rule).changes(scene(room), found(room, rule)[which]))
