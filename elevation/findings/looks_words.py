"""How crooked a rod looks beside the head under it and the ceiling over it, in words."""

from __future__ import annotations

from elevation.setting_out.tilt import Look
from elevation.words import Message, Mm, msg

NAMES: dict[str, Message] = {
    "level": msg("level"),
    "head": msg("parallel to the head"),
    "ceiling": msg("parallel to the ceiling"),
    "split": msg("split with the ceiling"),
}
"""How a rod may hang, as it is said."""


def choices(look: Look, least_mm: float) -> tuple[str, ...]:
    """The ways to hang a rod that differ by ``least_mm`` over its length or more; level first."""
    found = ["level"]
    for tilt in ("head", "ceiling", "split"):
        if tilt != "head" and look.ceiling is None:
            continue
        if all(abs(look.rise(tilt) - look.rise(other)) > least_mm for other in found):
            found.append(tilt)
    return tuple(found)


def told(look: Look, least_mm: float) -> Message | None:
    """Every way to hang a rod with how far it then is off the head, the ceiling and the level; None where all are one."""
    ways = choices(look, least_mm)
    if len(ways) < 2:
        return None
    whole = _way(look, ways[0])
    for tilt in ways[1:]:
        whole = msg("{first}; {second}", first=whole, second=_way(look, tilt))
    return msg("Over the rod's {length}: {ways}.", length=Mm(look.length_mm), ways=whole)


def _way(look: Look, tilt: str) -> Message:
    rise = look.rise(tilt)
    head = Mm(abs(rise - look.head))
    if look.ceiling is None:
        if tilt == "level":
            return msg("level, it is {head} off the head", head=head)
        return msg("parallel to the head, it is {level} off the level", level=Mm(abs(rise)))
    params: dict[str, object] = {"head": head, "ceiling": Mm(abs(rise - look.ceiling)), "level": Mm(abs(rise))}
    if tilt == "level":
        return msg("level, it is {head} off the head and {ceiling} off the ceiling", **params)
    if tilt == "head":
        return msg("parallel to the head, it is {ceiling} off the ceiling and {level} off the level", **params)
    if tilt == "ceiling":
        return msg("parallel to the ceiling, it is {head} off the head and {level} off the level", **params)
    return msg("split, it is {head} off the head, {ceiling} off the ceiling and {level} off the level", **params)
