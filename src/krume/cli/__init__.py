"""How a person asks at the command line: parse, call one usecase, render."""

from krume.cli.group import krume_command, main

__all__ = ["krume_command", "main"]
