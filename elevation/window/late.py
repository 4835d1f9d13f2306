"""Panels of closed drawers, made when they are first wanted, so that the first picture does not wait for them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from PySide6.QtWidgets import QVBoxLayout, QWidget

Panel = TypeVar("Panel", bound=QWidget)


class Late(Generic[Panel]):
    """A panel and the place where it will stand.

    Parameters
    ----------
    make : callable
        Makes the panel; called once.

    Attributes
    ----------
    place : QWidget
        Stands in the drawer from the start.
    """

    def __init__(self, make: Callable[[], Panel]) -> None:
        self._make = make
        self._made: Panel | None = None
        self.place = QWidget()
        self._box = QVBoxLayout(self.place)
        self._box.setContentsMargins(0, 0, 0, 0)

    @property
    def is_made(self) -> bool:
        """Whether the panel is there already."""
        return self._made is not None

    def get(self) -> Panel:
        """The panel, made now if need be."""
        if self._made is None:
            self._made = self._make()
            self._box.addWidget(self._made)
            # In an open drawer it is seen at once, and not when Qt next looks.
            self._made.show()
        return self._made
