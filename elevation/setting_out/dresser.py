"""What is remembered of one treatment between two set-outs, and which openings it covers."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from elevation.room.model import Ref, Treatment
from elevation.setting_out.grounded import Grounded
from elevation.setting_out.grounds import Grounds
from elevation.setting_out.hold_facts import HoldFacts
from elevation.setting_out.holding import with_fixings
from elevation.setting_out.legs import LedRod, Legs, led
from elevation.setting_out.memo import Memo, Same
from elevation.setting_out.model import TreatmentOut, ZoneOut
from elevation.setting_out.opening import Placed
from elevation.setting_out.parts import Parts
from elevation.setting_out.passing import NOBODY, Passing
from elevation.setting_out.proportions import of_treatment
from elevation.setting_out.reach import zones_near
from elevation.setting_out.treatment import set_out_treatment
from elevation.trade.model import Trade


class Dresser:
    """What is remembered of one treatment."""

    def __init__(self, ref: Ref) -> None:
        self.covered: Same[tuple[Placed, ...]] = Same()
        self.legs: Same[Legs] = Same()
        self.led_by: Same[tuple[LedRod, ...]] = Same()
        self.passing: Same[tuple[Passing, ...]] = Same()
        self.led: Memo[[Treatment, tuple[LedRod, ...]], Treatment] = Memo(led)
        self.set_out = Grounded(partial(set_out_treatment, ref, parts=Parts()))
        self.proportions = Memo(of_treatment)
        self._zones_near = Memo(zones_near)
        self._zones: Same[tuple[ZoneOut, ...]] = Same()
        self._held = Memo(with_fixings)

    def on(
        self,
        grounds: Grounds,
        treatment: Treatment,
        covered: tuple[Placed, ...],
        trade: Trade,
        legs: Legs,
        passing: tuple[Passing, ...] = NOBODY,
    ) -> TreatmentOut:
        """The treatment set out on its wall."""
        covered = self.covered.keep(covered)
        return self.set_out(treatment, covered, grounds.facts, grounds.overhead, grounds.defaults, trade, legs, passing)

    def held(
        self, made: TreatmentOut, treatment: Treatment, zones: tuple[ZoneOut, ...], facts: HoldFacts, trade: Trade
    ) -> TreatmentOut:
        """The same with what holds it; of what stands inside the wall only what its reach meets matters to it."""
        near = self._zones.keep(self._zones_near(made, zones))
        return self._held(made, treatment, near, facts, trade)


def covered_by(treatment: Treatment, placed: Mapping[str, Placed]) -> tuple[Placed, ...]:
    """The openings that a treatment covers, left to right."""
    ids = treatment.openings
    if len(ids) == 1:
        only = placed.get(ids[0])
        return () if only is None else (only,)
    found = [placed[opening_id] for opening_id in dict.fromkeys(ids) if opening_id in placed]
    return tuple(sorted(found, key=lambda part: part.out.number))
