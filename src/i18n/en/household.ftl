# The home: twins and siblings, seen one after the other.

household-title = Home of { $name }
household-lede = with { $name }, { $village }
household-due = { $count ->
        [one] { $names } is to be seen
       *[other] { $count } children here. To be seen: { $names }
    }
household-none-due = { $count ->
        [0] No child here is in the programme now
        [one] One child here, nothing due
       *[other] { $count } children here, nothing due
    }
household-start = Start with { $name }
household-seen = Seen today
household-nothing-due = Nothing is due.
household-elsewhere = Registered in { $village }
household-unlink = Does not live here
household-link = Lives in this home
household-likely = Perhaps of this home too
household-likely-why = The same phone, or a caregiver of nearly the same name in this village. You decide.
household-more = A child more
household-add = Register another child of this home
household-add-twin = Register a twin of { $name }
household-by-code = A child of this home is registered already
household-code = Code of the child
household-code-hint = It stands on the child’s page and on its card.
household-left = { $count ->
        [one] One child left the programme
       *[other] { $count } children left the programme
    }
household-also = { $count ->
        [one] Also in this home:
       *[other] Also in this home:
    }
household-also-heading = Also in this home
household-next = Next here: { $name }
household-seen-then = seen at this visit
household-page = The home: twins and siblings
household-register-lede = Another child of { $name }: what the home shares is filled in. Look whether it still holds.
household-register-twin = A twin of { $name }? Take the birth date over.
household-same = The home
household-same-yes = Lives in the home of { $name }
