# The page of a child: growth, stage, foods, follow-ups, visits.
