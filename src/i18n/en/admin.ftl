# The office: people, areas, settings. Nothing of a child is ever shown here.

people-title = People
people-heading = { $active ->
        [one] { $active } person can sign in
       *[other] { $active } people can sign in
    }
people-heading-part = People of the programme
people-add = Add a person
people-next = Next page
people-none = Nobody yet.
people-inactive = May not sign in
people-code-open = A one-time code is out
people-no-password = Has never signed in
people-role-heading = { $role ->
        [worker] Outreach workers
        [supervisor] Supervisors
        [manager] Programme managers
       *[administrator] Administrators
    }
people-away = Away until { $date }, { $name } stands in
people-inactive-heading = May not sign in any more

person-new-title = Add a person
person-new-lede = After saving you get a one-time code to hand over. Nobody but the person ever knows the password.
person-part-who = Who
person-full-name = Name
person-full-name-hint = As colleagues say it.
person-sign-in-name = Sign-in name
person-sign-in-name-hint = Small letters and digits, easy to type on a phone. Each person has one of their own.
person-phone = Phone
person-phone-hint = Supervisors call this number.
person-language = Language
person-language-programme = As the programme
person-role = Role
person-role-worker = Outreach worker
person-role-worker-hint = Own children, and those of a colleague while standing in.
person-role-supervisor = Supervisor
person-role-supervisor-hint = Children of the areas or workers ticked below.
person-role-manager = Programme manager
person-role-manager-hint = Monthly numbers only, never a child.
person-role-administrator = Administrator
person-role-administrator-hint = People, areas, settings; never a child.
person-start = First day
person-end = Last day
person-end-hint = Leave empty while it is open. Signing in ends with this day.
person-part-team = For a supervisor: whose children
person-areas = Areas
person-workers = Workers
person-team-hint = A supervisor sees the children of every area or worker ticked. Other roles need nothing here.
person-no-areas = No area yet. Add areas first.
person-no-workers = No outreach worker yet.
person-save = Save
person-saved = Saved.

person-signing-in = Signing in
person-state-active = May sign in
person-state-inactive = May not sign in
person-state-code = A one-time code is out, good until { $date }
person-state-no-password = No password yet: hand over a one-time code
person-state-locked = Waits after wrong passwords until { $date }
person-sessions = { $count ->
        [0] Signed in nowhere
        [one] Signed in on { $count } phone or browser
       *[other] Signed in on { $count } phones or browsers
    }
person-code-do = Make a one-time code
person-code-hint = For a forgotten password or a new phone. It is shown once, works once, and ends after 72 hours. An earlier code ends now.
person-sessions-do = Sign out everywhere
person-sessions-hint = For a lost phone. What was not sent from it yet is asked for again.
person-deactivate-do = Take away signing in
person-deactivate-hint = All sessions end at once. What the person recorded stays. Children stay on this list until a supervisor moves them.
person-activate-do = Let them sign in again
person-sessions-ended = Signed out everywhere.
person-deactivated = This person may not sign in any more.
person-activated = This person may sign in again.

cover-heading = Away
cover-lede = A colleague who stands in sees this worker’s children between the two days, both included.
cover-none = Nobody stands in.
cover-line = { $name }, { $from } to { $to }
cover-by = Who stands in
cover-from = First day away
cover-to = Last day away
cover-add = Save who stands in
cover-saved = Saved: { $name } stands in from { $from } to { $to }.
cover-end = End
cover-end-of = End: { $name }, { $from }
cover-ended = Nobody stands in any more for those days.

code-title = One-time code for { $name }
code-heading = Hand this code to { $name } now
code-lede = It is shown only here and only now. It works once, until { $date }.
code-way-1 = Read it out in person or on the phone. Do not send it by message.
code-way-2 = { $name } signs in with the name { $sign-in } and this code as the password.
code-way-3 = Then { $name } chooses a password of their own.
code-say = Sign-in name
code-code = Code
code-done = Handed over
code-gone-title = This code was shown already
code-gone = The form was sent twice. A code is shown only once, and the first one still works. If it was not written down, make a new one.

areas-title = Areas
areas-heading = { $count ->
        [0] No area yet
        [one] { $count } area in use
       *[other] { $count } areas in use
    }
areas-none = Add the first one: workers register children in an area.
areas-add-heading = Add an area
areas-add = Add
areas-name = Name
areas-code = Code
areas-code-hint = Small letters, digits and hyphens, as in the exported files. It stays for good.
areas-parent = Lies in
areas-parent-none = No larger area
areas-parent-hint = For example a village in a district.
areas-walk = On foot to a home and back
areas-walk-hint = On average, from where the worker sets out. Supervisors see the hours when they share out children. Leave it empty if you do not know.
areas-walk-unit = minutes
areas-active = In use
areas-active-yes = Yes
areas-active-no = No, children are no longer registered here
areas-inactive = Not in use
areas-inactive-children = { $count ->
        [one] Not in use, but one child is still there: move it to another area
       *[other] Not in use, but { $count } children are still there: move them to another area
    }
areas-walk-line = { $minutes ->
        [one] { $minutes } minute on foot
       *[other] { $minutes } minutes on foot
    }
areas-walk-missing = minutes on foot not written yet
areas-change = Change
areas-change-of = Change { $name }
areas-change-title = Change { $name }
areas-added = Added: { $name }.
areas-saved = Saved: { $name }.
areas-saved-children = { $count ->
        [one] Saved: { $name } is not in use. One child is still there, and stays with its worker; move it to another area.
       *[other] Saved: { $name } is not in use. { $count } children are still there, and stay with their workers; move them to another area.
    }
areas-code-fixed = Code { $code }: exported files refer to it, so it stays.

settings-title = Settings
settings-heading = Settings of { $name }
settings-lede = They hold for everybody at once.
settings-programme-name = Name of the programme
settings-time-zone = Time zone
settings-time-zone-hint = Decides when a day begins. A name of the form Continent/City from the IANA list, or UTC.
settings-time-zone-now = There it is now { $time }.
settings-emergency = Emergency number
settings-emergency-hint = Shown where a child is in danger. Empty: pages say “your local emergency number”.
settings-language = Language
settings-language-hint = For people who have not chosen one.
settings-threshold = Keep back counts below
settings-threshold-hint = In reports and exported files, so that no family can be recognised. It may be raised, never lowered below 5 (common practice).
settings-threshold-unit = children
settings-save = Save
settings-saved = Saved. It holds from now on.
