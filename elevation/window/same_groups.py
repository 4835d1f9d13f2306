"""Groups made anew that are equal to those before give the old objects, so that nothing is compiled twice."""

from __future__ import annotations

from elevation.sheet.records import Group


def same_where_equal(groups: tuple[Group, ...], before: tuple[Group, ...]) -> tuple[Group, ...]:
    """New groups, but the old object wherever it is equal, so that nothing is compiled twice."""
    known = {(group.layer, group.ref): group for group in before}
    return tuple(
        old if (old := known.get((group.layer, group.ref))) is not None and old == group else group for group in groups
    )
