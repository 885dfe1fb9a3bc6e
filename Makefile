# Two commands for everybody: `make demo` and `make test`. Each sets up all it needs in .venv and does nothing twice.
# Works with GNU make 3.81 (macOS) and newer, on Linux and macOS, with Python 3.11 or newer.

PYTHON ?= $(shell for p in python3 python3.13 python3.12 python3.11 python3.14; do \
	$$p -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null && { echo $$p; break; }; done)
BIN := .venv/bin
PIP := $(BIN)/python -m pip install --quiet --disable-pip-version-check
DEMO_HOME := $(CURDIR)/.cache/demo

.PHONY: demo test lint weights readme lock clean

demo: .venv/ready weights ## read the demo recordings and show the record
	@bash demo_audio/show.sh "$(DEMO_HOME)" "$(CURDIR)/$(BIN)/python"

test: .venv/ready-for-tests weights lint ## every check and every test
	$(BIN)/python -m pytest

lint: .venv/ready-for-tests ## style, types and the way imports run
	$(BIN)/ruff check
	$(BIN)/ruff format --check
	$(BIN)/mypy
	$(BIN)/lint-imports

weights: .venv/ready ## the models, fetched once into the user's cache, where every workshop finds them; checked by hash
	@env -u BENCHNOTES_HOME $(BIN)/benchnotes weights fetch base all-mpnet-base-v2

.venv/bin/python:
	@test -n "$(PYTHON)" || { echo "Bench Notes needs Python 3.11 or newer, and none was found. Install it, or say make PYTHON=/path/to/python3."; exit 1; }
	@$(PYTHON) -m venv .venv || { rm -rf .venv; echo "$(PYTHON) cannot make a virtual environment. On Debian and Ubuntu: apt-get install python3-venv"; exit 1; }

# setuptools comes with the lock, so nothing unpinned is fetched to build with; its warning says only that this is editable
.venv/ready: .venv/bin/python requirements.lock pyproject.toml
	@echo "Setting up .venv, once: some 100 MB of pinned packages, each checked against its hash."
	@$(PIP) --require-hashes -r requirements.lock
	@PYTHONWARNINGS=ignore $(PIP) --no-deps --no-build-isolation -e .
	@touch $@

.venv/ready-for-tests: .venv/ready requirements-tests.lock
	@$(PIP) --require-hashes --no-build-isolation -r requirements-tests.lock
	@touch $@

readme: demo ## paste today's output of the demo into the README
	PYTHONPATH=tests $(BIN)/python tests/whole/pasted.py README.md "$(DEMO_HOME)"

LOCK := UV_CUSTOM_COMPILE_COMMAND="make lock" .cache/lock/bin/uv pip compile --quiet --universal --fork-strategy fewest \
	--python-version 3.11 --generate-hashes --no-annotate --no-emit-index-url --no-emit-find-links

lock: ## pin every dependency again, by version and hash, for Linux and macOS and every Python from 3.11 on
	$(PYTHON) -m venv .cache/lock && .cache/lock/bin/python -m pip install --quiet uv
	$(LOCK) --upgrade pyproject.toml -o requirements.lock
	$(LOCK) --upgrade --extra tests -c requirements.lock pyproject.toml -o requirements-tests.lock

clean: ## what can be made again; never what a workshop keeps
	rm -rf .venv .cache build benchnotes.egg-info .mypy_cache .ruff_cache .pytest_cache .import_linter_cache .hypothesis
