"""`benchalong` and `python -m benchalong`."""

from __future__ import annotations

import sys

from benchalong.commands import run


def main() -> int:
    """The exit code of the command line as typed."""
    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
