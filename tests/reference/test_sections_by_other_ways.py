"""Sections of stacked strips against numerical integration and the equation of torsion.

The oracle of the torsion constant is the stress function on a grid, Δψ = -2 with ψ = 0 on the
outline and J = 2 ∫ ψ dA, extrapolated from two grids.
"""

import numpy as np
import pytest
from scipy.integrate import quad  # type: ignore[import-untyped]
from scipy.sparse import csc_matrix  # type: ignore[import-untyped]
from scipy.sparse.linalg import spsolve  # type: ignore[import-untyped]

from chartgen.physics.blade_section import (
    rectangular_section,
    stacked_section,
    stacked_torsion_constant,
)
from chartgen.quantities import FloatArray

# Thicknesses and heights from the bottom up.
STACKS = {
    "T, land 3 x 3 on a web of 2": ((2.0, 3.0), (23.0, 3.0)),
    "T, land 4 x 3 on a web of 2": ((2.0, 4.0), (17.0, 3.0)),
    "T, land 3 x 3 on a web of 1": ((1.0, 3.0), (18.0, 3.0)),
    "T, land lower than thick": ((1.0, 4.0), (18.0, 1.0)),
    "two halves": ((2.0, 3.0), (10.0, 10.0)),
    "taper in four": ((1.5, 2.0, 2.5, 3.0), (4.0, 4.0, 4.0, 4.0)),
    "taper in eight": ((2.0, 2.0, 2.5, 2.5, 3.0, 3.0, 3.5, 3.5), (2.0,) * 8),
    "rib in the middle": ((2.0, 3.0, 2.0), (10.0, 5.0, 10.0)),
}
every_stack = pytest.mark.parametrize(
    ("thicknesses", "heights"),
    [(np.array(thick), np.array(high)) for thick, high in STACKS.values()],
    ids=STACKS,
)


def torsion_on_a_grid(thicknesses: FloatArray, heights: FloatArray, step: float) -> float:
    """Return the torsion constant from the stress function on a square grid."""
    bounds = np.concatenate([[0.0], np.cumsum(heights)])
    across = np.arange(0.0, np.max(thicknesses) + step / 2.0, step) - np.max(thicknesses) / 2.0
    inside = np.zeros((len(across), round(bounds[-1] / step) + 1), dtype=bool)
    for row in range(1, inside.shape[1] - 1):
        height = row * step
        touching = (bounds[:-1] - 1e-9 <= height) & (height <= bounds[1:] + 1e-9)
        inside[:, row] = np.abs(across) < np.min(thicknesses[touching]) / 2.0 - 1e-9
    count = int(inside.sum())
    number = np.full(inside.shape, -1)
    number[inside] = np.arange(count)
    pairs = []
    for here, there in ((number[:-1], number[1:]), (number[:, :-1], number[:, 1:])):
        both = (here >= 0) & (there >= 0)
        pairs += [(here[both], there[both]), (there[both], here[both])]
    rows = np.concatenate([np.arange(count), *(pair[0] for pair in pairs)])
    columns = np.concatenate([np.arange(count), *(pair[1] for pair in pairs)])
    entries = np.concatenate([np.full(count, 4.0), np.full(len(rows) - count, -1.0)])
    stress = spsolve(csc_matrix((entries, (rows, columns))), np.full(count, 2.0 * step**2))
    return float(2.0 * stress.sum() * step**2)


def torsion_by_stress_function(thicknesses: FloatArray, heights: FloatArray) -> float:
    coarse, fine = (torsion_on_a_grid(thicknesses, heights, step) for step in (0.25, 0.125))
    return fine + (fine - coarse) / 3.0


@pytest.mark.parametrize(("thickness", "height"), [(2.0, 2.0), (2.0, 6.0), (3.0, 26.0)])
def test_a_rectangle_twists_as_its_stress_function_says(thickness: float, height: float) -> None:
    exact = torsion_by_stress_function(np.array([thickness]), np.array([height]))
    section = rectangular_section(thickness=thickness, height=height)
    # A square of 2 mm has 8 and 16 steps across it.
    assert section.torsion_constant == pytest.approx(exact, rel=5e-4)


@every_stack
def test_a_stack_is_counted_a_little_less_stiff_against_twisting_than_it_is(
    thicknesses: FloatArray, heights: FloatArray
) -> None:
    exact = torsion_by_stress_function(thicknesses, heights)
    estimate = stacked_torsion_constant(thicknesses=thicknesses, heights=heights)
    assert 0.87 * exact < estimate < exact


def test_the_plain_sum_of_strips_would_be_unsafe_for_a_blade_with_a_land() -> None:
    thicknesses, heights = np.array([2.0, 4.0]), np.array([17.0, 3.0])
    plain = np.sum(heights * thicknesses**3) / 3.0
    excess = plain / torsion_by_stress_function(thicknesses, heights)
    assert excess == pytest.approx(1.58, abs=0.005)


@every_stack
def test_second_moments_are_the_integrals_over_the_stack(
    thicknesses: FloatArray, heights: FloatArray
) -> None:
    # By thin slices: a sum over midpoints, off by the square of the slice.
    step = 0.002
    slices = round(np.sum(heights) / step)
    height = (np.arange(slices) + 0.5) * step
    thick = thicknesses[np.searchsorted(np.cumsum(heights), height)]
    area = thick * step
    axis = np.sum(area * height) / np.sum(area)
    section = stacked_section(thicknesses=thicknesses, heights=heights)
    second_moment = np.sum(area * (height - axis) ** 2)
    farther = max(axis, np.sum(heights) - axis)
    assert section.top_distance == pytest.approx(np.sum(heights) - axis, rel=1e-6)
    assert section.second_moment == pytest.approx(second_moment, rel=1e-6)
    assert section.section_modulus == pytest.approx(second_moment / farther, rel=1e-6)
    assert section.lateral_second_moment == pytest.approx(np.sum(thick**3) * step / 12.0, rel=1e-6)


@every_stack
def test_shear_area_is_that_of_the_energy_of_the_shear_stress(
    thicknesses: FloatArray, heights: FloatArray
) -> None:
    section = stacked_section(thicknesses=thicknesses, heights=heights)
    bounds = np.concatenate([[0.0], np.cumsum(heights)])
    axis = bounds[-1] - float(np.asarray(section.top_distance))

    def moment_above(height: float) -> float:
        low = np.maximum(bounds[:-1], height)
        parts = thicknesses * (bounds[1:] ** 2 - low**2) / 2.0
        arms = thicknesses * (bounds[1:] - low) * axis
        return float(np.sum((parts - arms)[bounds[1:] > height]))

    energy = sum(
        quad(lambda y, t=t: moment_above(y) ** 2 / t, low, high, epsrel=1e-11)[0]
        for t, low, high in zip(thicknesses, bounds[:-1], bounds[1:], strict=True)
    )
    assert section.shear_area == pytest.approx(section.second_moment**2 / energy, rel=1e-9)


def test_a_rectangle_cut_into_strips_is_the_rectangle() -> None:
    whole = rectangular_section(thickness=2.0, height=26.0)
    cut = stacked_section(thicknesses=np.full(3, 2.0), heights=np.array([5.0, 11.0, 10.0]))
    for name in (
        "shear_area",
        "second_moment",
        "section_modulus",
        "top_distance",
        "lateral_second_moment",
    ):
        assert getattr(cut, name) == pytest.approx(getattr(whole, name), rel=1e-12)
    assert cut.torsion_constant == pytest.approx(whole.torsion_constant, rel=1e-4)


def test_many_stacks_at_once_are_what_each_is_alone() -> None:
    heights = np.array([17.0, 3.0])
    lands = np.array([2.0, 3.0, 4.0])
    thicknesses = np.stack([np.full(3, 2.0), lands])
    at_once = stacked_section(
        thicknesses=thicknesses, heights=np.broadcast_to(heights[:, np.newaxis], (2, 3))
    )
    for index, land in enumerate(lands):
        alone = stacked_section(thicknesses=np.array([2.0, land]), heights=heights)
        for name in ("shear_area", "second_moment", "top_distance", "torsion_constant"):
            assert getattr(at_once, name)[index] == pytest.approx(getattr(alone, name), rel=1e-13)
