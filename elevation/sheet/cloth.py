"""How cloth catches the light: tones of a fold from its colour, its body and how deep it folds.

Light falls from the left and a little from the front. A fold is a wave; the tone at each place across it follows
the slope of the wave, and what lies back between two folds is darker the deeper they are.
"""

from __future__ import annotations

import itertools
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

    ``base`` is the cloth itself; ``folds`` are gradient stops across one fold, a few variants to be taken in turn so that
    no two neighbours are quite alike; ``line`` draws valleys, ``edge`` the outline; ``hollow``, ``crease`` and ``crest``
    are for strokes of the brush, solid where the cloth is (a translucent stroke costs a screen ten times as much);
    ``deep`` is a clear shade; ``shade`` is the shadow that the panel throws.
    """

    base: str
    folds: tuple[tuple[Stop, ...], ...]
    line: str
    edge: str
    hollow: str
    crease: str
    crest: str
    deep: str
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


def tones(key: tuple[str, str, int, int]) -> Tones:
    """The tones of a cloth by its ``key_of``; a drag finds its tones ready, since the key goes in steps.

    A ``sheer`` body is drawn translucent, every other solid.
    """
    colour, body, depth_step, bunched_step = key
    return _tones(colour, body == "sheer", depth_step, bunched_step)


@lru_cache(maxsize=512)
def _tones(colour: str, is_sheer: bool, depth_step: int, bunched_step: int) -> Tones:
    depth, bunched = depth_step / 32, bunched_step / 8
    light = inks.lightness(colour)
    dark, glow = _shaded(colour), _lit(colour)
    # A pale cloth has little room above it and shows its folds by shade; a dark one by light.
    reach_up = (0.44 + 0.2 * (1.0 - min(1.0, light * 2.2))) * (0.35 + 0.65 * depth)
    reach_down = (0.62 - 0.2 * light) * (0.25 + 0.75 * depth) * (0.85 if is_sheer else 1.0)
    spread = 1.0 + 1.2 * bunched
    folds = tuple(
        _fold(colour, glow, dark, (reach_up * lift, reach_down * (2.0 - lift)), depth, bunched, is_sheer)
        for lift in (1.0 + vary * spread for vary in (0.0, -0.16, 0.12, -0.07, 0.18, -0.22, 0.05))
    )
    edge = inks.blend(dark, Ink.OUTLINE, 0.45)
    deep = (0.34 + 0.3 * depth) * (1.0 - 0.6 * bunched)
    line = inks.blend(inks.blend(colour, dark, min(1.0, reach_down * 1.2)), inks.blend(dark, Ink.OUTLINE, 0.3), deep)
    hollow = inks.blend(colour, dark, min(1.0, reach_down * 1.04))
    crease = inks.blend(colour, dark, reach_down * 0.66)
    crest = inks.blend(colour, glow, min(1.0, reach_up * 1.42))
    if is_sheer:
        edge, line = inks.with_alpha(edge, 0.45), inks.with_alpha(line, 0.45 * (1.0 - 0.5 * bunched))
        hollow, crease, crest = (inks.with_alpha(tone, 0.22) for tone in (hollow, crease, crest))
    return Tones(
        base=inks.with_alpha(colour, 0.4 + 0.3 * bunched) if is_sheer else colour,
        folds=folds,
        line=line,
        edge=edge,
        hollow=hollow,
        crease=crease,
        crest=crest,
        deep=inks.with_alpha(dark, (0.04 + 0.04 * depth) if is_sheer else (0.14 + 0.1 * depth) * (1 - 0.35 * bunched)),
        shade=inks.with_alpha(inks.SHADE, 0.05 if is_sheer else 0.13),
    )


@lru_cache(maxsize=256)
def across(paint_key: tuple[str, str, int, int], means: tuple[float, ...]) -> tuple[Stop, ...]:
    """The gradient across a whole panel, valley to valley.

    Parameters
    ----------
    paint_key : tuple
        Colour, body, and the steps of depth and bunching, as ``key_of`` gives them.
    means : tuple of float
        Where the valleys lie on average, 0 at the panel's left edge to 1 at its right.
    """
    colour, body, depth_step, bunched_step = paint_key
    folds = _tones(colour, body == "sheer", depth_step, bunched_step).folds
    last = len(means) - 2
    # Few stops tell a narrow fold from a smooth one; many folds have narrow ones.
    stride = 1 if last < 16 else 2
    stops: list[Stop] = []
    for index, (near, far) in enumerate(itertools.pairwise(means)):
        fold = folds[index % len(folds)]
        chosen = fold[:-1:stride] if index < last else (*fold[:-1:stride], fold[-1])
        stops.extend(Stop(near + (far - near) * stop.at, stop.colour) for stop in chosen)
    return tuple(stops)


def key_of(colour: str, body: str, depth: float, bunched: float) -> tuple[str, str, int, int]:
    """What the tones of a cloth are kept by: its colour and body, depth and bunching in steps."""
    return colour, body, round(depth * 32), round(bunched * 8)


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
            # One clearness across the panel: a PDF painter makes solid what goes from clear to less clear.
            mixed = inks.with_alpha(mixed, 0.56 + 0.24 * bunched)
        stops.append(Stop(place, mixed))
    return tuple(stops)
