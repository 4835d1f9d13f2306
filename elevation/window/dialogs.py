"""Everything the window asks a person in a dialog, behind one port that tests replace."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

# Named through their module: Qt's binding builds a class and all its enumerations when it is first named.
from PySide6 import QtWidgets

from elevation.window.endings import with_ending
from elevation.window.texts import tr
from elevation.words import msg

Unsaved = Literal["save", "discard", "cancel"]
OnDisk = Literal["overwrite", "reread", "cancel"]


class Dialogs:
    """The real dialogs.

    Parameters
    ----------
    parent : QtWidgets.QWidget
        Whose window they stand over.
    """

    def __init__(self, parent: QtWidgets.QWidget) -> None:
        self._parent = parent

    def open_room(self, folder: Path) -> Path | None:
        """Ask for a room file to open."""
        name, _ = QtWidgets.QFileDialog.getOpenFileName(
            self._parent, tr(msg("Open a room")), str(folder), tr(msg("Rooms (*.room.json);;All files (*)"))
        )
        return Path(name) if name else None

    def save_as(self, title: str, proposal: Path, filters: str) -> Path | None:
        """Ask where to save, and of which kind; nothing is written over without being asked about."""
        name, kind = QtWidgets.QFileDialog.getSaveFileName(self._parent, title, str(proposal), filters)
        if not name:
            return None
        path = with_ending(Path(name), proposal.name, filters, kind)
        if path != Path(name) and path.exists():
            # Qt asked about the name as it was typed, which was another file.
            text = tr(msg("{name} is there already.", name=path.name))
            return path if self.sure(title, text, tr(msg("&Write over it"))) else None
        return path

    def text(self, title: str, label: str, value: str) -> str | None:
        """Ask for one line of text."""
        dialog = QtWidgets.QInputDialog(self._parent)
        dialog.setWindowTitle(title)
        dialog.setLabelText(label)
        dialog.setTextValue(value)
        # Wide enough for its title and for a name of some words; Qt's own width is for one word.
        dialog.resize(400, dialog.sizeHint().height())
        is_fine = dialog.exec() == QtWidgets.QDialog.DialogCode.Accepted
        dialog.deleteLater()
        return dialog.textValue().strip() if is_fine else None

    def unsaved(self, name: str) -> Unsaved:
        """Ask what becomes of edits that are not saved."""
        box = QtWidgets.QMessageBox(self._parent)
        box.setIcon(QtWidgets.QMessageBox.Icon.NoIcon)
        box.setWindowTitle(tr(msg("Not saved")))
        box.setText(tr(msg("{name} has edits that are not saved.", name=name)))
        save = box.addButton(tr(msg("&Save")), QtWidgets.QMessageBox.ButtonRole.AcceptRole)
        discard = box.addButton(tr(msg("&Drop them")), QtWidgets.QMessageBox.ButtonRole.DestructiveRole)
        box.addButton(tr(msg("&Go on working")), QtWidgets.QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(save)
        box.exec()
        clicked = box.clickedButton()
        return "save" if clicked is save else "discard" if clicked is discard else "cancel"

    def changed_on_disk(self, name: str) -> OnDisk:
        """Ask what to do about a file that another program changed."""
        box = QtWidgets.QMessageBox(self._parent)
        box.setIcon(QtWidgets.QMessageBox.Icon.NoIcon)
        box.setWindowTitle(tr(msg("Changed by another program")))
        box.setText(tr(msg("{name} was changed by another program since it was read here.", name=name)))
        over = box.addButton(tr(msg("&Write over it")), QtWidgets.QMessageBox.ButtonRole.DestructiveRole)
        again = box.addButton(tr(msg("&Read it again, dropping my edits")), QtWidgets.QMessageBox.ButtonRole.ResetRole)
        keep = box.addButton(tr(msg("&Do neither")), QtWidgets.QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(keep)
        box.exec()
        clicked = box.clickedButton()
        return "overwrite" if clicked is over else "reread" if clicked is again else "cancel"

    def sure(self, title: str, text: str, act: str) -> bool:
        """Ask before something that cannot be taken back."""
        box = QtWidgets.QMessageBox(self._parent)
        box.setIcon(QtWidgets.QMessageBox.Icon.NoIcon)
        box.setWindowTitle(title)
        box.setText(text)
        go = box.addButton(act, QtWidgets.QMessageBox.ButtonRole.AcceptRole)
        box.setDefaultButton(box.addButton(tr(msg("&Leave it")), QtWidgets.QMessageBox.ButtonRole.RejectRole))
        box.exec()
        return box.clickedButton() is go
