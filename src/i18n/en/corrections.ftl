# Corrections of the record: taking a visit back, moving it to another child, merging two records of one child.

# Ways from the page that corrects a visit
correction-move-way = Not this child? Move the visit to the child it is about
correction-void-way = It never happened, or was entered twice? Take it back

# Why a visit is taken back
void-reason-wrong-child = Entered for the wrong child
void-reason-never-happened = It never happened
void-reason-entered-twice = The same visit was entered twice
void-reason-other = Something else

# Taking back
void-title = Take back the visit of { $date }: { $name }
void-lede = It stays on record with your reason, and no longer counts. The rules are looked at again from that day.
void-what = { $where }, entered by { $by }
void-reason = What kind of reason
void-note = The reason, for whoever reads it next
void-note-hint = At least 10 characters.
void-whose = If you know whose visit it was, move it instead, so that nothing measured is lost.
void-move = Move it to another child
void-do = Take it back
void-done = The visit was taken back. What it alone had caused is closed.

# What a correction would change
effect-title = What changes for { $name }
effect-none = No follow-up changes.
effect-closes = Closes:
effect-opens = Opens:
effect-changes = Stays open, with another urgency or day:
effect-urgent = An urgent follow-up would close. If the child may be ill, see it or call before you go on.

# When somebody was first
correction-changed = Somebody changed this visit meanwhile. Look at what stands here now, then send it again.
correction-gone-title = This visit is not here any more
correction-gone = Somebody took it back or moved it to another child meanwhile. Nothing was changed by you.
correction-to-child = To the child’s page

# History on the child's page
history-title = Corrections of this record
history-void = The visit of { $date } was taken back: { $reason }.
history-when = { $name }, { $date }.
history-moved-to = The visit of { $date } was moved to
history-moved-to-other = The visit of { $date } was moved to a child you do not look after.
history-moved-from = The visit of { $date } was moved here from
history-moved-from-other = The visit of { $date } was moved here from a child you do not look after.
history-merged = The record { $code } of { $name } was merged into this one. Its code leads here.

# Choosing the other child
pick-label = Name or code of the child
pick-none = Nobody else found. Try another spelling, or the code.
pick-more = There are more. Write more of the name.

# Moving a visit
move-visit-title = Move the visit of { $date }: { $name }
move-visit-lede = The visit goes to the child it was really about, with everything measured and asked. The rules are looked at again for both children.
move-visit-whose = Whose visit was it?
move-visit-to = To
move-visit-another = Choose another child
move-visit-sure = Did you look at this?
move-visit-sure-yes = Yes, it was a visit to { $name }
move-visit-do = Move it to { $name }
move-visit-done = The visit was moved here. The rules were looked at again for both children.
move-visit-cannot = It cannot be a visit to this child
doubt-other-sex = { $sex ->
        [F] The visit was written down for a boy, and { $name } is a girl.
       *[M] The visit was written down for a girl, and { $name } is a boy.
    }
doubt-left = { $name } left the programme on { $date }, before this visit.
doubt-same-day = { $name } has a visit on this day already. Both are kept, and the app asks about it.
doubt-unusual = { $what }: unlike what is known of { $name }.
obstacle-before-birth = { $name } was born on { $date }, after this visit. Look at both dates.
obstacle-after-death = { $name } died on { $date }, before this visit. Look at both dates.
fault-after-death = This visit lies after the child’s death. Look at both dates.
fault-look-first = Look at what stands here, then tick.

# Merging two records of one child
merge-way = Two records of one child? Merge them
merge-title = Merge { $name } with another record
merge-lede = For one child that was registered twice. Visits, follow-ups, outcomes and foods come together in one record. It cannot be undone.
merge-which = Which record is the same child?
merge-compare = The two records
merge-fact = Fact
merge-column = Record { $code }
merge-bold = What differs is bold. Twins share a birth date and a mother: they stay two.
merge-differs = (differs)
merge-name = Name
merge-known-as = Called
merge-caregiver = Caregiver
merge-phone = Phone
merge-village = Village
merge-worker = Worker
merge-registered = Registered
merge-visited = Visits
merge-visits = { $count ->
        [one] { $count }, on { $from }
       *[other] { $count }, { $from } to { $to }
    }
merge-last-weight = Last weight
merge-open = Open follow-ups
merge-weeks = { $weeks } weeks and { $days } days
merge-right-born = Birth date
merge-right-sex = Girl or boy
merge-right-birth-weight = Birth weight
merge-right-gestation = Length of pregnancy
merge-right-status = In the programme
merge-ask-born = Which birth date is right?
merge-ask-sex = Girl or boy: which is right?
merge-ask-birth-weight = Which birth weight is right?
merge-ask-gestation = Which length of pregnancy is right?
merge-ask-status = What is true now?
merge-same-days = Both have a visit on { $days }. Both visits are kept, and the app asks about it.
merge-open-then = What is open afterwards
merge-open-depends = What is open afterwards depends on your answers. The rules are looked at again from the first visit.
merge-survivor = Which record goes on?
merge-survivor-hint = Its name, caregiver, village and worker stay. The code of the other leads to it.
merge-record = { $code }, { $name }
merge-sure = Is it one child?
merge-sure-yes = Yes: I asked the family or the worker
merge-do = Merge the two records
merge-done = The two records are one. The code of the other leads here.
merge-led-here = { $code } was merged into this record.
merge-changed = Somebody changed one of these records meanwhile. Look at what stands here now, then send it again.
merge-already-title = These are one record already
merge-already = Somebody merged them meanwhile. Nothing was changed by you.
merge-contradicts = As they stand, these cannot be one child
merge-visit-before-birth = There is a visit on { $date }, before that birth date. Choose the other date, or move that visit to the child it was about.
merge-registered-before-birth = One record was registered on { $date }, before that birth date. Choose the other date.
merge-one-died = One record says that the child died, the other does not. Record the death on the other one first, or take these for two children.
merge-died-on-other-days = The two records give different days of death. Look at both with the family.
merge-visit-after-death = There is a visit on { $date }, after the day of death. Move or take back that visit first, if it was not of this child.

# Records that may be one
twin-note = May be the same child as another record:
twin-compare = Compare the two
twin-tell = If it is the same child, tell your supervisor, who can merge the two records.
