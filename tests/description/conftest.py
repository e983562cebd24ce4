from collections.abc import Callable

import pytest

from chartgen.description.shop_file import Known, read_shop
from chartgen.errors import DescriptionError
from chartgen.model.shop import Shop
from chartgen.quantities import FRACTION, MM, N_MM2, UM

KNOWN = Known(
    materials=(
        "mild-steel",
        "c45",
        "stainless-304",
        "grey-iron-250",
        "aluminium-6082",
        "free-cutting-brass",
    ),
    layouts=("lathe-chart-a5", "overview-a5", "blade-card-a6", "centre-card-a6"),
    allowances={
        "confined_chip": (1.0, 2.0, FRACTION),
        "coated_radius": (1.0, 60.0, UM),
        "tip_drop": (0.01, 0.5, MM),
        "blade_stress_hss": (200.0, 2000.0, N_MM2),
    },
    transmission=("v-belt", "gear-stage"),
    dc_no_load=1.2,
)


@pytest.fixture(scope="session")
def read() -> Callable[[str | bytes], Shop]:
    def read_text(text: str | bytes) -> Shop:
        data = text.encode() if isinstance(text, str) else text
        return read_shop(data, file="my.toml", known=KNOWN)

    return read_text


@pytest.fixture(scope="session")
def complaints(read: Callable[[str | bytes], Shop]) -> Callable[[str | bytes], list[str]]:
    def complain(text: str | bytes) -> list[str]:
        with pytest.raises(DescriptionError) as caught:
            read(text)
        return str(caught.value).splitlines()

    return complain
