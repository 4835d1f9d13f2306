"""What stands in and on the wall: kinds of openings and obstacles, and what the wall itself is."""

from __future__ import annotations

from functools import partial
from typing import Any

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QToolButton, QVBoxLayout, QWidget

from elevation.errors import ElevationError
from elevation.room.edits import edit_at, remove
from elevation.room.find import wall_of
from elevation.room.model import Head, Obstacle, Opening, Ref, Room, Wall
from elevation.room.validate import check_room
from elevation.session.session import Session
from elevation.trade.model import Trade
from elevation.units import format_length
from elevation.window.choice import Choice
from elevation.window.cloth_facts import convention_fact
from elevation.window.end_facts import end_facts
from elevation.window.fact_form import Fact, FactForm
from elevation.window.holds_facts import tug_fact
from elevation.window.limit_facts import limit_facts
from elevation.window.made_of import substrate_facts, wiring_facts
from elevation.window.measurements import error_sentence
from elevation.window.standing_edits import more_floor, more_obstacle, more_opening, with_stool
from elevation.window.texts import tr
from elevation.words import Message, msg

KINDS = {"window": msg("window"), "door": msg("door"), "sliding-door": msg("sliding door")}
HEADS = {
    "flat": msg("flat"), "segmental": msg("an arch (segment)"), "half-round": msg("half round"), "raked": msg("raked"),
}  # fmt: skip
SASHES = {
    "fixed": msg("fixed"), "double-hung": msg("slides up and down"), "sliding": msg("slides sideways"),
    "casement-in": msg("swings in"), "casement-out": msg("swings out"), "tilt-in": msg("tilts in"),
    "swing-in": msg("door swings in"), "swing-out": msg("door swings out"),
}  # fmt: skip
HINGES = {"left": msg("left"), "right": msg("right"), "both": msg("both sides")}
OBSTACLES = {
    "outlet": msg("outlet"), "switch": msg("switch"), "light": msg("wall light"),
    "hot-water-radiator": msg("hot-water radiator"),
    "electric-heater": msg("electric heater"), "fan-heater": msg("fan heater"), "portable-heater": msg("portable heater"),
    "flame-heater": msg("flame heater"), "floor-register": msg("floor register"), "wall-register": msg("wall register"),
    "smoke-alarm": msg("smoke alarm"), "shelf": msg("shelf"), "furniture": msg("furniture"), "picture": msg("picture"),
    "pipe": msg("pipe"), "door-swing": msg("reach of another door"),
}  # fmt: skip
LANGUAGES = {"en": msg("English"), "de": msg("German")}
UNITS = {"in": msg("inches"), "mm": msg("millimetres")}
LIMITS: Ref = ("", "limits")
"""What is chosen to see the limits of the rules: nothing that stands on the wall."""


def offered(texts: dict[str, Message]) -> tuple[tuple[str, str], ...]:
    """Options for a choice."""
    return tuple((key, tr(text)) for key, text in texts.items())


class StandingPanel(QWidget):
    """One thing at a time: the wall, an opening or an obstacle."""

    lit = Signal(object, str)
    refused = Signal(str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._ref: Ref = ()
        self._refs: list[Ref] = []
        self._seen: tuple[object, ...] = ()
        self.which = Choice(tr(msg("What stands there")))
        self.which.chosen.connect(self._switch)
        self.form = FactForm(session, self)
        self.form.lit.connect(self.lit)
        self.form.refused.connect(self.refused)
        buttons = QWidget(self)
        row = QGridLayout(buttons)
        row.setContentsMargins(0, 4, 0, 0)
        row.setSpacing(4)
        self.add_opening = self._button(buttons, msg("+ opening"), msg("Add an opening at the right"))
        self.add_obstacle = self._button(buttons, msg("+ obstacle"), msg("Add an obstacle"))
        self.add_floor = self._button(buttons, msg("+ floor point"), msg("Add a point where the floor was measured"))
        self.drop = self._button(buttons, msg("− this"), msg("Take this away"))
        self.add_opening.clicked.connect(self._add_opening)
        self.add_obstacle.clicked.connect(self._add_obstacle)
        self.add_floor.clicked.connect(self._add_floor)
        self.drop.clicked.connect(self._drop)
        for place, button in enumerate((self.add_opening, self.add_obstacle, self.add_floor, self.drop)):
            row.addWidget(button, place // 2, place % 2)
        row.setColumnStretch(2, 1)
        box = QVBoxLayout(self)
        box.setContentsMargins(8, 6, 8, 8)
        box.setSpacing(3)
        # Before the form: to add something one need not scroll past everything that is there.
        for widget in (self.which, buttons, self.form):
            box.addWidget(widget)
        box.addStretch(1)

    def _button(self, parent: QWidget, text: Message, tip: Message) -> QToolButton:
        button = QToolButton(parent)
        button.setText(tr(text))
        button.setToolTip(tr(tip))
        button.setAccessibleName(tr(tip))
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        return button

    @property
    def ref(self) -> Ref:
        """What is shown."""
        return self._ref

    def refresh(self) -> None:
        """Show what is selected, if it stands here; else what was shown before."""
        if not self._session.wall_id:
            return
        room = self._session.room
        wall = wall_of(room, self._session.wall_id)
        ids = [*(opening.id for opening in wall.openings), *(obstacle.id for obstacle in wall.obstacles)]
        self._refs = refs = [(wall.id,), *((wall.id, key) for key in ids), LIMITS]
        picked = self._session.selection
        if picked is not None and picked[:2] in refs[1:]:
            self._ref = picked[:2]
        if self._ref not in refs:
            self._ref = refs[0]
        seen = (
            room.name,
            room.unit,
            room.language,
            room.graduation,
            room.floor_to_come,
            room.one_height,
            room.fullness_rule,
            room.tug_kg,
            room.sleeping,
            room.children,
            room.no_holes,
            room.wiring,
            room.limits,
            tuple((other.id, other.name) for other in room.walls),
            wall,
            self._ref,
        )
        if len(seen) == len(self._seen) and all(a is b or a == b for a, b in zip(seen, self._seen, strict=True)):
            return
        self._seen = seen
        names = [tr(msg("The room and this wall"))]
        names += [
            tr(msg("Opening {number}: {kind}", number=number, kind=KINDS[opening.kind]))
            for number, opening in enumerate(wall.openings, 1)
        ]
        names += [_obstacle_name(obstacle) for obstacle in wall.obstacles]
        names.append(tr(msg("The limits of the rules")))
        self.which.offer([("/".join(ref), name) for ref, name in zip(refs, names, strict=True)], "/".join(self._ref))
        self.form.show_facts(_facts(room, wall, self._ref, self._session.trade))
        self.drop.setEnabled(self._is_thing())

    def show_field(self, ref: Ref, field: str) -> bool:
        """Put the keyboard on a fact of the wall or of what stands there; False where there is none."""
        if ref != self._ref and ref in self._refs:
            self._switch("/".join(ref))
        return self.form.show_field(ref, field)

    def _switch(self, key: str) -> None:
        self._ref = tuple(key.split("/"))
        self._session.selection = self._ref if self._is_thing() else None
        self.refresh()

    def _is_thing(self) -> bool:
        return len(self._ref) == 2 and self._ref != LIMITS

    def _add_opening(self) -> None:
        self._add(more_opening, msg("Add an opening"))

    def _add_obstacle(self) -> None:
        self._add(more_obstacle, msg("Add an obstacle"))

    def _add_floor(self) -> None:
        self._add(more_floor, msg("Add a floor point"))

    def _add(self, edit: Any, label: Message) -> None:
        try:
            room, ref = edit(self._session.committed, self._session.wall_id)
            check_room(room, "")
        except ElevationError as error:
            self.refused.emit(error_sentence(error))
            return
        self.refused.emit("")
        self._ref = ref[:2]
        self._session.commit(room, label, ref)
        self._session.selection = ref if len(ref) == 2 else None

    def _drop(self) -> None:
        ref = self._ref
        self._ref = ref[:1]
        self._session.commit(remove(self._session.committed, ref), msg("Take it away"), ref[:1])


def _obstacle_name(obstacle: Obstacle) -> str:
    kind = tr(OBSTACLES[obstacle.kind])
    return tr(msg("{name} ({kind})", name=obstacle.name, kind=kind)) if obstacle.name else kind


def _facts(room: Room, wall: Wall, ref: Ref, trade: Trade) -> tuple[Fact, ...]:
    if ref == LIMITS:
        return limit_facts(room, trade)
    if len(ref) == 1:
        return _wall_facts(room, ref, wall, trade)
    for opening in wall.openings:
        if opening.id == ref[1]:
            return _opening_facts(ref)
    return (
        Fact(ref, "kind", msg("kind"), "choice", offered(OBSTACLES)),
        Fact(ref, "name", msg("name"), "text"),
    )


def _wall_facts(room: Room, ref: Ref, wall: Wall, trade: Trade) -> tuple[Fact, ...]:
    mark = tr(msg("= {figure}", figure=format_length(room.graduation_mm, room.unit, room.graduation_mm, plain=True)))
    return (
        Fact((), "name", msg("room"), "text"),
        Fact((), "unit", msg("bare figures are"), "choice", offered(UNITS)),
        Fact((), "graduation", msg("smallest mark of the tape"), hint="" if room.graduation is not None else mark),
        Fact((), "language", msg("language of the sheets"), "choice", offered(LANGUAGES)),
        Fact((), "sleeping", msg("somebody sleeps here"), "flag"),
        Fact((), "children", msg("children or pets may pull"), "flag"),
        tug_fact(),
        Fact((), "no_holes", msg("no holes allowed"), "flag"),
        Fact((), "one_height", msg("rods of all walls at one height"), "flag"),
        convention_fact(),
        Fact((), "floor_to_come", msg("floor still to be laid, thickness")),
        *wiring_facts(),
        Fact(ref, "name", msg("this wall"), "text"),
        *substrate_facts(ref, wall, trade),
        *end_facts(room, wall),
    )


def _opening_facts(ref: Ref) -> tuple[Fact, ...]:
    return (
        Fact(ref, "kind", msg("kind"), "choice", offered(KINDS)),
        Fact(ref, "head.kind", msg("head"), "choice", offered(HEADS), edit=partial(_set_head, ref)),
        Fact(ref, "sash.kind", msg("how it opens"), "choice", offered(SASHES)),
        Fact(ref, "sash.hinge", msg("hinged at the"), "choice", offered(HINGES)),
        Fact(ref, "columns", msg("lites across"), "count"),
        Fact(ref, "rows", msg("lites up"), "count"),
        Fact(ref, "stool", msg("a stool at the sill"), "flag", edit=partial(with_stool, ref)),
        Fact(ref, "escape", msg("the window to climb out of"), "flag"),
        Fact(ref, "shutter_box", msg("roller shutter's box over the head, height")),
    )


def _set_head(ref: Ref, room: Room, kind: Any) -> Room:
    def shape(opening: Opening) -> Opening:
        half = opening.width.mm / 2
        # A new arch starts as one that can be, and is measured after.
        rise = replace(opening.width, mm=half / 2, text=f"{half / 2:g} mm") if kind == "segmental" else None
        right = opening.height if kind == "raked" else None
        return replace(opening, head=Head(kind, rise, right))

    made = edit_at(room, ref, shape)
    check_room(made, "")
    return made
