"""Jobs for the command, and their cards as it writes them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen.description.job_file import example_job_text

Inside = Callable[..., tuple[int, str, str]]


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
