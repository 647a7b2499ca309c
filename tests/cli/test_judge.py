"""judge: the six verdicts from the command line, and what wrong questions get."""

from __future__ import annotations

import pytest

from tests.cli.asking import ask

WINDING = "inductive-winding"
AT_20 = ("--at", "temperature=20degC")
METER = ("--meter", "multimeter")


@pytest.mark.parametrize(
    ("reading", "word"),
    [
        ("850", "in_limits"), ("0.85 kohm", "in_limits"), ("850 Ω", "in_limits"), ("40", "low"),
        ("1.3 kohm", "high"), ("OL", "open"), ("-3", "implausible"), ("945", "cannot_tell"),
    ],
)  # fmt: skip
def test_each_verdict_comes_as_data(reading: str, word: str) -> None:
    """Shows all six verdicts on 774 to 946 ohm (860 ± 10 %) as read at 20 °C."""
    answer = ask("judge", WINDING, reading, *AT_20, *METER, "--format", "json")
    assert (answer.status, answer.err) == (0, "")
    assert answer.data["verdict"] == word
    assert (answer.data["low"], answer.data["high"]) == pytest.approx((774.0, 946.0))
    assert answer.data["schema"] == 1


def test_the_answer_in_words_says_what_it_does_not_prove() -> None:
    """Shows verdict, limits, uncertainty and remarks for a person."""
    answer = ask("judge", WINDING, "850", *AT_20, *METER)
    assert answer.out.splitlines()[0].startswith("In limits: 850")
    assert "774 to 946 ohm" in answer.out
    assert "standard uncertainty" in answer.out
    assert "asleep" in answer.out
    assert "100.0 %" not in answer.out, "nothing is certain"


def test_cannot_tell_says_what_would_decide() -> None:
    """Shows that an unknown temperature is asked for, with the range that was taken."""
    answer = ask("judge", WINDING, "1.02 kohm", *METER)
    assert answer.out.startswith("Cannot tell")
    assert "temperature of the part itself" in answer.out
    assert "−20 to 100 °C" in answer.out


def test_the_hot_vehicle_value_wins_over_the_band() -> None:
    """IEC 60028: 860·1.3144·1.1 = 1243 ohm at 100 °C, above the band's 1200."""
    answer = ask("judge", WINDING, "1215", "--at", "temperature=100 °C", *METER)
    assert answer.out.startswith("In limits")
    assert "band over all designs" in answer.out


def test_a_greater_accepted_risk_decides_sooner() -> None:
    """Shows that 945 ohm, undecided at 5 %, is decided at 40 % or not at all below its odds."""
    asked = ("judge", WINDING, "943", *AT_20, *METER, "--format", "json")
    strict, loose = ask(*asked, "--risk", "1").data, ask(*asked, "--risk", "40").data
    assert strict["verdict"] == "cannot_tell"
    assert loose["verdict"] == "in_limits"
    assert strict["probability"] == pytest.approx(loose["probability"])


def test_leads_that_were_left_in_are_taken_off() -> None:
    """Shows the demonstration meter's 0.1 to 0.4 ohm: 0.25 ohm off on average."""
    asked = ("judge", WINDING, "850", *AT_20, *METER, "--format", "json")
    assert ask(*asked, "--leads", "in").data["corrected"] == pytest.approx(849.75)
    assert ask(*asked, "--leads", "nulled").data["corrected"] == 850.0


@pytest.mark.parametrize(
    ("arguments", "word"),
    [
        ((WINDING, "about 850"), "about 850"),
        ((WINDING, "5 V"), "resistance is needed"),
        ((WINDING, "800 to 900 ohm"), "not one reading"),
        ((WINDING, "850", "--meter", "multimetre"), "did you mean multimeter"),
        ((WINDING, "850", "--meter", "scan-tool"), "says nothing of its errors"),
        ((WINDING, "850", "--vehicle", "corrie-1-6"), "does not hold"),
        ((WINDING, "850", "--vehicle", "corrie-1-2", "--built", "May"), "not a day"),
        ((WINDING, "850", "--built", "2016-05-01"), "needs --vehicle"),
        ((WINDING, "850", "--risk", "60"), "risk"),
        (("inductive-windin", "850"), "did you mean"),
        ((WINDING,), "READING"),
    ],
)
def test_a_wrong_question_is_told_in_a_line(arguments: tuple[str, ...], word: str) -> None:
    """Shows that a wrong question gets status 2, a clear word, and no traceback."""
    answer = ask("judge", *arguments)
    assert answer.status == 2
    assert word in answer.err
    assert "Traceback" not in answer.err
    assert answer.out == ""
