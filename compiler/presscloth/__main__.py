"""`python -m presscloth`."""

import sys

from presscloth.cli import main

if __name__ == "__main__":
    sys.exit(main())
