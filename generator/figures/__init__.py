"""Numbers and words in, one themed inline SVG out.

Every figure is a pure function of plain data. It knows no records and holds no words of its own:
whoever asks for it passes title, description and labels. All figures are 360 units wide, set their
smallest type at 12 units, tell things apart by pattern, place and word as well as by colour, and
take their colours from the CSS variables in :mod:`generator.figures.style`.
"""

from generator.figures.circuit import CircuitStop, CircuitWords, Stop, circuit_strip
from generator.figures.connector import Cavity, Connector, Keyway
from generator.figures.coverage import Block, CoverageWords, Mark, Strip, coverage_strips
from generator.figures.document import Words
from generator.figures.doubt import DoubtWords, doubt_curve
from generator.figures.hall import SquareLevels, SquareWords, square_wave
from generator.figures.hookup import HookupWords, Lead, Meter, meter_hookup
from generator.figures.pickup import PickupWords, pickup_wave
from generator.figures.place import PlaceWords, Reach, Seen, Zone, where_to_look
from generator.figures.wheel import WheelWords, trigger_wheel
from generator.figures.winding import BandReading, BandRow, BandWords, winding_band

__all__ = [
    "BandReading",
    "BandRow",
    "BandWords",
    "Block",
    "Cavity",
    "CircuitStop",
    "CircuitWords",
    "Connector",
    "CoverageWords",
    "DoubtWords",
    "HookupWords",
    "Keyway",
    "Lead",
    "Mark",
    "Meter",
    "PickupWords",
    "PlaceWords",
    "Reach",
    "Seen",
    "SquareLevels",
    "SquareWords",
    "Stop",
    "Strip",
    "WheelWords",
    "Words",
    "Zone",
    "circuit_strip",
    "coverage_strips",
    "doubt_curve",
    "meter_hookup",
    "pickup_wave",
    "square_wave",
    "trigger_wheel",
    "where_to_look",
    "winding_band",
]
