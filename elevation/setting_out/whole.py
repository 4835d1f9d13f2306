"""A whole wall dressed in one scheme, set out; only what changed is set out again."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from typing import TypeVar

from elevation.errors import NoSuch, said
from elevation.room.model import Obstacle, Opening, Ref, Room, Scheme, Treatment, Wall
from elevation.setting_out.bands import BandSizes, band_sizes, bands_of
from elevation.setting_out.chain import Resolved, Spot, resolved
from elevation.setting_out.facts import Defaults, WallFacts, defaults_of
from elevation.setting_out.framing import FramingSizes, framing_sizes, zones_of
from elevation.setting_out.memo import Memo, Same
from elevation.setting_out.missing import missing_of
from elevation.setting_out.model import MissingFact, ObstacleOut, OpeningOut, ProportionOut, SetOut, TreatmentOut, ZoneOut
from elevation.setting_out.opening import Placed, SweepSizes, place
from elevation.setting_out.profile import profile_of
from elevation.setting_out.proportions import of_treatment, of_wall
from elevation.setting_out.treatment import set_out_treatment
from elevation.trade.model import Trade
from elevation.units import Length

Part = TypeVar("Part", Wall, Scheme)

MOST_WALLS = 32
"""Walls whose last results are kept."""

MOST_PARTS = 400
"""Openings and treatments of one wall whose last results are kept."""


class Dresser:
    """What is remembered of one treatment."""

    def __init__(self, ref: Ref) -> None:
        self.covered: Same[tuple[Placed, ...]] = Same()
        self.set_out: Memo[[Treatment, tuple[Placed, ...], WallFacts, Defaults, Trade], TreatmentOut] = Memo(
            partial(set_out_treatment, ref)
        )
        self.proportions = Memo(of_treatment)


class Keeper:
    """What is remembered of one wall between two set-outs: every part by the identity of what it depends on."""

    def __init__(self) -> None:
        self._defaults: Memo[[Trade, Mapping[str, Length]], Defaults] = Memo(defaults_of)
        self._chain = Memo(_chain)
        self._facts: Same[WallFacts] = Same()
        self._sizes: Same[SweepSizes] = Same()
        self._openings: Same[tuple[OpeningOut, ...]] = Same()
        self._treatments: Same[tuple[TreatmentOut, ...]] = Same()
        self._obstacles = Memo(_obstacles)
        self._missing: Same[tuple[MissingFact, ...]] = Same()
        self._proportions = Memo(self._look)
        self._framing: Memo[[Trade, Mapping[str, Length]], FramingSizes] = Memo(framing_sizes)
        self._zones = Memo(zones_of)
        self._band_sizes: Memo[[Trade, Mapping[str, Length], str], BandSizes] = Memo(band_sizes)
        self._bands = Memo(bands_of)
        self._ends: Same[tuple[str, str]] = Same()
        self._places: dict[str, tuple[Same[Spot], Memo[[Opening, Spot, SweepSizes], Placed]]] = {}
        self._dressers: dict[Ref, Dresser] = {}

    def opening_runs(self) -> dict[str, int]:
        """How often each opening was really set out, by its id."""
        return {opening_id: memo.calls for opening_id, (_, memo) in self._places.items()}

    def treatment_runs(self) -> dict[Ref, int]:
        """How often each treatment was really set out, by its ref."""
        return {ref: dresser.set_out.calls for ref, dresser in self._dressers.items()}

    def set_out(self, room: Room, wall: Wall, scheme: Scheme | None, trade: Trade) -> SetOut:
        """Set out ``wall`` in ``scheme`` (None: bare)."""
        defaults = self._defaults(trade, room.limits)
        chain = self._chain(wall.openings, wall.width, wall.gap_right, wall.id, room.graduation, room.unit, defaults)
        placed = self._place(wall, chain, self._sizes.keep(SweepSizes(defaults.handle_zone_mm, defaults.tilt_reach)))
        openings = self._openings.keep(tuple(part.out for part in placed.values()))
        facts = self._facts.keep(_facts(room, wall, chain, openings, defaults))
        treatments = self._treatments.keep(
            () if scheme is None else tuple(self._dress(wall, scheme, placed, facts, defaults, trade))
        )
        obstacles = self._obstacles(wall.id, wall.obstacles)
        ends = self._ends.keep((wall.left.kind, wall.right.kind))
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
            missing=self._missing.keep(missing_of(wall, openings, treatments)),
            zones=self._inside(room, wall, openings, facts, trade),
            bands=self._bands(wall.id, obstacles, openings, ends, facts, self._band_sizes(trade, room.limits, room.wiring)),
        )

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
        self, wall: Wall, scheme: Scheme, placed: dict[str, Placed], facts: WallFacts, defaults: Defaults, trade: Trade
    ) -> list[TreatmentOut]:
        dressed = []
        if len(self._dressers) > MOST_PARTS:
            self._dressers.clear()
        for treatment in scheme.treatments:
            covered = _covered(treatment, placed)
            if not covered or not treatment.layers:
                # Nothing hangs, or what it hung before is gone: there is nothing to set out.
                continue
            ref = (wall.id, scheme.id, treatment.id)
            dresser = self._dressers.get(ref)
            if dresser is None:
                dresser = self._dressers[ref] = Dresser(ref)
            dressed.append(dresser.set_out(treatment, dresser.covered.keep(covered), facts, defaults, trade))
        return dressed

    def _look(
        self, openings: tuple[OpeningOut, ...], treatments: tuple[TreatmentOut, ...], facts: WallFacts
    ) -> tuple[ProportionOut, ...]:
        first, last = of_wall(openings, treatments, facts)
        middle = [part for made in treatments for part in self._dressers[made.ref].proportions(made, facts)]
        return (*first, *middle, *last)


_keepers: dict[str, Keeper] = {}


def keeper_of(wall_id: str) -> Keeper:
    """The keeper of one wall's results."""
    keeper = _keepers.get(wall_id)
    if keeper is None:
        if len(_keepers) >= MOST_WALLS:
            _keepers.clear()
        keeper = _keepers[wall_id] = Keeper()
    return keeper


def set_out(room: Room, wall_id: str, scheme_id: str | None, trade: Trade) -> SetOut:
    """Where everything of one wall lands.

    Parameters
    ----------
    room : Room
    wall_id : str
    scheme_id : str or None
        None: the bare wall.
    trade : Trade

    Returns
    -------
    SetOut
        In mm, wall coordinates. Parts that depend on nothing that changed since the last two calls are the very same
        objects as then.

    Raises
    ------
    NoSuch
        The wall, the scheme or a row of the trade's tables does not exist.
    """
    wall = _by_id(room.walls, wall_id, "wall")
    scheme = None if scheme_id is None else _by_id(wall.schemes, scheme_id, "scheme")
    return keeper_of(wall_id).set_out(room, wall, scheme, trade)


def set_out_afresh(room: Room, wall_id: str, scheme_id: str | None, trade: Trade) -> SetOut:
    """The same without anything remembered, for benches and tests."""
    wall = _by_id(room.walls, wall_id, "wall")
    scheme = None if scheme_id is None else _by_id(wall.schemes, scheme_id, "scheme")
    return Keeper().set_out(room, wall, scheme, trade)


def _covered(treatment: Treatment, placed: Mapping[str, Placed]) -> tuple[Placed, ...]:
    """The openings that a treatment covers, left to right."""
    ids = treatment.openings
    if len(ids) == 1:
        only = placed.get(ids[0])
        return () if only is None else (only,)
    found = [placed[opening_id] for opening_id in dict.fromkeys(ids) if opening_id in placed]
    return tuple(sorted(found, key=lambda part: part.out.number))


def _by_id(items: tuple[Part, ...], wanted: str, what: str) -> Part:
    for item in items:
        if item.id == wanted:
            return item
    known = ", ".join(item.id for item in items)
    raise NoSuch(
        what,
        "",
        said('there is no "{wanted}"', wanted=wanted),
        said("it may be {known}", known=known) if known else said("there is none yet"),
    )


def _chain(
    openings: tuple[Opening, ...],
    width: Length | None,
    gap_right: Length | None,
    wall_id: str,
    graduation: Length | None,
    unit: str,
    defaults: Defaults,
) -> Resolved:
    wall = Wall(id=wall_id, openings=openings, width=width, gap_right=gap_right)
    mark = graduation.mm if graduation is not None else (25.4 / 16 if unit == "in" else 1.0)
    return resolved(wall, mark, defaults.assumed_gap_mm)


def _facts(room: Room, wall: Wall, chain: Resolved, openings: tuple[OpeningOut, ...], defaults: Defaults) -> WallFacts:
    # A ceiling that was not measured is drawn at a usual height, or above what is known to stand under it.
    tallest = max((opening.casing_top_mm for opening in openings), default=0.0)
    ceiling_mm = max(defaults.assumed_ceiling_mm, tallest + defaults.assumed_gap_mm)
    width_mm = chain.width_mm
    if not chain.known_width:
        # A wall is at least as wide as what was measured on it.
        width_mm = max([width_mm, *(obstacle.left.mm + obstacle.width.mm for obstacle in wall.obstacles)])
    return WallFacts(
        width_mm=width_mm,
        known_width=chain.known_width,
        ceiling=profile_of(wall.ceiling, ceiling_mm),
        # Heights are measured from the floor, so one without stations is known: level at the datum.
        floor=profile_of(wall.floor, 0.0, room.floor_to_come.mm if room.floor_to_come else 0.0, known_level=True),
        crown_mm=wall.crown.mm if wall.crown else 0.0,
        baseboard_mm=wall.baseboard.mm if wall.baseboard else 0.0,
        floor_to_come_mm=room.floor_to_come.mm if room.floor_to_come else 0.0,
    )


def _obstacles(wall_id: str, obstacles: tuple[Obstacle, ...]) -> tuple[ObstacleOut, ...]:
    return tuple(
        ObstacleOut(
            ref=(wall_id, obstacle.id),
            kind=obstacle.kind,
            name=obstacle.name,
            left_mm=obstacle.left.mm,
            right_mm=obstacle.left.mm + obstacle.width.mm,
            bottom_mm=obstacle.bottom.mm,
            top_mm=obstacle.bottom.mm + obstacle.height.mm,
            out_mm=obstacle.projection.mm,
            clearance_mm=obstacle.clearance.mm if obstacle.clearance else None,
        )
        for obstacle in obstacles
    )
