"""Figures that a picture to post can carry, by name: each of the wall's first treatment, short enough to be large."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.paths import height_at
from elevation.words import Message, Mm, Percent, Ratio, msg

MOST = 3
NONE = msg("–")
"""What is not known is not left out: the place stays, so that nobody takes one figure for another."""


class Figure(Struct, frozen=True):
    """One figure: its label, and how it is said of a treatment; None where it is not known."""

    label: Message
    tell: Callable[[SetOut, TreatmentOut], Message | None]


def _length(mm: float | None) -> Message | None:
    return None if mm is None else msg("{length}", length=Mm(mm))


def _height(wall: SetOut, laid: TreatmentOut) -> Message | None:
    support = laid.layers[0].support
    return _length(support.height_mm - height_at(wall.floor, (support.left_mm + support.right_mm) / 2))


def _reach(_wall: SetOut, laid: TreatmentOut) -> Message | None:
    if not laid.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return None
    return _length(min(laid.clearances.left_of_opening_mm, laid.clearances.right_of_opening_mm))


def _long(_wall: SetOut, laid: TreatmentOut) -> Message | None:
    lengths = [panel.finished_length_mm for panel in laid.layers[0].panels if panel.finished_length_mm is not None]
    return _length(max(lengths, default=None))


def _fullness(_wall: SetOut, laid: TreatmentOut) -> Message | None:
    full = [panel.fullness for panel in laid.layers[0].panels if panel.fullness is not None]
    return msg("{ratio}", ratio=Ratio(min(full), 1)) if full else None


def _opening(_wall: SetOut, laid: TreatmentOut) -> Message | None:
    if not laid.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return None
    first = laid.openings[0]
    size = (Mm(first.right_mm - first.left_mm), Mm(first.top_mm - first.bottom_mm))
    return msg("{wide} × {high}", wide=size[0], high=size[1])


def _share(share: float, laid: TreatmentOut) -> Message | None:
    return msg("{share}", share=Percent(share)) if laid.openings and laid.layers[0].panels else None


FIGURES: dict[str, Figure] = {
    "rod-height": Figure(msg("rod over the floor"), _height),
    "rod-length": Figure(msg("rod, end to end"), lambda _wall, laid: _length(laid.layers[0].support.length_mm)),
    "glass-open": Figure(msg("glass clear when open"), lambda _wall, laid: _share(laid.glass.clear_open, laid)),
    "glass-closed": Figure(msg("glass clear when closed"), lambda _wall, laid: _share(laid.glass.clear_closed, laid)),
    "under-ceiling": Figure(msg("rod under the ceiling"), lambda _wall, laid: _length(laid.clearances.below_ceiling_mm)),
    "reach": Figure(msg("rod beyond the opening"), _reach),
    "panel-length": Figure(msg("panels, long"), _long),
    "fullness": Figure(msg("fullness"), _fullness),
    "hem": Figure(msg("hem over the floor"), lambda _wall, laid: _length(laid.clearances.hem_to_floor_low_mm)),
    "opening": Figure(msg("opening"), _opening),
    "wall": Figure(msg("wall, end to end"), lambda wall, _laid: _length(wall.width_mm if wall.known_width else None)),
}
"""By the name on the command line."""
USUAL = ("rod-height", "rod-length", "glass-open")


def figures_named(text: str) -> tuple[str, ...]:
    """Names as they are typed, with commas between.

    Raises
    ------
    BadInput
        One is not known, stands twice, or there are more than three.
    """
    names = tuple(part.strip() for part in text.split(",") if part.strip())
    unknown = [name for name in names if name not in FIGURES]
    if unknown:
        raise BadInput(
            said("figures"), unknown[0], said("is not a figure"), said("use {choices}", choices=", ".join(FIGURES))
        )
    if not 1 <= len(names) <= MOST or len(set(names)) != len(names):
        raise BadInput(said("figures"), text, said("are not one to three different ones"), said("name one, two or three"))
    return names


def figures_of(wall: SetOut, names: Sequence[str] = USUAL) -> tuple[tuple[Message, Message], ...]:
    """Label and value of each figure named, of the wall's first treatment."""
    laid = wall.treatments[0]
    return tuple((FIGURES[name].label, FIGURES[name].tell(wall, laid) or NONE) for name in names)
