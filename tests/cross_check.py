#!/usr/bin/env python3
"""Random points of the physics, compared with the public reference library `itur` (PyPI, pinned).

A seeded network of hops is written as YAML, `hopwright sheet --format json` computes it, and each number is compared
with what the library gives for the same inputs. The library lives in a scratch environment under `target/`, kept there
for the next run.

    python3 tests/cross_check.py            # uses target/debug/hopwright, building it if need be

What is compared, and why the editions may differ:
- P.453-14: vapour pressure of a relative humidity.
- P.676: the library has Annex 1 of edition 12, we have 13; equations and line tables are the same in both.
- P.837-7: the map that the library ships is written out in the published text layout and read by `rain_map`.
- P.838-3: specific attenuation, from hops so short that their effective length is 2.5 times their own.
- P.530: the library has edition 17, whose distance factor is that of 18; it reads the exponent 0.8 of C0 outside the
  logarithm, which at 0.01 % moves a fade by some hundred-thousandths.

Ends with 0 if all agree, or if Python's venv or the package index cannot be had (said so); with 1 if they disagree.
"""

import json
import math
import random
import subprocess
import sys
import warnings
from pathlib import Path

from scratch import ROOT, environment

LIBRARY = "itur==0.4.0"
SEED = 20260601
SCRATCH = ROOT / "target" / "cross-check"

NETWORK = """\
kind: network
id: cross-check
title: Cross-check
owner: Nobody
date: 2026-06-01
objectives: { availability: 99.99 %, capacity: 100 Mbit/s }
climate: { rain_map: map }
---
kind: radio
id: radio
title: Radio
halves: [{ id: any, transmit: { min: 1 GHz, max: 100 GHz }, receive: { min: 1 GHz, max: 100 GHz } }]
transmit_power: { min: 0 dBm, max: 20 dBm }
states: [{ title: QPSK, bandwidth: 500 MHz, capacity: 100 Mbit/s, threshold: -65 dBm }]
overload: 0 dBm
ports: [{ id: meter, carries: [readout] }]
power: { draw: 30 W, voltage: { min: 40 V, max: 57 V }, accepts: [passive] }
readout:
  port: meter
  range: { min: 0 V, max: 2 V }
  low: { voltage: 0.30 V, level: -30 dBm }
  high: { voltage: 0.70 V, level: -70 dBm }
ground: { terminal: M6 stud, least_conductor: 6 mm2 }
---
kind: antenna
id: antenna
title: Antenna
band: { min: 1 GHz, max: 100 GHz }
gain: 40 dBi
beamwidth: 1 deg
---
kind: bracket
id: bracket
title: Bracket
pole: { min: 50 mm, max: 120 mm }
tilt: { upright: { min: -35 deg, max: 35 deg } }
"""


def points():
    """The hops: first those with air and rain of their own, half of them short; then those that go by the map."""
    dice = random.Random(SEED)
    for number in range(400):
        own = number < 250
        length = dice.uniform(60, 200) if own and number % 2 else dice.uniform(300, 15_000) if own else 400.0
        latitude, longitude = dice.uniform(-70, 70), dice.uniform(-179, 179)
        course = dice.uniform(0, 2 * math.pi)
        degrees = math.degrees(length / 6_371_000)
        frequency = dice.uniform(5, 99)
        point = {
            "id": f"p{number}",
            "a": (round(latitude, 6), round(longitude, 6)),
            "b": (
                round(latitude + degrees * math.cos(course), 6),
                round(longitude + degrees * math.sin(course) / math.cos(math.radians(latitude)), 6),
            ),
            "heights": (round(dice.uniform(5, 45), 1), round(dice.uniform(5, 45), 1)),
            "frequencies": (round(frequency, 3), round(dice.uniform(5, 99), 3)),
            "polarisation": dice.choice(["horizontal", "vertical"]),
        }
        if own:
            point["rain"] = round(dice.uniform(1, 150), 1)
            point["air"] = (round(dice.uniform(-30, 45), 1), round(dice.uniform(650, 1050), 1), round(dice.uniform(1, 100), 1))
        yield point


def document(point):
    """A hop and its two sites, as YAML."""
    name, text = point["id"], ""
    for end in "ab":
        latitude, longitude = point[end]
        text += (
            f"kind: site\nid: {name}-{end}\ntitle: {name}-{end}\n"
            f"position: {{ latitude: {latitude} deg, longitude: {longitude} deg }}\nground_height: 100 m\n"
            "supports: [{ id: pole, kind: pole, outside_diameter: 90 mm, base_height: 0 m, free_length: 50 m }]\n---\n"
        )
    there, back = point["frequencies"]
    text += (
        f"kind: hop\nid: {name}\nchannel: {{ a_to_b: {there} GHz, b_to_a: {back} GHz, bandwidth: 500 MHz, "
        f"polarisation: {point['polarisation']} }}\n"
    )
    if "rain" in point:
        temperature, pressure, humidity = point["air"]
        text += (
            f"climate:\n  rain_rate: {point['rain']} mm/h\n"
            f"  air: {{ temperature: {temperature} °C, pressure: {pressure} hPa, humidity: {humidity} % }}\n"
        )
    text += "ends:\n"
    for end, height in zip("ab", point["heights"]):
        text += (
            f"  {end}: {{ site: {name}-{end}, support: pole, height: {height} m, radio: radio, antenna: antenna, "
            "transmit_power: 10 dBm, bracket: { model: bracket }, runs: [] }\n"
        )
    return text


def write_map(folder):
    """The map the library ships, in the three texts of the published layout."""
    import itur
    import numpy

    data = Path(itur.__file__).parent / "data" / "837"
    folder.mkdir(parents=True, exist_ok=True)
    for ours, theirs in [("R001.TXT", "v7_r001"), ("Lat_R001.TXT", "v7_lat_r001"), ("Lon_R001.TXT", "v7_lon_r001")]:
        grid = numpy.load(data / f"{theirs}.npz")["arr_0"]
        lines = (" ".join(f"{value:.3f}" for value in row) for row in grid.tolist())
        (folder / ours).write_text("\n".join(lines) + "\n")


class Tally:
    """The largest difference of a quantity, beside what is allowed."""

    def __init__(self, name, allowed, relative=True):
        self.name, self.allowed, self.relative = name, allowed, relative
        self.count, self.worst = 0, 0.0

    def add(self, ours, theirs):
        apart = abs(ours - theirs)
        apart = apart / abs(theirs) if self.relative and theirs else apart
        self.count += 1
        # A comparison with what is not a number is a disagreement.
        self.worst = max(self.worst, apart if apart == apart else math.inf)

    def report(self):
        agrees = self.count > 0 and self.worst <= self.allowed
        unit = "relative" if self.relative else "mm/h"
        verdict = "agrees" if agrees else "DISAGREES"
        print(f"{self.name:<44} {self.count:4} points  largest {self.worst:.1e}  allowed {self.allowed:.0e} {unit}  {verdict}")
        return agrees


def compare(sheet):
    """Holds a sheet against the library; whether all agrees."""
    from itur.models import itu453, itu530, itu676, itu837, itu838

    # It works out C0 for both sides of 10 GHz before it takes one of them.
    warnings.filterwarnings("ignore", "invalid value encountered", RuntimeWarning)

    def plain(quantity):
        return float(getattr(quantity, "value", quantity))

    vapour = Tally("P.453-14 vapour pressure", 1e-9)
    gas = Tally("P.676 gas, Annex 1, dB/km", 1e-9)
    rain = Tally("P.838-3 rain, dB/km", 1e-9)
    fade = Tally("P.530 fade at 0.01 % (C0 read otherwise)", 1e-4)
    rate = Tally("P.837-7 R0.01 off the map", 1e-4, relative=False)
    hops = {
        hop["hop"]: {line["key"]: line.get("value") for line in hop["lines"]} for hop in json.loads(sheet)["hops"]
    }
    for point in points():
        lines = hops[point["id"]]
        tilt = {"horizontal": 0.0, "vertical": 90.0}[point["polarisation"]]
        if "rain" not in point:
            latitude, longitude = ((one + other) / 2 for one, other in zip(point["a"], point["b"]))
            rate.add(lines["path.rain_rate"], plain(itu837.rainfall_rate(latitude, longitude, 0.01)))
            continue
        temperature, pressure, humidity = point["air"]
        vapour_pressure = plain(itu453.water_vapour_pressure(temperature, pressure, humidity))
        vapour.add(lines["path.vapour_pressure"], vapour_pressure)
        kelvin = temperature + 273.15
        density = 216.7 * vapour_pressure / kelvin
        kilometres, elevation = lines["path.slant"] / 1000, lines["path.elevation_a"]
        for way, frequency in zip(("a_to_b", "b_to_a"), point["frequencies"]):
            # The library asks for "pressure" and takes it for that of the dry air.
            theirs = plain(itu676.gamma_exact(frequency, pressure - vapour_pressure, density, kelvin))
            gas.add(lines[f"{way}.gas_attenuation"], theirs)
            if kilometres < 0.2:
                theirs = plain(itu838.rain_specific_attenuation(point["rain"], frequency, elevation, tilt))
                rain.add(lines[f"{way}.rain_fade"] / (2.5 * kilometres), theirs)
            theirs = itu530.rain_attenuation(*point["a"], kilometres, frequency, elevation, 0.01, tilt, point["rain"])
            fade.add(lines[f"{way}.objective_fade"], plain(theirs))
    return all([tally.report() for tally in (vapour, gas, rain, fade, rate)])


def inside(program):
    """The part that runs where the library is."""
    folder = SCRATCH / "network"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "network.yaml").write_text(NETWORK)
    for point in points():
        (folder / f"{point['id']}.yaml").write_text(document(point))
    if not (folder / "map" / "Lon_R001.TXT").exists():
        write_map(folder / "map")
    sheet = subprocess.run([program, "sheet", "--network", folder, "--format", "json"], stdout=subprocess.PIPE, check=True)
    return 0 if compare(sheet.stdout) else 1


def main():
    if sys.argv[1:2] == ["--inside"]:
        return inside(sys.argv[2])
    python, why = environment(SCRATCH, LIBRARY)
    if python is None:
        print(f"cross-check skipped, {LIBRARY} cannot be installed: {why}")
        return 0
    subprocess.run(["cargo", "test", "--no-run", "--locked", "--quiet"], cwd=ROOT, check=True)
    program = ROOT / "target" / "debug" / "hopwright"
    return subprocess.run([python, __file__, "--inside", program], check=False).returncode


if __name__ == "__main__":
    sys.exit(main())
