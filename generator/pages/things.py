"""Pages of parts, circuits, codes and vehicles."""

from __future__ import annotations

from dataclasses import dataclass

from generator.expected.choose import specs_of
from generator.pages import routes
from generator.pages.book import Book, LinkTo, RecordKey, listed, planned_for
from generator.pages.drawings import circuit_picture, location_picture, wheel_picture
from generator.pages.page import Heading, Page, Planned, render
from generator.pages.strings import say
from generator.pages.systems import Both
from generator.pages.values import Clause, value_view, values_by_vehicle
from generator.records.kinds.base import COMMON_PRACTICE
from generator.records.kinds.knowledge import FaultCode
from generator.records.kinds.things import Circuit, Component, Spec, Vehicle
from generator.records.kinds.work import Test
from generator.records.knowledge_base import KnowledgeBase, table

Lists = list[tuple[str, str, list[LinkTo]]]


@dataclass(frozen=True, slots=True)
class ListedValue:
    """A value in a vehicle's list, with the page that explains it."""

    spec: Spec
    headline: Both
    conditions: tuple[Clause, ...]
    target: str


def planned(book: Book) -> Planned:
    """Plan the page of every part, circuit, code and vehicle."""
    return {
        **planned_for(book, book.kb.all("components", Component), _component),
        **planned_for(book, book.kb.all("circuits", Circuit), _circuit),
        **planned_for(book, book.kb.all("codes", FaultCode), _code),
        **planned_for(book, book.kb.all("vehicles", Vehicle), _vehicle),
    }


def _component(book: Book, component: Component) -> Page:
    specs = specs_of(book.kb, component.id)
    reads = book.kb.find("components", component.reads, Component)
    toothed = component if component.wheel else reads
    circuit = book.kb.find("circuits", component.circuit, Circuit)
    lists: Lists = [
        (say("component.replaced_by"), "replacement",
         [book.link(r) for r in book.linked_from(component, "replacements")
          if getattr(r, "component", "") == component.id]),
        (say("component.symptoms"), "symptoms",
         [book.link(r) for r in book.linked_from(component, "symptoms")]),
        (say("component.codes"), "codes", _codes(book, component)),
    ]  # fmt: skip
    tests = [book.link(test) for test in book.pick(_tests_of, component.id, Test)]
    shown = [("does", "component.does", True), ("where", "component.where", True),
             ("connector", "component.connector", bool(component.connector)),
             ("wheel", "component.wheel_self" if component.wheel else "component.wheel",
              toothed is not None),
             ("circuit", "component.circuit", circuit is not None),
             ("values", "component.values", bool(specs)),
             ("fails", "component.fails", bool(component.fails)),
             ("tests", "component.judged_by", True)]  # fmt: skip
    return render(
        book,
        routes.address(component),
        component.title,
        "component.html",
        {
            "component": component,
            "vehicles": book.vehicles(component.fitted_to),
            "where": location_picture("where", component),
            "wheel": wheel_picture("wheel", toothed) if toothed else "",
            "reads": book.link(reads) if reads else None,
            "read_by": [
                book.link(c) for c in book.linked_from(component, "components")
                if getattr(c, "reads", "") == component.id
            ],
            "circuit": book.link(circuit) if circuit else None,
            "circuit_figure": circuit_picture("circuit", circuit) if circuit else "",
            "values": values_by_vehicle(book, specs),
            "tests": tests,
            "lists": lists,
        },
        record=component,
        contents=tuple(Heading(say(key), anchor) for anchor, key, there in shown if there)
        + _list_headings(lists),
        description=f"{component.title}, {book.vehicles(component.fitted_to)}",
    )  # fmt: skip


@table
def _tests_of(kb: KnowledgeBase) -> dict[str, tuple[RecordKey, ...]]:
    """Give the tests that judge a part, by that part."""
    return listed(
        kb, "tests", Test,
        lambda test: {*test.components, *(id_ for one in test.outcomes for id_ in one.about)},
    )  # fmt: skip


def _codes(book: Book, component: Component) -> list[LinkTo]:
    return [
        LinkTo(f"{code.code} {code.title}", routes.address(code))
        for code in book.linked_from(component, "codes")
        if isinstance(code, FaultCode) and component.id in code.components
    ]


def _circuit(book: Book, circuit: Circuit) -> Page:
    return render(
        book,
        routes.address(circuit),
        circuit.title,
        "circuit.html",
        {
            "circuit": circuit,
            "vehicles": book.vehicles(circuit.applies_to),
            "figure": circuit_picture("circuit", circuit),
            "feeds": [book.link(r) for r in book.linked_from(circuit, "components")],
        },
        record=circuit,
        contents=tuple(
            Heading(line.carries, f"line-{n}") for n, line in enumerate(circuit.lines, start=1)
        ) + (Heading(say("circuit.feeds"), "feeds"),),
        description=f"{say('circuit.kind')}: {circuit.title}",
    )  # fmt: skip


def _code(book: Book, code: FaultCode) -> Page:
    source = None
    if code.source != COMMON_PRACTICE:
        source = book.links("sources", [code.source])[0]
    tests = []
    for id_ in code.tests:
        test = book.kb.get("tests", id_, Test)
        fewer = [v for v in code.applies_to if v in test.applies_to]
        note = say("next.on", vehicles=book.vehicles(fewer)) if fewer != code.applies_to else ""
        tests.append(book.link(test, note))
    parts = [
        ("means", "code.means", True), ("tests", "code.tests", True),
        ("points-to", "code.points_to", True), ("symptoms", "code.symptoms", bool(code.symptoms)),
    ]  # fmt: skip
    return render(
        book,
        routes.address(code),
        f"{code.code} {code.title}",
        "code.html",
        {
            "code": code,
            "vehicles": book.vehicles(code.applies_to),
            "source": source,
            "tests": tests,
            "components": book.links("components", code.components),
            "symptoms": book.links("symptoms", code.symptoms),
        },
        record=code,
        contents=tuple(Heading(say(key), anchor) for anchor, key, there in parts if there),
        description=f"{code.code}: {code.title}",
    )


def _vehicle(book: Book, vehicle: Vehicle) -> Page:
    lists: Lists = [
        (say("vehicle.symptoms"), "symptoms",
         [book.link(r) for r in book.linked_from(vehicle, "symptoms")]),
        (say("vehicle.parts"), "parts",
         [book.link(r) for r in book.linked_from(vehicle, "components")]),
    ]  # fmt: skip
    return render(
        book,
        routes.address(vehicle),
        vehicle.title,
        "vehicle.html",
        {
            "vehicle": vehicle,
            "lists": lists,
            "values": [
                _listed(book, spec)
                for spec in book.kb.all("specs", Spec)
                if vehicle.id in spec.applies_to and spec.standing == "vehicle_value"
            ],
        },
        record=vehicle,
        contents=(Heading(say("vehicle.tell_apart"), "tell-apart"), *_list_headings(lists),
                  Heading(say("vehicle.values"), "values")),
        description=f"{vehicle.title}, {vehicle.engine.layout}",
    )  # fmt: skip


def _listed(book: Book, spec: Spec) -> ListedValue:
    view = value_view(book, spec)
    component = book.kb.get("components", spec.component, Component)
    return ListedValue(
        spec, view.headline, view.conditions,
        f"{routes.address(component)}#{routes.spec(spec.id)}",
    )  # fmt: skip


def _list_headings(lists: Lists) -> tuple[Heading, ...]:
    return tuple(Heading(heading, anchor) for heading, anchor, items in lists if items)
