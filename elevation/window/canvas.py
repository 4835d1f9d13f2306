"""The canvas: the wall to scale, its handles, and everything a hand does on it.

Moves of the pointer only store where it is; the picture is made once for each paint.
"""

from __future__ import annotations

from collections.abc import Collection
from functools import cached_property
from typing import TYPE_CHECKING

from msgspec.structs import replace
from PySide6.QtCore import QEvent, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QCloseEvent,
    QColor,
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from elevation.findings.model import Finding
from elevation.handles.model import Handle
from elevation.handles.remembered import Key
from elevation.room.model import Ref, Room
from elevation.session.events import Event
from elevation.session.session import Session
from elevation.setting_out.model import Point
from elevation.window import overlay, picking
from elevation.window.canvas_handles import paint_handles
from elevation.window.canvas_keys import CanvasKeys
from elevation.window.canvas_picture import CanvasPicture
from elevation.window.hand import Hand
from elevation.window.shown import Shown
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme
from elevation.window.viewport import Viewport
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.sheet.records import Dimension
    from elevation.window.canvas_menu import CanvasMenu

_WHEEL_STEP = 1.15
_CURSORS = {"x": Qt.CursorShape.SizeHorCursor, "y": Qt.CursorShape.SizeVerCursor}

FRAME_MS = 16
"""A screen shows what was painted within this time."""


class Canvas(QWidget):
    """The wall.

    Attributes
    ----------
    dimension_clicked : Signal(object, str)
        Ref and field of a dimension that was clicked.
    finding_clicked : Signal(object)
        The Finding whose mark was clicked.
    view_changed : Signal()
        Zoomed, panned or switched.
    cloth_drawn : Signal()
        A hand drew a panel: from now on cloth is to be shown as drawn.
    stood : Signal()
        Once, when the first picture has had time to reach the screen.
    """

    dimension_clicked = Signal(object, str)
    finding_clicked = Signal(object)
    view_changed = Signal()
    cloth_drawn = Signal()
    stood = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.theme: Theme = LIGHT
        self.viewport = Viewport()
        self.hand = Hand(session)
        self.picture: CanvasPicture = CanvasPicture(session)
        self.keys = CanvasKeys(self)
        self.hot: Handle | None = None
        self.pointed: Finding | None = None
        self._shown = Shown()
        self._lit: tuple[Ref, str] | None = None
        self._preview: Room | None = None
        self._pointer: Point | None = None
        self._pan_from: QPointF | None = None
        self._pressed_at: Point | None = None
        self._space = False
        self._fits = True
        self._fitted: tuple[object, ...] = ()
        self._is_painted = False
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(320, 240)
        self.setAccessibleName(tr(msg("The wall, drawn to scale")))
        self.setAccessibleDescription(
            tr(
                msg(
                    "Tab goes through the handles, arrows move one, typed figures set it."
                    " The table of handles says the same."
                )
            )
        )
        session.changed.connect(self._on_changed)

    @cached_property
    def menu(self) -> CanvasMenu:
        """What opens over a handle; loaded when it first does."""
        from elevation.window.canvas_menu import CanvasMenu

        return CanvasMenu(self)

    def release_session(self) -> None:
        """Stop listening to the session."""
        self.hand.cancel()
        self.session.changed.disconnect(self._on_changed)

    # -- what is shown ---------------------------------------------------------

    @property
    def shown(self) -> Shown:
        """The view's switches."""
        return self._shown

    @shown.setter
    def shown(self, shown: Shown) -> None:
        if shown != self._shown:
            was_flat, self._shown = self._shown.unfolded, shown
            self.session.is_guided = shown.guides
            if shown.unfolded != was_flat:
                self.fit()
            self.update()
            self.view_changed.emit()

    def light(self, ref: Ref, field: str) -> None:
        """Light the dimension of a form field; an empty field lights none."""
        lit = (ref, field) if field else None
        if lit != self._lit:
            self._lit = lit
            self.update()

    def point_out(self, finding: Finding | None) -> None:
        """Ring what a finding is about."""
        if finding is not self.pointed:
            self.pointed = finding
            self.update()

    def preview(self, room: Room | None) -> None:
        """Show another room in place of the session's, until None."""
        if room is not self._preview:
            self._preview = room
            self.update()

    def set_theme(self, theme: Theme) -> None:
        """Another desk around the paper."""
        self.theme = theme
        self.picture.forget_cached()
        self.update()

    def fit(self) -> None:
        """Show the whole wall with its dimensions."""
        self._fitted = self._size()
        self._set_viewport(self.picture.fitted(float(self.width()), float(self.height()), self._shown), fits=True)

    @property
    def is_whole(self) -> bool:
        """Whether it shows the whole wall: nobody zoomed or shifted since."""
        return self._fits

    def zoom(self, factor: float, x: float | None = None, y: float | None = None) -> None:
        """Zoom about a pixel (the middle by default)."""
        x = self.width() / 2 if x is None else x
        y = self.height() / 2 if y is None else y
        self._set_viewport(self.viewport.zoomed(factor, x, y))

    def shift(self, dx: float, dy: float) -> None:
        """Shift the paper by pixels."""
        self._set_viewport(self.viewport.panned(dx, dy))

    def _set_viewport(self, viewport: Viewport, *, fits: bool = False) -> None:
        self._fits = fits
        if viewport != self.viewport:
            self.viewport = viewport
            self.update()
            self.view_changed.emit()

    def _on_changed(self, event: Event) -> None:
        if event == "view":
            self.hot = None
            self.fit()
        elif event == "room" and self._fits and self.session.gesture is None and self._size() != self._fitted:
            # Nobody zoomed, and the wall has another size: it stays in sight whole.
            self.fit()
        self.update()

    def _size(self) -> tuple[object, ...]:
        """What the wall's extent depends on."""
        if not self.session.wall_id:
            return ()
        set_out = self.session.set_out()
        return set_out.width_mm, set_out.ceiling, set_out.floor

    def handles(self) -> tuple[Handle, ...]:
        """The handles of the wall shown, those of cloth where it is drawn."""
        return tuple(handle for handle in self.session.handles() if handle.sheet == "elevation")

    def some_handles(self, keys: Collection[Key]) -> dict[Key, Handle]:
        """Those of the handles that have one of ``keys``, as they are now."""
        return self.session.some_handles(keys)

    # -- painting ----------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the room as it is now: the one place where a moved handle is worked out."""
        del event
        painter = QPainter(self)
        groups = self.picture.groups(self.viewport, self.seen(), self._preview)
        self.picture.paint(painter, self, groups, self.viewport, self.desk(), is_dragging=self.hand.is_holding)
        if self._lit is not None:
            self.picture.paint_lit(painter, groups, self.viewport, *self._lit)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        spot = self._pointed_spot()
        if spot is not None:
            overlay.paint_pointed(painter, self.viewport.to_px(spot))
        if self._preview is None:
            paint_handles(painter, self, self._pointer, is_pressed=self._pressed_at is not None)
        painter.end()
        if not self._is_painted:
            self._is_painted = True
            # A timer of its own, which goes when the canvas goes.
            frame = QTimer(self)
            frame.setSingleShot(True)
            frame.timeout.connect(self.stood)
            frame.start(FRAME_MS)

    def seen(self) -> Shown:
        """What is shown just now: while a bracket or stud is held, also what is inside the wall; drawn cloth as drawn."""
        held = self.hand.handle
        if held is not None and held.axis == "lead":
            return replace(self._shown, cloth="drawn")
        if held is None or held.axis not in ("bracket", "stud"):
            return self._shown
        return replace(self._shown, zones=True, bands=self._shown.bands or held.axis == "bracket")

    def _pointed_spot(self) -> Point | None:
        """Where the finding pointed out stands now; None once it is gone."""
        wanted = self.pointed
        if wanted is None:
            return None
        now = (one for one in self.session.findings() if one.rule == wanted.rule and one.subject == wanted.subject)
        found = next(now, None)
        return found.at if found is not None else None

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the whole wall in sight as long as nobody zoomed."""
        super().resizeEvent(event)
        self.picture.forget_cached()
        self.picture.width_px = float(self.width())
        if self._fits:
            self.fit()

    # -- the pointer ---------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a handle, or the paper itself to shift it."""
        place = event.position()
        at = (place.x(), place.y())
        self._pointer = at
        if event.button() == Qt.MouseButton.MiddleButton or (self._space and event.button() == Qt.MouseButton.LeftButton):
            self._pan_from = place
            self._settle_cursor()
            return
        if event.button() != Qt.MouseButton.LeftButton:
            return
        self._pressed_at = at
        handle = self._takeable(*at)
        if handle is not None:
            self.keys.focus_on(handle, is_shown=False)
            alone = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.hand.press(handle, self._grasp(handle, at), at, alone)
        self.update()

    def _grasp(self, handle: Handle, at: Point) -> Point:
        """Where a handle is taken, wall mm: cloth that is shown elsewhere than it is drawn goes along from where it is."""
        x, y = self.viewport.to_wall(*at)
        if handle.axis != "lead" or picking.handle_at((handle,), self.viewport, *at) is not None:
            return x, y
        return x + handle.value_mm - picking.edge_shown_mm(self.session.set_out(), handle.ref, self._shown.cloth), y

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Store where the pointer is; a paint works out what follows from it."""
        place = event.position()
        at = (place.x(), place.y())
        before, self._pointer = self._pointer, at
        if self._pan_from is not None:
            self._pan(place)
        elif self.hand.is_holding:
            free = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
            self.hand.move(self.viewport.to_wall(*at), at, self.viewport.mm_per_px, free)
            self.update()
        elif self._pressed_at is not None:
            dx, dy = at[0] - self._pressed_at[0], at[1] - self._pressed_at[1]
            if dx * dx + dy * dy > 16:
                self._pull(at, place)
        elif before != at:
            self.hot = self._takeable(*at)
            self._settle_cursor()
            self.update()

    def _pull(self, at: Point, place: QPointF) -> None:
        """What was pressed is pulled: an obstacle goes along, anything else shifts the paper."""
        pressed = self._pressed_at or at
        handle = picking.body_handle(self.handles(), self.session.set_out(), self.viewport, pressed, at)
        if handle is None:
            self._pan_from = QPointF(*pressed)
            self._pan(place)
            return
        self.keys.focus_on(handle, is_shown=False)
        self.hand.press(handle, self.viewport.to_wall(*pressed), pressed, False)
        self.hand.move(self.viewport.to_wall(*at), at, self.viewport.mm_per_px, False)
        self._settle_cursor()
        self.update()

    def _pan(self, place: QPointF) -> None:
        if self._pan_from is not None:
            self._set_viewport(self.viewport.panned(place.x() - self._pan_from.x(), place.y() - self._pan_from.y()))
            self._pan_from = place
            self._settle_cursor()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go: one named edit, or a click on whatever lay there."""
        panned, pressed = self._pan_from is not None, self._pressed_at
        self._pan_from = self._pressed_at = None
        if self.hand.is_holding:
            if self.hand.handle is not None and self.hand.handle.axis == "lead" and not self.hand.is_still:
                self.cloth_drawn.emit()
            is_click = pressed is not None and self.hand.is_still and self._lets_click(*pressed)
            self.hand.release()
            if is_click and pressed is not None:
                self._click(*pressed)
        elif pressed is not None and not panned and event.button() == Qt.MouseButton.LeftButton:
            self._click(*pressed)
        self.hot = self._takeable(*self._pointer) if self._pointer else None
        self._settle_cursor()
        self.update()

    def _takeable(self, x: float, y: float) -> Handle | None:
        """What a press at a pixel would take: the handle there, else the rod, else the edge of a panel's cloth."""
        handles, set_out = self.handles(), self.session.set_out()
        return (
            picking.handle_at(handles, self.viewport, x, y)
            or picking.rod_handle_at(handles, set_out, self.viewport, x, y)
            or picking.cloth_handle_at(handles, set_out, self.viewport, x, y, self._shown.cloth)
        )

    def _lets_click(self, x: float, y: float) -> bool:
        """Whether a press that did not move means what lies there, not the handle that it took."""
        return picking.handle_at(self.handles(), self.viewport, x, y) is None or self._marked(x, y) is not None

    def _marked(self, x: float, y: float) -> Finding | None:
        return self.picture.finding_at(self.viewport, x, y)

    def _click(self, x: float, y: float) -> None:
        groups = self.picture.groups(self.viewport, self._shown)
        dimension: Dimension | None = picking.dimension_at(groups, self.viewport, x, y)
        if dimension is not None and dimension.field:
            self.dimension_clicked.emit(dimension.ref, dimension.field)
            return
        finding = self._marked(x, y) or picking.finding_at(self.session.findings(), self.viewport, x, y)
        if finding is not None:
            self.finding_clicked.emit(finding)
            return
        self.session.selection = picking.thing_at(self.session.set_out(), *self.viewport.to_wall(x, y), self._shown.cloth)

    def _settle_cursor(self) -> None:
        held = self.hand.handle or self.hot
        if self._pan_from is not None:
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif self._space:
            self.setCursor(Qt.CursorShape.OpenHandCursor)
        elif held is not None:
            self.setCursor(_CURSORS[held.along])
        else:
            self.unsetCursor()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer; with Shift, or sideways, shift the paper."""
        delta = event.angleDelta()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier or abs(delta.x()) > abs(delta.y()):
            self._set_viewport(self.viewport.panned(delta.x() / 2 or delta.y() / 2, 0.0))
        else:
            place = event.position()
            self.zoom(_WHEEL_STEP ** (delta.y() / 120.0), place.x(), place.y())
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Handles hide when the pointer is gone."""
        super().leaveEvent(event)
        self._pointer = self.hot = None
        self.update()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu of the handle under the pointer, or of the keyboard's."""
        place = event.pos()
        if event.reason() == QContextMenuEvent.Reason.Keyboard:
            handle = self.keys.current()
            place = QPointF(*self.viewport.to_px(handle.at)).toPoint() if handle is not None else place
        else:
            handle = picking.handle_at(self.handles(), self.viewport, float(place.x()), float(place.y()))
        if handle is not None and not self.hand.is_holding:
            self.menu.open(handle, self.mapToGlobal(place))

    # -- the keyboard ----------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows, figures, Enter, Esc; Space shifts the paper."""
        if event.key() == Qt.Key.Key_Space and not self.hand.typed:
            self._space = True
            self._settle_cursor()
        elif not self.keys.press(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Space let go."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
            self._settle_cursor()
        super().keyReleaseEvent(event)

    def focusNextPrevChild(self, next_one: bool) -> bool:
        """Tab goes through the handles in reading order, then on to the next widget."""
        return self.keys.step(1 if next_one else -1) or super().focusNextPrevChild(next_one)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the keyboard's handle."""
        super().focusInEvent(event)
        if event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason):
            self.keys.enter(from_end=event.reason() == Qt.FocusReason.BacktabFocusReason)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """A figure that was being typed is dropped, not taken by accident."""
        super().focusOutEvent(event)
        if self.hand.is_holding and self._pressed_at is None:
            self.hand.cancel()
        self.update()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Let go of the session."""
        self.release_session()
        super().closeEvent(event)

    def desk(self) -> QColor:
        """The colour around the paper."""
        return QColor(self.theme.desk)
