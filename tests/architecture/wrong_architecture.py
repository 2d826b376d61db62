#!/usr/bin/python3
"""The include check must be able to fail: it names every fault of wrong_architecture/ and no other, refuses a folder without
sources, and refuses a table with a cycle."""
import contextlib
import io
import sys
import tempfile
from pathlib import Path

import includes

here = Path(__file__).parent


def told(root):
    """Exit status and printed lines of the check."""
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        status = includes.main(root)
    return status, out.getvalue().splitlines()


failures = []
architecture = here / "wrong_architecture"
status, lines = told(architecture)
expected = (architecture / "expected_faults.txt").read_text().splitlines()
if status != 1 or not expected or sorted(lines) != sorted(expected):
    failures.append("wrong_architecture: not the expected faults")
    failures += [f"  missing: {line}" for line in expected if line not in lines]
    failures += [f"  surplus: {line}" for line in lines if line not in expected]

with tempfile.TemporaryDirectory() as empty:
    if told(Path(empty))[0] == 0:
        failures.append("a folder without sources passed")

includes.MODULES["base"] = "march"
if not includes.table_faults():
    failures.append("a table with a cycle passed")

print("\n".join(failures) if failures else f"{len(expected)} faults of {len(expected)} named")
sys.exit(1 if failures else 0)
