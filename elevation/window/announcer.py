"""Says to screen readers what the eye sees at once: findings that came and findings that went."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from elevation.findings.model import Finding, Weight
from elevation.room.model import Ref
from elevation.window.texts import tr
from elevation.words import Style, msg, msg_plural

MOST = 3
"""More sentences than this at once are not listened to: the rest is counted."""

_Key = tuple[str, Ref]


class Announcer(QObject):
    """Compares what is found with what was said last.

    Attributes
    ----------
    said : Signal(str)
        What was announced, whether or not a screen reader listens.
    """

    said = Signal(str)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._speaker = parent
        self._heard: tuple[Finding, ...] | None = None
        self._known: set[_Key] = set()

    def hear(self, findings: tuple[Finding, ...], style: Style) -> None:
        """Announce what is new of weight stop or broken, or that nothing of that weight is left.

        Parameters
        ----------
        findings : tuple of Finding
            As they are once nothing is held any more; the first call only listens.
        style : Style
        """
        if findings is self._heard:
            return
        is_first, self._heard = self._heard is None, findings
        heavy = [one for one in findings if one.weight != Weight.CONSIDER]
        before, self._known = self._known, {(one.rule, one.subject) for one in heavy}
        if is_first:
            return
        new = [one for one in heavy if (one.rule, one.subject) not in before]
        if new:
            texts = [tr(one.text, style) for one in new[:MOST]]
            if len(new) > MOST:
                texts.append(
                    tr(msg_plural("And {count} finding more.", "And {count} findings more.", count=len(new) - MOST))
                )
            self._say(" ".join(texts))
        elif before and not heavy:
            self._say(tr(msg("Nothing is broken any more.")))

    def _say(self, text: str) -> None:
        self.said.emit(text)
        announce(self._speaker, text)


def announce(speaker: QObject, text: str) -> None:
    """Say a text to a screen reader, where one listens."""
    # Named when there is something to say: its many enumerations are not built before the first picture.
    from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

    if text and QAccessible.isActive():
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(speaker, text))
