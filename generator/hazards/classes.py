"""The classes of tool and substance that rules know, and the words that lead to them.

A record's class is written as the trade says it ("LED test lamp", "brake cleaner"); the longest
known word in it decides. A class that leads nowhere counts as unknown, and so as hazardous.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

UNKNOWN = "unknown"

TOOLS: Mapping[str, tuple[str, ...]] = {
    "multimeter": ("multimeter", "meter", "ohmmeter", "voltmeter"),
    "ammeter": ("ammeter",),
    "current clamp": ("current clamp", "clamp meter"),
    "insulation tester": ("insulation tester", "megohmmeter"),
    "oscilloscope": ("oscilloscope", "scope"),
    "test lamp": ("test lamp", "test light"),
    "load lamp": ("load lamp", "load tester", "test load", "lamp load"),
    "jumper lead": ("jumper lead", "jumper wire", "jumper", "bridging lead", "fused lead"),
    "piercing probe": ("piercing probe", "insulation piercing probe"),
    "back probe": ("back probe", "probe", "test pin"),
    "test leads": ("test leads", "test lead", "breakout lead", "clip lead"),
    "scan tool": ("scan tool", "diagnostic tool", "laptop", "tablet", "phone", "telephone"),
    "programmer": ("programmer", "programming interface"),
    "battery charger": ("battery charger", "charger"),
    "supply unit": ("supply unit", "regulated supply", "battery support unit"),
    "jump leads": ("jump leads", "booster leads", "jump pack", "booster pack"),
    "battery tester": ("battery tester", "conductance tester"),
    "compressed air": ("compressed air", "air line", "airline", "air gun", "blow gun"),
    "air hammer": ("air hammer", "air chisel", "needle scaler"),
    "impact wrench": ("impact wrench", "impact driver", "impact gun", "wheel gun"),
    "press": ("press", "hydraulic press", "bearing press"),
    "puller": ("puller", "extractor"),
    "slide hammer": ("slide hammer",),
    "spring compressor": ("spring compressor",),
    "welder": ("welder", "welding set", "mig welder"),
    "gas torch": ("gas torch", "blow torch", "blowlamp", "induction heater", "cutting torch"),
    "grinder": ("grinder", "cut off wheel", "angle grinder"),
    "power drill": ("drill", "power drill"),
    "heat gun": ("heat gun", "hot air gun"),
    "soldering iron": ("soldering iron", "soldering station"),
    "hand lamp": ("hand lamp", "inspection lamp", "lead lamp", "work light", "hand torch", "torch"),
    "trolley jack": ("trolley jack", "jack", "bottle jack"),
    "axle stands": ("axle stands", "axle stand", "stands"),
    "lift": ("lift", "two post lift", "four post lift", "vehicle lift", "ramp"),
    "transmission jack": ("transmission jack", "engine crane", "hoist", "support beam",
                          "lift table"),
    "grease gun": ("grease gun",),
    "pressure gauge": ("pressure gauge", "gauge", "compression gauge", "vacuum gauge"),
    "tyre inflator": ("tyre inflator", "tyre gauge", "inflator"),
    "fuel retriever": ("fuel retriever",),
    "recovery machine": ("recovery machine", "air conditioning station", "refrigerant station"),
    "brake bleeder": ("brake bleeder", "pressure bleeder"),
    "exhaust extraction": ("exhaust extraction", "extraction hose"),
    "spark tester": ("spark tester",),
    "thermometer": ("thermometer", "infrared thermometer", "temperature probe", "thermocouple"),
    "feeler gauge": ("feeler gauge", "caliper", "calliper", "depth gauge", "micrometer", "ruler",
                     "steel rule", "dial gauge"),
    "hand tool": ("hand tool", "hand tools", "socket set", "socket", "spanner", "ratchet",
                  "screwdriver", "screw driver", "trim tool", "pick", "pliers", "extension",
                  "torque wrench", "wrench", "breaker bar", "magnet", "magnetic tool", "mirror",
                  "brush", "scraper", "tap", "wheel chock", "chock", "wheel chocks", "chocks",
                  "locking tool", "locking pin", "hex key", "key", "knife", "hook"),
    "crimp tool": ("crimp tool", "crimping tool", "crimper", "terminal tool", "wire stripper",
                   "wire cutter", "side cutters", "terminal extractor", "terminal release tool"),
    "recording": ("notepad", "job card", "camera", "pen", "wiring diagram", "diagram", "form"),
    "protection": ("gloves", "goggles", "eye protection", "face shield", "ear defenders",
                   "wrist strap", "wing cover", "memory saver", "protection"),
}  # fmt: skip
"""Class of tool to the words that lead to it."""

SUPPLIES: Mapping[str, tuple[str, ...]] = {
    "petrol": ("petrol", "gasoline"),
    "diesel fuel": ("diesel fuel", "diesel"),
    "engine oil": ("engine oil", "clean oil", "new oil"),
    "used oil": ("used oil", "waste oil", "old oil"),
    "gear oil": ("gear oil", "gearbox oil", "transmission fluid"),
    "coolant": ("coolant", "antifreeze", "glycol"),
    "brake fluid": ("brake fluid", "clutch fluid"),
    "battery acid": ("battery acid", "electrolyte"),
    "refrigerant": ("refrigerant",),
    "mildly flammable refrigerant": ("mildly flammable refrigerant", "r1234yf", "r152a"),
    "carbon dioxide refrigerant": ("carbon dioxide refrigerant", "r744"),
    "solvent": ("solvent", "brake cleaner", "contact cleaner", "carburettor cleaner", "degreaser",
                "panel wipe", "throttle cleaner", "cleaner", "thinner", "penetrating oil",
                "penetrating fluid", "releasing fluid"),
    "chlorinated solvent": ("chlorinated solvent", "chlorinated cleaner",
                            "chlorinated brake cleaner"),
    "starting fluid": ("starting fluid", "starting spray", "easy start"),
    "isocyanate": ("isocyanate", "two pack paint", "polyurethane adhesive", "screen adhesive",
                   "windscreen adhesive"),
    "adhesive": ("adhesive", "threadlock", "thread lock", "thread locking compound", "sealant",
                 "gasket compound", "anaerobic"),
    "exhaust fluid": ("exhaust fluid", "urea solution", "urea"),
    "hydraulic fluid": ("hydraulic fluid", "power steering fluid"),
    "grease": ("grease", "dielectric grease", "anti seize", "assembly paste", "lubricant",
               "copper paste", "light oil", "clean engine oil film"),
    "inert": ("cloth", "wipe", "rag", "cable tie", "tie", "tape", "loom tape", "heat shrink",
              "sleeve", "splice", "crimp", "connector", "terminal", "wire", "cable", "seal",
              "o ring", "gasket", "bolt", "nut", "screw", "fastener", "clip", "label", "paper",
              "fuse", "bulb", "gloves", "water", "cap", "bung", "distilled water", "foam brush",
              "swab", "conduit", "marker"),
}  # fmt: skip
"""Class of substance to the words that lead to it; `inert` ones harm nobody."""

MEASURED: Mapping[str, tuple[str, ...]] = {
    "resistance": ("resistance", "ohms", "continuity"),
    "insulation": ("insulation", "insulation resistance"),
    "voltage": ("voltage", "volts", "voltage drop", "supply", "level", "potential"),
    "current": ("current", "amps", "drain"),
    "waveform": ("waveform", "frequency", "duty", "duty cycle", "signal", "period", "pulse"),
    "length": ("length", "gap", "air gap", "depth", "runout", "width", "thickness",
               "tooth count", "teeth", "count"),
    "torque": ("torque", "angle"),
    "temperature": ("temperature",),
    "pressure": ("pressure", "vacuum", "compression"),
    "data": ("data", "engine speed", "live data", "rotational speed", "speed", "time"),
}  # fmt: skip
"""What a spec's quantity means for a measuring step."""

INSTRUMENTS = frozenset(
    {
        "multimeter", "ammeter", "current clamp", "insulation tester", "oscilloscope", "scan tool",
        "battery tester", "pressure gauge", "tyre inflator", "thermometer", "feeler gauge",
        "spark tester", "test lamp",
    }
)  # fmt: skip
"""Classes of tool that give a reading; leads alone do not."""

LOADS = frozenset({"load lamp", "test lamp", "battery tester"})
"""Classes of tool that load a circuit."""

AT_THE_END_OF_LEADS = INSTRUMENTS | LOADS | {"battery charger", "supply unit", "jump leads"}
"""Classes of tool that leads can belong to."""


def plain_words(text: str) -> str:
    """Give a text in small letters, hyphens as spaces, without punctuation."""
    return " ".join(re.findall(r"[a-z0-9]+", text.casefold()))


@cache
def _aliases(which: str) -> tuple[tuple[str, str], ...]:
    table = {"tool": TOOLS, "supply": SUPPLIES, "measured": MEASURED}[which]
    pairs = [(alias, name) for name, aliases in table.items() for alias in {name, *aliases}]
    return tuple(sorted(pairs, key=lambda pair: (-len(pair[0]), pair)))


@cache
def class_of(which: str, text: str) -> str:
    """Give the class that a written class leads to, or "unknown".

    Parameters
    ----------
    which : str
        "tool", "supply" or "measured".
    text : str
        As the record says it.
    """
    said = f" {plain_words(text)} "
    for alias, name in _aliases(which):
        if f" {alias} " in said or f" {alias}s " in said:
            return name
    return UNKNOWN
