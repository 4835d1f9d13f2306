"""A part of a side panel that folds away under its own name."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPalette, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QFrame,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)


class DrawerHead(QAbstractButton):
    """A drawer's heading: a triangle that turns, a title, a hairline over both."""

    def __init__(self, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setText(title)
        self.setAccessibleName(title)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        font = self.font()
        font.setWeight(QFont.Weight.DemiBold)
        self.setFont(font)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """From an open drawer's heading Tab goes into it: fields that were made later come last in Qt's own order."""
        drawer = self.parentWidget()
        if forward and self.isChecked() and isinstance(drawer, Drawer):
            for part in (drawer.content, *drawer.content.findChildren(QWidget)):
                takes_tab = part.focusPolicy().value & Qt.FocusPolicy.TabFocus.value
                if takes_tab and part.isEnabled() and part.isVisible():
                    part.setFocus(Qt.FocusReason.TabFocusReason)
                    return True
        return super().focusNextPrevChild(forward)

    def sizeHint(self) -> QSize:
        """One line of text with air around it."""
        return QSize(120, self.fontMetrics().height() + 12)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it in the palette's inks."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette, box = self.palette(), QRectF(self.rect())
        if self.underMouse() or self.isDown():
            painter.fillRect(box, palette.color(QPalette.ColorRole.AlternateBase))
        painter.setPen(QPen(palette.color(QPalette.ColorRole.Mid), 1))
        painter.drawLine(QPointF(0, 0.5), QPointF(box.right(), 0.5))
        ink = palette.color(QPalette.ColorRole.WindowText)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink)
        x, y = 14.0, box.center().y()
        down = [(-4.5, -2.5), (4.5, -2.5), (0.0, 3.0)]
        right = [(-2.5, -4.5), (3.0, 0.0), (-2.5, 4.5)]
        painter.drawPolygon([QPointF(x + dx, y + dy) for dx, dy in (down if self.isChecked() else right)])
        painter.setPen(ink)
        place = box.adjusted(26, 0, -4, 0)
        painter.drawText(place, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), self.text())
        if self.hasFocus():
            painter.setPen(QPen(palette.color(QPalette.ColorRole.Highlight), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(1, 2, -1, -1))
        painter.end()


class Drawer(QWidget):
    """A heading that opens and closes what stands under it; long contents scroll on their own.

    Parameters
    ----------
    name : str
        Settings and tests know it by this.
    title : str
        What people read.
    content : QWidget
    is_open : bool
    share : int
        How much of the height it takes beside others that are open.
    """

    toggled = Signal(bool)

    def __init__(self, name: str, title: str, content: QWidget, *, is_open: bool = True, share: int = 2) -> None:
        super().__init__()
        self.setObjectName(name)
        self.content = content
        self.share = share
        self.head = DrawerHead(title, self)
        self.head.setChecked(is_open)
        self.area = content if isinstance(content, QAbstractScrollArea) else _scrolling(content)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.head)
        box.addWidget(self.area, 1)
        if isinstance(self.area, _Scroll):
            self.area.fitted.connect(self._show_state)
        self._show_state()
        self.head.toggled.connect(self._on_toggled)

    @property
    def is_open(self) -> bool:
        """Whether the content is shown."""
        return self.head.isChecked()

    def set_open(self, is_open: bool) -> None:
        """Open or close."""
        self.head.setChecked(is_open)

    def _on_toggled(self, is_open: bool) -> None:
        self._show_state()
        self.toggled.emit(is_open)

    def _show_state(self) -> None:
        self.area.setVisible(self.is_open)
        head = self.head.sizeHint().height()
        self.setMaximumHeight(min(head + self.area.maximumHeight(), _NO_LIMIT) if self.is_open else head)

    def reveal(self, widget: QWidget) -> None:
        """Scroll until ``widget`` is in sight."""
        if isinstance(self.area, QScrollArea):
            self.area.ensureWidgetVisible(widget)

    def reveal_from_top(self, widget: QWidget) -> None:
        """Scroll until all of ``widget`` is in sight, or as much from its top as there is room for."""
        if not isinstance(self.area, QScrollArea):
            return
        bar = self.area.verticalScrollBar()
        top = widget.mapTo(self.content, QPoint(0, 0)).y()
        low, high = top + widget.height() - self.area.viewport().height(), top
        bar.setValue(min(max(bar.value(), low), high))

    def set_title(self, title: str) -> None:
        """Another heading ("Findings 3")."""
        if self.head.text() != title:
            self.head.setText(title)
            self.head.setAccessibleName(title)


_NO_LIMIT = 16_777_215
"""Qt's own greatest height of a widget."""
FIT_MS = 150
"""A drawer is measured again when its contents have been still for this long, so that nothing jumps during a drag."""
LEAST_PX = 64
"""An open drawer keeps at least this height."""


class _Scroll(QScrollArea):
    """Contents that scroll, in an area that may be told never to be taller than they are.

    Attributes
    ----------
    fitted : Signal()
        The height it needs at most is another.
    """

    fitted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._is_fitted = False
        self._still = QTimer(self)
        self._still.setSingleShot(True)
        self._still.setInterval(FIT_MS)
        self._still.timeout.connect(self.fit)

    def keep_fitted(self) -> None:
        """From now on, no taller than the contents."""
        content = self.widget()
        if content is not None and not self._is_fitted:
            self._is_fitted = True
            content.installEventFilter(self)
            self._still.start()

    def fit(self) -> None:
        """Measure the contents at the width they have: that of the area, which Qt's wrapper is slow to hand out."""
        content = self.widget()
        if content is None or not self._is_fitted:
            return
        width = content.width()
        tall = content.heightForWidth(width) if content.hasHeightForWidth() else content.sizeHint().height()
        if self.maximumHeight() != max(tall, LEAST_PX):
            self.setMaximumHeight(max(tall, LEAST_PX))
            self.fitted.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The contents want another size."""
        if event.type() == QEvent.Type.LayoutRequest and watched is self.widget():
            self._still.start()
        return super().eventFilter(watched, event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width: texts break elsewhere."""
        super().resizeEvent(event)
        if self._is_fitted and event.size().width() != event.oldSize().width():
            self._still.start()


def _scrolling(content: QWidget) -> QScrollArea:
    scroll = _Scroll()
    scroll.setFrameShape(QFrame.Shape.NoFrame)
    scroll.setWidgetResizable(True)
    scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setWidget(content)
    return scroll


class Side(QWidget):
    """A column of drawers whose headings never scroll out of sight; open ones share the height.

    Parameters
    ----------
    name : str
    drawers : tuple of Drawer
    is_single : bool
        Opening one closes the others.
    """

    def __init__(self, name: str, drawers: tuple[Drawer, ...], *, is_single: bool) -> None:
        super().__init__()
        self.setObjectName(name)
        self.drawers = drawers
        self._is_single = is_single
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(0)
        for drawer in drawers:
            self._box.addWidget(drawer)
            if not is_single and isinstance(drawer.area, _Scroll):
                # What a short drawer does not need, its neighbours get.
                drawer.area.keep_fitted()
            drawer.toggled.connect(self._share)
        self._box.addStretch(0)
        self._before: Drawer | None = None
        self._put_away: tuple[Drawer, ...] = ()
        self._share()

    def be_single(self) -> None:
        """For a while only one drawer is open, the first that is; what was closed for it comes back afterwards."""
        opened = [drawer for drawer in self.drawers if drawer.is_open]
        self._put_away = tuple(opened[1:])
        for drawer in self._put_away:
            drawer.set_open(False)
        self._is_single = True
        self._share()

    def be_plural(self) -> None:
        """Drawers open beside each other again."""
        self._is_single = False
        for drawer in self._put_away:
            drawer.set_open(True)
        self._put_away = ()
        self._share()

    def states(self) -> dict[str, bool]:
        """Which drawers are open, or were before only one could be."""
        return {drawer.objectName(): drawer.is_open or drawer in self._put_away for drawer in self.drawers}

    def _share(self) -> None:
        opened = [drawer for drawer in self.drawers if drawer.is_open]
        if self._is_single and len(opened) > 1:
            # The one opened last stays.
            keep = next((drawer for drawer in opened if drawer is not self._before), opened[0])
            self._before = keep
            for drawer in opened:
                if drawer is not keep:
                    drawer.set_open(False)
            opened = [keep]
        elif self._is_single and opened:
            self._before = opened[0]
        for index, drawer in enumerate(self.drawers):
            self._box.setStretch(index, drawer.share if drawer.is_open else 0)
        self._box.setStretch(len(self.drawers), 0 if opened else 1)
