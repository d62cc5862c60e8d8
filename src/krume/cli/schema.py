"""`krume schema`: the JSON Schema of a command's answer."""

import click

from krume.cli.envelope import envelope
from krume.cli.options import common, wants_json
from krume.cli.output import write_json
from krume.usecases import Asked


@click.command("schema")
@click.argument("of", metavar="COMMAND")
@common
def command(of: str, asked: Asked) -> int:  # noqa: ARG001 - every command takes the common options
    """The JSON Schema of a command's --json answer.

    Draft 2020-12. The schema alone is printed; with --json it is the `result` of the usual
    object.
    """
    from krume.usecases import command_schema

    answer = command_schema(of)
    write_json(envelope("schema", answer) if wants_json() else answer.result)
    return 0
