"""A few plain words on how a rod stands: between head and ceiling, over its opening, beside its neighbours."""

from __future__ import annotations

from elevation.planning.guides import SHARES, gap_of
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Percent, msg

_UP = (
    msg("the rod sits a third up to the ceiling"),
    msg("the rod sits half way up to the ceiling"),
    msg("the rod sits two thirds up to the ceiling"),
)


def guide_words(set_out: SetOut, treatment: TreatmentOut, half_graduation_mm: float) -> tuple[Message, ...]:
    """What the eye sees of a treatment's front rod, in plain words.

    Parameters
    ----------
    set_out : SetOut
    treatment : TreatmentOut
        One of its treatments.
    half_graduation_mm : float
        What differs by no more than this reads alike and is called alike.

    Returns
    -------
    tuple of Message
        Parts of one sentence; none for a treatment without a rod.
    """
    if not treatment.layers:  # pragma: no cover - a treatment without a layer is refused
        return ()
    reach = half_graduation_mm + TOUCH_MM
    words = [_up(set_out, treatment, reach), _sides(treatment, reach), *_centred(set_out, treatment, reach)]
    words += _level(set_out, treatment, reach)
    return tuple(word for word in words if word is not None)


def _up(set_out: SetOut, treatment: TreatmentOut, reach: float) -> Message | None:
    gap = gap_of(set_out, treatment)
    if gap is None:
        return None
    height = treatment.layers[0].support.height_mm
    for (share, _), word in zip(SHARES, _UP, strict=True):
        if abs(gap[0] + (gap[1] - gap[0]) * share - height) <= reach:
            return word
    return msg("the rod sits {share} of the way up to the ceiling", share=Percent((height - gap[0]) / (gap[1] - gap[0])))


def _sides(treatment: TreatmentOut, reach: float) -> Message | None:
    if treatment.mount in INSIDE or not treatment.openings:
        return None
    clear = treatment.clearances
    differ = clear.left_of_opening_mm - clear.right_of_opening_mm
    if abs(differ) <= reach:
        return msg("left and right reach alike")
    return msg("left and right differ by {length}", length=Mm(abs(differ)))


def _centred(set_out: SetOut, treatment: TreatmentOut, reach: float) -> list[Message]:
    support = treatment.layers[0].support
    off = (support.left_mm + support.right_mm - set_out.width_mm) / 2
    return [msg("centred on the wall")] if set_out.known_width and abs(off) <= reach else []


def _level(set_out: SetOut, treatment: TreatmentOut, reach: float) -> list[Message]:
    height = treatment.layers[0].support.height_mm
    others = [one for one in set_out.treatments if one.ref != treatment.ref and one.layers]
    if not others:
        return []
    differ = [abs(one.layers[0].support.height_mm - height) for one in others]
    if max(differ) <= reach:
        return [msg("level with the other rods")]
    return [msg("up to {length} off the level of the other rods", length=Mm(max(differ)))]
