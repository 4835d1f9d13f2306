"""What groups of the drawing are called, in plain words of the sheet's language: for SVG titles and screen readers."""

from __future__ import annotations

from elevation.findings.naming import opening_name, where
from elevation.setting_out.model import ObstacleOut, OpeningOut, SetOut, TreatmentOut
from elevation.sheet.tape_order import kind_of
from elevation.words import Message, Style, msg, say

ENGLISH = Style()


def wall_title(set_out: SetOut, style: Style = ENGLISH) -> str:
    """The wall's own name, or that it is one."""
    return set_out.wall_name or say(msg("Wall"), style)


def opening_title(opening: OpeningOut, style: Style = ENGLISH) -> str:
    """An opening's kind and number."""
    return say(opening_name(opening), style)


def obstacle_title(obstacle: ObstacleOut, style: Style = ENGLISH) -> str:
    """An obstacle's own name, or its kind."""
    return obstacle.name or say(kind_of(obstacle.kind), style)


_SUPPORTS = {"rod": msg("Rod"), "track": msg("Track"), "tension-rod": msg("Tension rod")}


def rod_title(treatment: TreatmentOut, style: Style = ENGLISH, kind: str = "rod") -> str:
    """The rod, track or tension rod and what it hangs before."""
    return _title(_SUPPORTS[kind], treatment, style)


def panel_title(number: int, treatment: TreatmentOut, style: Style = ENGLISH) -> str:
    """A panel by its place from the left, from 1, and what it hangs before."""
    return _title(msg("Panel {number}", number=number), treatment, style)


def board_title(treatment: TreatmentOut, style: Style = ENGLISH) -> str:
    """The mounting board and what its rod hangs before."""
    return _title(msg("Mounting board"), treatment, style)


def pelmet_title(treatment: TreatmentOut, style: Style = ENGLISH) -> str:
    """The pelmet and what it hangs before."""
    is_board = treatment.pelmet is None or treatment.pelmet.kind == "board"
    return _title(msg("Pelmet") if is_board else msg("Valance"), treatment, style)


def blind_title(treatment: TreatmentOut, style: Style = ENGLISH) -> str:
    """The blind behind and what it hangs before."""
    return _title(msg("Blind"), treatment, style)


def bracket_title(number: int, treatment: TreatmentOut, style: Style = ENGLISH) -> str:
    """A bracket by its place from the left, from 1, and what its rod hangs before."""
    return _title(msg("Bracket {number}", number=number), treatment, style)


def _title(part: Message, treatment: TreatmentOut, style: Style) -> str:
    return say(msg("{part}, {place}", part=part, place=treatment.name or where(treatment)), style)
