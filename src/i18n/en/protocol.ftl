# The protocol as a document, rehearsing a new one, adopting it.

# Parts of the document
doc-page-title = Feeding protocol
doc-title = Feeding protocol { $id }, version { $version }
doc-not-approved = Not approved by a clinician.
doc-approved = Approved by { $by }.
doc-approved-on = Approved by { $by } on { $date }.
doc-effective = It judges visits from { $date } on.
doc-local = It follows the local protocol: { $name }.
doc-purpose = This document is written from the protocol that the program works with, figure by figure. It is not medical advice. Where the national or local protocol differs, the local one decides.
doc-marks = Each figure carries its source. “From memory”: a published source quoted without reading it again. “Common practice”: no single source. “Our own choice”: for the programme to confirm.
doc-fact = { $name }:
doc-contents = Parts
doc-source = Source: { $source }

doc-cautions = Cautions
doc-ages = Ages
doc-start-age = Earliest solids without a follow-up
doc-grace = Days of grace after 6 months before solids are late
doc-settling = Days after the first solids in which meal rules are silent
doc-exit-age = Age at which a child leaves
doc-correction = Ages of children born before 37 weeks
doc-correction-how = corrected up to 24 months for growth and food stages, never for danger signs

doc-stages = Stages
doc-stages-what = By age, corrected for early birth. A follow-up opens only below the least; what is hoped for is advice. First tastes lie over whatever stage the age gives, until solids have settled.
doc-stage = Stage
doc-stage-age = { $from } to { $to } months
doc-stage-first = while solids begin
doc-texture = Texture hoped for
doc-texture-least = not below { $texture }
doc-meals-bf = Meals a day, breastfed
doc-meals-nbf = Meals and milk feeds, not breastfed
doc-range = { $from } to { $to }
doc-least = at least { $n }
doc-least-milk = milk at least { $n }
doc-snacks = Snacks
doc-amount = Amount a meal
doc-cups = { $n } of a 250 ml cup
doc-cup-half = half
doc-cup-three-quarters = three quarters
doc-spoons-to-cups = { $spoons }, rising to { $cups }
doc-spoons = { $n } tablespoons
doc-energy = Energy from food, kcal a day
doc-energy-bf = breastfed { $n }
doc-energy-nbf = not breastfed { $n }
doc-none = –

doc-thickness = Thickness and energy
doc-density-0 = Watery food
doc-density-1 = Smooth and thick food
doc-density-2 = Mashed food or richer
doc-density-least = A recipe below this is too thin
doc-kcal-per-g = { $n } kcal a gram
doc-stomach = What a stomach holds
doc-g-per-kg = { $n } g for each kg of body weight

doc-foods = Foods
doc-foods-what = { $count ->
        [one] { $count } food.
       *[other] { $count } foods.
    } Where nothing is said, a food is offered from 180 days.
doc-food = Food
doc-food-iron = Iron
doc-food-allergen = Common allergen
doc-food-from = From
doc-food-safe = Safe form
doc-food-choking = can choke
doc-food-local = Local advice
doc-food-wait = wait until { $months } months, { $policy }
doc-food-unhealthy = unhealthy
doc-food-sweet-drink = sweet drink
doc-food-drink = a drink, never counts as food
doc-food-kcal = { $n } kcal in 100 g
doc-food-kcal-source = · Energy from:
doc-food-hidden = no longer offered for choice
doc-group-none = In no group
doc-food-days = { $n } days

doc-modes = Allergens and milk
doc-mode-allergens = Common allergens
doc-mode-milk = Not breastfed, 6 to 11 months: milk

doc-rules = Rules: { $theme }
doc-rules-marks = How the { $count } rules are founded: { $memory } lean on a source quoted from memory, { $practice } on common practice, { $own } on the programme’s own choice, in whole or in part.
doc-rule-off = Switched off: this programme does not use it.
doc-rule-safety = Guards against danger: cannot be switched off.
doc-rule-do = What the worker does
doc-rule-closes = Closes
doc-way-test = at the first visit on a later day at which this is so
doc-way-two-visits = at the second of two visits, { $days } or more apart, at which this is so
doc-way-care = when a health worker has seen the child or decided
doc-way-care-and-test = when a health worker has seen the child and at a visit this is so
doc-way-test-or-care = when a health worker has seen the child, or at the first visit on a later day at which this is so
doc-way-decision = when a named health worker or supervisor has decided
doc-way-correction = when the record is corrected
doc-way-list = when it is no longer so

doc-urgency = Urgency and clocks
doc-class = Urgency
doc-class-check = Check after
doc-class-supervisor = Supervisor sees it as late
doc-class-manager = Manager counts it as late
doc-class-late = { $count ->
        [0] on the due day
        [one] { $count } day after
       *[other] { $count } days after
    }
doc-month-floor = A check at the next routine visit is never sooner than { $days } after the visit.

doc-visits = Visits
doc-visits-slots = Visits are expected at these ages
doc-slot-days = { $n } days
doc-slot-months = { $n } months
doc-slot-both = { $months } months and { $days } days
doc-visits-opens = A visit may come { $days } before its day
doc-visits-closes = From { $months } months of age it may come { $days } after
doc-visits-registered = A visit whose day lies { $days } or more before registration is not expected

doc-measuring = Measuring
doc-tolerance-weight = Two careful measurements of weight may differ by
doc-tolerance-length = Of length by
doc-tolerance-arm = Of the upper arm by

doc-coaching = Advice
doc-coaching-danger = About danger, told first
doc-recipes = Recipes
doc-recipe-parts = What goes in
doc-recipe-water = Water
doc-recipe-ml = { $n } ml
doc-recipe-cooked = Weight when cooked
doc-recipe-textures = Textures
doc-recipe-keeps = Keeps
doc-recipe-keeps-how = cooked { $room } hours at room temperature, { $cold } hours in the cold
doc-recipe-flour = flour { $room } days at room temperature, { $cold } days in the cold
doc-recipe-energy = Energy density
doc-recipe-warnings = Beware
doc-recipe-steps = How it is made

doc-review = Review and signature
doc-review-what = I have read the protocol { $id }, version { $version }, with its { $count } rules and { $foods } foods.
doc-review-fine = Reviewed: as it stands
doc-review-changes = Reviewed: changes wanted, noted below
doc-review-name = Name
doc-review-role = Role and place of work
doc-review-date = Date
doc-review-sign = Signature
doc-review-notes = Changes wanted

# The page
protocol-print-hint = Print this page for a clinician to review and sign.
protocol-all = Versions adopted
protocol-version = Version
protocol-from = In force from
protocol-approved-by = Approved by
protocol-adopted = Adopted
protocol-reason = Reason
protocol-by-program = by the program at its start
protocol-by-command = on the command line
protocol-in-force = in force today
protocol-to-come = to come
protocol-nobody = nobody yet
protocol-file = The file itself (TOML)
protocol-rehearse = Rehearse a change
protocol-done-adopted = Adopted. Lists are brought up to date within minutes.
protocol-done-adopted-from = Adopted. It counts from { $date } on; until that day the lists stay as they are.

# Rehearsing
rehearse-title = Rehearse a protocol
rehearse-lede = See how today’s follow-ups would change under another protocol file. Nothing is kept or changed.
rehearse-step-1 = Take the file in force, change a copy, and give it a new version.
rehearse-step-2 = Choose the changed file, or put its whole text below.
rehearse-file = The new file
rehearse-file-hint = A text file in UTF-8, at most { $kilobytes } kB. If a file is chosen, the text below is not read.
rehearse-chosen = The file chosen:
rehearse-file-too-large = The file is larger than { $kilobytes } kB, which no protocol needs. Choose the protocol’s own file.
rehearse-file-not-text = The file is not a text in UTF-8. Save it as UTF-8 in a text editor, and choose it again.
rehearse-text = Text of the new file
rehearse-hint = The whole file, as TOML.
rehearse-button = Rehearse
rehearse-again = Rehearse again
rehearse-how = Each child’s whole story is judged as if the new protocol had been in force throughout. On the day it is really adopted the list does not jump: what is open keeps its version, only visits from that day on are judged by the new one, and visits to come are expected as it says.
rehearse-not-loaded = The file cannot be used: { $count ->
        [one] { $count } thing to correct
       *[other] { $count } things to correct
    }. Nothing was changed.
rehearse-fault = Line { $line }, { $key }:
rehearse-fault-line = Line { $line }:
rehearse-parser-says = The parser says:
rehearse-nothing = Under { $id } { $version } nothing would change for the { $count ->
        [one] { $count } child
       *[other] { $count } children
    } looked at.
rehearse-heading = Under { $id } { $version } something would change for { $touched } of { $count ->
        [one] { $count } child
       *[other] { $count } children
    }.
rehearse-as-of = As of { $date }, compared with { $id } { $version }.
rehearse-work = Work
rehearse-work-open = On the list: follow-ups and late visits
rehearse-work-week = New follow-ups a week (mean of the last 4 weeks)
rehearse-work-children = Children on the list
rehearse-now = Now
rehearse-then = Then
rehearse-by-class = By urgency
rehearse-by-rule = By rule
rehearse-by-area = By village
rehearse-by-worker = By worker
rehearse-rule = Rule
rehearse-area = Village
rehearse-worker = Worker
rehearse-opened = Opened
rehearse-closed = Closed
rehearse-raised = Raised
rehearse-lowered = Lowered
rehearse-moved = Other day
rehearse-week-now = A week, now
rehearse-week-then = A week, then
rehearse-unchanged = Rules of which nothing would change
rehearse-all = All
rehearse-children = The children behind these numbers
rehearse-counts-only = Which children these are is shown to their supervisor only.
rehearse-kind-opened = would be on the list: { $then }
rehearse-kind-closed = would not be on the list; now { $now }
rehearse-kind-raised = raised from { $now } to { $then }
rehearse-kind-lowered = lowered from { $now } to { $then }
rehearse-kind-moved = check on { $date } instead of { $before }
rehearse-kind-list = visit list
rehearse-child-line = { $area }, { $worker }: { $what }

# Adopting
adopt-heading = Adopt this protocol
adopt-lede = From its day on, visits are judged by it. Earlier visits and the follow-ups they opened keep the version that judged them.
adopt-approved-by = Who approved it
adopt-approved-hint = The clinician or responsible person, with title.
adopt-from = First day in force
adopt-from-hint = Today or later. From today: visits written today are judged anew.
adopt-reason = Why
adopt-reason-hint = What changes and who asked for it. Kept on record.
adopt-button = Adopt
adopt-supervisor = Adopting is for an administrator.
