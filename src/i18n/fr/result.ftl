# What to do now, after saving.
