"""What a motor with its fan on its own shaft may give for ever when it turns slowly.

Three drive manuals print three rules. A *share* is continuous torque over rated torque, so
that one curve serves every motor; a motor with a separate fan needs none of them.
"""

import numpy as np

from chartgen.quantities import Numeric

_HALF_SPEED = 0.5
_AT_STANDSTILL = 0.5
# Read from a damaged figure: at 5 % of speed "50 to 60 %" (the lower is used), 90 and 100 %.
_CURVE_SPEEDS = (0.05, 0.33, 1.0)
_CURVE_SHARES = (0.5, 0.9, 1.0)


def full_from_half_speed(*, speed_ratio: Numeric) -> Numeric:
    """Return the share by the rule "full torque from half speed on, less towards standstill".

    Parameters
    ----------
    speed_ratio
        Motor speed over base speed.

    Returns
    -------
    Share of rated torque, from 0.5 at standstill to 1 at half speed and above.

    Notes
    -----
    0.5 + 0.5 min(1, 2 x). The manual prints the half speed and that it falls below; that the
    line ends at one half is taken from the least that [DRIVE-C] prints.

    References
    ----------
    [DRIVE-A] p. 24.
    """
    return _AT_STANDSTILL + (1.0 - _AT_STANDSTILL) * np.minimum(1.0, speed_ratio / _HALF_SPEED)


def none_under_half_speed(*, speed_ratio: Numeric) -> Numeric:
    """Return the share by the rule "under half speed only with a fan or a larger motor".

    Parameters
    ----------
    speed_ratio
        Motor speed over base speed.

    Returns
    -------
    Share of rated torque: 1 from half speed on, 0 below, where the rule promises nothing.

    Notes
    -----
    The manual gives no torque for a motor that is cooled by itself and turns slower.

    References
    ----------
    [DRIVE-B] p. 96.
    """
    return np.where(np.asarray(speed_ratio) < _HALF_SPEED, 0.0, 1.0)


def full_at_base_speed(*, speed_ratio: Numeric) -> Numeric:
    """Return the share by the printed curve that reaches rated torque only at base speed.

    Parameters
    ----------
    speed_ratio
        Motor speed over base speed.

    Returns
    -------
    Share of rated torque, in straight lines between the points read; 0.5 below the first.

    Notes
    -----
    0.5 at 5 % of base speed, 0.9 at 33 %, 1 at 100 % and above.

    References
    ----------
    [DRIVE-C] p. 167, read from a damaged figure.
    """
    return np.interp(speed_ratio, _CURVE_SPEEDS, _CURVE_SHARES)


def cautious_share(*, speed_ratio: Numeric) -> Numeric:
    """Return the lower of the two rules that print a torque for every speed.

    Parameters
    ----------
    speed_ratio
        Motor speed over base speed.

    Returns
    -------
    Share of rated torque, from 0.5 at standstill to 1 at base speed and above.

    Notes
    -----
    The rule of [DRIVE-B] names no torque under half speed, so it cannot be the lower one.

    References
    ----------
    Derived from [DRIVE-A] p. 24 and [DRIVE-C] p. 167.
    """
    return np.minimum(
        full_from_half_speed(speed_ratio=speed_ratio), full_at_base_speed(speed_ratio=speed_ratio)
    )
