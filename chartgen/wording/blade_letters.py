"""The letter that stands for a blade on every card of a shop."""

from chartgen.model.blade_letters import letter_of
from chartgen.model.shop import Shop


def blade_letter(shop: Shop, name: str) -> str:
    """Return the letter of a blade."""
    return letter_of(shop.blades, name)
