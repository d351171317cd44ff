# What to do now, after saving.
# In danger. From memory of public first-aid guidance: the programme's clinician must approve every line.

emergency-title = Emergency: { $name }
emergency-heading = may be in danger. Stay with { $sex ->
        [F] her
       *[M] him
    } and call.
emergency-source = The acts on this page are from memory of public first-aid guidance. The programme’s clinician must approve the text. What you were trained to do comes first.
emergency-which = What do you see?
emergency-write = Write what happened
emergency-child-page = the child’s page
emergency-choking = Choking: food or a thing in the throat, or blue
emergency-fits = Fits, or cannot be woken
emergency-reaction = Reaction to a food: hard breathing, swelling, hives with vomiting, pale and floppy
emergency-other = Other danger: hard breathing, cannot drink, vomits everything, very sleepy
emergency-after-food = reaction after { $food }
emergency-signs-after-food = { $signs }, after { $food }
emergency-say = Say: “Baby, { $age }. { $seen }.”

emergency-reaction-1-do = Is adrenaline prescribed for { $sex ->
        [F] her
       *[M] him
    }? Help the family give it at once.
emergency-reaction-1-how = Somebody else calls meanwhile. Stop the food.
emergency-reaction-2-do = Call.
emergency-reaction-2-how = No answer? Find transport now.
emergency-reaction-3-do = Lay { $sex ->
        [F] her flat, or hold her
       *[M] him flat, or hold him
    } lying in your arms.
emergency-reaction-3-how = Breathing is hard: half sitting. Vomiting or drowsy: on the side. Never upright on a shoulder. Not breathing: infant resuscitation as you were trained.
emergency-reaction-4-do = Nothing by mouth
emergency-reaction-4-how = until { $sex ->
        [F] she
       *[M] he
    } breathes easily and is wide awake; then breastfeed.
emergency-reaction-5-do = Go, even if { $sex ->
        [F] she
       *[M] he
    } recovers.
emergency-reaction-5-how = Go with them, or hand over yourself. It can come back within hours.

emergency-fits-1-do = Lay { $sex ->
        [F] her
       *[M] him
    } on the side, on something soft.
emergency-fits-1-how = Nothing in the mouth. Do not hold the arms or legs. Look when it began.
emergency-fits-2-do = Call.
emergency-fits-2-how = No answer? Find transport now.
emergency-fits-3-do = Not breathing?
emergency-fits-3-how = Infant resuscitation as you were trained.
emergency-fits-4-do = Keep { $sex ->
        [F] her
       *[M] him
    } warm.
emergency-fits-4-how = Nothing by mouth until wide awake; then breastfeed.
emergency-fits-5-do = Go, even if { $sex ->
        [F] she
       *[M] he
    } wakes.
emergency-fits-5-how = Go with them, or hand over yourself.

emergency-choking-1-do = Can { $sex ->
        [F] she
       *[M] he
    } cry or cough? Let { $sex ->
        [F] her
       *[M] him
    } cough, and stay.
emergency-choking-1-how = Cannot cry or cough: go on here at once, and somebody else calls.
emergency-choking-2-do = Up to 5 back blows.
emergency-choking-2-how = { $age ->
        [baby] Face down along your forearm, head lower than the body. With the heel of your hand, between the shoulder blades.
       *[child] Lean forward, or lay across your lap. With the heel of your hand, between the shoulder blades.
    }
emergency-choking-3-do = { $age ->
        [baby] Then up to 5 chest thrusts.
       *[child] Then up to 5 abdominal thrusts.
    }
emergency-choking-3-how = { $age ->
        [baby] Face up, head low: two fingers on the breastbone, push down sharply. Never press the belly of a baby. Look in the mouth: take out only what you see, never sweep blindly. Begin again with back blows.
       *[child] From behind, a fist above the navel, pull inwards and upwards. Look in the mouth: take out only what you see, never sweep blindly. Begin again with back blows.
    }
emergency-choking-4-do = Goes limp or stops breathing?
emergency-choking-4-how = Infant resuscitation as you were trained, and call.
emergency-choking-5-do = Go, even if it came out.
emergency-choking-5-how = A health worker must look at every baby who went blue or was helped so.

emergency-other-1-do = Call.
emergency-other-1-how = No answer? Find transport now.
emergency-other-2-do = Lay { $sex ->
        [F] her
       *[M] him
    } as breathing is easiest.
emergency-other-2-how = Breathing is hard: half sitting. Vomiting or drowsy: on the side. Not breathing: infant resuscitation as you were trained.
emergency-other-3-do = Keep { $sex ->
        [F] her
       *[M] him
    } warm, skin to skin if the mother can.
emergency-other-3-how = Head covered, no hot bottle.
emergency-other-4-do = Breastfeed only if { $sex ->
        [F] she
       *[M] he
    } is wide awake and can swallow.
emergency-other-4-how = Else nothing by mouth.
emergency-other-5-do = Go with them, or hand over yourself.
emergency-other-5-how = Stay until they leave. Writing comes last.

# What to do now, straight after saving a visit.

result-title = What to do now: { $name }
result-title-today = Refer today: { $name }
result-saved = Saved, { $date }
result-feet-swollen = both feet swollen
result-told = A danger sign or a reaction
result-told-why = It was ticked, and part of it could not be read. Treat it as serious.
result-spoons-then-cup = { $spoons } Later: { $cups }
result-arm = arm { $value }
result-no-concern = No concern in what you checked: { $name }
result-nothing-checked = Nothing was measured or checked: { $name }
result-open-for = Still open for { $name }: { $open }
result-open-are = Still open: { $open }.
result-unchecked = Not checked: { $parts }.
unchecked-signs = danger signs
unchecked-feet = feet
unchecked-weight = weight
unchecked-length = length
unchecked-arm = upper arm
unchecked-milk = milk
unchecked-food = food
unchecked-swallowing = swallowing
result-gain = { $name } gained { $gain } since { $date }: say so, it is good to hear.
result-corrected = Born early: ages are corrected by { $weeks ->
        [one] { $weeks } week
       *[other] { $weeks } weeks
    }{ $days ->
        [0] {""}
        [one] {" "}and { $days } day
       *[other] {" "}and { $days } days
    }.
result-also = Also found
result-still-open = Still open from before
result-still-urgent = Still urgent from before
result-still-urgent-do = No health worker’s answer is written yet. Ask how it went, help them go today, and write the outcome.
result-still-urgent-told = { $outcome }, told on { $date }.
result-still-urgent-answered = Ask how it goes and do as the health worker said. It closes when a later visit shows that it is over.
result-closed = Closed today: { $names }.
result-due = Look again by { $date }.
result-why = Why
result-note = Referral note
result-child-page = The child’s page
result-correct = Correct this visit
result-write-rest = Write the rest, or correct
result-next-home = Next home
result-say = Say to the family
result-say-today = “{ $name } needs care that I cannot give at home. You have done well to have { $sex ->
        [F] her
       *[M] him
    } looked at. It is nobody’s fault. I will come to hear how it went.”
result-today-heading = Take { $name } to care today
result-today-signs-do = Look for danger signs again.
result-today-signs-how = Any of them: emergency, call { $number }
result-local-number = your local emergency number
result-today-travel-do = Agree how they travel, and who goes.
result-today-travel-how = Ask what could stop them, and help with that.
result-today-feed-do = Go on breastfeeding { $sex ->
        [F] her
       *[M] him
    }.
result-today-feed-how = Offer what the child takes, little and often, on the way. Not a food that brought a reaction.
result-today-milk-do = Go on with the usual milk.
result-today-milk-how = From a cup, never thinned. Other food little and often on the way; not one that brought a reaction.
result-today-note-do = Give the referral note.
result-today-note-how = Read it to them. Agree on the day you come back.
result-later-advice = Other advice from this visit is on the child’s page, for later.
result-next-for = Next for { $name }, at { $age }
result-texture = Offer it { $texture }.
result-meals = { $from ->
        [0] Up to { $to } meals a day,
       *[other] { $from } to { $to } meals a day,
    }
result-and-breast-milk = and breast milk.
result-and-milk = and milk, prepared safely, from a cup.
result-snack = A snack if wanted.
result-enough = The child decides when it is enough.
result-spoons = { $from } to { $to } tablespoons a meal.
result-cup = { $share } cup a meal.
result-cup-range = { $from } to { $to } cup a meal.
result-milk-only = Breast milk only, day and night.
result-milk-only-other = Milk only, from a cup, prepared safely and never thinned.
result-milk-only-why = No water, tea or food yet.
result-new-food = One new food: { $food }.
result-new-food-how = Offer it 2–3 days before the next new one.
result-next-visit = Come back { $from } to { $to }.
result-sooner = Sooner if { $sex ->
        [F] she
       *[M] he
    } is ill or stops feeding.
result-sources-differ = Sources differ on when to start some foods: your local protocol decides.
note-heading = Referral note
note-child = Child
note-code = Code, place
note-date = Seen on
note-measured = Measured
note-seen = Signs
note-why = Why
note-from = From
note-caution = Suggested by written rules, not a diagnosis. Measured and asked at home.
