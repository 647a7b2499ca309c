"""Drawings of things: leads on a connector, the place of a part, its wheel, its circuit."""

from __future__ import annotations

from markupsafe import Markup

from generator.figures import (
    Cavity,
    CircuitStop,
    CircuitWords,
    HookupWords,
    Keyway,
    Meter,
    PlaceWords,
    Reach,
    Seen,
    Stop,
    WheelWords,
    Zone,
    circuit_strip,
    meter_hookup,
    trigger_wheel,
    where_to_look,
)
from generator.figures import Connector as DrawnConnector
from generator.figures import Lead as DrawnLead
from generator.pages.book import Book
from generator.pages.pictures import missing_words
from generator.pages.prose import drawn
from generator.pages.strings import say
from generator.records.kinds.knowledge import Tool
from generator.records.kinds.things import Circuit, Component, Connector, Line, Node
from generator.records.kinds.work import Hookup, Lead, Test

ON_ENGINE = frozenset(zone.value for zone in Zone)
"""Zones that the drawing of the engine shows."""

STOPS = {
    "battery": Stop.SUPPLY, "fuse": Stop.FUSE, "relay": Stop.RELAY, "splice": Stop.SPLICE,
    "connector": Stop.CONNECTOR, "module": Stop.PART, "part": Stop.PART, "ground": Stop.GROUND,
}  # fmt: skip

MIRRORED = {"left": "right", "right": "left"}
"""Which side a keyway is on when the connector is seen from its other face."""


def hookup_picture(book: Book, figure_id: str, test: Test, hookup: Hookup, tool: Tool) -> Markup:
    """Draw the instrument with its leads, the connector as seen from the side probed."""
    by_colour = {lead.colour: lead for lead in hookup.leads}
    red, black = by_colour.get("red"), by_colour.get("black")
    if red is None or black is None:
        return Markup()
    component = book.kb.get("components", hookup.component, Component)
    pins = [lead for lead in (red, black) if lead.pin is not None]
    face = _seen(component.connector, hookup) if component.connector and pins else None
    keyway = face.keyway.value if face else ""
    view = seen_words(hookup)
    leads = " ".join(
        say("test.hookup_lead", colour=lead.colour.capitalize(), to=lead.to)
        for lead in hookup.leads
    )
    return drawn(meter_hookup(
        figure_id,
        HookupWords(
            title=say("figure.hookup_title", title=test.title),
            desc=say(
                "test.hookup_desc", instrument=tool.title, setting=hookup.setting, leads=leads,
                view=view,
            ),
            dial=say("figure.dial"), red=say("figure.red"), black=say("figure.black"),
            keyway=(
                say("figure.keyway", side=say(f"figure.keyway.{keyway}")) if keyway else ""
            ),
            state=say(f"figure.{_state(hookup)}"),
            view=view,
        ),
        Meter(
            "– – –", hookup.setting,
            (say("figure.socket_common"), say("figure.socket_input")),
        ),
        face,
        _lead(red, say("figure.socket_input")),
        _lead(black, say("figure.socket_common")),
    ))  # fmt: skip


def seen_words(hookup: Hookup) -> str:
    """Say from where the probed points are seen; posts and studs have no side."""
    state = _state(hookup)
    return say(f"test.view.{hookup.side}" if state == "unplugged" else f"test.view.{state}")


def _state(hookup: Hookup) -> str:
    if all(lead.pin is None for lead in hookup.leads):
        return "posts"
    return "plugged" if hookup.plugged else "unplugged"


def _lead(lead: Lead, socket: str) -> DrawnLead:
    return DrawnLead(socket, lead.to, "" if lead.pin is None else str(lead.pin))


def _seen(connector: Connector, hookup: Hookup) -> DrawnConnector:
    """Turn the recorded face to the one the probe meets.

    A record gives rows as seen looking into the part. Looking into the harness half, which
    mates with it face to face, left and right change places; a plugged connector is probed from
    behind the harness half, which is the part's own order again.
    """
    mirror = hookup.side == "harness" and not hookup.plugged
    colours = {pin.pin: pin.colour for pin in connector.pins}
    rows = tuple(
        tuple(
            Cavity(str(pin), colours.get(pin, ""), pin in colours)
            for pin in (reversed(row) if mirror else row)
        )
        for row in connector.rows
    )
    side = MIRRORED.get(connector.keyway, connector.keyway) if mirror else connector.keyway
    return DrawnConnector(rows, Keyway(side), hookup.plugged)


def location_picture(figure_id: str, component: Component) -> Markup:
    """Draw where on the engine a part sits; nothing for a part that is elsewhere."""
    location = component.location
    if location.zone not in ON_ENGINE:
        return Markup()
    zone, reach = say(f"zone.{location.zone}"), say(f"component.from.{location.side}")
    return drawn(where_to_look(
        figure_id,
        PlaceWords(
            title=say("figure.where_title", title=component.title),
            desc=say("figure.where_desc", zone=zone, reach=reach),
            crank_pulley=say("zone.crank_pulley"), timing_drive=say("zone.timing_drive"),
            beside_block=say("zone.beside_block"), flywheel_end=say("zone.flywheel_end"),
            reach=reach, view=say("figure.where_view"),
        ),
        Zone(location.zone), Seen.SIDE, Reach(location.side),
    ))  # fmt: skip


def wheel_picture(figure_id: str, component: Component) -> Markup:
    """Draw a toothed wheel with its sensor."""
    wheel = component.wheel
    if wheel is None:
        return Markup()
    return drawn(trigger_wheel(
        figure_id,
        WheelWords(
            title=say("figure.wheel_title", title=component.title),
            desc=say("figure.wheel_desc", positions=wheel.positions, missing=wheel.missing),
            sensor=say("figure.wheel_sensor"), gap=say("figure.wheel_gap"),
            missing=missing_words(wheel.missing) if wheel.missing else say("figure.wheel_no_gap"),
            direction=say("figure.wheel_turns"),
        ),
        wheel.positions, wheel.missing, 90.0, 30.0,
    ))  # fmt: skip


def circuit_picture(figure_id: str, circuit: Circuit) -> Markup:
    """Draw each wire of a circuit as a strip, one under the other."""
    return Markup("\n").join(
        _line(f"{figure_id}-{n}", circuit, line) for n, line in enumerate(circuit.lines, start=1)
    )


def _line(figure_id: str, circuit: Circuit, line: Line) -> Markup:
    stops = [
        CircuitStop(
            STOPS[node.kind], node.name, _detail(node), line.colour if n == 0 else "",
            tuple(node.shared_with),
        )
        for n, node in enumerate(line.way)
    ]  # fmt: skip
    words = CircuitWords(
        title=say("figure.circuit_title", title=circuit.title, line=line.carries),
        desc=say("figure.circuit_desc", stops=", ".join(node.name for node in line.way)),
        also_feeds=say("figure.also_feeds"),
    )
    return drawn(circuit_strip(figure_id, words, stops))


def _detail(node: Node) -> str:
    parts = [node.rating.text] if node.rating else []
    parts += [f"{say('component.pin')} {node.pin}"] if node.pin else []
    return ", ".join(parts)
