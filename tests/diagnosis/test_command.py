"""``fettlebook order``: what it prints, and how it says what was asked wrongly."""

from __future__ import annotations

import pytest

from tests.cli.asking import ask

USAGE = 2


def test_json_has_the_order_and_its_working() -> None:
    """The JSON gives opening, tests, odds and evidence of the vehicle that was asked about."""
    answer = ask(
        "order", "cuts-out-hot", "--vehicle", "corrie-1-6", "--code", "P0335", "--when", "wet",
        "--found", "hall-supply-under-load=in_limits", "--format", "json",
    )  # fmt: skip
    assert answer.status == 0, answer.err
    (found,) = answer.data["orders"]
    assert found["vehicle"] == "corrie-1-6"
    assert found["opening"][0] == "confirm-complaint"
    assert found["ending"] is None
    tests = [each["test"] for each in found["tests"]]
    assert "hall-supply-under-load" not in tests
    assert tests.index("hall-pull-up") < tests.index("square-wave-on-scope")
    assert [each["kind"] for each in found["evidence"]] == ["code", "when", "found"]
    assert sum(each["share"] for each in found["causes"]) == pytest.approx(1, abs=1e-4)
    assert all(found["expected_minutes"] <= m for m in found["other_orders_minutes"].values())
    assert found["last_outcome"]["next"] == [{"test": "hall-ground-under-load"}]


def test_a_proof_ends_it_and_leads_to_the_work() -> None:
    """An outcome that condemns the part names the cause and the replacement."""
    answer = ask(
        "order", "cuts-out-hot", "--vehicle", "corrie-1-6",
        "--found", "heat-and-wiggle-hall=flat_high", "--format", "json",
    )  # fmt: skip
    ending = answer.data["orders"][0]["ending"]
    assert (ending["how"], ending["causes"]) == ("proved", ["Hall crank sensor"])
    assert ending["next"] == [{"way": "replacement", "record": "replace-crank-sensor-hall"}]


def test_text_names_every_vehicle_of_the_complaint() -> None:
    """Without a vehicle the order of each is printed."""
    answer = ask("order", "stumbles-and-tach-jumps")
    assert answer.status == 0
    assert "Corrie 1.2" in answer.out and "Corrie 1.6" in answer.out
    assert "1 identify-sensor-type: 6 min" in answer.out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["cuts-out-hots"], "did you mean cuts-out-hot?"),
        (["cuts-out-hot", "--vehicle", "corrie-1-7"], "did you mean"),
        (["cuts-out-hot", "--code", "P9999"], "no code P9999"),
        (["cuts-out-hot", "--found", "hall-pull-up"], "is not TEST=FINDING"),
        (["cuts-out-hot", "--found", "hall-pul-up=low"], "did you mean hall-pull-up?"),
        (["cuts-out-hot", "--found", "hall-pull-up=lo"], "cannot find lo; it finds"),
        (["cuts-out-hot", "--vehicle", "corrie-1-2", "--found", "hall-pull-up=low"], "not made on"),
        (
            ["cuts-out-hot", "--found", "hall-pull-up=low", "--found", "hall-pull-up=high"],
            "given twice",
        ),
    ],
)
def test_what_is_asked_wrongly_is_said(arguments: list[str], said: str) -> None:
    """Each slip is a usage error with a word on what would be right, and no traceback."""
    answer = ask("order", *arguments)
    assert answer.status == USAGE
    assert said in answer.err
    assert "Traceback" not in answer.err
    assert answer.out == ""
