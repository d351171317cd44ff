# The card that a family keeps.

card-title = Card for the family: { $name }
card-link = Card for the family
card-born = { $sex ->
       *[any] born { $day } · { $word }
    }
card-weight = { $weight } on { $day }.
card-weight-more = { $weight } on { $day }: { $change } more since { $before }.
card-weight-less = { $weight } on { $day }: { $change } less since { $before }.
card-weight-same = { $weight } on { $day }: the same as on { $before }.
card-lines = { $sex ->
        [F] The thick line in the middle of the others is the middle of healthy children; higher is heavier than most, lower is lighter than most. Dots are her weights.
       *[M] The thick line in the middle of the others is the middle of healthy children; higher is heavier than most, lower is lighter than most. Dots are his weights.
    }
card-now = Now, at { $age }
card-held = Do not give: { $foods }. Not until a health worker has said so.
card-next = Next visit: { $first } to { $last }.
card-go = Go to the clinic now, or call { $number }
card-go-local = Go to the clinic now, or call your local emergency number
card-sign-drink = cannot drink or breastfeed
card-sign-vomits = vomits everything
card-sign-fits = fits
card-sign-sleepy = very sleepy, hard to wake
card-sign-breath = struggles to breathe
card-sign-fast = breathes fast
card-sign-hot = hot or cold to the touch
card-sign-stool = blood in the stool
card-sign-feet = both feet swollen
card-sign-food = swelling, hives or hard breathing after a food
card-helps = This card helps you and your health worker. It does not replace the clinic. No honey before 12 months. No whole nuts. Go on breastfeeding.
card-print = To print: use your browser’s menu. A5, or half of an A4 sheet.
