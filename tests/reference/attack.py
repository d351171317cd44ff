"""Attacks releases of random programmes: what can a reader of all the tables of a month work out of what is withheld?

Set-up and run, from the top of the project:

    python3 -m venv target/reference
    target/reference/bin/pip install --require-hashes -r tests/reference/requirements-attack.txt
    cargo build --release -p spoonround-domain --example random_months
    target/reference/bin/python tests/reference/attack.py 50

The reader knows every printed figure, every equation and inequality between the figures of all tables, the method, and even which
withheld figures are no noughts. For each withheld figure a linear programme (HiGHS) finds the least and the most that it can be; at
least 5 whole numbers must lie between. The same holds for the small groups that nobody prints but that come out by subtraction
(children of a denominator who are *not* counted).

One programme in six is released again after late records came in, with all that the revision inherits. Quarters and years add
nothing: of tables that add up they print only sums of what all their months print.

Closes with `N passed, N failed`, one for each programme and one for a release with a planted fault, which the attack must see
through; the exit status is 0 only if nothing failed. `attack.py 1000` is the long run, some hours on two cores; `attack.py 500 500` is its second half.
"""

import json
import os
import random
import subprocess
import sys
from collections import defaultdict
from concurrent.futures import ProcessPoolExecutor
from math import ceil, floor

import highspy
import numpy as np

PROGRAM = "target/release/examples/random_months"
THRESHOLD = 5
# How a figure is told: printed (or never printed by itself), withheld, or in a row that is not told at all.
WITHHELD, OMITTED = 1, 2
# Children of a programme: small ones are the hard ones.
SIZES = [40, 80, 120, 240, 400]
SEED = 20_261_101
# Of so many programmes one is also attacked as revised.
ONE_REVISED_IN = 6
NEAR = 1e-6
# Programmes from one word of progress to the next.
SAY_EVERY = 50
# How far above the truth a figure is tried: more values than that need not be counted.
REACH = 60
# The primal simplex method, by HiGHS's number.
PRIMAL = 4


class Release:
    """What the reader holds."""

    def __init__(self, line):
        data = json.loads(line)
        self.values = [figure[0] for figure in data["figures"]]
        self.targets, self.least, self.printed = [], [], {}
        for at, (value, kind, told) in enumerate(data["figures"]):
            if kind == "k" or (kind == "p" and told not in (WITHHELD, OMITTED)):
                self.printed[at] = value
            self.least.append(1 if kind == "p" and value > 0 and told != OMITTED else 0)
            if told != OMITTED and (told == WITHHELD or (kind == "g" and 0 < value < THRESHOLD)):
                self.targets.append(at)
        self.equations = data["equations"]
        self.known = dict(self.printed)

    def forget_floors(self):
        """Becomes a reader who does not know which withheld figures are no noughts."""
        self.least = [0] * len(self.values)
        self.known = dict(self.printed)

    def derive(self):
        """Works out by hand what needs no programme: one unknown left in an equation, or nothing but noughts."""
        touching = defaultdict(list)
        for index, equation in enumerate(self.equations):
            for figure, _ in equation:
                touching[figure].append(index)
        waiting = set(range(len(self.equations)))
        while waiting:
            equation = self.equations[waiting.pop()]
            open_ = [(f, s) for f, s in equation if f not in self.known]
            sum_ = sum(s * self.known[f] for f, s in equation if f in self.known)
            found = {}
            if len(open_) == 1:
                found = {open_[0][0]: -open_[0][1] * sum_}
            elif open_ and len({s for _, s in open_}) == 1 and abs(sum_) == sum(self.least[f] for f, _ in open_):
                found = {f: self.least[f] for f, _ in open_}
            for f, value in found.items():
                self.known[f] = value
                waiting.update(touching[f])

    def components(self):
        """The equations that are left, in sets that have nothing to do with each other."""
        parent = {}

        def root(x):
            while parent.setdefault(x, x) != x:
                parent[x] = parent[parent[x]]
                x = parent[x]
            return x

        left = []
        for equation in self.equations:
            open_ = [(f, s) for f, s in equation if f not in self.known]
            if open_:
                left.append((open_, -sum(s * self.known[f] for f, s in equation if f in self.known)))
                for f, _ in open_[1:]:
                    parent[root(f)] = root(open_[0][0])
        sets = defaultdict(list)
        for open_, side in left:
            sets[root(open_[0][0])].append((open_, side))
        return sets.values()


def short(low, high):
    """Whether too few whole numbers lie between."""
    return floor(high + NEAR) - ceil(low - NEAR) + 1 < THRESHOLD


def attack(release, rng):
    """The withheld figures that keep too few values: place, truth, least, most."""
    found = try_all(release, release.targets, rng)
    noughts = [at for at, value, _, _ in found if value == 0]
    if noughts:
        # Who knows which figures are nought has no secret left in these; so they are tried by a reader who does not know.
        release.forget_floors()
        found = [entry for entry in found if entry[1] > 0] + try_all(release, noughts, rng)
    return found


def try_all(release, targets, rng):
    release.derive()
    targets = set(targets)
    # What stands in no equation is bounded by nothing.
    spread = {f: (release.known[f], release.known[f]) for f in targets & release.known.keys()}
    for equations in release.components():
        figures = sorted({f for open_, _ in equations for f, _ in open_})
        wanted = [f for f in figures if f in targets]
        if wanted:
            spread.update(ranges(release, equations, figures, wanted, rng))
    return [(f, release.values[f], *spread[f]) for f in sorted(spread) if short(*spread[f])]


def ranges(release, equations, figures, wanted, rng):
    """The least and most of each wanted figure, as far as it takes to know that it keeps enough values."""
    column = {f: at for at, f in enumerate(figures)}
    truth = np.array([release.values[f] for f in figures], dtype=float)
    solver = highspy.Highs()
    solver.silent()
    # Only the costs change from one run to the next, so the primal method can go on from where the last one ended.
    solver.setOptionValue("simplex_strategy", PRIMAL)
    solver.addVars(len(figures), np.array([release.least[f] for f in figures], dtype=float), truth + REACH)
    for open_, side in equations:
        solver.addRow(side, side, len(open_), np.array([column[f] for f, _ in open_]), np.array([s for _, s in open_], dtype=float))
    low, high = truth.copy(), truth.copy()
    wanted = np.array([column[f] for f in wanted])
    columns = np.arange(len(figures))

    def open_():
        values = np.floor(high[wanted] + NEAR) - np.ceil(low[wanted] - NEAR) + 1
        return wanted[values < THRESHOLD]

    def solve(at, weights):
        """Moves the figures as weighed; what is seen of any figure is noted for it."""
        costs = np.zeros(len(figures))
        costs[at] = weights
        solver.changeColsCost(len(figures), columns, costs)
        solver.run()
        if solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            sys.exit(f"the solver ended with {solver.getModelStatus()}")
        solution = np.array(solver.getSolution().col_value)
        np.minimum(low, solution, out=low)
        np.maximum(high, solution, out=high)

    # Many at once first; then each alone that has not yet shown enough values.
    left = len(wanted) + 1
    while 0 < len(open_()) < left:
        left = len(open_())
        solve(open_(), -1.0)
        solve(open_(), 1.0)
        solve(open_(), np.array([rng.choice((-1.0, 1.0)) for _ in open_()]))
    for at in open_():
        for weight in (-1.0, 1.0):
            if at in open_():
                solve(at, weight)
    return {figures[at]: (low[at], high[at]) for at in wanted}


def releases(count, children, seed, mode=""):
    """Months of random programmes: the first release, or as `mode` says."""
    return lines([PROGRAM, str(count), str(children), str(seed), mode])


def lines(command):
    run = subprocess.run(command, capture_output=True, text=True, check=False)
    if run.returncode != 0:
        sys.exit(f"{command[0]} ended with {run.returncode}:\n{run.stderr}")
    return run.stdout.splitlines()


def one(number):
    """Attacks a programme: its first release, of one in six also the revision. What was found, and how much was tried."""
    children, seed = SIZES[number % len(SIZES)], SEED + number
    said, tried = [], 0
    for mode in ("", "revised") if number % ONE_REVISED_IN == 0 else ("",):
        release = Release(releases(1, children, seed, mode)[0])
        tried += len(release.targets)
        found = attack(release, random.Random(seed))
        if mode:
            # What is only withheld because it once was may by now be nought for everybody to see.
            found = [entry for entry in found if entry[1] > 0]
        for at, value, low, high in found[:5]:
            said.append(f"{children} children, seed {seed} {mode}: figure {at} = {value} can only be {low:g} to {high:g} ({len(found)} such)")
    return said, tried


def main():
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 50
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    passed = failed = tried = 0
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        for at, (said, figures) in enumerate(pool.map(one, range(first, first + count)), start=1):
            if at % SAY_EVERY == 0:
                print(f"{at} of {count}", file=sys.stderr, flush=True)
            tried += figures
            passed, failed = (passed, failed + 1) if said else (passed + 1, failed)
            for line in said:
                print(line, flush=True)
    print(f"{tried} figures attacked")
    # Whoever finds nothing must be able to find something.
    defect = Release(releases(1, 240, SEED, "no-complements")[0])
    if attack(defect, random.Random(SEED)):
        passed += 1
    else:
        failed += 1
        print("a release without complements was not seen through")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
