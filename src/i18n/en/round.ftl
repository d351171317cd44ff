# The round: homes of a day.
