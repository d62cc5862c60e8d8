"""The codes of questions and notices, read out of the source with the words that go with them."""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass

from tests.house.source import Function, Module, modules

CODE = re.compile(r"^[a-z0-9]+(-[a-z0-9]+)+$")
# By what is called: whether it asks or notes, and where its code and its words stand.
MAKERS = {
    "Problem": ("question", 0, 3),
    "ask": ("question", 0, 1),
    "Notice": ("notice", 0, 1),
    "note": ("notice", 0, 1),
    # In tables: beside which cell, then the code and the words.
    "Fault": ("question", 1, 2),
    "fault": ("question", 1, 2),
    "Flag": ("notice", 1, 2),
}


@dataclass(frozen=True, slots=True, order=True)
class Told:
    """A code, whether it is a question or a notice, and its words as far as they are fixed."""

    code: str
    kind: str
    words: str
    module: str


def told(module: Module) -> Iterator[Told]:
    """Each question and notice that a module makes with a code of its own."""
    for scope in (module.tree, *module.functions()):
        named = _texts_named_in(scope)
        for call in _calls_of(scope):
            yield from _told_by(call, named, module.name)


def _told_by(call: ast.Call, named: dict[str, ast.expr], module: str) -> Iterator[Told]:
    name = getattr(call.func, "id", getattr(call.func, "attr", "")).lstrip("_")
    if name not in MAKERS:
        return
    kind, code_at, words_at = MAKERS[name]
    code = _argument(call, code_at, "code")
    if isinstance(code, ast.Constant) and CODE.match(str(code.value)):
        words = _argument(call, words_at, "ask" if kind == "question" else "text")
        if isinstance(words, ast.Name):
            words = named.get(words.id)
        yield Told(str(code.value), kind, fixed_words(words), module)


def _own_nodes(scope: ast.AST) -> Iterator[ast.AST]:
    for child in ast.iter_child_nodes(scope):
        if not isinstance(child, Function):
            yield child
            yield from _own_nodes(child)


def _calls_of(scope: ast.AST) -> list[ast.Call]:
    return [node for node in _own_nodes(scope) if isinstance(node, ast.Call)]


def _texts_named_in(scope: ast.AST) -> dict[str, ast.expr]:
    """The first text that each name stands for."""
    found: dict[str, ast.expr] = {}
    for node in _own_nodes(scope):
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
            found.setdefault(node.targets[0].id, node.value)
    return found


def _argument(call: ast.Call, at: int, name: str) -> ast.expr | None:
    for keyword in call.keywords:
        if keyword.arg == name:
            return keyword.value
    return call.args[at] if at < len(call.args) else None


def fixed_words(node: ast.expr | None) -> str:
    """A text as written, with three dots where a value is put in.

    >>> fixed_words(ast.parse("f'{n} eggs: which size?'", mode="eval").body)
    '… eggs: which size?'
    """
    if isinstance(node, ast.Constant):
        return str(node.value)
    if isinstance(node, ast.JoinedStr):
        return "".join(fixed_words(part) for part in node.values)
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        return fixed_words(node.left) + fixed_words(node.right)
    return "…"


def every_code() -> list[Told]:
    """All of them, in the order of the alphabet."""
    return sorted({one for module in modules() for one in told(module)})
