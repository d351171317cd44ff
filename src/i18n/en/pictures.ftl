# The reports in pictures, the sheet for the wall, and the pictures of a team.

pic-title = Pictures
pic-link = See this month and the year before in pictures
pic-under = { $place } · counts of visited children, not a survey · { $state }
pic-state-provisional = provisional until { $date }
pic-state-released = released on { $date }
pic-trend-heading = Twelve months: { $place }
pic-villages-heading = Each village, { $month }
pic-villages-lede = In the order of their codes, all on the same scales. Do not compare villages with different coverage.
pic-wall-link = A sheet for the wall

# Measures
pic-visits = Visits done, of those due
pic-overdue = Follow-ups late at the end of the month
pic-underweight = Low weight for age (below −2)
pic-diversity = Five or more food groups, 6 to 23 months
pic-short-visits = Visits done
pic-short-overdue = Late follow-ups
pic-short-underweight = Low weight for age
pic-short-diversity = Five or more food groups
pic-by-class = Follow-ups late at the end of the month, by urgency
pic-of-class = { $what }: { $class }
pic-caption = { $what }, { $place }
pic-month-short = { $month } { $year }
pic-n-of-den = { $n } of { $den }
pic-share-of = { $share } · { $of }
pic-range = { $low }–{ $high }

# How to read them
pic-key-visits = Outline: due. Solid: done. Time runs from left to right.
pic-key-overdue = Solid: open and past their day when the month ended. Time runs from left to right.
pic-key-class = Solid: open and past their day when the month ended. All on one scale; time runs from left to right.
pic-key-share = Dot: the share of the children seen. Bar: where the share could truly lie (95 %); the fewer children, the longer. Time runs from left to right.
pic-key-card = Outline: due. Solid: done, or late. Dot: the share; thick bar: where it could truly lie (95 %).

# What they say
pic-found-visits = { $when }: { $n } of { $den } visits done.
pic-found-overdue = { $when }: { $n } late, of { $den } open.
pic-found-underweight = { $when }: { $share }, { $n } of { $den } children weighed; it could truly lie between { $low } and { $high } %.
pic-found-diversity = { $when }: { $share }, { $n } of { $den } children asked; it could truly lie between { $low } and { $high } %.
pic-found-private = { $when }: kept private.
pic-found-few = { $when }: { $n } of { $den } children, too few for a share.
pic-found-nobody = { $when }: nobody was counted.
pic-months-private = { $count ->
    [one] One month is kept private.
   *[other] { $count } months are kept private.
}
pic-months-few = { $count ->
    [one] One month had too few children.
   *[other] { $count } months had too few children.
}
pic-months-nobody = { $count ->
    [one] In one month nobody was counted.
   *[other] In { $count } months nobody was counted.
}
pic-months-not-counted = { $count ->
    [one] One month is not counted yet.
   *[other] { $count } months are not counted yet.
}
pic-months-before-start = { $count ->
    [one] One month lies before the programme.
   *[other] { $count } months lie before the programme.
}
pic-months-not-published = { $count ->
    [one] In one month this place is not published.
   *[other] In { $count } months this place is not published.
}
pic-count-them = Open the report of a month: it is counted then and stays in these pictures.

# Words in a gap
pic-gap-private = kept private
pic-gap-few = too few
pic-gap-nobody = nobody
pic-gap-not-counted = not counted
pic-gap-before-start = before start
pic-gap-not-published = not published

# Numbers
pic-numbers = The numbers of this picture
pic-file = As a CSV file: { $what }
pic-col-month = Month
pic-col-what = What
pic-col-n = How many
pic-col-den = Of
pic-col-between = 95 % between
pic-col-n-visits = Done
pic-col-den-visits = Due
pic-col-n-overdue = Late
pic-col-den-overdue = Open
pic-col-n-underweight = Low
pic-col-den-underweight = Weighed
pic-col-n-diversity = Five or more
pic-col-den-diversity = Asked

# For the wall
pic-wall-how = Print this page: it fits one sheet of A4, black on white.
pic-wall-visits = of the visits due this month were done
pic-wall-overdue = late at the end of the month, of { $den } open
pic-wall-share = { $n } of { $den } children seen. It could truly lie between { $low } and { $high } %.
pic-wall-few = { $n } of { $den } children: too few for a share
pic-wall-private = so that no child can be recognised
pic-wall-nothing = nothing to show for this month
pic-wall-key = Outline: due. Solid: done, or late. Dot: share; bar: where it could truly lie (95 %). Hatched: kept private, not nought.

# A supervisor's team
pic-team-link = This team in pictures: visits, late follow-ups, weight, food groups
pic-team-inside = Internal, not for sharing.
pic-team-support = For support, not ranking: small numbers swing, and one hard village says nothing about a worker. Files are noted when they are downloaded.
pic-team-sieve = Choose a time
pic-team-period = Month or quarter
pic-team-who = Children who are now in your team. Visits belong to the worker of their day, follow-ups to the one at their opening, children to the one who saw them last. The order is that of names.
pic-team-all = All together
pic-team-each = Each worker
pic-team-nobody = Nobody of this team visited or had a visit due in this time.
pic-team-title = Team in pictures
