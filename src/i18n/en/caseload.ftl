# A worker's children as the supervisor sees them
caseload-load = { $children ->
        [one] One child
       *[other] { $children } children
    }; within 7 days something is due for { $due }.
caseload-give = Give children to a colleague
caseload-give-lede = The children ticked go over today, all of them or none; their villages and follow-ups stay with them, and where they were stays on record.
caseload-no-children = No child of theirs is in your areas.
caseload-which = Which children
caseload-to = To whom
caseload-colleague = { $name }: { $children ->
        [one] one child
       *[other] { $children } children
    }, { $due } due within 7 days
caseload-colleague-where = { $words }, in { $villages }
caseload-colleague-away = { $words }, away until { $date }
caseload-way = { $hours ->
        [0] less than half an hour on foot
        [one] about one hour on foot
       *[other] about { $hours } hours on foot
    }
caseload-way-least = { $hours ->
        [0] way known in part
        [one] at least one hour on foot, way known in part
       *[other] at least { $hours } hours on foot, way known in part
    }
caseload-way-unknown = way not known
caseload-way-own = The way to them: { $way }.
caseload-walking = The hours on foot come from the minutes that the administrator wrote down for each area. Think of the way where they are not known.
caseload-reason = Why
caseload-reason-hint = At least 10 characters. It stands in the history of each child.
caseload-give-do = Give these children over
caseload-given = { $count ->
        [one] One child is with { $name } now.
       *[other] { $count } children are with { $name } now.
    }
caseload-changed = { $name } was changed by somebody else in the meantime. No child was given over. Look again, then send.
caseload-due = { $what }, { $date }
caseload-check = { $what }, check by { $date }
caseload-nothing-due = nothing due
caseload-away-add = Somebody stands in for some days
