# Thickness counts: meals needed, an estimate for the talk with the family. Never says to give less.

thickness-heading = Thickness counts
thickness-meals = { $count ->
        [one] { $count } meal
       *[other] { $count } meals
    }
thickness-feeds = { $count } meals and milk feeds
thickness-than-now = Food as thin as now would need { $many } a day; { $hoped }: at least { $few }.
thickness-than-now-thicker = Food as now ({ $usual }) would need { $many } a day; { $hoped }: at least { $few }.
thickness-than-watery = With food { $hoped }: at least { $few } a day; { $usual } food would need { $many }.
thickness-mashed-or-richer = mashed or thicker
thickness-count = at least { $meals } a day
thickness-next = What comes next, at today’s weight ({ $stage }): watery { $watery } meals a day, smooth and thick { $smooth }, mashed or thicker { $mashed }.
thickness-caution = An estimate from averages, and no limit: more is welcome, follow the child’s hunger. Milk goes on as before. A child with a clinic’s plan follows that plan.
thickness-how = How this is worked out
thickness-source = Source:
thickness-energy-breastfed = Energy needed from food, besides breast milk, at this stage ({ $stage }): { $kcal } kcal a day.
thickness-energy-all = Energy needed in all, milk and food together, at this stage ({ $stage }): { $kcal } kcal a day. Milk feeds count as meals.
thickness-full-meal = A full meal: { $weight } × { $per } g = { $g } g.
thickness-weighed = Weighed on { $day }.
thickness-line = { $food }: { $g } g × { $density } kcal = { $meal } kcal a meal. { $kcal } ÷ { $meal } = { $exact }, rounded up: { $up }.
thickness-raised = Raised to { $count }, the least of the stage.
thickness-least = Never fewer than { $count } a day at this stage.

not-estimated-milk-only = Milk is all that is needed.
not-estimated-first-tastes = First tastes: how much and how often grows at the child’s pace. The number of meals is estimated after the first weeks.
not-estimated-no-weight = The meals needed cannot be estimated: no weight yet. Weigh the child.
not-estimated-weight-suspect = The meals needed cannot be estimated: the weight is unlikely. Weigh again.
not-estimated-swollen = The meals needed cannot be estimated: both feet are swollen, and water is weighed too. The clinic says how to feed.
not-estimated-milk-unknown = The meals needed cannot be estimated: it is not known whether the child is breastfed. Ask at the next visit.
