"""``python -m elevation`` and the ``elevation`` command."""

from __future__ import annotations

import sys

from elevation.commands.main import main

if __name__ == "__main__":
    sys.exit(main())
