"""What of a wall's annotation is kept from one laying to the next: chains whose metal did not move, sides that stayed.

Each is compared with all that it was made from; what is kept is what would be made anew.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from elevation.room.model import Ref, Treatment
from elevation.setting_out.memo import Memo
from elevation.setting_out.model import SetOut, SupportOut, TreatmentOut
from elevation.sheet.annotation import treatment_chains
from elevation.sheet.annotation.bands import Frame, SideOut, Slot, lay_side
from elevation.sheet.annotation.model import Chain
from elevation.sheet.annotation.sides import SideRecords, records_of
from elevation.words import Style

_MOST = 400
_Facts = tuple[object, ...]
_LANDED = tuple(name for name in SupportOut.__struct_fields__ if name not in ("sag_mm", "sag_limit_mm"))
"""All of a rod but how it sags, which the weight of cloth decides: no chain measures that."""


class MetalChains(Struct, frozen=True, gc=False):
    """A treatment's chains of openings, rods and ceiling: none knows of the floor or of cloth."""

    reach: Chain | None
    rods: tuple[Chain, ...]
    heights: Chain | None
    floor_to_rod: tuple[Chain, ...]


def metal_chains(set_out: SetOut, laid: TreatmentOut, treatment: Treatment | None, style: Style) -> MetalChains:
    """These chains, made anew."""
    rods = []
    seen: set[tuple[int, int]] = set()
    for index, layer in enumerate(laid.layers):
        place = (round(layer.support.left_mm), round(layer.support.right_mm))
        if place not in seen:
            seen.add(place)
            rods.append(treatment_chains.rod_length(set_out, layer, treatment, index, style))
    return MetalChains(
        treatment_chains.reach(set_out, laid, treatment, style),
        tuple(rods),
        treatment_chains.heights(set_out, laid, treatment, style),
        treatment_chains.floor_to_rod(set_out, laid, treatment, style),
    )


class AnnotationKeeper:
    """Remembers the last two layings of one wall's parts.

    Attributes
    ----------
    chains_made, sides_laid : int
        How often the metal chains of a treatment, and a side, were really made.
    """

    def __init__(self) -> None:
        self.chains_made = 0
        self.sides_laid = 0
        self._chains: dict[Ref, tuple[tuple[_Facts, MetalChains], ...]] = {}
        self._sides: dict[str, tuple[tuple[_Facts, tuple[str | None, ...], SideOut], ...]] = {}
        self._records = {side: Memo(records_of) for side in ("bottom", "top", "left", "right")}

    def metal(self, set_out: SetOut, laid: TreatmentOut, treatment: Treatment | None, style: Style) -> MetalChains:
        """The chains of a treatment that know nothing of floor and cloth."""
        facts: _Facts = (
            laid.openings,
            tuple((layer.ref, *(getattr(layer.support, name) for name in _LANDED)) for layer in laid.layers),
            treatment,
            style,
            (set_out.wall, set_out.width_mm),
            set_out.ceiling,
        )
        kept = self._chains.get(laid.ref, ())
        for known, chains in kept:
            # Within tuples Python looks at identity first, so what did not change is compared at no cost.
            if known == facts:
                return chains
        chains = metal_chains(set_out, laid, treatment, style)
        self.chains_made += 1
        if len(self._chains) >= _MOST:
            self._chains.clear()
        self._chains[laid.ref] = ((facts, chains), *kept[:1])
        return chains

    def side(
        self,
        frame: Frame,
        slots: Sequence[Slot],
        bounds: tuple[float, float],
        letter_room: float,
        previous: Mapping[str, str],
    ) -> SideOut:
        """The same as ``lay_side``; what other sides did at the last laying makes no difference to one."""
        facts: _Facts = (frame, tuple(slots), bounds, letter_room)
        kept = self._sides.get(frame.side, ())
        for known, rungs, laid in kept:
            if known == facts and rungs == _rungs(laid, previous):
                return laid
        laid = lay_side(frame, slots, bounds, letter_room, previous)
        self.sides_laid += 1
        self._sides[frame.side] = ((facts, _rungs(laid, previous), laid), *kept[:1])
        return laid

    def records(self, side: SideOut, keys: Mapping[str, str]) -> SideRecords:
        """The records of a side; ``keys`` are the letters of its figures."""
        return self._records[side.frame.side](side) if not keys else records_of(side, keys)


def _rungs(side: SideOut, previous: Mapping[str, str]) -> tuple[str | None, ...]:
    return tuple(previous.get(item.place) for item in side.laid)
