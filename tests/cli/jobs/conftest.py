"""Jobs for the command; stand-ins for what plans and words them, where that is not there yet."""

import sys
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from chartgen import pipeline
from chartgen.description.job_file import example_job_text
from chartgen.layout.layout_file import Layout, Side, every_layout_name
from chartgen.model.job import Job
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.wording.card import PrintedCard, make_card
from chartgen.wording.printed_job import PrintedJob, PrintedSketch, PrintedStep

Inside = Callable[..., tuple[int, str, str]]
_PLANS, _WORDS = "chartgen.planning.run", "chartgen.wording.job_card"


@pytest.fixture(autouse=True)
def planned(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let a small plan and a small page stand in for those that are not there yet."""
    if find_spec(_PLANS) is None or find_spec(_WORDS) is None:
        for name, attribute, value in (
            (_PLANS, "plan_job", lambda *parts: parts),
            (_WORDS, "job_cards", _cards),
        ):
            module: Any = ModuleType(name)
            setattr(module, attribute, value)
            monkeypatch.setitem(sys.modules, name, module)
    if "set-up-card-a5" not in every_layout_name():
        known = pipeline.layout_called
        monkeypatch.setattr(
            pipeline,
            "layout_called",
            lambda name, own: _layout(name) if name.endswith("-card-a5") else known(name, own),
        )


@pytest.fixture
def job_file(tmp_path: Path) -> Callable[..., str]:
    """Return a function: changes of the example job, (old, new) each -> its file's name."""

    def written(*changes: tuple[str, str], name: str = "job.toml") -> str:
        text = example_job_text().decode()
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        (tmp_path / name).write_text(text, "utf-8")
        return name

    return written


@pytest.fixture
def shop_file(tmp_path: Path, example_with: Callable[..., str]) -> Callable[..., str]:
    """Return a function: changes of the built-in shop, (old, new) each -> its file's name."""

    def written(*changes: tuple[str, str], name: str = "shop.toml") -> str:
        (tmp_path / name).write_text(example_with(*changes), "utf-8")
        return name

    return written


@pytest.fixture
def job_cards(inside: Inside, job_file: Callable[..., str], tmp_path: Path) -> list[Path]:
    """Return the cards of the example job for the built-in shop: of the set-up, of the batch."""
    code, out, err = inside("job", job_file(), "--out", "printed")
    assert (code, err) == (0, "")
    return [tmp_path / line for line in out.splitlines() if line.endswith(".pdf")]


def _layout(name: str) -> Layout:
    blocks = ("heading", "cautions", "assumptions", "check-rule", "deference", "foot", "identity")
    side = Side(reading_distance=400.0, margin=8.0, columns=1, blocks=blocks)
    return Layout(
        name=name,
        title="Job",
        card=name.removesuffix("-a5"),
        page_name="A5 landscape",
        page=(210.0, 148.0),
        pouch="A5",
        cell=("speed", "feed", "sign"),
        row_pitch=1.35,
        rule_every=3,
        sides=(side,),
    )


def _cards(plan: tuple[Shop, Job, Material]) -> list[PrintedCard[PrintedJob]]:
    shop, job, material = plan
    names = ["set-up-card-a5", *(["batch-card-a5"] if job.quantity > 1 else [])]
    return [
        make_card(shop, _body(shop, job, name), (material,), shop.blades, name, job.name, job=job)
        for name in names
    ]


def _body(shop: Shop, job: Job, layout: str) -> PrintedJob:
    batch = layout.startswith("batch")
    speed = f"{shop.lathe.motor.plate_power:.0f}"
    return PrintedJob(
        title=job.name,
        subtitle=f"{job.quantity} pieces of {job.material}",
        sketch=PrintedSketch(
            boxes=(), dimensions=(), labels=(), description="Bar 30 mm, 40 mm out of the jaws."
        ),
        headings=("", "step", "rev/\nmin", "mm/rev"),
        right=frozenset({0, 2, 3}),
        steps=(
            PrintedStep(number="1", what="hold", cells=("", ""), lines=("Close it.",), watch=""),
            PrintedStep(
                number="2",
                what="turn",
                cells=(speed, "0.10"),
                lines=("One pass.", "Oil."),
                watch="the chip",
            ),
        ),
        facts=(("Hold", "30 mm in the jaws"), ("Blade", shop.blades[0].name)),
        checklist=("Key out of the chuck.",),
        dig_in=("Stop the spindle.",),
        notes=("Long chips.",),
        wear=("Parting blade: after 2 pieces.",) if batch else (),
        boxes=tuple(str(n + 1) for n in range(job.quantity)) if batch else (),
        legend=(),
    )
