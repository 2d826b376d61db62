#!/usr/bin/python3
"""Opens a result file as any outsider would, with xarray alone, and computes again what it says.

    open_in_xarray.py RESULT.h5     exit 0: all agrees; 1: something does not (printed)

It knows nothing of the engine, only the names of the results' contract. What is checked:
  - the file opens with every engine there is, times decoded and not, without a single warning;
  - every variable has its dimensions, units and a long name, and every hour lies where its bounds say;
  - monthly means of the entering fluid temperature, by xarray's calendar and by counting hours, are the same;
  - the heat stored since the start, from heat capacities, cells and fields, is the sum of balance_stored;
  - what was put in is what is stored and what left, by the balance's own figures.
"""
import importlib
import importlib.util
import json
import sys
import warnings

import numpy as np
import xarray as xr

DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
HOURS = ("time",)
FIELD = ("snapshot", "group", "z")
CONTRACT = {  # name: dimensions, units
    "eft": (HOURS, "degC"),
    "lft": (HOURS, "degC"),
    "flow": (HOURS, "kg s-1"),
    "heat_to_ground": (HOURS, "W"),
    "z": (("z",), "m"),
    "r": (("r",), "m"),
    "conductivity": (("z",), "W m-1 K-1"),
    "heat_capacity": (("z",), "J m-3 K-1"),
    "bore_x": (("bore",), "m"),
    "bore_y": (("bore",), "m"),
    "bore_top": (("bore",), "m"),
    "bore_depth": (("bore",), "m"),
    "bore_radius": (("bore",), "m"),
    "active_fraction": (("group", "z"), "1"),
    "grout_storage": (("group",), "J m-1 K-1"),
    "fluid_storage_down": (("group",), "J m-1 K-1"),
    "fluid_storage_up": (("group",), "J m-1 K-1"),
    "balance_in": (("year",), "J"),
    "balance_stored": (("year",), "J"),
    "balance_surface": (("year",), "J"),
    "balance_deep": (("year",), "J"),
    "balance_residual": (("year",), "J"),
}
HEAT_PUMP = {name: (HOURS, "W") for name in (
    "heating", "cooling", "power", "hot_water", "cooling_direct", "power_hot_water", "power_cooling")}
FIELDS = {
    "ground_rise": (FIELD + ("r",), "K"),
    "undisturbed": (("snapshot", "z"), "degC"),
    "wall_temperature": (FIELD, "degC"),
    "fluid_down": (FIELD, "degC"),
    "fluid_up": (FIELD, "degC"),
    "grout_temperature": (FIELD, "degC"),
    "fluid_heat": (("snapshot", "group"), "J"),
    "ground_rise_steady": (("group", "z", "r"), "K"),
}
MINUTES = {
    "eft_minute_min": (("year",), "degC"),
    "eft_minute_max": (("year",), "degC"),
}
faults = []


def check(fine, text):
    print(("ok    " if fine else "WRONG ") + text)
    if not fine:
        faults.append(text)


def names_and_units(ds):
    expected = dict(CONTRACT)
    if "power" in ds:
        expected.update(HEAT_PUMP)
    if "eft_minute_min" in ds:  # of a run; a result made up for a test may be without
        expected.update(MINUTES)
    if ds.attrs["fields"] != "none":
        expected.update(FIELDS)
    if ds.attrs["fields"] == "yearly":
        expected["ground_rise_year_mean"] = (("year", "group", "z", "r"), "K")
    for name, (dims, units) in expected.items():
        if name not in ds.variables:
            check(False, f"{name} is missing")
            continue
        found = (ds[name].dims, ds[name].attrs.get("units"))
        if found != (dims, units):
            check(False, f"{name} has {found}, expected {(dims, units)}")
    for name in ds.variables:
        is_bound = name.endswith("_bounds")
        if not is_bound and not ds[name].attrs.get("long_name"):
            check(False, f"{name} has no long name")
    if "ground_rise" in ds:
        check(ds["ground_rise"].dtype == np.float32, "ground_rise is 32-bit")
    check(ds["eft"].dtype == np.float64, "eft is 64-bit")
    check(len(expected) > 20, f"{len(expected)} variables of the contract looked at")
    check(int(ds.attrs["complete"]) == 1 and ds.attrs["Conventions"].startswith("CF-"), "complete, and CF")
    for text in ("limits", "warnings", "cautions", "inputs"):
        json.loads(ds.attrs[text])
    total, *parts = (float(ds.attrs["eft_error_estimate" + part]) for part in ("", "_step", "_grid", "_refresh"))
    adds_up = max(parts) <= total <= sum(parts) * (1 + 1e-12)
    named = "by time step, grid and refresh interval alone" in ds.attrs["eft_error_estimate_long_name"]
    check(named, "the estimate says what it leaves out")
    check(adds_up and ds.attrs["eft_error_estimate_units"] == "K", f"eft is said to be right to {total:.3f} K, of which {parts}")
    check(isinstance(ds.attrs["scenario"], str) and ds.attrs["scenario"] != "", "the scenario's text is there")


def hours(raw, decoded):
    n = raw.sizes["time"]
    bounds = raw["time_bounds"].values
    check(n == 8760 * raw.sizes["year"], f"{n} hours in {raw.sizes['year']} run-years")
    check(np.array_equal(raw["time"].values, np.arange(1, n + 1)), "time counts the hours' ends")
    check(np.array_equal(bounds[:, 1], raw["time"].values), "an hour's upper bound is its time")
    check(np.array_equal(bounds[1:, 0], bounds[:-1, 1]) and bounds[0, 0] == 0, "the hours follow each other")
    first = decoded["time_bounds"].values[0, 0]
    check(first.strftime("%Y-%m-%d") == str(raw.attrs["start"]), f"the first hour begins on {first}")


def month_of_hour(start, n):
    """Year * 12 + month of every hour, counted without a calendar library (a year has 365 days)."""
    year, month, day = (int(part) for part in start.split("-"))
    ends = np.cumsum(DAYS) * 24
    hour = (sum(DAYS[: month - 1]) + day - 1) * 24 + np.arange(n)
    return (year + hour // 8760) * 12 + np.searchsorted(ends, hour % 8760, side="right")


def monthly_means(raw, decoded):
    eft = raw["eft"].values
    counted = month_of_hour(str(raw.attrs["start"]), eft.size)
    months, index = np.unique(counted, return_inverse=True)
    by_hours = np.bincount(index, eft) / np.bincount(index)
    begins = decoded["time_bounds"].isel(bound=0)  # the hour's end may be the next month's first instant
    label = (begins.dt.year * 12 + begins.dt.month - 1).rename("month")
    by_xarray = decoded["eft"].groupby(label).mean()
    same = np.array_equal(by_xarray["month"].values, months)
    miss = np.abs(by_xarray.values - by_hours).max() if same else np.inf
    check(miss < 1e-9, f"{months.size} monthly means of eft, two ways, differ by {miss:.1e} K")
    for i in np.unique([0, 1, months.size // 2, months.size - 1]):
        print(f"      {months[i] // 12}-{months[i] % 12 + 1:02d}  {by_hours[i]:8.4f} degC")


def bores_of_group(ds):
    return np.bincount(ds["bore_group"].values, minlength=ds.sizes["group"]).astype(float)


def stored(ds, s):
    """Heat [J] held at snapshot s against 0 degC in the bores and the undisturbed ground; and the sum of the ground's
    parts without their signs. A group's cells lie at every depth, above its bore's top and below its toe as well."""
    many = bores_of_group(ds)
    height = np.diff(ds["z_bounds"].values, axis=1)[:, 0]
    ring = np.pi * (ds["r_bounds"].values[:, 1] ** 2 - ds["r_bounds"].values[:, 0] ** 2)
    capacity = (ds["heat_capacity"].values * height)[None, :, None] * ring * many[:, None, None]
    ground = capacity * ds["ground_rise"][s].values.astype(float)
    length = ds["active_fraction"].values * height * many[:, None]
    grout = length * ds["grout_storage"].values[:, None] * at_cells(ds, "grout_temperature", s, length)
    bore = grout.sum() + np.nansum(ds["fluid_heat"][s].values * many)
    return ground.sum(), bore, np.abs(ground).sum() + 1e-9 * np.abs(grout).sum()


def at_cells(ds, name, s, length):
    return np.where(length > 0, ds[name][s].values, 0.0)


def fluid_heat(ds):
    """A cell holds a fluid that is warmer or colder than at its centre by no more than half of what it gives off or
    takes within the cell: its heat from the temperatures at the centres is off by no more than that."""
    if "fluid_heat" not in ds:
        return
    height = np.diff(ds["z_bounds"].values, axis=1)[:, 0]
    length = ds["active_fraction"].values * height
    most = 0.0
    for s in range(ds.sizes["snapshot"]):
        centres, bound = 0.0, 0.0
        for way in ("down", "up"):
            temperature = np.where(length > 0, ds["fluid_" + way][s].values, np.nan)
            storage = ds["fluid_storage_" + way].values
            centres = centres + storage * np.nansum(length * temperature, axis=1)
            spread = np.nanmax(temperature, axis=1) - np.nanmin(temperature, axis=1)
            bound = bound + storage * length.max(axis=1) * (spread + 1e-6)
        most = max(most, np.nanmax(np.abs(ds["fluid_heat"][s].values - centres) / bound))
    check(most <= 1, f"the fluid's heat agrees with its temperatures, off by {most:.2f} of a cell's")


def heat_stored(ds):
    if "ground_rise" not in ds:
        print("      no fields: the heat stored cannot be computed again")
        return
    instants = ds["snapshot"].values
    begin = stored(ds, 0)
    total = np.cumsum(ds["balance_stored"].values)
    looked_at = 0
    for year in range(1, ds.sizes["year"] + 1):
        (found,) = np.nonzero(instants == 8760.0 * year)
        if found.size == 0:
            continue  # a run that starts within a month has no snapshot there
        looked_at += 1
        end = stored(ds, found[0])
        again = end[0] - begin[0] + end[1] - begin[1]
        # Each 32-bit rise is off by at most 2^-24 of itself; all else is 64-bit.
        allowed = 2.0**-24 * (begin[2] + end[2])
        miss = abs(again - total[year - 1])
        text = (
            f"stored since the start, run-year {year}: {again:.9e} J (ground {end[0] - begin[0]:.6e}, bores "
            f"{end[1] - begin[1]:.6e}), balance {total[year - 1]:.9e} J, differ by {miss:.1e}, allowed {allowed:.1e}"
        )
        if year in (1, ds.sizes["year"]) or miss > allowed:
            check(miss <= allowed, text)
    check(looked_at > 0, f"heat stored computed again at the end of {looked_at} run-years")


def balance(ds):
    parts = [ds["balance_" + name].values for name in ("stored", "surface", "deep", "residual")]
    miss = np.abs(ds["balance_in"].values - sum(parts))
    scale = np.abs(ds["balance_in"].values) + sum(np.abs(part) for part in parts)
    check(bool((miss <= 1e-12 * scale).all()), f"in = stored + surface + deep + residual, to {miss.max():.1e} J")
    yearly = ds["heat_to_ground"].values.reshape(-1, 8760).sum(axis=1) * 3600
    print(f"      heat put in, first year: {ds['balance_in'].values[0]:.9e} J; its hours' sum {yearly[0]:.9e} J")


def main(path):
    engines = []
    for engine, module in (("netcdf4", "netCDF4"), ("h5netcdf", "h5netcdf")):
        if importlib.util.find_spec(module):
            importlib.import_module(module)  # what the packages say of each other is not the file's matter
            engines.append(engine)
    warnings.simplefilter("error")
    check(engines != [], f"xarray {xr.__version__} with {', '.join(engines) or 'no engine'}")
    for engine in engines:
        with xr.open_dataset(path, engine=engine, decode_times=False) as raw, xr.open_dataset(path, engine=engine) as decoded:
            raw.load()
            decoded.load()
            print(f"{engine}: {dict(raw.sizes)}")
            names_and_units(raw)
            hours(raw, decoded)
            monthly_means(raw, decoded)
            fluid_heat(raw)
            heat_stored(raw)
            balance(raw)
    print(f"{len(faults)} faults" if faults else "all agrees")
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1]))
