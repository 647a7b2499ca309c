"""For each built-in rule on the vehicle itself, a step that calls for it and a near miss.

Written by hand from what the rule is meant to do, not from its data: where a rule's data loses
a word, its case here fails. A case is the step that fires, and the one change that makes it a
near miss. Keys of a step: the fields of a record's step, and

- ``vehicle``: the vehicle it is done on (petrol-car unless said otherwise);
- ``entry``: the state the vehicle is in before;
- ``before``: steps done before it.
"""

from __future__ import annotations

from typing import Any

Step = dict[str, Any]

COLD: Step = {"engine_heat": "cold"}
KEYED: Step = {"ignition": "key_on"}
RUNNING: Step = {"engine": "running", "ignition": "key_on", "ventilation": "extraction"}
BATTERY_OFF: Step = {"battery": "disconnected"}


def on(action: str, part: str = "", place: str = "bench", **more: Any) -> Step:
    """Give a step on one part, on the bench unless said otherwise."""
    return {"action": action, "place": place, "acts_on": [part] if part else [], **more}


def hv(state: str, **more: Any) -> Step:
    """Give the unplugging of a high-voltage part in some state of the system."""
    entry = {"high_voltage": state}
    return on("unplug", "high-voltage", vehicle="hybrid-car", entry=entry, **more)


VEHICLE: dict[str, tuple[Step, Step]] = {
    # high voltage
    "hv-live": (hv("live"), {"entry": {"high_voltage": "isolated"}}),
    "hv-isolated": (hv("isolated"), {"entry": {"high_voltage": "proved_dead"}}),
    "hv-proved-dead": (hv("proved_dead"), {"acts_on": ["sensor"]}),
    "hv-near": (
        on("look", place="engine_bay", vehicle="hybrid-car"), {"vehicle": "petrol-car"},
    ),
    "hv-battery-damage": (
        on("look", "high-voltage", "away", condition=["flooded"]), {"condition": ["frozen"]},
    ),
    "hv-strong-magnet": (on("look", "strong-magnet"), {"place": "away"}),
    "ready-mode": (
        on("look", place="wheel_area", vehicle="hybrid-car", entry={"ignition": "ready"}),
        {"entry": {"ignition": "key_off"}},
    ),
    "hybrid-towing": (on("tow", vehicle="hybrid-car", place="away"), {"vehicle": "diesel-van"}),
    "supply-48-v": (on("unplug", "supply-48-v"), {"action": "look"}),
    "insulation-tester": (
        on("measure", "sensor", tools=["insulation-tester"], measures="insulation"),
        {"tools": ["multimeter"]},
    ),
    "insulation-tester-module": (
        on("measure", "module", tools=["insulation-tester"], measures="insulation"),
        {"acts_on": ["high-voltage"]},
    ),
    # restraints
    "srs-module": (on("unplug", "pyrotechnic", "cabin"), {"action": "look"}),
    "srs-test": (
        on("measure", "pyrotechnic", "cabin", tools=["multimeter"], measures="resistance"),
        {"tools": ["scan-tool"], "measures": "data"},
    ),
    "srs-storage": (on("remove", "pyrotechnic", "cabin"), {"action": "unplug"}),
    "srs-disabled": (on("unplug", "pyrotechnic", "cabin"), {"action": "plug"}),
    "srs-power-return": (
        on("key_on", place="driver_seat", before=[on("unplug", "pyrotechnic", "cabin")]),
        {"before": [on("unplug", "sensor", "cabin")]},
    ),
    "srs-heat-blow": (
        on("heat", "sensor", "cabin", near=["pyrotechnic"], tools=["heat-gun"]),
        {"near": ["sharp"]},
    ),
    # moving parts
    "cranking": (on("crank", place="driver_seat"), {"action": "key_on"}),
    "running-engine": (on("look", place="engine_bay", entry=RUNNING), {"place": "driver_seat"}),
    "start-engine": (on("start_engine", place="driver_seat"), {"action": "crank"}),
    "start-in-gear": (
        on("crank", place="driver_seat", entry={"selector": "in_gear"}),
        {"entry": {"selector": "neutral_or_park"}},
    ),
    "auto-fan": (on("look", place="engine_bay"), {"entry": BATTERY_OFF}),
    "wheels-turning": (
        on("look", place="driver_seat", entry={**RUNNING, "selector": "in_gear",
                                               "support": "lift"}),
        {"entry": {**RUNNING, "selector": "in_gear", "support": "ground"}},
    ),
    "exhaust-gas": (
        on("look", place="driver_seat", entry={**RUNNING, "ventilation": "closed_bay"}),
        {"entry": RUNNING},
    ),
    "exhaust-pit": (on("look", place="pit", entry=RUNNING), {"place": "under_vehicle"}),
    "exhaust-cranking": (
        on("crank", place="driver_seat", entry={"ventilation": "closed_bay"}),
        {"entry": {"ventilation": "open_air"}},
    ),
    "guard-off": (
        on("crank", place="driver_seat", before=[on("remove", "fan-guard", "engine_bay")]),
        {"before": [on("remove", "sensor", "engine_bay")]},
    ),
    "leads-turning": (
        on("crank", place="engine_bay",
           before=[on("connect_leads", "sensor", tools=["multimeter"])]),
        {"before": []},
    ),
    "turn-by-hand": (on("turn_by_hand", "rotating", "engine_bay"), {"action": "look"}),
    "turn-by-hand-live": (
        on("turn_by_hand", "rotating", "engine_bay", entry=KEYED), {"entry": {}},
    ),
    "actuator-test": (on("command", "sensor", "away", tools=["scan-tool"]), {"action": "look"}),
    "road-test": (on("drive", place="driver_seat"), {"action": "start_engine"}),
    "towing": (on("tow", place="away"), {"action": "look"}),
    "tensioner": (on("loosen", "tensioner"), {"action": "look"}),
    "power-closure": (on("look", "power-closure", "cabin"), {"entry": BATTERY_OFF}),
    # support
    "under-jack-only": (
        on("look", place="under_vehicle", entry={"support": "jack_only"}),
        {"entry": {"support": "stands"}},
    ),
    "jack-only-limbs": (
        on("look", place="wheel_area", entry={"support": "jack_only"}), {"place": "cabin"},
    ),
    "under-vehicle": (
        on("look", place="under_vehicle", entry={"support": "lift"}), {"place": "beside_vehicle"},
    ),
    "raise-lower": (on("raise_on_lift", place="beside_vehicle"), {"action": "look"}),
    "lead-on-raising": (
        on("raise_on_lift", place="beside_vehicle",
           before=[on("connect_leads", "sensor", tools=["multimeter"])]),
        {"before": [on("connect_leads", "sensor", tools=["multimeter"]),
                    on("disconnect_leads", "sensor", tools=["multimeter"])]},
    ),
    "air-suspension": (
        on("look", place="wheel_area", near=["air_suspension"]),
        {"entry": {"air_suspension": "relieved"}},
    ),
    "heavy-drop": (
        on("remove", "heavy", "under_vehicle", entry={"support": "lift"}), {"action": "look"},
    ),
    "balance-shift": (
        on("remove", "heavy", "engine_bay", entry={"support": "stands"}),
        {"entry": {"support": "ground"}},
    ),
    "manual-lift": (on("remove", "heavy"), {"acts_on": ["sensor"]}),
    "roll-away": (
        on("look", place="beside_vehicle", entry={"parking_brake": "released"}),
        {"entry": {"parking_brake": "released", "support": "lift"}},
    ),
    "driveline-open": (on("remove", "driveline"), {"action": "fit"}),
    "pit-fall": (on("look", place="pit"), {"place": "bench"}),
    "spring": (on("remove", "spring"), {"entry": {"stored_spring": "relieved"}}),
    "gas-strut": (on("remove", "gas-strut"), {"acts_on": ["sensor"]}),
    # fuel
    "fuel-open": (on("remove", "fuel-low", opens=["fuel_low"]), {"vehicle": "diesel-van"}),
    "diesel-open": (
        on("remove", "fuel-low", opens=["fuel_low"], vehicle="diesel-van"),
        {"vehicle": "petrol-car"},
    ),
    "fuel-first-pressure": (
        on("key_on", "fuel-low", "beside_vehicle"), {"acts_on": ["sensor"]},
    ),
    "fuel-pressure": (
        on("loosen", "fuel-low", opens=["fuel_low"]), {"entry": {"fuel_pressure": "relieved"}},
    ),
    "fuel-drain": (on("drain", "fuel-low", opens=["fuel_tank"]), {"action": "look",
                                                                "opens": []}),
    "fuel-pit": (on("loosen", "fuel-low", "pit", opens=["fuel_low"]), {"place": "bench"}),
    "fuel-spark": (
        on("loosen", "fuel-low", opens=["fuel_low"], tools=["hand-lamp"]),
        {"tools": ["hand-tool"]},
    ),
    "fuel-leak": (on("look", "fuel-low", condition=["leaking_fuel"]), {"condition": ["damaged"]}),
    "fuel-crank-open": (
        on("crank", place="driver_seat",
           before=[on("loosen", "fuel-low", opens=["fuel_low"])]),
        {"before": [on("loosen", "fuel-low", opens=["fuel_low"]),
                    on("tighten", "fuel-low", tools=["torque-wrench"])]},
    ),
    "fuel-jet": (on("look", "fuel-high", entry=RUNNING), {"entry": {}}),
    "fuel-gas": (on("loosen", "fuel-gas", opens=["nothing"]), {"action": "look"}),
    "fuel-skin": (on("fill", "sensor", supplies=["diesel-fuel"]), {"supplies": ["coolant"]}),
    "petrol-carried": (on("fill", "sensor", supplies=["petrol"]), {"supplies": ["diesel-fuel"]}),
    "starting-fluid": (on("look", supplies=["starting-fluid"]), {"supplies": ["grease"]}),
    "diesel-runaway": (
        on("crank", place="driver_seat", vehicle="diesel-van", condition=["oil_in_intake"]),
        {"vehicle": "petrol-car"},
    ),
    # heat and fluids
    "hot-coolant": (on("remove", "hot-fluid", opens=["coolant"]), {"entry": COLD}),
    "hot-fluid-part": (on("remove", "hot-fluid", opens=["nothing"]), {"entry": COLD}),
    "hot-surface": (on("look", "hot-surface"), {"entry": {"engine_heat": "warm"}}),
    "heated-part": (on("heat", "sensor", tools=["heat-gun"]), {"action": "look"}),
    "chilled-part": (on("cool", "sensor"), {"action": "look"}),
    "filter-regeneration": (on("regenerate", place="away", tools=["scan-tool"]),
                            {"action": "start_engine"}),
    "hot-oil": (on("drain", "sensor", opens=["engine_oil"]), {"entry": COLD}),
    "used-oil": (on("drain", "sensor", opens=["engine_oil"]), {"opens": ["gearbox_oil"]}),
    "coolant-toxic": (on("fill", "sensor", supplies=["coolant"]), {"supplies": ["engine-oil"]}),
    "slippery-floor": (on("drain", "sensor", opens=["engine_oil"]),
                       {"action": "look", "opens": []}),
    "waste": (on("look", supplies=["used-oil"]), {"supplies": ["engine-oil"]}),
    "exhaust-fluid": (on("fill", "sensor", supplies=["exhaust-fluid"]),
                      {"supplies": ["coolant"]}),
    # battery
    "battery-gas": (on("disconnect_battery", place="engine_bay"), {"action": "look"}),
    "battery-short": (on("tighten", "lv-battery", tools=["torque-wrench"]),
                      {"entry": BATTERY_OFF}),
    "battery-acid": (on("fill", "lv-battery", supplies=["battery-acid"]),
                     {"acts_on": ["sensor"], "supplies": ["coolant"]}),
    "battery-frozen": (
        on("charge_battery", tools=["battery-charger"], condition=["frozen"]), {"condition": []},
    ),
    "jump-start": (on("jump_start", tools=["jump-leads"]), {"action": "charge_battery"}),
    "battery-data": (on("disconnect_battery", place="engine_bay"), {"action": "connect_battery"}),
    "battery-reconnect": (on("connect_battery", place="engine_bay", entry=BATTERY_OFF),
                          {"action": "look"}),
    "battery-register": (on("fit", "lv-battery"), {"action": "remove"}),
    "lithium-battery": (on("remove", "lithium-battery"), {"acts_on": ["lv-battery"]}),
    "main-terminal": (on("look", place="engine_bay", near=["main_terminal"]),
                      {"entry": BATTERY_OFF}),
    # air conditioning
    "refrigerant-law": (on("loosen", "refrigerant", opens=["nothing"]), {"action": "look"}),
    "refrigerant-contact": (on("loosen", "refrigerant", opens=["refrigerant"]),
                            {"opens": ["nothing"]}),
    "refrigerant-flammable": (
        on("look", supplies=["mildly-flammable-refrigerant"]), {"supplies": ["refrigerant"]},
    ),
    "refrigerant-carbon-dioxide": (
        on("look", supplies=["carbon-dioxide-refrigerant"]), {"supplies": ["refrigerant"]},
    ),
    "refrigerant-heat": (
        on("heat", "sensor", near=["refrigerant"], tools=["gas-torch"]),
        {"entry": {"refrigerant": "relieved"}},
    ),
}  # fmt: skip
