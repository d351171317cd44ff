# Registering a child and finding one.
