"""What stands across a sheet of which something must not be built as drawn."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.findings.model import Finding, Weight
from elevation.setting_out.model import SetOut
from elevation.sheet.facts import title_of
from elevation.words import Style, msg, say


def stop_text(walls: Sequence[SetOut], findings: Sequence[Finding], style: Style) -> str:
    """The band's words for the treatments of some walls that a *stop* is about; empty for none."""
    stops = [finding.subject[:3] for finding in findings if finding.weight is Weight.STOP]
    names = [title_of(one, style) for wall in walls for one in wall.treatments if one.ref in stops]
    return say(msg("Stop: do not build as drawn — {names}", names=", ".join(names)), style) if names else ""
