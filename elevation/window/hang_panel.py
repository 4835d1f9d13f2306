"""What hangs: cloth, heading, panels, hem, rod, ends and brackets of one layer."""

from __future__ import annotations

from functools import partial
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from elevation.errors import ElevationError
from elevation.room.edits import remove
from elevation.room.find import scheme_of, wall_of
from elevation.room.model import Layer, Ref, Room, Treatment, Wall
from elevation.room.validate import check_room
from elevation.session.session import Session
from elevation.trade.model import Trade
from elevation.window.drawer import Choice
from elevation.window.fact_form import Fact, FactForm
from elevation.window.hang_edits import (
    add_bracket,
    add_panel,
    add_treatment,
    cover,
    is_covered,
    remove_last,
    rename_colour,
)
from elevation.window.holding import END_HOLDS, HEIGHT_HOLDS, hold_end, hold_height
from elevation.window.made_of import drilling_caution
from elevation.window.measurements import error_sentence
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import Message, msg

_BODIES = {
    "sheer": msg("sheer"), "light": msg("light"), "medium": msg("medium"), "lined": msg("lined"),
    "interlined": msg("interlined"),
}  # fmt: skip
_HEMS = {
    "sill": msg("at the sill"), "apron": msg("below the apron"), "clear": msg("clear of the floor"),
    "kiss": msg("kissing the floor"), "break": msg("breaking on the floor"), "puddle": msg("puddling on the floor"),
    "length": msg("a finished length"), "panel": msg("as long as the panel is"),
}  # fmt: skip
_PLACES = {
    "from-left-end": msg("in from the left end"), "from-right-end": msg("in from the right end"),
    "from-centre": msg("from the middle"), "from-wall-left": msg("from the wall's left end"),
}  # fmt: skip


class HangPanel(QWidget):
    """The form of one layer, with a switch for the others.

    Attributes
    ----------
    lit : Signal(object, str)
    refused : Signal(str)
    """

    lit = Signal(object, str)
    refused = Signal(str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._ref: Ref | None = None
        self._seen: tuple[object, ...] = ()
        self.which = Choice(tr(msg("Rod")))
        self.which.chosen.connect(self._switch)
        self.form = FactForm(session, self)
        self.form.lit.connect(self.lit)
        self.form.refused.connect(self.refused)
        self.none = QLabel(tr(msg("Nothing hangs on this wall in this scheme.")), self)
        self.none.setWordWrap(True)
        make_quiet(self.none)
        self.buttons = QWidget(self)
        row = QGridLayout(self.buttons)
        row.setContentsMargins(0, 4, 0, 0)
        row.setSpacing(4)
        self.add_bracket = self._button(msg("+ bracket"), msg("Add a bracket in the middle"))
        self.drop_bracket = self._button(msg("− bracket"), msg("Take the last inner bracket away"))
        self.add_panel = self._button(msg("+ panel"), msg("Add a panel"))
        self.drop_panel = self._button(msg("− panel"), msg("Take the last panel away"))
        self.add_bracket.clicked.connect(self._add_bracket)
        self.drop_bracket.clicked.connect(self._drop_bracket)
        self.add_panel.clicked.connect(self._add_panel)
        self.drop_panel.clicked.connect(self._drop_panel)
        self.add_treatment = self._button(msg("+ treatment"), msg("Dress one opening more"))
        self.drop_treatment = self._button(msg("− treatment"), msg("Take this treatment away"))
        self.add_treatment.clicked.connect(self._add_treatment)
        self.drop_treatment.clicked.connect(self._drop_treatment)
        self._of_layer = (self.add_bracket, self.drop_bracket, self.add_panel, self.drop_panel, self.drop_treatment)
        for place, button in enumerate(
            (
                self.add_bracket, self.drop_bracket, self.add_panel, self.drop_panel, self.add_treatment,
                self.drop_treatment,
            )
        ):  # fmt: skip
            row.addWidget(button, place // 2, place % 2)
        row.setColumnStretch(2, 1)
        box = QVBoxLayout(self)
        box.setContentsMargins(8, 6, 8, 8)
        box.setSpacing(3)
        box.addWidget(self.none)
        box.addWidget(self.which)
        box.addWidget(self.form)
        box.addWidget(self.buttons)
        box.addStretch(1)

    def _button(self, text: Message, tip: Message) -> QToolButton:
        button = QToolButton(self.buttons)
        button.setText(tr(text))
        button.setToolTip(tr(tip))
        button.setAccessibleName(tr(tip))
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        return button

    @property
    def layer_ref(self) -> Ref | None:
        """The layer shown."""
        return self._ref

    def _layers(self) -> list[tuple[Ref, Treatment, Layer]]:
        if not self._session.wall_id:
            return []
        scheme = scheme_of(self._session.room, self._session.wall_id, self._session.scheme_id)
        if scheme is None:
            return []
        here = (self._session.wall_id, scheme.id)
        return [
            ((*here, treatment.id, layer.id), treatment, layer)
            for treatment in scheme.treatments
            for layer in treatment.layers
        ]

    def refresh(self) -> None:
        """Show the layer that is selected, else the one shown before, else the first."""
        layers = self._layers()
        refs = [ref for ref, _, _ in layers]
        self.none.setVisible(not layers)
        self.form.setVisible(bool(layers))
        for button in self._of_layer:
            button.setVisible(bool(layers))
        self.which.setVisible(len(layers) > 1)
        if not layers:
            self._ref = None
            return
        picked = self._session.selection
        if picked is not None:
            of_it = [ref for ref in refs if ref[: len(picked)] == picked or picked[: len(ref)] == ref]
            if of_it and len(picked) > 2:
                self._ref = self._ref if self._ref in of_it else of_it[0]
        if self._ref not in refs:
            self._ref = refs[0]
        _, treatment, layer = layers[refs.index(self._ref)]
        wall = wall_of(self._session.room, self._session.wall_id)
        seen = (layer, treatment, wall.openings, self._ref, tuple(refs), self._session.room.unit)
        if len(seen) == len(self._seen) and all(a is b or a == b for a, b in zip(seen, self._seen, strict=True)):
            return
        self._seen = seen
        options = [("/".join(ref), _name(treatment, layer)) for ref, treatment, layer in layers]
        self.which.offer(options, "/".join(self._ref))
        facts = layer_facts(self._session, self._ref, layer, self._session.trade)
        self.form.show_facts((*_treatment(self._ref[:3], wall), *facts))
        self.drop_bracket.setEnabled(len(layer.brackets) > 2)
        self.drop_panel.setEnabled(len(layer.panels) > 0)

    def show_field(self, ref: Ref, field: str) -> bool:
        """Put the keyboard on the figure behind a dimension; False where there is none."""
        for layer_ref, _, _ in self._layers():
            if ref[:4] == layer_ref[: len(ref[:4])]:
                if layer_ref != self._ref:
                    self._switch("/".join(layer_ref))
                break
        if self._ref is None:
            return False
        full = ref if len(ref) >= 4 else self._ref
        return any(self.form.show_field(full, name) for name in (field, f"{field}.at"))

    def _switch(self, key: str) -> None:
        self._ref = tuple(key.split("/"))
        self._session.selection = self._ref
        self.refresh()

    def _add_treatment(self) -> None:
        session = self._session
        picked = session.selection
        wanted = picked[1] if picked is not None and len(picked) == 2 else None
        try:
            room, ref = add_treatment(
                session.committed, session.wall_id, session.scheme_id, session.set_out(), session.trade, wanted
            )
            check_room(room, "")
        except ElevationError as error:
            self.refused.emit(error_sentence(error))
            return
        session.commit(room, msg("Add a treatment"), ref)
        session.selection = ref

    def _drop_treatment(self) -> None:
        if self._ref is not None:
            ref, self._ref = self._ref, None
            room = remove(self._session.committed, ref[:3])
            self._session.commit(room, msg("Take a treatment away"), ref[:2])

    def _add_bracket(self) -> None:
        self._commit(add_bracket, msg("Add a bracket"))

    def _add_panel(self) -> None:
        self._commit(add_panel, msg("Add a panel"))

    def _drop_bracket(self) -> None:
        self._commit(partial(remove_last, kind="brackets"), msg("Take a bracket away"))

    def _drop_panel(self) -> None:
        self._commit(partial(remove_last, kind="panels"), msg("Take a panel away"))

    def _commit(self, edit: Any, label: Message) -> None:
        if self._ref is not None:
            self._session.commit(edit(self._session.committed, self._ref), label, self._ref)


def _name(treatment: Treatment, layer: Layer) -> str:
    name = treatment.name or ", ".join(treatment.openings)
    return name if len(treatment.layers) == 1 else tr(msg("{name}, layer {layer}", name=name, layer=layer.id))


def _said(texts: dict[str, Message]) -> tuple[tuple[str, str], ...]:
    return tuple((key, tr(text)) for key, text in texts.items())


def layer_facts(session: Session, ref: Ref, layer: Layer, trade: Trade) -> tuple[Fact, ...]:
    """The rows of a layer's form."""
    return (
        *_cloth(ref, trade),
        *_rod(session, ref, layer, trade),
        *_hem(ref, layer),
        *_panels(ref, layer),
        *_brackets(ref, layer, trade),
    )


def _treatment(ref: Ref, wall: Wall) -> tuple[Fact, ...]:
    """The scheme's goal, and what the treatment covers."""
    facts = [
        Fact(ref[:2], "", msg("Scheme"), "title"),
        Fact(ref[:2], "clear_glass_to", msg("glass that open cloth may cover, each side")),
        Fact(ref, "", msg("Treatment"), "title"),
        Fact(ref, "name", msg("name of the treatment"), "text"),
    ]
    facts += [
        Fact(
            ref,
            f"covers {opening.id}",
            msg("covers opening {number}", number=number),
            "flag",
            edit=partial(cover, ref, opening.id),
            read=partial(is_covered, ref, opening.id),
        )
        for number, opening in enumerate(wall.openings, 1)
    ]
    return tuple(facts)


def _cloth(ref: Ref, trade: Trade) -> tuple[Fact, ...]:
    headings = tuple((row.id, row.name) for row in trade.headings.values())
    return (
        Fact(ref, "", msg("Cloth"), "title"),
        Fact(ref, "fabric.name", msg("name of the cloth"), "text"),
        Fact(ref, "fabric.colour", msg("colour"), "colour", edit=partial(rename_colour, ref)),
        Fact(ref, "fabric.body", msg("body"), "choice", _said(_BODIES)),
        Fact(ref, "heading", msg("heading"), "choice", headings),
        Fact(ref, "drop", msg("rod's centre to the top of the cloth, if measured")),
    )


def _rod(session: Session, ref: Ref, layer: Layer, trade: Trade) -> tuple[Fact, ...]:
    sections = tuple((row.id, row.name) for row in trade.sections.values())
    ends = tuple((row.id, row.name) for row in trade.ends.values())
    rod = layer.rod

    def hold(room: Room, key: Any) -> Room:
        return hold_height(room, session.set_out(), ref, key)

    def hold_left(room: Room, key: Any) -> Room:
        return hold_end(room, session.set_out(), ref, "left", key)

    def hold_right(room: Room, key: Any) -> Room:
        return hold_end(room, session.set_out(), ref, "right", key)

    return (
        Fact(ref, "", msg("Rod"), "title"),
        Fact(ref, "rod.height.at", msg("height, {held}", held=HEIGHT_HOLDS[rod.height.hold]), needed=True),
        Fact(ref, "rod.height.hold", msg("hold the height"), "choice", _said(HEIGHT_HOLDS), edit=hold),
        Fact(ref, "rod.left.at", msg("left end, {held}", held=END_HOLDS[rod.left.hold]), needed=True),
        Fact(ref, "rod.left.hold", msg("hold the left end"), "choice", _said(END_HOLDS), edit=hold_left),
        Fact(ref, "rod.right.at", msg("right end, {held}", held=END_HOLDS[rod.right.hold]), needed=True),
        Fact(ref, "rod.right.hold", msg("hold the right end"), "choice", _said(END_HOLDS), edit=hold_right),
        Fact(ref, "rod.section", msg("section"), "choice", sections),
        Fact(ref, "rod.diameter", msg("diameter, if another")),
        Fact(ref, "rod.projection", msg("wall to the rod's centre"), needed=True),
        Fact(ref, "rod.ends", msg("ends"), "choice", ends),
        Fact(ref, "rod.stock", msg("longest piece at hand")),
    )


def _hem(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    facts = [Fact(ref, "", msg("Hem"), "title"), Fact(ref, "hem.target", msg("hem"), "choice", _said(_HEMS))]
    if layer.hem.target not in ("kiss", "panel"):
        facts.append(Fact(ref, "hem.at", msg("by how much")))
    return tuple(facts)


def _panels(ref: Ref, layer: Layer) -> tuple[Fact, ...]:
    facts: list[Fact] = []
    parks = [("left", tr(msg("the left"))), ("right", tr(msg("the right")))]
    for number, bracket in enumerate(layer.brackets, 1):
        parks.append((f"left-of:{bracket.id}", tr(msg("left of bracket {number}", number=number))))
        parks.append((f"right-of:{bracket.id}", tr(msg("right of bracket {number}", number=number))))
    for number, panel in enumerate(layer.panels, 1):
        here = (*ref, panel.id)
        facts += [
            Fact(here, "", msg("Panel {number}", number=number), "title"),
            Fact(here, "flat_width", msg("flat width of a piece"), needed=True),
            Fact(here, "count", msg("pieces side by side"), "count"),
            Fact(here, "label_length", msg("length on the packet")),
            Fact(here, "measured_length", msg("length measured")),
            Fact(here, "parks", msg("parks at"), "choice", tuple(parks)),
            Fact(here, "stationary", msg("never draws"), "flag"),
            Fact(here, "drawn", msg("drawn out by")),
            Fact(here, "stack", msg("stack, squeezed and measured")),
        ]
    return tuple(facts)


def _brackets(ref: Ref, layer: Layer, trade: Trade) -> tuple[Fact, ...]:
    kits = tuple((row.id, row.name) for row in trade.brackets.values())
    facts: list[Fact] = []
    if layer.brackets:
        facts.append(Fact(ref, "", drilling_caution(), "note"))
    for number, bracket in enumerate(layer.brackets, 1):
        here = (*ref, bracket.id)
        facts += [
            Fact(here, "", msg("Bracket {number}", number=number), "title"),
            Fact(here, "place.at", msg("place, {held}", held=_PLACES.get(bracket.place.hold, msg("held"))), needed=True),
            Fact(here, "place.hold", msg("measured"), "choice", _said(_PLACES)),
            Fact(here, "kit", msg("kit"), "choice", kits),
            Fact(here, "height", msg("height as built")),
        ]
    return tuple(facts)
