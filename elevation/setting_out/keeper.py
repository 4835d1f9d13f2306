"""What is remembered of one wall between two set-outs: only what changed is set out again."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from elevation.room.corners import SIDES, Side, beside, datum_steps, run_of
from elevation.room.find import treatment_of, wall_of
from elevation.room.model import Opening, Ref, Room, Scheme, Treatment, Wall
from elevation.setting_out.bands import BandSizes, band_sizes, bands_of
from elevation.setting_out.chain import Resolved, Spot
from elevation.setting_out.corners import beside_of
from elevation.setting_out.dresser import Dresser, covered_by
from elevation.setting_out.facts import Defaults, Overhead, WallFacts, defaults_of, overhead_of
from elevation.setting_out.framing import FramingSizes, framing_sizes, zones_of
from elevation.setting_out.grounds import Grounds, chain_of, facts_of, from_corner, obstacles_of
from elevation.setting_out.hold_facts import HoldFacts, hold_facts
from elevation.setting_out.legs import ALONE, LedRod, led_by, legs_of
from elevation.setting_out.memo import Memo, Same
from elevation.setting_out.missing import missing_of, unclosed
from elevation.setting_out.model import (
    BesideOut,
    CornerOut,
    MissingFact,
    ObstacleOut,
    OpeningOut,
    ProportionOut,
    SetOut,
    TreatmentOut,
    ZoneOut,
)
from elevation.setting_out.opening import Placed, SweepSizes, place
from elevation.setting_out.passing import NOBODY, Passing, Stand, passing_round
from elevation.setting_out.proportions import of_wall
from elevation.trade.model import Trade
from elevation.units import Length

Corners = tuple[CornerOut | None, CornerOut | None]

MOST_PARTS = 400
"""Openings and treatments of one wall whose last results are kept."""


class _Side:
    """What is remembered of the neighbour at one end."""

    def __init__(self, side: Side) -> None:
        self.corner: Same[CornerOut] = Same()
        self.place: Same[tuple[float, float]] = Same()
        self.beside: Memo[
            [
                tuple[float, float],
                CornerOut,
                tuple[OpeningOut, ...],
                tuple[ObstacleOut, ...],
                tuple[TreatmentOut, ...],
            ],
            tuple[BesideOut, ...],
        ] = Memo(partial(beside_of, side))


class Keeper:
    """What is remembered of one wall between two set-outs: every part by the identity of what it depends on."""

    def __init__(self) -> None:
        self._defaults: Memo[[Trade, Mapping[str, Length]], Defaults] = Memo(defaults_of)
        self._chain = Memo(chain_of)
        self._facts: Same[WallFacts] = Same()
        self._overhead: Same[Overhead] = Same()
        self._sizes: Same[SweepSizes] = Same()
        self._openings: Same[tuple[OpeningOut, ...]] = Same()
        self._treatments: Same[tuple[TreatmentOut, ...]] = Same()
        self._obstacles = Memo(obstacles_of)
        self._missing: Same[tuple[MissingFact, ...]] = Same()
        self._proportions = Memo(self._look)
        self._framing: Memo[[Trade, Mapping[str, Length]], FramingSizes] = Memo(framing_sizes)
        self._zones = Memo(zones_of)
        self._band_sizes: Memo[[Trade, Mapping[str, Length], str], BandSizes] = Memo(band_sizes)
        self._bands = Memo(bands_of)
        self._ends: Same[tuple[str, str]] = Same()
        self._corners: Same[tuple[CornerOut | None, CornerOut | None]] = Same()
        self._beside: Same[tuple[BesideOut, ...]] = Same()
        self._sides = {side: _Side(side) for side in SIDES}
        self._places: dict[str, tuple[Same[Spot], Memo[[Opening, Spot, SweepSizes], Placed]]] = {}
        self._dressers: dict[Ref, Dresser] = {}
        self._hold_facts: Same[HoldFacts] = Same()
        self._held: Same[tuple[TreatmentOut, ...]] = Same()

    def opening_runs(self) -> dict[str, int]:
        """How often each opening was really set out, by its id."""
        return {opening_id: memo.calls for opening_id, (_, memo) in self._places.items()}

    def treatment_runs(self) -> dict[Ref, int]:
        """How often each treatment was really set out, by its ref."""
        return {ref: dresser.set_out.calls for ref, dresser in self._dressers.items()}

    def grounds(self, room: Room, wall: Wall, trade: Trade) -> Grounds:
        """The wall without what hangs."""
        defaults = self._defaults(trade, room.limits)
        chain = self._chain(wall.openings, wall.width, wall.gap_right, wall.id, room.graduation, room.unit, defaults)
        placed = self._place(wall, chain, self._sizes.keep(SweepSizes(defaults.handle_zone_mm, defaults.tilt_reach)))
        openings = self._openings.keep(tuple(part.out for part in placed.values()))
        facts = self._facts.keep(facts_of(room, wall, chain, openings, defaults))
        overhead = self._overhead.keep(overhead_of(facts))
        return Grounds(defaults, chain, placed, openings, facts, overhead, self._obstacles(wall.id, wall.obstacles))

    def hung(
        self, room: Room, wall: Wall, scheme: Scheme | None, grounds: Grounds, trade: Trade, keepers: Keepers
    ) -> tuple[TreatmentOut, ...]:
        """What hangs on the wall in ``scheme``."""
        if scheme is None:
            return self._treatments.keep(())
        return self._treatments.keep(tuple(self._dress(room, wall, scheme, grounds, trade, keepers)))

    def set_out(self, room: Room, wall: Wall, scheme: Scheme | None, trade: Trade, keepers: Keepers) -> SetOut:
        """Set out ``wall`` in ``scheme`` (None: bare); ``keepers`` remember the walls beside it."""
        grounds = self.grounds(room, wall, trade)
        chain, openings, facts, obstacles = grounds.chain, grounds.openings, grounds.facts, grounds.obstacles
        zones = self._inside(room, wall, openings, facts, trade)
        treatments = self._hold(room, wall, scheme, self.hung(room, wall, scheme, grounds, trade, keepers), zones, trade)
        ends = self._ends.keep((wall.left.kind, wall.right.kind))
        corners, around = self._around(room, wall, scheme, facts, trade, keepers)
        return SetOut(
            wall=wall.id,
            wall_name=wall.name,
            scheme=None if scheme is None else scheme.id,
            scheme_name="" if scheme is None else scheme.name,
            width_mm=facts.width_mm,
            known_width=facts.known_width,
            ends=ends,
            ceiling=facts.ceiling,
            floor=facts.floor,
            crown_mm=facts.crown_mm,
            baseboard_mm=facts.baseboard_mm,
            chain=chain.chain,
            openings=openings,
            obstacles=obstacles,
            treatments=treatments,
            proportions=self._proportions(openings, treatments, facts),
            missing=self._missing.keep((*unclosed(wall, chain.chain), *missing_of(wall, openings, treatments))),
            zones=zones,
            bands=self._bands(wall.id, obstacles, openings, ends, facts, self._band_sizes(trade, room.limits, room.wiring)),
            corners=corners,
            angles=facts.angles,
            beside=around,
        )

    def _hold(
        self,
        room: Room,
        wall: Wall,
        scheme: Scheme | None,
        treatments: tuple[TreatmentOut, ...],
        zones: tuple[ZoneOut, ...],
        trade: Trade,
    ) -> tuple[TreatmentOut, ...]:
        """What hangs, with what holds it: that depends on what stands inside the wall as well."""
        if scheme is None:
            return treatments
        facts = self._hold_facts.keep(hold_facts(room, wall, trade))
        own = {treatment.id: treatment for treatment in scheme.treatments}
        held = tuple(self._dressers[made.ref].held(made, own[made.ref[-1]], zones, facts, trade) for made in treatments)
        return self._held.keep(held)

    def _around(
        self, room: Room, wall: Wall, scheme: Scheme | None, facts: WallFacts, trade: Trade, keepers: Keepers
    ) -> tuple[Corners, tuple[BesideOut, ...]]:
        """The walls in the corners, and what of them comes before this one."""
        corners: list[CornerOut | None] = []
        found: tuple[BesideOut, ...] = ()
        for side in SIDES:
            there = beside(room, wall, side)
            if there is None:
                corners.append(None)
                continue
            other, keeper = there.wall, keepers(there.wall.id)
            grounds = keeper.grounds(room, other, trade)
            name = other.name or str(room.walls.index(other) + 1)
            kept = self._sides[side]
            corner = kept.corner.keep(
                CornerOut(other.id, name, grounds.facts.width_mm, there.angle, from_corner(side, grounds))
            )
            corners.append(corner)
            # From a corner whose distance is not known nothing can be measured.
            if facts.known_width if side == "right" else grounds.facts.known_width:
                hung = keeper.hung(room, other, _same_scheme(other, scheme), grounds, trade, keepers)
                step_mm = datum_steps(room, wall.id).get(other.id, 0.0)
                place = kept.place.keep((facts.width_mm, step_mm))
                found += kept.beside(place, corner, grounds.openings, grounds.obstacles, hung)
        return self._corners.keep((corners[0], corners[1])), self._beside.keep(found)

    def _inside(
        self, room: Room, wall: Wall, openings: tuple[OpeningOut, ...], facts: WallFacts, trade: Trade
    ) -> tuple[ZoneOut, ...]:
        """What likely stands inside the wall."""
        row = trade.substrates.get(wall.substrate)
        if row is None:
            return ()
        sizes = self._framing(trade, room.limits)
        return self._zones(wall.id, wall.substrate, row.build, openings, wall.studs, wall.stud_spacing, facts, sizes)

    def _place(self, wall: Wall, chain: Resolved, sizes: SweepSizes) -> dict[str, Placed]:
        placed = {}
        if len(self._places) > MOST_PARTS:
            self._places.clear()
        for opening, spot in zip(wall.openings, chain.spots, strict=True):
            keeping = self._places.get(opening.id)
            if keeping is None:
                keeping = (Same(), Memo(partial(place, (wall.id, opening.id))))
                self._places[opening.id] = keeping
            same, memo = keeping
            placed[opening.id] = memo(opening, same.keep(spot), sizes)
        return placed

    def _dress(
        self, room: Room, wall: Wall, scheme: Scheme, grounds: Grounds, trade: Trade, keepers: Keepers
    ) -> list[TreatmentOut]:
        dressed = []
        if len(self._dressers) > MOST_PARTS:
            self._dressers.clear()
        for treatment in scheme.treatments:
            covered = covered_by(treatment, grounds.placed)
            if not covered or not treatment.layers:
                # Nothing hangs, or what it hung before is gone: there is nothing to set out.
                continue
            ref = (wall.id, scheme.id, treatment.id)
            dresser = self._dresser(ref)
            legs = dresser.legs.keep(legs_of(room, ref, treatment))
            if legs[0] is not None:
                treatment = dresser.led(treatment, dresser.led_by.keep(_lead(room, ref, trade, keepers)))
            passing = NOBODY if legs == ALONE else dresser.passing.keep(_passing(room, ref, grounds, trade, keepers))
            dressed.append(dresser.on(grounds, treatment, covered, trade, legs, passing))
        return dressed

    def _dresser(self, ref: Ref) -> Dresser:
        dresser = self._dressers.get(ref)
        if dresser is None:
            dresser = self._dressers[ref] = Dresser(ref)
        return dresser

    def first_leg(self, room: Room, wall: Wall, treatment: Treatment, ref: Ref, trade: Trade) -> TreatmentOut | None:
        """The treatment at ``ref`` as it lands by what it says itself; None where it covers nothing."""
        grounds = self.grounds(room, wall, trade)
        covered = covered_by(treatment, grounds.placed)
        if not covered or not treatment.layers:
            return None
        dresser = self._dresser(ref)
        legs = dresser.legs.keep(legs_of(room, ref, treatment))
        return dresser.on(grounds, treatment, covered, trade, legs)

    def _look(
        self, openings: tuple[OpeningOut, ...], treatments: tuple[TreatmentOut, ...], facts: WallFacts
    ) -> tuple[ProportionOut, ...]:
        first, last = of_wall(openings, treatments, facts)
        middle = [part for made in treatments for part in self._dressers[made.ref].proportions(made, facts)]
        return (*first, *middle, *last)


Keepers = Callable[[str], Keeper]
"""The keeper of a wall, by its id."""


def _same_scheme(wall: Wall, scheme: Scheme | None) -> Scheme | None:
    """The scheme of a neighbour wall that goes with one of this: that of the same id, of the same name, or its first."""
    if scheme is None:
        return None
    for one in wall.schemes:
        if one.id == scheme.id:
            return one
    return next((one for one in wall.schemes if one.name == scheme.name), wall.schemes[0] if wall.schemes else None)


def _lead(room: Room, ref: Ref, trade: Trade, keepers: Keepers) -> tuple[LedRod, ...]:
    """What the first leg of a treatment decides for the leg at ``ref``; nothing where that leg covers no opening."""
    first = run_of(room, ref)[0]
    wall = wall_of(room, first[0])
    treatment = treatment_of(room, first)
    landed = keepers(wall.id).first_leg(room, wall, treatment, first, trade)
    return () if landed is None else led_by(treatment, landed, datum_steps(room, ref[0]).get(wall.id, 0.0))


def _passing(room: Room, ref: Ref, grounds: Grounds, trade: Trade, keepers: Keepers) -> tuple[Passing, ...]:
    """What cloth passes the corners of the leg at ``ref``."""

    def stands(leg: Ref, treatment: Treatment) -> Stand:
        there = keepers(leg[0]).grounds(room, wall_of(room, leg[0]), trade)
        return tuple(placed.out for placed in covered_by(treatment, there.placed)), there.overhead

    return passing_round(room, ref, stands, grounds.defaults, trade)
