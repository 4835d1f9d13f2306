"""Live proportions: the parts of the wall, the rod between head and ceiling, symmetry, alignment with neighbours."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.facts import WallFacts
from elevation.setting_out.model import OpeningOut, ProportionOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.words import Message, msg

Part = tuple[Message, float]


def proportions_of(
    openings: Sequence[OpeningOut], treatments: Sequence[TreatmentOut], facts: WallFacts
) -> tuple[ProportionOut, ...]:
    """The proportions worth a look, the wall's first, then each treatment's."""
    found: list[ProportionOut] = []
    if openings:
        found.append(_along_the_wall(openings, facts))
    for treatment in treatments:
        found.extend(of_treatment(treatment, facts))
    if len(treatments) > 1:
        found.append(_rods_of_one_wall(treatments))
    return tuple(found)


def _along_the_wall(openings: Sequence[OpeningOut], facts: WallFacts) -> ProportionOut:
    parts: list[Part] = []
    x = 0.0
    for opening in openings:
        parts.append((msg("wall"), opening.left_mm - x))
        parts.append((msg("opening {number}", number=opening.number), opening.right_mm - opening.left_mm))
        x = opening.right_mm
    parts.append((msg("wall"), facts.width_mm - x))
    opened = sum(opening.right_mm - opening.left_mm for opening in openings)
    return ProportionOut(msg("openings in the wall"), tuple(parts), opened / facts.width_mm if facts.width_mm > 0 else 0.0)


def of_treatment(treatment: TreatmentOut, facts: WallFacts) -> list[ProportionOut]:
    """One treatment's proportions: rod over floor and under ceiling, rod between head and ceiling, left against right."""
    clear = treatment.clearances
    support = treatment.layers[0].support
    found: list[ProportionOut] = []
    if clear.below_ceiling_mm is not None:
        middle = (support.left_mm + support.right_mm) / 2
        drop = support.height_mm - height_at(facts.floor, middle)
        whole = drop + clear.below_ceiling_mm
        parts: tuple[Part, ...] = ((msg("below the rod"), drop), (msg("above the rod"), clear.below_ceiling_mm))
        found.append(ProportionOut(msg("rod in the wall's height"), parts, _share(drop, whole)))
        gap = clear.above_casing_mm + clear.below_ceiling_mm
        parts = ((msg("over the head"), clear.above_casing_mm), (msg("above the rod"), clear.below_ceiling_mm))
        found.append(ProportionOut(msg("rod between head and ceiling"), parts, _share(clear.above_casing_mm, gap)))
    sides: tuple[Part, ...] = (
        (msg("left of the opening"), clear.left_of_opening_mm),
        (msg("right of the opening"), clear.right_of_opening_mm),
    )
    # A half means that both sides are alike.
    both = clear.left_of_opening_mm + clear.right_of_opening_mm
    found.append(ProportionOut(msg("left and right of the opening"), sides, _share(clear.left_of_opening_mm, both)))
    return found


def _rods_of_one_wall(treatments: Sequence[TreatmentOut]) -> ProportionOut:
    parts = tuple(
        (_name(treatment, number), treatment.layers[0].support.height_mm) for number, treatment in enumerate(treatments, 1)
    )
    heights = [height for _, height in parts]
    return ProportionOut(msg("rods of one wall"), parts, _share(min(heights), max(heights)))


def _name(treatment: TreatmentOut, number: int) -> Message:
    return msg("{name}", name=treatment.name) if treatment.name else msg("rod {number}", number=number)


def _share(part: float, whole: float) -> float:
    return part / whole if whole > 0 else 0.0
