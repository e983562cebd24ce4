"""The shape of the project: what its documents promise of the code, held to the code."""

import ast
import importlib
import inspect
import pkgutil
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any, get_type_hints

import pytest

import chartgen
import chartgen.physics
from chartgen import quantities
from chartgen.layout.layout_file import every_layout_name
from chartgen.quantities import Unit
from chartgen.reference.tables import load_bibliography

REPO = Path(__file__).parents[1]
PACKAGE = Path(chartgen.__file__).parent
LONGEST = 300
VAGUE = {"utils", "util", "helpers", "helper", "common", "manager", "misc", "tools", "base"}
UNITS = {unit.label for unit in vars(quantities).values() if isinstance(unit, Unit)}
KEYS = frozenset(load_bibliography())
# Pieces, so that this file does not hold the words it looks for.
PRIVATE = ["/" + "work/", "/" + "tmp/", "/" + "root/", "/" + "home/", "seed " + "document"]
PRIVATE += ["tran" + "script", "research " + "notes"]
TEXTS = {".py", ".toml", ".md", ".txt", ".cfg", ".yml", ".yaml", ".json", ".csv", ".sh", ""}


def modules(package: ModuleType) -> Iterator[ModuleType]:
    yield package
    for found in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        if not found.name.endswith("__main__"):
            yield importlib.import_module(found.name)


FORMULAS = [
    formula
    for module in modules(chartgen.physics)
    for name, formula in inspect.getmembers(module, inspect.isfunction)
    if formula.__module__ == module.__name__ and not name.startswith("_")
]
MODULES = sorted(PACKAGE.rglob("*.py"))
each_formula = pytest.mark.parametrize(
    "formula", FORMULAS, ids=lambda f: f"{f.__module__.rpartition('.')[2]}.{f.__name__}"
)
each_module = pytest.mark.parametrize(
    "path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE))
)


@cache
def project_files() -> list[Path]:
    """Return the text files a person would be given: no caches, no build, no hidden folders."""
    folders = ["chartgen", "layouts", "tests", "output_examples", ".ci"]
    found = [path for path in REPO.iterdir() if path.is_file() and path.name != ".coverage"]
    for folder in folders:
        found += [path for path in (REPO / folder).rglob("*") if path.is_file()]
    return [p for p in found if p.suffix in TEXTS and "__pycache__" not in p.parts]


# ---------------------------------------------------------------------------- formulas


@each_formula
def test_a_formula_states_its_units_in_brackets(formula: Callable[..., Any]) -> None:
    groups = re.findall(r"\[([^\]]+)\]", inspect.getdoc(formula) or "")
    stated = {unit.strip() for group in groups for unit in group.split(",")}
    for name, hint in get_type_hints(formula, include_extras=True).items():
        for unit in getattr(hint, "__metadata__", ()):
            if isinstance(unit, Unit) and unit.label:
                assert unit.label in stated, f"{name}: unit [{unit.label}] is not stated"


@each_formula
def test_a_formula_explains_every_argument_and_its_result(formula: Callable[..., Any]) -> None:
    text = inspect.getdoc(formula) or ""
    assert "\nReturns\n-------\n" in text
    for name in inspect.signature(formula).parameters:
        assert re.search(rf"^(\w+, )*{name}(, \w+)*$", text, re.MULTILINE), name


@each_formula
def test_a_formula_names_where_it_is_from(formula: Callable[..., Any]) -> None:
    text = inspect.getdoc(formula) or ""
    _, heading, references = text.partition("\nReferences\n----------\n")
    assert heading, "there is no section References"
    cited = set(re.findall(r"\[([\w.-]+)\]", references))
    assert cited <= KEYS
    assert references.strip()


@each_formula
def test_a_formula_takes_only_named_arguments(formula: Callable[..., Any]) -> None:
    parameters = inspect.signature(formula).parameters.values()
    assert {parameter.kind for parameter in parameters} <= {inspect.Parameter.KEYWORD_ONLY}


def test_there_are_formulas_to_look_at() -> None:
    assert {"cutting_force", "seconds_per_turn"} <= {formula.__name__ for formula in FORMULAS}


# ----------------------------------------------------------------------------- modules


@each_module
def test_a_module_can_be_read_at_a_sitting(path: Path) -> None:
    assert len(path.read_text("utf-8").splitlines()) <= LONGEST


@each_module
def test_a_module_is_named_for_what_it_holds(path: Path) -> None:
    assert not VAGUE & set(re.split(r"[_\W]+", path.relative_to(PACKAGE).as_posix()))


@each_module
def test_a_module_says_what_it_is_for(path: Path) -> None:
    assert ast.get_docstring(ast.parse(path.read_text("utf-8")))


@each_module
def test_every_publication_cited_in_a_docstring_is_in_the_bibliography(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    documented = (ast.Module, ast.ClassDef, ast.FunctionDef)
    texts = [
        ast.get_docstring(node) or "" for node in ast.walk(tree) if isinstance(node, documented)
    ]
    words = {word for text in texts for word in re.findall(r"\[([^\]\n]+)\]", text)}
    # Keys are capitals, digits and hyphens; units in brackets are told apart by name.
    cited = {word for word in words - UNITS if re.fullmatch(r"[A-Z][\w.-]*[A-Z0-9][\w.-]*", word)}
    assert cited <= KEYS


def test_only_the_command_line_prints_or_exits() -> None:
    doors = {"cli", "__main__.py"}
    for path in MODULES:
        if {path.name, path.parent.name} & doors:
            continue
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                assert node.func.id not in {"print", "exit", "quit", "input"}, path.name
            if isinstance(node, ast.Attribute):
                assert ast.unparse(node) not in {"sys.exit", "click.echo", "sys.stdout"}, path.name


def test_nothing_asks_the_clock_or_chance() -> None:
    """The same inputs give the same bytes; only the progress bar looks at a clock."""
    for path in MODULES:
        if path.parent.name == "cli":
            continue
        tree = ast.parse(path.read_text("utf-8"))
        named = {a.name for n in ast.walk(tree) if isinstance(n, ast.Import) for a in n.names}
        named |= {n.module or "" for n in ast.walk(tree) if isinstance(n, ast.ImportFrom)}
        assert not named & {"time", "random", "uuid", "secrets"}, path.name
        asked = [ast.unparse(n) for n in ast.walk(tree) if isinstance(n, ast.Attribute)]
        assert not [a for a in asked if a.endswith((".now", ".today", ".utcnow"))], path.name


def test_the_package_lists_every_stage_and_nothing_else() -> None:
    listed = re.findall(r"^(\w+) +\S", inspect.getdoc(chartgen) or "", re.MULTILINE)
    stages = {
        path.stem
        for path in PACKAGE.iterdir()
        if (path.suffix == ".py" or (path / "__init__.py").exists())
        and not path.name.startswith("__")
    }
    missing = stages - set(listed)
    assert not missing
    lines = {line.split()[0] for line in (inspect.getdoc(chartgen) or "").splitlines()[4:] if line}
    assert lines <= stages


def test_imports_go_one_way(tmp_path: Path) -> None:
    pytest.importorskip("importlinter")
    command = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run(
        [command, "--no-cache", "--config", str(REPO / "pyproject.toml")],
        check=False,
        capture_output=True,
        text=True,
        cwd=tmp_path,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_every_layout_is_shipped() -> None:
    in_repo = {path.stem for path in (REPO / "layouts").glob("*.toml")}
    assert in_repo
    assert set(every_layout_name()) == in_repo
    assert {path.suffix for path in (REPO / "layouts").iterdir()} == {".toml"}


# ------------------------------------------------------------------------------- files


@pytest.mark.parametrize("word", PRIVATE)
def test_no_file_tells_of_the_machine_it_was_made_on(word: str) -> None:
    def holds(path: Path) -> bool:
        return word in path.read_text("utf-8", errors="replace").lower()

    assert [str(p.relative_to(REPO)) for p in project_files() if holds(p)] == []


def test_no_test_file_is_longer_than_can_be_read_at_a_sitting() -> None:
    lengths = {
        str(path.relative_to(REPO)): len(path.read_text("utf-8").splitlines())
        for path in (REPO / "tests").rglob("*.py")
    }
    assert {name: n for name, n in lengths.items() if n > LONGEST} == {}


def test_the_top_level_holds_what_the_project_says_it_holds() -> None:
    seen = {path.name for path in REPO.iterdir() if not path.name.startswith(".")}
    named = {"README.md", "DEVELOPERS.md", "pyproject.toml", "chartgen", "layouts", "tests"}
    named |= {"output_examples", "LICENSE"}
    assert seen - {"dist", "build", "cards"} <= named
