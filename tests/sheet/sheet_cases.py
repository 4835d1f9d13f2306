"""Walls for the sheet tests: the demo rooms and random ones, set out and judged."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from elevation.findings.all_rules import find
from elevation.findings.model import Finding, Scene
from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.room.model import Room, Wall
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.annotation import Annotation, lay_annotation
from elevation.sheet.annotation.model import overlap
from elevation.trade.model import Trade
from elevation.trade.tables import load_trade

Case = tuple[Room, SetOut, tuple[Finding, ...]]


@lru_cache(maxsize=1)
def trade() -> Trade:
    return load_trade()


def case_of(room: Room, wall: Wall, scheme_id: str | None) -> Case:
    set_out = set_out_afresh(room, wall.id, scheme_id, trade())
    return room, set_out, find(Scene(room, set_out, trade()))


def demo_cases() -> Iterator[Case]:
    for path in sorted(demo_rooms().glob("*.room.json")):
        room = load_room(path)
        for wall in room.walls:
            for scheme_id in [scheme.id for scheme in wall.schemes] or [None]:
                yield case_of(room, wall, scheme_id)


def demo_case(name: str, scheme: int = 0) -> Case:
    room = load_room(next(demo_rooms().glob(f"*{name}*.room.json")))
    wall = room.walls[0]
    return case_of(room, wall, wall.schemes[scheme].id)


def lay(case: Case, scale: float) -> Annotation:
    room, set_out, findings = case
    return lay_annotation(set_out, findings, style_for(room), scale, room=room, key_table=False)


def overlapping(annotation: Annotation) -> list[tuple[str, str]]:
    """Pairs of labels that share paper."""
    pairs = []
    labels = sorted(annotation.labels, key=lambda label: label[0])
    for place, (box, text, _) in enumerate(labels):
        for other, other_text, _ in labels[place + 1 :]:
            if other[0] > box[2]:
                break
            if overlap(box, other, 1e-6):
                pairs.append((text, other_text))
    return pairs
