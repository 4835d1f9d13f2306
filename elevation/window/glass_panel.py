"""Curves to decide by: glass clear over the rod's length, gap under the hem over its height; each with a line to pull."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QComboBox, QLabel, QVBoxLayout, QWidget

from elevation.planning.curves import Curve
from elevation.session.gesture import Gesture
from elevation.session.session import Session
from elevation.setting_out.model import TreatmentOut
from elevation.window.curve_kinds import GLASS, KINDS, Kind, handle_of, in_words, labels, mark_text, present_mm, worked
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme, make_quiet
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.window.plots import CurvePlot

IDLE_MS = 300


class GlassPanel(QWidget):
    """The curves of the treatment shown.

    A curve is worked out when nothing has moved for a moment; its line follows every frame. The same is said in words.
    """

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.theme: Theme = LIGHT
        self.plot: CurvePlot | None = None
        self.kind: Kind = GLASS
        self.curve = Curve()
        self._worked_for: object = None
        self._gesture: Gesture | None = None
        self._start_mm = self._from_mm = 0.0
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(IDLE_MS)
        self._idle.timeout.connect(self.work_out)
        self.choice = QComboBox(self)
        self.choice.setAccessibleName(tr(msg("Curve")))
        self.choice.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        for kind in KINDS:
            self.choice.addItem(tr(kind.title))
        self.choice.currentIndexChanged.connect(self._choose)
        self.text = QLabel(self)
        self.text.setWordWrap(True)
        make_quiet(self.text)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(8, 4, 8, 8)
        self._box.addWidget(self.choice)
        self._box.addWidget(self.text)

    def load(self) -> None:
        """Load the plotting library: after the first picture, because it takes a third of a second."""
        if self.plot is not None:
            return
        from elevation.window.plots import CurvePlot

        self.plot = CurvePlot(self)
        self.plot.set_theme(self.theme)
        self.plot.setAccessibleName(tr(self.kind.title))
        self.plot.moved.connect(self._pull)
        self.plot.dropped.connect(self._drop)
        self.plot.stepped.connect(self._step)
        self._box.addWidget(self.plot, 1)
        self.refresh()

    def set_theme(self, theme: Theme) -> None:
        """Curve and axes in other inks."""
        self.theme = theme
        if self.plot is not None:
            self.plot.set_theme(theme)

    def stop(self) -> None:
        """Nothing more is worked out."""
        self._idle.stop()

    def _choose(self, index: int) -> None:
        self.kind = KINDS[index]
        self._worked_for = None
        self.curve = Curve()
        if self.plot is not None:
            self.plot.setAccessibleName(tr(self.kind.title))
            self.work_out()
        self.refresh()

    def _treatment(self) -> TreatmentOut | None:
        if not self._session.wall_id:
            return None
        treatments = self._session.set_out().treatments
        picked = self._session.selection or ()
        return next((one for one in treatments if picked[:3] == one.ref), treatments[0] if treatments else None)

    def refresh(self) -> None:
        """Let the line follow; the curve waits until nothing moves."""
        treatment = self._treatment()
        if self.plot is None:
            return
        self.plot.setVisible(treatment is not None)
        if treatment is None:
            self.text.setText("")
            return
        words = in_words(self.kind, self._session, treatment, self.curve)
        if words != self.text.text():
            self.text.setText(words)
            self.plot.setAccessibleDescription(words)
        self.plot.show_present(present_mm(self.kind, treatment))
        if self._session.gesture is None:
            self._idle.start()

    def work_out(self) -> None:
        """Work the curve out for the room as it stands."""
        treatment = self._treatment()
        room = self._session.committed
        if self.plot is None or treatment is None or self._session.gesture is not None:
            return
        wanted = (id(room), treatment.ref, self.kind.name)
        if self._worked_for == wanted:
            return
        handle = handle_of(self.kind, self._session, treatment)
        self.curve = Curve() if handle is None else worked(self.kind, self._session, treatment, handle)
        per_unit = 25.4 if room.unit == "in" else 1.0
        self.plot.set_labels(*labels(self.kind, room.unit))
        marks = [(mark.at_mm, mark.value, mark_text(self.kind, self._session, mark.length_mm)) for mark in self.curve.marks]
        self.plot.show_curve(
            self.curve.at_mm, self.curve.values, per_unit, marks, limits=self.curve.limits, is_length=self.kind.is_length
        )
        self.plot.show_present(present_mm(self.kind, treatment))
        self.text.setText(in_words(self.kind, self._session, treatment, self.curve))
        self._worked_for = wanted

    def _pull(self, at_mm: float) -> None:
        treatment = self._treatment()
        if treatment is None:
            return
        if self._gesture is None or self._gesture.is_over:
            handle = handle_of(self.kind, self._session, treatment)
            if handle is None:
                return
            self._gesture = self._session.press(handle)
            self._start_mm, self._from_mm = present_mm(self.kind, treatment), handle.value_mm
        self._gesture.move(self._from_mm + (at_mm - self._start_mm) * self.kind.share, 0.5)

    def _drop(self) -> None:
        if self._gesture is not None and not self._gesture.is_over:
            self._gesture.release()
        self._gesture = None

    def _step(self, steps: int) -> None:
        """The keyboard on the plot: the line goes on by graduations."""
        treatment = self._treatment()
        handle = None if treatment is None else handle_of(self.kind, self._session, treatment)
        if handle is not None:
            self._session.nudge(handle, steps)
