"""A fault code whose file is named after another one.

Wrong: The record's file name is not the code in small letters.

Why: A reader who types the code into the address, or a link made from it, would land on another
code's page.

Mend: Rename the file, or correct the code.

Fails, in codes/p0335:

    code: P0336

Passes:

    code: P0335
"""

from __future__ import annotations

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.records.kinds.knowledge import FaultCode
from generator.records.knowledge_base import KnowledgeBase

CODE_AND_FILE_DIFFER = fault("code-and-file-differ", __doc__)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each code that its file is not named after."""
    return [
        kb.problem(
            CODE_AND_FILE_DIFFER, code, ("code",),
            f"the file is named {code.id}, and the code is {code.code}",
            f"rename the file to {code.code.lower()}.yml, or correct the code",
        )
        for code in kb.all("codes", FaultCode)
        if code.id != code.code.lower()
    ]  # fmt: skip
