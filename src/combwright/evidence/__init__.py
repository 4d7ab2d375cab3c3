"""The published values that the science is checked against, as data, and what we get for each.

``reading`` gives the checks, ``running`` runs them, ``page`` writes ``docs/evidence.md``.
"""
