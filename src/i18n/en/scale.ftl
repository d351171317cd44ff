# Is it real or is it the scale: the error of measuring beside gains, losses and drops.

scale-heading = Is it real or is it the scale?
scale-weight = Two careful weighings of the same child can lie up to { $tolerance } apart by measuring error alone.
scale-length = Two careful measurements of the same child’s length can lie up to { $tolerance } apart by measuring error alone.
scale-z = That much is { $before } z on { $before_on } and { $now } z on { $on }.
scale-within = This finding lies within that error: measure a second time. It stays as urgent as it is.
scale-beyond = This finding is more than that error.
scale-untold = A slip of the pen, another scale or another child can make a greater difference: measure a second time.
scale-drawing = The change and how far it could be off
scale-drawing-said = { $change }; a second weighing could make it anything from { $low } to { $high }.
scale-drawing-limit = It is compared with { $limit }.
scale-limit = against { $limit }
scale-last-within = The last change of weight may be no more than that: weigh a second time.
scale-last-beyond = The last change of weight is more than that.
scale-bars-weight = The bars at the points show how far another careful weighing could have lain: { $error } up or down.
scale-bars-length = The bars at the points show how far another careful measurement could have lain: { $error } up or down.
scale-plus-minus = { $value } ± { $error }
scale-change = Change of weight
scale-change-may-be = { $change }, may be the scale
scale-signed = +{ $change }
scale-closer = The last weights, closer
scale-closer-title = { $name }: the last weights, closer
