"""What a rule is, what it finds, and where a handle may stick because of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from enum import StrEnum

from msgspec import Struct

from elevation.room.model import Ref, Room
from elevation.setting_out.model import Point, SetOut, TreatmentOut
from elevation.trade.model import Trade
from elevation.words import Message

ON_WALL = frozenset({"wall"})
"""Mounts of rules about brackets on the wall."""

BEFORE_WALL = frozenset({"wall", "ceiling"})
"""Mounts that hang before the wall, beside and over the opening."""

FIXED = frozenset({"wall", "ceiling", "reveal"})
"""Mounts that stay where they are when a sash moves."""

INSIDE = frozenset({"reveal", "sash"})
"""Mounts that hang inside one opening."""

EVERY_MOUNT = FIXED | INSIDE
"""Mounts of rules that hold whatever the rod is fixed to."""


class Weight(StrEnum):
    """How much a finding matters; told apart on screen by shape and word."""

    STOP = "stop"
    BROKEN = "broken"
    CONSIDER = "consider"


class Scene(Struct, frozen=True):
    """What rules look at: the room, its wall set out in one scheme, and the trade's tables.

    ``half_mm`` is half a graduation: the tolerance by which a length may miss a limit.
    """

    room: Room
    set_out: SetOut
    trade: Trade

    @property
    def half_mm(self) -> float:
        """Half of the room's graduation, in mm."""
        return self.room.graduation_mm / 2


class Finding(Struct, frozen=True):
    """One thing that is wrong or worth a thought.

    Attributes
    ----------
    rule : str
        The rule's id.
    weight : Weight
    subject : Ref
        What it is about (a treatment, layer, bracket, panel, opening or obstacle).
    text : Message
        One sentence: what is wrong, by how much, where.
    authority : Message
        Who says so ("common practice", "IRC R310: the local code governs").
    measured_mm, limit_mm : float or None
    at : Point or None
        Where to point on the wall.
    caution : Message or None
        A caution that belongs to the act.
    """

    rule: str
    weight: Weight
    subject: Ref
    text: Message
    authority: Message
    measured_mm: float | None = None
    limit_mm: float | None = None
    at: Point | None = None
    caution: Message | None = None


class Sticking(Struct, frozen=True, gc=False):
    """A place that a handle may stick to.

    Attributes
    ----------
    axis : str
        The handle axis it is for (``rod-height``, ``rod-left``, ``rod-right``, ``bracket``, ``hem``, ``lead`` ...).
    ref : Ref
        The treatment, layer, bracket, panel ... whose handle it is.
    value_mm : float
        Wall coordinate (x or y) of the place.
    reason : Message
    rank : int
        0 hard limit, 1 rule limit, 2 neighbour, 3 proportion, 4 graduation.
    breaks : str or None
        Id of the rule that is broken there, if one is.
    """

    axis: str
    ref: Ref
    value_mm: float
    reason: Message
    rank: int = 1
    breaks: str | None = None


class Change(Struct, frozen=True):
    """A candidate remedy: a label, and an edit that makes a new Room (one quantity, or a mirrored pair).

    ``is_possible`` False: it cannot be held (a negative reach); it is only tried, to tell which rule stands against it.
    """

    label: Message
    edit: Callable[[Room], Room]
    is_possible: bool = True


class Rule(Struct, frozen=True):
    """One rule; each stands in a file of its own under ``findings/rules``.

    Attributes
    ----------
    id : str
    name : Message
        What it watches, for the middle of a sentence ("rod above the casing").
    find_in_treatment : callable or None
        ``(scene, treatment) -> findings`` for rules about one treatment: memoised per treatment.
    find_in_wall : callable or None
        ``(scene) -> findings`` for rules that compare treatments.
    changes : callable
        ``(scene, finding) -> candidate changes``, best first; asked for, never per frame.
    stickings : callable
        ``(scene, treatment) -> sticking places`` of this rule's limits, computed once at press.
    mounts : frozenset of str
        Mounts that it holds for.
    is_near : bool
        Whether ``find_in_treatment`` finds the same whatever stands farther from the treatment than the greatest limit.
    """

    id: str
    name: Message
    find_in_treatment: Callable[[Scene, TreatmentOut], Iterable[Finding]] | None = None
    find_in_wall: Callable[[Scene], Iterable[Finding]] | None = None
    changes: Callable[[Scene, Finding], Iterable[Change]] = lambda _scene, _finding: ()
    stickings: Callable[[Scene, TreatmentOut], Iterable[Sticking]] = lambda _scene, _treatment: ()
    mounts: frozenset[str] = ON_WALL
    is_near: bool = True
