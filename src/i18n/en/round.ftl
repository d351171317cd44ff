# The round of a day, the same on paper, and finding a child.


# The heading is the answer
round-title = Round
round-title-of = { $day } · { $name }
round-heading = { $left } { $first }
round-left = { $count ->
        [one] { $count } home left.
       *[other] { $count } homes left.
    }
round-left-over = More than { $count } homes left.
round-left-further = { $count ->
        [one] { $count } home more.
       *[other] { $count } homes more.
    }
round-begin = { $count ->
        [one] { $names } first.
       *[other] { $names } first.
    }
round-begin-more = { $names } and { $count } others first.
round-none = No homes are due today
round-no-more = No more homes
round-all-done = All homes of the day are done
round-next = The next one is { $name }, from { $day }.
round-find = Find a child
round-add = Add a child
round-anyway = A family asked for you? Find the child and start a visit: you need no due date.
round-rule = Suggested by rules, not diagnoses.
round-more = Show more homes
round-print = Print this round
round-later = { $count ->
        [one] Later: { $count } home, due in more than a week
       *[other] Later: { $count } homes, due in more than a week
    }

# A home
round-dot = { $left } · { $right }
round-late = { $count ->
        [one] { $count } day late
       *[other] { $count } days late
    }
round-due-today = due today
round-due-tomorrow = due tomorrow
round-due-by = by { $day }
round-until = until { $day }
round-today = today
round-tomorrow = tomorrow
round-date = { $day }
round-did-they-reach = Did they reach the clinic?
round-and-more = { $count ->
        [one] And { $count } more to follow up.
       *[other] And { $count } more to follow up.
    }
round-visit-too = Visit due too: { $when }.
round-visit-of = Visit at { $age }.
round-last-seen = Last seen on { $day }.
round-never-seen = Not seen since registration.
round-call = Call the family of { $name }

# A home that was seen
round-seen-no-concern = Seen. No concern in what you checked.
round-seen-nothing-checked = Seen. Nothing was measured or checked.
round-seen-follow-up = Seen. { $why } { $class }, { $due }.
round-seen-not-checked = { $found } Not checked: { $list }.
round-check-weight = weight
round-check-length = length
round-check-arm = arm
round-check-feet = feet
round-check-signs = danger signs

# On paper
sheet-title = Round sheet
sheet-label = Round sheet
sheet-how = To print: use your browser’s menu. A4, sideways.
sheet-lede = { $count ->
        [one] { $count } home.
       *[other] { $count } homes.
    } This sheet names children: keep it with you.
sheet-groups = Food groups: 1 breast milk, 2 grains and roots, 3 beans and nuts, 4 milk, yoghurt, cheese, 5 fish and meat, 6 egg, 7 orange fruit and dark leaves, 8 other fruit and vegetables.
sheet-home = Home
sheet-kg = kg
sheet-cm = cm
sheet-arm = Arm, mm
sheet-feet = Both feet swollen
sheet-breast = Breast milk
sheet-meals = Meals
sheet-food-groups = Food groups
sheet-texture = Texture
sheet-new-food = New food: took, refused, reaction
sheet-signs = Signs, letters below
sheet-yes-no = Y N
sheet-not-done = not done
sheet-none = none
sheet-arm-limit = under { $mm }?
sheet-textures = watery, smooth, mashed, chopped, family
sheet-besides-milk = Anything besides breast milk?
sheet-refer-now = Refer now, do not wait:
sheet-sign-feed = cannot drink or breastfeed
sheet-sign-vomits = vomits everything
sheet-sign-fits = fits
sheet-sign-sleepy = very sleepy, hard to wake, unconscious
sheet-sign-breath = trouble breathing, fast breathing, chest drawn in
sheet-sign-hot-cold = hot (37.5 °C or more) or cold (under 35.5 °C)
sheet-sign-blood = blood in stool (refer today)
sheet-arm-key = Arm under { $mm } mm from { $months } months, under { $young } mm from { $weeks } weeks to { $months } months, or both feet swollen: refer today.
sheet-urgency-key = The shapes: burst { $now }, triangle { $today }, diamond within 2 days, square within 7, ring within 14, half bowl next visit, house a visit.

# Finding a child
find-title = Find a child
find-label = Name or code
find-hint = A part of the name is enough. The code stands on the card: eight signs, with or without the hyphen.
find-left-too = Also children who left
find-do = Find
find-all = { $count ->
        [one] { $count } child of yours
       *[other] { $count } children of yours
    }
find-all-over = Your children by name
find-found = { $count ->
        [one] { $count } child for “{ $q }”
       *[other] { $count } children for “{ $q }”
    }
find-found-over = More than { $count } children for “{ $q }”
find-further = More children for “{ $q }”
find-none = No child for “{ $q }”
find-none-at-all = No children yet
find-none-hint = Try a shorter part of the name. The child may be with another worker, or not registered yet.
find-add = Add a child
find-code-slip = This code has a slip
find-code-slip-hint = One sign is wrong, or two are swapped. Look at the card again, or search by name.
find-code-sign-hint = A code never has 0, O, 1, I or L in it. Look at the card again, or search by name.
find-more = Show more children
find-child = { $sex }, { $age }
find-mother = with { $name }
