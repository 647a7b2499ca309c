"""Words of what is restored, of reserved work, and of a job that is taken up again."""

from __future__ import annotations

WORDS: dict[str, str] = {
    # how parts stand, and what mends it
    "undone.unplugged": "unplugged: {part}",
    "undone.removed": "off the vehicle: {part}",
    "undone.loose": "loose: {part}",
    "undone.leads": "leads on: {part}",
    "undone.guards_off": "guard off: {part}",
    "undone.instrument": "the instrument",
    "restore.heading": "Before you go on there, see to this:",
    "restore.now": "{needed} (it is left: {found})",
    "restore.see_that": "{needed}, unless it is so already",
    "restore.unplugged": "plug in again: {part}",
    "restore.removed": "fit again: {part}",
    "restore.loose": "tighten again: {part}",
    "restore.leads": "take the leads off: {part}",
    "restore.guards_off": "fit the guard again: {part}",
    # reserved work
    "stop.command": "Stop. What comes here is reserved work, and this page does not instruct it.",
    "stop.label": "Reserved work",
    "stop.leave": "Leave undone",
    "stop.leave_all": "“{first}” And everything that would follow it.",
    "stop.stands": "Hand the vehicle over like this",
    "stop.notice": "This job stops at step {number}: what comes there is reserved work.",
    # taken up again
    "resume.heading": "Picked up again at step {number}",
    "resume.lead": "Your ticks are kept. See for yourself that the vehicle stands like this:",
    "resume.confirm": "It stands like this",
    "resume.otherwise": (
        "If it does not, bring it there first, or clear the ticks below the steps and begin again."
    ),
    "resume.done": "Step {number} done",
    "resume.kept": "Ticks are kept on this device, for this revision of the page.",
    "resume.clear": "Clear the ticks",
    "resume.changed": (
        "This page has changed since its steps were ticked, so the ticks are gone. "
        "Begin with the first step."
    ),
    # the safety page
    "safety.not_reviewed": (
        "The built-in rules have not yet been reviewed by a competent person. "
        "That must happen before a real shop relies on them."
    ),
    "safety.emergency_yields": (
        "What the local emergency service, a doctor or a poisons centre says wins over this page."
    ),
    "safety.rule_reviewed": "Reviewed {date} by {who}.",
    "safety.rule_not_reviewed": "Not reviewed yet.",
    "safety.symbol": "Sign {number}.",
    "safety.signs": (
        "The signs are this project’s own drawings; the number beside a rule is that of ISO 7010."
    ),
    "safety.audit": "Every step with its state, its rules and its boxes, for a program to read",
}
