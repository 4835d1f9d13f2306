"""Which treatments cannot be built as drawn: every sheet of theirs carries a band, and their drilling sheet is withheld."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Finding, Weight
from elevation.room.model import Ref


def stopped(findings: Iterable[Finding]) -> dict[Ref, tuple[Finding, ...]]:
    """The stops of each treatment that has any.

    Parameters
    ----------
    findings : iterable of Finding
        Of one wall in one scheme.

    Returns
    -------
    dict
        From a treatment's ref (wall, scheme, treatment) to its stops, in their order. A stop about something that no
        treatment owns (an opening) is left out: it forbids nothing to be drilled.
    """
    found: dict[Ref, tuple[Finding, ...]] = {}
    for finding in findings:
        if finding.weight is Weight.STOP and len(finding.subject) >= 3:
            treatment = finding.subject[:3]
            found[treatment] = (*found.get(treatment, ()), finding)
    return found
