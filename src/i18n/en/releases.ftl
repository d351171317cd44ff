# Releases of the reports: which revision, what changed, and why there is none.

period-quarter = Quarter { $number } of { $year }
period-year = Year { $year }

release-provisional = Provisional until { $date }: visits that arrive late may still change these figures. They are released on { $on }.
release-first = Released on { $date }. These figures stand; records that arrive later are told together in a revision, on { $on } or later, once they are of at least { $least } children.
release-revision = Revision { $revision }, released on { $date }. Records that arrive later are told together in the next revision, on { $on } or later, once they are of at least { $least } children.
release-older = This is { $name } of { $date }, as it was. A later one has been released.
release-see-latest = See the latest
release-name-first = the first release
release-name-revision = revision { $revision }
release-changes-see = { $count ->
        [one] See the one figure it changed
       *[other] See the { $count } figures it changed
    }
release-changes = What revision { $revision } changed
release-changes-count = { $count ->
    [one] One figure shown before is another one now.
   *[other] { $count } figures shown before are others now.
} What was private stays private.
release-changes-more = { $count ->
    [one] One more is not listed here; compare the files.
   *[other] { $count } more are not listed here; compare the files.
}
release-figure = Figure
release-was = Was
release-now = Is now
release-nothing = nothing
release-revisions = All releases
release-of = { $name }, { $date }
release-faults = These figures are not released: they do not hold together
release-faults-what = Nobody gets figures that contradict themselves. Tell whoever looks after the program what stands here; nothing that was recorded is lost.
release-not-ended = { $period } has not ended. Reports are made of whole months, quarters and years; the last month is { $last }.
release-before-start = { $period } lies before the programme, whose first child was registered in { $first }. Choose a later time.
release-nobody = No child is registered yet, so there is nothing to report.
release-no-revision = { $period } has no revision { $revision }. Choose one of those listed under “All releases”.
release-unknown-period = “{ $text }” is no month, quarter or year. Choose one from the list, or write it like 2026-10, 2026-Q3 or 2026.
release-trouble = No report
release-period = Month, quarter or year

# What is wrong with figures
release-fault-part = { $table }, row { $row }: { $part } is greater than { $whole }, of which it is a part
release-fault-sum = { $table }, row { $row }: the rows of { $split } do not add up to { $column } of their total
release-fault-row = { $table }, row { $row }: the columns of the row do not add up
release-fault-small = { $table }, row { $row }: { $column } is a small count that must be private
release-fault-mixed = { $table }: { $column } is not the same in all rows
release-fault-name = { $table }, row { $row }: { $column } holds a text that is no code and might be a name
release-fault-mad = feeding, row { $row }: more children have an acceptable diet than a diverse one or enough meals
