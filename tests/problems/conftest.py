"""Let the tests of this folder import their made-up kinds of problem."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
