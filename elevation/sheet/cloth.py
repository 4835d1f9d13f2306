"""How cloth catches the light: tones of a fold from its colour, its body and how deep it folds.

Light falls from the left and a little from the front. A fold is a wave; the tone at each place across it follows
the slope of the wave, and what lies back between two folds is darker the deeper they are.
"""

from __future__ import annotations

import math
from functools import lru_cache

from msgspec import Struct

from elevation.sheet import inks
from elevation.sheet.records import Ink, Stop

_PLACES = (0.0, 0.07, 0.2, 0.36, 0.52, 0.7, 0.86, 0.95, 1.0)
_LIGHT_AT = 0.34
_WARM_LIGHT = "#fff7e8"
# What is left of red, green and blue in the deepest fold: shade keeps the cloth's own hue, a little warmer than grey.
_SHADE_LEFT = (0.40, 0.355, 0.385)


class Tones(Struct, frozen=True, gc=False):
    """The tones of one cloth at one depth of fold.

    ``base`` fills the panel; ``folds`` are gradient stops across one fold, a few variants to be taken in turn so that
    no two neighbours are quite alike; ``line`` draws valleys, ``edge`` the outline; ``deep`` and ``glow`` are clear
    tints for strokes of shade and light; ``shade`` is the shadow that the panel throws.
    """

    base: str
    folds: tuple[tuple[Stop, ...], ...]
    line: str
    edge: str
    deep: str
    glow: str
    shade: str


def depth_share(flat_over_drawn: float) -> float:
    """How strongly folds are modelled, 0 flat to 1 deep, from flat width over drawn width.

    A wave whose length is ``f`` times its chord has a steepest slope near ``2 sqrt(f - 1)`` (arc length of a shallow
    sine, first term); its share of light and shade grows with the slope and levels off.
    """
    return math.tanh(0.62 * 2.0 * math.sqrt(max(0.0, flat_over_drawn - 1.0)) + 0.12)


def bunched_share(flat_over_drawn: float) -> float:
    """How closely folds are pressed together, 0 hanging free to 1 a stack, from flat width over drawn width.

    Of a stack the eye sees the fronts of folds; what lies back shrinks to a thin dark slot.
    """
    return min(1.0, max(0.0, (flat_over_drawn - 3.0) / 6.0))


def tones(colour: str, body: str, depth: float, bunched: float) -> Tones:
    """The tones of a cloth.

    Parameters
    ----------
    colour : str
        ``#rrggbb``.
    body : str
        ``sheer`` is drawn translucent; the others solid.
    depth, bunched : float
        From ``depth_share`` and ``bunched_share``; taken in steps, so that a drag finds its tones ready.
    """
    return _tones(colour, body == "sheer", round(depth * 32), round(bunched * 8))


@lru_cache(maxsize=512)
def _tones(colour: str, is_sheer: bool, depth_step: int, bunched_step: int) -> Tones:
    depth, bunched = depth_step / 32, bunched_step / 8
    light = inks.lightness(colour)
    dark, glow = _shaded(colour), _lit(colour)
    # A pale cloth has little room above it and shows its folds by shade; a dark one by light.
    reach_up = (0.44 + 0.2 * (1.0 - min(1.0, light * 2.2))) * (0.35 + 0.65 * depth)
    reach_down = (0.62 - 0.2 * light) * (0.25 + 0.75 * depth) * (0.55 if is_sheer else 1.0)
    spread = 1.0 + 1.2 * bunched
    folds = tuple(
        _fold(colour, glow, dark, (reach_up * lift, reach_down * (2.0 - lift)), depth, bunched, is_sheer)
        for lift in (1.0 + vary * spread for vary in (0.0, -0.16, 0.12, -0.07, 0.18, -0.22, 0.05))
    )
    edge = inks.blend(dark, Ink.OUTLINE, 0.45)
    line = inks.blend(dark, Ink.OUTLINE, 0.3)
    firm = (1.0 - 0.6 * bunched) * (0.6 if is_sheer else 1.0)
    return Tones(
        base=inks.with_alpha(colour, 0.4 + 0.3 * bunched) if is_sheer else colour,
        folds=folds,
        line=inks.with_alpha(line, (0.34 + 0.3 * depth) * firm),
        edge=inks.with_alpha(edge, 0.6) if is_sheer else edge,
        deep=inks.with_alpha(dark, (0.04 + 0.04 * depth) if is_sheer else (0.14 + 0.1 * depth) * (1 - 0.35 * bunched)),
        glow=inks.with_alpha(glow, 0.10 + 0.06 * depth),
        shade=inks.with_alpha(Ink.OUTLINE, 0.07 if is_sheer else 0.17),
    )


def _shaded(colour: str) -> str:
    red, green, blue, _ = inks.parts(colour)
    left = [round(value * share) for value, share in zip((red, green, blue), _SHADE_LEFT, strict=True)]
    return "#{:02x}{:02x}{:02x}".format(*left)


def _lit(colour: str) -> str:
    """The colour in full light: brighter in its own hue, and a little toward the light's."""
    red, green, blue, _ = inks.parts(colour)
    bright = [min(255, round(value * 1.24 + 14)) for value in (red, green, blue)]
    return inks.blend("#{:02x}{:02x}{:02x}".format(*bright), _WARM_LIGHT, 0.2)


def _fold(
    colour: str, glow: str, dark: str, reach: tuple[float, float], depth: float, bunched: float, is_sheer: bool
) -> tuple[Stop, ...]:
    """The stops across one fold from valley to valley."""
    stops: list[Stop] = []
    for place in _PLACES:
        slope = math.cos(2 * math.pi * (place - _LIGHT_AT))
        back = abs(2 * place - 1) ** (5 - 2 * depth + 4 * bunched)
        tone = 0.85 * slope * (1 - 0.3 * bunched) - (0.35 + 0.5 * depth) * back + 0.12 * bunched
        if tone >= 0:
            mixed = inks.blend(colour, glow, min(1.0, tone * reach[0] * 1.6))
        else:
            mixed = inks.blend(colour, dark, min(1.0, -tone * reach[1]))
        if is_sheer:
            # Where folds of a sheer lie behind one another less light comes through.
            mixed = inks.with_alpha(mixed, 0.26 + 0.36 * depth * max(0.0, -tone))
        stops.append(Stop(place, mixed))
    return tuple(stops)
