"""A folder as it is typed: an empty name is a slip, never the folder one stands in."""

from pathlib import Path

import click


class Folder(click.ParamType[Path]):
    """The name of a folder to write to or to look into."""

    name = "folder"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> Path:
        """Path of what was typed."""
        if isinstance(value, Path):
            return value
        if not str(value).strip():
            self.fail("the folder's name is empty. Type one, such as: sheets", param, ctx)
        return Path(str(value))
