#!/bin/sh
# Writes the lock files: exact versions with hashes, no address of any registry.
# Usage: lock.sh PYTHON [--upgrade]
set -eu
python=$1
shift
cd "$(dirname "$0")"
room=$(mktemp -d)
trap 'rm -rf "$room"' EXIT
"$python" -m venv "$room"
"$room/bin/pip" install --quiet --disable-pip-version-check uv

compile() {
    "$room/bin/uv" pip compile --quiet --universal --python-version 3.11 --generate-hashes \
        --no-annotate --no-header --no-emit-index-url --no-emit-find-links "$@"
}

compile "$@" --only-binary :all: --group build -o requirements-build.lock
compile "$@" -c requirements-build.lock -o requirements.lock pyproject.toml
compile "$@" -c requirements.lock -c requirements-build.lock --group test \
    -o requirements-test.lock pyproject.toml
