# How well measuring goes
quality-title = Measuring
quality-link = How measuring goes, and what to practise
quality-heading = { $count ->
        [one] How measuring goes: one visit
       *[other] How measuring goes: { $count } visits
    }
quality-days = { $from } to { $to }. For support, not ranking: small numbers swing.
quality-sieve = Choose a month
quality-recent = The last 90 days
quality-lede = What stands out is a reason to weigh and measure together once, not a fault. Fewer than { $least } measurements are not judged.
quality-by-worker = By worker, in the order of names
quality-visits = Visits
quality-digits-weight = Uneven last digits of weights
quality-digits-weight-do = Read the scale to its last digit and say it aloud before writing. Look whether the scale is set to the finest step, stands level and shows zero.
quality-digits-length = Uneven last digits of lengths
quality-digits-length-do = Two people measure: one holds, one reads the millimetre at eye level and says it aloud. Look at the board for play.
quality-digits-arm = Uneven last digits of arms
quality-digits-arm-do = Read the tape at the window’s mark to the millimetre, also when it lies near a coloured edge.
quality-complete-weight = Visits with a weight, %
quality-complete-weight-do = Ask what stood in the way: the scale, the way, the weather, the family. Plan the visit for when the scale is free.
quality-complete-length = Visits with a length, %
quality-complete-length-do = Ask whether the board can be carried and whether somebody helps to hold. A length every second visit is better than none.
quality-complete-arm = Visits with an arm, from 6 months, %
quality-complete-arm-do = The tape weighs nothing: keep one in the bag of each worker.
quality-outside = Outside the limits, %
quality-outside-do = Measure these children again together; look at birth dates, kilograms and grams, lying and standing.
quality-repeated = Same weight as before, %
quality-repeated-do = Weigh anew at each visit and write before looking at the last weight.
quality-arrival = Days until it arrives, middle
quality-corrected = Corrected later
quality-too-few = too few
quality-look = look again
quality-limits = Look again
quality-above = above { $limit }
quality-below = below { $limit }
quality-try = What to try together
quality-spread = How far z-scores lie apart
quality-spread-hint = For information: a caseload is no sample, so nothing is judged. Values that lie much further apart than usual can mean wrong ages or careless readings, or children who differ a lot.
quality-spread-caption = Everybody together
quality-index = Index
quality-n = z-scores
quality-mean = Mean
quality-sd = Standard deviation
quality-usual = Usual in surveys
quality-from-to = { $from } to { $to }
quality-file = All figures by area and worker as a file (CSV), for the programme only
quality-sources = Unevenness of last digits, 0 even to 90 all alike, and the share outside the limits: WHO and UNICEF 2019, from memory. Usual standard deviations: WHO 1995, from memory. The limits of 20, 5 and 90 are our own choice or common practice. Nobody’s figures leave the programme.
