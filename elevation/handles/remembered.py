"""The handles of a wall, made again only where what they belong to has changed.

``all_handles.handles`` says what the handles are; this says which of them are still the ones of the last frame. A
handle that did not change is the very same object, so whoever shows handles can tell by identity what to show anew.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from elevation.handles import blind, board, bracket, hem, lead, pelmet, projection, rod_ends, rod_height, tie
from elevation.handles.all_handles import FAMILIES
from elevation.handles.context import Context, Family
from elevation.handles.model import Handle
from elevation.room.find import wall_of
from elevation.room.model import Ref, Room, Treatment, Wall
from elevation.setting_out.memo import Same
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.trade.model import Trade

HANGING: tuple[Family, ...] = (
    rod_height.FAMILY,
    rod_ends.FAMILY,
    projection.FAMILY,
    bracket.FAMILY,
    board.FAMILY,
    hem.FAMILY,
    lead.FAMILY,
    tie.FAMILY,
    pelmet.FAMILY,
    blind.FAMILY,
)
"""Families whose handles belong to one treatment and look at no other, nor at openings that it does not cover."""
STANDING: tuple[Family, ...] = tuple(family for family in FAMILIES if family not in HANGING)
"""Families whose handles look at the wall and at nothing that hangs."""

MOST_TREATMENTS = 400
_HANGS = 3
"""Ids in a ref from which on it leads to a treatment."""

Key = tuple[str, Ref]
_Facts = tuple[Any, ...]
_Made = tuple[tuple[Handle, ...], ...]


def _others(kind: type[Struct], *without: str) -> tuple[str, ...]:
    # All fields but a few, so that a fact which is added later is looked at without being named here.
    return tuple(name for name in kind.__struct_fields__ if name not in without)


_OF_ROOM = _others(Room, "walls")
_OF_WALL = _others(Wall, "schemes")
_LANDED = _others(SetOut, "treatments", "proportions", "missing", "scheme", "scheme_name")
# A treatment holds its own openings as they landed; it does not matter to it that others moved.
_OF_WALL_BEHIND = tuple(name for name in _OF_WALL if name not in ("openings", "obstacles", "width", "gap_right"))
_LANDED_BEHIND = tuple(name for name in _LANDED if name not in ("openings", "obstacles", "chain", "zones", "bands"))


def _facts(context: Context, of_wall: tuple[str, ...], landed: tuple[str, ...]) -> _Facts:
    return (
        *(getattr(context.room, name) for name in _OF_ROOM),
        *(getattr(context.wall, name) for name in of_wall),
        *(getattr(context.set_out, name) for name in landed),
    )


class _Hung(Struct, frozen=True):
    """The handles of one treatment, and all that they were made from."""

    treatment: Treatment
    landed: TreatmentOut
    facts: _Facts
    trade: Trade
    made: _Made


class _Stood(Struct, frozen=True):
    """The handles of one family of what does not hang, and all that they were made from."""

    facts: _Facts
    trade: Trade
    made: tuple[Handle, ...]


class HandleKeeper:
    """Remembers the handles of the wall shown, for the last two rooms.

    Attributes
    ----------
    runs : dict
        How often the handles of each treatment were really made, by its ref.
    """

    def __init__(self) -> None:
        self.runs: dict[Ref, int] = {}
        self._facts_behind: Same[_Facts] = Same()
        self._facts_around: Same[_Facts] = Same()
        self._hung: dict[Ref, tuple[_Hung, ...]] = {}
        self._stood: dict[int, tuple[_Stood, ...]] = {}

    def handles(self, room: Room, set_out: SetOut, trade: Trade) -> tuple[Handle, ...]:
        """The same as ``all_handles.handles``, in the same order."""
        context = Context(room, wall_of(room, set_out.wall), set_out, trade)
        by_family = dict(zip(map(id, STANDING), self._stand(context, STANDING), strict=True))
        hanging = self._hang(context)
        for index, family in enumerate(HANGING):
            by_family[id(family)] = tuple(handle for made in hanging for handle in made[index])
        return tuple(handle for family in FAMILIES for handle in by_family[id(family)])

    def some(self, room: Room, set_out: SetOut, trade: Trade, keys: Collection[Key]) -> dict[Key, Handle]:
        """Those of the handles that have one of ``keys``; of treatments without one of them nothing is made."""
        context = Context(room, wall_of(room, set_out.wall), set_out, trade)
        made = self._hang(context, frozenset(ref[:3] for _, ref in keys))
        axes = {axis for axis, ref in keys if len(ref) < _HANGS}
        made.append(self._stand(context, tuple(family for family in STANDING if not axes.isdisjoint(family.axes))))
        wanted = frozenset(keys)
        every = (handle for one in made for family in one for handle in family)
        return {handle.key: handle for handle in every if handle.key in wanted}

    def _hang(self, context: Context, only: frozenset[Ref] | None = None) -> list[_Made]:
        scheme = next((scheme for scheme in context.wall.schemes if scheme.id == context.set_out.scheme), None)
        if scheme is None:
            return []
        facts = self._facts_behind.keep(_facts(context, _OF_WALL_BEHIND, _LANDED_BEHIND))
        decided = {treatment.id: treatment for treatment in scheme.treatments}
        if len(self._hung) > MOST_TREATMENTS:
            self._hung.clear()
        return [
            self._of(decided[landed.ref[2]], landed, facts, context)
            for landed in context.set_out.treatments
            if only is None or landed.ref in only
        ]

    def _of(self, treatment: Treatment, landed: TreatmentOut, facts: _Facts, context: Context) -> _Made:
        kept = self._hung.get(landed.ref, ())
        for one in kept:
            if one.treatment is treatment and one.landed is landed and one.facts is facts and one.trade is context.trade:
                return one.made
        alone = replace(context, set_out=replace(context.set_out, treatments=(landed,)))
        made = tuple(tuple(family.handles(alone)) for family in HANGING)
        self.runs[landed.ref] = self.runs.get(landed.ref, 0) + 1
        self._hung[landed.ref] = (_Hung(treatment, landed, facts, context.trade, made), *kept[:1])
        return made

    def _stand(self, context: Context, families: tuple[Family, ...]) -> _Made:
        if not families:
            return ()
        facts = self._facts_around.keep(_facts(context, _OF_WALL, _LANDED))
        return tuple(self._standing(family, facts, context) for family in families)

    def _standing(self, family: Family, facts: _Facts, context: Context) -> tuple[Handle, ...]:
        kept = self._stood.get(id(family), ())
        for one in kept:
            if one.facts is facts and one.trade is context.trade:
                return one.made
        made = tuple(family.handles(context))
        self._stood[id(family)] = (_Stood(facts, context.trade, made), *kept[:1])
        return made
