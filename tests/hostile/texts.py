"""What a stranger might write into a record to have it run, change a page or reach elsewhere.

Every text carries MARK, so that a page can be asked where it went. What is to run sets window.ran,
what is to be fetched comes from a host that does not exist.
"""

from __future__ import annotations

from itertools import product

MARK = "zq7mark"

_HOST = "http://elsewhere.invalid/" + MARK
_RUN = f"window.ran='{MARK}'"

_OPENINGS = (
    "", "\">", "'>", "</p>", "</title>", "</textarea>", "</script>", "</style>", "-->", "]]>",
    "`", "</svg>",
)  # fmt: skip
"""What may stand before it, to get out of where a page puts a text."""

_ACTS = (
    f"<script>{_RUN}</script>",
    f"<img src=x{MARK} onerror={_RUN}>",
    f"<svg onload={_RUN}><title>{MARK}</title></svg>",
    f"<iframe srcdoc=\"<script>parent.{_RUN}</script>\"></iframe>",
    f"<a href=\"javascript:{_RUN}\">{MARK}</a>",
    f"<details open ontoggle={_RUN}><summary>{MARK}</summary></details>",
    f"<style>@import '{_HOST}';</style>",
    f"<link rel=stylesheet href={_HOST}>",
    f"<meta http-equiv=refresh content=\"0;url={_HOST}\">",
    f"<form action={_HOST}><button>{MARK}</button></form>",
    f"<object data={_HOST}></object>",
    f"<input autofocus onfocus={_RUN}>",
)

_OTHERS = (
    f"[{MARK}](javascript:{_RUN})",
    f"[{MARK}](data:text/html,<script>{_RUN}</script>)",
    f"![{MARK}]({_HOST})",
    f"<{_HOST}>",
    f"[{MARK}]: {_HOST}",
    f"{MARK}\n\n    <script>{_RUN}</script>",
    f"{{{{ 7*7 }}}} {MARK}",
    f"{{% include '/etc/passwd' %}} {MARK}",
    f"${{{_RUN}}}",
    f"#{{{MARK}}}",
    f"&lt;script&gt;{_RUN}&lt;/script&gt;",
    f"&#60;script&#62;{_RUN}",
    f"\\u003cscript\\u003e{_RUN}",
    f"\" onmouseover=\"{_RUN}",
    f"' onfocus='{_RUN}' autofocus='",
    f"x\" style=\"background:url({_HOST})",
    f"\",\"x\":\"{MARK}",
    f"\\\"}}];{_RUN};//",
    f"\u2028{_RUN}//" + MARK,
    f"</script><!--{MARK}",
    f"<!--{MARK}",
    f"<![CDATA[{MARK}]]>",
    f"<?php {MARK} ?>",
    f"<% {MARK} %>",
    f"../../../../tmp/{MARK}",
    f"/etc/{MARK}",
    f"C:\\{MARK}",
    f"file:///{MARK}",
    f"//elsewhere.invalid/{MARK}",
    f"con {MARK}",
    f"{MARK}" + "a" * 300,
    f"{MARK} \u202etxt.exe",
    f"{MARK} \u200b\u200d",
    f"{MARK} Z\u0351\u036b\u0343",
    f"$\\href{{javascript:{_RUN}}}{{x}}$ {MARK}",
    f"=cmd|'/c {MARK}'!A1",
    f"@{MARK}",
    f"%3Cscript%3E{_RUN}",
    f"<b>{MARK}</b><h1>{MARK}</h1><p class=signal>{MARK}</p>",
    f"<scr<script>ipt>{_RUN}</scr</script>ipt>",
    f"<math><mi xlink:href=\"javascript:{_RUN}\">{MARK}",
    f"<noscript><p title=\"</noscript><img src=x{MARK} onerror={_RUN}>\">",
    f"<svg><style><img src=x{MARK} onerror={_RUN}></style>",
    f"<template>{MARK}</template><slot>",
    f"</li></ol></article>{MARK}",
)

TEXTS = tuple(f"{MARK} {one}{act}" for one, act in product(_OPENINGS, _ACTS)) + _OTHERS
