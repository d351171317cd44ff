# The demo programme: its foods and lines.
