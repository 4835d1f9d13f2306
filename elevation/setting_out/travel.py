"""Travel: where each panel is held, between which stops it moves, and what it covers open, closed and as drawn.

A panel that parks at a rod's end has its outermost ring beyond the end bracket, so its cloth begins there; a pocket's cloth
begins inside. A bracket that rings cannot pass is a stop; in the middle of the rod two leading edges meet before its
centre. Headings without rings never pass a bracket. Panels that stand still are stops for their neighbours.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.model import BracketOut, Span

TOUCH_MM = 1e-6


class Mover(Struct, frozen=True, gc=False):
    """What travel needs to know of a panel: its flat width, stack and wishes, in mm along the rod."""

    parks: str
    flat_mm: float
    stack_mm: float
    stationary: bool
    drawn_mm: float | None


class Way(Struct, gc=False):
    """Where one panel is and may go. ``side`` is the side of its fixed edge; ``cannot_pass`` are brackets in its way."""

    side: str
    travel: Span
    open: Span
    closed: Span
    drawn: Span
    cannot_pass: tuple[Ref, ...] = ()


class _Group(Struct, gc=False):
    # Panels that park at one place and draw the same way, outermost first.
    x: float
    is_left: bool
    members: list[int]
    limit: float = 0.0
    reach: float = 0.0
    blocked: tuple[Ref, ...] = ()


class _Stop(Struct, frozen=True, gc=False):
    left: float
    right: float
    ref: Ref | None


def ways_of(
    panels: Sequence[Mover],
    brackets: Sequence[BracketOut],
    left_mm: float,
    right_mm: float,
    *,
    rings: bool,
    parks_outside: bool,
    ring_mm: float,
    carried: tuple[bool, bool] = (False, False),
    overlap_mm: float = 0.0,
) -> list[Way]:
    """The ways of all panels of one rod, in their order.

    Parameters
    ----------
    panels : sequence of Mover
    brackets : sequence of BracketOut
        Rising along the rod.
    left_mm, right_mm : float
        The rod's ends without finial.
    rings : bool
        The heading's rings pass those brackets that let rings pass; otherwise none is passed.
    parks_outside : bool
        The outermost ring, eyelet or tab is held beyond the end bracket.
    ring_mm : float
        Width of the parked ring.
    carried : (bool, bool)
        At which ends, left and right, the rod is carried without a bracket: every bracket there is one in the middle.
    overlap_mm : float
        By how much leading edges that meet overlap: the arm of a track carries one past the other.
    """
    left_end, right_end = _end_brackets(brackets, left_mm, right_mm, carried)
    start, end = _parking(left_end, right_end, left_mm, right_mm, parks_outside, ring_mm)
    first, last = _far_ends(left_end, right_end, left_mm, right_mm, rings)
    groups, still = _groups(panels, brackets, (start, end), (left_mm, right_mm))
    ways: dict[int, Way] = {}
    stops: list[_Stop] = []
    for (index, side, _), span in zip(still, _still_spans(panels, still, groups, left_mm, right_mm), strict=True):
        ways[index] = Way(side, span, span, span, span)
        stops.append(_Stop(span[0], span[1], None))
    for bracket in brackets:
        x = bracket.x_mm
        if bracket is left_end or bracket is right_end or (rings and bracket.rings_pass):
            continue
        # Cloth that never moves may hang on both sides of a bracket: nobody else's way leads there.
        if not any(stop.ref is None and stop.left <= x <= stop.right for stop in stops):
            stops.append(_Stop(x, x, bracket.ref))
    stops.sort(key=lambda stop: stop.left)
    _reach_all(groups, panels, stops, first, last, overlap_mm)
    for group in groups:
        _share_out(group, panels, ways)
    _keep_apart(groups, panels, ways, overlap_mm)
    return [ways[index] for index in range(len(panels))]


def _end_brackets(
    brackets: Sequence[BracketOut], left: float, right: float, carried: tuple[bool, bool]
) -> tuple[BracketOut | None, BracketOut | None]:
    """The brackets that carry the rod's two ends: a lone one carries the end that it is nearer to."""
    if not brackets:
        return None, None
    if carried[0] or carried[1]:
        return (None if carried[0] else brackets[0]), (None if carried[1] else brackets[-1])
    if len(brackets) > 1:
        return brackets[0], brackets[-1]
    alone = brackets[0]
    return (alone, None) if alone.x_mm <= (left + right) / 2 else (None, alone)


def _parking(
    a: BracketOut | None, b: BracketOut | None, left: float, right: float, outside: bool, ring: float
) -> tuple[float, float]:
    """Where cloth begins at the rod's two ends."""
    start, end = left, right
    # A ring cannot stand beyond the rod's end, nor cloth begin past the other end.
    if a is not None:
        edge = a.x_mm - a.half_width_mm - ring / 2 if outside else a.x_mm + a.half_width_mm
        start = min(max(left, edge), right)
    if b is not None:
        edge = b.x_mm + b.half_width_mm + ring / 2 if outside else b.x_mm - b.half_width_mm
        end = max(min(right, edge), left)
    return start, end


def _far_ends(a: BracketOut | None, b: BracketOut | None, left: float, right: float, rings: bool) -> tuple[float, float]:
    """How far a leading edge gets at the rod's ends where nothing else is in its way."""
    first, last = left, right
    if a is not None and not (rings and a.rings_pass):
        first = min(max(left, a.x_mm + a.half_width_mm), right)
    if b is not None and not (rings and b.rings_pass):
        last = max(min(right, b.x_mm - b.half_width_mm), left)
    return first, last


def _home(parks: str, brackets: Sequence[BracketOut], start: float, end: float) -> tuple[float, bool]:
    """The fixed edge of a parking place and whether it is the cloth's left edge."""
    where, _, bracket_id = parks.partition(":")
    if bracket_id:
        for bracket in brackets:
            if bracket.ref[-1] == bracket_id:
                return bracket.x_mm, where == "right-of"
        # The bracket is gone: the panel stays with the end it drew away from.
        return (end, False) if where == "left-of" else (start, True)
    return (start, True) if where == "left" else (end, False)


def _groups(
    panels: Sequence[Mover], brackets: Sequence[BracketOut], parking: Span, rod: Span
) -> tuple[list[_Group], list[tuple[int, str, float]]]:
    groups: list[_Group] = []
    still: list[tuple[int, str, float]] = []
    taken: dict[tuple[float, bool], float] = {}
    for index, panel in enumerate(panels):
        x, is_left = _home(panel.parks, brackets, *parking)
        # A bracket beyond the rod's end holds nothing there.
        x = _within(x, rod)
        key = (x, is_left)
        if panel.stationary:
            wide = _still_width(panel)
            shift = taken.get(key, 0.0)
            still.append((index, "left" if is_left else "right", _within(x + shift if is_left else x - shift, rod)))
            taken[key] = shift + wide
            continue
        for group in groups:
            if group.x == x and group.is_left == is_left:
                group.members.append(index)
                break
        else:
            groups.append(_Group(x, is_left, [index]))
    for group in groups:
        # Panels that stand still keep the place at the wall; those that move start beside them.
        shift = taken.get((group.x, group.is_left), 0.0)
        group.x = _within(group.x + shift if group.is_left else group.x - shift, rod)
    groups.sort(key=lambda group: (group.x, group.is_left))
    return groups, still


def _within(x: float, rod: Span) -> float:
    return min(max(x, rod[0]), rod[1])


def _still_width(panel: Mover) -> float:
    wide = panel.stack_mm if panel.drawn_mm is None else max(panel.drawn_mm, 0.0)
    return min(max(wide, 0.0), panel.flat_mm)


def _still_spans(
    panels: Sequence[Mover], still: list[tuple[int, str, float]], groups: list[_Group], left: float, right: float
) -> list[Span]:
    """What panels that stand still cover: up to the next panel's fixed edge, half way where two would overlap."""
    homes = sorted({x for _, _, x in still} | {group.x for group in groups})
    spans: list[Span] = []
    for index, side, x in still:
        wide = _still_width(panels[index])
        if side == "left":
            spans.append((x, max(min([x + wide, right, *(home for home in homes if home > x)]), x)))
        else:
            spans.append((min(max([x - wide, left, *(home for home in homes if home < x)]), x), x))
    order = sorted(range(len(spans)), key=lambda i: (spans[i][0] + spans[i][1], still[i][1] == "right"))
    for i, j in pairwise(order):
        spans[i], spans[j] = _apart(spans[i], spans[j])
    return spans


def _reach_all(
    groups: list[_Group], panels: Sequence[Mover], stops: list[_Stop], first: float, last: float, overlap: float
) -> None:
    """Give each group the stop it may travel to and the place its leading edge has when all is closed."""
    for i, group in enumerate(groups):
        if group.is_left:
            following = groups[i + 1] if i + 1 < len(groups) else None
            bound = max(last if following is None else following.x, group.x)
            mate = following if following is not None and not following.is_left else None
            between = _between(stops, group.x, bound)
            if mate is None:
                _alone(group, between, bound)
            else:
                mate_bound = min(group.x, mate.x)
                _meet(group, mate, panels, between, bound, mate_bound, overlap)
        else:
            before = groups[i - 1] if i else None
            if before is None or not before.is_left:
                bound = min(first if before is None else before.x, group.x)
                _alone(group, _between(stops, bound, group.x), bound)


def _between(stops: list[_Stop], left: float, right: float) -> list[_Stop]:
    return [s for s in stops if s.right > left + TOUCH_MM and s.left < right - TOUCH_MM]


def _last_edge(between: list[_Stop]) -> float:
    return max(stop.right for stop in between)


def _alone(group: _Group, between: list[_Stop], bound: float) -> None:
    if not between:
        group.limit = group.reach = bound
        return
    group.limit = group.reach = between[0].left if group.is_left else _last_edge(between)
    nearest_first = between if group.is_left else between[::-1]
    group.blocked = tuple(s.ref for s in nearest_first if s.ref is not None)


def _meet(
    left: _Group,
    right: _Group,
    panels: Sequence[Mover],
    between: list[_Stop],
    bound: float,
    mate_bound: float,
    overlap: float,
) -> None:
    """Two groups that draw toward each other meet where their fullness is equal, or at the one stop between them."""
    if not between:
        left.limit, right.limit = bound, mate_bound
        flat_left = sum(panels[i].flat_mm for i in left.members)
        flat_right = sum(panels[i].flat_mm for i in right.members)
        flat = flat_left + flat_right
        part = flat_left / flat if flat > 0 else 0.5
        meeting = left.x + (right.x - left.x) * part
        left.reach = min(meeting + overlap / 2, max(right.x, meeting))
        right.reach = max(meeting - overlap / 2, min(left.x, meeting))
        return
    left.limit = left.reach = between[0].left
    right.limit = right.reach = _last_edge(between)
    if len(between) > 1:
        if between[0].ref is not None:
            left.blocked = (between[0].ref,)
        if between[-1].ref is not None:
            right.blocked = (between[-1].ref,)


def _share_out(group: _Group, panels: Sequence[Mover], ways: dict[int, Way]) -> None:
    """Split a group's reach among its members by flat width; each is limited by its own cloth."""
    sign = 1.0 if group.is_left else -1.0
    room = max(sign * (group.limit - group.x), 0.0)
    reach = max(sign * (group.reach - group.x), 0.0)
    members = [panels[index] for index in group.members]
    flat = sum(panel.flat_mm for panel in members)
    opened, drawn = _laid(members, _stack, room), _laid(members, _wish, room)
    closed_at = cloth = 0.0
    for nth, index in enumerate(group.members):
        panel = members[nth]
        near, stacked = opened[nth]
        share = min(reach * (panel.flat_mm / flat if flat > 0 else 0.0), panel.flat_mm)
        # A stack thicker than its share of the closed cover leaves the cloth where it is.
        share = min(max(share, stacked - near), max(reach - closed_at, 0.0))
        cloth += panel.flat_mm
        inside = sum(_stack(other) for other in members[nth + 1 :])
        far = max(min(room - inside, cloth), stacked, closed_at + share)
        ways[index] = Way(
            "left" if group.is_left else "right",
            _span(group, min(near, closed_at), far),
            _span(group, near, stacked),
            _span(group, closed_at, closed_at + share),
            _span(group, *drawn[nth]),
            group.blocked,
        )
        closed_at += share


def _stack(panel: Mover) -> float:
    return min(panel.stack_mm, panel.flat_mm)


def _wish(panel: Mover) -> float:
    """How wide a panel is drawn where nothing is in its way: between its stack and its flat width."""
    stack = _stack(panel)
    return stack if panel.drawn_mm is None else min(max(panel.drawn_mm, stack), panel.flat_mm)


def _laid(members: Sequence[Mover], wish: Callable[[Mover], float], room: float) -> list[Span]:
    """How far the two edges of panels side by side are from where they park, outermost first.

    Each is as wide as ``wish`` says, but leaves those inside it room for their stacks.
    """
    spans: list[Span] = []
    at = 0.0
    for nth, panel in enumerate(members):
        free = max(room - at, 0.0)
        inside = sum(_stack(other) for other in members[nth + 1 :])
        wide = min(wish(panel), max(free - inside, min(_stack(panel), free)))
        spans.append((at, at + wide))
        at += wide
    return spans


def _span(group: _Group, near: float, far: float) -> Span:
    return (group.x + near, group.x + far) if group.is_left else (group.x - far, group.x - near)


def _keep_apart(groups: list[_Group], panels: Sequence[Mover], ways: dict[int, Way], overlap: float) -> None:
    """Leading edges drawn past each other by more than they may overlap meet half way.

    So do stacks that are longer together than the rod.
    """
    for a, b in pairwise(groups):
        if not a.is_left or b.is_left:
            continue
        left, right = ways[a.members[-1]], ways[b.members[-1]]
        stacks = [sum(_stack(panels[index]) for index in group.members) for group in (a, b)]
        if left.drawn[1] > right.drawn[0] + overlap + TOUCH_MM:
            middle = _middle(left.drawn[1], right.drawn[0], a.x, b.x, stacks)
            for group in (a, b):
                laid = _laid([panels[index] for index in group.members], _wish, abs(middle - group.x))
                for index, span in zip(group.members, laid, strict=True):
                    ways[index].drawn = _span(group, *span)
        if left.open[1] > right.open[0] + TOUCH_MM:
            middle = _middle(left.open[1], right.open[0], a.x, b.x, stacks)
            for group in (a, b):
                laid = _laid([panels[index] for index in group.members], _stack, abs(middle - group.x))
                for index, span in zip(group.members, laid, strict=True):
                    ways[index].open = _span(group, *span)


def _middle(left_edge: float, right_edge: float, low: float, high: float, stacks: Sequence[float]) -> float:
    """Where two groups meet that would overlap: half way, but leaving each its stacks where there is room for both."""
    middle = min(max((left_edge + right_edge) / 2, low), high)
    low, high = low + stacks[0], high - stacks[1]
    return min(max(middle, low), high) if low <= high else middle


def _apart(left: Span, right: Span) -> tuple[Span, Span]:
    if left[1] <= right[0]:
        return left, right
    middle = min(max((left[1] + right[0]) / 2, left[0]), right[1])
    return (left[0], middle), (middle, right[1])
