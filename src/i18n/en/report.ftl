# Monthly reports of the manager.

report-title = Month
report-heading = { $month }
report-heading-done = { $month }: { $done } of { $due } visits done
report-under = { $place } · counts of visited children, not a survey
report-sieve = Time and area
report-area = Area
report-all-areas = All villages
report-no-area = { $area } does not stand in the report of { $period }: nothing was counted there, or only the whole programme is published. Choose all villages or another time.
report-few-areas = With fewer than three villages only the whole programme is shown: one village would come out of the total.
report-village = Village
report-all = All
report-percent = %
report-interval = Could lie

# What is private
report-private = s
report-few = too few
report-could-lie = Could lie: the true share lies between these two, in percent, with a chance of 95 in 100. The fewer children, the wider.
report-kept = “s”: kept private, so that no child can be recognised. The figure is smaller than { $threshold }, or one that small could be worked out from it; which of the two is not said. “too few”: no percentage of so few children. The totals count everyone.

# Visits
report-visits = Visits due and done
report-due = Due
report-done = Done
report-on-time = On time
report-skipped = Passed over
report-not-done = Not done
report-coverage = % done

# Growth
report-low-weight = Low weight for age (below −2)
report-column = { $who }: { $what }
report-girls = Girls
report-boys = Boys
report-both = All
report-low = low
report-weighed = weighed
report-growth = Growth of the children seen
report-children-with = Children with
report-children = Children
report-of = Of
report-waz-low = Low weight for age (below −2)
report-waz-very-low = Very low weight for age (below −3)
report-wlz-low = Thin for length (below −2)
report-wlz-very-low = Very thin for length (below −3)
report-laz-low = Short for age (below −2)
report-wlz-high = Heavy for length (above +2)
report-muac-low = Arm below 115 mm, from 6 months
report-muac-middle = Arm 115 to 124 mm, from 6 months
report-oedema = Swelling of both feet
report-sam = Any sign of severe wasting, of those seen from 6 months
report-mam = Any sign of moderate wasting, of those seen from 6 months
report-u6 = Any sign of risk, of those seen under 6 months
report-slow = Slow gain, no gain or loss of weight

# Enrolment
report-enrolment = Children in the programme
report-start = At the start
report-joined = Joined
report-left = Left
report-moved-in = Moved in
report-moved-out = Moved out
report-end = At the end
report-reasons = Why children left, and severe reactions
report-reason = Reason
report-reason-transferred-out = To another programme
report-reason-moved = Moved away
report-reason-refused = Family does not want visits
report-reason-withdrawn = Consent taken back
report-reason-aged-out = Reached 24 months
report-reason-died = Died
report-reason-severe-reactions = Severe food reactions (opened in this time)

# Feeding
report-feeding = Feeding, the day before the visit
report-children-who = Children who had
report-months = Months
report-yes = Yes
report-missing = No answer
report-ind-evbf = Ever breast milk (registered in this time)
report-ind-eibf = The breast within an hour of birth (registered in this time)
report-ind-ebf = Breast milk only
report-ind-cbf = Still breast milk
report-ind-isssf = Any solid food
report-ind-mdd = Five or more food groups
report-ind-mmf = Enough meals
report-ind-mmff = Enough milk, not breastfed
report-ind-mad = Enough groups, meals and milk
report-ind-eff = Egg, fish or meat
report-ind-zvf = No fruit, no vegetable
report-ind-swb = A sweet drink
report-ind-ufc = A food of low value
report-ind-bof = A bottle with a teat
report-ind-texture-on-stage = A texture at their stage
report-ind-lumps-by-9m = Soft lumps, at 9 months
report-ind-lumps-by-10m = Soft lumps, at 10 months

# Follow-ups
report-follow-ups = Follow-ups opened
report-about = About
report-rule-class = { $rule } ({ $class })
report-opened = Opened
report-met-on-time = Looked at on time
report-met-late = Looked at late
report-open-late = Open and late
report-median = Days until looked at (middle)
report-stock = Follow-ups open at the end, by days late
report-stock-open = Open
report-stock-late-0 = Not late
report-stock-late-1-7 = 1–7
report-stock-late-8-14 = 8–14
report-stock-late-15-30 = 15–30
report-stock-late-over-30 = Over 30
report-referrals = Referrals of the same day
report-referral-made = Made
report-referral-reached-same-day = Reached care that day
report-referral-outcome-known-7d = Outcome known in 7 days

# Reactions
report-reactions = Reactions to foods
report-reaction-after = After
report-reaction-kind = { $food }: { $level }
report-reaction-of = { $group } ({ $allergen })
report-reaction-no-group = Other food
report-reaction-all = All but severe
report-reaction-severe = Severe, after any food
report-reaction-told = Told
report-reaction-referred = Refer the same day
report-reaction-known = Outcome known

# Files
report-files = { $month } as CSV files
report-files-what = Each file is a table with all areas. Private figures are empty; the last column says which. Downloads are noted.
report-file-enrolment = who is in the programme, by area, sex and age
report-file-programme = reasons for leaving, deaths and severe reactions, whole programme
report-file-visits = visits due and done, by area and slot of the schedule
report-file-growth = weight, length and arm, by area, sex and age
report-file-feeding = feeding indicators, by area, sex and age
report-file-followups = follow-ups opened, by area and rule
report-file-followups-stock = follow-ups open at the end, by area and urgency
report-file-referrals = referrals of the same day, by area
report-file-reactions = reactions to foods, by area, group of food, allergen and how serious

# Cautions
report-cautions = Before you use these figures
report-caution-survey = Counts of visited children. Not a survey; do not compare areas with different coverage.
report-caution-rounded = Rounded, and small counts kept private.
report-caution-late = Late visits may change provisional figures; after release they are told in revisions, never silently.
report-caution-age = Age uses the date of the visit; the growth of babies born early uses corrected age.
report-caution-missing = A low figure can mean missing questions: see “No answer”, the column missing_n in the files.
report-caution-definitions = Each child counts once, by the last visit of the month, quarter or year. An answer that this visit lacks is taken from the latest one that has it.
