"""The wall by day and in the evening, laid over the drawing: even tints, clipped by geometry.

By day the room is the darker the less daylight its windows keep; glass left clear stays bright, cloth before glass glows
by what it passes, and light stands beside closed cloth where it can come round: level with the glass, the fainter the
farther the cloth goes past it. Cloth that is not chosen is drawn as the densest of its kind. In the evening the lamps are
lit: clear glass is dark, cloth before it is not.

Tints are laid by lightness as the eye takes it: the light to the power 1/2.2 (as displays are made to, IEC 61966-2-1).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from elevation.planning.daylight import Piece, Position, Slit, kept_over_wall, slits_of
from elevation.room.model import Room
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.inks import with_alpha
from elevation.sheet.paths import Steps, along, polygon, rectangle
from elevation.sheet.records import Fill, Group, Record
from elevation.trade.model import Trade
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Style, msg, say

Mode = Literal["day", "evening"]
MODES: tuple[Mode, ...] = ("day", "evening")
LIGHTS = {"day": msg("By day"), "evening": msg("In the evening")}
LIGHTS_WITHIN = {"day": msg("by day"), "evening": msg("in the evening")}
"""What it is called, at the start and within a sentence."""
DARKEST = 0.5
"""How dark a room is drawn that keeps no daylight: still to be seen."""
_SHADE, _GLOW, _NIGHT, _LAMP = "#1a222c", "#fff1cf", "#121a28", "#e5a95c"
_GLOW_MOST, _NIGHT_ALPHA, _LAMP_ALPHA = 0.55, 0.82, 0.13
_GAMMA = 1 / 2.2
_SLIT_STEPS = (1.0, 0.8, 0.6, 0.4, 0.2)
_SLIT_ALPHA = 0.2
_SLIT_WIDEST_MM = 90.0
_SPREAD = 2.0
"""How far along the wall the light spreads past the glass, in widths of the slit."""


def seen(light: float) -> float:
    """How light something looks, 0 to 1, that passes so much of the light."""
    return float(max(light, 0.0) ** _GAMMA)


def light_group(room: Room, set_out: SetOut, trade: Trade, mode: Mode, position: Position, style: Style) -> Group:
    """The tints of a wall.

    Parameters
    ----------
    room : Room
        Says what the cloth is.
    set_out : SetOut
    trade : Trade
    mode : str
        ``day`` or ``evening``.
    position : str
        In which the cloth is shown.
    style : Style

    Returns
    -------
    Group
        Layer ``light``, wall coordinates.
    """
    kept, pieces = kept_over_wall(room, set_out, trade, position)
    if mode == "evening":
        return Group((set_out.wall,), "light", say(LIGHTS[mode], style), tuple(_evening(set_out, pieces)))
    records = _day(set_out, kept.least, pieces)
    for treatment in set_out.treatments:
        if _is_shut(treatment, position):
            records += [record for slit in slits_of(treatment) for record in _slit(slit)]
    return Group((set_out.wall,), "light", say(LIGHTS[mode], style), tuple(records))


def light_groups(
    room: Room, set_out: SetOut, trade: Trade, mode: Mode | None, position: Position, style: Style
) -> tuple[Group, ...]:
    """The tints of a wall as ``light_group`` makes them; none for ``mode`` None: as it is drawn."""
    return () if mode is None else (light_group(room, set_out, trade, mode, position, style),)


def _is_shut(treatment: TreatmentOut, position: Position) -> bool:
    """Whether the front cloth hangs closed, or is drawn as far as that."""
    panels = treatment.layers[0].panels if treatment.layers else ()
    spans = [((panel.closed if position == "closed" else panel.drawn), panel.closed) for panel in panels]
    return position != "open" and all(
        abs(here - there) <= TOUCH_MM for now, closed in spans for here, there in zip(now, closed, strict=True)
    )


def _face(set_out: SetOut) -> Steps:
    low = along(set_out.floor, 0.0, set_out.width_mm)
    high = along(set_out.ceiling, 0.0, set_out.width_mm)
    return polygon((*low, *reversed(high)))


def _day(set_out: SetOut, kept: float, pieces: Sequence[Piece]) -> list[Record]:
    dark = DARKEST * (1.0 - seen(kept))
    # Every piece of glass is a hole in the shade (even-odd), and shaded for itself where cloth hangs before it.
    holes = [step for piece in pieces for step in polygon(piece.outline)]
    records: list[Record] = []
    if dark > 0.004:
        records.append(Fill((*_face(set_out), *holes), with_alpha(_SHADE, dark)))
    for piece in pieces:
        if piece.is_bare:
            continue
        light = seen(piece.passes)
        shade, glow = dark * (1.0 - light), _GLOW_MOST * light
        for colour, alpha in ((_SHADE, shade), (_GLOW, glow)):
            if alpha > 0.004:
                records.append(Fill(polygon(piece.outline), with_alpha(colour, alpha)))
    return records


def _evening(set_out: SetOut, pieces: Sequence[Piece]) -> list[Record]:
    records: list[Record] = [Fill(_face(set_out), with_alpha(_LAMP, _LAMP_ALPHA))]
    records += [Fill(polygon(piece.outline), with_alpha(_NIGHT, _NIGHT_ALPHA)) for piece in pieces if piece.is_bare]
    return records


def _slit(slit: Slit) -> list[Record]:
    """Light beside the cloth, level with the glass, in steps that grow fainter away from both."""
    alpha = _SLIT_ALPHA * seen(slit.share)
    if alpha <= 0.004:
        return []
    wide = min(slit.width_mm, _SLIT_WIDEST_MM)
    found: list[Record] = []
    for part in _SLIT_STEPS:
        reach, spread = wide * part, slit.width_mm * _SPREAD * part
        low, high = max(slit.run[0], slit.beside[0] - spread), min(slit.run[1], slit.beside[1] + spread)
        if high <= low:
            continue
        if slit.place == "left":
            steps = rectangle(slit.at_mm - reach, low, slit.at_mm, high)
        elif slit.place == "right":
            steps = rectangle(slit.at_mm, low, slit.at_mm + reach, high)
        elif slit.place == "top":
            steps = rectangle(low, slit.at_mm, high, slit.at_mm + reach)
        else:
            continue  # Uncovered glass, bright already.
        found.append(Fill(steps, with_alpha(_GLOW, alpha)))
    return found
