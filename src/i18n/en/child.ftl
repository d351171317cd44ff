# A child's page, and all visits of a child.


# Who
child-who = { $sex }, { $age }
child-with = with { $name }
child-known-as = called { $name }
child-worker = worker: { $name }
child-day-estimated = day of birth estimated
child-emergency = { $name }: { $why }
child-seen-on = Seen on { $day }.
child-why-and-what = Why, and what to do
child-start-visit = Start a visit
child-call = Call { $name }
child-corrected = { $weeks ->
        [one] Born early. Ages corrected by { $weeks } week. Ask the clinic before starting solids.
       *[other] Born early. Ages corrected by { $weeks } weeks. Ask the clinic before starting solids.
    }
child-born-early = Born early. Ages are no longer corrected.
child-iron-drops = Born small or early: ask the clinic about iron drops.
child-place = Place in the programme
child-move = Move to another worker or village
child-leave = The child leaves the programme

# Growth
child-growth = Growth
child-chart-title = { $name }: { $index }
child-before-due-date = Before the due date growth cannot be judged here: weekly weighing at the clinic.
child-no-weight = No weight yet.
child-first-weight = One weight so far: { $weight }.
child-gained = { $count ->
        [one] Gained { $weight } in { $count } day.
       *[other] Gained { $weight } in { $count } days.
    }
child-lost = { $count ->
        [one] Lost { $weight } in { $count } day.
       *[other] Lost { $weight } in { $count } days.
    }
child-same-weight = { $count ->
        [one] The same weight as { $count } day ago.
       *[other] The same weight as { $count } days ago.
    }
child-finding = { $change } { $band }
child-band = Now between the lines { $low } and { $high }.
child-band-on = Now on the line { $line }.
child-band-below = Now below the line −3.
child-band-above = Now above the line +3.
child-length-chart = Length as a chart
child-numbers = All numbers as a table
child-numbers-caption = Measured so far; z by the WHO standards 2006
child-kg = kg
child-cm = cm
child-arm-mm = Arm, mm
child-waz = Weight for age, z
child-laz = Length for age, z
child-wlz = Weight for length, z
child-remark = Remark
child-at-birth = at birth
child-suspect = unlikely: weigh and measure again
child-confirmed = measured again and kept

# Food
child-stage = Food stage: { $stage }
child-usual = Usual food now: { $texture }.
child-milk-only = Milk is all that is needed. No water, tea or food before 6 months.
child-texture = Hoped for: { $texture } ({ $test }).
child-texture-to = { $from }, on the way to { $to }
child-meals = { $count ->
        [one] { $range } meal a day.
       *[other] { $range } meals a day.
    }
child-meals-not-breastfed = { $count ->
        [one] { $range } meal a day, milk feeds counted.
       *[other] { $range } meals a day, milk feeds counted.
    }
child-snacks = { $count ->
        [one] { $range } snack if wanted.
       *[other] { $range } snacks if wanted.
    }
child-amount = { $amount } at a meal. Follow the child’s hunger.
child-amount-rising = { $from } at a meal, rising to { $to }. Follow the child’s hunger.
child-cups = { $range } cup of 250 ml
child-spoons = { $count ->
        [one] { $range } tablespoon
       *[other] { $range } tablespoons
    }
child-next-stage = From { $day }: { $stage }.
child-foods = Foods
child-not-tried = { $count ->
        [one] { $count } food not tried yet
       *[other] { $count } foods not tried yet
    }
child-food-trying = Trying, taken { $taken } of { $of }
child-food-refused = Refused, again from { $day }
child-food-offer-again = Refused, time to offer it again
child-food-rest = Refused often: that is fine, offer others
child-food-hold = On hold since { $since }: { $worst }
child-food-cleared = Allowed again on { $day }
child-hold-mild = mild reaction
child-hold-spreading = spreading reaction
child-hold-severe = severe reaction
child-hold-rule = Nothing on hold is given again until a health worker says it is safe.

# Follow-ups
child-follow-ups = Follow-ups
child-none-open = Nothing is open to follow up. Believe what you see.
child-rule = Suggested by a rule, not a diagnosis.
child-check-by = Check by { $day }.
child-closed = { $count ->
        [one] { $count } closed
       *[other] { $count } closed
    }
child-closed-on = closed on { $day }: { $reason }
child-visit-open = Next visit: now, until { $last }.
child-visit-next = Next visit: { $first } to { $last }.

# Visits
child-visits = Visits
child-no-visits = No visits yet.
child-all-visits = { $count ->
        [one] { $count } visit, with what was corrected
       *[other] All { $count } visits, with what was corrected
    }
child-visits-of = { $count ->
        [one] { $name }: { $count } visit
       *[other] { $name }: { $count } visits
    }
child-nothing-measured = nothing measured
child-arm = arm { $mm }
child-corrected-visit = corrected
child-voided = taken back: it never happened
child-versions = { $count ->
        [one] { $count } earlier version
       *[other] { $count } earlier versions
    }
child-version-replaced = Corrected on { $day } by { $name }, because:
child-version-same = No answer was changed.
child-version-from-to = { $before } → { $after }
child-version-confirmed = Measured a second time
child-version-unsafe = in a form that can choke
child-version-lifted = allowed again
child-voided-answers = { $count ->
        [one] Its { $count } answer
       *[other] Its { $count } answers
    }
