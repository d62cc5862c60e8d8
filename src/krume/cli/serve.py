"""`krume serve`: the book's pages, on this machine alone."""

import click

from krume.cli.options import common
from krume.cli.ranges import Whole
from krume.usecases import Asked


@click.command("serve")
@click.option(
    "--port",
    type=Whole(0, 65535),
    default=8710,
    show_default=True,
    help="Port on 127.0.0.1; 0 takes any that is free.",
)
@common
def command(asked: Asked, port: int) -> int:
    """The web app on 127.0.0.1, until you stop it with Ctrl-C.

    No page loads anything from elsewhere, and nothing leaves this machine.
    """
    from krume.web import serve

    serve(asked.book, port=port, tell=lambda address: click.echo(f"The book is open at {address}"))
    return 0
