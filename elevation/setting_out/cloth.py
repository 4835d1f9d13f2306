"""What one layer takes in cloth, made to measure for where it hangs: widths, cuts, yards, lining, pleats."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from msgspec import Struct

from elevation.room.model import Fabric, Layer, Length, Ref, Room
from elevation.setting_out.faces import faces_of
from elevation.setting_out.model import LayerOut, PanelOut
from elevation.trade.model import FabricRow, HeadingRow, Trade
from elevation.trade.pleats import Pleats, pleats_of
from elevation.trade.tables import row_of
from elevation.trade.yardage import (
    Convention,
    Split,
    can_railroad,
    cut_length,
    drop_match,
    exact,
    finished_width,
    flat_width,
    sold,
    split,
    to_mark,
    to_repeat,
    widths_of,
)
from elevation.units.tolerance import TOUCH_MM

MOST_WIDTHS = 1000
"""More widths than this are a slip of the pen."""


class PanelCloth(Struct, frozen=True, gc=False):
    """One panel to be made, mm: finished and flat width, widths of cloth (halves where a pair shares one), its pleats.

    ``hemmed_mm`` is how wide it lies flat once its widths are joined and its side hems sewn: whole widths are used up.
    """

    ref: Ref
    finished_mm: float
    flat_mm: float
    widths: float
    pleats: Pleats | None
    hemmed_mm: float = 0.0


class Bolt(Struct, frozen=True, gc=False):
    """Cloth of one kind to buy, in mm: widths, length of each cut, in all, and as it is sold.

    ``widths`` is 0 where the cloth is turned on its side and runs through. ``extra_mm`` is what a half-drop pattern adds.
    ``plain_mm`` is what of a cut is needed, before whole repeats; plain cloth is cut on the tape's next mark.
    ``each_mm`` is the flat width of lining or interlining that each panel takes, in their order.
    """

    usable_mm: float
    widths: float
    cut_mm: float
    total_mm: float
    sold_mm: float
    extra_mm: float = 0.0
    plain_mm: float = 0.0
    each_mm: tuple[float, ...] = ()


class LayerCloth(Struct, frozen=True, gc=False):
    """What one layer takes.

    Attributes
    ----------
    fullness : float
        As wished.
    convention : str
        What it multiplies.
    finished_mm, flat_mm : float
        All panels together.
    finished_length_mm : float or None
        Of the longest panel; None: not known yet, and so is what depends on it.
    panels : tuple of PanelCloth
    parted : Split or None
        How the widths part among panels alike.
    face, lining, interlining : Bolt or None
    railroaded : bool
        The face cloth runs on its side.
    cannot_railroad : str
        Why it does not, though it was asked for: ``one-way``, ``too-narrow`` or empty.
    shrinks : float
        Part of its length that the first wash will take.
    washed_first : bool
        It is washed before it is cut.
    """

    fullness: float
    convention: Convention
    finished_mm: float
    flat_mm: float
    finished_length_mm: float | None
    panels: tuple[PanelCloth, ...]
    parted: Split | None
    face: Bolt | None
    lining: Bolt | None
    interlining: Bolt | None
    railroaded: bool
    cannot_railroad: str
    shrinks: float
    washed_first: bool = False


class _Plan(Struct, frozen=True, gc=False):
    """What all panels of the layer have in common, in mm."""

    heading: HeadingRow
    fullness: float
    convention: Convention
    overlap_mm: float
    return_mm: float
    side_hem_mm: float
    seam_mm: float
    fixed_mm: float
    leading_mm: float
    usable_mm: float


def cloth_of_layer(room: Room, layer: Layer, out: LayerOut, trade: Trade) -> LayerCloth | None:
    """What a layer takes in cloth.

    Parameters
    ----------
    room : Room
        For its convention of fullness and its unit.
    layer : Layer
    out : LayerOut
        Where it landed.
    trade : Trade

    Returns
    -------
    LayerCloth or None
        None where nothing hangs.

    Raises
    ------
    NoSuch
        A row of the tables does not exist.
    """
    if not out.panels:
        return None
    plan = _plan(room, layer, out, trade)
    faces = faces_of(out)
    # Overlap and return belong to panels that draw; one that never draws is as wide as its own cloth.
    wanted = {panel.ref: _flat(panel, faces, plan, len(faces)) for panel in out.panels}
    widths, parted = _widths(out, wanted, plan, is_patterned=layer.fabric.repeat is not None)
    flat = sum(wanted.values(), Fraction(0))
    long = _length(out, layer)
    face = lining = interlining = None
    why = ""
    runs = False
    fabric = layer.fabric
    shrinks = shrinks_of(fabric, trade)
    total_widths = sum(widths.values(), Fraction(0))
    if long is not None and total_widths <= MOST_WIDTHS:
        step = trade.allowances["sold-in" if room.unit == "in" else "sold-mm"].length_mm
        turned, hem = turned_in_mm(layer, plan.heading), hem_mm(layer, long, trade)
        cut = cut_of(layer, long, turned, hem, room.graduation_mm)
        one_way = runs_one_way(fabric, trade)
        if fabric.railroaded:
            runs = can_railroad(bolt_mm(fabric, trade), cut, one_way=one_way)
            why = "" if runs else "one-way" if one_way else "too-narrow"
        if runs:
            through = flat + len(out.panels) * 2 * exact(plan.side_hem_mm)
            face = bolt_through(before_wash(through, layer, trade), cut, fabric, step, trade)
        else:
            face = bolt_upright(total_widths, before_wash(cut, layer, trade), fabric, plan.usable_mm, step)
        lining = _lining(fabric.lining, wanted, long, step, plan, room.graduation_mm, trade)
        interlining = _interlining(fabric.interlining, wanted, long, step, plan, room.graduation_mm, trade)
    panels = tuple(
        _panel(panel, faces, wanted[panel.ref], widths[panel.ref], plan, runs_through=runs) for panel in out.panels
    )
    return LayerCloth(
        fullness=plan.fullness,
        convention=plan.convention,
        finished_mm=sum(panel.finished_mm for panel in panels),
        flat_mm=float(flat),
        finished_length_mm=long,
        panels=panels,
        parted=None if runs else parted,
        face=face,
        lining=lining,
        interlining=interlining,
        railroaded=runs,
        cannot_railroad=why,
        shrinks=shrinks,
        washed_first=layer.making.washed_first,
    )


def bolt_mm(fabric: Fabric, trade: Trade) -> float:
    """Width of the face cloth as it is sold: typed, else its row's, else the usual one."""
    if fabric.width is not None:
        return fabric.width.mm
    row = _row(fabric.row, trade)
    return trade.allowances["usual-width"].length_mm if row is None else row.width_mm


def shrinks_of(fabric: Fabric, trade: Trade) -> float:
    """Part of its length that the face cloth loses in the first wash: typed, else its row's, else none known: 0."""
    if fabric.shrinks is not None:
        return fabric.shrinks
    row = _row(fabric.row, trade)
    return 0.0 if row is None else row.shrinks


def runs_one_way(fabric: Fabric, trade: Trade) -> bool:
    """Whether pile or print of the face cloth runs one way."""
    row = _row(fabric.row, trade)
    return fabric.one_way or (row is not None and row.one_way)


def usable_mm(room: Room, fabric: Fabric, trade: Trade) -> float:
    """What of a width counts: by the room's convention less what selvedge and seam take."""
    wide = bolt_mm(fabric, trade)
    narrower = trade.allowances["width-loss"].length_mm if room.fullness_rule == "narrower" else 0.0
    return max(wide - narrower, wide / 2)


def _row(row_id: str | None, trade: Trade) -> FabricRow | None:
    return None if row_id is None else row_of(trade.fabrics, row_id, "cloth")


def _plan(room: Room, layer: Layer, out: LayerOut, trade: Trade) -> _Plan:
    heading = row_of(trade.headings, layer.heading, "heading")
    more = {key: row.length_mm for key, row in trade.allowances.items()}
    turns_back = layer.making.returns or any(out.support.carried)
    return _Plan(
        heading=heading,
        fullness=heading.fullness_typical if layer.making.fullness is None else layer.making.fullness,
        convention=room.fullness_rule,
        overlap_mm=out.support.overlap_mm if out.support.kind == "track" else 0.0,
        return_mm=max(out.support.projection_mm, 0.0) + more["return"] if turns_back else 0.0,
        side_hem_mm=more["side-hem"],
        seam_mm=more["seam"],
        fixed_mm=more["fixed-convention"],
        leading_mm=more["leading"],
        usable_mm=usable_mm(room, layer.fabric, trade),
    )


def _flat(panel: PanelOut, faces: dict[Ref, float], plan: _Plan, movers: int) -> Fraction:
    """Flat cloth of one panel by the room's convention; that of a panel which never draws is what it has."""
    face = faces.get(panel.ref)
    if face is None:
        return exact(panel.flat_width_mm)
    return flat_width(
        plan.convention,
        face,
        plan.overlap_mm / 2 if movers > 1 else 0.0,
        plan.return_mm,
        plan.fullness,
        2 * plan.side_hem_mm,
        # The published sum is for all the panels of a track together.
        plan.fixed_mm / movers,
    )


def _widths(
    out: LayerOut, wanted: dict[Ref, Fraction], plan: _Plan, *, is_patterned: bool
) -> tuple[dict[Ref, Fraction], Split | None]:
    """Widths of each panel: those of panels alike are bought together and parted, others each by itself.

    Half widths stand at the return side. There the pattern meets only if each width is parted between a panel that parks
    on the left and one that parks on the right.
    """
    flats = list(wanted.values())
    count = len(flats)
    if count > 1 and all(abs(flat - flats[0]) <= TOUCH_MM for flat in flats):
        total = widths_of(sum(flats, Fraction(0)), plan.usable_mm)
        parted = split(total, count)
        sides = [panel.side for panel in out.panels]
        if parted is not None and parted.half and is_patterned and 2 * sides.count("left") != count:
            parted = None
        if parted is not None:
            return dict.fromkeys(wanted, total / count), parted
    return {panel.ref: widths_of(wanted[panel.ref], plan.usable_mm) for panel in out.panels}, None


def _panel(
    panel: PanelOut, faces: dict[Ref, float], flat: Fraction, widths: Fraction, plan: _Plan, *, runs_through: bool
) -> PanelCloth:
    face = faces.get(panel.ref)
    overlap = plan.overlap_mm / 2 if len(faces) > 1 else 0.0
    finished = float(finished_width(face, overlap, plan.return_mm)) if face is not None else float(flat) / plan.fullness
    pleats = None
    hemmed = float(flat)
    if not runs_through:
        # Whole widths are pleated away, not cut off: more cloth makes bigger pleats. Where every width counts less what
        # selvedge and seam take, its seams are taken already.
        joins = 0 if plan.convention == "narrower" else max(0, -(-widths // 1) - 1)
        hemmed = float(widths) * plan.usable_mm - 2 * plan.side_hem_mm - joins * 2 * plan.seam_mm
    if plan.heading.is_pleated:
        row = plan.heading
        pleats = pleats_of(
            hemmed,
            finished,
            plan.leading_mm,
            # Without a return the fixed edge is left flat like the leading one (a UK workroom course: sew-helpful.com).
            max(plan.return_mm, plan.leading_mm),
            (row.pleat_low_mm, row.pleat_high_mm),
            (row.space_low_mm, row.space_high_mm),
        )
    return PanelCloth(panel.ref, finished, float(flat), float(widths), pleats, hemmed)


def _length(out: LayerOut, layer: Layer) -> float | None:
    """The longest finished length of the layer, less what it will settle by; None while one is not known."""
    known = [panel.finished_length_mm for panel in out.panels if panel.finished_length_mm is not None]
    if len(known) < len(out.panels) or max(known) <= 0:
        return None
    settles = layer.making.settles.mm if layer.making.settles is not None else 0.0
    return max(max(known) - settles, 1.0)


def cut_of(layer: Layer, long_mm: float, turned_mm: float, hem_mm: float, graduation_mm: float) -> Fraction:
    """A cut of a layer's cloth before whole repeats and any wash, mm: so long, with what is turned in and hemmed."""
    cut = cut_length(long_mm, turned_mm, hem_mm)
    if layer.fabric.repeat is None:
        # Of patterned cloth the repeats say where it is cut: a hair must not take another one.
        cut = to_mark(cut, graduation_mm)
    return cut


def before_wash(along_mm: Fraction, layer: Layer, trade: Trade) -> Fraction:
    """So much along the bolt as it is bought: cloth that is washed before it is cut is longer by what the wash takes.

    Other cloth shrinks on the rod. Cloth on its side loses of what becomes its width, not of its drop.
    """
    return cut_length(float(along_mm), 0.0, 0.0, shrinks_of(layer.fabric, trade)) if layer.making.washed_first else along_mm


def turned_in_mm(layer: Layer, heading: HeadingRow) -> float:
    """Cloth turned in at the heading: typed, else the heading's own."""
    return _typed(layer.making.heading, heading.turned_in_mm)


def hem_mm(layer: Layer, long_mm: float, trade: Trade) -> float:
    """Cloth of the hem, all its turns: typed, else what is usual for sheers, for short panels and for others."""
    more = trade.allowances
    if layer.fabric.body == "sheer":
        usual = more["hem-sheer"].length_mm
    else:
        usual = more["hem-short" if long_mm <= more["short-panel"].length_mm else "hem"].length_mm
    return _typed(layer.making.hem, usual)


def _typed(length: Length | None, usual_mm: float) -> float:
    return usual_mm if length is None else length.mm


def bolt_through(through_mm: Fraction, cut: Fraction, fabric: Fabric, step_mm: float, trade: Trade) -> Bolt:
    """Cloth on its side: so much of it runs through, and each drop lies across it."""
    total = float(through_mm)
    return Bolt(bolt_mm(fabric, trade), 0.0, float(cut), total, float(sold(through_mm, step_mm)), plain_mm=float(cut))


def bolt_upright(widths: Fraction, cut: Fraction, fabric: Fabric, usable_mm: float, step_mm: float) -> Bolt:
    """Cloth as it comes: so many widths of one cut, each of whole repeats, and what a half drop adds."""
    repeat = 0.0 if fabric.repeat is None else fabric.repeat.mm
    patterned = to_repeat(cut, repeat)
    cuts = int(-(-widths // 1))
    extra = drop_match(cut, patterned, repeat, cuts) if fabric.half_drop else Fraction(0)
    total = cuts * patterned + extra
    return Bolt(
        usable_mm, float(widths), float(patterned), float(total), float(sold(total, step_mm)), float(extra), float(cut)
    )


def _lining(
    row_id: str | None,
    wanted: dict[Ref, Fraction],
    long_mm: float,
    step_mm: float,
    plan: _Plan,
    graduation_mm: float,
    trade: Trade,
) -> Bolt | None:
    """Lining: narrower than the face, its hem turned twice and ending above the face's."""
    row, more = _row(row_id, trade), trade.allowances
    if row is None:
        return None
    narrower = more["lining-narrower"].length_mm
    cut = to_mark(cut_length(long_mm, 0.0, more["lining-hem"].length_mm - more["lining-up"].length_mm), graduation_mm)
    return _plain(row, _narrower(wanted.values(), narrower, plan.seam_mm), cut, step_mm)


def _interlining(
    row_id: str | None,
    wanted: dict[Ref, Fraction],
    long_mm: float,
    step_mm: float,
    plan: _Plan,
    graduation_mm: float,
    trade: Trade,
) -> Bolt | None:
    """Interlining: as wide as the face without its hems, as long as it is finished, turned in nowhere."""
    row = _row(row_id, trade)
    if row is None:
        return None
    cut = to_mark(exact(long_mm), graduation_mm)
    return _plain(row, _narrower(wanted.values(), 2 * plan.side_hem_mm, plan.seam_mm), cut, step_mm)


def _narrower(flats: Iterable[Fraction], narrower_mm: float, least_mm: float) -> list[Fraction]:
    """Flat width of lining or interlining for each panel: narrower than its face by so much, but something."""
    return [max(flat - exact(narrower_mm), exact(least_mm)) for flat in flats]


def _plain(row: FabricRow, flats: list[Fraction], cut: Fraction, step_mm: float) -> Bolt:
    widths = widths_of(sum(flats, Fraction(0)), row.width_mm)
    total = int(-(-widths // 1)) * cut
    return Bolt(
        row.width_mm,
        float(widths),
        float(cut),
        float(total),
        float(sold(total, step_mm)),
        plain_mm=float(cut),
        each_mm=tuple(float(flat) for flat in flats),
    )
