"""What a browser may load for a page: files of the site itself, and nothing else."""

from __future__ import annotations

# Directives as in Content Security Policy Level 3 (W3C), all that a <meta> element may carry.
POLICY = "; ".join((
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "form-action 'none'",
    "base-uri 'none'",
))  # fmt: skip
"""One policy for every page. No script or style stands in a page, so none needs an exception."""
