"""The hem of a layer.

Dragging it changes the held figure. Across the floor a clear hem becomes a kiss and then a break, and back. A panel in hand
has the length it has: pulling its hem pulls the rod.
"""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name, where
from elevation.findings.shapes import height_at
from elevation.handles.context import (
    Context,
    Dressed,
    Family,
    HoldFigure,
    Scale,
    dressed_layers,
    dressed_of,
    exact,
    make,
    place_of,
)
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.handles.rod_height import SHOWN_AS as ROD_SHOWN_AS
from elevation.handles.rod_height import (
    clear_mm,
    floor_under,
    height_places,
    hold_height,
    ready_made,
)
from elevation.handles.rod_height import range_of as rod_range_of
from elevation.handles.rod_height import scale_of as rod_scale_of
from elevation.room.edits import replace_at
from elevation.room.find import layer_of
from elevation.room.model import Hem, Ref, Room
from elevation.setting_out.facts import Defaults, defaults_of
from elevation.setting_out.hems import length_in_hand
from elevation.setting_out.model import OpeningOut, PanelOut
from elevation.units import Length, parse_length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg

AXIS = "hem"

LEAST_DROP_MM = 50.0
"""The hem stays at least this far below the top of the cloth."""
MOST_ON_FLOOR_MM = 500.0
"""More cloth than this is never laid on the floor."""
PUDDLE_MM = 101.6
"""More extra cloth than this (4 in) is called a puddle, less a break; common practice, no source."""

_SHOWN_AS: dict[str, Message] = {
    "sill": msg("above the sill"),
    "apron": msg("below the apron"),
    "clear": msg("clear of the floor"),
    "kiss": msg("clear of the floor"),
    "break": msg("of cloth on the floor"),
    "puddle": msg("of cloth on the floor"),
    "length": msg("finished length"),
}
_DOWNWARD = ("apron", "break", "puddle", "length")
_ON_FLOOR = ("clear", "kiss", "break", "puddle")


def _panel(dressed: Dressed) -> PanelOut | None:
    """The panel by which the layer's hem is shown: the first that has one."""
    return next((panel for panel in dressed.landed.panels if panel.hem), None)


def _where(panel: PanelOut) -> tuple[float, float]:
    """The middle of the panel's lower edge as drawn."""
    x_mm = (panel.hem[0][0] + panel.hem[-1][0]) / 2
    # The middle lies between the ends.
    for (x0, y0), (x1, y1) in zip(panel.hem, panel.hem[1:], strict=False):  # pragma: no branch
        if x0 <= x_mm <= x1:
            return x_mm, y0 if x1 <= x0 else y0 + (y1 - y0) * (x_mm - x0) / (x1 - x0)
    return panel.hem[0]  # pragma: no cover - as above


def _floor_mm(context: Context, x_mm: float) -> float:
    return height_at(context.set_out.floor, x_mm)


def _is_in_hand(dressed: Dressed, panel: PanelOut) -> bool:
    """Whether that panel is one whose length is known: it hangs as long as it is, whatever the target."""
    return any(own.id == panel.ref[-1] and length_in_hand(own) is not None for own in dressed.layer.panels)


def _apron_mm(openings: tuple[OpeningOut, ...], at_mm: float | None, defaults: Defaults) -> tuple[float, float]:
    """The line that an apron hem is measured down from, and how far below it the hem is."""
    lines = []
    for opening in openings:
        stool_mm = opening.stool[0] if opening.stool else 0.0
        if opening.apron_mm > 0:
            lines.append((opening.bottom_mm - stool_mm - opening.apron_mm, defaults.hem_apron_mm))
        else:
            lines.append((opening.bottom_mm, defaults.hem_below_sill_mm))
    line_mm = min(line for line, _ in lines)
    if at_mm is not None:
        return line_mm, at_mm
    # Each opening has its own usual figure; the lowest hem that comes of them counts.
    return line_mm, line_mm - min(line - usual for line, usual in lines)


def _decided(context: Context, dressed: Dressed, panel: PanelOut) -> tuple[Hem, float, Scale]:
    """The hem as decided, the figure held (the usual one where none was given) and how that stands on the wall."""
    hem, defaults = dressed.layer.hem, defaults_of(context.trade, context.room.limits)
    openings = dressed.landed_treatment.openings
    if hem.target == "panel":
        hem = Hem("clear")  # a panel to come: drawn clear of the floor until its length is known
    at_mm = hem.at.mm if hem.at is not None else None
    if hem.target == "apron":
        line_mm, figure_mm = _apron_mm(openings, at_mm, defaults)
        return hem, figure_mm, Scale(line_mm, -1)
    if hem.target == "sill":
        return hem, _or(at_mm, defaults.hem_sill_mm), Scale(min(opening.bottom_mm for opening in openings), 1)
    if hem.target == "length":
        return hem, _or(at_mm, panel.top_mm - _where(panel)[1]), Scale(panel.top_mm, -1)
    usual = {
        "clear": defaults.hem_clear_mm,
        "kiss": defaults.hem_kiss_mm,
        "break": defaults.hem_break_mm,
        "puddle": defaults.hem_puddle_mm,
    }
    # Cloth on the floor is drawn on it, while the figure goes on below it.
    floor_mm = _floor_mm(context, _where(panel)[0])
    return hem, _or(at_mm, usual[hem.target]), Scale(floor_mm, -1 if hem.target in _DOWNWARD else 1)


def _or(at_mm: float | None, usual_mm: float) -> float:
    return usual_mm if at_mm is None else at_mm


def _hold(ref: Ref, target: str) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        now = layer_of(room, ref).hem
        new = _on_floor(room, target, figure) if target in _ON_FLOOR else Hem(target, figure)  # type: ignore[arg-type]
        return room if new == now else replace_at(room, ref, hem=new)

    return write


def _on_floor(room: Room, target: str, figure: Length) -> Hem:
    """The target that a hem near the floor has: clear above it, a kiss at it, a break or a puddle below."""
    above_mm = -figure.mm if target in _DOWNWARD else figure.mm
    if abs(above_mm) <= TOUCH_MM:
        return Hem("kiss")
    if above_mm > 0:
        return Hem("clear", figure if target not in _DOWNWARD else _turned(room, figure))
    extra = figure if target in _DOWNWARD else _turned(room, figure)
    if target == "puddle" or -above_mm > PUDDLE_MM:
        return Hem("puddle", extra)
    return Hem("break", extra)


def _turned(room: Room, figure: Length) -> Length:
    """The same size with the other sign; a typed sum is written as what it comes to."""
    if figure.text.startswith("-"):
        turned = parse_length(figure.text[1:].strip(), room.unit)
        if turned.mm == -figure.mm:
            return turned
    return exact(room, -figure.mm)


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        panel = _panel(dressed)
        if panel is None:
            continue
        name = msg("hem, {where}", where=place_of(dressed))
        if _is_in_hand(dressed, panel):
            yield _by_rod(context, dressed, panel, name)
        else:
            yield _by_target(context, dressed, panel, name)


def _by_target(context: Context, dressed: Dressed, panel: PanelOut, name: Message) -> Handle:
    hem, figure_mm, scale = _decided(context, dressed, panel)
    x_mm, y_mm = _where(panel)
    value_mm, floor_mm = scale.from_shown(figure_mm), _floor_mm(context, x_mm)
    low_mm, low_why = floor_mm, msg("the floor")
    high_mm, high_why = panel.top_mm - LEAST_DROP_MM, msg("the top of the cloth")
    if hem.target in _ON_FLOOR:
        low_mm, low_why = floor_mm - MOST_ON_FLOOR_MM, msg("no more cloth on the floor")
    elif hem.target == "sill":
        low_mm, low_why = scale.base_mm, msg("the sill")
    elif hem.target == "apron":
        high_mm, high_why = min(high_mm, scale.base_mm), msg("where the apron hem is measured from")
    return make(
        AXIS,
        dressed.landed.ref,
        (x_mm, y_mm),
        "y",
        value_mm,
        (low_mm, high_mm),
        scale,
        hem.at,
        _hold(dressed.landed.ref, hem.target),
        name,
        _SHOWN_AS[hem.target],
        low_why=low_why,
        high_why=high_why,
    )


def _level_mm(panel: PanelOut) -> float:
    """Where a panel in hand would end if there were no floor for it to lie on."""
    return panel.top_mm - (panel.finished_length_mm or 0.0)


def _by_rod(context: Context, dressed: Dressed, panel: PanelOut, name: Message) -> Handle:
    held, rod = dressed.layer.rod.height, rod_scale_of(dressed)
    x_mm, y_mm = _where(panel)
    level_mm = _level_mm(panel)
    below_mm = dressed.landed.support.height_mm - level_mm
    low_mm, high_mm = rod_range_of(context.set_out, dressed)
    floor_mm = _floor_mm(context, x_mm)
    return make(
        AXIS,
        dressed.landed.ref,
        (x_mm, y_mm),
        "y",
        level_mm,
        (max(low_mm - below_mm, floor_mm - MOST_ON_FLOOR_MM), high_mm - below_mm),
        Scale(rod.base_mm - below_mm, rod.sign),
        held.at,
        hold_height(dressed.landed.ref, held),
        name,
        msg("rod {what}", what=ROD_SHOWN_AS[held.hold]),
        low_why=msg("no more cloth on the floor"),
        high_why=msg("the rod meets the ceiling"),
    )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    dressed = dressed_of(context, handle)
    panel = _panel(dressed)
    if panel is None:  # pragma: no cover - the handle is made of it
        return
    if _is_in_hand(dressed, panel):
        below_mm = dressed.landed.support.height_mm - _level_mm(panel)
        floor_mm = floor_under(context, dressed)
        yield Sticking(handle.axis, handle.ref, floor_mm, msg("kisses the floor"), PROPORTION)
        for place in height_places(handle.axis, handle.ref, context, dressed):
            yield Sticking(place.axis, place.ref, place.value_mm - below_mm, place.reason, place.rank)
        return
    for value_mm, reason, rank in (
        *_floor_places(context, dressed, panel),
        *_shop(context, dressed, panel),
        *_neighbours(context, dressed),
    ):
        yield Sticking(handle.axis, handle.ref, value_mm, reason, rank)


Place = tuple[float, Message, int]


def _floor_places(context: Context, dressed: Dressed, panel: PanelOut) -> Iterable[Place]:
    floor_mm = _floor_mm(context, _where(panel)[0])
    yield floor_mm, msg("kisses the floor"), PROPORTION
    yield floor_mm + clear_mm(context, dressed), msg("just clear of the floor"), PROPORTION


def _shop(context: Context, dressed: Dressed, panel: PanelOut) -> Iterable[Place]:
    """Where a panel from the shop would end, hung from this rod."""
    floor_mm = floor_under(context, dressed)
    # Half an inch over the usual clearance still reads as just clear.
    most_mm = defaults_of(context.trade, context.room.limits).hem_clear_mm + 12.7
    for length_mm in ready_made(context):
        gap_mm = panel.top_mm - length_mm - floor_mm
        if 0.0 <= gap_mm <= most_mm:
            reason = msg("{length} panel just clears the floor", length=Mm(length_mm))
        else:
            reason = msg("length of the ready-made {length} panel", length=Mm(length_mm))
        yield panel.top_mm - length_mm, reason, NEIGHBOUR


def _neighbours(context: Context, dressed: Dressed) -> Iterable[Place]:
    for other in dressed_layers(context):
        panel = _panel(other)
        if other.landed.ref != dressed.landed.ref and panel is not None:
            reason = msg("level with the hem of {where}", where=where(other.landed_treatment))
            yield _where(panel)[1], reason, NEIGHBOUR
    for opening in dressed.landed_treatment.openings:
        if opening.kind == "window":
            yield opening.bottom_mm, msg("at the sill of {opening}", opening=opening_name(opening)), NEIGHBOUR
            if opening.apron_mm > 0:
                reason = msg("at the apron's lower edge, {opening}", opening=opening_name(opening))
                yield opening.bottom_mm - opening.apron_mm, reason, NEIGHBOUR


FAMILY = Family(frozenset({AXIS}), _handles, _places)
