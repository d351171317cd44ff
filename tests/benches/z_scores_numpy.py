"""What numpy makes of the same work as the bench `z_scores`: weight for age, length for age and weight for length of whole columns of infants.

Set-up and run, from the top of the project, on the machine and at the hour at which the bench is run:

    python3 -m venv target/numpy
    target/numpy/bin/pip install numpy==2.4.6
    target/numpy/bin/python tests/benches/z_scores_numpy.py

The same tables, the same formula with restricted tails (WHO Child Growth Standards: methods and development, 2006), 64-bit floats, one
thread. Before it measures, its z-scores are held against the outside check values that the tests of the program use too.
"""

import csv
import time

import numpy as np

TABLES = "src/domain/growth/tables/"
CHECK_VALUES = "tests/data/growth/golden_public.csv"
FEMALE, MALE = 0, 1
SAMPLES = 200


def table(name, steps_a_unit):
    """L, M and S, each by sex and row; and the key of the first row."""
    rows = {"F": [], "M": []}
    first = None
    with open(TABLES + name, newline="") as file:
        for sex, key, *lms in list(csv.reader(file))[1:]:
            first = round(float(key) * steps_a_unit) if first is None else first
            rows[sex].append([float(figure) for figure in lms])
    both = np.array([rows["F"], rows["M"]])
    return [np.ascontiguousarray(both[:, :, figure]) for figure in range(3)], first


WEIGHT_FOR_AGE, _ = table("who_wfa.csv", 1)
LENGTH_FOR_AGE, _ = table("who_lfa.csv", 1)
# By whole millimetres; the file has centimetres.
WEIGHT_FOR_LENGTH, FIRST_MM = table("who_wfl.csv", 10)


def restricted(x, l, m, s):
    """z by L, M and S; beyond 3 counted in units of the gap between SD 2 and SD 3."""
    z = ((x / m) ** l - 1.0) / (l * s)
    far = np.flatnonzero(np.abs(z) > 3.0)
    if far.size:
        side, l, m, s = np.sign(z[far]), l[far], m[far], s[far]
        sd2, sd3 = (m * (1.0 + l * s * side * sd) ** (1.0 / l) for sd in (2.0, 3.0))
        z[far] = side * (3.0 + (x[far] - sd3) / (sd3 - sd2))
    return z


def three_indices(sex, age_days, kg, mm):
    l, m, s = (figure[sex, age_days] for figure in WEIGHT_FOR_AGE)
    waz = restricted(kg, l, m, s)
    # The power of length for age is 1 in every row.
    _, m, s = (figure[sex, age_days] for figure in LENGTH_FOR_AGE)
    laz = (mm / 10.0 / m - 1.0) / s
    l, m, s = (figure[sex, mm - FIRST_MM] for figure in WEIGHT_FOR_LENGTH)
    return waz, laz, restricted(kg, l, m, s)


def check():
    """Every check value of a child under two years, measured lying, whose length is in the table."""
    with open(CHECK_VALUES, newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["waz"] and row["laz"] and row["wlz"]]
    rows = [row for row in rows if int(row["age_days"]) < 731 and row["measured"] != "H"]
    sex = np.array([MALE if row["sex"] == "M" else FEMALE for row in rows])
    days = np.array([int(row["age_days"]) for row in rows])
    kg = np.array([float(row["weight_kg"]) for row in rows])
    mm = np.array([round(float(row["length_cm"]) * 10) for row in rows])
    for name, found in zip(("waz", "laz", "wlz"), three_indices(sex, days, kg, mm)):
        expected = np.array([float(row[name]) for row in rows])
        assert np.abs(found - expected).max() < 0.000_051, name
    assert len(rows) > 80, len(rows)
    return len(rows)


def infants(count):
    """Spread as in the bench: every age up to 24 months, lines of -0.8 with a standard deviation of 1.2."""
    rng = np.random.default_rng(0x5EED)
    sex, days = rng.integers(0, 2, count), rng.integers(0, 730, count)
    l, m, s = (figure[sex, days] for figure in WEIGHT_FOR_AGE)
    kg = m * (1.0 + l * s * rng.normal(-0.8, 1.2, count)) ** (1.0 / l)
    _, m, s = (figure[sex, days] for figure in LENGTH_FOR_AGE)
    cm = m * (1.0 + s * rng.normal(-0.8, 1.2, count))
    # A few of the smallest lie below the table of weight for length, which numpy has to be spared.
    return sex, days, kg, np.clip((cm * 10.0).astype(np.int64), FIRST_MM, FIRST_MM + WEIGHT_FOR_LENGTH[0].shape[1] - 1)


def fastest(count, work):
    columns = infants(count)
    best = float("inf")
    for _ in range(max(20, SAMPLES * 10_000 // count)):
        start = time.perf_counter()
        work(*columns)
        best = min(best, time.perf_counter() - start)
    return count / best / 1e6


def bare(_sex, _days, kg, mm):
    """Two powers and the divisions, with one L, M and S."""
    l, m, s, cm = -0.3521, 7.4327, 0.08217, mm / 10.0
    return (((kg / m) ** l - 1.0) / (l * s) + (((kg + 0.1) / m) ** l - 1.0) / (l * s) + (cm / m - 1.0) / s).sum()


print(f"numpy {np.__version__}: {check()} check values agree")
for count in (10_000, 1_000_000):
    print(f"three indices, columns of {count:>9,}: {fastest(count, three_indices):5.1f} million infants a second")
    print(f"bare formula,  columns of {count:>9,}: {fastest(count, bare):5.1f} million infants a second")
