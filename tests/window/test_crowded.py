"""A wall with much wrong on it, and names longer than a panel is wide: what is drawn stays readable."""

from __future__ import annotations

from msgspec.structs import replace
from PySide6.QtWidgets import QApplication

from elevation.room.edits import replace_rod
from elevation.room.model import Held
from elevation.units import Length
from elevation.window.breakable import breakable
from elevation.window.canvas_picture import MOST_MARKED
from tests.window.conftest import demo

LONG = "Donaudampfschifffahrtsgesellschaftskapitänsmütze"


def test_a_long_word_may_be_broken_and_reads_the_same():
    text = breakable(f"The {LONG} by the window")
    assert max(len(part) for word in text.split() for part in word.split("\N{ZERO WIDTH SPACE}")) <= 17
    assert text.replace("\N{ZERO WIDTH SPACE}", "") == f"The {LONG} by the window"
    assert breakable("Blackout curtain towards the street") == "Blackout curtain towards the street"


def test_a_long_name_is_read_whole_in_the_proportions(make_window):
    room = demo("2-living-room.room.json")
    wall = room.walls[0]
    scheme = wall.schemes[0]
    named = replace(scheme, treatments=tuple(replace(one, name=LONG) for one in scheme.treatments))
    room = replace(room, walls=(replace(wall, schemes=(named, *wall.schemes[1:])), *room.walls[1:]))
    window = make_window(room)
    QApplication.processEvents()
    drawer = window.drawers[4]
    assert drawer.content.width() <= drawer.area.viewport().width()


def test_only_the_heaviest_findings_are_marked_on_the_wall(make_window):
    window = make_window(demo("6-hall.room.json"))
    session = window.session
    room, wall_id = session.committed, session.wall_id
    scheme = next(one for wall in room.walls if wall.id == wall_id for one in wall.schemes)
    for treatment in scheme.treatments:
        ref = (wall_id, scheme.id, treatment.id, treatment.layers[0].id)
        end = Held("beyond-opening", Length(0.0, "0 mm"))
        room = replace_rod(room, ref, height=Held("above-casing", Length(-25.4, "-1 in")), left=end, right=end)
    window.canvas.preview(room)
    findings = session.pipeline.findings_of(room, wall_id, scheme.id)
    assert len(findings) > MOST_MARKED
    annotation = window.canvas.picture._annotation(
        room, session.pipeline.set_out_of(room, wall_id, scheme.id), findings, window.canvas.viewport
    )
    assert sum(rung == "mark" for _, _, rung in annotation.labels) <= MOST_MARKED
