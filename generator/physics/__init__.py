"""The models: plain SI numbers in, plain SI numbers out.

Nothing here knows records, text or pages. Every function cites its source, states the range in
which it holds and raises :class:`~generator.physics.domain.OutsideRange` beyond it: a silent
extrapolation is the one thing a reader beside a vehicle cannot notice.
"""
