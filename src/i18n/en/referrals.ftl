# The note for the clinic, and referrals followed to their end
referral-link = Note for the clinic
referral-title = Note for the clinic, { $name }
referral-heading = Please look at this child
referral-family = With { $name }, { $village }
referral-by = Sent by { $name } on { $date }
referral-why = Why
referral-own-judgement = In the worker’s own judgement:
referral-numbers = Measured
referral-no-numbers = Nothing was measured.
referral-wfa = weight-for-age { $z }
referral-wfl = weight-for-length { $z }
referral-arm = arm { $mm } mm
referral-odd = looks odd, measure again
referral-birth = Birth weight { $weight }
referral-z = z-scores by the WHO growth standards of 2006 and 2007; for a child born early by corrected age. Suggested by rules, not a diagnosis.
referral-holds = Foods on hold after a reaction
referral-answer = Answer of the clinic
referral-answer-to = Tell { $name }
referral-more = { $count ->
        [one] and one less urgent reason
       *[other] and { $count } less urgent reasons
    }
referral-answer-on = Seen on, by
referral-answer-found = Found
referral-answer-done = Done, given
referral-answer-food = Foods that may or may not be given
referral-answer-back = Come back on, and when at once
referral-answer-thanks = Please give this part back to the family. The worker writes down what became of it.
referral-print = Print it with your browser: it fits a sheet of A5. It carries the child’s name: give it only to the family.
referrals-title = Referrals
referrals-link = All referrals, and what became of them
referrals-heading = { $count ->
        [0] No referral waits for an answer
        [one] One child was sent and has no answer yet
       *[other] { $count } children were sent and have no answer yet
    }
referrals-heading-more = More than { $count } children were sent and have no answer yet
referrals-further = Further children sent, without an answer yet
referrals-lede = A referral ends when somebody writes what became of it, not when the day has passed.
referrals-waiting = Most urgent first
referrals-with = Where, with whom
referrals-waits = Waits
referrals-next = Next
referrals-expected = expected by { $date }
referrals-by = until { $date }
referrals-told = What became of them since { $date }
referrals-told-none = Nothing was written in this time.
referrals-told-latest = Latest first
referrals-became = What became of it
referrals-on = Written at the visit
