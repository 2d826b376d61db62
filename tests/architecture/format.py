#!/usr/bin/python3
"""Every C++ file of the project has the format of .clang-format, as clang-format 14 understands it.

    format.py FOLDER CLANG_FORMAT     exit 0: so it is; 1: not (printed); 77: this system has no clang-format 14 to install
"""
import shutil
import subprocess
import sys
from pathlib import Path


def to_be_had():
    """Whether the system's packages hold version 14; True as well where nobody can be asked."""
    asked = ["apt-cache", "show", "clang-format-14"]
    return not shutil.which(asked[0]) or subprocess.run(asked, capture_output=True).returncode == 0


root, clang_format = Path(sys.argv[1]), sys.argv[2]
found = shutil.which(clang_format)
version = subprocess.run([found, "--version"], capture_output=True, text=True).stdout if found else "none"
if " 14." not in version:
    print(f"format: version 14 is wanted, since versions differ in their taste; found {version.strip()}")
    sys.exit(1 if to_be_had() else 77)
files = [
    str(f)
    for top in ("engine", "tools", "tests", "validation")
    for f in sorted((root / top).rglob("*.[ch]pp"))
    if "wrong_architecture" not in f.parts
]
if not files:
    sys.exit("format: no sources found")
done = subprocess.run([clang_format, "--dry-run", "--Werror", *files], capture_output=True, text=True)
print(done.stderr, end="")
print(f"{len(files)} files looked at")
sys.exit(1 if done.returncode else 0)
