"""Words of values and figures."""

from __future__ import annotations

WORDS: dict[str, str] = {
    # values
    "value.condition.temperature": "Part at",
    "value.condition.engine_speed": "Speed",
    "value.condition.supply": "Supply",
    "value.condition.gap": "Gap",
    "value.condition.current": "Current",
    "value.condition.altitude": "Height",
    "value.condition.air_pressure": "Air",
    "value.condition.sea_level_pressure": "Weather report",
    "value.condition.manifold_pressure": "Manifold",
    "value.condition.measured_pressure": "Pressure",
    "value.condition.ambient": "Air at",
    "value.condition.state_of_charge": "Charge",
    "value.condition.travel": "Travel",
    "value.condition.air_ratio": "Air over need",
    "value.engines": "engine {codes}",
    "value.built": "built {since} to {until}",
    "value.built_since": "built from {since}",
    "value.built_until": "built until {until}",
    "value.at_least": "at least",
    "value.at_most": "at most",
    "value.low": "Low limit",
    "value.mid": "Nominal",
    "value.high": "High limit",
    "value.at": "Condition: {conditions}",
    "value.of_the_day": "Written for other conditions than today’s: take the limits from the table",
    "value.method": "How it is measured",
    "value.source": "Source",
    "value.practice": "common practice, no published source",
    "value.where": "{source}, {where}",
    "value.vehicle_value": "This vehicle’s own value: it gives a verdict.",
    "value.band": (
        "Spread over all designs: outside it is implausible, inside it proves nothing."
    ),
    "value.band_line": (
        "Over all designs: {band}. Outside it is implausible, inside it proves nothing."
    ),
    "value.trail": "How these figures came about",
    "value.trail_rounding": (
        "Limits are rounded inwards to what the meter shows; the nominal to the nearest figure."
    ),
    "value.computed": "computed",
    # figures
    "figure.temperature": "temperature of the part, °C",
    "figure.angle": "crank angle, degrees",
    "figure.volts": "volts",
    "figure.winding_title": "{title}: limits against temperature",
    "figure.winding_desc": "Band between two rising lines. {rows}",
    "figure.winding_row": "At {condition}: {low} to {high} {unit}.",
    "figure.pickup_title": "What the pickup gives over part of a turn",
    "figure.pickup_desc": (
        "Near-sine wave, one swing a tooth, {volts} V RMS nominal at {speed} rpm. Where {missing} "
        "teeth are missing the line stays near zero, with a taller swing beside it. The shape is "
        "typical; the order of the half waves depends on which lead is which."
    ),
    "figure.missing.1": "1 tooth missing",
    "figure.missing.n": "{n} teeth missing",
    "figure.peak_to_peak": "{volts} V peak to peak",
    "figure.square_title": "What the switching output gives over part of a turn",
    "figure.square_desc": (
        "Square wave between {low} and {high} V with the line high across the gap of {missing}. "
        "Below it, two flat lines: one stuck high, one stuck low. They do not mean the same."
    ),
    "figure.square_high": "high: {low} to {high} V",
    "figure.square_low": "low: {high} V or less",
    "figure.square_between": "between the two: no valid level",
    "figure.square_flat_high": "Flat, high: the output never pulls down",
    "figure.square_flat_low": "Flat, low: no pull-up, no feed, or a short to ground",
    "figure.low": "low limit",
    "figure.nominal": "nominal",
    "figure.high": "high limit",
    "figure.dial": "Set to",
    "figure.red": "red",
    "figure.black": "black",
    "figure.socket_common": "COM",
    "figure.socket_input": "IN",
    "figure.keyway": "keyway: {side}",
    "figure.keyway.top": "top",
    "figure.keyway.bottom": "bottom",
    "figure.keyway.left": "left",
    "figure.keyway.right": "right",
    "figure.unplugged": "connector apart",
    "figure.posts": "no pins in this one",
    "figure.plugged": "connector together, probed from behind",
    "figure.hookup_title": "Leads for {title}",
    "figure.where_title": "Where to look for the {title}",
    "figure.where_desc": "Engine seen from the side. The marked zone is the {zone}, {reach}.",
    "figure.where_view": "seen from the side, crank pulley to the left",
    "figure.wheel_title": "{title}",
    "figure.wheel_desc": "Toothed wheel with {positions} positions, {missing} of them empty.",
    "figure.wheel_sensor": "sensor",
    "figure.wheel_gap": "air gap (drawn larger than it is)",
    "figure.wheel_no_gap": "no tooth missing",
    "figure.wheel_turns": "turns this way, seen from the pulley end",
    "figure.circuit_title": "{title}: {line}",
    "figure.circuit_desc": "From the feed to the end: {stops}.",
    "figure.also_feeds": "also on it:",
}
