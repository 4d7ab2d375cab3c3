# Everything here sets itself up: a machine needs Python 3.11 or newer, and make.
# The virtual environment is .venv; `make clean` removes it.

PYTHON ?= python3
JOBS ?= 2
COMPILED := .pytest_cache/d/compiled  # where the tests look for it
SEED ?= $(shell date +%Y%m%d)
ifdef MEASURED
COVERED := --cov --cov-report=
endif

# Tests start the program many times: it is compiled once, whatever the environment says.
export PYTHONDONTWRITEBYTECODE :=

BIN := .venv/bin
PY := $(BIN)/python
PIP := $(PY) -m pip install --quiet --disable-pip-version-check --no-input
LOCKED := $(PIP) --require-hashes
READY := .venv/ready-to-run
READY_TO_TEST := .venv/ready-to-test

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.PHONY: help set-up demo test browser explore lint docs sbom holes validate fit screenshots benchmarks lock clean check-python

help:  ## Show what can be made
	@sed -n 's/^\([a-z-]*\):.*  ## \(.*\)/make \1\t\2/p' $(MAKEFILE_LIST) | expand -t 20

set-up: $(READY_TO_TEST)  ## Make .venv with everything to run, test and change Combwright

demo: $(READY)  ## Write an invented season into demo/ and plan the next round from it
	$(BIN)/combwright demo --dir demo
	@echo; echo "Here combwright is $(BIN)/combwright; after '. $(BIN)/activate' its name is enough."

test: $(READY_TO_TEST)  ## Check format, style, types and layers, then run every quick test (MEASURED=1: and coverage)
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	@NUMBA_CACHE_DIR=$(COMPILED) $(PY) -c "from combwright.simulation.ahead import roll; roll.make_ready()" &
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(PY) -m pytest -n $(JOBS) --dist loadscope $(COVERED)
ifdef MEASURED
	$(PY) -m pytest $(COVERED) --cov-append -p tests.uncompiled tests/simulation/step tests/simulation/ahead
	$(PY) -m tests.covered
endif

browser: $(READY_TO_TEST)  ## Find a Chromium or Chrome for the tests of the pages, or fetch one
	@$(PY) -m tests.browser.chromium

explore: $(READY_TO_TEST)  ## Try every law on fresh cases (SEED=n tries those of a run again)
	@echo "The cases are those of SEED=$(SEED)."
	$(PY) -m pytest -m "hypothesis and not validation" -n $(JOBS) \
	  --hypothesis-profile exploring --hypothesis-seed $(SEED)

lint: $(READY_TO_TEST)  ## Format, and check style, types and layers
	$(BIN)/ruff format .
	$(BIN)/ruff check --fix .
	$(BIN)/mypy
	$(BIN)/lint-imports

docs: $(READY_TO_TEST)  ## Write the generated pages again
	$(PY) docs/generate.py
	$(PY) -m cogapp -r docs/notebook.md

sbom: $(READY)  ## Write what it is made of, with hashes and licences, as CycloneDX
	$(PY) docs/supply.py sbom.cdx.json

holes: $(READY_TO_TEST)  ## Look the locked packages up in a stored list of known holes
	$(PY) docs/known_holes.py

validate: $(READY_TO_TEST)  ## Run the long studies (an hour or more)
	$(PY) -m pytest -m validation -n $(JOBS)

fit: $(READY_TO_TEST)  ## Search for worlds that fit what is published, and keep them (ten minutes)
	$(PY) -m tests.validation.simulation.fit

screenshots: $(READY_TO_TEST)  ## Take pictures of every page for the docs (needs Chromium)
	$(PY) -m tests.browser.screenshots docs/screens

benchmarks: $(READY_TO_TEST)  ## Measure speed and memory on this machine
	@set -e; for script in benchmarks/[a-z]*.py; do echo "$$script"; $(PY) $$script; done

lock:  ## Resolve the dependencies anew into the three lock files (UPGRADE=--upgrade for newer ones)
	./lock.sh "$(PYTHON)" $(UPGRADE)

clean:  ## Remove .venv, the demo and all caches
	rm -rf .venv demo .mypy_cache .ruff_cache .pytest_cache .import_linter_cache .hypothesis .coverage
	find src tests benchmarks docs -name __pycache__ -prune -exec rm -rf {} +

# --- set-up ---------------------------------------------------------------------------------

check-python:
	@command -v $(PYTHON) >/dev/null || { \
	  echo "Combwright needs Python 3.11 or newer, and '$(PYTHON)' is not here."; \
	  echo "On Debian or Ubuntu: apt-get install python3 python3-venv"; \
	  echo "If it has another name: make PYTHON=/path/to/python3.12"; exit 1; } >&2
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { \
	  echo "Combwright needs Python 3.11 or newer; $(PYTHON) is $$($(PYTHON) --version)."; \
	  echo "Install a newer one beside it and say: make PYTHON=python3.12"; exit 1; } >&2
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || { \
	  echo "$(PYTHON) cannot make virtual environments: its module 'ensurepip' or 'venv' is missing."; \
	  echo "On Debian or Ubuntu: apt-get install python3-venv"; exit 1; } >&2

$(PY): | check-python
	@echo "Making .venv with $$($(PYTHON) --version) ..."
	@$(PYTHON) -m venv --clear .venv

TROUBLE := { rm -f $(READY) $(READY_TO_TEST); \
  echo; echo "Installing failed: the lines above say at which package."; \
  echo "The first set-up fetches packages. Look at the network and the room on the disk;"; \
  echo "behind a mirror set PIP_INDEX_URL, from a folder of wheels PIP_FIND_LINKS and PIP_NO_INDEX=1."; \
  echo "Then run make again; it goes on where it stopped. 'make clean' starts afresh."; exit 1; } >&2

# Build tools come from their own lock first, so that whatever is built here is built by them.
$(READY): requirements-build.lock requirements.lock pyproject.toml | $(PY)
	@echo "Installing what Combwright runs on (about a minute, once) ..."
	@$(LOCKED) --only-binary :all: -r requirements-build.lock || $(TROUBLE)
	@$(LOCKED) --no-build-isolation --use-pep517 -r requirements.lock || $(TROUBLE)
	@$(PIP) --no-index --no-build-isolation --no-deps --editable . || $(TROUBLE)
	@touch $@

$(READY_TO_TEST): requirements-test.lock $(READY)
	@echo "Installing what its tests need (about a minute, once) ..."
	@$(LOCKED) --no-build-isolation --use-pep517 -r requirements-test.lock || $(TROUBLE)
	@$(PY) -m tests.browser.chromium
	@touch $@
