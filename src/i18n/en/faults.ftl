# What may be wrong with something typed. Said beside the field and in the summary: what to do, not whose mistake it is.

fault-missing = Write or choose an answer.
fault-not-a-number = Write a number, for example 7.4 or 2.
fault-too-many-decimals = { $most ->
        [0] Write a whole number, without decimals.
        [one] Write at most { $most } digit after the comma or point.
       *[other] Write at most { $most } digits after the comma or point.
    }
fault-outside = It must lie between { $least } and { $most } { $unit }. Look at the unit and the digits.
fault-outside-count = It must lie between { $least } and { $most }. Look at the digits.
fault-not-a-date = There is no such day. Write day, month and year, for example 5 11 2026.
fault-in-future = This day has not come yet.
fault-before-birth = This day is before the birth. Look at both dates.
fault-after-visit = This day is after the visit. Look at both dates.
fault-too-old = Older than { $months ->
        [one] { $months } month
       *[other] { $months } months
    }: the programme takes in younger children. Look at the birth date.
fault-unknown-choice = Choose one of the answers shown.
fault-unknown-food = “{ $typed }” is not a food of this programme. Choose one from the list; its last line is for any other food.
fault-unknown-food-like = “{ $typed }” is not a food of this programme. If you mean “{ $like }”, choose that from the list.
fault-too-long = Too long: write at most { $most } characters.
fault-too-short = Too short: write at least { $least } characters.
fault-no-consent = Without the family’s consent the child cannot be registered. Ask, then tick.
fault-not-the-same = The two are not the same. Write the new password twice.
fault-wrong-sign-in = The name or the password does not fit. Look at both and try again.
fault-wrong-password = The present password does not fit.
fault-easy-password = Too easy to guess. Take several words that only you would put together.
fault-taken = Somebody has this already. Choose another.
fault-unknown-code = No such code in this programme. Look at the letters and digits.
fault-needs-outcome = Write first what became of it at the clinic: an urgent follow-up is not closed without an outcome.
fault-plain-letters = Use only small letters a to z and digits, with a hyphen or dot between them if you like.
fault-before-start = This day is before the first day. Look at both dates.
fault-over = This day is over already. Take today or a later day.
fault-last-administrator = Nobody else could manage people any more. Make another administrator first.
fault-unknown-time-zone = No time zone has this name. Choose one of the list, in the form Continent/City, or UTC.
fault-no-change = This is how it is now. Choose something else, or go back.
fault-no-child = Tick at least one child.
fault-already-left = It was recorded before that this child left. Open the child’s page to see it.
fault-supervisor-only = Tell your supervisor, who records this with the family.
fault-has-left = The last day of { $name } was { $last }. Choose a colleague who still works in the programme.
fault-leaves-before = The last day of { $name } is { $last }, before these days are over. Choose a colleague who is here on all of them, or end that day and find somebody for the rest.
fault-is-away = { $name } is away from { $from } to { $to }. Choose a colleague who is here on all of these days, or other days.
fault-stood-in = { $name } stands in from { $from } to { $to } already. Choose days outside these, or end that first.
