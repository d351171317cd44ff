# The page of a visit.

visit-title = Visit: { $name }
visit-title-correct = Correct a visit: { $name }
visit-heading = Visit:
visit-heading-correct = Correct a visit:
visit-lede = { $who }. Ask first: “May I weigh { $sex ->
        [F] her
       *[M] him
    } and ask about food?”
visit-correct-lede = The visit of { $date }. What was saved before is kept, and the rules are looked at again from that day.
visit-back = the child’s page
visit-emergency = Not breathing easily, blue, or choking now: open this at once
visit-to-signs = Cannot drink, fits, hard to wake? Tick the signs first
visit-danger-saved = What you ticked is saved. Act on it now; mend the rest below when there is time.
visit-unusual-heading = Not saved yet: something is unusual
visit-unusual-text = It may be right. Measure again, then type what you find. Saving once more as it stands saves it.
visit-unusual-link = Go to it
visit-reason = Why is it corrected?
visit-reason-hint = For example: two digits were swapped.
visit-reason-unfinished = The rest of the form, written after the danger was saved.
visit-save = Save and see what to do
visit-save-correct = Save the correction

# When and where
visit-when-where = { $day }, { $place }
visit-at-home = at home
visit-at-clinic = at the clinic
visit-by-phone = by phone
visit-day = Day of the visit
visit-on = Which day
visit-contact = Place

# What was open
visit-open = Since last time
visit-open-since = open since { $date }
visit-open-more = { $count ->
        [one] { $count } other follow-up is open
       *[other] { $count } other follow-ups are open
    }
visit-outcome = What became of it?
visit-referred = Referred at this visit
visit-referrals = Sent to the clinic at this visit for

# Weigh and measure
visit-measure = Weigh and measure
visit-weight = Weight
visit-length = Length, lying
visit-length-standing = Height, standing
visit-length-hint = Leave empty if not measured.
visit-arm = Upper arm
visit-arm-hint = In mm; cm is understood too.
visit-head = Head, round the widest part
visit-position = How was the length taken?
visit-as-usual = As usual at this age
visit-feet = Both feet swollen?
visit-feet-hint = Press with your thumb for 3 seconds. Does a dent stay?
visit-measure-more = Head, or length taken another way
visit-kg = kg
visit-cm = cm
visit-mm = mm
visit-days = days
visit-times = times
visit-min = minutes
visit-both-units = { $mm } ({ $cm })
visit-odd-heading = { $value }: look again
visit-odd-before = Last time it was { $value } on { $date }.
visit-odd-outside = This is far from what children of this age, sex and length measure.
visit-odd-jump = This is a great change for the time between.
visit-odd-less = It is less than last time.
visit-odd-changed = An arm changes slowly.
visit-odd-weigh = Weigh again, then type. Look at the digits, the unit, the scale, and whether it is the same child.
visit-odd-measure = Measure again, then type. Look at the digits, the unit, and whether it is the same child.
visit-odd-tick-weight = I weighed again: it is { $value }
visit-odd-tick = I measured again: it is { $value }

# Yesterday
visit-yesterday = Yesterday, day and night
visit-breastfed = Breastfed?
visit-besides = Anything besides breast milk?
visit-besides-hint = Water, formula, animal milk, tea, porridge. Medicine, drops and rehydration salts do not count.
visit-breast-only = Nothing but breast milk?
visit-other-milk = Any other milk, or yoghurt to drink?
visit-other-milk-hint = Formula, animal milk, yoghurt.
visit-milk-prepared = Look how it is prepared: clean boiled water, the full measure of powder, never thinned, an open cup.
visit-formula-times = Formula
visit-animal-milk-times = Animal milk to drink
visit-drink-yogurt-times = Yoghurt to drink
visit-spoon-yogurt-times = Yoghurt from a spoon
visit-other-drink = Water, juice, tea or another drink?
visit-sweet-drink = A sweet drink?
visit-solids-yesterday = Any porridge or food?
visit-started = Since when solid food?
visit-started-hint = Leave empty if it has not begun or the day is not known.
visit-started-known = Told before: { $date }. Write only what is new.
visit-groups = What did the child eat or drink?
visit-groups-hint = Tick all. A taste counts; a pinch for flavour does not.
visit-recipes-held = Holds a food on hold: { $foods }
visit-recipes-rest = Anything else yesterday?
visit-recipes-rest-text = Not saved yet. What the recipe holds is ticked now. Tick whatever else the child ate or drank, then save.
visit-groups-none = If nothing is ticked
visit-recipes = Which recipes of the programme?
visit-recipes-hint = What is in them is ticked for you when you save: food groups, foods, added iron. If you take a recipe out again later, look at those ticks too.
visit-recipes-named = Was it made by a recipe?
visit-group-grains-roots = millet, cassava
visit-group-pulses-nuts = beans, groundnut paste
visit-group-flesh = small dried fish
visit-group-vit-a = pumpkin, mango, leaves
visit-group-other-fv = banana, tomato
visit-meals = Meals and snacks
visit-meals-hint = Times with solid or soft food. A bite does not count.
visit-texture = Usual food was…
visit-texture-last = Last time: { $texture }
visit-texture-best = Ever managed a step further, without trouble?
visit-also = Any of these?
visit-also-hint = Tick yes. Ask in the family’s own words.
visit-also-all = And the ones not ticked?
visit-also-asked = Asked: no
visit-also-not-asked = Not all asked
visit-also-iron-source = Iron drops or powder
visit-also-sweet-drink = Sweet drink
visit-also-unhealthy-food = Sweets or crisps
visit-also-bottle = Bottle with teat
visit-also-tea-coffee = Tea or coffee
visit-also-salt = Salt added
visit-also-sugar = Sugar added
visit-also-honey = Honey, since last time
visit-also-breastfeeding-trouble = Trouble breastfeeding
visit-also-ill = Ill now
visit-drinks-more = More about drinks and food
visit-low-value = Tea, coffee, salt or sugar?
visit-low-value-none = If nothing is ticked
visit-readiness = Ready for solid food?
visit-readiness-none = If nothing is ticked

# New foods
visit-new-since = New since { $date }
visit-new-first = New foods
visit-new-food = Any new food?
visit-no-new-food = No new food
visit-new-hint = One new food at a time, 2–3 days each.
visit-food-on-hold = { $food }: on hold. Given again?
visit-lifted = Who may allow it again: a health worker or your supervisor, by name
visit-lifted-yes = It is allowed again; the name stands in the note below
visit-other-food = Another food
visit-other-more = More foods
visit-taken = How was it taken?
visit-not-given = Not given
visit-given = Given, not asked how
visit-reaction-signs = What happened?
visit-reaction-none = If nothing is ticked
visit-reaction-emergency = Happening now? Open the emergency page
visit-minutes = First sign after eating
visit-unsafe = Given in a form that can choke?
visit-unsafe-hint = Whole nuts, hard raw pieces, bones, whole small round fruit.
visit-offers = Times offered
visit-food-more = How often, in which form

# Signs
visit-signs = Signs today
visit-danger = Tick what you see or hear
visit-danger-hint = If you are unsure, treat it as serious. Fast breathing at this age: { $breaths } a minute or more, counted twice.
visit-danger-none = If nothing is ticked
visit-swallow = When feeding
visit-appetite = Days with most food refused
visit-appetite-hint = 0 if the child eats as usual.
visit-plans = Has a clinic made a plan for this?
visit-plans-hint = Tick what the plan covers.
visit-plans-none = If nothing is ticked
visit-no-plan = Asked: no plan
visit-plan-solids-early = Solid food before 6 months
visit-plan-milk-animal-early = Animal milk before 6 months
visit-plan-birth-low = Born small or early
visit-plan-breastfeeding-stopped = Not breastfed
visit-more = More to ask
visit-note = Anything else?
visit-note-hint = For you and your supervisor. No need to write.
visit-answer = An answer

# When somebody else was first
visit-changed = Your answers are not saved yet: { $name } changed this visit after you opened it. Their reason: { $reason }
visit-changed-beside = Nothing you typed is lost. Where the visit now says something else, that stands beside your answer. What you save replaces it: look at each, then save again.
visit-changed-danger = The danger signs you ticked are saved. The rest is not saved yet: { $name } changed this visit after you opened it. Their reason: { $reason }
visit-changed-standing = Somebody else wrote this danger down. It is ticked below and stays unless you take it out. Take it out only if it was wrong.
visit-changed-reaction = { $food }: reaction
visit-changed-list = { $count ->
        [one] One answer differs:
       *[other] { $count } answers differ:
    }
visit-gone = Not saved: somebody took this visit back or moved it to another child after you opened it. Nothing you typed is lost. If it was a visit to this child all the same, save it as a new one; otherwise leave this page.
stands-now = It now says:
stands-nothing = no answer
