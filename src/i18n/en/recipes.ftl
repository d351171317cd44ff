# Recipes: list and card. A card is read aloud: short sentences.

recipes-title = Recipes
recipes-start = the start
recipes-for-child-link = Recipes for this child
recipes-all-link = All recipes
recipes-lede = Thick food from what grows and is caught here. Open one to print it or to read it aloud.
recipes-open-one = Open one to print it or to read it aloud.
recipes-none = The programme’s protocol has no recipes yet.
recipes-milk-only = { $name } needs milk only. Recipes are for later.
recipes-suit = { $count ->
        [0] No recipe suits { $name } as it is
        [one] { $count } recipe suits { $name }
       *[other] { $count } recipes suit { $name }
    }
recipes-taste = As a taste or a snack beside a meal
recipes-ask-first = Ask first, or give something else first
recipes-later = Later
recipes-no = Not to be given now
recipes-urgent = Something urgent is open for { $name }. That comes first.
recipes-urgent-link = Go to what is urgent
recipes-on-hold = On hold since { $since }: { $food }
recipes-known-allergy = A clinician has named a food allergy of this child.
recipes-known-allergy-do = Which food is not written here. Ask the family before any recipe, and never give that food.
recipes-caution = A recipe is advice, not a treatment. Follow your local protocol and what a clinician has said.
recipes-from = { $count ->
        [one] from { $count } month
       *[other] from { $count } months
    }
recipes-density = { $density } kcal in a gram
recipes-density-thin = { $density } kcal in a gram: too thin for a meal
recipes-textures = { $from }, up to { $to }
recipes-holds = holds { $allergens }

# What to know before a child gets it
recipes-remark-on-hold = On hold since { $since } after a reaction ({ $worst }): { $food }. Do not give it until a health worker says it is safe.
recipes-remark-on-hold-like = { $food } is like { $held }, on hold since { $since } after a reaction ({ $worst }). Do not give it until a health worker says it is safe.
recipes-remark-milk-only = Milk is all that is needed. No water, tea or food before 6 months.
recipes-remark-too-young = { $food }: not before { $day }.
recipes-remark-waits = { $food }: the local protocol says to wait until { $day }.
recipes-remark-allergy = It holds { $allergens }. A food allergy is known: ask first.
recipes-remark-eczema = Severe eczema: ask a clinician before the first { $allergens }.
recipes-remark-texture = Lumpier than this stage hopes for: { $texture }.
recipes-remark-swallowing = Trouble with swallowing is open: not yet { $texture }. A health worker says when.
recipes-remark-new = New for this child: { $foods }. One new food at a time: give each alone first.
recipes-remark-allergy-not-asked = Ask first whether the child has a food allergy: nobody has written it down.
recipes-remark-first-taste = First taste of { $allergens }: in the morning, at home, baby well. Stay and watch for 2 hours.
recipes-remark-smoother = Smoother than hoped for now. Mash less, up to { $texture }.

# The card
recipes-card-no = Do not give this now.
recipes-card-from = { $count ->
        [one] From { $count } month.
       *[other] From { $count } months.
    }
recipes-card-texture = Texture: { $texture }.
recipes-card-too-thin = { $density } kcal in a gram, below { $least }: too thin for a meal. Good as a taste or a snack beside a meal.
recipes-card-meals = With this as the food, this child needs at least { $meals } a day.
recipes-card-meals-more = More is welcome. Milk goes on as before.
recipes-card-parts = What goes in
recipes-card-water = { $count ->
        [one] { $cups } cup of water ({ $ml } ml)
       *[other] { $cups } cups of water ({ $ml } ml)
    }
recipes-card-steps = How to make it
recipes-card-wash = Wash your hands and the child’s with soap. Use clean pots and safe water.
recipes-card-makes = It makes about { $g }.
recipes-card-care = Take care
recipes-card-allergens = It holds { $allergens }, often a cause of allergy.
recipes-card-first-taste = First taste in the morning, at home, baby well; stay and watch for 2 hours.
recipes-card-reacted = Never give it to a child who reacted to it.
recipes-card-keeps = How long it keeps
recipes-card-keeps-room = { $count ->
        [0] Give it at once. Do not keep it.
        [one] Cooked: at most { $count } hour out of the cold; less in great heat.
       *[other] Cooked: at most { $count } hours out of the cold; 1 hour in great heat.
    }
recipes-card-keeps-cold = { $count ->
        [one] In a working refrigerator (5 °C or less): { $count } hour.
       *[other] In a working refrigerator (5 °C or less): { $count } hours.
    }
recipes-card-reheat = Heat it until it steams, stir, let it cool.
recipes-card-bowl = Throw away what is left in the bowl.
recipes-card-keeps-flour = The flour in an airtight tin: { $room } days, in the cold { $cold }.
recipes-card-groups = It counts as: { $groups }.
recipes-card-iron = It gives iron that is taken up well.
recipes-card-print = Print this page on A5 or A4, or read it aloud, one step at a time.
recipes-card-energy = How its energy is worked out
recipes-energy-part = { $g } g × { $per } kcal in 100 g = { $kcal } kcal.
recipes-energy-sum = Together { $kcal } kcal in { $g } g cooked = { $density } kcal in a gram.
recipes-energy-given = Given by the protocol: { $density } kcal in a gram.
recipes-energy-this = This recipe
