"""Standard scales, and the one that a sheet names."""

import re

# ISO 5455:1979, table 1, reduction scales for buildings, and full size; from memory.
ISO_5455 = {1, 2, 5, 10, 20, 50, 100, 200}
# Architect's scales, inches to the foot: 3, 1 1/2, 1, 3/4, 1/2, 3/8, 1/4, 3/16, 1/8, 3/32, 1/16; common practice.
FOOT_INCH = {12 / inches for inches in (3, 1.5, 1, 0.75, 0.5, 0.375, 0.25, 0.1875, 0.125, 0.09375, 0.0625)}


def printed_ratio(text: str) -> float:
    """The scale that the sheet itself names, such as 1:16 or 1:20."""
    found = re.findall(r"\b1:(\d+(?:[.,]\d+)?)", text)
    assert len(set(found)) == 1, found
    return float(found[0].replace(",", "."))
