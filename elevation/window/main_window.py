"""The window: the canvas is the room; what goes in stands at its left, what comes of it at its right."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QEvent, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QLabel, QMainWindow, QSizePolicy, QVBoxLayout, QWidget

from elevation.room.model import Ref
from elevation.session.events import Event
from elevation.session.session import Session
from elevation.sheet.facts import state_of
from elevation.window import plan_place, section_place
from elevation.window.actions import Actions
from elevation.window.canvas import Canvas
from elevation.window.commands import Commands
from elevation.window.dialogs import Dialogs
from elevation.window.drawer import Drawer, Side
from elevation.window.files import Files
from elevation.window.findings_panel import FindingsPanel
from elevation.window.handles_table import HandlesTable
from elevation.window.late import Late
from elevation.window.measurements import Measurements
from elevation.window.menus import fill_bar, fill_menus
from elevation.window.notice import Notice
from elevation.window.notices import Notices
from elevation.window.on_screen import resize_on_screen
from elevation.window.panes import LEAST_WIDTH, Panes
from elevation.window.passing import press_focused
from elevation.window.plain_words import kind_at, plain_words
from elevation.window.plan_place import PlanPlace
from elevation.window.proportions_panel import ProportionsPanel
from elevation.window.readout import guide_lines, light_assumed, light_lines
from elevation.window.refresher import Refresher
from elevation.window.section_place import SectionPlace
from elevation.window.settings import Settings
from elevation.window.switchers import Switchers
from elevation.window.texts import tr
from elevation.window.theme import Theme, apply, theme_for
from elevation.words import Ratio, msg

if TYPE_CHECKING:
    from elevation.window.cloth_panel import ClothPanel
    from elevation.window.glass_panel import GlassPanel
    from elevation.window.hang_panel import HangPanel
    from elevation.window.standing_panel import StandingPanel

QUIET_MS = 100
"""After the first picture, what stands in closed drawers is made this much later."""
USUAL_SHARE = 2
_SHARES = {"findings": 4, "glass": 6}
"""Where there is much to show, findings get more of the height than what else is open; a curve is nothing in a slit."""
_BESIDE = 36
"""Pixels of the line at the foot that no text has: its margins, and the gaps beside what stands at its right."""


_SWITCHED = (section_place.NAME, plan_place.NAME, "person")
"""Switches that are remembered beside the drawers."""


class MainWindow(QMainWindow):
    """One room in one window.

    Parameters
    ----------
    session : Session
    settings : Settings

    Attributes
    ----------
    shown_first : Signal()
        After the first paint.
    """

    shown_first = Signal()

    def __init__(self, session: Session, settings: Settings) -> None:
        self.theme: Theme = theme_for(settings.mode)
        _dress(self.theme, settings.text_size)
        super().__init__()
        self.session = session
        self.settings = settings
        self.setAcceptDrops(True)
        self._explained = ""
        self.canvas = Canvas(session)
        self.measurements = Measurements(session)
        self._standing = Late(self._make_standing)
        self._hang = Late(self._make_hang)
        self._cloth = Late(self._make_cloth)
        self._glass = Late(self._make_glass)
        self.findings = FindingsPanel(session)
        self.proportions = ProportionsPanel(session)
        self.handles = HandlesTable(session)
        self.notice = Notice()
        self.drawers = self._make_drawers()
        self.left = Side("left", self.drawers[:3], is_single=True)
        self.right = Side("right", self.drawers[3:], is_single=False)
        self.splitter = self._make_splitter()
        self.setCentralWidget(self.splitter)
        self.files = Files(session, settings, Dialogs(self), self.tell)
        self.files.light_shown = lambda: self.canvas.shown.light
        self.actions_by_name = Actions(self)
        self.switchers = Switchers(session)
        self.commands = Commands(self)
        self.notices = Notices(self)
        fill_menus(self)
        self.bar = fill_bar(self)
        self._quiet = QTimer(self, singleShot=True)
        # Not as a keyword: in a Turkish locale PySide looks for "setİnterval".
        self._quiet.setInterval(QUIET_MS)
        self._quiet.timeout.connect(self._make_late)
        self.refresher = Refresher(self.refresh, self)
        self._connect()
        self.set_theme(self.theme)
        self.scale = QLabel()
        self.scale.setContentsMargins(0, 0, 8, 0)
        self.state = QLabel()
        self.state.setContentsMargins(0, 0, 14, 0)
        self.stands = QLabel()
        self.stands.setTextFormat(Qt.TextFormat.PlainText)
        self.stands.setContentsMargins(8, 0, 14, 0)
        # Its text never makes the window wider.
        self.stands.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.statusBar().setSizeGripEnabled(False)
        self.statusBar().addWidget(self.stands, 1)
        self.statusBar().addPermanentWidget(self.state)
        self.statusBar().addPermanentWidget(self.scale)
        # Else the three parts beside each other would say how narrow it gets; they rearrange before that.
        self.setMinimumWidth(LEAST_WIDTH)
        resize_on_screen(self, 1366, 768)
        self._restore()
        heads = sum(drawer.head.sizeHint().height() for drawer in self.left.drawers)
        self.measurements.sight = QSize(self.splitter.form_width, self.height() - heads)
        self.refresh()
        if not self.measurements.is_whole:
            # Rows are left out because they are out of sight: the bar is there from the start, and rows are broken once.
            self.drawers[0].area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self.canvas.setFocus()

    # -- parts ---------------------------------------------------------------------

    def _make_drawers(self) -> tuple[Drawer, ...]:
        parts: tuple[tuple[str, str, QWidget, bool], ...] = (
            ("measure", tr(msg("Measured")), self.measurements, True),
            ("standing", tr(msg("What stands there")), self._standing.place, False),
            ("hang", tr(msg("What hangs")), self._hang.place, False),
            ("findings", tr(msg("Findings")), self.findings, True),
            ("proportions", tr(msg("Proportions")), self.proportions, True),
            ("glass", tr(msg("Curves")), self._glass.place, False),
            ("handles", tr(msg("All handles")), self.handles, True),
            ("cloth", tr(msg("Cloth to buy")), self._cloth.place, False),
        )
        return tuple(
            Drawer(
                name,
                title,
                content,
                is_open=self.settings.is_open(name, usual),
                share=_SHARES.get(name, USUAL_SHARE),
            )
            for name, title, content, usual in parts
        )

    # Their modules are loaded with them: all are closed at first, and nobody waits for what is not seen.

    def _make_standing(self) -> StandingPanel:
        from elevation.window.standing_panel import StandingPanel

        panel = StandingPanel(self.session)
        self._follow(panel)
        return panel

    def _make_hang(self) -> HangPanel:
        from elevation.window.hang_panel import HangPanel

        panel = HangPanel(self.session)
        self._follow(panel)
        return panel

    def _make_cloth(self) -> ClothPanel:
        from elevation.window.cloth_panel import ClothPanel

        return ClothPanel(self.session)

    def _make_glass(self) -> GlassPanel:
        from elevation.window.glass_panel import GlassPanel

        panel = GlassPanel(self.session)
        panel.set_theme(self.theme)
        return panel

    def _follow(self, form: Measurements | StandingPanel | HangPanel) -> None:
        form.lit.connect(self.canvas.light)
        form.lit.connect(self._explain)
        if not isinstance(form, Measurements):
            form.refused.connect(self.tell)

    @property
    def standing(self) -> StandingPanel:
        """What stands in and on the wall."""
        return self._standing.get()

    @property
    def hang(self) -> HangPanel:
        """What hangs."""
        return self._hang.get()

    @property
    def cloth(self) -> ClothPanel:
        """Cloth to buy."""
        return self._cloth.get()

    @property
    def glass(self) -> GlassPanel:
        """Curves."""
        return self._glass.get()

    def _make_late(self) -> None:
        # One in a turn: a hand that is already dragging hardly feels it.
        lates: tuple[Late[Any], ...] = (self._standing, self._hang, self._glass, self._cloth)
        late = next((one for one in lates if not one.is_made), None)
        if late is not None:
            late.get()
            self._quiet.start()

    def _make_splitter(self) -> Panes:
        middle = QWidget()
        box = QVBoxLayout(middle)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.notice)
        self.beside = SectionPlace(self.canvas)
        self.under = PlanPlace(self.beside, self.canvas)
        box.addWidget(self.under, 1)
        return Panes(self.left, middle, self.right)

    def _connect(self) -> None:
        self.session.changed.connect(self._on_changed)
        self._follow(self.measurements)
        self.findings.pointed.connect(self.canvas.point_out)
        self.findings.previewed.connect(self.canvas.preview)
        self.findings.counted.connect(self._count_findings)
        self.findings.wanted.connect(self.show_field)
        self.findings.settled.connect(self._focus_canvas)
        self.findings.opened.connect(self._reveal_finding)
        self.handles.handles.refused.connect(self.tell)
        self.handles.selectionModel().currentRowChanged.connect(self._on_row)
        self.canvas.dimension_clicked.connect(self.show_field)
        self.canvas.finding_clicked.connect(self._open_finding)
        self.canvas.stood.connect(self._tell_shown)
        self.canvas.view_changed.connect(self._say_scale)
        self.canvas.cloth_drawn.connect(self.actions_by_name["cloth-drawn"].trigger)
        self.notice.chosen.connect(self.notices.on_notice)
        for drawer in self.drawers:
            drawer.toggled.connect(self._on_drawer)
        self._count_findings(len(self.session.findings()))

    def _restore(self) -> None:
        geometry = self.settings.geometry()
        if geometry is not None:
            self.restoreGeometry(geometry)
        self.splitter.set_widths(self.settings.sizes("main"))

    # -- following the room ------------------------------------------------------------

    def _on_changed(self, event: Event) -> None:
        del event
        self.refresher.ask()

    def refresh(self) -> None:
        """Let every open panel follow the room as it is now."""
        refreshes: tuple[Callable[[], None], ...] = (
            self.measurements.refresh, lambda: self.standing.refresh(), lambda: self.hang.refresh(), self.findings.refresh,
            self.proportions.refresh, lambda: self.glass.refresh(), self.handles.refresh, lambda: self.cloth.refresh(),
        )  # fmt: skip
        for drawer, refresh in zip(self.drawers, refreshes, strict=True):
            if drawer.is_open:
                refresh()
        self.switchers.refresh()
        self.commands.refresh()
        self.stands.setText(self._how_it_stands())
        self.notices.look_at_keeping()
        self.stands.setToolTip(light_assumed() if self.canvas.shown.light != "drawn" else "")
        state = state_of(self.session.set_out().treatments)
        self.state.setText(tr(state) if state is not None else "")

    def _how_it_stands(self) -> str:
        """In plain words while lines of proportion or light are shown: the treatment that is selected, else the first."""
        is_lit = self.canvas.shown.light != "drawn"
        if not self.session.is_guided and not is_lit:
            return ""
        treatments = self.session.set_out().treatments
        chosen = self.session.selection or ()
        ref = next((one.ref for one in treatments if one.ref == chosen[:3]), None)
        if ref is None and treatments:
            ref = treatments[0].ref
        if ref is None:
            return ""
        lines = light_lines(self.session, ref) if is_lit else ()
        return " · ".join((*lines, *guide_lines(self.session, ref)) if self.session.is_guided else lines)

    def _on_drawer(self, is_open: bool) -> None:
        if is_open:
            self._load_glass()
            self.refresh()

    def _count_findings(self, count: int) -> None:
        title = tr(msg("Findings: {count}", count=count)) if count else tr(msg("Findings"))
        self.drawers[3].set_title(title)

    def _on_row(self) -> None:
        handle = self.handles.current_handle()
        if handle is not None and self.handles.hasFocus():
            self.canvas.keys.focus_on(handle)
            self.session.selection = handle.ref
            self.canvas.update()

    def show_field(self, ref: Ref, field: str) -> None:
        """Open the form field of a dimension that was clicked, or of what is not known."""
        shows: Callable[[], bool]
        for drawer, shows in (
            (self.drawers[0], lambda: self.measurements.show_field(ref, field)),
            (self.drawers[1], lambda: self.standing.show_field(ref, field)),
            (self.drawers[2], lambda: self.hang.show_field(ref, field)),
        ):
            if shows():
                drawer.set_open(True)
                self.left.show()
                shows()
                focused = QApplication.focusWidget()
                if focused is not None and self.left.isAncestorOf(focused):
                    drawer.reveal(focused)
                return
        self.session.selection = ref

    def _focus_canvas(self) -> None:
        self.canvas.setFocus(Qt.FocusReason.OtherFocusReason)

    def _reveal_finding(self, row: QWidget) -> None:
        # Once its remedies have found their place; the row's own top stays in sight before their end.
        QTimer.singleShot(0, row, lambda: self.drawers[3].reveal_from_top(row))

    def _open_finding(self, finding: object) -> None:
        self.drawers[3].set_open(True)
        self.right.show()
        self.findings.open_finding(finding)  # type: ignore[arg-type]

    def _say_scale(self) -> None:
        scale = self.canvas.viewport.mm_per_paper
        self.scale.setText(tr(msg("on the screen 1 : {scale}", scale=Ratio(scale, 0 if scale >= 10 else 1))))

    def tell(self, text: str) -> None:
        """Say something quietly: in the line at the foot, or over the canvas where that would cut it short.

        An offer that waits for its answer over the canvas is never replaced.
        """
        line = self.statusBar()
        room = line.width() - self.state.width() - self.scale.width() - _BESIDE
        if line.fontMetrics().horizontalAdvance(text) > room and not self.notice.is_asking:
            line.clearMessage()
            self.notice.say(text)
        else:
            line.showMessage(text)

    def _explain(self, ref: Ref, field: str) -> None:
        """What the field means, in plain words, while it has the keyboard."""
        words = plain_words(field, kind_at(self.session.room, ref))
        if words is not None:
            self._explained = tr(words)
            self.statusBar().showMessage(self._explained)
        elif self._explained and self.statusBar().currentMessage() == self._explained:
            self._explained = ""
            self.statusBar().clearMessage()

    # -- look --------------------------------------------------------------------------

    def set_theme(self, theme: Theme) -> None:
        """Dress the window."""
        self.theme = theme
        _dress(theme, self.settings.text_size)
        self.actions_by_name.set_theme(theme)
        self.canvas.set_theme(theme)
        self.beside.set_theme(theme)
        self.under.set_theme(theme)
        self.findings.set_theme(theme)
        self.proportions.set_theme(theme)
        if self._glass.is_made:
            self.glass.set_theme(theme)

    # -- Qt's calls --------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrow window has another layout."""
        self.splitter.settle(event.size().width())
        super().resizeEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What no part of the window took: Enter presses the button that has the keyboard, Esc puts a notice away."""
        if press_focused(event.key()):
            return
        if event.key() == Qt.Key.Key_Escape and self.notice.isVisible():
            self.notice.put_away()
        else:
            super().keyPressEvent(event)

    def showEvent(self, event: QEvent) -> None:
        """What stood beside the wall stands there again with the first picture."""
        super().showEvent(event)  # type: ignore[arg-type]
        QTimer.singleShot(0, self._open_beside)

    def _open_beside(self) -> None:
        for name in _SWITCHED:
            if self.settings.is_open(name, usual=False) and not self.actions_by_name[name].isChecked():
                self.actions_by_name[name].trigger()

    def _tell_shown(self) -> None:
        self.shown_first.emit()
        self.measurements.finish()
        self.drawers[0].area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._load_glass()
        self._quiet.start()

    def _load_glass(self) -> None:
        # The plotting library is loaded when its drawer is first open, and never before the first picture.
        if self.glass_drawer.is_open and self.isVisible():
            self.glass.load()

    @property
    def glass_drawer(self) -> Drawer:
        """The drawer of the curve."""
        return self.drawers[5]

    def changeEvent(self, event: QEvent) -> None:
        """The desktop's own theme changed, or the window came back to the front."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ThemeChange and self.settings.mode == "system":
            self.set_theme(theme_for("system"))
        elif event.type() == QEvent.Type.ActivationChange and self.isActiveWindow():
            self.notices.look_at_disk()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """A file may be dropped."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the first file that was dropped."""
        paths = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        if paths:
            event.acceptProposedAction()
            self.files.open(paths[0])

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask about edits, remember the window, let go of the file."""
        if not self.files.may_leave():
            event.ignore()
            return
        self.settings.keep(
            self.saveGeometry(),
            {"main": widths} if (widths := self.splitter.widths()) else {},
            {
                **self.left.states(),
                **self.right.states(),
                **{name: self.actions_by_name[name].isChecked() for name in _SWITCHED},
            },
        )
        self.settings.sync()
        self.findings.stop()
        if self._glass.is_made:
            self.glass.stop()
        self.canvas.release_session()
        self.beside.release_session()
        self.under.release_session()
        self.session.changed.disconnect(self._on_changed)
        self.session.close()
        event.accept()


def _dress(theme: Theme, size: int) -> None:
    app = QApplication.instance()
    if isinstance(app, QApplication):
        apply(app, theme, size)
