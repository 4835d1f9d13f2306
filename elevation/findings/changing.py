"""Candidate changes: named edits that each change one held quantity, or a mirrored pair.

Each builder takes where something should come to in wall coordinates, and turns that into the figure that the
person holds, at the nearest graduation that gets there. Whether a change helps is found by trying it
(``planning.remedies``); None means that the thing cannot be moved that way.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import ceil, floor

from elevation.findings.looking import bracket_at, layer_at, noun_at
from elevation.findings.model import Change, Scene
from elevation.findings.naming import bracket_place
from elevation.room.corners import AROUND, lead_ref
from elevation.room.edits import move_bracket, put_bracket, replace_at, replace_rod
from elevation.room.find import bracket_of, layer_of
from elevation.room.model import Bracket, Held, Ref, Room
from elevation.room.supports import is_clip
from elevation.trade.model import BracketRow
from elevation.units import Length
from elevation.units.rounding import mm_of_mark
from elevation.units.writing import length_of
from elevation.words import Message, Mm, Percent, msg

MOST_PROJECTION_MM = 254.0
"""Further from the wall than 10 in no bracket for a rod is sold (from memory)."""

MOST_MOVE_MM = 304.8
"""Moved further than 12 in, a bracket is another bracket (common practice, no source)."""

_SAME_MARK = 1e-7  # a part of one graduation that float noise may add up to


def mark_up(mm: float, graduation_mm: float) -> float:
    """The first graduation at or above ``mm``."""
    return mm_of_mark(ceil(mm / graduation_mm - _SAME_MARK), graduation_mm)


def mark_down(mm: float, graduation_mm: float) -> float:
    """The first graduation at or below ``mm``."""
    return mm_of_mark(floor(mm / graduation_mm + _SAME_MARK), graduation_mm)


def length(scene: Scene, mm: float) -> Length:
    """A length at the room's graduation, in the room's unit."""
    return length_of(mm, scene.room.unit, scene.room.graduation_mm)


def _moved(scene: Scene, held: Held, by: float, slack: float) -> Held | None:
    """``held`` with its figure changed by ``by`` mm to a graduation, at most ``slack`` less than asked."""
    grad = scene.room.graduation_mm
    at = mark_up(held.at.mm + by - slack, grad) if by > 0 else mark_down(held.at.mm + by + slack, grad)
    if abs(at - held.at.mm) < grad * _SAME_MARK:
        return None
    return Held(held.hold, length(scene, at), held.share)


def _can_hold(*held: Held) -> bool:
    """Whether those figures can be held: only a place from the rod's centre or from a share may be negative.

    A change to another one is still tried, to tell which rule it would break.
    """
    return all(one.at.mm >= 0 or one.hold in ("from-centre", "share-of-opening") for one in held)


# --- the rod's height ---------------------------------------------------------------------------------------

_DOWN = frozenset({"below-ceiling", "bracket-drop", "below-head"})


def _height_label(held: Held, support: Message) -> Message:
    at = Mm(held.at.mm)
    if held.hold == "above-head":
        return msg("Set the {support} {at} above the opening", support=support, at=at)
    if held.hold == "above-casing":
        return msg("Set the {support} {at} above the casing", support=support, at=at)
    if held.hold == "below-ceiling":
        return msg("Set the {support} {at} below the ceiling", support=support, at=at)
    if held.hold == "below-head":
        return msg("Set the {support} {at} below the head", support=support, at=at)
    if held.hold == "above-sill":
        return msg("Set the {support} {at} above the sill", support=support, at=at)
    if held.hold == "share-of-opening":
        return msg("Set the {support} {at} above {share} of the opening", support=support, at=at, share=Percent(held.share))
    if held.hold == "bracket-drop":
        return msg("Set the {support} {at} below where its brackets hold it", support=support, at=at)
    return msg("Set the {support} {at} above the floor", support=support, at=at)


def rod_height(scene: Scene, ref: Ref, wanted_mm: float, slack_mm: float = 0.0) -> Iterator[Change]:
    """Raise or lower a layer's rod so that its centre line comes to ``wanted_mm`` over the datum.

    Parameters
    ----------
    scene : Scene
    ref : Ref
        The layer, or anything in it.
    wanted_mm : float
        Wall y in mm; the rod goes to the first graduation there or beyond.
    slack_mm : float
        By how much it may stay short: half a graduation for rules that compare with that tolerance.
    """
    support = layer_at(scene, ref).support
    held = layer_of(scene.room, lead_ref(scene.room, ref[:4])).rod.height
    new = _moved(scene, held, (wanted_mm - support.plan_mm) * (-1 if held.hold in _DOWN else 1), slack_mm)
    if new is not None:
        yield Change(
            _height_label(new, noun_at(scene, ref)), lambda room: replace_rod(room, ref[:4], height=new), _can_hold(new)
        )


# --- the rod's ends -----------------------------------------------------------------------------------------


def _end_words(held: Held) -> Message:
    at = Mm(held.at.mm)
    if held.hold == "beyond-opening":
        return msg("{at} beyond the opening", at=at)
    if held.hold == "beyond-casing":
        return msg("{at} beyond the casing", at=at)
    if held.hold == "from-corner":
        return msg("{at} from the corner", at=at)
    if held.hold == "inside-opening":
        return msg("{at} inside the jamb", at=at)
    return msg("at a rod length of {at}", at=at)


def _end_by(scene: Scene, held: Held, out_mm: float, slack: float) -> Held | None:
    if held.hold == AROUND:
        return None  # it goes on round the corner: there is no end to move
    return _moved(scene, held, -out_mm if held.hold in ("from-corner", "inside-opening") else out_mm, slack)


def rod_end(scene: Scene, ref: Ref, side: str, out_mm: float, slack_mm: float = 0.0) -> Iterator[Change]:
    """Move one end of a layer's rod outward by ``out_mm`` (inward where negative)."""
    rod = layer_of(scene.room, ref).rod
    if -out_mm >= layer_at(scene, ref).support.length_mm:
        return  # nothing would be left of it
    held = _end_by(scene, rod.left if side == "left" else rod.right, out_mm, slack_mm)
    if held is None:
        return
    if side == "left":
        label = msg("Set the left {support} end {place}", support=noun_at(scene, ref), place=_end_words(held))
        yield Change(label, lambda room: replace_rod(room, ref[:4], left=held), _can_hold(held))
    else:
        label = msg("Set the right {support} end {place}", support=noun_at(scene, ref), place=_end_words(held))
        yield Change(label, lambda room: replace_rod(room, ref[:4], right=held), _can_hold(held))


def rod_ends(scene: Scene, ref: Ref, out_mm: float, slack_mm: float = 0.0) -> Iterator[Change]:
    """Move both ends of a layer's rod outward by ``out_mm`` each (inward where negative): a mirrored pair."""
    rod = layer_of(scene.room, ref).rod
    if -2 * out_mm >= layer_at(scene, ref).support.length_mm:
        return
    lengths = [held.hold == "rod-length" for held in (rod.left, rod.right)]
    # Where one end holds the rod's length, that length has to take both moves.
    left = _end_by(scene, rod.left, out_mm * (2 if lengths[0] else 1), slack_mm)
    right = _end_by(scene, rod.right, out_mm * (2 if lengths[1] else 1), slack_mm)
    if left is None or right is None:
        return
    if left == right:
        label = msg("Set both {support} ends {place}", support=noun_at(scene, ref), place=_end_words(left))
    else:
        label = msg(
            "Set the {support} ends: left {left}, right {right}",
            support=noun_at(scene, ref),
            left=_end_words(left),
            right=_end_words(right),
        )
    yield Change(label, lambda room: replace_rod(room, ref[:4], left=left, right=right), _can_hold(left, right))


def ends_or_end(scene: Scene, ref: Ref, side: str, out_mm: float, slack_mm: float = 0.0) -> Iterator[Change]:
    """Both ends by the same amount first (it keeps the window symmetric), then that end alone."""
    yield from rod_ends(scene, ref, out_mm, slack_mm)
    yield from rod_end(scene, ref, side, out_mm, slack_mm)


def rod_projection(scene: Scene, ref: Ref, least_mm: float) -> Iterator[Change]:
    """Take the rod out from the wall until its centre line stands ``least_mm`` from it."""
    now = layer_of(scene.room, lead_ref(scene.room, ref[:4])).rod.projection
    support = layer_at(scene, ref).support
    if support.from_sash_mm is not None:
        yield from from_sash(scene, ref, least_mm + support.from_sash_mm - support.projection_mm)
        return
    # The figure is held from a mounting board's face, where there is one.
    thick = support.projection_mm - now.mm if layer_at(scene, ref).board is not None else 0.0
    at = length(scene, mark_up(least_mm - thick, scene.room.graduation_mm))
    if now.mm < at.mm <= MOST_PROJECTION_MM:
        label = msg("Hold the {support} {at} out from the wall", support=noun_at(scene, ref), at=Mm(at.mm))
        yield Change(label, lambda room: replace_rod(room, ref[:4], projection=at))


def from_sash(scene: Scene, ref: Ref, wanted_mm: float) -> Iterator[Change]:
    """Hold a rod inside an opening so that its centre line stands ``wanted_mm`` off the sash, or a mark beyond."""
    now = layer_at(scene, ref).support.from_sash_mm
    if now is None:
        return
    grad = scene.room.graduation_mm
    at = length(scene, mark_up(wanted_mm, grad) if wanted_mm > now else mark_down(wanted_mm, grad))
    if at.mm > 0 and at.mm != layer_of(scene.room, ref).rod.projection.mm:
        label = msg("Hold the {support} {at} off the sash", support=noun_at(scene, ref), at=Mm(at.mm))
        yield Change(label, lambda room: replace_rod(room, ref[:4], projection=at))


def without_overlap(ref: Ref) -> Iterator[Change]:
    """Let leading edges meet, not overlap."""
    yield Change(
        msg("Let the leading edges meet without overlapping"), lambda room: replace_rod(room, ref[:4], overlap=None)
    )


def plain_ends(scene: Scene, ref: Ref) -> Iterator[Change]:
    """End the rod in caps instead of longer finials."""
    now = scene.trade.ends[layer_of(scene.room, ref).rod.ends]
    caps = [row for row in scene.trade.ends.values() if row.shape == "cap"]
    if not caps:
        return
    cap = min(caps, key=lambda row: row.length_mm)
    if now.shape not in ("none", "cap") and cap.length_mm < now.length_mm:
        yield Change(
            msg("End the {support} in flat caps", support=noun_at(scene, ref)),
            lambda room: replace_rod(room, ref[:4], ends=cap.id),
        )


def longer_stock(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Make the rod of one piece, where its section is sold that long."""
    cut = layer_at(scene, ref).support.cut_length_mm
    section = scene.trade.sections[layer_of(scene.room, ref).rod.section]
    if cut > section.stock_mm:
        return
    at = length(scene, mark_up(cut, scene.room.graduation_mm))
    label = msg("Buy the {support} in one piece of {at}", support=noun_at(scene, ref), at=Mm(at.mm))
    yield Change(label, lambda room: replace_rod(room, ref[:4], stock=at))


# --- brackets -----------------------------------------------------------------------------------------------


def bracket_name(scene: Scene, ref: Ref) -> Message:
    """Which bracket of its rod it is, in words."""
    ordered = sorted(layer_at(scene, ref).brackets, key=lambda bracket: bracket.x_mm)
    order = next(index for index, bracket in enumerate(ordered) if bracket.ref == ref)
    return bracket_place(order, len(ordered))


def bracket_to(
    scene: Scene, ref: Ref, wanted_mm: float, slack_mm: float = 0.0, most_mm: float = MOST_MOVE_MM
) -> Iterator[Change]:
    """Move one bracket along the rod so that its centre comes to x ``wanted_mm`` or beyond, at a graduation."""
    if abs(wanted_mm - bracket_at(scene, ref).x_mm) > most_mm:
        return
    held = bracket_of(scene.room, ref).place
    # What is held is the planned place; what it was read to stand beside that goes with the move.
    shift_mm = bracket_at(scene, ref).shift_mm
    now = bracket_at(scene, ref).x_mm - shift_mm
    sign = -1 if held.hold == "from-right-end" else 1
    new = _moved(scene, held, (wanted_mm - now) * sign, slack_mm)
    if new is None:
        return
    moved_mm = (new.at.mm - held.at.mm) * sign - shift_mm
    by = Mm(abs(moved_mm))
    name = bracket_name(scene, ref)
    if moved_mm < 0:
        label = msg("Move {bracket} {by} to the left", bracket=name, by=by)
    else:
        label = msg("Move {bracket} {by} to the right", bracket=name, by=by)
    ordered = sorted(layer_at(scene, ref).brackets, key=lambda bracket: bracket.x_mm)
    is_end = ref in (ordered[0].ref, ordered[-1].ref)
    yield Change(label, lambda room: move_bracket(room, ref, new, is_end=is_end), _can_hold(new))


def _kits_like(scene: Scene, ref: Ref) -> list[BracketRow]:
    """The kits that are screwed to what the bracket at ``ref`` is screwed to: clips for a track, none of them for a rod."""
    now = scene.trade.brackets[bracket_of(scene.room, ref).kit]
    rows = scene.trade.brackets.values()
    return [row for row in rows if row.mount == now.mount and is_clip(row.id) == is_clip(now.id)]


def passing_kit(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Put a bracket there that lets rings pass."""
    name = bracket_name(scene, ref)
    for row in _kits_like(scene, ref):
        if row.rings_pass:
            label = msg("Make {bracket} one that lets rings pass: {kit}", bracket=name, kit=Message(row.name))
            yield _kit_change(label, ref, row.id)


def smaller_plate(scene: Scene, ref: Ref) -> Iterator[Change]:
    """Put a bracket with a smaller wall plate there that treats rings as the present one does."""
    row = scene.trade.brackets[bracket_of(scene.room, ref).kit]
    for other in sorted(_kits_like(scene, ref), key=lambda kit: kit.plate_width_mm):
        is_smaller = other.plate_width_mm < row.plate_width_mm or other.plate_below_mm < row.plate_below_mm
        if is_smaller and other.rings_pass == row.rings_pass:
            label = msg("Use a smaller bracket there: {kit}", kit=Message(other.name))
            yield Change(label, _set_kit(ref, other.id))


def _kit_change(label: Message, ref: Ref, kit: str) -> Change:
    return Change(label, lambda room: replace_at(room, ref, kit=kit, rings_pass=None))


def _set_kit(ref: Ref, kit: str) -> Callable[[Room], Room]:
    return lambda room: replace_at(room, ref, kit=kit)


def bracket_added(scene: Scene, ref: Ref, x_mm: float) -> Iterator[Change]:
    """Add a bracket at x ``x_mm``, held from the rod's centre, of the kit that the rod has already."""
    support = layer_at(scene, ref).support
    centre = (support.left_mm + support.right_mm) / 2
    place = Held("from-centre", length(scene, x_mm - centre))
    label = msg(
        "Add a bracket {at} from the left end of the {support}", support=noun_at(scene, ref), at=Mm(x_mm - support.left_mm)
    )
    yield Change(label, lambda room: _with_brackets(room, ref[:4], (place,)))


def _with_brackets(room: Room, ref: Ref, places: tuple[Held, ...]) -> Room:
    kits = [bracket.kit for bracket in layer_of(room, ref).brackets]
    for place in places:
        bracket = Bracket(id="", place=place, kit=kits[0]) if kits else Bracket(id="", place=place)
        room, _ = put_bracket(room, ref, bracket)
    return room


def end_brackets(scene: Scene, ref: Ref, inset_mm: float) -> Iterator[Change]:
    """Give a rod its pair of end brackets: both where it has none, the missing one where it has one."""
    layer = layer_of(scene.room, ref)
    if not layer.brackets:
        inset = length(scene, inset_mm)
        pair = (Held("from-left-end", inset), Held("from-right-end", inset))
        label = msg("Put a bracket {at} in from each end", at=Mm(inset.mm))
        yield Change(label, lambda room: _with_brackets(room, ref[:4], pair))
        return
    there = layer_at(scene, ref)
    support, bracket = there.support, there.brackets[0]
    is_left = bracket.x_mm <= (support.left_mm + support.right_mm) / 2
    inset_mm = bracket.x_mm - support.left_mm if is_left else support.right_mm - bracket.x_mm
    if inset_mm < 0:
        return
    held = Held("from-right-end" if is_left else "from-left-end", length(scene, inset_mm))
    label = msg("Add the bracket at the other end, {at} in", at=Mm(held.at.mm))
    yield Change(label, lambda room: _with_brackets(room, ref[:4], (held,)))


def built_height(scene: Scene, ref: Ref, height_mm: float) -> Iterator[Change]:
    """Hang a bracket again so that the rod's centre stands at ``height_mm`` there."""
    at = length(scene, height_mm)
    label = msg(
        "Hang {bracket} again, with the {support}'s centre at {at}",
        support=noun_at(scene, ref),
        bracket=bracket_name(scene, ref),
        at=Mm(at.mm),
    )
    yield Change(label, lambda room: replace_at(room, ref, height=at))
