# Words that every page may use: the frame, buttons, dates, units, cautions.


# The frame
common-brand = Spoonround
common-title = { $page } – Spoonround
common-skip = Skip to the page
common-main-nav = Main
common-you-nav = You
common-nav-round = Round
common-nav-find = Find
common-nav-add = Add child
common-nav-late = Late
common-nav-workers = Workers
common-nav-reports = Reports
common-nav-people = People
common-nav-areas = Areas
common-nav-protocol = Protocol
common-nav-settings = Settings
common-help = Help
common-signed-in = Signed in as { $name }, { $role }
common-language-beside = opens beside; what you wrote stays here
common-language = Language
common-password = Password
common-sign-out = Sign out
common-sign-in = Sign in
common-demo = Invented data. No child, family or place here is real.
common-as-of = You see { $date }, with the corrections known today.
common-as-of-leave = Back to today
common-as-of-label = A past day
common-demo-label = Demo
common-protocol = Protocol { $id }, version { $version }.
common-protocol-local = Local protocol: { $name }.
common-protocol-approved = Approved by { $by }.
common-protocol-not-approved = Not yet approved by a clinician.
common-call-number = Call { $number }
common-call-local = Call your local emergency number
common-emergency-number = Emergency: { $number }

# Cautions: fixed text. A programme may translate it, not shorten it.
common-caution-line = Spoonround helps plan visits. It does not diagnose. Follow your local protocol and your supervisor. A baby on a list may be healthy; a baby not on it may be ill. Believe what you see.
common-cautions-all = All cautions
common-caution-1 = This app helps plan visits. It does not diagnose. Follow your local protocol and your supervisor.
common-caution-2 = If a baby cannot drink or breastfeed, vomits everything, has fits, is very sleepy or hard to wake, or has trouble breathing: refer now, do not wait for the app.
common-caution-3 = A baby on this list may be healthy; a baby not on it may be ill. Believe what you see.
common-caution-4 = Never tell a mother to stop breastfeeding because of a flag. Never dilute milk. Never give less food because a weight is high.
common-caution-5 = Baby born early: ages are corrected. Ask before starting solids.
common-caution-6 = Choking: sit upright, stay with the baby, soft foods, no whole nuts.
common-caution-7 = A food reaction: stop that food until a health worker says it is safe.
common-caution-8 = These numbers were calculated from what was typed. If a measurement looks odd, measure again before worrying the family.
common-caution-rule = Suggested by a rule, not a diagnosis. Refer on your own judgment even if no rule says so. Show the family respect: ask first.
common-caution-unsure = If you are unsure, treat it as serious.

# Buttons and answers
common-save = Save
common-continue = Continue
common-cancel = Cancel
common-back-to = Back to { $page }
common-show = Show
common-change = Change
common-correct = Correct
common-why = Why
common-more = More
common-print = Print
common-yes = Yes
common-no = No
common-not-asked = Not asked
common-not-done = Not done
common-not-known = Not known
common-none-of-these = None of these
common-did-not-check = Did not check
common-last-time = Last time
common-last-value = { $value }, { $date }
common-day = Day
common-month = Month
common-year = Year
common-today = Today
common-yesterday = Yesterday
common-another-day = Another day
common-choose = Choose
common-saved = Saved.
common-optional = May be left empty.

# Faults of a form as a whole
common-not-saved-title = Not saved: { $page }
common-not-saved = Not saved yet: { $count ->
        [one] { $count } thing to correct
       *[other] { $count } things to correct
    }
common-all-kept = All you wrote is still here.
common-fault-link = { $field }: { $fault }
common-look-again = Look again

# The spoon and the chart
common-spoon-today = Food stage on the spoon: { $stage }.
common-chart-months = months
common-chart-numbers = The same numbers as a table
common-chart-age = Age
common-chart-date = Date
common-chart-value = Value
common-chart-not-measured = not measured
common-chart-note = 0 is the middle of healthy children (WHO 2006). A gap means not measured. Time runs left to right in every language.
common-bowls = { $count ->
        [one] { $count } bowl
       *[other] { $count } bowls
    }
common-bowls-wanted = { $count ->
        [one] { $count } bowl
       *[other] { $count } bowls
    }, { $more ->
        [one] { $more } more if wanted
       *[other] { $more } more if wanted
    }
common-bowl-share = A bowl, { $percent } full
common-bowl-texture = Bowl of food: { $texture }

# Counts
common-days = { $count ->
        [one] { $count } day
       *[other] { $count } days
    }
common-weeks = { $count ->
        [one] { $count } week
       *[other] { $count } weeks
    }
common-months = { $count ->
        [one] { $count } month
       *[other] { $count } months
    }
common-minutes = { $count ->
        [one] { $count } minute
       *[other] { $count } minutes
    }
common-times = { $count ->
        [one] { $count } time
       *[other] { $count } times
    }
common-children = { $count ->
        [one] { $count } child
       *[other] { $count } children
    }
common-homes = { $count ->
        [one] { $count } home
       *[other] { $count } homes
    }
common-age-and = { $whole } and { $rest }
common-list-and = { $most } and { $last }
common-list-comma = { $most }, { $next }

# Units
common-kg = { $n } kg
common-g = { $n } g
common-cm = { $n } cm
common-mm = { $n } mm
common-percent = { $n } %

# Dates
date-day = { $day } { $month }
date-full = { $day } { $month } { $year }
date-weekday = { $weekday } { $day } { $month }
date-short = { $day } { $month }
date-month-year = { $month } { $year }
date-time = { $date }, { $hour }:{ $minute }
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
month-short-1 = Jan
month-short-2 = Feb
month-short-3 = Mar
month-short-4 = Apr
month-short-5 = May
month-short-6 = Jun
month-short-7 = Jul
month-short-8 = Aug
month-short-9 = Sep
month-short-10 = Oct
month-short-11 = Nov
month-short-12 = Dec
weekday-1 = Monday
weekday-2 = Tuesday
weekday-3 = Wednesday
weekday-4 = Thursday
weekday-5 = Friday
weekday-6 = Saturday
weekday-7 = Sunday

# Error pages: what happened, and a way out
trouble-not-found-title = There is nothing at this address
trouble-not-found = The link may be old, or the child may be with another worker now.
trouble-not-allowed-title = This page is not for your role
trouble-not-allowed = Somebody else in the programme works with it. Ask your supervisor if you need it.
trouble-old-page-title = Not saved yet: this page was opened before your last sign-in
trouble-old-page = All you wrote is still here. Look that it is meant to be saved, then send it again.
trouble-send-again = Send it again
trouble-foreign-form-title = Nothing was saved
trouble-foreign-form = The form did not come from a page of Spoonround in this browser. Open the page again and fill it in there.
trouble-bad-form-title = The form could not be read
trouble-bad-form = Nothing was saved. Go back in the browser: what you wrote is still on that page. Open the page again if it stays so.
trouble-bad-address-title = This address has a part that cannot be read
trouble-bad-address = The part is “{ $part }”. A day is written like 2026-11-05 and may not lie in the future.
trouble-bad-address-month = The part is “{ $part }”. A month is written like 2026-10.
trouble-bad-address-part = The part is “{ $part }”. Go back and choose from the lists of the page.
trouble-too-large-title = Too much was sent at once
trouble-too-large = Nothing was saved. Go back in the browser, shorten the notes, and save again.
trouble-conflict-title = It was saved already, and differs
trouble-conflict = This form was sent before with other content. What was saved first is kept. Open it to see and correct it.
trouble-conflict-open = Open what was saved
trouble-busy-title = Too much at once, try again
trouble-busy = Go back in the browser in a few seconds and send it again: nothing is saved twice.
trouble-broken-title = Something broke on our side
trouble-broken = It may not have been saved. Go back in the browser and send it again: nothing is saved twice.
trouble-broken-reference = If it keeps happening, tell your supervisor this number:
trouble-go-home = Go to my first page
trouble-go-find = Find a child
