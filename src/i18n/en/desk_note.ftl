# What a supervisor writes to the worker about a child
desk-note-way = Write to the worker about this child
desk-note-title = A word about { $name }
desk-note-lede = The worker sees it on the round and on the child’s page until it is set aside. Nothing here changes a follow-up.
desk-note-words = What you want to say
desk-note-words-hint = For example: look at the feet, ask about the grandmother’s porridge. Write nothing that must not be read over a shoulder.
desk-note-together-on = A visit together on
desk-note-together-hint = Leave empty if you do not come along.
desk-note-do = Leave this word
desk-note-done = The word is left for the worker.
desk-note-from = { $name }, { $date }:
desk-note-together = { $name } comes along on { $date }.
desk-note-aside = Read, set aside
desk-note-read = Note of { $by }, read on { $date } by { $reader }: { $words }
desk-note-on-round = A word from the supervisor
