"""Holds the files of released reports to their own descriptions, by two outside validators: `csvw`, which reads the description beside
each table (CSV on the Web), and `frictionless`, which is given a schema made from that description.

Set-up and run, from the top of the project:

    python3 -m venv target/reference
    target/reference/bin/pip install --require-hashes -r tests/reference/requirements-files.txt
    SPOONROUND_BIN=target/debug/spoonround SPOONROUND_DATABASE=data/demo.db target/reference/bin/python tests/reference/validate_files.py

The program writes the latest year that is released, with its last quarter and last two months. To look at files that are there already,
name their folders instead. Then a copy of every table is damaged in each way of `DAMAGES`, and both validators must refuse it;
what one of them is known not to look at is named in `BLIND`.

Says what it finds as `FOLDER/FILE: fault`, and closes with `N passed, N failed`; the exit status is 0 only if nothing failed.
"""

import csv
import datetime
import json
import os
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

from csvw import CSVW
from frictionless import Dialect, Resource, Schema

# A month stands from the 10th of the next one on.
DAYS_BEFORE_RELEASE = 9
TABLES = {"enrolment", "programme", "visits", "growth", "feeding", "followups", "followups_stock", "referrals", "reactions"}
DESCRIPTION = "-metadata.json"
# Datatypes of CSV on the Web as `frictionless` names them, with what else it has to be told.
TYPES = {
    "string": {"type": "string"},
    "integer": {"type": "integer", "bareNumber": True},
    "decimal": {"type": "number", "bareNumber": True},
    "dateTime": {"type": "datetime", "format": "%Y-%m-%dT%H:%M:%SZ"},
    "gYearMonth": {"type": "yearmonth"},
    "gYear": {"type": "year"},
}


def periods(today):
    """The latest year that is released on this day, its last quarter and two months: counted together, each month is counted once."""
    year = (today - datetime.timedelta(days=DAYS_BEFORE_RELEASE)).year - 1
    return [f"{year}-11", f"{year}-12", f"{year}-Q4", str(year)]


def written(into):
    """The folders that the program has written, one a period."""
    for period in periods(datetime.date.today()):
        run = subprocess.run(
            [os.environ["SPOONROUND_BIN"], "export", period, "--into", str(into / period)], capture_output=True, text=True, check=False
        )
        if run.returncode != 0 or "provisional" in run.stderr:
            sys.exit(f"spoonround export {period} ended with {run.returncode}:\n{run.stderr}")
        yield into / period


def description_of(table):
    return json.loads(table.with_name(table.name + DESCRIPTION).read_text(encoding="utf-8"))


def by_csvw(table):
    """What `csvw` has to object to a table."""
    try:
        read = CSVW(str(table), validate=True)
        return [] if read.is_valid else [str(warning.message) for warning in read.warnings]
    except Exception as refused:  # It tells some faults as warnings and others by failing, with exceptions of many kinds.
        return [f"{type(refused).__name__}: {refused}"]


def field(column):
    """A column of the description as a field of `frictionless`. What is not known fails: a constraint left out would be checked by nobody."""
    datatype = column["datatype"]
    datatype = {"base": datatype} if isinstance(datatype, str) else dict(datatype)
    constraints = {"required": column["required"]}
    made = {"name": column["name"], **TYPES[datatype.pop("base")], "constraints": constraints}
    for key, value in datatype.items():
        constraints[{"format": "pattern", "minimum": "minimum", "maximum": "maximum"}[key]] = f"^(?:{value})$" if key == "format" else value
    return made


def by_frictionless(table):
    """What `frictionless` has to object to a table."""
    described = description_of(table)
    schema = Schema.from_descriptor(
        {
            "fields": [field(column) for column in described["tableSchema"]["columns"]],
            "primaryKey": described["tableSchema"]["primaryKey"],
            "missingValues": [""],
        }
    )
    resource = Resource(
        path=table.name,
        basepath=str(table.parent),
        format="csv",
        encoding=described["dialect"]["encoding"],
        dialect=Dialect.from_descriptor({"csv": {"delimiter": described["dialect"]["delimiter"]}}),
        schema=schema,
    )
    report = resource.validate(limit_errors=3)
    return [message for (message,) in report.flatten(["message"])]


VALIDATORS = {"csvw": by_csvw, "frictionless": by_frictionless}


def first(described, base, rows):
    """The place of the first cell that is not empty in a column of this datatype: its row and column."""
    for at, column in enumerate(described["tableSchema"]["columns"]):
        datatype = column["datatype"]
        if base == (datatype if isinstance(datatype, str) else datatype["base"]):
            for number, row in enumerate(rows):
                if row[at]:
                    return number, at
    return None


def put(rows, place, text):
    if place:
        rows[place[0]][place[1]] = text
    return place is not None


def drop(head, rows, name):
    at = head.index(name)
    for row in [head, *rows]:
        del row[at]
    return True


def rename(head, name, wrong):
    head[head.index(name)] = wrong
    return True


def in_column(head, rows, name, text):
    return name in head and put(rows, (0, head.index(name)), text)


# Each damages a table in place, and answers whether there was something to damage.
DAMAGES = {
    "a word in a column of numbers": lambda d, head, rows: put(rows, first(d, "integer", rows), "many"),
    "a number below nought": lambda d, head, rows: put(rows, first(d, "integer", rows), "-1"),
    "half a child": lambda d, head, rows: put(rows, first(d, "integer", rows), "1.5"),
    "a share above a hundred": lambda d, head, rows: put(rows, first(d, "decimal", rows), "100.1"),
    "an instant that is none": lambda d, head, rows: put(rows, first(d, "dateTime", rows), "yesterday"),
    "a period of no kind": lambda d, head, rows: in_column(head, rows, "period", "October"),
    "a sex of no kind": lambda d, head, rows: in_column(head, rows, "sex", "X"),
    "an empty cell that must not be": lambda d, head, rows: in_column(head, rows, "area", ""),
    "a reason that is no code": lambda d, head, rows: in_column(head, rows, "withheld", "too small"),
    "a column missing": lambda d, head, rows: drop(head, rows, "protocol_id"),
    "a wrong column name": lambda d, head, rows: rename(head, "area", "village"),
    "a row twice": lambda d, head, rows: rows.append(list(rows[-1])) is None,
}
# Damages that a validator does not see. csvw 4.1.1 takes any text for a month (gYearMonth).
BLIND = {("csvw", "a period of no kind")}
# Rows of a damaged copy: more would only take longer. The last ones are of all areas together, where figures are large enough to be shown.
ROWS = 100


def damaged(table, into):
    """Copies of a table's last rows, each with a fault of its own."""
    with table.open(encoding="utf-8", newline="") as file:
        head_row, *all_rows = csv.reader(file)
    for what, damage in DAMAGES.items():
        head, *rows = [list(row) for row in [head_row, *all_rows[-ROWS:]]]
        if damage(description_of(table), head, rows):
            folder = into / what.replace(" ", "-")
            folder.mkdir(parents=True, exist_ok=True)
            copy = folder / table.name
            with copy.open("w", encoding="utf-8", newline="") as file:
                csv.writer(file).writerows([head, *rows])
            copy.with_name(copy.name + DESCRIPTION).write_bytes(table.with_name(table.name + DESCRIPTION).read_bytes())
            yield what, copy


def main():
    failures, valid, refused = [], Counter(), Counter()
    with tempfile.TemporaryDirectory() as place:
        folders = [Path(name) for name in sys.argv[1:]] or list(written(Path(place)))
        for folder in folders:
            tables = sorted(folder.glob("*.csv"))
            if {table.stem for table in tables} != TABLES:
                failures.append(f"{folder.name}: has the tables {[table.stem for table in tables]}")
            for table in tables:
                for name, objections in VALIDATORS.items():
                    objected = objections(table)
                    failures += [f"{folder.name}/{table.name}: {name}: {fault}" for fault in objected]
                    valid[name] += not objected
        # What a validator cannot refuse it has not checked.
        for table in sorted(folders[0].glob("*.csv")):
            for what, copy in damaged(table, Path(place) / "damaged"):
                blind = [name for name, objections in VALIDATORS.items() if (name, what) not in BLIND and not objections(copy)]
                failures += [f"{table.name} with {what}: {name} lets it pass" for name in blind]
                refused[what] += not blind
    failures += [f"no table was damaged by {what}" for what in DAMAGES if not refused[what]]
    for failure in failures[:40]:
        print(failure)
    print(
        f"{', '.join(folder.name for folder in folders)}: {valid['csvw']} tables valid by csvw, "
        f"{valid['frictionless']} by frictionless, {refused.total()} damaged copies refused"
    )
    print(f"{valid.total() + refused.total()} passed, {len(failures)} failed")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
