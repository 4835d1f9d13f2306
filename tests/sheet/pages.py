"""What tests of pages ask for: their texts, and that none leaves the page."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.sheet.records import Picture, Text
from elevation.sheet.type_metrics import text_width


def texts(pages: Sequence[Picture]) -> list[Text]:
    """All texts, page by page."""
    return [record for page in pages for group in page.groups for record in group.records if isinstance(record, Text)]


def check_inside(pages: Sequence[Picture]) -> None:
    """Assert that every text keeps clear of the edges that printers leave blank."""
    for page in pages:
        assert page.page is not None
        for text in texts([page]):
            wide = text_width(text.text, text.height, text.weight)
            if text.turn:
                assert 10.0 <= text.at[0] <= page.page.width_mm - 10.0
                continue
            left = text.at[0] - {"left": 0.0, "middle": wide / 2, "right": wide}[text.align]
            assert left >= 14.0, text.text
            assert left + wide <= page.page.width_mm - 14.0, text.text
            assert 10.0 <= text.at[1] <= page.page.height_mm - 10.0, text.text
