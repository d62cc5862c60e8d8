"""`python -m krume`: the command line."""

import sys

from krume.cli import main

sys.exit(main())
