# Thin on purpose: what the targets do is in tests/run.py.
# PYTHON=python3.12 names the Python to use; without it the newest that runs is taken.

PYTHON ?=
run = @sh tests/python.sh "$(PYTHON)" tests/run.py

.DEFAULT_GOAL := help
.PHONY: help site test soak pictures bench lighthouse lock clean

help:  ## say what there is
	@awk -F ':  ## ' '/^[a-z]+:  ## / { printf "  make %-10s %s\n", $$1, $$2 }' Makefile

site:  ## check the records and build the manual into site/
	$(run) site

test:  ## run every check and test; SUITE="physics site" runs these alone
	$(run) test $(SUITE)

soak:  ## run the tests that take minutes
	$(run) soak

bench:  ## measure building beside other generators; SIZES="200 1000" for these sizes alone
	$(run) bench $(if $(SIZES),--sizes $(SIZES))

lighthouse:  ## have Lighthouse look at four pages as on a phone, five times each; needs Node
	$(run) lighthouse

pictures:  ## take the pictures in docs/screens/ anew
	$(run) pictures

lock:  ## bring both requirements locks up to date
	$(run) lock

clean:  ## remove the environment, the site and every cache
	@rm -rf .venv site .site.new .site.old build dist *.egg-info \
	  .hypothesis .mypy_cache .pytest_cache .ruff_cache .lighthouse
	@find generator tests -name __pycache__ -type d -prune -exec rm -rf {} +
