"""Where a bracket or a rod's end may go at the farthest and the rod still sags no more than looks neat.

How far a rod sags hangs on where its panels park, close and weigh on it, and those go with its brackets: so the place is
not worked out from a formula but found by setting out the treatment alone, with the handle on one graduation after another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import pairwise

from msgspec.structs import replace

from elevation.errors import ElevationError
from elevation.findings.model import Sticking
from elevation.findings.rules.sag import worst
from elevation.handles.context import Context, Dressed
from elevation.handles.model import Handle
from elevation.handles.ranks import RULE
from elevation.room.edits import edit_at
from elevation.room.model import Ref, Room, Scheme
from elevation.setting_out.model import LayerOut, SetOut
from elevation.setting_out.whole import set_out_apart
from elevation.trade.model import Trade
from elevation.units.tolerance import TOUCH_MM, less_ratio
from elevation.words import Mm, msg

Lands = Callable[[Room, str, str | None, Trade], SetOut]


def neat_places(handle: Handle, context: Context, dressed: Dressed, alone: bool) -> Iterable[Sticking]:
    """The last graduations at which no span sags past the neat limit; none where the sag is not known.

    Parameters
    ----------
    handle : Handle
        Of a bracket, or of a rod's end.
    context : Context
        The wall at press.
    dressed : Dressed
        The layer that the handle belongs to.
    alone : bool
        Only this end moves where both would.
    """
    if dressed.landed.loads is None or not dressed.landed.loads.spans or dressed.treatment.continues is not None:
        return
    mark_mm = context.room.graduation_mm
    ends = sorted(handle.shown_mm(mm) / mark_mm for mm in (handle.low_mm, handle.high_mm))
    low, high = -int(-ends[0] // 1), int(ends[1] // 1)
    now = min(max(round(handle.shown_mm(handle.value_mm) / mark_mm), low), high)
    tried: dict[int, LayerOut | None] = {}
    lands = set_out_apart()

    def at(mark: int) -> LayerOut | None:
        if mark not in tried:
            moved = handle.move(context.room, handle.from_shown(mark * mark_mm), alone)
            tried[mark] = _landed(lands, moved, dressed.landed.ref, context.trade)
        return tried[mark]

    stops = sorted({low, (low + now) // 2, now, (now + high) // 2, high})
    for one, other in pairwise(stops):
        if _is_neat(at(one)) == _is_neat(at(other)):
            continue
        neat, rough = (one, other) if _is_neat(at(one)) else (other, one)
        while abs(rough - neat) > 1:
            middle = (neat + rough) // 2
            if _is_neat(at(middle)):
                neat = middle
            else:
                rough = middle
        found, past = at(neat), at(rough)
        if found is None or past is None or not _joints_held(past):
            continue  # not the rod's stiffness: a joint has no bracket there
        span = worst(found)
        # A free end counts twice and is no span between brackets.
        if span is not None and not span.is_end:
            long = Mm(span.right_mm - span.left_mm, about=True)
            reason = msg("the longest span that looks neat, {span}", span=long)
            yield Sticking(handle.axis, handle.ref, handle.from_shown(neat * mark_mm), reason, RULE)


def _landed(lands: Lands, room: Room, ref: Ref, trade: Trade) -> LayerOut | None:
    """The layer where it lands with nothing else hung on its wall; None for what cannot be set out."""

    def only(scheme: Scheme) -> Scheme:
        return replace(scheme, treatments=tuple(one for one in scheme.treatments if one.id == ref[2]))

    try:
        wall = lands(edit_at(room, ref[:2], only), ref[0], ref[1], trade)
    except ElevationError:
        return None
    return next((layer for treatment in wall.treatments for layer in treatment.layers if layer.ref == ref), None)


def _joints_held(layer: LayerOut) -> bool:
    """Whether a bracket stands under every joint."""
    return all(
        any(abs(bracket.x_mm - joint_mm) <= TOUCH_MM for bracket in layer.brackets) for joint_mm in layer.support.splices_mm
    )


def _is_neat(layer: LayerOut | None) -> bool:
    """Whether every span holds the limit; what does not stand is not neat."""
    if layer is None or layer.loads is None or not layer.loads.spans:
        return False
    return not any(less_ratio(span.neat_mm, span.sag_mm) for span in layer.loads.spans)
