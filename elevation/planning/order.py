"""The order of work for a room over days, with its waits; what one can do alone and what needs two.

Common practice, no source: what cannot go back is bought and cut after what proves it.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.dressed import Dressed
from elevation.planning.hang_step import HangStep
from elevation.planning.hanging import TWO_MM
from elevation.setting_out.model import TreatmentOut
from elevation.words import Message, msg


class Day(Struct, frozen=True):
    """A day's work and how long to wait after it."""

    name: Message
    steps: tuple[HangStep, ...]
    wait: Message | None = None


def days_of(rooms: Sequence[Dressed]) -> tuple[Day, ...]:
    """The days for all treatments of these rooms; what none of them needs is left out."""
    laid = [one for dressed in rooms for wall in dressed.walls for one in wall.treatments]
    missing = any(wall.missing for dressed in rooms for wall in dressed.walls)
    is_cut = any(layer.support.kind != "tension-rod" for one in laid for layer in one.layers)
    has_holes = any(layer.brackets for one in laid for layer in one.layers)
    in_hand = any(panel.finished_length_mm is not None for one in laid for layer in one.layers for panel in layer.panels)
    days = [Day(msg("First: measure and see"), _first(missing=missing), msg("Leave the tape up for a night."))]
    days.append(Day(msg("Then: buy, and measure what was bought"), _buying(in_hand=in_hand)))
    if is_cut:
        days.append(
            Day(
                msg("A day at the bench"),
                (
                    HangStep(msg("Cut, ream, file, scuff and paint by the bench sheet."), (msg("One alone can do it."),)),
                    HangStep(msg("Make and paint brackets, cut mounting boards."), (msg("One alone can do it."),)),
                ),
                msg("Paint dries as its tin says, usually a night a coat; wax after the last."),
            )
        )
    if has_holes:
        days.append(
            Day(
                msg("A day on the ladder"),
                (
                    HangStep(msg("Mark, detect, drill and screw on the brackets by the hanging sheet."), (_hands(laid),)),
                    HangStep(msg("Hang rod, rings and cloth.")),
                ),
                msg("The cloth hangs a day or two before it is hemmed: it drops."),
            )
        )
    days.append(
        Day(
            msg("Last: hem and read"),
            (
                HangStep(msg("Pin and sew the hems to the floor as it is, panel by panel.")),
                HangStep(msg("Read the rod and the hems, type them in, print the sheets that say AS BUILT.")),
            ),
        )
    )
    return tuple(days)


def _first(*, missing: bool) -> tuple[HangStep, ...]:
    steps = [HangStep(msg("Measure every wall twice, from both ends."))]
    if missing:
        steps.append(HangStep(msg("Some facts are not known yet: the margin of the elevation says which.")))
    steps.append(HangStep(msg("Tape trial: stick rod, ends, stacks and hems on the wall and look.")))
    return tuple(steps)


def _buying(*, in_hand: bool) -> tuple[HangStep, ...]:
    steps = [
        HangStep(
            msg("Buy cloth or panels first, wash and iron them if they will be washed, and measure them."),
            (msg("A label is not a length: type what the tape says; the rod can still follow."),) if in_hand else (),
        ),
        HangStep(msg("Only then buy what cannot go back once it is cut: tube, track, paint.")),
    ]
    return tuple(steps)


def _hands(laid: Sequence[TreatmentOut]) -> Message:
    longest = max((layer.support.length_mm for one in laid for layer in one.layers), default=0.0)
    return msg("Two people: the rods are long.") if longest > TWO_MM else msg("One alone can do it; two are safer.")
