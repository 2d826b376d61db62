#!/usr/bin/python3
"""No file of the project holds a path of somebody's machine or the address of a package server: a clone must work
anywhere, and installs from wherever its system is set up to install from.

    traces.py FOLDER
"""
import re
import shutil
import subprocess
import sys
from pathlib import Path

root = Path(sys.argv[1])
TRACES = [re.compile(pattern) for pattern in (
    rb"(?<![\w./}])/(?:work|root|home|Users)/[\w.-]+",
    rb"/tmp/buil[d]",
    rb"\b(?:deb|ftp|security|archive|ports)\.(?:debian|ubuntu)\.(?:org|com)",
    rb"\b(?:files\.pythonhosted|pypi|registry\.npmjs)\.org",
)]


def project_files():
    """What git tracks; in an unpacked archive everything but build folders."""
    if shutil.which("git"):
        listed = subprocess.run(["git", "-C", root, "ls-files", "-z"], capture_output=True)
        if listed.returncode == 0 and listed.stdout:
            return [root / name.decode() for name in listed.stdout.split(b"\0") if name]
    return [f for f in root.rglob("*") if "build" not in f.relative_to(root).parts and ".git" not in f.parts]


def traces_in(file):
    return [
        f"{file.relative_to(root)}:{number}: {found[0].decode(errors='replace')}"
        for number, line in enumerate(file.read_bytes().splitlines(), 1)
        for pattern in TRACES
        if (found := pattern.search(line))
    ]


# The check must be able to see one.
samples = [b"read /" + b"home/ada/x.csv", b"from deb." + b"debian.org", b'"/' + b'work/project"']
blind = [s for s in samples if not any(p.search(s) for p in TRACES)]
files = [f for f in project_files() if f.is_file()]
found = [trace for file in files for trace in traces_in(file)]
print(*found, sep="\n")
if blind or not files:
    sys.exit(f"traces: cannot see {blind}, or no files to read")
print(f"{len(files)} files looked at")
sys.exit(1 if found else 0)
