"""Schemes to start from that differ in kind, found by setting out and checking every pair of places that handles stick to.

From one scheme the rod's height and both its ends (mirrored) are tried at every place where their handles would stick, each
treatment for itself, on whatever it is fixed to; inside an opening the rod stays as high as it is. Only rooms count in
which the treatment breaks no rule (no *stop*, no *broken*), its rod spans the openings, and closed it leaves no more of the
glass clear than it did. Of those the least is taken by, in this order:

- *modest*: advice raised, length of the rod, height over the casing;
- *tall and wide*: glass covered when open (in whole per cent), how far from two thirds up to the ceiling, advice raised;
- *ready-made*: panels in hand or of a length that is sold, with the hem where it is wished: advice raised, glass covered,
  length of the rod.

Then the half-inch (or centimetre) grid of the ends at that height, and of the height with those ends, is tried as well: a
place between those that have a name may be better.

A kind that no place satisfies is left out, and so is one that comes to the same rod as one before it, or to what hangs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from math import ceil, floor
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.all_rules import find
from elevation.findings.model import Scene, Weight
from elevation.handles import rod_ends, rod_height
from elevation.handles.all_handles import handles
from elevation.handles.context import rounded
from elevation.handles.model import Handle
from elevation.handles.sticking import candidates
from elevation.planning.guides import gap_of
from elevation.room.edits import put_scheme, replace_at
from elevation.room.find import layer_of, scheme_of
from elevation.room.model import Ref, Room, Scheme
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg

Kind = Literal["modest", "tall", "ready"]
Key = tuple[float, ...]
_TWO_THIRDS = 2 / 3
_HEMS = frozenset({"hem-high", "hem-low", "panel-length"})
"""Rules about a hem that is not where it is wished: no such panel is proposed."""
_ALIKE_MM = 1.0
_SHARE = 0.005
"""Shares of the glass are told apart by whole per cents."""
_SLACK_MM = 150.0
_FAR_MM = 450.0


class Proposal(Struct, frozen=True):
    """One scheme that is proposed: its kind, what it is called and trades, and the room with its treatments in place."""

    kind: Kind
    name: Message
    scheme: Scheme


class _Tried(Struct, frozen=True):
    """One rod that was tried: the room, where its treatment landed, and how many pieces of advice it raises."""

    room: Room
    landed: TreatmentOut
    wall: SetOut
    advice: int


def propose(
    room: Room, wall_id: str, scheme_id: str, trade: Trade, is_cancelled: Callable[[], bool] = lambda: False
) -> tuple[Proposal, ...]:
    """Up to three schemes that differ in kind, each breaking nothing; fewer where fewer exist.

    All of ``proposals`` at the end.
    """
    return tuple(proposals(room, wall_id, scheme_id, trade, is_cancelled))


def proposals(
    room: Room, wall_id: str, scheme_id: str, trade: Trade, is_cancelled: Callable[[], bool] = lambda: False
) -> Iterator[Proposal]:
    """The schemes one after another, each as soon as it is found.

    Parameters
    ----------
    room : Room
    wall_id, scheme_id : str
        The scheme that they start from: its treatments, cloth and panels.
    trade : Trade
    is_cancelled : callable
        Looked at between two tries; what was found so far stands.
    """
    kinds: tuple[tuple[Kind, Callable[[_Tried], Key]], ...] = (("modest", _modest), ("tall", _tall), ("ready", _ready))
    rods: list[list[tuple[float, float]]] = []
    start = scheme_of(room, wall_id, scheme_id)
    for kind, key in kinds:
        made = room
        lengths: set[float] = set()
        for treatment in set_out(room, wall_id, scheme_id, trade).treatments:
            best, length = _best(made, treatment.ref, trade, kind, key, is_cancelled)
            if best is None:
                break
            made = best.room
            lengths |= {length} if length is not None else set()
        else:
            laid = set_out(made, wall_id, scheme_id, trade)
            rod = [(one.layers[0].support.height_mm, one.layers[0].support.length_mm) for one in laid.treatments]
            if laid.treatments and not any(_same(rod, other) for other in rods) and not _breaks(made, laid, trade):
                rods.append(rod)
                scheme = scheme_of(made, wall_id, scheme_id)
                # What hangs there already is no proposal.
                if scheme is not None and start is not None and scheme.treatments != start.treatments:
                    yield Proposal(kind, _name(kind, lengths), scheme)
        if is_cancelled():
            return


def put_proposals(room: Room, wall_id: str, proposals: Iterable[tuple[str, Scheme]]) -> tuple[Room, tuple[str, ...]]:
    """The room with proposals as further schemes of the wall, under names as said; and their ids."""
    ids = []
    for name, scheme in proposals:
        room, ref = put_scheme(room, wall_id, replace(scheme, id="", name=name))
        ids.append(ref[1])
    return room, tuple(ids)


def _same(rod: list[tuple[float, float]], other: list[tuple[float, float]]) -> bool:
    pairs = zip(rod, other, strict=True)
    return all(abs(a[0] - b[0]) < _ALIKE_MM and abs(a[1] - b[1]) < _ALIKE_MM for a, b in pairs)


def _name(kind: Kind, lengths: set[float]) -> Message:
    if kind == "modest":
        return msg("Modest: the shortest rod that breaks nothing")
    if kind == "tall":
        return msg("Tall and wide: the most glass clear")
    if len(lengths) == 1:
        return msg("Ready-made: panels of {length}, nothing to sew", length=Mm(min(lengths), about=True))
    return msg("Ready-made: panels as they are sold, nothing to sew")


def _best(
    room: Room, ref: Ref, trade: Trade, kind: Kind, key: Callable[[_Tried], Key], is_cancelled: Callable[[], bool]
) -> tuple[_Tried | None, float | None]:
    """The best place of one treatment's front rod, and the length of panel that it is for."""
    best: tuple[Key, _Tried, float | None] | None = None
    now = next(one for one in set_out(room, ref[0], ref[1], trade).treatments if one.ref == ref)
    is_inside = now.mount in INSIDE
    without = _HEMS if kind == "ready" else frozenset()
    for start, length in _starts(room, ref, trade, kind):
        heights = (start,) if is_inside else _moved(start, ref, rod_height.AXIS, trade)
        rooms = (made for high in heights for made in _moved(high, ref, rod_ends.RIGHT, trade))
        for tried in _tries(rooms, ref, trade, is_cancelled, without, now):
            rank = key(tried)
            if best is None or rank < best[0]:
                best = (rank, tried, length)
    if best is None:
        return None, None
    axes = (rod_ends.RIGHT,) if is_inside else (rod_ends.RIGHT, rod_height.AXIS)
    for axis in axes:
        for tried in _tries(_gridded(best[1].room, ref, axis, trade), ref, trade, is_cancelled, without, now):
            rank = key(tried)
            if rank < best[0]:
                best = (rank, tried, best[2])
    return best[1:]


def _starts(room: Room, ref: Ref, trade: Trade, kind: Kind) -> Iterable[tuple[Room, float | None]]:
    """The room with the panels that a kind is about: as they are, or of each length that is in hand or sold."""
    wall = set_out(room, ref[0], ref[1], trade)
    laid = next((one for one in wall.treatments if one.ref == ref), None)
    if laid is None or not laid.layers:
        return
    if kind != "ready":
        yield room, None
        return
    layer = layer_of(room, laid.layers[0].ref)
    if not layer.panels:
        return
    in_hand = {one.measured_length or one.label_length for one in layer.panels}
    if None not in in_hand:
        yield room, min(length.mm for length in in_hand if length is not None)
        return
    low = max((opening.casing_top_mm for opening in laid.openings), default=0.0)
    high = max(y for _, y in wall.ceiling.points)
    under = laid.layers[0].support.height_mm - (laid.layers[0].panels[0].finished_length_mm or 0.0)
    # No other length can end where this hem is wished from a rod between casing and ceiling.
    sold = sorted(
        {
            row.length_mm
            for row in trade.ready_made.values()
            if row.market == room.unit and low < row.length_mm + under + _SLACK_MM and row.length_mm + under < high
        }
    )
    for length_mm in sold:
        length = rounded(room, length_mm, None)
        panels = tuple(replace(panel, label_length=length) for panel in layer.panels)
        yield replace_at(room, laid.layers[0].ref, panels=panels), length_mm


def _tries(
    rooms: Iterable[Room],
    ref: Ref,
    trade: Trade,
    is_cancelled: Callable[[], bool],
    without: frozenset[str],
    now: TreatmentOut,
) -> Iterable[_Tried]:
    """Those of some rooms in which the treatment breaks nothing and covers what it covers ``now``."""
    for made in rooms:
        if is_cancelled():
            return
        wall = set_out(made, ref[0], ref[1], trade)
        laid = next(one for one in wall.treatments if one.ref == ref)
        if not _covers(laid, now):
            continue
        findings = [one for one in find(Scene(made, wall, trade)) if one.subject[: len(ref)] == ref]
        if all(one.weight is Weight.CONSIDER and one.rule not in without for one in findings):
            yield _Tried(made, laid, wall, len(findings))


def _covers(laid: TreatmentOut, now: TreatmentOut) -> bool:
    """Whether closed cloth leaves no more glass clear than now, and the rod spans the openings, or as much as now."""
    here, before = laid.clearances, now.clearances
    reaches = (
        (here.left_of_opening_mm, before.left_of_opening_mm),
        (here.right_of_opening_mm, before.right_of_opening_mm),
    )
    spans = all(reach >= min(old, 0.0) - TOUCH_MM for reach, old in reaches)
    return spans and laid.glass.clear_closed <= now.glass.clear_closed + _SHARE


def _moved(room: Room, ref: Ref, axis: str, trade: Trade) -> Iterable[Room]:
    """The room as it is, then with that handle of the front rod at each place where it sticks."""
    yield room
    bound = _handle(room, ref, axis, trade)
    if bound is not None:
        for place in candidates(bound, Scene(room, set_out(room, ref[0], ref[1], trade), trade)):
            yield bound.move(room, place.value_mm, False)


def _gridded(room: Room, ref: Ref, axis: str, trade: Trade) -> Iterable[Room]:
    """The room with that handle at every half inch or centimetre of its figure, as far as a rod is ever moved."""
    bound = _handle(room, ref, axis, trade)
    if bound is None:  # pragma: no cover - the pair was set out with that bound
        return
    step = 12.7 if room.unit == "in" else 10.0
    low, high = max(bound.low_mm, bound.value_mm - _FAR_MM), min(bound.high_mm, bound.value_mm + _FAR_MM)
    ends = sorted((bound.shown_mm(low), bound.shown_mm(high)))
    for count in range(ceil(ends[0] / step), floor(ends[1] / step) + 1):
        yield bound.move(room, bound.from_shown(count * step), False)


def _handle(room: Room, ref: Ref, axis: str, trade: Trade) -> Handle | None:
    wall = set_out(room, ref[0], ref[1], trade)
    laid = next(one for one in wall.treatments if one.ref == ref)
    found = next((one for one in handles(room, wall, trade) if one.key == (axis, laid.layers[0].ref)), None)
    return None if found is None else found.bound(alone=False)


def _breaks(room: Room, wall: SetOut, trade: Trade) -> bool:
    """Whether what hangs on the wall breaks anything; what the tape says of the wall itself no rod can mend."""
    hung = (one for one in find(Scene(room, wall, trade)) if one.subject[1:2] == (wall.scheme,))
    return any(one.weight is not Weight.CONSIDER for one in hung)


def _covered(tried: _Tried) -> float:
    return round(1.0 - tried.landed.glass.clear_open, 2)


def _modest(tried: _Tried) -> Key:
    support = tried.landed.layers[0].support
    return float(tried.advice), support.length_mm, tried.landed.clearances.above_casing_mm


def _tall(tried: _Tried) -> Key:
    support, gap = tried.landed.layers[0].support, gap_of(tried.wall, tried.landed)
    share = _TWO_THIRDS if gap is None else (support.height_mm - gap[0]) / (gap[1] - gap[0])
    return _covered(tried), round(abs(share - _TWO_THIRDS), 2), float(tried.advice), -support.length_mm


def _ready(tried: _Tried) -> Key:
    return float(tried.advice), _covered(tried), tried.landed.layers[0].support.length_mm
