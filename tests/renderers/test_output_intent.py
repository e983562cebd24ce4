"""The profile of the colours: sRGB to a colour engine and to the standard's own numbers."""

import io
import struct

import numpy as np
import pytest
from PIL import Image, ImageCms

from chartgen.renderers.output_intent import srgb_profile

# IEC 61966-2-1: chromaticities of the primaries and of the white D65.
PRIMARIES = {"r": (0.64, 0.33), "g": (0.30, 0.60), "b": (0.15, 0.06)}
D65 = (0.3127, 0.3290)
# ISO 15076-1, 7.2.16: the white of the connection space; Annex E: the linear Bradford matrix.
D50 = np.array([0.9642, 1.0, 0.8249])
BRADFORD = np.array(
    [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]]
)


def xyz(x: float, y: float) -> "np.ndarray[tuple[int], np.dtype[np.float64]]":
    return np.array([x / y, 1.0, (1.0 - x - y) / y])


def tags() -> dict[str, bytes]:
    profile = srgb_profile()
    (count,) = struct.unpack_from(">I", profile, 128)
    found = {}
    for number in range(count):
        name, start, length = struct.unpack_from(">4sII", profile, 132 + 12 * number)
        found[name.decode()] = profile[start : start + length]
    return found


def numbers(tag: bytes) -> list[float]:
    return [value / 0x10000 for (value,) in struct.iter_unpack(">i", tag[8:])]


def test_its_numbers_follow_from_the_primaries_and_the_white_of_the_standard() -> None:
    white = xyz(*D65)
    cone = BRADFORD @ white
    adaptation = np.linalg.inv(BRADFORD) @ np.diag((BRADFORD @ D50) / cone) @ BRADFORD
    columns = np.array([xyz(*PRIMARIES[name]) for name in "rgb"]).T
    adapted = adaptation @ (columns * np.linalg.solve(columns, white))
    found = tags()
    for column, name in enumerate("rgb"):
        assert numbers(found[f"{name}XYZ"]) == pytest.approx(adapted[:, column], abs=4e-4)
    assert numbers(found["chad"]) == pytest.approx(adaptation.ravel(), abs=4e-4)
    assert numbers(found["wtpt"]) == pytest.approx(D50, abs=1e-4)


# Little CMS with its own sRGB, in Pillow: an independent engine and profile.
def test_a_colour_engine_finds_no_difference_to_its_own_srgb() -> None:
    ours = ImageCms.ImageCmsProfile(io.BytesIO(srgb_profile()))
    theirs = ImageCms.createProfile("sRGB")
    grid = np.stack(np.meshgrid(*[np.arange(0, 256, 17)] * 3), axis=-1).reshape(16, 256, 3)
    image = Image.fromarray(grid.astype(np.uint8))
    moved = ImageCms.profileToProfile(
        image, ours, theirs, renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC
    )
    assert moved is not None
    difference = np.abs(np.asarray(moved).astype(int) - grid)
    assert difference.max() <= 1


def test_it_names_itself_and_is_small_and_the_same_every_time() -> None:
    ours = ImageCms.ImageCmsProfile(io.BytesIO(srgb_profile()))
    assert ImageCms.getProfileDescription(ours).strip() == "sRGB IEC61966-2.1"
    assert len(srgb_profile()) < 700
    assert len(srgb_profile()) % 4 == 0
    assert struct.unpack_from(">I", srgb_profile()) == (len(srgb_profile()),)
    assert srgb_profile.__wrapped__() == srgb_profile()
