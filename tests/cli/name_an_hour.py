#!/usr/bin/python3
"""Looks up in a result the hour that `eft` names as the first beyond a limit, by the result's own clock.

    name_an_hour.py RESULT.h5 EFT.json EFT.txt     exit 0: it is that hour; 1: it is not (printed)
"""
import json
import sys

import xarray as xr

result, as_json, as_text = sys.argv[1:]
raw = xr.open_dataset(result, decode_times=False)
decoded = xr.open_dataset(result)
limit = next(one for one in json.load(open(as_json))["limits"] if one["name"] == "eft_min")
named = limit["first_beyond"]

# What anybody finds in the file: the first hour with flow whose fluid was too cold.
beyond = ((raw["flow"] > 0) & (raw["eft"] < limit["value"])).values.nonzero()[0]
if beyond.size == 0:
    sys.exit("the limit was kept: nothing to look up")
first = int(beyond[0])
begin, end = (when.strftime("%Y-%m-%d %H:%M") for when in decoded["time_bounds"].values[first])
end_of_day = "24:00" if end.endswith("00:00") else end[-5:]
stamp = decoded["time"].values[first].strftime("%Y-%m-%d %H:%M")
checks = {
    f"time {named['time']['value']} is that of hour {first}": named["time"]["value"] == raw["time"].values[first],
    f"the date {named['date']} is the decoded time {stamp}": named["date"] == stamp,
    "its units are the file's": named["time"]["units"] == raw["time"].attrs["units"],
    f"the table names {begin}-{end_of_day}": f"{begin}-{end_of_day}" in open(as_text).read(),
}
for what, holds in checks.items():
    print("ok  " if holds else "MISS", what)
sys.exit(not all(checks.values()))
