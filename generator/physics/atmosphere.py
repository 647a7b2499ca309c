"""The pressure of the air on the day and at the place, which an absolute sensor should read."""

from __future__ import annotations

import numpy as np

from generator.physics.domain import Number, plain, within

# ISO 2533: standard sea-level pressure, Pa, and temperature, K.
SEA_LEVEL_PA = 101_325.0
SEA_LEVEL_K = 288.15
# ISO 2533: temperature gradient of the lowest layer, K per geopotential metre.
GRADIENT_K_PER_M = -0.0065
# ISO 2533: standard acceleration of free fall, m/s², and specific gas constant of air, J/(kg·K).
GRAVITY_M_S2 = 9.80665
AIR_J_KG_K = 287.05287
# ISO 2533: nominal radius of the earth in the relation of the two heights, m.
EARTH_M = 6_356_766.0
# The lowest layer of ISO 2533, geopotential metres.
HEIGHT_MIN_M, HEIGHT_MAX_M = -2000.0, 11_000.0

# Sea-level pressure on nearly every day outside storms, Pa (practice; printed geography and
# weather notes give 982 to 1033 hPa as the usual span).
WEATHER_USUAL_PA = (98_000.0, SEA_LEVEL_PA, 104_000.0)
# The greatest and least sea-level pressures ever recorded, Pa (World Meteorological Organization:
# typhoon of 1979; Siberia 1968, 1083.8 hPa, and later figures up to 1089).
WEATHER_RECORD_PA = (87_000.0, 109_000.0)

_INFINITE = float("inf")
_EXPONENT = -GRAVITY_M_S2 / (GRADIENT_K_PER_M * AIR_J_KG_K)


def geopotential_m(geometric_m: Number) -> Number:
    """Give the geopotential height of a true height.

    Parameters
    ----------
    geometric_m : float or ndarray
        Height above mean sea level as on a map, m.

    Returns
    -------
    float or ndarray
        Geopotential height, m.

    Raises
    ------
    OutsideRange
        Outside −2000 to 11 019 m.

    Notes
    -----
    H = R·Z/(R + Z). At 2000 m the two differ by 0.6 m, or 6 Pa: nothing for a workshop, but
    libraries for the standard atmosphere mostly take the geometric height.

    References
    ----------
    ISO 2533, Standard atmosphere, 2.3.
    """
    within("height", geometric_m, HEIGHT_MIN_M, 11_019.0, "m")
    z_m = np.asarray(geometric_m, dtype=float)
    return plain(EARTH_M * z_m / (EARTH_M + z_m))


def geometric_m(height_m: Number) -> Number:
    """Give the true height of a geopotential height.

    Parameters
    ----------
    height_m : float or ndarray
        Geopotential height, m.

    Returns
    -------
    float or ndarray
        Height above mean sea level, m.

    Raises
    ------
    OutsideRange
        Outside −2000 to 11 000 m.

    Notes
    -----
    Z = R·H/(R − H), the inverse of :func:`geopotential_m`.
    """
    within("height", height_m, HEIGHT_MIN_M, HEIGHT_MAX_M, "m")
    h_m = np.asarray(height_m, dtype=float)
    return plain(EARTH_M * h_m / (EARTH_M - h_m))


def standard_pressure_pa(height_m: Number) -> Number:
    """Give the pressure of the standard atmosphere.

    Parameters
    ----------
    height_m : float or ndarray
        Geopotential height, m.

    Returns
    -------
    float or ndarray
        Pressure, Pa.

    Raises
    ------
    OutsideRange
        Outside −2000 to 11 000 m.

    Notes
    -----
    p = p0·(1 + β·H/T0)^(−g/(β·R)).

    References
    ----------
    ISO 2533, Standard atmosphere; ICAO Doc 7488.
    """
    within("height", height_m, HEIGHT_MIN_M, HEIGHT_MAX_M, "m")
    ratio = 1.0 + GRADIENT_K_PER_M * np.asarray(height_m, dtype=float) / SEA_LEVEL_K
    return plain(SEA_LEVEL_PA * ratio**_EXPONENT)


def pressure_height_m(pressure_pa: Number) -> Number:
    """Give the height at which the standard atmosphere has a pressure.

    Parameters
    ----------
    pressure_pa : float or ndarray
        Pressure, Pa.

    Returns
    -------
    float or ndarray
        Geopotential height, m.

    Raises
    ------
    OutsideRange
        For a pressure outside the layer of :func:`standard_pressure_pa`.
    """
    ends = standard_pressure_pa(np.array([HEIGHT_MAX_M, HEIGHT_MIN_M]))
    within("pressure", pressure_pa, ends[0], ends[1], "Pa")
    ratio = (np.asarray(pressure_pa, dtype=float) / SEA_LEVEL_PA) ** (1.0 / _EXPONENT)
    return plain((ratio - 1.0) * SEA_LEVEL_K / GRADIENT_K_PER_M)


def station_pressure_pa(height_m: Number, sea_level_pa: Number = SEA_LEVEL_PA) -> Number:
    """Give the true pressure at a place from the sea-level pressure of the weather report.

    Parameters
    ----------
    height_m : float or ndarray
        Height of the place, geopotential m (a map's height does), up to 6000 m.
    sea_level_pa : float or ndarray, optional
        Pressure reduced to sea level, as reports and most barometers show it, Pa.

    Returns
    -------
    float or ndarray
        Pressure at the place, Pa.

    Raises
    ------
    OutsideRange
        For a height outside −500 to 6000 m or a pressure never recorded at sea level.

    Notes
    -----
    p = p_std(h(p_sea) + H), the aviation rule (QNH to QFE) in the standard atmosphere. Weather
    services also reduce by the day's temperature (QFF): at 1000 m the two differ by up to some
    5 hPa on a very cold or hot day. A manifold sensor reads this true pressure, never the
    sea-level figure.

    References
    ----------
    ICAO Doc 7488, Manual of the ICAO standard atmosphere.
    """
    within("height", height_m, -500.0, 6000.0, "m")
    within("sea-level pressure", sea_level_pa, *WEATHER_RECORD_PA, "Pa")
    in_standard_m = np.asarray(pressure_height_m(sea_level_pa)) + np.asarray(height_m, dtype=float)
    return standard_pressure_pa(plain(in_standard_m))


def station_pressure_band_pa(
    height_m: Number,
    sea_level_pa: tuple[float, float, float] = WEATHER_USUAL_PA,
    height_tolerance_m: float = 0.0,
) -> tuple[Number, Number, Number]:
    """Give the limits of the pressure at a place when the weather is not known.

    Parameters
    ----------
    height_m : float or ndarray
        Height of the place, geopotential m.
    sea_level_pa : tuple of float, optional
        Low, nominal and high sea-level pressure, Pa.
    height_tolerance_m : float, optional
        How far the true height may lie either way, m.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high pressure, Pa.

    Raises
    ------
    OutsideRange
        As :func:`station_pressure_pa`.

    Notes
    -----
    The pressure falls with height and rises with the sea-level pressure: exact.
    """
    within("height tolerance", height_tolerance_m, 0.0, _INFINITE, "m")
    return (
        station_pressure_pa(height_m + height_tolerance_m, sea_level_pa[0]),
        station_pressure_pa(height_m, sea_level_pa[1]),
        station_pressure_pa(height_m - height_tolerance_m, sea_level_pa[2]),
    )


def key_on_pressure_band_pa(
    station_pa: tuple[Number, Number, Number], sensor_tolerance_pa: float
) -> tuple[Number, Number, Number]:
    """Give what a manifold absolute-pressure sensor should read with the engine at rest.

    Parameters
    ----------
    station_pa : tuple of (float or ndarray)
        Low, nominal and high pressure at the place, Pa; three equal values where it was measured.
    sensor_tolerance_pa : float
        Error of the sensor either way, Pa.

    Returns
    -------
    tuple of (float or ndarray)
        Low, nominal and high reading, Pa.

    Raises
    ------
    OutsideRange
        If the pressures are not in order or the tolerance is negative.

    Notes
    -----
    Key on, engine off: the manifold holds outside air. A reading within the band says that the
    sensor is right here, not over its range; without the day's pressure the band is 6 kPa wide.
    """
    within("sensor tolerance", sensor_tolerance_pa, 0.0, _INFINITE, "Pa")
    low, nominal, high = (np.asarray(value, dtype=float) for value in station_pa)
    within("rise from low to nominal", nominal - low, 0.0, _INFINITE, "Pa")
    within("rise from nominal to high", high - nominal, 0.0, _INFINITE, "Pa")
    return plain(low - sensor_tolerance_pa), plain(nominal), plain(high + sensor_tolerance_pa)
