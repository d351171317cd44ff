# The visit form.
