"""Daylight in plain words, with what they rest on."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.daylight import Daylight, Slit
from elevation.words import Message, Mm, Percent, msg

ASSUMED = msg(
    "Straight through the glass, against the bare window: cloth passes its flat share once for each thickness that hangs"
    " there. Sun, sky, frames, what the room throws back and the slits beside the cloth are left out."
)
"""What every figure of daylight rests on."""

_PLACES = {
    "left": msg("left"),
    "right": msg("right"),
    "top": msg("over the top"),
    "centre": msg("in the centre"),
}


def daylight_words(light: Daylight) -> tuple[Message, ...]:
    """What is kept open and closed, then where light comes round the closed cloth."""
    kept = msg("daylight kept: {open} open, {closed} closed", open=Percent(light.open), closed=Percent(light.closed))
    if not light.is_known:
        kept = msg(
            "daylight kept: at least {open} open, {closed} closed; what the cloth passes is not known until it is chosen",
            open=Percent(light.open),
            closed=Percent(light.closed),
        )
    slits = slit_words(light.slits)
    return (kept,) if slits is None else (kept, slits)


def slit_words(slits: Sequence[Slit]) -> Message | None:
    """The ways round closed cloth in one phrase; None where there is none."""
    found: Message | None = None
    for slit in slits:
        part = msg("{width} {place}", width=Mm(slit.width_mm), place=_PLACES[slit.place])
        found = part if found is None else msg("{first}, {then}", first=found, then=part)
    return None if found is None else msg("light comes round it: {slits}", slits=found)
