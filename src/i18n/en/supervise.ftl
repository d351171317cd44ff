# The desk: what is late, why, closing, moving, leaving, the team.

# What is late
late-title = Late
late-heading-urgent = { $count ->
        [one] One urgent referral has no answer yet
       *[other] { $count } urgent referrals have no answer yet
    }
late-heading-late = { $count ->
        [one] One follow-up is late
       *[other] { $count } follow-ups are late
    }
late-heading-unseen = { $count ->
        [one] Nothing is late, and one child was not seen for long
       *[other] Nothing is late, and { $count } children were not seen for long
    }
late-heading-none = Nothing is late
late-where = { $date } · { $villages ->
        [one] { $villages } village
       *[other] { $villages } villages
    }, { $workers ->
        [one] { $workers } worker
       *[other] { $workers } workers
    }, { $children ->
        [one] { $children } child
       *[other] { $children } children
    }
late-nobody = No area or worker is assigned to you yet. Ask the administrator.
late-urgent-child = { $name }, { $age }, { $village }
late-urgent-since = Since { $date }, with { $worker }. Nobody has written yet what became of it.
late-urgent-waiting = Sent to the clinic, with { $worker }. Nobody has written yet whether they arrived.
late-write-outcome = Write what became of it
late-call = Call { $name }
late-see-why = See why
late-jump-late = { $count ->
        [one] { $count } follow-up is late
       *[other] { $count } follow-ups are late
    }
late-jump-unseen = { $count ->
        [one] { $count } child not seen for long
       *[other] { $count } children not seen for long
    }
late-sieve = Narrow the list
late-worker = Worker
late-village = Village
late-urgency = Urgency
late-as-of = As of
late-rule = About
late-days-least = Days late
late-days-from = { $count ->
        [one] { $count } day and more
       *[other] { $count } days and more
    }
late-all = All
late-list-heading = Late follow-ups
late-list-none = None, with what is chosen above.
late-list-first = Longest beyond what its urgency allows first; days count from the day it was due
late-column-child = Child
late-column-why = Why
late-column-late = Late
late-due-today = Due today
late-days = { $count ->
        [one] { $count } day late
       *[other] { $count } days late
    }
late-next = Next page
late-first-page = First page
late-unseen-heading = Not seen for long
late-unseen-rule = Under 12 months: { $young } days and more; from 12 months: { $older }. The programme’s protocol says so.
late-unseen-off = The protocol in force does not look for children who were not seen.
late-unseen-none = Every child was seen in time.
late-unseen-never = never seen since registration
late-whole = All of them
late-whole-none = None on this page.
late-urgent-heading = Urgent referrals without an answer
late-heading-urgent-more = More than { $count } urgent referrals have no answer yet
late-heading-unseen-more = Nothing is late, and more than { $count } children were not seen for long
late-jump-unseen-more = More than { $count } children not seen for long
late-held-heading = Foods long on hold
late-held-rule = On hold for more than { $count } days: ask a health worker whether the food may come back, so that it is not lost for good. A common allergen: a clinician decides. Our own choice.
late-held-since = since { $date }
late-hand-heading = Who could use a hand
late-hand-most = { $name } has the most late follow-ups.
late-hand-none = Nobody has late follow-ups.
late-hand-note = For support, not ranking: small numbers swing.
late-hand-key = Late, by urgency:
late-by-worker = By worker
late-by-village = By village
late-children = Children
late-open = Open
late-shape-head = { $class }, late
late-all-row = All
late-move = Move a child: open the child first.
late-team = The team

# Why
why-title = Why: { $name }, { $class }
why-heading = { $name }: { $why }
why-measured = Noticed
why-measured-at = { $date }, { $where }, by { $who }
why-check-by = Check by
why-check-was = Was to be checked by
why-source = Rule in words
why-rule = Rule
why-rule-line = { $rule }, protocol { $protocol } { $version }
why-do = Do and say
why-closes = When it closes
why-close-resolved = By itself, at a later visit where the rule no longer holds.
why-close-urgent = When somebody writes what became of it at the clinic, or later visits show that it is over.
why-close-supervisor = A supervisor can close it with a reason.
why-close-not-yet = A supervisor cannot close it before somebody has written what became of it.
why-also = Also true
why-also-covered = Covered by this one:
why-history = What happened to it
why-history-line = { $date }: { $what }
why-event-opened = opened, { $class }, check by { $due }
why-event-refreshed = still so, { $class }, check by { $due }
why-event-raised = more urgent now: { $class }, check by { $due }
why-event-changed = what was known changed
why-event-outcome = an outcome was written
why-event-closed = closed: { $reason }
why-event-reopened = open again: what closed it was corrected
why-by = by { $name }
why-closed = Closed on { $date }: { $reason }.
why-closed-by = By { $name }: { $category }. “{ $note }”
why-write = Write what happened
why-call = Call { $name }
why-caution = Suggested by a rule, not a diagnosis. These numbers come from what was typed: if one looks odd, measure again before worrying the family. Refer on your own judgment even if no rule says so. Show the family respect: ask first.
why-move = Move to another worker

# Closing
close-title = Close it with a reason
close-lede = It leaves the lists for good. If the rule holds again at a later visit, a new one opens.
close-category = What kind of reason
close-note = The reason, for whoever reads it next
close-note-hint = At least 10 characters.
close-do = Close it
close-done = Closed, with your reason.
close-already = { $name } closed it on { $date }. Nothing was changed.
close-typed = What you wrote was not saved here, as the follow-up was closed already. It stands below.
close-typed-words = What you wrote
close-typed-hint = You may leave it as a note for the worker, on the child’s page.
close-typed-do = Leave it as a note
close-already-by-itself = It closed on { $date }: { $reason }. Nothing was changed.

# Moving
move-title = Move { $name } to another worker
move-now = Now with { $worker }, { $village }, since { $date }.
move-worker = Worker
move-area = Area
move-from = From which day
move-from-hint = Today, or a day since { $date }.
move-reason = Why
move-reason-hint = For example: the family moved in with the grandmother.
move-history = Where { $name } has been
move-history-line = { $village }, with { $worker }, { $from } to { $to }
move-history-now = { $village }, with { $worker }, since { $from }
move-do = Move
move-done = Moved to { $worker }, { $village }. Open follow-ups went along.
move-changed = Somebody changed this child meanwhile. Look at what stands here now, then send it again.

# Leaving
leave-title = { $name } leaves the programme
leave-lede = All open follow-ups end. What was recorded stays.
leave-how = What happened
leave-moved = The family moved away
leave-transferred-out = Went to another programme
leave-refused = The family does not want visits
leave-consent-withdrawn = The family took back its consent
leave-consent-hint = The child leaves every list at once. Tell your administrator, so that the stored data is removed too.
leave-died = The child died
leave-died-hint = No visits, calls or messages will be planned. Take your time, and visit the family as a neighbour would.
leave-died-tell = If the child died, tell your supervisor yourself. You need not write it here.
leave-on = On which day
leave-on-approximate = As near as the family says.
leave-note = What the family wants known
leave-note-hint = May be left empty.
leave-do = Save
leave-done-died = Written down. The child is on no list any more. Nobody will be sent for a visit.
leave-done = Written down. All open follow-ups have ended.
leave-already = Left on { $date }: { $how }.

# The team
team-title = Workers
team-heading = { $count ->
        [one] { $count } worker
       *[other] { $count } workers
    }
team-none = No worker has children in your areas yet.
team-line = { $children ->
        [one] { $children } child
       *[other] { $children } children
    }, { $open ->
        [one] { $open } open follow-up
       *[other] { $open } open follow-ups
    }, { $late } late
team-away = Away until { $date }, { $name } stands in
team-unattended-left = { $count ->
        [one] One child is
       *[other] { $count } children are
    } with { $name }, whose last day was { $date }. Nobody stands in.
team-unattended-off = { $count ->
        [one] One child is
       *[other] { $count } children are
    } with { $name }, who may not sign in. Nobody stands in.
team-unattended-away = { $count ->
        [one] One child is
       *[other] { $count } children are
    } with { $name }, who is away until { $date }. Who was to stand in is not there either.
team-unattended-do = Give them to a colleague
team-inactive = May not sign in
team-call-of = Call { $name }
team-late = See what is late
team-code = Make a one-time code
team-code-of = Make a one-time code for { $name }
team-code-hint = For a forgotten password or a new phone: hand the code over in person. It is shown once and ends after 72 hours.
team-villages = Villages: { $list }

# The list for the weekly meeting
meeting-title = For the meeting
meeting-link = This list for the meeting, to print or as a file
meeting-heading = { $count ->
        [one] One late follow-up for the meeting
       *[other] { $count } late follow-ups for the meeting
    }
meeting-urgent = { $count ->
        [one] One urgent referral without an answer stands first.
       *[other] { $count } urgent referrals without an answer stand first, under each worker.
    }
meeting-unanswered = No answer yet
meeting-inside = With names: for the team only. Take the paper back or destroy it after the meeting.
meeting-how = Print it with your browser.
meeting-file = The same as a CSV file, with codes instead of names
meeting-more = There are more than fit here: narrow the list first.
meeting-agreed = What we agree
