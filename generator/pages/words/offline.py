"""Words of the page on which a reader takes the manual along, and of a copy on every page."""

from __future__ import annotations

WORDS: dict[str, str] = {
    "nav.offline": "Take it along",
    "page.skip": "Skip to the page",
    "scheme.dark": "Dark page",
    "scheme.light": "Light page",
    # what a copy says on every page
    "offline.stale": (
        "This device’s copy was last compared with the shop’s manual {days} days ago. "
        "Connect it before you trust a caution or a value."
    ),
    "offline.newer": "A newer manual is out.",
    "offline.withdrawn_one": "1 page was withdrawn.",
    "offline.withdrawn_more": "{count} pages were withdrawn.",
    "offline.cautions_one": "1 page has changed cautions.",
    "offline.cautions_more": "{count} pages have changed cautions.",
    "offline.this_withdrawn": "This page was withdrawn. Do not work from it.",
    "offline.this_cautions": "The cautions on this page have changed. Do not work from it.",
    "offline.see": "See what changed and take it",
    # the page
    "offline.heading": "Take the manual along",
    "offline.lead": (
        "Every page, figure and caution, with search and calculators, for a bay without a signal."
    ),
    "offline.device": "On this device",
    "offline.device_lead": (
        "The browser keeps the whole manual. Its addresses stay the same with and without a "
        "network. Nothing is kept until you say so."
    ),
    "offline.needs_script": "This needs a browser that runs scripts. The folder below needs none.",
    "offline.take": "Take the manual along",
    "offline.update": "Take the newer manual",
    "offline.forget": "Remove the copy from this device",
    "offline.size": "About {size} MB to fetch and to keep.",
    "offline.size_update": "About {size} MB to fetch. The rest is here already.",
    "offline.looking": "Looking for the size …",
    "offline.packing": "Packing: {done} of {size} MB",
    "offline.progress": "How far the packing is",
    "offline.kept": "The whole manual is on this device. Compared with the shop’s today.",
    "offline.kept_days": "The whole manual is on this device. Last compared {days} days ago.",
    "offline.unseen": "The shop’s manual cannot be reached now.",
    "offline.lost": "The network was lost. Nothing has changed on this device; try again.",
    "offline.full": "The browser has no room for the copy. Nothing has changed on this device.",
    "offline.busy": "Another tab is packing already.",
    "offline.format": (
        "The shop’s manual is packed in a new way. Remove the copy, load this page again and "
        "take the manual anew."
    ),
    "offline.insecure": (
        "This address is not secure: it does not begin with https. A browser keeps no copy of "
        "such a site. Take the folder below instead."
    ),
    "offline.old_browser": "This browser cannot keep the copy. Take the folder below instead.",
    "offline.from_folder": "You are reading from a folder: the whole manual is here already.",
    "offline.none_here": "There is nothing to take along at this address yet.",
    "offline.changes": "What is new in the newer manual",
    "offline.list_withdrawn": "Withdrawn: do not work from these",
    "offline.list_cautions": "Cautions have changed",
    "offline.others": "Other pages that changed or were added: {count}",
    "offline.folder": "As one folder",
    "offline.folder_lead": (
        "One zip file with the whole manual, about as large. Unpack it on a stick or a laptop and "
        "open index.html. Pages, search and calculators work from there, without a web server."
    ),
    "offline.folder_age": (
        "A folder does not learn of changes. Write the day on it, and take it anew every week."
    ),
    "offline.folder_take": "Fetch the folder as a zip file",
}
