# The supervisor: late follow-ups, closing, moving children.
