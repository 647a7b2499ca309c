"""Words of the job in hand: the line on every page, the panel behind it, handing it over."""

from __future__ import annotations

WORDS: dict[str, str] = {
    # the line
    "line.label": "Job in hand",
    "line.start": "Start a job",
    "line.job": "Job",
    "line.open": "Open",
    "line.missing": "This part of the manual cannot be fetched now. Try again with a network.",
    "line.other": "The job in hand is on another vehicle than the one chosen above.",
    # the panel
    "hand.begin_head": "Start a job",
    "hand.begin_lead": (
        "Ticks are then kept for this job alone. It stays on this device until you clear it."
    ),
    "hand.plate": "Plate or job number",
    "hand.mileage": "Mileage",
    "hand.said": "The complaint, in the owner’s words",
    "hand.vehicle": "Vehicle",
    "hand.any": "not chosen",
    "hand.begin": "Start this job",
    "hand.save": "Save",
    "hand.back": "Back",
    "hand.no_plate": "Type the plate or the job number.",
    "hand.full": "This device has no room left for it. Nothing was changed.",
    "hand.head": "Job {plate}",
    "hand.ticked_one": "1 step ticked",
    "hand.ticked": "{count} steps ticked",
    "hand.readings": "Readings",
    "hand.read_before": "Before the work, {at}, revision {revision}",
    "hand.read_after": "After the work, {at}, revision {revision}",
    "hand.change": "Change",
    "hand.change_head": "Change the job",
    "hand.aside": "Put it aside",
    "hand.another": "Start another job",
    "hand.others": "Put aside on this device",
    "hand.awake": "Keep the screen awake",
    "hand.awake_on": "The screen stays awake while this page is in sight.",
    "hand.awake_off": "The screen goes dark as the device is set.",
    "hand.awake_refused": "The device refuses to keep the screen awake. A low battery does that.",
    "hand.awake_none": (
        "This browser cannot keep the screen awake, or not at an address without https. "
        "Set the device itself."
    ),
    "hand.clear": "Clear this job",
    "hand.clear_head": "Clear {plate} from this device?",
    "hand.clear_lead": "The job and all its ticks are gone then. Nobody can bring them back.",
    "hand.clear_yes": "Clear it",
    "hand.clear_no": "Keep it",
    # handing over
    "hand.give": "Hand it to another phone",
    "hand.give_lead": (
        "The other phone gets the job and its ticks as they are now. No server sees them. "
        "The job stays here too: clear it when the other has it."
    ),
    "hand.link": "Link",
    "hand.copy": "Copy the link",
    "hand.copied": "Copied.",
    "hand.copy_self": "Copy what is marked.",
    "hand.share": "Send the link",
    "hand.code": "Code of the link, for the other phone’s camera",
    "hand.code_lead": "Point the other phone’s camera here.",
    "hand.code_none": "It is too much for a code, or none can be drawn. Use the link or the file.",
    "hand.file": "Save as a file",
    "hand.from_folder": "You are reading from a folder, which no link leads to. Hand over a file.",
    "hand.take": "Take over a job from a file",
    "hand.take_lead": "A link or a code needs no more than to be opened.",
    "hand.take_file": "File of the job",
    "hand.arrived_head": "Take over this job?",
    "hand.arrived_lead": (
        "Its steps were ticked by somebody else. You confirm the state of the vehicle before you "
        "go on with a step."
    ),
    "hand.arrived_again": (
        "This job is on this device already. What is ticked here is replaced by what came in."
    ),
    "hand.arrived_yes": "Take it over",
    "hand.arrived_no": "Leave it",
    "hand.arrived_bad": "This is no job of this manual, or it is damaged. Nothing was changed.",
    # the job sheet
    "sheet.heading": "Job sheet",
    "sheet.open": "Job sheet",
    "sheet.code": "Code of this page and its revision",
    "sheet.current": "The paper you come from has this page’s revision, {revision}.",
    "sheet.older": (
        "The paper you come from is of another revision, {revision}. Do not work from it: this "
        "page has changed."
    ),
    "sheet.vin": "Vehicle identification number",
    "sheet.date": "Date",
    "sheet.who": "Done by",
    "sheet.before": "Reading before",
    "sheet.after": "Reading after",
    "sheet.found": "Found",
    "sheet.repaired": "After the repair",
    "sheet.tightened": "Tightened to",
    "sheet.tool": "Tool no.",
    "sheet.signed": "Signed",
    "sheet.sign": "Result and signatures",
    "sheet.instrument": "Instrument, its number",
    "sheet.calibrated": "Calibrated until",
    "sheet.result": "What was found, what was done",
    "sheet.checked": "Checked by somebody else",
    "sheet.keep": "Keep this sheet with the job.",
}
