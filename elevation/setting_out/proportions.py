"""Live proportions: the parts of the wall, the rod between head and ceiling, symmetry, alignment with neighbours."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.facts import WallFacts
from elevation.setting_out.model import OpeningOut, ProportionOut, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.setting_out.profile import height_at
from elevation.words import Message, msg

Part = tuple[Message, float]

_WALL = msg("wall")
_OPENINGS = msg("openings in the wall")
_OVER_HEAD = msg("over the head")
_LEFT = msg("left of the opening")
_RIGHT = msg("right of the opening")
_SIDES = msg("left and right of the opening")
_RODS = msg("rods of one wall")
_NOUNS = {"rod": msg("rod"), "track": msg("track"), "tension-rod": msg("tension rod")}


class _Said:
    """The names of the parts beside a rod, a track or a tension rod."""

    def __init__(self, kind: str) -> None:
        noun = _NOUNS[kind]
        self.below = msg("below the {support}", support=noun)
        self.above = msg("above the {support}", support=noun)
        self.in_opening = msg("{support} in the opening's height", support=noun)
        self.in_height = msg("{support} in the wall's height", support=noun)
        self.between = msg("{support} between head and ceiling", support=noun)


_SAID = {kind: _Said(kind) for kind in _NOUNS}


def of_wall(
    openings: Sequence[OpeningOut], treatments: Sequence[TreatmentOut], facts: WallFacts
) -> tuple[tuple[ProportionOut, ...], tuple[ProportionOut, ...]]:
    """What is worth a look before and after each treatment's own proportions."""
    first = (_along_the_wall(openings, facts),) if openings else ()
    last = (_rods_of_one_wall(treatments),) if len(treatments) > 1 else ()
    return first, last


def _along_the_wall(openings: Sequence[OpeningOut], facts: WallFacts) -> ProportionOut:
    parts: list[Part] = []
    x = 0.0
    for opening in openings:
        parts.append((_WALL, opening.left_mm - x))
        parts.append((msg("opening {number}", number=opening.number), opening.right_mm - opening.left_mm))
        x = opening.right_mm
    parts.append((_WALL, facts.width_mm - x))
    opened = sum(opening.right_mm - opening.left_mm for opening in openings)
    return ProportionOut(_OPENINGS, tuple(parts), opened / facts.width_mm if facts.width_mm > 0 else 0.0)


def of_treatment(treatment: TreatmentOut, facts: WallFacts) -> tuple[ProportionOut, ...]:
    """One treatment's proportions: rod over floor and under ceiling, rod between head and ceiling, left against right."""
    clear = treatment.clearances
    support = treatment.layers[0].support
    said = _SAID[support.kind]
    found: list[ProportionOut] = []
    if treatment.mount in INSIDE:
        return _inside(treatment)
    if clear.below_ceiling_mm is not None:
        middle = (support.left_mm + support.right_mm) / 2
        drop = support.height_mm - height_at(facts.floor, middle)
        whole = drop + clear.below_ceiling_mm
        parts: tuple[Part, ...] = ((said.below, drop), (said.above, clear.below_ceiling_mm))
        found.append(ProportionOut(said.in_height, parts, _share(drop, whole)))
        gap = clear.above_casing_mm + clear.below_ceiling_mm
        parts = ((_OVER_HEAD, clear.above_casing_mm), (said.above, clear.below_ceiling_mm))
        found.append(ProportionOut(said.between, parts, _share(clear.above_casing_mm, gap)))
    sides: tuple[Part, ...] = (
        (_LEFT, clear.left_of_opening_mm),
        (_RIGHT, clear.right_of_opening_mm),
    )
    # A half means that both sides are alike.
    both = clear.left_of_opening_mm + clear.right_of_opening_mm
    found.append(ProportionOut(_SIDES, sides, _share(clear.left_of_opening_mm, both)))
    return tuple(found)


def _inside(treatment: TreatmentOut) -> tuple[ProportionOut, ...]:
    """A rod inside its opening: where it parts the opening's height."""
    opening, height = treatment.openings[0], treatment.layers[0].support.height_mm
    said = _SAID[treatment.layers[0].support.kind]
    parts: tuple[Part, ...] = ((said.below, height - opening.bottom_mm), (said.above, opening.top_mm - height))
    whole = opening.top_mm - opening.bottom_mm
    return (ProportionOut(said.in_opening, parts, _share(height - opening.bottom_mm, whole)),)


def _rods_of_one_wall(treatments: Sequence[TreatmentOut]) -> ProportionOut:
    parts = tuple(
        (_name(treatment, number), treatment.layers[0].support.height_mm) for number, treatment in enumerate(treatments, 1)
    )
    heights = [height for _, height in parts]
    return ProportionOut(_RODS, parts, _share(min(heights), max(heights)))


def _name(treatment: TreatmentOut, number: int) -> Message:
    return msg("{name}", name=treatment.name) if treatment.name else msg("rod {number}", number=number)


def _share(part: float, whole: float) -> float:
    return part / whole if whole > 0 else 0.0
