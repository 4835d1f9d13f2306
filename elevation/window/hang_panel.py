"""What hangs: cloth, heading, panels, hem, rod, ends and brackets of one layer."""

from __future__ import annotations

from functools import partial
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from elevation.errors import ElevationError
from elevation.room.edits import remove
from elevation.room.find import scheme_of, wall_of
from elevation.room.layering import with_back_layer
from elevation.room.model import Layer, Ref, Treatment
from elevation.room.validate import check_room
from elevation.session.session import Session
from elevation.window.choice import Choice
from elevation.window.dress_facts import blind_facts, pelmet_facts
from elevation.window.fact_form import FactForm
from elevation.window.go_to import GoTo
from elevation.window.hang_edits import (
    add_bracket,
    add_panel,
    add_treatment,
    remove_last,
)
from elevation.window.hang_facts import layer_facts, treatment_facts
from elevation.window.measurements import error_sentence
from elevation.window.offer_facts import offer_facts
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import Message, msg


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
        self.go_to = GoTo(self)
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
        self.add_layer = self._button(msg("+ back layer"), msg("Hang a second layer behind this one"))
        self.drop_layer = self._button(msg("− layer"), msg("Take this layer away"))
        self.add_layer.clicked.connect(self._add_layer)
        self.drop_layer.clicked.connect(self._drop_layer)
        self.add_treatment = self._button(msg("+ treatment"), msg("Dress one opening more"))
        self.drop_treatment = self._button(msg("− treatment"), msg("Take this treatment away"))
        self.add_treatment.clicked.connect(self._add_treatment)
        self.drop_treatment.clicked.connect(self._drop_treatment)
        self._of_layer = (
            self.add_bracket, self.drop_bracket, self.add_panel, self.drop_panel, self.add_layer, self.drop_layer,
            self.drop_treatment,
        )  # fmt: skip
        for place, button in enumerate(
            (
                self.add_bracket, self.drop_bracket, self.add_panel, self.drop_panel, self.add_layer, self.drop_layer,
                self.add_treatment, self.drop_treatment,
            )
        ):  # fmt: skip
            row.addWidget(button, place // 2, place % 2)
        row.setColumnStretch(2, 1)
        box = QVBoxLayout(self)
        box.setContentsMargins(8, 6, 8, 8)
        box.setSpacing(3)
        box.addWidget(self.none)
        box.addWidget(self.which)
        box.addWidget(self.go_to)
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
        self.go_to.setVisible(bool(layers))
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
        facts = layer_facts(self._session, self._ref, layer, treatment.mount, self._session.trade)
        here = self._ref[:3]
        self.form.show_facts(
            (
                *treatment_facts(self._session.room, here, wall, treatment.mount, self._session.trade),
                *facts,
                *pelmet_facts(self._session, here, treatment),
                *blind_facts(here, treatment),
                *offer_facts(here, treatment),
            )
        )
        adding = (tr(msg("Add or take away")), self.buttons, self.add_bracket)
        self.go_to.show_places((*self.form.places(), adding))
        self.drop_bracket.setEnabled(len(layer.brackets) > 2)
        self.drop_panel.setEnabled(len(layer.panels) > 0)
        self.add_layer.setEnabled(len(treatment.layers) == 1)
        self.drop_layer.setEnabled(len(treatment.layers) > 1)

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

    def _add_layer(self) -> None:
        if self._ref is None:
            return
        try:
            made, ref = with_back_layer(self._session.committed, self._ref, self._session.trade)
        except ElevationError as error:
            self.refused.emit(error_sentence(error))
            return
        self._session.commit(made, msg("Add a back layer"), ref)

    def _drop_layer(self) -> None:
        if self._ref is not None:
            self._session.commit(remove(self._session.committed, self._ref), msg("Take a layer away"), self._ref[:3])

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
    if len(treatment.layers) == 1:
        return name
    if layer is treatment.layers[0]:
        return tr(msg("{name}, front layer", name=name))
    if len(treatment.layers) == 2:
        return tr(msg("{name}, back layer", name=name))
    return tr(msg("{name}, layer {layer}", name=name, layer=layer.id))
