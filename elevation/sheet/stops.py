"""What stands across a sheet of which something must not be built as drawn."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.findings.model import Finding, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.facts import title_of
from elevation.sheet.furniture import STOP_MARGINS, STOP_TYPE
from elevation.sheet.type_metrics import text_width
from elevation.words import Style, msg, say


def stop_text_within(stopped: Sequence[TreatmentOut], style: Style, width_mm: float) -> str:
    """The band's words for treatments of one wall, in ``width_mm`` of paper.

    Where their own names need more, they are called by the openings they cover, so that none is cut off unread.
    """
    named = ", ".join(title_of(laid, style) for laid in stopped)
    text = say(msg("Stop: do not build as drawn — {names}", names=named), style)
    if text_width(text, STOP_TYPE, "semibold") <= width_mm - STOP_MARGINS:
        return text
    numbered = ", ".join(say(where(laid), style) for laid in stopped)
    return say(msg("Stop: do not build as drawn — {names}", names=numbered), style)


def stop_text(walls: Sequence[SetOut], findings: Sequence[Finding], style: Style) -> str:
    """The band's words for the treatments of some walls that a *stop* is about; empty for none."""
    stops = [finding.subject[:3] for finding in findings if finding.weight is Weight.STOP]
    names = [title_of(one, style) for wall in walls for one in wall.treatments if one.ref in stops]
    return say(msg("Stop: do not build as drawn — {names}", names=", ".join(names)), style) if names else ""
