"""The openings of a wall that were measured in several places."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import wall_of_scene
from elevation.findings.model import Scene
from elevation.room.model import Opening
from elevation.room.readings import NOTHING
from elevation.setting_out.model import OpeningOut


def measured(scene: Scene) -> Iterator[tuple[Opening, OpeningOut]]:
    """Each opening with readings, as measured and where it stands."""
    out_of = None
    for opening in wall_of_scene(scene).openings:
        if opening.taken is NOTHING or opening.taken == NOTHING:
            continue
        if out_of is None:
            out_of = {out.ref[1]: out for out in scene.set_out.openings}
        yield opening, out_of[opening.id]
