"""One call of every figure, with words that a test may replace."""

from __future__ import annotations

from collections.abc import Callable
from math import pi, sin

from generator.figures import (
    BandReading,
    BandRow,
    BandWords,
    Block,
    Cavity,
    CircuitStop,
    CircuitWords,
    Connector,
    CoverageWords,
    DoubtWords,
    HookupWords,
    Keyway,
    Lead,
    Mark,
    Meter,
    PickupWords,
    PlaceWords,
    Reach,
    Seen,
    SquareLevels,
    SquareWords,
    Stop,
    Strip,
    WheelWords,
    Zone,
    circuit_strip,
    coverage_strips,
    doubt_curve,
    meter_hookup,
    pickup_wave,
    square_wave,
    trigger_wheel,
    where_to_look,
    winding_band,
)

Say = Callable[[str], str]


def plain(text: str) -> str:
    """Give a text as it is."""
    return text


# Copper, 0.00393 per kelvin at 20 °C (IEC 60028), on a nominal 860 ohm: arithmetic, not our model.
TEMPS_C = [float(t) for t in range(-40, 141, 10)]
NOMINAL_OHM = [860 * (1 + 0.00393 * (t - 20)) for t in TEMPS_C]
LOW_OHM = [0.9 * ohm for ohm in NOMINAL_OHM]
HIGH_OHM = [1.1 * ohm for ohm in NOMINAL_OHM]

# Ninety-six degrees of a 60-position wheel, its last two positions without a tooth.
WINDOW_DEG = [300 + 0.25 * k for k in range(385)]
MISSING_SPAN = (348.0, 360.0)
PICKUP_V = [
    0.0 if MISSING_SPAN[0] < a < MISSING_SPAN[1] else 2.3 * sin(2 * pi * a / 6) for a in WINDOW_DEG
]
HALL_V = [5.0 if a % 6 < 3 or MISSING_SPAN[0] < a < MISSING_SPAN[1] else 0.2 for a in WINDOW_DEG]
LEVELS = SquareLevels(low_v=0.2, low_max_v=0.5, high_min_v=4.5, high_v=5.0)

MINUTES = [0.0, 2, 5, 9, 12, 30, 75]
DOUBT = [100.0, 62, 38, 30, 21, 9, 3]

TWO_ROWS = Connector(
    rows=(
        (Cavity("1", "BK"), Cavity("2", "GY/WH"), Cavity("3", "RD"), Cavity("4", "", False)),
        (Cavity("5", "BN"), Cavity("6", "YE"), Cavity("7", "GN/YE"), Cavity("8", "VT")),
    ),
    keyway=Keyway.TOP,
    plugged=True,
)
ONE_ROW = Connector(((Cavity("1", "BK"), Cavity("2", "GY/WH"), Cavity("3", "RD")),), Keyway.LEFT)


def winding(figure_id: str, say: Say = plain, reading_ohm: float = 1240.0) -> str:
    """The Corrie 1.2's sensor winding with a reading above the band."""
    words = BandWords(
        title=say("Winding against temperature"),
        desc=say("From 774 to 946 ohm at 20 °C, rising with temperature."),
        temp_axis=say("temperature of the sensor, °C"),
        value_axis=say("resistance"),
        low=say("lowest"),
        nominal=say("nominal"),
        high=say("highest"),
    )
    rows = [
        BandRow(-20, "652", "797"),
        BandRow(20, "774", "946"),
        BandRow(60, "896", "1095"),
        BandRow(100, "1017", "1243"),
    ]
    reading = BandReading(85, reading_ohm, say("1.24 kΩ at 85 °C"))
    return winding_band(
        figure_id, words, TEMPS_C, LOW_OHM, NOMINAL_OHM, HIGH_OHM, "Ω", reading, rows
    )


def pickup(figure_id: str, say: Say = plain) -> str:
    """The Corrie 1.2's inductive sensor while cranking."""
    words = PickupWords(
        title=say("Pickup while cranking"),
        desc=say("A sine of 4.6 V peak to peak with a rest where two teeth are missing."),
        angle_axis=say("crank angle, °"),
        volt_axis=say("pickup, V"),
        gap=say("2 teeth missing"),
        peak_to_peak=say("4.6 V peak to peak"),
    )
    return pickup_wave(figure_id, words, WINDOW_DEG, PICKUP_V, MISSING_SPAN, 60)


def hall(figure_id: str, say: Say = plain) -> str:
    """The Corrie 1.6's Hall sensor."""
    words = SquareWords(
        title=say("Square wave of the Hall sensor"),
        desc=say("From 0.2 to 5 V, with one long high at the missing teeth."),
        angle_axis=say("crank angle, °"),
        volt_axis=say("signal, V"),
        high=say("high: 4.5 V or more"),
        low=say("low: 0.5 V or less"),
        threshold=say("neither: a fault"),
        gap=say("2 teeth missing"),
        flat_high=say("Flat high: never pulled down. No feed, or an open signal wire."),
        flat_low=say("Flat low: shorted to ground, or no pull-up."),
    )
    return square_wave(figure_id, words, WINDOW_DEG, HALL_V, LEVELS, MISSING_SPAN, 60)


def doubt(figure_id: str, say: Say = plain) -> str:
    """Six tests, the first ones close together."""
    words = DoubtWords(
        title=say("Doubt left"),
        desc=say("100 % before any test, 3 % after the sixth."),
        minutes_axis=say("minutes spent"),
        doubt_axis=say("doubt left, %"),
    )
    return doubt_curve(figure_id, words, MINUTES, DOUBT)


def _hookup_words(say: Say, plugged: bool) -> HookupWords:
    return HookupWords(
        title=say("Meter on the sensor's connector"),
        desc=say("Red on the signal, black on the return."),
        dial=say("Dial"),
        red=say("Red lead"),
        black=say("Black lead"),
        keyway=say("keyway at the top"),
        state=say("Plugged in, back-probed" if plugged else "Unplugged, probed from the front"),
        view=say("View: the wire side" if plugged else "View: harness side, into the terminals"),
    )


def hookup(figure_id: str, say: Say = plain) -> str:
    """Both leads on pins, one in each row."""
    red = Lead("VΩ", say("pin 3, red: feed"), "3")
    black = Lead("COM", say("pin 6, yellow: return"), "6")
    meter = Meter(say("11.94"), say("V DC"), ("10 A", "COM", "VΩ"))
    return meter_hookup(figure_id, _hookup_words(say, True), meter, TWO_ROWS, red, black)


def hookup_to_stud(figure_id: str, say: Say = plain) -> str:
    """One lead on a pin, the other on the battery's post."""
    red = Lead("VΩ", say("pin 2, grey with white: signal"), "2")
    black = Lead("COM", say("battery negative post"))
    meter = Meter(say("4.98"), say("V DC"), ("COM", "VΩ"))
    return meter_hookup(figure_id, _hookup_words(say, False), meter, ONE_ROW, red, black)


def hookup_large(figure_id: str, say: Say = plain) -> str:
    """A control unit's connector of sixty cavities."""
    rows = tuple(
        tuple(
            Cavity(str(15 * row + column + 1), "", (row + column) % 7 != 3) for column in range(15)
        )
        for row in range(4)
    )
    red, black = Lead("VΩ", say("pin 17: feed"), "17"), Lead("COM", say("pin 52: return"), "52")
    meter = Meter(say("12.3"), say("V DC"), ("10 A", "mA", "COM", "VΩ"))
    connector = Connector(rows, Keyway.BOTTOM)
    return meter_hookup(figure_id, _hookup_words(say, False), meter, connector, red, black)


def wheel(figure_id: str, say: Say = plain) -> str:
    """The Corrie's wheel."""
    words = WheelWords(
        title=say("Wheel and sensor"),
        desc=say("60 positions, two missing, air gap 0.8 to 1.2 mm."),
        sensor=say("crankshaft sensor"),
        gap=say("air gap 0.8 to 1.2 mm"),
        missing=say("2 teeth missing"),
        direction=say("turns clockwise, seen from the flywheel end"),
    )
    return trigger_wheel(figure_id, words, 60, 2, sensor_deg=40, missing_deg=-75)


def place(figure_id: str, say: Say = plain) -> str:
    """The Corrie's sensor, beside the block, reached from below."""
    return where_to_look(figure_id, place_words(say), Zone.BESIDE_BLOCK, Seen.SIDE, Reach.BELOW)


def place_from_above(figure_id: str, say: Say = plain) -> str:
    """The Haulden's sensor, at the flywheel end, reached from above."""
    return where_to_look(
        figure_id,
        place_words(say, "From above: air box out"),
        Zone.FLYWHEEL_END,
        Seen.ABOVE,
        Reach.ABOVE,
    )


def place_words(
    say: Say = plain, reach: str = "From below: raise the vehicle, undertray off"
) -> PlaceWords:
    """Words of the engine's zones."""
    return PlaceWords(
        title=say("Where the sensor sits"),
        desc=say(f"One of four places on the engine. {reach}."),
        crank_pulley=say("crank pulley"),
        timing_drive=say("timing drive"),
        beside_block=say("beside the block"),
        flywheel_end=say("flywheel end"),
        reach=say(reach),
        view=say("Seen from the left; front of the engine at the left"),
    )


def circuit(figure_id: str, say: Say = plain) -> str:
    """The feed of the Corrie 1.6's sensor."""
    words = CircuitWords(
        title=say("Feed of the crankshaft sensor"),
        desc=say("Battery, fuse F14, relay K3, splice S7, connector C21, sensor, ground G4."),
        also_feeds=say("also feeds"),
    )
    shared = (say("camshaft sensor, pin 1"), say("purge valve"))
    stops = [
        CircuitStop(Stop.SUPPLY, say("Battery, 12 V"), wire=say("RD 16 mm²")),
        CircuitStop(Stop.FUSE, say("F14, 10 A"), say("engine bay, row 2"), say("RD/BU 1.5 mm²")),
        CircuitStop(Stop.RELAY, say("Main relay K3"), say("pulled by the control unit")),
        CircuitStop(Stop.SPLICE, say("Splice S7"), say("beside the gearbox"), "", shared),
        CircuitStop(
            Stop.CONNECTOR, say("Connector C21, pin 3"), mark=say("Measure here: 11.5 V or more")
        ),
        CircuitStop(Stop.PART, say("Crankshaft sensor"), say("Hall, three wires"), say("BK")),
        CircuitStop(Stop.GROUND, say("Ground G4"), say("bell housing stud")),
    ]
    return circuit_strip(figure_id, words, stops)


def coverage(figure_id: str, say: Say = plain) -> str:
    """Few things and many, each of the three marks."""
    words = CoverageWords(
        title=say("Coverage"), desc=say("A test judges it: 100 of 120."), full=say("there"),
        part=say("in part"), none=say("missing"),
    )  # fmt: skip
    many = (Mark.NONE,) * 15 + (Mark.PART,) * 5 + (Mark.FULL,) * 100
    few = (Mark.NONE, Mark.PART, Mark.FULL, Mark.FULL)
    strips = Strip(say("A test judges it"), "100 of 120", many), Strip(say("Codes"), "2 of 4", few)
    return coverage_strips(figure_id, words, [Block(say("Parts"), strips)])


SAMPLES: dict[str, Callable[..., str]] = {
    made.__name__: made
    for made in (
        winding, pickup, hall, doubt, hookup, hookup_to_stud, hookup_large, wheel, place,
        place_from_above, circuit, coverage,
    )
}  # fmt: skip
