"""No text for people stands in the code outside the markers ``msg`` and ``msg_plural``.

A heuristic: texts with words in them, given straight to calls that show them. It reads the layers above ``words``.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import elevation

PACKAGE = Path(elevation.__file__).parent

# Calls whose every text argument is shown to a person, or read out to them.
SHOWING = frozenset(
    """
    setText setPlainText setHtml setTitle setWindowTitle setToolTip setStatusTip setWhatsThis setPlaceholderText
    setAccessibleName setAccessibleDescription setInformativeText setDetailedText setPrefix setSuffix setIconText
    setHeaderLabels setHorizontalHeaderLabels setVerticalHeaderLabels setLabelText setButtonText setSpecialValueText
    showMessage addAction addMenu addTab addRow addSection addItems appendPlainText appendRow insertPlainText
    QLabel QAction QPushButton QToolButton QCheckBox QRadioButton QGroupBox QDockWidget QMenu QCommandLinkButton
    QTableWidgetItem QTreeWidgetItem QStandardItem QListWidgetItem QGraphicsSimpleTextItem QGraphicsTextItem
    addToolBar QToolBar QMessageBox QProgressDialog information question critical getText getItem
    """.split()  # noqa: SIM905 - sixty names read better in rows
)
# Calls of which only the first argument is shown; the rest are ids and data.
SHOWING_FIRST = frozenset({"addItem"})
# Records of a drawing: the place of the text that is shown, or read out by a viewer of the exported file.
SHOWN_IN_RECORD = {"Text": 1, "Dimension": 6, "Group": 2}
RECORD_KEYWORDS = frozenset({"text", "title", "description"})
# Marks and symbols that no language changes.
SAME_EVERYWHERE = frozenset({"in", "mm", "cm", "PNG", "SVG", "PDF", "DXF", "CSV", "JSON"})

WORD = re.compile(r"[^\W\d_]{2,}")


def literals(node: ast.expr) -> Iterator[str]:
    """Texts that an argument is made of, not looking into calls: what those return is their matter."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.JoinedStr):
        for part in node.values:
            if isinstance(part, ast.Constant) and isinstance(part.value, str):
                yield part.value
    elif isinstance(node, ast.BinOp):
        yield from literals(node.left)
        yield from literals(node.right)
    elif isinstance(node, ast.IfExp):
        yield from literals(node.body)
        yield from literals(node.orelse)
    elif isinstance(node, ast.List | ast.Tuple):
        for element in node.elts:
            yield from literals(element)
    elif isinstance(node, ast.Starred):
        yield from literals(node.value)


def unmarked(source: str, name: str) -> list[str]:
    """Places (``file:line: text``) of texts that are shown without being marked."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call):
            continue
        called = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
        if called == "setText" and len(node.args) == 2:
            # A picture's metadata: the key is the format's, the value is shown.
            arguments = node.args[1:]
        elif called in SHOWING:
            arguments = [*node.args, *(keyword.value for keyword in node.keywords if keyword.arg != "objectName")]
        elif called in SHOWING_FIRST:
            arguments = node.args[:1]
        elif called in SHOWN_IN_RECORD or called == "Picture":
            place = SHOWN_IN_RECORD.get(called, len(node.args))
            arguments = [
                *node.args[place : place + 1],
                *(keyword.value for keyword in node.keywords if keyword.arg in RECORD_KEYWORDS),
            ]
        else:
            continue
        for argument in arguments:
            found += [
                f"{name}:{node.lineno}: {text!r}"
                for text in literals(argument)
                if WORD.search(text) and text.strip() not in SAME_EVERYWHERE
            ]
    return found


LAYERS = [
    "trade", "room", "setting_out", "findings", "planning", "handles", "sheet", "output", "session", "window",
]  # fmt: skip


@pytest.mark.parametrize("layer", LAYERS)
def test_every_text_for_people_is_marked(layer: str) -> None:
    found: list[str] = []
    for path in sorted((PACKAGE / layer).rglob("*.py")):
        found += unmarked(path.read_text("utf-8"), path.relative_to(PACKAGE.parent).as_posix())
    assert found == []


@pytest.mark.parametrize(
    ("source", "count"),
    [
        ('label.setText("Rod height")', 1),
        ('label.setText(f"{n} rings")', 1),
        ('QLabel("Rod " + name, self)', 1),
        ('menu.addAction("Open" if new else "Close")', 2),
        ('table.setHorizontalHeaderLabels(["What", "How much"])', 2),
        ('box.addItem("Half round", "half-round")', 1),
        ('label.setText(tr(msg("Rod height")))', 0),
        ('label.setText("—")', 0),
        ('label.setText(f"{a} × {b}")', 0),
        ('label.setText("mm")', 0),
        ('picture.setText("Title", name)', 0),
        ('Text((0, 0), "Rod", 2.5, "text", "middle")', 1),
        ('Text((0, 0), figure, 2.5, "text", "middle")', 0),
        ('Group(ref, "rod", f"Rod, {name}", records)', 1),
        ('Picture(groups, 20.0, title="Elevation")', 1),
        ('widget.setObjectName("rod_height")', 0),
        ('box.addItem(name, "half-round")', 0),
    ],
)
def test_the_search_itself(source: str, count: int) -> None:
    assert len(unmarked(source, "sample.py")) == count
