#!/usr/bin/python3
"""Every library that a program of ours holds has its licence in packages.txt and in engine/LICENCES.md.

    licences.py FOLDER BIN COMPILE_COMMANDS     exit 0: so it is; 1: not (printed); 77: no Debian system, not looked at

What a program holds is asked of the program itself (its dynamic section) and of the system (which package a library is of),
so that a new link without an entry is found. Headers leave no such trace: they are found by their place in the compiler's
command lines.
"""
import json
import re
import shutil
import subprocess
import sys
from pathlib import Path

HELD = {"linked", "headers", "-"}
PURPOSES = {"build", "test", "bench", "reference", "package"}
root, binaries, commands = (Path(argument) for argument in sys.argv[1:])


def packages():
    """{name: (purpose, licence, held)} of packages.txt."""
    rows = [line.split(maxsplit=4) for line in (root / "packages.txt").read_text().splitlines()
            if line and not line.startswith("#")]
    return {row[1]: (row[0], row[2], row[3]) for row in rows if len(row) == 5}, [row for row in rows if len(row) != 5]


def asked(*command):
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def sources_of(package):
    """The Debian source packages of a package and, of the compiler, of what it brings."""
    names = [package]
    if package == "g++":
        names += re.findall(r"[\w.+-]+(?= \(|,|$)", asked("dpkg-query", "-W", "-f=${Depends}", package))
    listed = subprocess.run(["dpkg-query", "-W", "-f=${source:Package}\n", *names], capture_output=True, text=True)
    return set(listed.stdout.split())


def libraries(program):
    """Path of every library that the program names itself, by where the loader finds it."""
    named = re.findall(r"\(NEEDED\).*\[(.+)\]", asked("readelf", "-d", program))
    found = dict(re.findall(r"(\S+) => (/\S+)", asked("ldd", program)))
    return {found[name] for name in named if name in found}


def source_of_library(path):
    for candidate in (path, str(Path(path).resolve()), path.removeprefix("/usr"), str(Path(path).resolve()).removeprefix("/usr")):
        owner = subprocess.run(["dpkg", "-S", candidate], capture_output=True, text=True)
        if owner.returncode == 0:
            return next(iter(sources_of(owner.stdout.split(": ")[0])), None)
    return None


def faults():
    rows, malformed = packages()
    yield from (f"packages.txt: {' '.join(row)}: five columns are wanted" for row in malformed)
    notice = (root / "engine/LICENCES.md").read_text()
    for name, (purpose, licence, held) in rows.items():
        if purpose not in PURPOSES or held not in HELD or not re.fullmatch(r"[A-Z][\w.+-]+", licence):
            yield f"packages.txt: {name}: {purpose}, {licence}, {held}: not what stands at the file's head"
        if held != "-" and not re.search(rf"^\| {re.escape(name)} \| {re.escape(licence)} \|", notice, re.MULTILINE):
            yield f"engine/LICENCES.md has no row for {name}, {licence}"
    linked = {source for name, row in rows.items() if row[2] == "linked" for source in sources_of(name)}
    programs = sorted(binaries.glob("stillground*"))
    if len(programs) < 2:
        yield f"{binaries}: no programs to look at"
    for program in programs:
        for library in sorted(libraries(program)):
            if source_of_library(library) not in linked:
                yield f"{program.name} links {library}, of which packages.txt says nothing"
    with_eigen = [one for one in json.loads(commands.read_text()) if "eigen3" in one["command"]]
    yield from (f"{one['file']} is compiled without -DEIGEN_MPL2_ONLY" for one in with_eigen
                if "-DEIGEN_MPL2_ONLY" not in one["command"])
    if not with_eigen:
        yield "no source is compiled with Eigen: where are its headers?"


if not shutil.which("dpkg-query") or not shutil.which("readelf"):
    print("no Debian system: the packages of libraries cannot be asked for")
    sys.exit(77)
found = list(faults())
print(*found, sep="\n")
sys.exit(1 if found else 0)
