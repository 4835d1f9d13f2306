"""What ``check`` reports: one wall in one scheme as plain data (the ``elevation-check`` contract) or as text."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from elevation.findings.model import Finding
from elevation.findings.unknowns import unknowns
from elevation.planning.ready_words import Ready
from elevation.planning.remedies import Remedies
from elevation.room.model import Ref
from elevation.setting_out.carried import HoldOut
from elevation.setting_out.cloth import Bolt, LayerCloth
from elevation.setting_out.model import (
    BlindOut,
    BoardOut,
    BracketOut,
    ClearancesOut,
    GlassOut,
    LayerOut,
    PanelOut,
    PelmetOut,
    SetOut,
    TieOut,
    TreatmentOut,
)
from elevation.setting_out.tilt import axis_at
from elevation.setting_out.valance import ValanceCloth
from elevation.trade.pleats import Pleats
from elevation.words import Style
from elevation.words.say import say

Plain = dict[str, object]

# Written to 0.001 mm: finer than any tape, and free of the last bits of floating point.
_PLACES = 3


def _mm(value: float | None) -> float | None:
    return None if value is None else round(value, _PLACES) + 0.0


def _force(value: float | None) -> float | None:
    return None if value is None else round(value, _PLACES) + 0.0


def _share(value: float) -> float:
    return round(value, 6) + 0.0


def subject_text(ref: Ref) -> str:
    """A Ref as text: ids from the wall down, joined by slashes."""
    return "/".join(ref)


def _bracket(bracket: BracketOut) -> Plain:
    return {
        "id": bracket.ref[-1],
        "x_mm": _mm(bracket.x_mm),
        "height_mm": _mm(bracket.height_mm),
        "rings_pass": bracket.rings_pass,
        "load_n": _force(bracket.load_n),
        "uplift_n": _force(bracket.uplift_n),
        "fixing": bracket.fixing,
        "holds_times": None if bracket.holds_times is None else round(bracket.holds_times, _PLACES),
    }


def _end(held: HoldOut | None) -> Plain | None:
    """What holds an end that carries the rod; null for one that carries nothing."""
    if held is None:
        return None
    return {
        "fixing": held.fixing,
        "holds_times": None if held.times is None else round(held.times, _PLACES),
        "why": held.why,
    }


def _board(board: BoardOut) -> Plain:
    return {
        "left_mm": _mm(board.left_mm),
        "right_mm": _mm(board.right_mm),
        "bottom_mm": _mm(board.bottom_mm),
        "top_mm": _mm(board.top_mm),
        "thick_mm": _mm(board.thick_mm),
        "fixing": "" if board.held is None else board.held.fixing,
        "holds_times": None if board.held is None or board.held.times is None else round(board.held.times, _PLACES),
    }


def _panel(panel: PanelOut) -> Plain:
    return {
        "id": panel.ref[-1],
        "flat_width_mm": _mm(panel.flat_width_mm),
        "finished_length_mm": _mm(panel.finished_length_mm),
        "parks_at_mm": _mm(panel.parks_at_mm),
        "travel_from_mm": _mm(panel.travel[0]),
        "travel_to_mm": _mm(panel.travel[1]),
        "rings": panel.rings,
        "closed_width_mm": _mm(panel.closed[1] - panel.closed[0]),
        "fullness": None if panel.fullness is None else _share(panel.fullness),
        "stack_mm": _mm(panel.stack_mm),
        "stack_low_mm": _mm(panel.stack_low_mm),
        "stack_high_mm": _mm(panel.stack_high_mm),
        "fold_depth_mm": _mm(panel.fold_depth_mm),
        "mass_kg": _mm(panel.mass_kg),
        "length_by": panel.length_by,
        "tie": None if panel.tie is None else _tie(panel.tie),
        "round_corner_open_mm": _mm(panel.on_open_mm),
        "round_corner_closed_mm": _mm(panel.on_mm),
    }


def _guest(guest: PanelOut) -> Plain:
    """What of a panel of another wall comes before this one, in this wall's own mm."""
    return {
        "panel": subject_text(guest.ref),
        "open_from_mm": _mm(guest.open[0]),
        "open_to_mm": _mm(guest.open[1]),
        "closed_from_mm": _mm(guest.closed[0]),
        "closed_to_mm": _mm(guest.closed[1]),
        "drawn_from_mm": _mm(guest.drawn[0]),
        "drawn_to_mm": _mm(guest.drawn[1]),
        "hem_to_floor_low_mm": _mm(guest.gap_low_mm),
        "hem_to_floor_high_mm": _mm(guest.gap_high_mm),
    }


def _tie(tie: TieOut) -> Plain:
    return {
        "kind": "loop" if tie.is_loop else "arm",
        "hook_x_mm": _mm(tie.hook[0]),
        "height_mm": _mm(tie.hook[1]),
        "waist_mm": _mm(tie.waist[1] - tie.waist[0]),
        "lifts_hem_mm": _mm(tie.lift_mm),
    }


def _bolt(bolt: Bolt | None) -> Plain | None:
    if bolt is None:
        return None
    return {
        "usable_mm": _mm(bolt.usable_mm),
        "widths": bolt.widths,
        "cut_mm": _mm(bolt.cut_mm),
        "total_mm": _mm(bolt.total_mm),
        "sold_mm": _mm(bolt.sold_mm),
    }


def _pleats(pleats: Pleats | None) -> Plain | None:
    if pleats is None:
        return None
    return {
        "count": pleats.count,
        "take_up_mm": _mm(pleats.take_up_mm),
        "space_mm": _mm(pleats.space_mm),
        "at_mm": [_mm(at) for at in pleats.at_mm],
    }


def cloth_report(cloth: LayerCloth) -> Plain:
    """What a layer takes in cloth, made to measure, as plain data."""
    return {
        "convention": cloth.convention,
        "fullness": _share(cloth.fullness),
        "finished_mm": _mm(cloth.finished_mm),
        "flat_mm": _mm(cloth.flat_mm),
        "finished_length_mm": _mm(cloth.finished_length_mm),
        "railroaded": cloth.railroaded,
        "face": _bolt(cloth.face),
        "lining": _bolt(cloth.lining),
        "interlining": _bolt(cloth.interlining),
        "panels": [
            {
                "id": panel.ref[-1],
                "finished_mm": _mm(panel.finished_mm),
                "flat_mm": _mm(panel.flat_mm),
                "widths": panel.widths,
                "pleats": _pleats(panel.pleats),
            }
            for panel in cloth.panels
        ],
    }


def valance_report(cloth: ValanceCloth) -> Plain:
    """What a valance takes in cloth of the front layer's own, as plain data."""
    return {
        "finished_mm": _mm(cloth.finished_mm),
        "depth_mm": _mm(cloth.depth_mm),
        "flat_mm": _mm(cloth.flat_mm),
        "hemmed_mm": _mm(cloth.hemmed_mm),
        "face": _bolt(cloth.face),
    }


def ready_report(ready: Ready) -> Plain:
    """What ready-made panels would do in a layer, as plain data."""
    return {
        "wished_length_mm": _mm(ready.wished_mm),
        "best": None if ready.best is None else ready.best.row.id,
        "best_over_mm": None if ready.best is None else _mm(ready.best.over_mm),
        "longer": None if ready.longer is None else ready.longer.row.id,
        "longer_rod_height_mm": None if ready.longer is None else _mm(ready.longer.rod_mm),
        "label_off_mm": _mm(ready.off_mm),
        "width": None if ready.width is None else ready.width.row.id,
        "width_count": None if ready.width is None else ready.width.count,
        "width_fullness": None if ready.width is None else round(ready.width.fullness, 4),
    }


def _layer(layer: LayerOut, more: Plain) -> Plain:
    rod = layer.support
    return {
        "id": layer.ref[-1],
        "as_built": layer.is_built,
        "support": {
            "kind": rod.kind,
            "left_mm": _mm(rod.left_mm),
            "right_mm": _mm(rod.right_mm),
            "height_mm": _mm(rod.height_mm),
            "height_left_mm": _mm(axis_at(rod, rod.left_mm)),
            "height_right_mm": _mm(axis_at(rod, rod.right_mm)),
            "length_mm": _mm(rod.length_mm),
            "bend_mm": _mm(rod.bend_mm),
            "cut_length_mm": _mm(rod.cut_length_mm),
            "diameter_mm": _mm(rod.diameter_mm),
            "sag_mm": _mm(rod.sag_mm),
            "sag_limit_mm": _mm(rod.sag_limit_mm),
            "ends": [] if layer.loads is None else [_end(held) for held in layer.loads.held],
        },
        "brackets": [_bracket(bracket) for bracket in layer.brackets],
        "panels": [_panel(panel) for panel in layer.panels],
        "guests": [_guest(guest) for guest in layer.guests],
        **more,
        "board": None if layer.board is None else _board(layer.board),
    }


def _pelmet(pelmet: PelmetOut) -> Plain:
    return {
        "kind": pelmet.kind,
        "left_mm": _mm(pelmet.left_mm),
        "right_mm": _mm(pelmet.right_mm),
        "bottom_mm": _mm(pelmet.bottom_mm),
        "top_mm": _mm(pelmet.top_mm),
        "out_mm": _mm(pelmet.out_mm),
        "top_left_mm": _mm(pelmet.top_mm + pelmet.up_at(pelmet.left_mm)),
        "top_right_mm": _mm(pelmet.top_mm + pelmet.up_at(pelmet.right_mm)),
        "irons_mm": [_mm(x) for x in pelmet.irons_mm],
    }


def _blind(blind: BlindOut) -> Plain:
    return {
        "opening": blind.opening[-1],
        "in_reveal": blind.in_reveal,
        "left_mm": _mm(blind.left_mm),
        "right_mm": _mm(blind.right_mm),
        "bottom_mm": _mm(blind.bottom_mm),
        "top_mm": _mm(blind.top_mm),
        "out_mm": _mm(blind.out_mm),
        "hem_mm": _mm(blind.hem_mm),
        "cord": blind.cord,
    }


def _glass(glass: GlassOut) -> Plain:
    return {
        "area_mm2": round(glass.area_mm2, 1),
        "clear_open": _share(glass.clear_open),
        "clear_closed": _share(glass.clear_closed),
        "clear_as_drawn": _share(glass.clear_drawn),
        "stack_over_glass_left_mm": _mm(glass.stack_over_left_mm),
        "stack_over_glass_right_mm": _mm(glass.stack_over_right_mm),
        "support_to_clear_mm": _mm(glass.support_to_clear_mm),
        "light_blocking_mm": _mm(glass.light_blocking_mm),
    }


def _clearances(clear: ClearancesOut) -> Plain:
    return {
        "above_opening_mm": _mm(clear.above_opening_mm),
        "above_casing_mm": _mm(clear.above_casing_mm),
        "below_ceiling_mm": _mm(clear.below_ceiling_mm),
        "left_of_opening_mm": _mm(clear.left_of_opening_mm),
        "right_of_opening_mm": _mm(clear.right_of_opening_mm),
        "hem_to_floor_low_mm": _mm(clear.hem_to_floor_low_mm),
        "hem_to_floor_high_mm": _mm(clear.hem_to_floor_high_mm),
    }


def _treatment(treatment: TreatmentOut, more: Mapping[Ref, Plain]) -> Plain:
    return {
        "id": treatment.ref[-1],
        "name": treatment.name,
        "openings": [opening.ref[-1] for opening in treatment.openings],
        "goes_on": [None if leg is None else subject_text(leg) for leg in treatment.joined],
        "layers": [_layer(layer, more.get(layer.ref, {})) for layer in treatment.layers],
        "glass": _glass(treatment.glass),
        "clearances": _clearances(treatment.clearances),
        "pelmet": None if treatment.pelmet is None else _pelmet(treatment.pelmet),
        "blinds": [_blind(blind) for blind in treatment.blinds],
    }


def _finding(finding: Finding, remedies: Remedies, style: Style) -> Plain:
    plain: Plain = {
        "rule": finding.rule,
        "weight": finding.weight.value,
        "subject": subject_text(finding.subject),
        "measured_mm": _mm(finding.measured_mm),
        "limit_mm": _mm(finding.limit_mm),
        "authority": say(finding.authority, style),
        "text": say(finding.text, style),
        "remedies": [say(remedy.label, style) for remedy in remedies.offered],
        "none_because": None if remedies.none_because is None else say(remedies.none_because, style),
    }
    if finding.caution is not None:
        plain["caution"] = say(finding.caution, style)
    return plain


def wall_report(
    set_out: SetOut,
    found: Sequence[tuple[Finding, Remedies]],
    style: Style,
    more: Mapping[Ref, Plain] | None = None,
) -> Plain:
    """One wall in one scheme as the plain data of ``check --json``.

    Parameters
    ----------
    set_out : SetOut
    found : sequence of (Finding, Remedies)
        Each finding with what can be offered for it.
    style : Style
        English by contract; the unit is the room's.
    more : mapping or None
        What else is told of each layer, by its Ref: its cloth and ready-made panels.
    """
    return {
        "wall": set_out.wall,
        "scheme": set_out.scheme or "",
        "treatments": [_treatment(treatment, more or {}) for treatment in set_out.treatments],
        "missing": [say(unknown.text, style) for unknown in unknowns(set_out)],
        "findings": [_finding(finding, remedies, style) for finding, remedies in found],
    }


def wall_text(set_out: SetOut, found: Sequence[tuple[Finding, Remedies]], style: Style) -> str:
    """The same as lines of text for a terminal: what stands where, then findings with remedies or why there are none."""
    scheme = set_out.scheme_name or set_out.scheme or "no scheme"
    lines = [f"{set_out.wall_name or set_out.wall}, {scheme}"]
    for finding, remedies in found:
        lines.append(f"  {finding.weight.value:<8} {say(finding.text, style)} [{finding.rule}]")
        lines.append(f"           {say(finding.authority, style)}")
        if finding.caution is not None:
            lines.append(f"           {say(finding.caution, style)}")
        lines += [f"           try: {say(remedy.label, style)}" for remedy in remedies.offered]
        if remedies.none_because is not None:
            lines.append(f"           no remedy: {say(remedies.none_because, style)}")
    lines += [f"  unknown  {say(unknown.text, style)}" for unknown in unknowns(set_out)]
    if not found:
        lines.append("  nothing is broken")
    return "\n".join(lines) + "\n"
