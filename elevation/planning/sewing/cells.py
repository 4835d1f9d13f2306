"""Widths of cloth shared out to panels: whole ones, and halves that a left and a right panel share."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.piece_names import PanelName
from elevation.planning.sewing.model import CutPiece
from elevation.setting_out.cloth import Bolt, PanelCloth
from elevation.units.tolerance import TOUCH_MM


class Cell(Struct, frozen=True):
    """One cut of the bolt: a piece, or two halves side by side; whether it starts half a repeat further on."""

    pieces: tuple[CutPiece, ...]
    is_shifted: bool


def cells_of(
    panels: Sequence[PanelCloth], face: Bolt, names: Sequence[PanelName], sides: Sequence[str], drop_mm: float
) -> tuple[Cell, ...]:
    """The cuts of one layer.

    Parameters
    ----------
    panels : sequence of PanelCloth
    face : Bolt
        Upright.
    names : sequence of PanelName
    sides : sequence of str
        Of the panels, in their order: which way the fixed edge lies.
    drop_mm : float
        The repeat of a pattern that steps by half of it from width to width; 0: it does not.

    Notes
    -----
    Pieces are counted from the leading edge, where every panel starts alike; a half stands last, at the return. Cut down
    the middle, a width's right half joins by its selvedge to the left panel, its left half to the right panel, so the
    pattern goes on over the seam.
    """
    slack = face.cut_mm - face.plain_mm
    cells: list[Cell] = []
    halves: list[tuple[str, CutPiece, bool]] = []
    for panel, name, side in zip(panels, names, sides, strict=True):
        whole = int(panel.widths)
        count = whole + (panel.widths > whole)
        for index in range(count):
            is_shifted = drop_mm > 0 and index % 2 == 1
            # Without half a repeat of its own to skip, a shifted piece begins half a repeat into its cut.
            top = drop_mm / 2 if is_shifted and face.extra_mm <= 0 else 0.0
            share = 1.0 if index < whole else 0.5
            piece = CutPiece(
                name,
                index + 1,
                count,
                face.cut_mm,
                share * face.usable_mm,
                top,
                max(slack - top, 0.0) if slack > TOUCH_MM else 0.0,
                share,
                "" if share == 1.0 else side,
                drop_mm / 2 if is_shifted else 0.0,
            )
            if share == 1.0:
                cells.append(Cell((piece,), is_shifted))
            else:
                halves.append((side, piece, is_shifted))
    cells.extend(_shared(halves))
    return tuple(cells)


def _shared(halves: Sequence[tuple[str, CutPiece, bool]]) -> list[Cell]:
    """Halves two and two: a right panel's before a left panel's, so that each keeps the selvedge it is joined by."""
    right = [half for half in halves if half[0] == "right"]
    left = [half for half in halves if half[0] != "right"]
    ordered = [half for pair in zip(right, left, strict=False) for half in pair]
    fewer = min(len(left), len(right))
    ordered += right[fewer:] + left[fewer:]
    return [Cell(tuple(piece for _, piece, _ in ordered[at : at + 2]), ordered[at][2]) for at in range(0, len(ordered), 2)]
