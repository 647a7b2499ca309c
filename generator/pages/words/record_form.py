"""Words of the page on which a record is made by filling in a form."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "nav.add": "Add to the manual",
    "form.heading": "Add to the manual",
    "form.lead": (
        "Fill in a form and get a record, ready to be handed in. It works without a network, and "
        "nothing leaves this device until you send it."
    ),
    "form.needs_script": (
        "The form needs a browser that runs scripts. Without one, write the record on a computer "
        "that has the manual’s records. This lays one down with every field described:"
    ),
    "form.by_hand": "fettlebook new tests my-new-test",
    "form.ask_kind": "What do you want to add?",
    "form.ask_id": "Name of its file",
    "form.id_about": (
        "Small letters, digits and single hyphens. It is the address of the page as well, and is "
        "made from the title unless you write another."
    ),
    "form.choose": "Choose …",
    "form.finish": "Check and make the record",
    "form.clear": "Empty the form",
    "form.start_over": "What you have filled in will be gone. Start over?",
    "form.draft": "What you fill in is kept on this device until you empty the form.",
    "form.done": "The record is ready",
    "form.where": "It belongs in the file {path}.",
    "form.download": "Download",
    "form.copy": "Copy",
    "form.copied": "Copied. Paste it into a new file of that name.",
    "form.share": "Share",
    "form.mail": "Send as e-mail",
    "form.mail_subject": "New record: {path}",
    "form.text": "What the file holds",
    "form.last_word": (
        "The form checks each field by itself. The command check has the last word: it also sees "
        "what follows from other records. A draft is published when somebody else has approved it."
    ),
    "form.common_practice": "Common practice, where nobody can name a document",
    # around a field
    "form.free": "(may stay out)",
    "form.more": "May stay out: {names}",
    "form.one_way": "Fill in exactly one of these: {names}.",
    "form.which": "Which of them it is; its fields follow.",
    "form.add_to": "Add: {name}",
    "form.add_one": "Add one more: {name}",
    "form.remove": "Remove",
    "form.remove_one": "Remove {name}",
    "form.item": "{name}, no. {number}",
    "form.up": "Up",
    "form.up_one": "Move {name} up",
    "form.down": "Down",
    "form.down_one": "Move {name} down",
    "form.key": "For",
    "form.value": "Value",
    "form.true": "true: yes",
    "form.false": "false: no",
    "form.day": "2026-10-05",
    # what is wrong
    "form.faults_one": "1 thing is to be mended.",
    "form.faults_more": "{count} things are to be mended.",
    "form.missing": "Fill this in.",
    "form.too_few": "Give at least {least}.",
    "form.too_many": "Give at most {most}.",
    "form.too_long": "Write at most {most} characters.",
    "form.one_line": "Write it on one line.",
    "form.bad_number": "Write a plain number, as 12 or 0.5.",
    "form.bad_whole": "Write a whole number.",
    "form.bad_least": "The number is too small: the limit is {limit}.",
    "form.bad_most": "The number is too large: the limit is {limit}.",
    "form.bad_range": "The number must lie between {low} and {high}.",
    "form.bad_day": "Write a day that there is, as 2026-10-05.",
    "form.bad_word": "Choose one of the words.",
    "form.bad_value": "Write a value with its unit, as 860 ohm, 10 ± 1 N·m or 0.2 to 2 V.",
    "form.bad_pattern": "It does not have the form that the sentence above asks for.",
    "form.bad_character": "A tab or an invisible character is in it. Take it out.",
    "form.bad_id": "Use small letters, digits and single hyphens, at most 60.",
    "form.reserved_id": "Computers keep the name {id} for themselves. Use another.",
    "form.taken_id": "There is a record called {id} already. Use another name.",
    "form.unknown_id": "There is no record called {id}.",
    "form.twice": "It stands in the list twice.",
    # the kinds
    "form.kind.vehicles": "A vehicle",
    "form.kind.components": "A part",
    "form.kind.circuits": "A circuit",
    "form.kind.specs": "A value",
    "form.kind.symptoms": "A complaint",
    "form.kind.cases": "A solved case",
    "form.kind.codes": "A fault code",
    "form.kind.tests": "A test",
    "form.kind.replacements": "A replacement",
    "form.kind.procedures": "A procedure",
    "form.kind.tools": "A tool",
    "form.kind.supplies": "A supply",
    "form.kind.hazards": "A caution",
    "form.kind.sources": "A source",
    "form.kind.terms": "A term",
    "form.kind.people": "A role",
}
