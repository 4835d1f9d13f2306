"""Daylight in plain words, with what they rest on."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.daylight import Daylight, Kept, Slit
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Percent, msg

ASSUMED = msg(
    "Straight through the glass, against the bare window: cloth passes its flat share once for each thickness that hangs"
    " there. Sun, sky, frames, what the room throws back and the slits beside the cloth are left out. Cloth that is not"
    " chosen from the table counts from the densest to the thinnest of its kind there, and is drawn as the densest."
)
"""What every figure of daylight rests on."""

_PLACES = {
    "left": msg("left"),
    "right": msg("right"),
    "top": msg("over the top"),
    "centre": msg("in the centre"),
}


def share_said(kept: Kept) -> Message:
    """What is kept, in whole per cent: one figure, or from the least to the most."""
    least, most = (round(share * 100) for share in (kept.least, kept.most))
    if least == most:
        return msg("{share}", share=Percent(kept.least))
    return msg("{low} to {high}%", low=least, high=most)


def daylight_words(light: Daylight) -> tuple[Message, ...]:
    """What is kept open and closed, then where light comes round the closed cloth."""
    is_exact = light.is_chosen or all(kept.least == kept.most for kept in (light.open, light.closed))
    figures = {"open": share_said(light.open), "closed": share_said(light.closed)}
    kept = msg("daylight kept: {open} open, {closed} closed", **figures)
    if not is_exact:
        kept = msg("daylight kept: {open} open, {closed} closed (its cloth is not chosen)", **figures)
    slits = slit_words(light.slits)
    return (kept,) if slits is None else (kept, slits)


def slit_words(slits: Sequence[Slit]) -> Message | None:
    """The ways round closed cloth in one phrase, those of one width together; None where there is none."""
    found: Message | None = None
    at = 0
    while at < len(slits):
        width, places = slits[at].width_mm, _PLACES[slits[at].place]
        at += 1
        while at < len(slits) and abs(slits[at].width_mm - width) <= TOUCH_MM:
            places = msg("{first}, {then}", first=places, then=_PLACES[slits[at].place])
            at += 1
        part = msg("{width} {place}", width=Mm(width), place=places)
        found = part if found is None else msg("{first}; {then}", first=found, then=part)
    return None if found is None else msg("light comes round it: {slits}", slits=found)
