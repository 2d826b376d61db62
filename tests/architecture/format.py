#!/usr/bin/python3
"""Every C++ file of the project has the format of .clang-format, as clang-format 14 understands it.

    format.py FOLDER CLANG_FORMAT
"""
import subprocess
import sys
from pathlib import Path

root, clang_format = Path(sys.argv[1]), sys.argv[2]
version = subprocess.run([clang_format, "--version"], capture_output=True, text=True, check=True).stdout
if " 14." not in version:
    sys.exit(f"format: version 14 is wanted, since versions differ in their taste; found {version.strip()}")
files = [
    str(f)
    for top in ("engine", "tools", "tests", "validation")
    for f in sorted((root / top).rglob("*.[ch]pp"))
    if "wrong_house" not in f.parts
]
if not files:
    sys.exit("format: no sources found")
done = subprocess.run([clang_format, "--dry-run", "--Werror", *files], capture_output=True, text=True)
print(done.stderr, end="")
print(f"{len(files)} files looked at")
sys.exit(1 if done.returncode else 0)
