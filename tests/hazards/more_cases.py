"""The cases of the rules on circuits, brakes, wheels, tools and substances; see `cases`."""

from __future__ import annotations

from tests.hazards.cases import BATTERY_OFF, COLD, KEYED, RUNNING, VEHICLE, Step, on

WORK: dict[str, tuple[Step, Step]] = {
    # electrical
    "ignition-voltage": (
        on("look", "ignition-secondary", entry=RUNNING), {"entry": {}},
    ),
    "ignition-apart": (
        on("crank", place="driver_seat", before=[on("unplug", "ignition-secondary")]),
        {"before": [on("unplug", "sensor")]},
    ),
    "catalyst": (
        on("crank", place="driver_seat", before=[on("unplug", "inductive-kick")]),
        {"before": [on("unplug", "inductive-kick"), on("plug", "inductive-kick")]},
    ),
    "lamp-ballast": (on("unplug", "lamp-ballast"), {"action": "look"}),
    "injector-drive": (on("unplug", "injector-drive", entry=RUNNING), {"entry": {}}),
    "inductive-kick": (
        on("measure", "inductive-kick", tools=["oscilloscope"], measures="waveform"),
        {"acts_on": ["sensor"]},
    ),
    "ohms-live": (
        on("measure", "sensor", tools=["multimeter"], spec="winding", entry=KEYED),
        {"spec": "supply"},
    ),
    "test-lamp": (
        on("load_circuit", "module", tools=["test-lamp"]), {"acts_on": ["low-voltage-supply"]},
    ),
    "jumper-lead": (on("look", tools=["jumper-lead"]), {"tools": ["test-leads"]}),
    "load-circuit": (on("load_circuit", "low-voltage-supply", tools=["load-lamp"]),
                     {"action": "look"}),
    "load-module": (
        on("load_circuit", "low-voltage-signal", tools=["load-lamp"]),
        {"acts_on": ["low-voltage-supply"]},
    ),
    "ammeter": (
        on("measure", "sensor", tools=["multimeter"], measures="current"),
        {"measures": "voltage"},
    ),
    "pierced-insulation": (on("look", tools=["piercing-probe"]), {"tools": ["back-probe"]}),
    "spread-terminal": (
        on("measure", "sensor", tools=["multimeter"], measures="voltage"),
        {"measures": "length", "tools": ["feeler-gauge"]},
    ),
    "plug-live": (on("unplug", "sensor", entry=KEYED), {"entry": {}}),
    "static": (on("unplug", "module"), {"acts_on": ["sensor"]}),
    "programming": (on("program", "module", tools=["programmer"]), {"action": "look"}),
    "clear-codes": (on("clear_codes", tools=["scan-tool"]), {"action": "save_codes"}),
    "starter-duty": (on("crank", place="driver_seat"), {"action": "start_engine"}),
    "soldering": (on("look", tools=["soldering-iron"]), {"tools": ["crimp-tool"]}),
    "wiring-power": (on("cut_and_join", "sensor", tools=["crimp-tool"]), {"entry": BATTERY_OFF}),
    "timing-drive": (on("turn_by_hand", "timing-drive"), {"action": "look"}),
    # brakes and wheels
    "brake-pressure": (
        on("loosen", "brake-hydraulic", opens=["brake_hydraulic"]),
        {"entry": {"brake_pressure": "relieved"}},
    ),
    "brake-restore": (on("fit", "brake-hydraulic"), {"action": "look"}),
    "brake-fluid": (on("fill", "sensor", supplies=["brake-fluid"]), {"supplies": ["coolant"]}),
    "brake-dust": (on("clean", "friction-dust"), {"action": "look"}),
    "brake-pedal-apart": (
        on("key_on", place="driver_seat", before=[on("remove", "friction-dust")]),
        {"before": [on("remove", "friction-dust"), on("fit", "friction-dust")]},
    ),
    "electric-parking-brake": (
        on("look", "electric-parking-brake", "wheel_area"), {"entry": BATTERY_OFF},
    ),
    "wheel-fastening": (on("tighten", "road-wheel", tools=["torque-wrench"]),
                        {"action": "remove"}),
    "single-use-fastener": (
        on("tighten", "sensor", tools=["torque-wrench"], condition=["single_use_fastener"]),
        {"condition": []},
    ),
    "single-use-critical": (
        on("tighten", "road-wheel", tools=["torque-wrench"], condition=["single_use_fastener"]),
        {"acts_on": ["sensor"]},
    ),
    "tyre-inflation": (on("inflate", "road-wheel", tools=["tyre-inflator"]),
                       {"action": "look"}),
    "tyre-hot-work": (
        on("heat", "sensor", near=["inflated_tyre"], tools=["gas-torch"]),
        {"near": ["road_wheel"]},
    ),
    "driver-assist-aim": (on("adjust", "driver-assist"), {"action": "look"}),
    # tools and substances
    "compressed-air": (on("look", tools=["compressed-air"]), {"tools": ["hand-tool"]}),
    "solvent": (on("clean", "sharp", supplies=["solvent"]), {"supplies": ["inert"]}),
    "solvent-hot-engine": (
        on("clean", "sharp", near=["hot_surface"], supplies=["solvent"]), {"entry": COLD},
    ),
    "solvent-plug": (on("clean", "sensor", supplies=["solvent"]), {"acts_on": ["sharp"]}),
    "chlorinated-hot": (
        on("clean", "sharp", near=["hot_surface"], supplies=["chlorinated-solvent"]),
        {"supplies": ["solvent"]},
    ),
    "hot-work": (on("look", tools=["grinder"]), {"tools": ["hand-tool"]}),
    "hot-work-fuel": (on("look", near=["fuel_low"], tools=["welder"]), {"near": ["sharp"]}),
    "weld-electronics": (on("look", tools=["welder"]), {"tools": ["grinder"]}),
    "grinding": (on("look", tools=["power-drill"]), {"tools": ["hand-tool"]}),
    "press-tool": (on("look", tools=["puller"]), {"tools": ["hand-tool"]}),
    "sharp-edges": (on("remove", "sharp"), {"place": "away"}),
    "noise": (on("look", tools=["impact-wrench"]), {"tools": ["hand-tool"]}),
    "charred-seals": (on("look", "sensor", condition=["burnt"]), {"condition": ["damaged"]}),
    "isocyanate": (on("look", supplies=["isocyanate"]), {"supplies": ["adhesive"]}),
    "adhesive": (on("look", supplies=["adhesive"]), {"supplies": ["grease"]}),
}  # fmt: skip

CASES = VEHICLE | WORK
