"""When something was kept: it stands in the history, and in no result."""

from datetime import UTC, datetime


def moment() -> str:
    """Now, as UTC ISO text to the millisecond."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")
