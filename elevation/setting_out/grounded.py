"""A treatment set out again only where the wall around it has changed."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from elevation.room.model import Treatment
from elevation.setting_out.facts import Defaults, Overhead, WallFacts
from elevation.setting_out.legs import Legs
from elevation.setting_out.model import Span, TreatmentOut
from elevation.setting_out.opening import Placed
from elevation.setting_out.passing import NOBODY, Passing
from elevation.setting_out.profile import around
from elevation.setting_out.reach import reach_of
from elevation.trade.model import Trade

Run = Callable[
    [Treatment, tuple[Placed, ...], WallFacts, Overhead, Defaults, Trade, Legs, tuple[Passing, ...]], TreatmentOut
]

# All but the lines, so that a fact which is added later counts without being named here.
_WHOLE = tuple(name for name in WallFacts.__struct_fields__ if name not in ("floor", "ceiling"))


def _around(facts: WallFacts, reach: Span) -> tuple[object, ...]:
    """What a treatment knows of its wall: its lines over the treatment's reach, and what holds for the whole of it."""
    return (
        around(facts.floor, *reach),
        around(facts.ceiling, *reach),
        *(getattr(facts, name) for name in _WHOLE),
    )


class _Known(Struct, frozen=True):
    """A treatment set out, and all that it was set out from."""

    asked: tuple[object, ...]
    facts: WallFacts
    made: TreatmentOut

    def is_so(self, facts: WallFacts) -> bool:
        """Whether it would land the same by other facts of the wall."""
        if self.facts is facts:
            return True
        # Most of what moves with the wall moves at its openings: its whole reach is looked at where it does not.
        openings = self.made.openings
        core = openings[0].left_mm, openings[-1].right_mm
        if around(self.facts.floor, *core) != around(facts.floor, *core):
            return False
        reach = reach_of(self.made)
        return _around(self.facts, reach) == _around(facts, reach)


class Grounded:
    """Sets out a treatment and remembers the last two; of floor and ceiling only the stretch that it reaches over counts.

    The treatment, its openings, the defaults and the tables are compared by identity. It is told a wall's facts twice, with
    its floor and without, so that what does not depend on the floor can be remembered by the latter.

    Parameters
    ----------
    run : callable
        ``(treatment, covered, facts, overhead, defaults, trade, legs, passing) -> TreatmentOut``; may read the wall's lines
        nowhere but within ``reach_of`` what it makes.

    Attributes
    ----------
    calls : int
        How often it really ran.
    """

    __slots__ = ("_kept", "_run", "calls")

    def __init__(self, run: Run) -> None:
        self._run = run
        self._kept: tuple[_Known, ...] = ()
        self.calls = 0

    def __call__(
        self,
        treatment: Treatment,
        covered: tuple[Placed, ...],
        facts: WallFacts,
        overhead: Overhead,
        defaults: Defaults,
        trade: Trade,
        legs: Legs,
        passing: tuple[Passing, ...] = NOBODY,
    ) -> TreatmentOut:
        """The treatment set out; the very same object where nothing that it knows has changed."""
        asked = (treatment, covered, defaults, trade, legs, passing)
        kept = self._kept
        for number, known in enumerate(kept):
            if all(a is b for a, b in zip(known.asked, asked, strict=True)) and known.is_so(facts):
                if known.facts is not facts:
                    # The next frame will ask by these facts again.
                    same = _Known(asked, facts, known.made)
                    self._kept = tuple(same if index == number else one for index, one in enumerate(kept))
                return known.made
        made = self._run(treatment, covered, facts, overhead, defaults, trade, legs, passing)
        self.calls += 1
        self._kept = (_Known(asked, facts, made), *kept[:1])
        return made
