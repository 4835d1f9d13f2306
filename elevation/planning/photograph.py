"""Where to stand for a photograph of a wall that its drawing can be laid beside: square on, nothing leaning.

A camera without a lens's bends sees a wall that is parallel to its picture in true shape: whatever the distance, lengths on
it keep their ratios. How far off it has to stand follows from similar triangles: a wall ``w`` wide fills a picture ``p``
wide behind a focal length ``f`` at the distance ``w * f / p``; the greater of across and up counts, with some room around.
The camera is held level before the wall's middle, half way up, so that neither uprights nor levels run together.
"""

from __future__ import annotations

import math

from msgspec import Struct

from elevation.setting_out.model import SetOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import Trade
from elevation.words import Message, Mm, msg


class Stand(Struct, frozen=True, gc=False):
    """Where the camera is held: across the wall, over the floor there, and out from the wall's face, mm."""

    x_mm: float
    up_mm: float
    out_mm: float


def stand_for(wall: SetOut, trade: Trade) -> Stand:
    """Where a phone's camera sees the whole wall square on.

    Parameters
    ----------
    wall : SetOut
    trade : Trade
        The camera's figures are limits: ``photo-focal``, ``photo-wide``, ``photo-high``, ``photo-room``.
    """
    limits = trade.limits
    focal, around = limits["photo-focal"].value, 1.0 + limits["photo-room"].value
    x = wall.width_mm / 2
    low, high = height_at(wall.floor, x), max(y for _, y in wall.ceiling.points)
    across = wall.width_mm * focal / limits["photo-wide"].value
    up = (high - low) * focal / limits["photo-high"].value
    return Stand(x, (high - low) / 2, max(across, up) * around)


def photograph_words(wall: SetOut, trade: Trade, unit: str) -> Message:
    """How to take the real photograph, in a sentence; its figures are rules of thumb, in whole inches or 50 mm."""
    stand, step = stand_for(wall, trade), 25.4 if unit == "in" else 50.0
    return msg(
        "For a photograph beside it: hold the camera level before the middle of the wall, {up} over the floor and at least"
        " {out} away, turned neither up nor aside; then edges stay upright and nothing leans.",
        up=Mm(round(stand.up_mm / step) * step, about=True),
        out=Mm(math.ceil(stand.out_mm / step) * step, about=True),
    )
