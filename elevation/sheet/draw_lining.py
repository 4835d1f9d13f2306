"""What is seen of a lining: the leading edge turns a little toward the room and shows it as a narrow strip."""

from __future__ import annotations

from elevation.setting_out.model import PanelOut
from elevation.sheet.cloth import Tones
from elevation.sheet.draw_drape import Drape
from elevation.sheet.inks import blend
from elevation.sheet.paths import polygon
from elevation.sheet.records import Fill, Path, Pen, Record

WIDEST_MM = 14.0
"""So wide a strip shows at most, a twelfth of the drawn panel where that is less (common practice, no source)."""

_TONE = "#eee6d6"
_PART = 1 / 12
_FROM = 0.3
"""The heading holds the edge flat; the strip is at its full width this part of the drop below."""


def lining_records(panel: PanelOut, drape: Drape, up_mm: float) -> tuple[Record, ...]:
    """The strip along a lined panel's leading edge, and the line round it.

    Parameters
    ----------
    panel : PanelOut
    drape : Drape
        As it hangs.
    up_mm : float
        How far above the face's hem the lining ends (the allowance ``lining-up``).

    Returns
    -------
    tuple of Record
        Nothing where the panel hangs too short to show it.
    """
    is_right = panel.side == "left"
    edge, way = (drape.right_mm, -1.0) if is_right else (drape.left_mm, 1.0)
    low = drape.foot[-1 if is_right else 0] + drape.lift_mm + up_mm
    drop = drape.top_mm - low
    if drop <= up_mm:
        return ()
    inner = edge + way * min(WIDEST_MM, (drape.right_mm - drape.left_mm) * _PART)
    full = drape.top_mm - _FROM * drop
    seam = ((edge, drape.top_mm - drape.dip_mm), (inner, full), (inner, low))
    outline = polygon((*seam, (edge, low)))
    return (
        Fill(outline, _shaded(drape.tones)),
        # Drawn round, or a pale strip on a pale wall would pass for wall.
        Path(outline, Pen(drape.tones.edge, 0.2)),
    )


def _shaded(tones: Tones) -> str:
    """A lining is pale; the little that is seen lies in the shade of the face and takes of its colour."""
    return blend(_TONE, tones.hollow, 0.24)
