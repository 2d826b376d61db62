#!/usr/bin/python3
"""Reads every #include below the given folder and says which ones point the wrong way.

    includes.py FOLDER     exit 0: none; 1: those printed, one a line; 1 as well if there is nothing to read

A module is a folder of the engine, the tools or the validation. The table says what each may include besides itself and
base. Every name in a row stands in a row above it, so that a cycle cannot even be written down. Tests may include
anything. CMake's link lists are the other lock on the same door.
"""
import re
import sys
from pathlib import Path

GROUND = "ground bore field loop"
MODULES = {
    "include/stillground": "",
    "base": "",
    "units": "",
    "keys": "units",
    "model": "",
    "materials": "units model",
    "ground": "model",
    "field": "model",
    "bore": "units keys model materials",
    "loop": "model materials",
    "march": GROUND,
    "march/fused": f"march {GROUND}",
    "march/arkode": f"march {GROUND}",
    "record": "",
    "record/hdf5": "",
    "record/journal": "record",
    "record/write": "record record/hdf5",
    "record/read": "record record/hdf5",
    "config": "units keys model materials bore",
    "assembly": f"units model materials {GROUND} march march/fused",
    "simulation": f"units model materials {GROUND} march march/fused march/arkode record assembly",
    "response": f"model {GROUND} march record assembly simulation",
    "transit": f"model {GROUND} march record assembly",
    "forecast": f"model {GROUND} march march/fused record assembly simulation response",
    "screen": f"model {GROUND} march record assembly simulation response",
    "job": f"units model materials {GROUND} march march/fused record record/journal record/write "
    "assembly simulation response transit forecast screen",
    "library": "model config assembly screen job record record/read",
    "program": "units",
    "app": "units model config assembly job program",
    "tools/present": "units",
    "tools/outputs": "program tools/present",
    "tools/energy": "record",
    "tools/results": "units field program record record/read tools/present tools/outputs tools/energy",
    "tools/points": "units model bore field config assembly screen job program record record/read tools/present tools/outputs "
    "tools/energy tools/results",
    "tools/scenarios": "units model materials field bore config assembly screen job program record record/read tools/present "
    "tools/outputs tools/results tools/points",
    "tools/sweep": "units model config assembly screen job program record record/journal record/read tools/present "
    "tools/outputs tools/results tools/points",
    "validation/reference_solutions": "",
    "validation": "*",
}

# Libraries that have one home (CVODE has a second, where independent answers are made).
HOMES = {
    r"yaml-cpp/": "config",
    r"udunits2": "units",
    r"hdf5|H5": "record/hdf5",
    r"libdeflate": "record/hdf5 record/journal",
    r"arkode/|cvode|kinsol|nvector/|sun[a-z]+/": "march/arkode validation/reference_solutions",
    r"CLI/|spdlog/": "program",
    r"librsvg|cairo": "tools/present",
    r"catch2/": "",
}

INCLUDE = re.compile(r'\s*#\s*include\s*([<"])([^>"]+)')


def module(path):
    """The module that a path from the root of the repository lies in, or None."""
    inside = path.removeprefix("engine/")
    return max((r for r in MODULES if inside.startswith(r + "/")), key=len, default=None)


def table_faults():
    """Rows that name a module which does not stand above them."""
    order = list(MODULES)
    return [
        f"table: {row} names {named}"
        for place, row in enumerate(order)
        for named in MODULES[row].split()
        if named != "*" and named not in order[:place]
    ]


def permitted(here):
    if MODULES[here] == "*":
        return list(MODULES)
    # The reference solution answers independently: it may not even share our constants.
    return [here, *MODULES[here].split()] + ["base"] * (here != "validation/reference_solutions")


def is_fine(here, quote, target):
    if here == "include/stillground":
        # Whoever links the engine needs none of its libraries: standard headers have neither slash nor dot.
        return quote == "<" and (target.startswith("stillground/") or re.fullmatch(r"[a-z0-9_]+", target) is not None)
    if quote == '"':
        if here == "validation" and target.startswith("tests/"):
            return True  # checks and tests share their invented sites; the reference solution shares nothing
        return module(target) in permitted(here)
    return all(here in homes.split() for library, homes in HOMES.items() if re.match(library, target))


def file_faults(name, text):
    here = module(name)
    if not here:
        return [f"{name}: no such module; add it to the table on purpose"]
    faults = []
    for number, line in enumerate(text.splitlines(), 1):
        found = INCLUDE.match(line)
        if found and not is_fine(here, found[1], found[2]):
            faults.append(f"{name}:{number}: {here} must not include {found[2]}")
    return faults


def main(root):
    files = [f for top in ("engine", "tools", "validation") for f in sorted((root / top).rglob("*.[ch]pp"))]
    faults = table_faults()
    for file in files:
        faults += file_faults(str(file.relative_to(root)), file.read_text())
    if not files:
        faults.append(f"{root}: no sources below it")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
