#!/usr/bin/python3
"""An installation that was moved works, knows nothing of the build, and serves a program of somebody else's.

Installs the build, moves the prefix, runs the programs there, looks for paths of the build in every file, then builds
examples/library against it, runs it on a small site (invented), and compares the least EFT of each year that it prints
with what h5py reads from the result.
"""
import argparse
import gzip
import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import h5py

asked = argparse.ArgumentParser()
for option in ("cmake", "source", "build", "generator", "libdir", "datadir", "compiler", "flags"):
    asked.add_argument(f"--{option}", required=True)
asked = asked.parse_args()
source = Path(asked.source)
environment = {name: value for name, value in os.environ.items() if not name.startswith("STILLGROUND_")}


def call(*words, folder):
    done = subprocess.run([str(word) for word in words], cwd=folder, env=environment, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{' '.join(map(str, words))}: status {done.returncode}\n{done.stdout}{done.stderr}")
    return done.stdout


def expect(true, what):
    if not true:
        sys.exit(what)


def content(file):
    return gzip.decompress(file.read_bytes()) if file.suffix == ".gz" else file.read_bytes()


def check_no_path_of_the_build(prefix, paths):
    """What `strings` would find, and the text files beside it."""
    files = [file for file in prefix.rglob("*") if file.is_file()]
    expect(len(files) > 30, f"only {len(files)} files are installed")
    named = [f"{file}: holds {path}" for file in files for path in paths if str(path).encode() in content(file)]
    expect(not named, "\n".join(named))
    expect(shutil.which("readelf"), "readelf is not there")
    for program in (prefix / "bin").iterdir():
        dynamic = call("readelf", "-d", program, folder=prefix)
        expect("NEEDED" in dynamic and not re.search("RPATH|RUNPATH", dynamic), f"{program}: a path to libraries:\n{dynamic}")


def write_site(folder):
    """Two bores, two years; a pipe from the catalogue, so that one has to be found."""
    text = (source / "tests/cli/scenarios/pair.yaml").read_text()
    own = "pipe: {outer_diameter: 40 mm, wall: 3.7 mm, conductivity: 0.42 W/(m K)}"
    expect(own in text, f"pair.yaml does not hold {own}")
    (folder / "site.yaml").write_text(text.replace(own, "pipe: {use: pe100-sdr11-40mm}"))
    rows = ["heating [W],cooling [W]"] + [f"{4000 if hour % 24 < 8 else 0},0" for hour in range(8760)]
    (folder / "loads.csv").write_text("\n".join(rows) + "\n")


def run_programs(prefix, folder):
    stillground = prefix / "bin/stillground"
    help_text = call(stillground, "--help", folder=folder)
    for program in (prefix / "bin").glob("stillground-*"):
        verb = program.name.removeprefix("stillground-")
        expect(re.search(rf"^  {verb} ", help_text, re.MULTILINE), f"--help does not list {verb}")
        expect((prefix / asked.datadir / f"man/man1/{program.name}.1.gz").is_file(), f"{program.name} has no manual")
        expect("Usage" in call(stillground, verb, "--help", folder=folder), f"{verb} --help")
    call(stillground, "new", "begun.yaml", folder=folder)
    call(stillground, "check", "begun.yaml", folder=folder)
    expect("pe100-sdr11-40mm" in call(stillground, "check", "site.yaml", folder=folder), "check names no catalogue's pipe")
    call(stillground, "run", "site.yaml", "-o", "by_program.h5", folder=folder)
    for verb in ("eft", "drift", "compare"):
        call(stillground, verb, "by_program.h5", "--plot", f"{verb}.svg", folder=folder)
    call(stillground, "slice", "by_program.h5", "--depth", "40", "--plot", "slice.png", folder=folder)
    call(stillground, "report", "by_program.h5", "-o", "report.html", folder=folder)
    call(stillground, "plan", "site.yaml", folder=folder)
    call(stillground, "sheet", "site.yaml", "-o", "sheet.html", folder=folder)


def complete_in_bash(prefix, folder):
    """What bash offers after some words, by the installed completion."""
    file = prefix / asked.datadir / "bash-completion/completions/stillground"

    def offered(*words):
        script = f'source "{file}"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _stillground; printf "%s\\n" "${{COMPREPLY[@]}}"'
        return call("bash", "-c", script, "bash", "stillground", *words, folder=folder).split()

    expect(offered("siz") == ["size"], "bash does not complete a verb")
    expect(offered("eft", "--pl") == ["--plot"], "bash does not complete an option")
    expect(offered("eft", "x.h5", "--units", "u") == ["us"], "bash does not complete a word of an option")
    expect(offered("new", "--like", "") == ["grid", "plot", "coaxial", "us"], "bash does not know the kinds of new")
    expect("site.yaml" in offered("check", "si"), "bash does not complete a file")
    for name in ("zsh/site-functions/_stillground", "fish/vendor_completions.d/stillground.fish"):
        text = (prefix / asked.datadir / name).read_text()
        expect("drift" in text and "plot" in text and "--options" not in text.split("\n", 2)[2], f"{name} is not whole")


def build_outside(prefix, folder):
    shutil.copytree(source / "examples/library", folder / "outside")
    call(asked.cmake, "-S", "outside", "-B", "built", "-G", asked.generator, f"-DCMAKE_PREFIX_PATH={prefix}",
         f"-DCMAKE_CXX_COMPILER={asked.compiler}", f"-DCMAKE_CXX_FLAGS={asked.flags}", folder=folder)
    call(asked.cmake, "--build", "built", folder=folder)
    return folder / "built/least_eft"


def least_by_year(file):
    """{run-year: least EFT [degC] of the hours with flow}, by h5py alone."""
    with h5py.File(file) as result:
        eft, flow = result["eft"][:], result["flow"][:]
    return {year + 1: min(t for t, f in zip(eft[8760 * year:8760 * (year + 1)], flow[8760 * year:]) if f > 0)
            for year in range(len(eft) // 8760)}


with tempfile.TemporaryDirectory(prefix="stillground-") as scratch:
    scratch = Path(scratch).resolve()
    first, moved = scratch / "first", scratch / "moved to" / "another place"
    call(asked.cmake, "--install", asked.build, "--prefix", first, folder=scratch)
    moved.parent.mkdir()
    first.rename(moved)
    check_no_path_of_the_build(moved, [source, Path(asked.build), first])
    write_site(scratch)
    run_programs(moved, scratch)
    complete_in_bash(moved, scratch)
    printed = call(build_outside(moved, scratch), "site.yaml", folder=scratch)
    told = {int(year): float(eft) for year, eft in re.findall(r"^ +(\d+) +(-?\d+\.\d\d)  \d{4}-", printed, re.MULTILINE)}
    expected = {year: round(float(eft), 2) for year, eft in least_by_year(scratch / "site.h5").items()}
    expect(len(expected) == 2 and told == expected, f"printed {told}, in the result {expected}:\n{printed}")
    expect((scratch / "site.h5").read_bytes() == (scratch / "by_program.h5").read_bytes(), "library and program differ")
    print(printed)
