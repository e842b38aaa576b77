"""What the architecture tests share: the modules of the house, and what each of them imports."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

HOUSE: Final = "beeworkbook"
CHECKOUT: Final = Path(__file__).resolve().parents[2]
PACKAGE: Final = CHECKOUT / HOUSE


@dataclass(frozen=True)
class Import:
    """One name that a module brings in, and whether only when a function runs."""

    module: str
    line: int
    late: bool


@cache
def modules() -> dict[str, Path]:
    """Every module of the house by its dotted name."""
    return {dotted(path): path for path in sorted(PACKAGE.rglob("*.py"))}


def dotted(path: Path) -> str:
    """The dotted name of a file of the house."""
    parts = path.relative_to(CHECKOUT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def room(module: str) -> str:
    """The room that a module of the house belongs to; the package itself is the doorstep."""
    parts = module.split(".")
    return parts[1] if len(parts) > 1 else "doorstep"


def imports(module: str) -> list[Import]:
    """All that a module imports, inside functions and for types too."""
    path = modules()[module]
    tree = ast.parse(path.read_text(encoding="utf-8"))
    package = module if path.name == "__init__.py" else module.rpartition(".")[0]
    return list(_imports(tree, package, late=False))


def _imports(node: ast.AST, package: str, *, late: bool) -> Iterator[Import]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.Import):
            for name in child.names:
                yield Import(name.name, child.lineno, late)
        elif isinstance(child, ast.ImportFrom):
            for found in _from(child, package):
                yield Import(found, child.lineno, late)
        elif isinstance(child, ast.Call) and (named := _imported_by_call(child)):
            yield Import(named, child.lineno, late)
        inside = late or isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        yield from _imports(child, package, late=inside)


def _from(node: ast.ImportFrom, package: str) -> Iterator[str]:
    base = node.module or ""
    if node.level:
        above = package.split(".")[: len(package.split(".")) - node.level + 1]
        base = ".".join([*above, *filter(None, [base])])
    for name in node.names:
        yield f"{base}.{name.name}"


def _imported_by_call(node: ast.Call) -> str | None:
    called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
    if called not in {"import_module", "__import__"} or not node.args:
        return None
    first = node.args[0]
    return first.value if isinstance(first, ast.Constant) and isinstance(first.value, str) else None
