"""The part of the sewing sheet about a valance: the cloth flat and to scale, then what is done to it."""

from __future__ import annotations

from elevation.planning.sewing.valances import HungValance, valance_steps
from elevation.sheet.work.hanging import step_parts
from elevation.sheet.work.page import Part
from elevation.sheet.work.parts import gap, heading
from elevation.sheet.work.sewing_marks import Fit
from elevation.sheet.work.sewing_panel import Band, Flat, flat_titles, panel_parts
from elevation.trade.model import Trade
from elevation.words import Mm, Style, msg, say


def valance_parts(one: HungValance, width: float, style: Style, trade: Trade, fit: Fit) -> list[Part]:
    """Everything about one valance.

    Parameters
    ----------
    one : HungValance
    width : float
        Room on the page.
    style : Style
    trade : Trade
    fit : Fit
    """
    return [
        heading(say(msg("Valance to sew"), style), width),
        *panel_parts([valance_flat(one, trade.allowances["seam"].length_mm, style)], width, style, fit.high),
        gap(1.0),
        *step_parts(valance_steps(one, trade), width, style),
    ]


def valance_flat(one: HungValance, seam_mm: float, style: Style) -> Flat:
    """A valance as it lies joined and hemmed at its ends, not yet turned at top and lower edge; piece 1 at the left."""
    cloth = one.cloth
    bands = (
        Band(cloth.turned_mm, cloth.turned_mm, "turned", "fold"),
        Band(cloth.depth_mm, cloth.depth_mm, "cloth", "fold"),
        Band(cloth.hem_mm, cloth.hem_mm, "turned"),
    )
    count = int(cloth.widths)
    # The first and the last width lose an end hem and a seam, those between them two seams.
    first = cloth.face.usable_mm - cloth.side_hem_mm - seam_mm
    whole = first + max(count - 2, 0) * (cloth.face.usable_mm - 2 * seam_mm) + first
    seams = [first + at * (cloth.face.usable_mm - 2 * seam_mm) for at in range(count - 1)]
    return Flat(
        width_mm=cloth.hemmed_mm,
        bands=bands,
        leading="",
        seams_mm=tuple(seam / whole * cloth.hemmed_mm for seam in seams),
        pieces=tuple(str(number) for number in range(1, count + 1)) if count > 1 else (),
        titles=flat_titles(one.name, cloth.hemmed_mm, cloth.finished_mm, Mm(cloth.face.plain_mm, about=True), style),
    )
