"""Jobs for the command, and their cards as it writes them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen import pipeline
from chartgen.description.job_file import example_job_text
from chartgen.layout.layout_file import Layout, Side, every_layout_name

Inside = Callable[..., tuple[int, str, str]]
_OF_A_JOB = ("set-up-card-a5", "batch-card-a5")


@pytest.fixture(autouse=True)
def laid_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let a small page stand in for the layouts of a job, where they are not there yet."""
    if "set-up-card-a5" not in every_layout_name():
        known = pipeline.layout_called
        monkeypatch.setattr(
            pipeline,
            "layout_called",
            lambda name, own: _layout(name) if name in _OF_A_JOB else known(name, own),
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
