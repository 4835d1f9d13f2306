"""How much glass a longer rod would clear: a curve over the rod's length, and a line to pull."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from elevation.errors import ElevationError
from elevation.handles.model import Handle
from elevation.room.model import Ref
from elevation.session.gesture import Gesture
from elevation.session.session import Session
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.whole import set_out
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme, make_quiet
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.window.plots import CurvePlot

IDLE_MS = 300
STEPS = 24
"""Rods that are set out for one curve."""


class GlassPanel(QWidget):
    """The curve of the treatment shown.

    The curve is worked out when nothing has moved for a moment; its line follows every frame.
    """

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.theme: Theme = LIGHT
        self.plot: CurvePlot | None = None
        self._worked_for: object = None
        self._gesture: Gesture | None = None
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(IDLE_MS)
        self._idle.timeout.connect(self.work_out)
        self.text = QLabel(self)
        self.text.setWordWrap(True)
        make_quiet(self.text)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(8, 4, 8, 8)
        self._box.addWidget(self.text)

    def load(self) -> None:
        """Load the plotting library: after the first picture, because it takes a third of a second."""
        if self.plot is not None:
            return
        from elevation.window.plots import CurvePlot

        self.plot = CurvePlot(self)
        self.plot.set_theme(self.theme)
        self.plot.setAccessibleName(tr(msg("Glass clear over the rod's length")))
        self.plot.moved.connect(self._pull)
        self.plot.dropped.connect(self._drop)
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

    def _treatment(self) -> TreatmentOut | None:
        if not self._session.wall_id:
            return None
        treatments = self._session.set_out().treatments
        picked = self._session.selection or ()
        return next((one for one in treatments if picked[:3] == one.ref), treatments[0] if treatments else None)

    def _handle(self, ref: Ref) -> Handle | None:
        return next((one for one in self._session.handles() if one.axis == "rod-right" and one.ref[:3] == ref), None)

    def refresh(self) -> None:
        """Let the line follow; the curve waits until nothing moves."""
        treatment = self._treatment()
        if self.plot is None:
            return
        self.plot.setVisible(treatment is not None)
        if treatment is None:
            self.text.setText("")
            return
        name = treatment.name or ", ".join(str(opening.number) for opening in treatment.openings)
        self.text.setText(tr(msg("{name}: pull the line to lengthen the rod both ways.", name=name)))
        self.plot.show_present(treatment.layers[0].support.length_mm)
        if self._session.gesture is None:
            self._idle.start()

    def work_out(self) -> None:
        """Set the treatment out with rods of many lengths."""
        treatment = self._treatment()
        room = self._session.committed
        if self.plot is None or treatment is None or self._session.gesture is not None:
            return
        if self._worked_for == (id(room), treatment.ref):
            return
        handle = self._handle(treatment.ref)
        if handle is None:
            return
        bound = handle.bound(False)
        low = max(bound.low_mm, treatment.openings[-1].right_mm)
        high = min(bound.high_mm, low + 1000.0)
        lengths, percents = [], []
        for step in range(STEPS + 1):
            value = low + (high - low) * step / STEPS
            try:
                laid = set_out(
                    handle.move(room, value, False), self._session.wall_id, self._session.scheme_id, self._session.trade
                )
            except ElevationError:
                continue
            one = next(other for other in laid.treatments if other.ref == treatment.ref)
            lengths.append(one.layers[0].support.length_mm)
            percents.append(one.glass.clear_open * 100)
        per_unit = 25.4 if room.unit == "in" else 1.0
        below = tr(msg("rod, in")) if room.unit == "in" else tr(msg("rod, mm"))
        self.plot.set_labels(below, tr(msg("glass clear, %")))
        self.plot.show_curve(lengths, percents, per_unit)
        self.plot.show_present(treatment.layers[0].support.length_mm)
        self._worked_for = (id(room), treatment.ref)

    def _pull(self, length_mm: float) -> None:
        treatment = self._treatment()
        if treatment is None:
            return
        if self._gesture is None or self._gesture.is_over:
            handle = self._handle(treatment.ref)
            if handle is None:
                return
            self._gesture = self._session.press(handle)
            support = treatment.layers[0].support
            self._start_mm, self._from_mm = support.length_mm, handle.value_mm
        self._gesture.move(self._from_mm + (length_mm - self._start_mm) / 2, 0.5)

    def _drop(self) -> None:
        if self._gesture is not None and not self._gesture.is_over:
            self._gesture.release()
        self._gesture = None
