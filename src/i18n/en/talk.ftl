# Coaching lines, steps agreed with the family, and what became of them.

step-answer-done = Done
step-answer-partly = Partly
step-answer-not = Not done

talk-last = Agreed last time
talk-earlier = { $count ->
        [one] One older step that nobody asked about
       *[other] { $count } older steps that nobody asked about
    }
talk-agreed-on = agreed on { $date }
talk-in-the-way = What was in the way?
talk-heading = Say and agree
talk-say-danger = Say first. Tick what you said.
talk-say-more = { $count ->
        [one] One more thing to say
       *[other] { $count } more things to say
    }
talk-say = Tick what you said
talk-agree-hint = Agree on one small step, three at most, that the family wants to try. Next time you ask about it.
talk-step = Step { $number }
talk-no-step = No step from the list
talk-own-words = In your own words
talk-own-words-hint = Or to say more of the step above: who, when, with what
talk-more-steps = A second and a third step
talk-step-and-words = { $step } ({ $words })
talk-agreed-now = You agreed
talk-asked-next = Next time you are asked what became of it.
talk-agreed = Agreed with the family
talk-before = { $count ->
        [one] One step before that
       *[other] { $count } steps before that
    }
talk-way = In the way: { $words }
talk-unknown = Not asked yet

# For supervisors.
talk-team-title = Agreed steps
talk-team-heading = { $count ->
        [0] No step was told as difficult
        [one] One step was difficult
       *[other] { $count } steps were difficult
    }
talk-team-over = More than { $count } steps were difficult
talk-team-further = Further steps that were difficult
talk-team-lede = Since { $date }: what families could not do, or only in part, and why. It is nobody’s fault; it shows what to help with.
talk-team-none = When workers write what became of a step, what was difficult stands here.
talk-team-by-worker = By worker
talk-team-by-worker-hint = Steps agreed, and what was told of earlier steps, since { $date }.
talk-team-worker = Worker
talk-team-agreed = Agreed
talk-team-nobody = No step was agreed or told of yet.
talk-team-who = { $name }, { $age }, { $village }, with { $worker }
talk-team-link = What families found difficult, and why
