# Why a follow-up is there: when it closes and what is still missing, its history, and the text to read to a clinician.

# The test of each rule, as it must be at a later visit
clears-danger = None of these danger signs, at a visit at which they are asked about.
clears-oedema-both-feet = Both feet looked at and not swollen.
clears-wasting = An arm of { $muac } or more, both feet looked at and not swollen, and weight for length { $wlz } or above if a length is taken.
clears-wasting-young = Arm { $muac } or more and weight for length { $wlz } or above; what made it fire must be measured again.
clears-weight-very-low = Weight for age { $limit } or above.
clears-weight-low = Weight for age { $limit } or above.
clears-weight-loss = A weight above { $weight }, from { $date } on.
clears-weight-static = { $days ->
        [none] A weight above that of an earlier visit long enough before.
        [one] More than 0 g gained since a weighing at least { $days } day before.
       *[other] More than 0 g gained since a weighing at least { $days } days before.
    }
clears-weight-slow-gain = { $days ->
        [none] At least the gain hoped for at that age, since an earlier visit.
        [one] At least the gain hoped for at that age, between weighings at least { $days } day apart.
       *[other] At least the gain hoped for at that age, between weighings at least { $days } days apart.
    }{ $floor ->
        [none] { "" }
       *[other] { " " }When it last held that was { $floor } in { $interval_days } days.
    }
clears-weight-drop = Weight gained since an earlier visit, and the weight line fallen by less than { $limit }.
clears-weight-drift = Weight for age above { $waz }.
clears-birth-weight-not-regained = A weight of { $birth_weight } or more.
clears-birth-low = A plan of the clinic is written down, or { $date } has come.
clears-length-low = Length for age { $limit } or above.
clears-weight-high = Weight for length { $limit } or below.
clears-solids-early = Asked, and no solid food given; or a plan of the clinic; or { $date } has come.
clears-liquids-early = Asked, and no other drink; or { $date } has come.
clears-milk-animal-early = Asked, and no animal milk; or a plan of the clinic; or { $date } has come.
clears-solids-late = Solid food begun.
clears-texture-behind = { $texture_expected ->
        [none] The texture of the age is taken.
       *[other] Takes { $texture_expected } or thicker.
    }
clears-texture-watery = The usual food stays on the spoon.
clears-meals-few = { $least ->
        [none] As many meals as the age needs.
       *[other] At least { $least } meals a day, or as many as the age then needs.
    }
clears-milk-few = Breastfed, or at least { $least } milk feeds a day.
clears-diversity-low = At least { $least } of 8 food groups the day before.
clears-iron-none = Meat, fish or another source of iron the day before.
clears-animal-food-none = Egg, fish, meat or a milk product the day before.
clears-veg-fruit-none = Fruit or vegetable the day before.
clears-drink-sweet = Asked, and no sweet drink.
clears-bottle-used = Asked, and no bottle.
clears-food-honey = Danger signs asked about and none of those that honey can cause, from { $date } on; or care at a clinic is written down.
clears-food-choking = Each such food given in a form known to be safe.
clears-food-low-value = Asked, and none of these.
clears-food-local-wait = { $date ->
        [none] The age of the local protocol has come.
       *[other] { $date } has come.
    }
clears-breastfeeding-stopped = Breastfed, or a plan of the clinic.
clears-breastfeeding-trouble = Asked, and no trouble.
clears-appetite-poor = Asked, and food refused for less than { $days } days.
clears-data-z-outside = What was unlikely is likely now, or was measured again and kept.
clears-data-weight-jump = A weight without such a jump, or measured again and kept.
clears-data-length-shrunk = A length that is not shorter, or measured again and kept.
clears-data-length-jump = A length without such a jump, or measured again and kept.
clears-data-same-again = A weight that differs, or measured again and kept.
clears-data-conflict = The answers agree.
clears-measure-missing = A weight.

# The way
close-way-test = It closes at the first visit on a later day at which this is so:
close-way-two-visits = { $days ->
        [one] It closes at the second of two visits, at least { $days } day apart, at which this is so:
       *[other] It closes at the second of two visits, at least { $days } days apart, at which this is so:
    }
close-way-care = It closes when somebody writes at a later visit that the child was seen, treated or admitted.
close-way-care-and-test = It closes when somebody has written that the child was seen, treated or admitted, and at a visit this is so:
close-way-test-or-care = It closes at the first visit on a later day at which this is so:
close-way-decision = It closes when somebody writes at a later visit what a health worker or supervisor decided.
close-way-correction = It closes only when the record is corrected.

# What is still missing for this child
close-missing = Still missing: { $what }
close-none-of-two = both of the two clear visits.
close-one-of-two = the second clear visit. The first was on { $first }; another counts from { $from } on.
close-a-visit = such a visit. Nobody has recorded one since { $date }.
close-care = word of what the clinic did. No outcome has been written since { $date }.
close-care-told = Word from the clinic is written. A visit without these signs is still missing.
close-decision = the decision. None has been written since { $date }.
close-newest-met = At the visit of { $date } it was so.
close-newest-not = At the visit of { $date } it was not so yet.
close-newest-lacking = At the visit of { $date } it could not be told. Not known from it: { $what }.
close-newest-untold = At the visit of { $date } it could not be told.

# History
why-happened-opened = Opened
why-happened-refreshed = Still so
why-happened-raised = More urgent
why-happened-kept = Kept
why-happened-outcome = Told
why-happened-closed = Closed
why-reason-rule = the rule held
why-reason-milder = alone it would have been { $class }; the more urgent stays
why-reason-missing = something it needs was not measured or asked
why-reason-not-now = the rule does not apply at this age or visit
why-reason-not-yet = not clear yet
why-reason-needs-outcome = only an outcome or a decision closes it
why-reason-off = the protocol has the rule switched off
why-reason-clear = clear, and more is needed
why-reason-covered = covered by: { $rule }
why-reason-treatment = in treatment for wasting
why-reason-replaced = { $rule } took over
why-record = Changes of the record
why-protocol-source = Source in the protocol
why-also-silenced = covered: of one chain, and { $rule } stands higher
why-also-muted = waits while this stands
why-also-treatment = silent while the child is in treatment

# To read to a clinician
aloud-link = Text to read on the phone
aloud-title = To read to a clinician: { $code }
aloud-heading = To read to a clinician
aloud-how = Read it slowly, line by line. The name, the family and the place are left out: say the name only when the clinician asks for it.
aloud-plain = The same as plain text
aloud-who = Child { $code }: { $sex }, age { $age }.
aloud-early = Born early. Corrected age { $age }.
aloud-not-corrected = The length of the pregnancy is not known. The age is not corrected.
aloud-found = What was found
aloud-seen = On { $date }, { $where }.
aloud-urgency = { $class }. To be checked by { $date }.
aloud-closed = Closed on { $date }: { $reason }.
aloud-measured = Last measurements
aloud-none-measured = Nothing was measured.
aloud-at = { $date }, age { $age }:
aloud-weight = weight { $value }
aloud-length = length { $value }
aloud-arm = upper arm { $value }
aloud-waz = weight for age { $value }
aloud-laz = length for age { $value }
aloud-wlz = weight for length { $value }
aloud-feet-swollen = both feet swollen
aloud-feet-fine = feet not swollen
aloud-suspect = { $measurement } unlikely, has to be taken again
aloud-signs = Danger signs
aloud-signs-none = Asked on { $date }: none.
aloud-signs-seen = Asked on { $date }: { $signs }.
aloud-signs-not-asked = Not asked.
aloud-advised = What was advised
aloud-told = What became of it
aloud-told-line = { $date }: { $outcome }.
aloud-told-none = Nothing has been told so far.
aloud-also = Also open
aloud-also-line = { $rule }. { $class }.
aloud-cautions = Cautions
aloud-protocol = Protocol { $protocol }, version { $version }.
aloud-minus = minus { $number }
aloud-kg = { $number } kilograms
aloud-g = { $number } grams
aloud-cm = { $number } centimetres
aloud-mm = { $number } millimetres
aloud-percent = { $number } percent
aloud-as-of = As it stood on { $date }.
needed-weight = weight
needed-length = length
needed-arm = arm
needed-feet = both feet
needed-signs = danger signs
needed-solids = solid food
needed-texture-best = best texture
needed-texture-usual = usual texture
needed-meals = meals
needed-groups = food groups
needed-iron = source of iron
needed-breastfed = breastfeeding
needed-breast-trouble = trouble with breastfeeding
needed-other-drink = other drinks
needed-animal-milk = animal milk
needed-sweet-drink = sweet drinks
needed-bottle = bottle
needed-low-value = tea, coffee, salt and sugar
needed-foods = foods and their form
needed-appetite = appetite
aloud-number = { $name }: { $value }.
aloud-z = z-score { $number }
aloud-step = { $date }: { $what }. { $why }.
