"""Random corners: walls that stand beside each other, and treatments that go on round the corner."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from elevation.room.model import Held, Length, Scheme, Treatment, Wall, WallEnd
from tests.strategies.choices import Lengths, T

ANGLES = (90.0, 90.0, 120.0, 135.0, 150.0, 108.5, 240.0)


class Corners(Lengths):
    """Puts walls beside each other."""

    def ring(self, walls: tuple[Wall, ...]) -> tuple[Wall, ...]:
        """Each wall to the right of the one before, most of them in a corner that both know or only one tells of."""
        made = list(walls)
        for index in range(len(made) - 1):
            first, second = made[index], made[index + 1]
            if self.pick.chance(8):
                # What a wall says of itself may contradict: nobody names anybody here.
                made[index] = _with(first, right=WallEnd("open"))
                made[index + 1] = _with(second, left=_with(second.left, neighbour=None))
                continue
            angle = self.pick.one_of(ANGLES)
            told_once = self.pick.chance(4)
            first = _with(first, right=WallEnd("corner", second.id, angle))
            second = _with(second, left=WallEnd("corner", None if told_once else first.id, angle))
            first, second = self.joined(first, second)
            made[index], made[index + 1] = first, second
        made[0] = _with(made[0], left=_with(made[0].left, neighbour=None))
        made[-1] = _with(made[-1], right=_with(made[-1].right, neighbour=None))
        return tuple(made)

    def joined(self, first: Wall, second: Wall) -> tuple[Wall, Wall]:
        """The last treatment of each scheme on the first wall goes on as the first one on the second."""
        lefts, rights = list(first.schemes), list(second.schemes)
        for index, (one, other) in enumerate(zip(lefts, rights, strict=False)):
            if one.id != other.id or not one.treatments or not other.treatments:
                continue
            before, after = one.treatments[-1], other.treatments[0]
            if not (_can_go_on(before) and _can_go_on(after)):
                continue
            lefts[index] = _put(one, -1, _ended(before, "right", self.short()))
            rights[index] = _put(other, 0, _with(_ended(after, "left", self.short()), continues=before.id))
        return _with(first, schemes=tuple(lefts)), _with(second, schemes=tuple(rights))

    def short(self) -> Length:
        """How far short of the mitre an end stops: as a rule not at all."""
        return self.between(1, 30) if self.pick.chance(4) else self.length(0)


def _can_go_on(treatment: Treatment) -> bool:
    return treatment.mount in ("wall", "ceiling")


def _ended(treatment: Treatment, side: str, short: Length) -> Treatment:
    layers = []
    for layer in treatment.layers:
        # A tension rod presses between two jambs: what goes on round a corner is a rod or a track.
        kind = "rod" if layer.rod.kind == "tension-rod" else layer.rod.kind
        layers.append(_with(layer, rod=_with(layer.rod, kind=kind, tilt="level", **{side: Held("around-corner", short)})))
    return _with(treatment, layers=tuple(layers))


def _put(scheme: Scheme, at: int, treatment: Treatment) -> Scheme:
    treatments = list(scheme.treatments)
    treatments[at] = treatment
    return _with(scheme, treatments=tuple(treatments))


def _with(item: T, **fields: Any) -> T:
    return replace(item, **fields)
