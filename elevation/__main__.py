"""``python -m elevation`` and the ``elevation`` command."""

from __future__ import annotations

import gc
import sys


def main() -> int:
    """Run the process's command line and return the exit code."""
    # What is loaded stays: looking for what could be let go of only takes time. Commands turn the collector on again.
    gc.disable()
    from elevation.commands.main import main as run

    return run()


if __name__ == "__main__":
    sys.exit(main())
