"""Words of "this was wrong": the way to say so under each step, and the notes that are kept."""

from __future__ import annotations

WORDS: dict[str, str] = {
    # on every page
    "wrong.step": "This was wrong",
    "wrong.page": "Something on this page was wrong",
    "wrong.of_step": "in step {number}",
    "wrong.mail": "Was something here wrong?",
    "wrong.no_address": (
        "Was something here wrong? Tell the shop, with the name of this page, the step and the "
        "revision."
    ),
    "wrong.waiting": "Notes kept on this device: {count}",
    "wrong.missing": "The note cannot be opened now. Try again with a network.",
    "wrong.subject": "Wrong: {page}",
    # the note
    "wrong.head": "What was wrong?",
    "wrong.head_step": "What was wrong in step {number}?",
    "wrong.harm": "If somebody can be hurt by it, say so first, and tell the workshop lead now.",
    "wrong.ask": "What the manual says, and what you found",
    "wrong.carries": "The note also says:",
    "wrong.kept": "Kept on this device until you delete it. Nothing is sent by itself.",
    "wrong.full": "This device has no room left for it. Send it or save it before you leave.",
    "wrong.send": "Send as e-mail",
    "wrong.save": "Save as a file",
    "wrong.delete": "Delete the note",
    "wrong.close": "Close",
    "wrong.sure": "Delete this note from this device?",
    "wrong.given": "Delete the note when it has gone out.",
    # what it carries
    "wrong.is_page": "Page",
    "wrong.is_address": "Address",
    "wrong.is_revision": "Revision",
    "wrong.is_step": "Step",
    "wrong.is_vehicle": "Vehicle",
    "wrong.is_job": "Job",
    "wrong.is_day": "Written",
    "wrong.is_said": "What was wrong",
    # the list
    "wrong.list": "Notes on what was wrong",
    "wrong.list_lead": (
        "Under each step and at the foot of each page you can write down what was wrong. What you "
        "wrote waits here until you delete it."
    ),
    "wrong.list_none": "No note is kept on this device.",
}
