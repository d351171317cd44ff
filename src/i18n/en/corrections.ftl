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
effect-line = { $class }, check by { $day }: { $why }
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
