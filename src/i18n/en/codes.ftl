# A word for each code of the programme. The code is in the id; it never changes, the words may.


# Sex
sex-f = girl
sex-m = boy

# How the weeks of pregnancy are known
gestation-source-scan = scan in pregnancy
gestation-source-card = health card
gestation-source-last-period = last period
gestation-source-family = the family remembers
gestation-source-unknown = not known

# In the programme or not
child-status-active = in the programme
child-status-transferred-out = went to another programme
child-status-moved = family moved away
child-status-died = died
child-status-consent-withdrawn = family took back its consent
child-status-aged-out = reached 24 months
child-status-refused = family does not want visits

# Food groups
food-group-breast-milk = Breast milk
food-group-grains-roots = Grains, roots
food-group-pulses-nuts = Beans, nuts
food-group-dairy = Milk, yoghurt, cheese
food-group-flesh = Fish, meat
food-group-eggs = Egg
food-group-vit-a = Orange fruit and vegetables, dark leaves
food-group-other-fv = Other fruit, vegetables

# Common allergens
allergen-milk = animal milk
allergen-egg = egg
allergen-peanut = groundnut
allergen-tree-nut = tree nut
allergen-wheat = wheat
allergen-soy = soy
allergen-fish = fish
allergen-shellfish = shellfish
allergen-sesame = sesame

# How a food was taken
response-accepted = Took it
response-refused = Refused
response-reaction = Reaction

# Signs after a food
reaction-sign-rash-local = rash round the mouth
reaction-sign-hives-widespread = hives all over
reaction-sign-swelling-face = swollen face or eyes
reaction-sign-vomiting-once = vomited once
reaction-sign-vomiting-repeated = vomits again and again
reaction-sign-loose-stools = loose stools
reaction-sign-eczema-flare = eczema got worse
reaction-sign-wheeze = wheeze
reaction-sign-breathing-trouble = trouble breathing
reaction-sign-hoarse-cry = hoarse cry
reaction-sign-swollen-tongue-throat = swollen tongue or throat
reaction-sign-pale-floppy = pale and floppy
reaction-sign-collapse = collapse
reaction-sign-sleepy-pale = sleepy and pale

# Texture, by its word: the step number is for the file
texture-0 = watery
texture-1 = smooth and thick
texture-2 = mashed, soft lumps
texture-3 = chopped, finger food
texture-4 = family food
texture-short-0 = Milk
texture-short-1 = Smooth
texture-short-2 = Mashed
texture-short-3 = Chopped
texture-short-4 = Family
texture-test-0 = runs off a tilted spoon
texture-test-1 = stays on the spoon, no lumps
texture-test-2 = lumps squash between finger and thumb
texture-test-3 = soft pieces that the baby picks up
texture-test-4 = family pot, cut small

# Where or how the family was met
contact-home = At home
contact-clinic = At the clinic
contact-phone = By phone

# How the length was taken
position-lying = lying
position-standing = standing

# Measurements
measurement-weight = weight
measurement-length = length
measurement-muac = upper arm

# Signs of danger
danger-sign-cannot-feed = Cannot drink or breastfeed
danger-sign-vomits-everything = Vomits everything
danger-sign-fits-in-illness = Had fits in this illness
danger-sign-fits-now = Has fits now
danger-sign-unconscious = Unconscious
danger-sign-lethargic = Very sleepy, hard to wake
danger-sign-fast-breathing = Breathes fast, counted twice
danger-sign-chest-indrawing = Chest drawn in when breathing
danger-sign-stridor-calm = Harsh noise when breathing in, while calm
danger-sign-trouble-breathing = Struggles to breathe
danger-sign-fever-or-cold = Hot (37.5 °C or more) or cold (under 35.5 °C)
danger-sign-moves-only-when-touched = Moves only when touched, or not at all
danger-sign-not-feeding-well = Does not feed well
danger-sign-sunken-eyes-slow-pinch = Sunken eyes, skin pinch goes back very slowly
danger-sign-blood-in-stool = Blood in the stool
danger-sign-stiff-neck = Stiff neck
danger-sign-constipation = Hard or rare stools
danger-sign-weak-cry = Weak cry
danger-sign-floppy = Floppy
danger-sign-poor-suck = Sucks weakly
danger-sign-droopy-lids = Eyelids hang

# Ready for solid food
readiness-sign-head-steady = Holds the head steady when supported
readiness-sign-sits-supported = Sits with little support
readiness-sign-mouths-objects = Brings hands or toys to the mouth
readiness-sign-turns-to-food = Turns to food or opens the mouth
readiness-sign-swallows = Moves food back and swallows

# Foods and drinks of low value
low-value-tea-coffee = Tea or coffee
low-value-salt = Added salt
low-value-sugar = Added sugar

# Swallowing
swallow-trouble-none = No trouble
swallow-trouble-repeated = Chokes, coughs or sounds wet, more than once
swallow-trouble-blue = Goes blue while feeding

# What became of a follow-up
outcome-seen = Seen by a health worker
outcome-treated = Treated
outcome-admitted = Admitted
outcome-in-treatment = In a nutrition treatment programme
outcome-discharged = Discharged from treatment
outcome-decision = A named health worker or supervisor decided
outcome-refused = The family did not want to go
outcome-not-reached = Could not be reached

# Roles
role-worker = outreach worker
role-supervisor = supervisor
role-manager = programme manager
role-administrator = administrator

# What a role may do
action-see-children = see the children of the own scope
action-register = register a child
action-record-visit = record and correct visits
action-supervise = work the late follow-ups of a team
action-read-reports = read monthly reports
action-rehearse-protocol = see how the list would change under another protocol
action-administer = look after people, areas and settings

# Themes of the rules
theme-danger = Danger signs
theme-reaction = Food reactions
theme-growth = Growth
theme-feeding = Feeding
theme-data = Measuring and writing
theme-visit = Visits

# Urgency
class-now = Emergency
class-today = Refer today
class-two-days = Within 2 days
class-week = Within 7 days
class-fortnight = Within 14 days
class-month = Next routine visit
class-visit = Visit
class-done = Done

# Why a follow-up is no longer open
close-reason-resolved-by-visit = a later visit was as hoped
close-reason-seen-outcome-recorded = a health worker saw the child or decided
close-reason-in-care-elsewhere = in nutrition treatment
close-reason-record-corrected = the record was corrected
close-reason-replaced = a more serious one took over
close-reason-supervisor-decision = closed by a supervisor
close-reason-transferred-out = child went to another programme
close-reason-moved = family moved away
close-reason-consent-withdrawn = family took back its consent
close-reason-aged-out = child reached 24 months
close-reason-refused = family does not want visits
close-reason-died = child died

# Where a follow-up stands
follow-up-state-open = open
follow-up-state-done = done
follow-up-state-closed-by-supervisor = closed by a supervisor
follow-up-state-ended = ended, child left

# The numbers a finding rests on
evidence-waz = Weight for age (z)
evidence-laz = Length for age (z)
evidence-wlz = Weight for length (z)
evidence-weight = Weight
evidence-weight-before = Weight before
evidence-birth-weight = Birth weight
evidence-length = Length
evidence-length-before = Length before
evidence-muac = Upper arm
evidence-gain = Gain
evidence-floor = Least gain hoped for
evidence-loss-percent = Share lost
evidence-z-change = Change of the line (z)
evidence-z-before = Line before (z)
evidence-interval-days = Days between
evidence-before = Measured before on
evidence-limit = Limit
evidence-limit-weight-loss = Counts if more is lost than
evidence-age-days = Age in days
evidence-age-months = Age in months
evidence-stage-months = Age in months, corrected
evidence-gestation-days = Weeks of pregnancy
evidence-signs = Signs
evidence-foods = Foods
evidence-minutes = Minutes after the food
evidence-texture = Texture now
evidence-texture-expected = Least texture by now
evidence-meals = Meals
evidence-milk-feeds = Milk feeds
evidence-least = At least
evidence-groups = Food groups
evidence-days = Days
evidence-date = Date
evidence-date-reaction-given-again = On hold since
evidence-held-before = The same at the visit before

# Growth indices
indicator-waz = Weight for age
indicator-laz = Length for age
indicator-wlz = Weight for length
indicator-bmiz = Body mass index for age
indicator-mauz = Upper arm for age
indicator-hcz = Head for age

# Why an index has no value
not-computable-not-measured = not measured
not-computable-no-weight = no weight
not-computable-no-length = no length
not-computable-oedema = both feet are swollen: the weight is not that of the body
not-computable-before-due-date = before the due date: use the hospital’s chart
not-computable-age-outside-table = no table for this age
not-computable-length-outside-table = no table for this length

# Food stages by age
stage-milk-only = Milk only
stage-first-tastes = First tastes
stage-early-6-7 = Smooth, then soft lumps
stage-mid-8 = Mashed, soft lumps
stage-lumps-9-11 = Chopped, finger food
stage-family-12-14 = Family food begins
stage-family-15-23 = Family food

# Where a food stands
food-state-not-yet = Not yet
food-state-trying = Trying
food-state-accepted = Taken
food-state-refused = Refused
food-state-on-hold = On hold

# One list for what is quickly asked
also-iron-source = Iron drops or powder, or a food with iron added
also-sweet-drink = Sweet drink
also-unhealthy-food = Sweets, crisps or the like
also-bottle = Bottle with a teat
also-tea-coffee = Tea or coffee
also-salt = Added salt
also-sugar = Added sugar
also-honey = Honey, since the last visit
also-breastfeeding-trouble = Breastfeeding hurts, little milk, or poor attachment
also-ill = Ill now

# Why a supervisor closes
close-category-clinician-decided = A clinician saw the child and decided
close-category-seen-well = Seen at home: the child is well
close-category-care-elsewhere = Cared for by another programme or clinic
close-category-wrong-record = What was written is wrong and can no longer be corrected
close-category-family-declines = The family does not want this followed up
close-category-other = Something else

# How bad a reaction to a food was
reaction-level-severe = severe
reaction-level-spreading = spreading
reaction-level-mild = mild

# Where an expected visit stands
slot-state-not-yet = not yet
slot-state-open = due now
slot-state-late = late
slot-state-skipped = passed over
slot-state-seen = seen

# Where a line of advice comes from
mark-source = published source
mark-memory = published source, from memory
mark-practice = common practice
mark-own = our own choice

# How a food's local waiting age is taken
hold-policy-advise = advice only
hold-policy-flag = a follow-up

# Iron in a food
iron-heme = meat, fish, liver
iron-fortified = iron added
iron-none = none that counts

# What the programme advises on milk and on allergens
milk-mode-who2023 = formula or animal milk (WHO 2023)
milk-mode-avoid-main-drink = no animal milk as the main drink before 12 months
allergen-mode-with-solids = not later than other foods
allergen-mode-local-wait = as the local protocol says
