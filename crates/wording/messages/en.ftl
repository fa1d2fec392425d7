### English. One sentence for each thing that can be said; what stands in braces is filled in.

## Numbers with their nouns

# What stands before decimals.
mark-decimal = .

days = { $days ->
    [one] 1 day
   *[other] { $days } days
}

# Colonies or lots in the order in which people count, runs of consecutive numbers in one.
colonies-run = { $first }-{ $last }
colonies-run-of-hyphens = { $first } to { $last }
colonies-counted = { $names } ({ $count })

# A jurisdiction by its code.
part-jurisdiction = { $jurisdiction ->
    [gb] Great Britain
    [ni] Northern Ireland
    [eu] the European Union
    [de] Germany
    [fr] France
    [ie] Ireland
    [it] Italy
    [pl] Poland
    [ch] Switzerland
    [us] the United States
   *[other] { $jurisdiction }
}

notice = An aid to record-keeping: the leaflet on the pack, the prescriber and local law decide.

# An amount with its unit; $quantity may be a range, $number says whether it is one.
amount = { $unit ->
    [g] { $quantity } g
    [ml] { $quantity } ml
    [strip] { $number ->
        [one] { $quantity } strip
       *[several] { $quantity } strips
    }
    [tray] { $number ->
        [one] { $quantity } tray
       *[several] { $quantity } trays
    }
    [tablet] { $number ->
        [one] { $quantity } tablet
       *[several] { $quantity } tablets
    }
    [wafer] { $number ->
        [one] { $quantity } wafer
       *[several] { $quantity } wafers
    }
    [piece] { $number ->
        [one] { $quantity } piece
       *[several] { $quantity } pieces
    }
   *[other] { $number ->
        [one] { $quantity } { $unit }
       *[several] { $quantity } { $unit }s
    }
}

# Stands for the name of a medicine whose lot, or first dose, is not on record.
medicine-not-on-record = (not recorded)

## Supering: may this colony be supered

# A course, by the name on its pack and its first day. One that is given leaves nothing in the hive to be taken out.
supering-course-given = { $pack } given { $day }
supering-course-placed = { $pack } placed { $day }

# A term of a course, as it stands after "the".
term-name = { $term ->
    [supers-during] rule on supers while it is in
    [flow-during] rule on use in a nectar flow
    [flow-before] rule on use right before a nectar flow
    [withdrawal] withdrawal period
    [wait] wait between removal and supers
    [removal] rule on removal
    [used-up] time after which it is used up
    [stay-min] minimum stay
    [stay-min-with-brood] minimum stay with brood
    [stay-max] maximum stay
    [doses] number of doses
   *[dose-interval] interval between doses
}

# The same in two or three words.
term-brief = { $term ->
    [supers-during] rule on supers
    [flow-during] rule on use in a flow
    [flow-before] rule on use before a flow
    [withdrawal] withdrawal period
    [wait] wait before supers
    [removal] rule on removal
    [used-up] when it is used up
    [stay-min] minimum stay
    [stay-min-with-brood] minimum stay with brood
    [stay-max] maximum stay
    [doses] number of doses
   *[dose-interval] interval between doses
}

# The same as a question; it stands as the subject before "is not stated" and "was not read".
term-question = { $term ->
    [supers-during] whether supers may be on while it is in
    [flow-during] whether it may be in during a nectar flow
    [flow-before] whether it may be used right before a nectar flow
    [withdrawal] how long the withdrawal period is
    [wait] how long supers must wait once it is out
    [removal] whether it has to come out
    [used-up] when it is used up
    [stay-min] how long it must stay
    [stay-min-with-brood] how long it must stay with brood
    [stay-max] how long it may stay
    [doses] how many doses make a course
   *[dose-interval] how many days there are between doses
}

# The answer in one sentence. Each of those that follow takes in what was said so far as $answer.
supering-yes = Supers may go on
supering-yes-no-honey-before = Supers may stay on, but no honey may be taken before { $day }
supering-yes-no-honey-yet = Supers may stay on, but no honey may be taken yet; the day from which it may be taken is not known
supering-no = No supers
supering-not-known = Not known whether supers may go on
supering-must-come-off = { $answer } (and those on now must come off)
supering-off-for-dose = { $answer }, and off again for the next dose: { $dose }
supering-because = { $answer }: { $why }
supering-free-from = { $answer }; supers may go on from { $day }
supering-free-once-out = { $answer }; supers may go on once everything is out, { $out } at the earliest
supering-free-if-out = { $answer }; supers may go on from { $free } if everything is out on { $out }
supering-or-without-brood = { $answer }, or on { $day } if there is no brood

# Grounds. $name is a course.
supering-breach = breach: { $said }
supering-colony-not-recorded = no such colony is on record
supering-not-yet-begun = the colony was not on record before { $begun }
supering-ended = the colony ended on { $day }
supering-came-with-unknown = it is not known what medicine was in the colony when its record began
supering-records-in-archive = records that may bar supers up to { $through } are in an archive: ask with that archive
supering-nothing-on-record-since = what is in an archive bars no supers from { $since } on, and no other medicine is on record up to this day
supering-nothing-given = no medicine was given up to this day
supering-still-in = { $name } is still in according to the record, and honey supers must stay off while it is
supering-in-supers-allowed = { $name } is in, and honey supers may be on while it is
supering-in-no-honey = { $name } is in, and honey supers may be on while it is, but no honey may be taken
supering-whereabouts-not-said = nobody recorded where { $name } went when the colony was split or united on { $since }
supering-barred-wherever-it-went = { $name } bars supers whether it is in or out: nobody recorded where it went when the colony was split or united on { $since }
supering-barred-used-up-or-not = { $name } bars supers whether it is in or out: it may have been used up since { $since }
supering-nothing-stays-yet-stays = { $name }: it was stated that nothing stays in the hive, but its leaflet or a minimum stay says that it does; one of the two is wrong
supering-used-before-flow = { $name } must not be used right before a nectar flow: it was in until { $out }, a flow began on { $began }, and supers must stay off through { $through }
supering-flow-names-no-days = { $name } must not be used right before a nectar flow, but the leaflet does not say how many days: it was in until { $out }, and a flow begins on { $begins }
supering-flow-not-on-record = { $name } must not be used right before a nectar flow: it was in until { $out }, and no flow since then is on record
supering-read-afterwards = { $name }: a looser { $term } was read after it was given; it does not count for this course unless the entry that is wrong is corrected
supering-looser-than-leaflet = { $name }: the stated { $term } is less strict than the documented leaflet; check the pack again
supering-not-documented = { $name }: the { $term } ({ $value }) is not documented, so it cannot support a yes
supering-used-up-not-known = { $name }: it is not established whether it is used up by now
supering-removal-not-known = { $name }: it is not established whether it has to be taken out, so it may be in or used up
supering-term-not-known = { $name }: the { $term } is not known
supering-withdrawal-runs = the withdrawal period of { $name } is running: { days } after { $out }, last blocked day { $last }
supering-wait-runs = the wait before supers for { $name } is running: { days } after { $out }, last blocked day { $last }
supering-withdrawal = withdrawal { days }
supering-no-withdrawal-by-label = the label has no withdrawal period
supering-wait = wait { days }
supering-no-further-wait = no further wait
supering-over-once-given = { $name } no longer bars supers ({ $withdrawal }, { $wait })
supering-over-once-out = { $name } has been out since { $out } and no longer bars supers ({ $withdrawal }, { $wait })
supering-no-honey-through = { $name }: no honey may be taken through { $day }
supering-no-honey-while-in = { $name }: no honey may be taken while it is in
supering-stayed-at-least = { $name } { $came ->
    [too-early] came out too early
   *[long-enough] stayed long enough
}: { $stayed } of at least { days }; earliest day out { $least }
supering-stayed-under-brood = { $said }, { $seen }
supering-stay-turns-on-brood = { $name } stayed { $stayed ->
    [one] 1 day
   *[other] { $stayed } days
}; whether { $shorter } or { $longer } were needed depends on brood, and no brood inspection that counts was recorded by { $until }
supering-out-in-time = { $name } came out in time: { $stayed } of at most { days }
supering-overdue = { $name } is overdue: it had to be out by { $latest }, { days } after placing
supering-stayed-too-long = { $name } stayed too long: { $stayed } of at most { days }; it had to be out by { $latest }
supering-all-doses-given = { $name }: { $doses ->
    [1] its one dose was given
   *[other] all { $doses } doses were given
}
supering-doses-given = { $name }: { $given } of { $doses } doses were given
supering-dose-off-time = { $name }: dose { $number } on { $day } came { $after ->
    [one] 1 day
   *[other] { $after } days
} after the previous dose, not { $wanted }
supering-days-between = { $least } to { $most } days
supering-days-at-least = at least { days }
supering-days-at-most = at most { days }
supering-another-time = as stated
supering-supers-were-on = honey supers went on { $from } and came off { $off }, while { $name } was in: their honey is not for human consumption
supering-supers-are-on = honey supers went on { $from } and are still on, while { $name } was in: their honey is not for human consumption
supering-no-supers-on = no honey supers were on while { $name } was in
supering-combs = { $name }, combs: { $text }
supering-no-brood-seen = no brood seen on { $day }
supering-lowest-brood-seen = brood at its lowest seen on { $day }
supering-brood-seen = brood seen on { $day }

# The values that a ground used.
supering-value-days = { days }
supering-value-forbidden = forbidden
supering-value-forbidden-days = forbidden for { days }
supering-value-none-by-label = none by label
supering-value-days-apart = { $least } to { $most } days apart
# Stands for a number of days that nobody stated.
supering-value-any = any
supering-value-whole-time = the stated withdrawal period covers the whole time after treatment

# What must happen first. $earliest is one of the sentences on when it may come out.
supering-take-supers-off = take the honey supers off now (on since { $since }); their honey is not for human consumption
supering-record-whereabouts = look for { $name } and record its removal, or correct the entry of { $since } to say where the strips went
supering-dose-was-due = give dose { $number } of { $of } of { $name }: it was due by { $by }
supering-dose-on = give dose { $number } of { $of } of { $name }: on { $day }
supering-dose-from-by = give dose { $number } of { $of } of { $name }: from { $from }, by { $by }
supering-dose-from = give dose { $number } of { $of } of { $name }: from { $from }
supering-dose-by = give dose { $number } of { $of } of { $name }: by { $by }
supering-dose-by-leaflet = give dose { $number } of { $of } of { $name }: as the leaflet says
supering-take-out = take out { $name }: { $earliest }
supering-take-out-by = take out { $name }: { $earliest }; must be out by { $latest }
supering-take-out-late = take out { $name }: { $earliest }; it had to be out by { $latest }
supering-no-least-stay = no minimum stay is stated
supering-earliest-not-known = from when is not known, because { $lack } is not stated
supering-may-come-out = may come out from { $day }
supering-not-before-tomorrow = not before { $day }, tomorrow
supering-not-before = not before { $day }, in { $days } days
supering-earliest-under-brood = { $earliest } ({ $seen })
supering-earliest-turns-on-brood = { $earliest }; no brood inspection that counts is on record: { $absent } without brood, { $present } with brood; the later day applies until one is recorded
supering-wait-until-spent = wait for { $name }: it is used up on { $spent }; nothing has to be taken out
supering-wait-through = wait for { $name }: it bars supers through { $last }

# What is missing, and what the keeper is asked for. $lots are lots as the two last messages put them.
supering-brood-not-known = { $name }: whether there is brood; the earliest day is { $absent } without brood, { $present } with brood
supering-ask-arrival = record when it came into the holding
supering-ask-earlier-arrival = correct entry { $entry } if the colony was here earlier
supering-ask-former-keeper = ask its previous keeper, then correct entry { $entry }
supering-ask-look-inside = check the hive: record a removal, or correct entry { $entry }
supering-ask-where-strips-went = correct entry { $entry } to say where the strips went
supering-ask-look-at-pack = check the pack again, then correct entry { $entry }, which says that nothing stays, or the statement of a minimum stay
supering-ask-next-flow = record the next nectar flow there, as seen or as expected
supering-ask-days-before-flow = on the leaflet of lot { $lots }, read how many days before a flow it means, or ask the prescriber or supplier, and record it (0 only if it allows use right before a flow; if it gives no number, record nothing)
supering-ask-brood-between = record the brood seen between { $from } and { $until }, if anyone looked
supering-ask-brood = inspect the brood and record it
supering-ask-jurisdiction = record the holding's jurisdiction, so that its leaflets are used
supering-ask-pack = this program has no leaflet `{ $leaflet }` here: record what the pack says
supering-ask-pack-or-near-leaflet = this program has no leaflet `{ $leaflet }` here: name `{ $near }`, or record what the pack says
supering-ask-term = on the leaflet of lot { $lots }, read the { $term } and record it
supering-ask-term-or-zero = on the leaflet of lot { $lots }, read the { $term } and record it, even if it is 0
supering-ask-stays = on the leaflet of lot { $lots }, read how long it must and may stay, and record it
supering-lot = `{ $lot }`
supering-lots = { $lots } and lot { $lot }

# The answer at a glance: a reason in a line, then what to do next. $said is a sentence on taking it out.
glance-at = { $colonies } at { $apiary }
glance-no-honey-before = no honey may be taken before { $day }
glance-no-honey-yet = no honey may be taken yet; the day from which it may be taken is not known
glance-still-in = { $name } still in
glance-came-with-unknown = not known what medicine was in it when its record began
glance-whereabouts = { $name }: not said where it went on { $since }
glance-not-known = { $name }: { $term } not known
glance-not-documented = { $name }: { $term } not documented
glance-withdrawal = withdrawal period of { $name } until { $last }
glance-wait = wait after { $name } until { $last }
glance-supers-off = take the honey supers off now (on since { $since })
glance-take-out-now = take it out now (was due by { $by })
glance-take-out-on = take it out on { $day }
glance-take-out-between = take it out from { $from }, by { $by }
glance-take-out-by = take it out by { $by }
glance-take-out-from = take it out from { $from }
glance-take-out-by-leaflet = take it out when the leaflet says
glance-without-brood = { $said } (without brood from { $day })
glance-supers-from = supers may go on from { $day }
glance-then-supers = { $next }; supers from { $day }
glance-both = { $one }; { $other }
glance-off-for-dose = off again for the next dose: { $dose }
glance-supers-once-out = { $next }; once out, supers from { $day }
glance-read-leaflet = read the leaflet of { $lots } and record it
glance-ask-former-keeper = ask its previous keeper, then correct its first entry
glance-look-inside = look inside, then record a removal or correct where it went
glance-where-strips-went = correct the split or uniting to say where the strips went

## Due: what must or may be done

# Titles stand alone on a phone. $pack is a name on a pack, $name a course, $lots lots as due-lots puts them.
# A task in a line: $said is the title with its colonies.
due-brief-in = { $title }: { $colonies }
due-brief-overdue = { $said }, was due by { $by }
due-brief-on = { $said }, on { $day }
due-brief-between = { $said }, { $from } to { $by }
due-brief-from = { $said }, from { $from }
due-brief-by = { $said }, by { $by }
due-take-supers-off-title = Take the honey supers off
due-take-supers-off = take the honey supers off now: they have been on since { $since } and must be off for { $courses }; their honey is not for human consumption
due-take-supers-off-for-dose-title = Take the honey supers off before dose { $number }
due-take-supers-off-for-dose = take the honey supers off before dose { $number } of { $name } is given: they may be on now, and not with that dose
due-courses = { $courses } and { $course }
due-find-carriers-title = Find out where { $pack } went
due-record-end-title = Record what became of the medicine in it
due-record-end = { $name } was in when the colony ended on { $ended }, and nobody recorded what became of it: record its removal, dated that day at the latest
due-give-dose-title = Give dose { $number } of { $of } of { $pack }
due-dose-by = give dose { $number } of { $of } of { $name }: by { $by }; its earliest day is not stated
due-dose-by-leaflet = give dose { $number } of { $of } of { $name }: when the leaflet says; its day is not stated
due-take-out-title = Take out { $pack }
due-not-before = not before { $day }
due-not-before-by-brood = not before { $without } without brood, { $with } with brood; no brood inspection that counts is on record
due-used-up-title = { $pack } is used up
due-used-up = { $name } is used up on { $day }; nothing has to be taken out
due-supers-free-title = Supers may go on from this day
due-supers-free-if-out-title = Supers may go on from this day, if everything is out
due-supers-free = first free day for supers after { $name }: { $free }
due-supers-free-if-out = first free day for supers after { $name }: { $free }, if everything is out on { $out }
due-count-mites-title = Count mites after the treatment
due-count-mites = count mites to see whether { $name } worked: 10 to 14 days after its end on { $ended }, so { $from } to { $by } (advice)
due-ask-former-keeper-title = Find out what medicine was in it
due-ask-former-keeper = ask whoever kept it before { $since } what medicine was in it, then correct the entry of that day
due-read-leaflet-title = Read the leaflet of { $lots }
due-record-jurisdiction-title = Record the holding's jurisdiction
due-look-inside-title = Check whether it is out
due-record-missing-title = Record what is missing
due-record-missing = for { $name }: { $how }
# $said is the sentence before.
due-record-missing-and-terms = { $said }; also the { $terms }
due-read-leaflet = for { $name }: on the leaflet of { $lots }, read and record the { $terms }
# $said asks for terms, a period in days among them.
due-zero-included = { $said } (even if 0)
due-terms = { $terms } and the { $term }
due-lots = { $count ->
    [0] the lot
    [one] lot { $lots }
   *[other] lots { $lots }
}
due-last-day-title = Last day to use what was opened of lot { $lot }
due-last-day = { $lot }: what was opened may be given until { $until }
due-lot-expires-title = Lot { $lot } expires
due-lot-expires = { $lot } may be given until { $expiry }; dispose of it after that
due-dispose-title = Dispose of lot { $lot }
due-dispose = dispose of { $lot }: { $why }
due-lot-left = { $amount } of { $pack } (lot { $lot })
# Where the book of the lot does not come out.
due-lot-named = { $pack } (lot { $lot })
due-complete-record-title = Complete the record: entry no. { $place }
due-complete-record = { $gap }: { $supply }

## Options: what else can be used here

options-notice = { $notice } It does not choose a medicine for you.

# Where several things are named in a row.
options-and = { $one } and { $other }
options-from-to = { $from } to { $to }
# The value of a rule, and what is found of it.
options-rule-and-fact = { $rule }: { $fact }

# What a leaflet speaks of, as it stands after "nothing of" and "read".
options-topic = { $topic ->
    [supers_during] supers while it is in
    [flow_during] use in a nectar flow
    [flow_before] use right before a nectar flow
    [withdrawal] the withdrawal period
    [wait_after_removal] the wait before supers
    [harvest_during] taking honey while it is in
    [comb_rule] the combs
    [removal] removal
    [stay_min] the minimum stay
    [stay_max] the maximum stay
    [doses] the doses
    [courses_per_year] the number of courses in a year
    [courses_per_broodless_period] the number of courses in one broodless period
    [gap_between_courses] the gap between courses
    [season] the season
    [timing] the timing
    [temperature] the temperature
    [brood] the brood
    [colony_size] the strength of the colony
    [brood_boxes] the brood boxes
    [entrance] the entrance
    [dose] the dose
    [dose_cap] the maximum for one colony
    [recipe] the recipe
    [needs] the equipment needed
    [not_with] medicines that must not be in with it
    [contraindication] when it must not be used
    [class] the class
    [whole_apiary] treating all colonies of the apiary
    [user_safety] the cautions for the user
    [after_opening] how long it keeps once opened
    [storage] storage
   *[disposal] disposal
}

options-counting = { $what ->
    [seams-of-bees] seams of bees
    [bees] bees
    [brood-boxes] brood boxes
   *[litres-of-hive] litres of hive
}
# The same with the number.
part-options-count = { $what ->
    [seams-of-bees] { $count ->
        [one] 1 seam of bees
       *[other] { $count } seams of bees
    }
    [bees] { $count ->
        [one] 1 bee
       *[other] { $count } bees
    }
    [brood-boxes] { $count ->
        [one] 1 brood box
       *[other] { $count } brood boxes
    }
   *[litres-of-hive] { $count ->
        [one] 1 litre of hive
       *[other] { $count } litres of hive
    }
}

options-within = { $within ->
    [calendar-year] calendar year
    [twelve-months] twelve months
    [year] year
   *[time-without-brood] broodless period
}

# Why a condition holds, is broken or is not known.

options-not-here = the colony is not in the holding on that day
options-here = the colony is in the holding
options-apiary-not-known = it is not on record where the colony stands
options-moved = it was moved on { $on }: ask again from that day
options-has-directions = the leaflet gives directions for that day
options-no-directions = no directions for that day are known
options-not-stated = the leaflet used here says nothing about { $topic }
options-not-documented = { $confidence ->
    [second_hand] this would be met, but the value was read in a text other than this country's document
   *[unconfirmed] this would be met, but nobody has read the value in a document
}
options-stay-not-documented = it would be out before the flow, but this was not read in a document: { $lacks }
options-may-stay-longer = this would be met for the days stated, but this was not read in a document: { $lacks }
options-not-in-force = the rule is not in force on that day
options-no-supers-on = no honey supers are on
options-supers-on = { $value ->
    [off] honey supers have been on since { $since }
   *[on] honey supers have been on since { $since }, and may be
}
options-no-flow = no flow on record while it would be in
options-no-flow-until = no flow while it would be in; the next begins on { $next } at the earliest
options-in-flow = it would be in during the flow that begins by { $from }
options-flow-without-end = the flow that began on { $from } may still be on: its end is not on record
options-perhaps-in-flow = it might be in during the flow that begins between { $early } and { $late }
options-flow-turns-on-brood = without brood it may be out on { $without }, before the flow; if brood is seen while it is in, not before { $with }
options-flow-before-stay-is-known = { $lacks } is not stated, and a flow may begin on { $from } while it is still in
options-right-before-flow = it would be out on { $out }, right before the flow that begins by { $from }
options-perhaps-before-flow = the leaflet forbids use right before a flow but does not say how many days: it would be out on { $out }, and the flow begins by { $from }
options-out-in-flow = it must not be used right before a flow: it would be out on { $out }, and the flow that may begin on { $from } may go on after that
options-perhaps-out-in-flow = the leaflet forbids use right before a flow but does not say how many days: it would be out on { $out }, and the flow that may begin on { $from } may go on after that
options-no-flow-on-record-since = it must not be used right before a flow, and no flow is on record from { $out }, the day it would be out
options-flows-not-recorded = no nectar flow is on record for { $year }
options-flow-allowed = it may be used during a nectar flow
options-after-last-flow = the last flow on record ended on { $last }, and no supers are on
options-flow-still-to-come = the flow of { $from } is still to come or not yet over
options-already-in = `{ $medicine }` placed on { $placed } is in
options-perhaps-in = `{ $medicine }` placed on { $placed } may be over by then, but is not on record as out or ended
options-perhaps-further-dose = a further dose of the course of `{ $medicine }` begun on { $placed } may still be given
options-came-with-unknown = nobody knows what it had been given, or what was in it, when it came on { $since }
options-beside-is-not-stated = `{ $medicine }` placed on { $placed } is in, and no leaflet says whether the two may be in together
options-nothing-in = no such medicine is in
options-feeder = a feeder was on, as seen on { $seen }
options-no-feeder = no feeder was on, as seen on { $seen }
options-feeder-not-seen = it is not on record whether a feeder is on
options-brood-seen = { $brood ->
    [absent] no brood seen on { $on }
    [lowest] brood at its lowest seen on { $on }
   *[present] brood seen on { $on }
}
options-brood-never-seen = no brood inspection is on record
options-brood-seen-too-long-ago = the brood was last inspected on { $last }, too long before that day to count
options-counted = { part-options-count } on { $on }
options-never-counted = no count of { $what } is on record
options-count-does-not-tell = { part-options-count } on { $on }, which does not count for that day
options-courses-none-before = { $given } of at most { $most } in the { $within }
options-courses = { $given } of at most { $most } in the { $within }, the last begun on { $last }
options-courses-turn-on-year = { $in-calendar-year } of at most { $most } in the calendar year, but { $in-twelve-months } in twelve months; the leaflet does not say which counts
options-no-brood-since = given on { $last }, and no brood seen since
options-not-looked-at-since = given on { $last }, and the brood has not been inspected since
options-brood-since = given on { $last }; brood was seen afterwards, on { $seen }
options-no-course-before = no earlier course of it counts
options-since-last = the last course ended on { $ended }; { $days } must pass before the next
options-last-not-ended = the course begun on { $placed } has no end on record
options-in-season = within the season, { $from } to { $to }
options-outside-season = outside the season, { $from } to { $to }
options-class-repeats = `{ $medicine }` given on { $placed } is of the same class, { $class }; changing class slows resistance but does not rule it out
options-class-differs = neither of the last two courses is of its class, { $class }
options-class-not-known = the class of `{ $medicine }` given on { $placed } is not known

options-power-needed = { $need ->
    [battery] a 12 V battery
   *[mains] mains or a generator
}
# A fact of the site that the question itself gave.
options-assumed = { $fact } (as assumed in the question)
options-power = it needs { $needed }; power there: { $has ->
    [none] none
    [battery] battery
    [generator] generator
   *[mains] mains
}
options-power-not-known = it needs { $needed }; the power there is not on record
options-access = the apiary { $access ->
    [vehicle] can be reached by vehicle
   *[on_foot] can be reached on foot
}
options-no-access = the apiary cannot be reached on { $on }
options-access-not-known = it is not on record whether the apiary can be reached on { $on }
options-ground = the ground at the stands is { $ground ->
    [dry] dry
    [wet] wet
   *[flooded] flooded
}
options-ground-not-known = it is not on record whether the ground is dry

options-measure = { $measure ->
    [maximum] daily maximum
    [mean] mean over the stay
   *[some-moment] at some time of the day
}
options-origin = { $origin ->
    [measured] measured
    [forecast] forecast
   *[usual-years] as in a usual year
}
options-temperature = { $measure } { $value } °C, { $origin }
options-temperatures = { $measure } { $lowest } to { $highest } °C, { $origin }
options-temperature-on = { $measure } { $value } °C on { $on }, { $origin }
options-no-temperature = no temperature is on record for { $first }
options-stay-not-known = { $lacks } is not stated, so the days that count are not known
options-stay-not-known-at-all = how long it stays is not stated, so the days that count are not known

# What giving it needs of the site.
options-need = { $need ->
    [battery] a 12 V battery
    [mains_or_generator] mains or a generator
    [dry_ground] dry ground at the stands
   *[return_visit] a later visit
}

# What would have to change for a condition that is broken.

options-change-here = the colony would have to be in the holding
options-change-supers-off = take off the honey supers, on since { $since }
options-change-long-before-flow = start early enough that it is out long before { $from }, when the flow may begin, or after the flow
options-change-before-flow = start early enough that it is out before { $from }, when the flow may begin, or after the flow
options-change-after-harvest = wait until after the harvest of the flow of { $from }
options-change-taken-out = wait until `{ $medicine }` placed on { $placed } may come out, and take it out
options-change-feeder-off = take the feeder off
options-change-brood = wait until there is brood
options-change-no-brood = wait for a broodless period, or create one
options-change-fewer-boxes = take brood boxes off
options-change-stronger = strengthen or unite the colony first
options-change-next = wait for the next { $within }
options-change-after = wait until after { $last }
options-change-season = wait for the season, from { $from }
options-change-power = { $need ->
    [battery] bring a 12 V battery
   *[mains] provide mains or a generator there
}
options-change-reached = the apiary would have to be reached on { $on }
options-change-dry-ground = wait until the ground at the stands is dry
options-change-weather = wait for suitable weather
options-change-weather-than-on = wait for better weather than on { $on }

# How to supply what is not known.

options-how-pack = no entry can record it: follow the leaflet on the pack
options-how-pack-or-own = no entry can record it: follow the leaflet on the pack, or load a leaflet of your own
options-how-year-is-counted = no entry can record it: ask the supplier or the vet how the year is counted; until then count the stricter way
options-how-brood-since = inspect the brood and record it: brood seen after { $last } ends the broodless period; if none is seen, the question stays open unless the brood was inspected every three weeks
options-how-brood-shows = it cannot be known beforehand: inspections while it is in will show it, and brood seen then makes it stay longer
options-how-ask-with-ground = it depends on what the question assumed: ask with the ground as it will be then
options-how-next-dose = wait until its next dose can no longer be given, or give that dose first and record it
options-how-vet-or-another-day = ask the vet whether the two may be given on one day, or start on another
options-how-ask-from = ask again about the days from { $day }
options-how-ask-once-apiary-is-known = ask again about days for which it is on record where the colony stands
options-how-look-after-parting = an inspection on the day a colony is split or united does not count: { $look } on the day after, and ask again about the days from then on
options-how-was-in-until = it was in until { $out }: ask about days from then on, or correct that day if it is wrong
options-how-later-dose = a later dose of it was given on { $given }: ask about days after that, or correct that dose if it is wrong
options-look = { $look ->
    [brood] inspect the brood
    [feeder] check for a feeder
   *[count] count the { $what }
}
options-how-look-on = for { $colony }, { $look } on { $day } and record it
options-how-look-between = for { $colony }, { $look } between { $from } and { $to } and record it
options-those-days = those days
options-how-temperatures = record the temperatures measured for { $days }, or the forecast once it covers those days; monthly normals show what to expect
options-how-flows-of = record the flows expected there in { $year }: early, usual and late
options-how-next-flow = record the next flow expected there from { $from }: early, usual and late
options-how-flow-seen = record the flow of { $forage } as seen once it has begun, with its first day, and with its last day once it is over
options-how-site = record { $fact ->
    [power] the power there
    [access] how the apiary can be reached
   *[ground] the ground at the stands
} as it is on { $on }, or give it in the question
options-how-take-out = take out what was placed on { $placed } and record the removal, by { $by } at the latest
options-how-ask-or-take-out = ask the vet whether the two may be in together, or take out what was placed on { $placed } and record the removal, by { $by } at the latest
options-how-came-with = ask its previous keeper, then correct entry { $entry }
options-how-leaflet-of-medicine = name the leaflet of that medicine, so that its class is known
# $lots are the names of the lots, $count how many.
options-how-read = { $count ->
    [0] no lot of it is in stock: once one is, read { $what } on its leaflet and record it
    [one] on the leaflet of lot { $lots }, read { $what } and record it
   *[other] on the leaflet of each lot ({ $lots }), read { $what } and record it
}
# $confirmation is what stands in the entry.
options-how-confirm = { $count ->
    [0] no lot of it is in stock: once one is, check whether its leaflet says the same; if it does, record it with empty `terms`, in `confirms`: { $confirmation }
    [one] check whether the leaflet of lot { $lots } says the same; if it does, record it with empty `terms`, in `confirms`: { $confirmation }
   *[other] check whether the leaflet of each lot ({ $lots }) says the same; if it does, record it with empty `terms`, in `confirms`: { $confirmation }
}

options-no-jurisdiction = the jurisdiction whose leaflets apply to this holding
options-how-jurisdiction = record the holding's jurisdiction, so that its leaflets are used
options-no-leaflets-of = this program has no leaflets of the jurisdiction `{ $jurisdiction }`
options-how-leaflets-of = correct the jurisdiction, or load leaflets of your own

# Doses, and why one is not known.

options-dose-not-counted = { $what ->
    [seams-of-bees] the dose: how many seams of bees there are
    [bees] the dose: how many bees there are, as estimated
    [brood-boxes] the dose: how many brood boxes there are
   *[litres-of-hive] the dose: how many litres the hive holds
}
options-dose-not-stated = the dose: the leaflet here states none
options-dose-not-for-this-size = the dose: the leaflet here states none for a colony of this size
options-dose-one-of = the dose: the record does not say which of these applies: { $doses }
options-dose-other-unit = { $unit ->
    [strip] how many strips the dose is: the leaflet counts it in { $counted-in }
    [tray] how many trays the dose is: the leaflet counts it in { $counted-in }
    [tablet] how many tablets the dose is: the leaflet counts it in { $counted-in }
    [wafer] how many wafers the dose is: the leaflet counts it in { $counted-in }
    [piece] how many pieces the dose is: the leaflet counts it in { $counted-in }
   *[other] how many { $unit }s the dose is: the leaflet counts it in { $counted-in }
}
options-dose-count-not-stated = the course: the number of doses is not stated
options-how-count = count them and record it
options-how-read-amount = no entry can record it: read the amount on the pack, or ask the supplier or the vet
options-how-read-doses = on the leaflet of the lot, read the number of doses in a course and record it
# Something with the condition under which it holds, in the words of the leaflet.
options-under-condition = { $what } ({ $condition })

options-seams = { $count ->
    [one] { $count } seam of bees
   *[other] { $count } seams of bees
}
options-dose-sum = { $amount } { $base }
# For what the leaflet states the amount, as it stands behind it.
options-base-hive = for the hive
options-base-bees = for { $count } bees
options-base-brood-boxes = { $count ->
    [one] x { $count } brood box
   *[other] x { $count } brood boxes
}
options-base-seams = x { $seams }
options-base-frames = x { $seams }, for every { $frames } or part
options-base-comb-sides = x 2 comb sides for each of { $seams }
options-base-litres = { $count ->
    [one] x { $count } litre of hive
   *[other] x { $count } litres of hive
}
options-dose-sum-comes-to = { $sum } = { $exact }
options-dose-sum-capped = { $sum }, capped at { $each }
options-dose-sum-rounded-up = { $sum }, rounded up to { $each }

# What a start means for supers.

options-supers-all-along = supers may be on throughout
options-supers-all-along-no-harvest = supers may be on throughout, but no honey may be taken while it is in
options-supers-from = supers may go on from { $day }
options-supers-from-if-out-early = supers may go on from { $day }, if it comes out on the earliest day
options-supers-others-not-known = it is not known when supers may go on, because of what is in already or was given before
options-supers-stay-not-known = how long it has to stay, or how many doses there are and when, is not stated, so no first free day is known
options-supers-periods-not-known = the withdrawal period or the wait before supers is not established: read it on the leaflet of the lot

# Visits.

options-visit-dose = { $placed ->
    [yes] place dose { $number }
   *[no] give dose { $number }
}
options-visit-only-dose = { $placed ->
    [yes] place it
   *[no] give it
}
options-visit-wait-not-stated = { $what }; how long to wait for it is not stated
options-visit-see-further-doses = check the leaflet for further doses, and when they are given
options-visit-take-out = take it out
options-visit-take-out-at-some-time = take it out; no minimum stay is stated
options-visit-take-out-after-last-dose = take it out; how long after the last dose is not known
options-visit-see-removal = check the leaflet for whether it has to come out

# Why an option stands where it stands in the list.

options-order-answer = { $answer ->
    [usable] usable on some day
    [unknown] not known to be usable on any day
   *[ruled-out] ruled out on every day
}
options-order-class = { $state ->
    [met] of a different class from the last two courses
    [broken] of the same class as one of the last two courses
   *[unknown] not known whether its class differs from the last two courses
}
options-order-out-before-flow = out before the next flow, if started on its first day
options-order-not-out-before-flow = not out before the next flow, if started on its first day
options-order-before-flow-not-known = not known whether it is out before the next flow
options-order-visits = { $count ->
    [one] 1 visit
   *[other] { $count } visits
}
options-order-visits-at-least = number of visits not known, at least { $count }
options-order-visits-not-known = number of visits not known

# What to carry and to see to.

options-carry-medicine = the medicine in its pack with the leaflet, and the protection that the cautions ask for
options-carry-kit = the kit for giving it, which can be carried in
options-carry-battery = the vaporiser and a 12 V car battery of more than 40 Ah, about 12 kg
options-carry-device = the device, and a generator where there is no mains power
options-carry-tools = smoker and hive tool: the hive is opened
options-advice = advice: { $text }
options-caution-flooded = flooded ground: keep the medicine and anything that comes out of the hive out of the water, and store nothing there
options-caution-pack = follow the cautions on the pack

## Leaflets: what a rule says

leaflet-supers-during = { $value ->
    [off] supers off while it is in
    [on] supers may be on while it is in
   *[on_no_harvest] supers may be on while it is in, no honey taken meanwhile
}
leaflet-flow-during = { $value ->
    [forbidden] not in a nectar flow
   *[allowed] may be used in a nectar flow
}
leaflet-harvest-during = { $value ->
    [forbidden] no honey taken while it is in
   *[allowed] honey may be taken while it is in
}
leaflet-flow-before = not right before a nectar flow
leaflet-flow-before-days = not in the { $days } before a nectar flow
leaflet-no-withdrawal = no withdrawal period by the label
leaflet-withdrawal = withdrawal period { $days }
leaflet-wait-after-removal = { $days } from removal to supers
leaflet-removal = { $value ->
    [needed] removal needed
    [not_needed] removal not needed
   *[nothing_stays] removal nothing stays
}
leaflet-stay-min = { $brood ->
    [any] at least { $days }
    [absent_or_lowest] at least { $days }, brood absent or at its lowest
   *[present] at least { $days }, brood present
}
leaflet-stay-max = { $brood ->
    [any] at most { $days }
    [absent_or_lowest] at most { $days }, brood absent or at its lowest
   *[present] at most { $days }, brood present
}
leaflet-doses = { $count ->
    [one] 1 dose
   *[other] { $count } doses
}
leaflet-doses-range = { $count } to { $most } doses
leaflet-doses-apart = { $doses }, { $days } apart
leaflet-doses-apart-range = { $doses }, { $least } to { $days } apart
leaflet-doses-apart-at-least = { $doses }, at least { $days } apart
leaflet-doses-apart-at-most = { $doses }, at most { $days } apart
leaflet-courses = { $count ->
    [one] 1 course
   *[other] { $count } courses
}
leaflet-courses-per-year = { $counted ->
    [calendar_year] at most { $courses } in a calendar year
    [twelve_months] at most { $courses } in a twelve months
   *[not_said] at most { $courses } in a year
}
leaflet-courses-per-broodless-period = at most { $courses } in one time without brood
leaflet-gap-between-courses = at least { $days } between courses
leaflet-season = only from { $from } to { $to } of a year
leaflet-timing = only after the last harvest of the year
# $bounds is one of the four that follow.
leaflet-temperature = { $window ->
    [maximum_on_placing_day] highest temperature of the day of placing { $bounds }
    [maximum_in_first_days] highest temperature of each of the first { $days } days { $bounds }
    [maximum_over_stay] highest temperature of every day of the stay { $bounds }
    [mean_over_stay] mean temperature over the stay { $bounds }
    [at_use] outside temperature at the moment of use { $bounds }
   *[product] temperature of the product { $bounds }
}
leaflet-bounds-both = { $min } to { $max } °C
leaflet-bounds-min = { $min } °C or more
leaflet-bounds-max = at most { $max } °C
leaflet-bounds-none = without bounds
leaflet-brood = { $value ->
    [absent] brood absent
    [lowest] brood lowest
   *[present] brood present
}
leaflet-brood-frames = at least { $frames } brood frames covered
leaflet-bees = at least { $bees } bees
leaflet-brood-boxes = { $max ->
    [one] on one brood box only
   *[other] on at most { $max } brood boxes
}
leaflet-range = { $least } to { $most }
leaflet-dose = { $amount } { $per }
# Put behind a dose, in the words of the leaflet.
leaflet-when = { $says } ({ $when })
leaflet-per = { $per ->
    [hive] for a hive
    [brood_box] for each brood box
    [frames_of_bees] for every { $frames } frames of bees or part
    [seam] for each seam of bees
    [small_colony] for a small colony
    [comb_side] for each side of an occupied comb
   *[litre_of_hive] for each litre of hive
}
leaflet-per-bees = for { $least } to { $most } bees
leaflet-per-bees-at-least = for { $least } bees or more
leaflet-per-bees-at-most = for at most { $most } bees
leaflet-per-colony = for a colony
leaflet-dose-cap = at most { $amount } { $unit } in one colony
leaflet-recipe = { $parts } make { $ml } ml
leaflet-recipe-medicine = { $amount } { $unit }
leaflet-recipe-water = { $ml } ml water
leaflet-recipe-sugar = { $g } g sugar
leaflet-need = { $need ->
    [mains_or_generator] mains or generator
    [battery] battery
    [carry_in_kit] carry in kit
    [hive_opened] hive opened
    [return_visit] return visit
   *[dry_ground] dry ground
}

## Gaps: what is missing from the legal record

# The row that a gap is about; its sentence begins with it.
gaps-about-medicine = the medicine { $medicine }
gaps-about-acquisition = lot { $lot } of { $medicine }, acquired on { $on }
gaps-about-vet-lot = lot { $lot } of { $medicine }, of the vet's own stock, recorded for { $on }
gaps-about-administration = { $medicine } given on { $on } to { $colonies }
gaps-about-disposal = { $amount } of lot { $lot } disposed of on { $on }
# Stands in place of their names where there are more than a few.
gaps-many-colonies = { $colonies } colonies

gaps-not-recorded = { $about }: { $field ->
    [proof_of_purchase] { law-field }
    [prescriber] { law-field }
    [route] { law-field }
    [colonies] { law-field }
    [disposal_how_and_where] { law-field }
   *[other] the { law-field }
} is not recorded
gaps-withdrawal-not-recorded = { $about }: the withdrawal period is not recorded
gaps-withdrawal-said-by-leaflet = { $about }: the withdrawal period is not recorded; the built-in leaflet says { $days }, but that is not a record of yours
gaps-end-not-known = { $about }: the { law-field } is not known
gaps-end-lost = { $about }: the { law-field } is not known: there is no record of where it went in { $colonies }
gaps-end-late = { $about }: the { law-field } is not known: it had to be out, but there is no record of removal from { $colonies }
gaps-written-late = { $about }: written down { $days } later; the law requires it { $within ->
    [0] on the same day
    [one] within a day
   *[other] within { $within } days
}
gaps-medicine-authorisation = { $medicine }: no authorisation number is recorded; only an authorised medicine may be given
gaps-medicine-leaflet = { $medicine }: there is no leaflet `{ $leaflet }` for the holding's jurisdiction; is it authorised there?
gaps-medicine-directions = { $medicine }: neither a leaflet nor terms are recorded, so it is not known how it must be used
gaps-prescribed-after = { $about }: prescription { $number } was not written until { $on }
gaps-prescribed-later = { $about }: prescription { $number } was not written until later
gaps-same-dose-twice = { $about }: entry { $earlier } records a dose of the same lot for { $colonies } on the same day
gaps-vet-lot-not-given = { $about }: no entry says that any of it was given
gaps-use-after-expiry = { $about }: lot { $lot } had expired on { $expiry }
gaps-past-life-in-use = { $about }: what was opened of lot { $lot } on { $opened } had to be used by { $until }: { $says }
gaps-past-life-in-use-not-documented = { $about }: what was opened of lot { $lot } on { $opened } had to be used by { $until } (not documented: check the pack): { $says }
gaps-whereabouts = { $about }: no record since { $since } of whether it is still in { $colonies }
gaps-removal-late = { $about }: it had to be out of { $colonies } by { $by }, and there is no record of removal
gaps-removal-not-recorded = { $about }: no record of removal from { $colonies }, and nobody stated how long it may stay
gaps-document-not-kept = { $about }: `{ $file }` is attached, but its content is missing or altered
gaps-nameless-document-not-kept = { $about }: a document is attached, but its content is missing or altered
gaps-no-document = { $about }: no document is attached
gaps-no-document-but-words = { $about }: no copy of the proof is attached (it is only described in words)
gaps-expiry-not-told = { $about }: without its expiry date it is not known whether it was used in time
gaps-expired-when-acquired = { $about }: it had already expired on { $expiry }
# { $sum } is the sum of the lot: what was acquired, given and disposed of.
gaps-more-gone = lot { $lot }: { $sum }, { $amount } more than acquired
gaps-count-corrected = lot { $lot }: the count was corrected, so its stock account relies on a count

# How to supply what is missing.
gaps-supply-correct-entry = correct entry no. { $place } and add: { law-field }
gaps-supply-correct-each = correct each of these entries and add: { law-field }
gaps-supply-withdrawal-days-each = correct each of these entries and give the days that the pack states, even if 0; or record what its leaflet says
gaps-supply-describe-medicine = correct the description of the medicine: pack name, authorisation number, leaflet
gaps-supply-prove-purchase = attach the invoice or receipt to the lot, or correct the acquisition and say what the proof is and where it is kept
gaps-supply-attach-prescription = attach a copy to the prescription
gaps-supply-reach-of-lots-vet = correct entry no. { $place } and add how to contact the vet
gaps-supply-record-what-vet-gave = record what the vet gave: when, how much and to which colonies; or strike this lot out
gaps-supply-reach-of-vet = correct the prescription and add how to contact the vet
gaps-supply-who-dispensed-or-gave = correct entry no. { $place } and say who gave it; or name the supplier of the lot; or, if a vet prescribed it, record the prescription
gaps-supply-who-dispensed-or-gave-each = correct them and say who gave it; or name the supplier of the lot; or, if a vet prescribed it, record the prescription
gaps-supply-withdrawal-days = correct entry no. { $place } and give the days that the pack states, even if 0; or record what its leaflet says
gaps-supply-removal = record the removal with the day it came out
gaps-supply-removal-and-withdrawal = record the removal, and the withdrawal period that the pack states
gaps-supply-keeper-address = record the holding's details with the keeper's address
gaps-supply-nothing-mends = this cannot be put right; the register shows when it was written down
gaps-supply-read-on-pack = check the pack, and correct the description of the medicine
gaps-supply-check-authorisation = check the authorisation on the pack; correct the leaflet, or add a leaflet of your own
gaps-supply-point-to-directions = correct the description: name a leaflet, or declare the terms that the pack states
gaps-supply-stays-on-record = it stays on record; correct the entry only if it is wrong
gaps-supply-strike-one-out = if it was given once, strike one of the two out; if twice, correct both to give the time of day
gaps-supply-perhaps-another-pack = this is in order if it came from a pack opened later; if not, do not use the rest
gaps-supply-look-where-it-is = check the hive, and record the removal or where it went
gaps-supply-take-out = take it out and record the removal; if it came out earlier, record it with that day
gaps-supply-look-or-read-stay = check the hive and record the removal; or read on the leaflet how long it may stay
gaps-supply-attach-again = attach the same file again; `verify` names every such document
gaps-supply-attach-invoice = attach a photo or scan of the invoice to the lot
gaps-supply-read-expiry = read it on the pack and correct the acquisition
gaps-supply-count-again = count again and correct the entry that is wrong
gaps-supply-explain-difference = explain the difference in a correction, if you find the cause

# A place in a law: the title of the text, and where in it.
gaps-law-place = { $title }, { $locator }

# The answer in a few sentences.
gaps-complete = From { $from } to { $to } everything that the law requires is on record.
gaps-nothing-recorded = From { $from } to { $to } nothing is recorded; that does not prove that nothing was given.
gaps-completeness-not-known = From { $from } to { $to } it is not known whether the record is complete.
gaps-incomplete = { $count ->
    [one] From { $from } to { $to } 1 item that the law requires is missing.
   *[other] From { $from } to { $to } { $count } items that the law requires are missing.
}
gaps-copied = { $count ->
    [one] 1 entry was
   *[other] { $count } entries were
} copied from { $what }, written there from { $first } to { $last }: keep it as long as this record; it was made at the time.
gaps-copied-one-day = { $count ->
    [one] 1 entry was
   *[other] { $count } entries were
} copied from { $what }, written there on { $day }: keep it as long as this record; it was made at the time.
gaps-count-irregular = { $count ->
    [one] There is 1 irregularity.
   *[other] There are { $count } irregularities.
}
gaps-count-where-applicable = { $count ->
    [one] 1 item is missing if it applies.
   *[other] { $count } items are missing if they apply.
}
gaps-count-advised = { $count ->
    [one] 1 advised item is missing.
   *[other] { $count } advised items are missing.
}
gaps-in-archive = { $count ->
    [one] 1 entry of this time was not checked: it was moved into an archive on { $on } (entry { $entry }).
   *[other] { $count } entries of this time were not checked: they were moved into an archive on { $on } (entry { $entry }).
} On the command line, --with-archive reads them back in from its file.
gaps-law-not-said = The legal requirements could not be checked: the record does not say which jurisdiction's law applies.
gaps-law-not-known = The legal requirements could not be checked: no law of `{ $jurisdiction }` is known here.
gaps-law-not-in-force = The legal requirements could not be checked: no law of `{ $jurisdiction }` known here was in force on { $count ->
    [one] { $first }
    [2] { $first } and on { $last }
   *[other] { $count } of the days checked, the first { $first } and the last { $last }
}.
gaps-law-of-union-only = The legal requirements could not be checked: only the Union's part of the law of `{ $jurisdiction }` is known here.
gaps-no-prescription = No prescription is named: if a vet prescribed a medicine, record the prescription and attach a copy.

## Retention: until when records must be kept

# Why the end of keeping is not known, or may yet move. In round brackets stands the kind of entry that would settle it.
retention-jurisdiction-not-recorded = the jurisdiction whose rules apply is not recorded (holding_details)
retention-law-not-built-in = no law of `{ $jurisdiction }` is built in, so its retention period is not known
retention-unions-part-only = only the Union's part of the law of `{ $jurisdiction }` is known here
retention-rules-begin = the rules of `{ $jurisdiction }` known here begin on { $from }
retention-rules-ended = the rules of `{ $jurisdiction }` known here ended on { $until }
retention-no-rule = no rule known here says how long such a record must be kept
retention-law-not-read = the law of `{ $jurisdiction }` on this is known here only { $confidence ->
    [second_hand] second hand
   *[unconfirmed] from memory
}, and its own text may ask for more (look it up)
retention-left = lot { $lot }: { $amount } left on record, so the retention period may still move (record its use or disposal)
retention-more-gone = lot { $lot }: { $amount } more gone than acquired, so the retention period may still move (correct the entry that is wrong)
retention-not-out = lot { $lot }: no record of removal from { $colonies } (record the removal)
retention-perhaps-not-out = lot { $lot }: not known whether it has to come out of { $colonies } (record what the leaflet says, or the removal)

# The rule that decided.
retention-by-law = { $years ->
    [one] 1 year from { law-counted-from } ({ $from }), by the law of { part-jurisdiction }
   *[other] { $years } years from { law-counted-from } ({ $from }), by the law of { part-jurisdiction }
}
retention-by-scheme = { $years ->
    [one] 1 year from { law-counted-from } ({ $from }), by a scheme or advice of { part-jurisdiction }
   *[other] { $years } years from { law-counted-from } ({ $from }), by a scheme or advice of { part-jurisdiction }
}

# Why records of a lot stay although the law would let them go.
retention-supering-turns = whether colony { $colony } may be supered depends on it

## Stock: what is left, what to dispose of

stock-sum = { $acquired } acquired = { $given } given + { $disposed } disposed of + { $left } left
stock-sum-too-many = { $acquired } acquired, but { $given } given + { $disposed } disposed of: { $over } too many

# How a lot stands: these are joined by semicolons.
stock-overdrawn = more gone than acquired: count again
stock-empty = empty
# The same in few words.
stock-brief-expires = expires on { $expiry }
stock-brief-past-use = opened; had to be used by { $until }
stock-brief-past-use-no-day = opened too long ago
stock-brief-in-use = in use
stock-brief-in-use-until = in use, until { $until }
stock-expired = expired on { $expiry }
stock-sealed = sealed
# { $since } is one of these two.
stock-opened = opened on { $on }
stock-first-given = first given on { $on }, so open since then
stock-in-use = in use: { $since }
stock-in-use-until = in use: { $since }; use it by { $until }
stock-in-use-until-not-documented = in use: { $since }; use it by { $until } (not documented: check the pack)
stock-past-use = { $since }; what was opened had to be used by { $until }
stock-past-use-not-documented = { $since }; what was opened had to be used by { $until } (not documented: check the pack)
stock-expires = { $days ->
    [0] expires on { $expiry }, today
    [1] expires on { $expiry }, tomorrow
   *[other] expires on { $expiry }, in { $days } days
}
stock-no-expiry = no expiry date on record
stock-count-corrected = the count was corrected

# Why a lot is to be disposed of. { $open } is one of these two.
stock-dispose-opened = it was opened on { $on }
stock-dispose-first-given = it was first given on { $on }, so it was open
stock-dispose-expired = it expired on { $expiry }
stock-dispose-past-use = { $open }; what was opened had to be used by { $until } ("{ $says }"). This does not apply to sealed packs: write the amount that was opened
stock-dispose-past-use-not-documented = { $open }; what was opened had to be used by { $until } ("{ $says }"; not documented, check the pack). This does not apply to sealed packs: write the amount that was opened

# Why a lot is not counted for a course.
stock-not-counted-overdrawn = more gone than acquired
stock-not-counted-expired = expired
stock-not-counted-past-use = opened too long ago; sealed packs may be used

stock-same-batch = lots { $earlier } and { $later } of { $medicine } have the same batch number, { $batch }: bought twice, or recorded twice?
stock-no-expiry-of = lot { $lot } of { $medicine } has no expiry date on record

## Law: fields, occasions and terms of a record

law-notice = An aid to record-keeping, written from published texts and incomplete. The law decides.

# From when the years of keeping are counted: completes "5 years from".
law-counted-from = { $counted ->
    [last_use_or_disposal_of_lot] the last use or disposal of the lot
    [entry_made] the day the entry was made
    [end_of_year_of_last_entry] the end of the year of the last entry
   *[event] the day it happened
}

law-occasion = { $occasion ->
    [acquisition] acquisition
    [administration] administration by the keeper
    [vet_administration] administration by a vet
   *[disposal] disposal
}
law-need = { $need ->
    [required] required
    [where_applicable] where applicable
   *[advised] advised
}
law-record-sort = { $sort ->
    [acquisition] records of acquisition
    [proof] proof of purchase
    [administration] records of administration
    [prescription] prescriptions
   *[disposal] records of disposal
}
# What must be written down, in the words of the trade.
law-field = { $field ->
    [product_name] name of the product
    [active_substance] active substance
    [authorisation_number] authorisation number
    [batch] batch number
    [expiry] expiry date
    [date_acquired] date of acquisition
    [quantity_acquired] quantity acquired
    [supplier_name] name of the supplier
    [supplier_address] address of the supplier
    [proof_of_purchase] proof of purchase
    [prescription_copy] copy of the prescription
    [prescriber] who prescribed it, with contact
    [date_first_given] date of (first) administration
    [date_last_given] date of last administration
    [duration] duration of the treatment
    [time_of_day] time of day
    [quantity_given] quantity given
    [quantity_per_colony] quantity given to each colony
    [route] how it was given
    [colonies] which colonies were treated
    [number_treated] number of colonies treated
    [apiary] apiary at the time of treatment
    [apiary_during_withdrawal] apiary during the withdrawal period
    [withdrawal_period] withdrawal period
    [withdrawal_end] end of the withdrawal period
    [reason] reason for the treatment
    [given_by] name of the person who gave it
    [vet_name] name of the vet
    [certificate_number] number of the applicator's certificate
    [date_disposed] date of disposal
    [quantity_disposed] quantity disposed of
    [disposal_how_and_where] how and where it was disposed of
   *[keeper_name_and_address] name and address of the keeper
}

## Sites: power, access and ground

## Refusals: what cannot be true

# Each refusal says what cannot be true, and how to fix it (`-help`). Both go without a capital and without a full stop; what the user wrote stands in backticks.

# How to fix more than one of them. { $near } is a name on record, or a code, that is written much like the one that was given.
refusal-check-dates-help = check both dates
refusal-did-you-mean-help = did you mean `{ $near }`?
refusal-correct-it-help = correct that entry instead

# An entry by itself.
refusal-id-is-taken = an entry with the id { $id } is already recorded
refusal-id-is-taken-help = make a new id for a new entry
refusal-in-the-future = { $on } is in the future; an entry can be dated { $today } at the latest
refusal-in-the-future-help = record what happened, on the day it happened or later
refusal-written-before = it was written on paper on { $written_on }, before it happened on { $on }
refusal-written-later = it was written on paper on { $written_on }, but it is copied no later than { $today }
refusal-written-before-help = look up both days on paper: the day on which it happened, and the day on which it was written down
refusal-jurisdiction-is-unknown = no leaflets and no law are known for the jurisdiction `{ $jurisdiction }`
refusal-jurisdiction-is-unknown-help = write gb, ni, ch, us, eu or the lower-case code of a member state of the Union; elsewhere a code from xa to xz, with leaflets of your own

# Corrections and strike-outs. { $of } is the entry to be corrected.
refusal-no-entry-to-correct = there is no entry { $of } to correct
refusal-no-entry-to-correct-help = look its id up in the journal
refusal-corrected-before = entry { $of } was already corrected by entry { $by }
refusal-corrected-before-help = correct entry { $by }, or record again what was struck out
refusal-correction-of-archive-step = entry { $of } moved others into an archive, which cannot be undone
refusal-correction-of-moved-entry = entry { $of } was moved into an archive
refusal-correction-of-archived-help = record additions in an entry of their own
refusal-correction-of-strike-out = entry { $of } is a strike-out, which cannot be corrected
refusal-correction-of-strike-out-help = record again what was struck out
refusal-correction-of-other-kind = entry { $of } is of kind `{ $was }`, not `{ $now }`
refusal-correction-of-other-kind-help = correct it with an entry of its own kind, or strike it out
# { $why } is any other refusal, { $kind } a word of the journal.
refusal-another-becomes-untrue = with this correction the { $kind } of { $on } (entry { $entry }) could not be true: { $why }
refusal-another-becomes-untrue-help = correct or strike out that entry first

# Colonies.
refusal-no-such-colony = there is no colony `{ $colony }`
refusal-no-such-colony-help = record it as established first
refusal-colony-not-yet-there = colony `{ $colony }` came into the record on { $begun }, after { $on }
refusal-colony-ended = colony `{ $colony }` ended on { $ended }
refusal-colony-ended-help = check the colony and the date
refusal-colony-lived-later = colony `{ $colony }` has an entry later than { $on }: { $kind ->
    [holding_details] details of the holding
    [apiary_details] details of an apiary
    [site_conditions] site conditions
    [nectar_flow] a nectar flow
    [temperature] temperatures
    [temperature_normals] usual temperatures
    [colony_established] how it came in
    [colony_moved] a move
    [colony_split] a split
    [colony_united] a uniting
    [colony_ended] its end
    [supers_on] supers put on
    [supers_off] supers taken off
    [inspection] an inspection
    [mite_count] a mite count
    [medicine_described] the description of a medicine
    [lot_acquired] the acquisition of a lot
    [vet_lot] a lot of a vet's own stock
    [lot_opened] the opening of a lot
    [document_attached] a document
    [leaflet_reading] the reading of a leaflet
    [prescription] a prescription
    [administration] an administration
    [removal] a removal
    [disposal] a disposal
    [harvest] a harvest
    [strike_out] a strike-out
   *[archived] an archive step
} ({ $last })
refusal-colony-lived-later-help = check both dates, or correct that entry first
refusal-no-colony-named = no colony is named
refusal-no-colony-named-help = name at least one
refusal-colony-named-twice = colony `{ $colony }` is named twice
refusal-colony-named-twice-help = name it once
refusal-colony-name-is-taken = there is a colony `{ $colony }` since { $since }
refusal-colony-name-is-taken-help = a colony's name is never used again; a hive mark may be
refusal-colony-united-with-itself = colony `{ $colony }` cannot be united with itself
refusal-colony-united-with-itself-help = name the colony that takes it in
refusal-no-super = no super is put on
refusal-no-super-help = say how many supers, 1 or more

# Apiaries, and the flows there.
refusal-no-such-apiary = there is no apiary `{ $apiary }`
refusal-no-such-apiary-help = record the apiary first
refusal-apiary-is-recorded = the apiary `{ $apiary }` is already recorded
refusal-days-are-backwards = the last day { $to } is before the first, { $from }
refusal-flow-not-yet-seen = the flow would begin on { $from }, after { $on }, so nobody has seen it
refusal-flow-not-yet-seen-help = record it as expected, or correct the day
refusal-seen-flow-has-one-day = only an expected flow has early and late years
refusal-seen-flow-has-one-day-help = leave it out: a flow that was seen began on one day
refusal-early-after-usual = an early year would begin on { $early }, after a usual one on { $usual }
refusal-late-before-usual = a late year would begin on { $late }, before a usual one on { $usual }
refusal-late-after-end = a late year would begin on { $late }, after the end of the flow on { $to }

# Temperatures.
refusal-number-of-days = the list has { $days } days
refusal-number-of-days-help = give 1 to { $most } days in one entry
refusal-day-twice = { $day } is in the list twice
refusal-day-not-yet-measured = { $day } is after { $on }, so nobody has measured it
refusal-day-not-yet-measured-help = record a forecast, or correct the day
refusal-no-months = the list has no month
refusal-no-months-help = give 1 to 12 months
refusal-no-such-month = there is no month { $month }
refusal-no-such-month-help = write 1 for January to 12 for December
refusal-month-twice = month { $month } is in the list twice
refusal-twice-in-list-help = keep one of the two
refusal-lowest-above-highest = the lowest temperature { $min } is above the highest, { $max }
refusal-lowest-above-highest-help = swap or correct them

# Counts of mites. { $field } and { $method } are words of the journal.
refusal-counted-over-none = nothing can be counted over 0 { $field }
refusal-counted-over-none-help = write how many, or leave it out if nobody counted
refusal-not-of-count-method = `{ $field }` does not belong to a count by `{ $method }`
refusal-not-of-count-method-help = leave it out, or correct the method
refusal-more-mites-than-cells = { $mites } of { $cells } cells would be infested
refusal-more-mites-than-cells-help = count the infested cells, not the mites in them

# Names that cannot be told apart by looking at them.
refusal-invisible-sign = the name `{ $name }` has a sign that cannot be seen ({ $sign })
refusal-invisible-sign-help = type the name anew rather than pasting it
refusal-looks-like-another = the name `{ $name }` looks like `{ $other }` but is written with other letters
refusal-looks-like-another-help = if the other one is meant, write that; else choose a name that looks different

# Medicines, lots, prescriptions and amounts.
refusal-no-such-medicine = no medicine `{ $medicine }` is described
refusal-no-such-medicine-help = describe the medicine first
refusal-medicine-is-described = the medicine `{ $medicine }` is already described
refusal-no-such-lot = there is no lot `{ $lot }`
refusal-no-such-lot-help = record first that it was acquired, or that a vet brought it
refusal-lot-name-is-taken = there is already a lot `{ $lot }`
refusal-lot-name-is-taken-help = give this lot a name of its own; two lots may have the same batch number
refusal-lot-not-yet-acquired = lot `{ $lot }` is on record from { $acquired }, which is after { $on }
refusal-lot-of-vets-stock = lot `{ $lot }` is of a vet's own stock, so nothing of it is the keeper's to open or dispose of
refusal-lot-of-vets-stock-help = if the vet left some with you, record that as a lot received from the vet
refusal-more-than-lot-held = lot `{ $lot }` held { $held }, but { $gone } would have been taken from it
refusal-more-than-lot-held-help = check the amount and the lot; if the record's count is wrong, set `count_corrected`
refusal-no-amount = the amount is zero
refusal-no-amount-help = write an amount above zero
refusal-in-other-unit = the amount is given in `{ $unit }`, but `{ $medicine }` is counted in `{ $counted }`
refusal-in-other-unit-help = convert the amount to `{ $counted }`
refusal-no-such-prescription = no prescription `{ $prescription }` is recorded
refusal-no-such-prescription-help = record the prescription first
refusal-prescription-is-recorded = a prescription `{ $prescription }` is already recorded

# What a leaflet, a label or a prescription states.
refusal-too-many-days = { $days } days are more than any leaflet states
refusal-too-many-days-help = write days, not hours; { $most } at most
refusal-withdrawal-stated-twice = a label without a withdrawal period does not state one in days
refusal-withdrawal-stated-twice-help = keep `withdrawal_days` if the label states a period, even one of 0 days; otherwise keep `withdrawal`
refusal-stay-of-no-days = a stay of 0 days is not a stay
refusal-stay-of-no-days-help = leave it out; if nothing stays in the hive, say so in `removal`
refusal-nothing-stays-yet-stays = nothing stays in the hive, but it must stay at least { $least } days
refusal-nothing-stays-yet-stays-help = write `needed` or `not_needed` for a carrier; for a single dose leave the minimum stay out
refusal-least-stay-above-longest = it must stay at least { $least } days and at most { $most }
refusal-least-stay-above-longest-help = correct the one that is wrong
refusal-nothing-is-confirmed = nothing is confirmed
refusal-nothing-is-confirmed-help = write the value in the words that the program shows for it
refusal-stated-not-confirmed = `{ $topic }` must be stated, not confirmed
refusal-stated-not-confirmed-help = write the value that you read in `terms`

# Doses and removals.
refusal-nothing-is-given = nothing is given
refusal-nothing-is-given-help = name the lot, the amount and the colonies
refusal-two-medicines = lot `{ $lot }` is `{ $medicine }`, but the entry also gives `{ $other }`
refusal-two-medicines-help = make one entry for each medicine
refusal-prescription-of-other-medicine = prescription `{ $prescription }` is for `{ $medicine }`
refusal-prescription-of-other-medicine-help = name the prescription of the medicine that was given
refusal-dose-goes-on-with-itself = a dose cannot continue itself
refusal-dose-goes-on-with-itself-help = name the first dose of the course, or leave `continues` out
refusal-first-dose-struck-out = entry { $entry } was struck out
refusal-first-dose-of-other-kind = entry { $entry } is not an administration
refusal-first-dose-help = name the entry that recorded the first dose
refusal-later-dose-named = entry { $entry } is a later dose of the course that began with entry { $first }
refusal-later-dose-named-help = name the first dose, { $first }
refusal-first-dose-of-other-medicine = entry { $first } gave another medicine
refusal-first-dose-of-other-medicine-help = name the first dose of the same medicine
refusal-before-first-dose = the first dose was given on { $first }, after { $on }
refusal-not-given-first-dose = colony `{ $colony }` was not given the first dose
refusal-not-given-first-dose-help = give it a course of its own, in an entry without `continues`
refusal-taken-out-before = the course was taken out of colony `{ $colony }` on { $out }
refusal-taken-out-before-help = begin a new course, in an entry without `continues`
refusal-out-before-placed = it was placed on { $placed }, so it cannot come out on { $on }
refusal-no-part-in-course = colony `{ $colony }` was not part of entry { $administration }
refusal-no-part-in-course-help = check the colony, or the entry that it names
refusal-cleared-before = it was already taken out of colony `{ $colony }` on { $out }
refusal-cleared-before-help = correct that entry if its date is wrong
refusal-later-dose-follows = a later dose of this course was given to colony `{ $colony }` on { $given }

# Documents.
refusal-document-is-empty = the document is empty
refusal-document-is-empty-help = attach the file itself
refusal-document-too-large = the document has { $bytes } bytes; at most 10 MB is kept
refusal-document-too-large-help = scan it at a lower resolution, or take a smaller photograph
refusal-document-before-its-subject = a document cannot be attached for a day before { $from }, when what it belongs to begins
refusal-document-before-its-subject-help = give the day on which it was attached, { $from } or later
refusal-document-of-nothing = the document is attached to nothing
refusal-document-of-nothing-help = name the lot whose purchase it proves, or the prescription it is a copy of
refusal-document-of-two-things = a lot and a prescription are named
refusal-document-of-two-things-help = name one of them, and attach it to the other in an entry of its own

# Archives. { $seq } is the place of an entry in the journal.
refusal-by-archive-step-only = entries of kind `{ $kind }` cannot be recorded this way
refusal-by-archive-step-only-help = an archive is made by its own command: combclear archive
refusal-archive-step-corrects = an archive step corrects nothing
refusal-archive-step-corrects-help = leave `corrects` out
refusal-through-after-archive-step = { $through } is after the archive step itself, on { $on }
refusal-through-after-archive-step-help = name the day of the step at the latest
refusal-number-of-places-differs = { $entries } entries are announced, but { $places } places are named
refusal-number-of-places-differs-help = count the places
refusal-places-not-there = not all of the places { $places } are in the journal
refusal-places-not-there-help = verify the journal
refusal-tells-of-archive = entry { $seq } records an archive step, so it stays in the journal
refusal-moved-before = entry { $seq } has already been moved into an archive
refusal-leave-it-out-help = leave it out
refusal-still-whole = entry { $seq } was moved into an archive, but it is still complete here
refusal-still-whole-help = import the file into a new database (--db)
refusal-not-beside-what-it-corrects = its body is in an archive, but entry { $of }, which it corrects, is missing
refusal-not-beside-what-it-corrects-help = import a complete export of this journal

# Why entries cannot go apart: { $goes } would go into an archive, { $stays } would stay.
refusal-tied-by-correction = entry { $goes } cannot be archived without entry { $stays }: one corrects the other
refusal-tied-by-course = entry { $goes } cannot be archived without entry { $stays }: both are of one course
refusal-tied-by-name = entry { $goes } cannot be archived: entry { $stays }, which stays, names what it introduced
refusal-tied-help = archive complete sets of records only
# Said of an entry that would go, and of one that should be a first dose.
refusal-no-such-entry = there is no entry { $entry }

# Days that cannot be asked about.
refusal-span-backwards-help = swap `from` and `to`, or correct one of them
refusal-span-too-long = { $days } days are too many: at most { $most } can be asked about at once
refusal-span-too-long-help = ask about a shorter period
refusal-period-backwards-help = swap the two days, or correct one of them

## Words of closed lists

kind = { $kind ->
    [holding_details] holding details
    [apiary_details] apiary details
    [site_conditions] site conditions
    [nectar_flow] nectar flow
    [temperature] temperature
    [temperature_normals] temperature normals
    [colony_established] colony established
    [colony_moved] colony moved
    [colony_split] colony split
    [colony_united] colony united
    [colony_ended] colony ended
    [supers_on] supers on
    [supers_off] supers off
    [inspection] inspection
    [mite_count] mite count
    [medicine_described] medicine described
    [lot_acquired] lot acquired
    [vet_lot] lot of a vet's own stock
    [lot_opened] lot opened
    [document_attached] document attached
    [leaflet_reading] leaflet reading
    [prescription] prescription
    [administration] administration
    [removal] removal
    [disposal] disposal
    [harvest] harvest
    [strike_out] strike out
   *[archived] archived
}

# What a condition of an option is about.
about = { $about ->
    [leaflet] leaflet
    [access] access to the apiary
    [power] power
    [ground] ground at the stands
    [return_visits] later visits
    [carry_in_kit] carrying the kit in
    [hive_opened] opening the hive
    [colony] colony
    [apiary] apiary
    [already_in] treatments in the hive
    [other_medicines] other medicines
    [supers_during] supers while it is in
    [flow_during] use in a flow
    [flow_before] use before a flow
    [withdrawal] withdrawal period
    [wait_after_removal] wait before supers
    [harvest_during] honey while it is in
    [comb_rule] combs
    [removal] removal
    [stay_min] minimum stay
    [stay_max] maximum stay
    [doses] doses
    [courses_per_year] courses per year
    [courses_per_broodless_period] courses per broodless period
    [gap_between_courses] time between courses
    [season] season
    [timing] timing
    [temperature] temperature
    [brood] brood
    [colony_size] strength of the colony
    [brood_boxes] brood boxes
    [entrance] entrance
    [dose] dose
    [dose_cap] maximum dose
    [recipe] recipe
    [needs] equipment
    [not_with] other medicines in the hive
    [contraindication] when not to use it
    [class] class
    [whole_apiary] whole apiary
    [user_safety] cautions for the user
    [after_opening] use after opening
    [storage] storage
   *[disposal] disposal
}

# What sort of thing is missing from the legal record: something of a row, or a field of the law.
gap-sort = { $sort ->
    [written_late] recorded late
    [medicine_authorisation] medicine authorisation
    [medicine_leaflet] medicine leaflet
    [medicine_directions] medicine directions
    [prescribed_after] prescribed after
    [same_dose_twice] the same dose twice
    [use_after_expiry] use after expiry
    [past_life_in_use] used too long after opening
    [whereabouts_not_recorded] whereabouts not recorded
    [removal_not_recorded] removal not recorded
    [document_not_kept] document not kept
    [document] document
    [expiry_not_told] expiry not told
    [expired_when_acquired] expired when acquired
    [more_gone_than_acquired] more gone than acquired
    [product_name] product name
    [active_substance] active substance
    [authorisation_number] authorisation number
    [batch] batch
    [expiry] expiry
    [date_acquired] date acquired
    [quantity_acquired] quantity acquired
    [supplier_name] supplier name
    [supplier_address] supplier address
    [proof_of_purchase] proof of purchase
    [prescription_copy] prescription copy
    [prescriber] prescriber
    [date_first_given] date first given
    [date_last_given] date last given
    [duration] duration
    [time_of_day] time of day
    [quantity_given] quantity given
    [quantity_per_colony] quantity per colony
    [route] route
    [colonies] colonies
    [number_treated] number treated
    [apiary] apiary
    [apiary_during_withdrawal] apiary during withdrawal
    [withdrawal_period] withdrawal period
    [withdrawal_end] withdrawal end
    [reason] reason
    [given_by] given by
    [vet_name] vet name
    [certificate_number] certificate number
    [date_disposed] date disposed
    [quantity_disposed] quantity disposed
    [disposal_how_and_where] disposal how and where
    [keeper_name_and_address] keeper name and address
   *[count_corrected] count corrected
}

# Who stated a value that supers depend on.
part-said-by = { $by ->
    [prescription] prescription
    [leaflet_reading] leaflet reading
    [pack] pack
    [own_leaflet] own leaflet
    [leaflet] leaflet
   *[declared] declared
}
said-in = { part-said-by } { $entry }
said-with = { part-said-by }, { $sources }

# How much a rule binds.
label-force-law = law
label-force-label = label
label-force-advice = advice

## Paper: the register on paper

# A message whose id begins with `label-` stands fixed: nothing is put in. Tables, pages and the terminal share these.

# Papers and their sheets.
label-register-title = Register of veterinary medicines
label-gaps-title = Missing from the register, and irregularities
label-acquisitions = Acquisitions
label-administrations = Administrations
label-removals = Removals
label-disposals = Disposals
label-vet-lots = Given by a vet from the vet's own stock
label-vet-lots-note = The keeper acquired none of these, so there is no purchase to prove and no stock to account for. What was given of them is under the administrations.
label-a-vet = a vet
label-copied-from-paper = Copied from paper
label-vets-own-stock = the vet's own stock
label-prescriptions = Prescriptions
label-corrections = Corrections
label-books = Stock account by lot
label-sheets = Sheets
label-nothing-recorded = Nothing is recorded for this period.

# What stands above the sheets: a head, and what it says.
label-holding = Holding
label-keeper = Keeper
label-keeper-not-recorded = keeper not recorded
label-time = Period
label-as-of = Position at
label-journal = Journal
label-in-an-archive = In an archive
label-counted-by = Days counted by
label-laws-asked = Laws checked
paper-period = { $from } to { $to }
paper-time = { $from } to { $to } (inclusive)
paper-time-as-of = { $from } to { $to } (inclusive); position at { $day }
paper-as-of = { $day } (later events not taken into account)
paper-journal = { part-entries }, last hash { $head }
paper-keeper = { $keeper }, since { $since }; address: { $address }; registration: { $registration }; law of { part-jurisdiction }
paper-archived = { $entries ->
    [one] 1 entry of this period was moved
   *[other] { $entries } entries of this period were moved
} out of the journal on { $on } by { $by } ({ paper-entry-number }), because the law did not require them to be kept beyond { $through }: they are not in this register but in the file with the SHA-256 hash { $file }
paper-policy-calendar = { $policy }: the day of the event is not counted
paper-policy-elapsed = { $policy }: full days of 24 hours from the time recorded, an hour more if the clocks went forward; shown beside civil days

# Sentences above a table.
label-administrations-note = One row for each lot and each group of colonies whose course went the same way; rows with the same number are one entry. The apiary is where the colonies stood when treated, and then until the withdrawal period was over.
label-earlier-dose-note = A dose marked “{ label-before-this-time }” was given before the first day of this register. It is listed because the medicine was still in, or one of its periods was running, on that day; the totals leave it out.
label-lots-note = Every lot of which something moved within the period or is left at its end: carried in + acquired - given - disposed of = balance.
label-complete-yes = Complete: yes. Everything that these laws require is recorded.
label-complete-no = Complete: no. Something that the law requires is missing.
label-complete-unknown = Complete: not known. What could not be checked is named below.

# Heads of columns, and labels of values in a cell: these stand before a colon there.
label-acquired = acquired
label-active = active
label-address = address
label-amount-left = balance
label-apiary = apiary
label-at = at
label-authorisation-number = authorisation no.
label-batch = batch
label-batch-and-expiry = batch, expiry
label-batch-and-lot = batch, lot
label-carried-in = carried in
label-place = place
label-key-of-apiaries = Key of apiaries
label-key-of-colonies = Key of colonies
label-hive-mark = hive mark
label-apiary-at-the-end = apiary at the end
label-none-there = none: it had ended
label-remarks = remarks
label-expired-stock = expired
label-more-gone-than-acquired = more gone than acquired
label-blocked-and-free = withdrawal ends / honey may be taken from
label-certificate = certificate
label-colonies = colonies
label-contact = contact
label-copies = copies
label-corrected-entry = corrected entry
label-date = date
label-date-given = date given
label-annex-documents = Annex: documents and their hashes
label-date-acquired = date acquired
label-date-removed = date removed
label-disposed-of = disposed of
label-document = document
label-duration = duration
label-each = per colony
label-entry = entry
label-entry-number = no.
label-expiry = expiry
label-first = started
label-first-and-last-day = treatment
label-first-free-day = first free day
label-free-at = free by full days of 24 hours at
label-given = given
label-given-by = given by
label-how-and-where = how and where
label-how-and-where-disposed-of = how and where disposed of
label-how-to-supply-it = how to complete it
label-last = ended
label-last-blocked-day = last blocked day
label-law = law
label-left-inside-each = left in each colony
label-lot = lot
label-medicine = medicine
label-method = method
label-name-on-pack = name on the pack
label-now = now
label-number = number
label-placed = placed
label-prescription = prescription
label-proof-of-purchase = proof of purchase
label-quantity = quantity
label-reason = reason
label-sha-256 = SHA-256
label-stated-in-entry = stated in the entry
label-struck = struck
label-supplier = supplier
label-together = subtotal
label-values = values
label-vet = vet
label-wait-before-supers = wait before supers
label-was = was
label-weight = importance
label-what-is-missing = what is missing
label-who-and-when = by whom and when
label-whole-entry = total
label-withdrawal-period = withdrawal period
label-written = recorded
label-written-by = recorded by

# What stands in a cell.
label-not-recorded = not recorded
label-not-known = not known
label-not-known-yet = not known yet
label-none = none
label-none-any-more = none now
label-none-kept = none attached
label-none-named = none named
label-still-in = still in hive
label-same-entry = the same entry
label-before-this-time = before this period
label-before-this-time-used-in-it = before this period, used in it
label-vet-not-recorded = vet not recorded
label-struck-out = struck out as a whole
label-corrected = corrected
label-no-value-changed = no value changed
label-none-given = not treated itself; medicine carried over when split or united
label-required = missing, required by law
label-not-as-it-should-be = irregularity
label-required-where-it-applies = missing, required where applicable
label-advised = advised
label-said-by-prescription = stated in the prescription
label-said-by-reading = read on the leaflet of the lot
label-said-by-pack = read on the pack
label-said-by-keeper = declared by the keeper
label-said-by-leaflet = from the built-in leaflet; not recorded by anyone
paper-amount-without-unit = { $quantity } (unit { label-not-recorded })
# An entry by its place in the journal.
paper-entry-number = no. { $place }
# $entry is "no. 59", or the id of an entry.
paper-entry = entry { $entry }
paper-corrects = corrects { $entry }
paper-copied-from = copied from { $what }, written there on { $day }
paper-copied-here = copied from [{ $number }], written there on { $day }
paper-copied-source = [{ $number }] { $what }: { $count ->
    [one] 1 entry
   *[other] { $count } entries
}, written there from { $first } to { $last }; entered here from { $entered_first } to { $entered_last }
paper-written-late = recorded { days } later
paper-none-given-by = not treated itself; medicine carried over when split or united, { $entry }
paper-later-apiary = from { $day }: { $apiary }
paper-not-known-since = not known since { $day }
paper-dose-of-course = dose { $dose } of the course begun with { $entry }
paper-count-corrected = { $entries ->
    [one] corrected by 1 entry
   *[other] corrected by { $entries } entries
}

# A field of an entry that was corrected; $name is its own name with blanks.
paper-field = { $field ->
    [on] date
    [at] time of day
    [written_on] written there on
    [each] amount per colony
    [against] reason
    [continues] first dose
    [administration] first dose
    [withdrawal_days] withdrawal period in days
    [wait_days] wait before supers in days
    [authorisation] authorisation no.
    [pack_name] name on the pack
    [proof] proof of purchase
    [left_inside] left in each colony
   *[other] { $name }
}
paper-field-of-lot = { $field } ({ $lot })
paper-lot-of-entry = { $number ->
    [1] first lot
    [2] second lot
    [3] third lot
   *[other] lot { $number } of the entry
}

# At the foot of each printed page.
paper-page = page { $page } of { $pages }

# Remarks of a file for other programs, joined by full stops or commas.
label-exchange-untold = what became of it is not recorded, end of withdrawal not known
label-exchange-end-not-known = end of withdrawal not known
label-exchange-wait-not-known = wait before supers not known
label-exchange-by-the-book = balance on record, not counted
label-exchange-supplier-address = supplier address
label-exchange-proof = proof
label-exchange-unit = unit
exchange-time-of-day = at { $time }, local time
exchange-given = lot { $lot }: { $each } each for { $colonies }
exchange-lot = lot { $lot }
exchange-dose = dose { $dose } of its course
exchange-course = { $colonies }: { $first } to { $last }
exchange-course-came = { $colonies } (carried over when split or united): { $first } to { $last }
exchange-course-came-on = { $colonies } (carried over when split or united on { $day }): { $first } to { $last }
exchange-withdrawal = withdrawal period { $period }
exchange-wait = wait before supers { days }
exchange-apiary = apiary { $apiary }
exchange-struck-out = struck out: { $reason }
exchange-later-apiary = from { $day } { $apiary }

# What a reader of such a file must know. Names of fields stay as they are.
label-exchange-note-species = The standard has no species for bees: no specie is given, and an animal is a colony of bees.
label-exchange-note-schemes = Identifiers use schemes of this program: internal.combclear.colony, .apiary, .authorisation, .medicine.
label-exchange-note-dates = All dates are civil dates, written as midday UTC; drop the time and do not shift them.
label-exchange-note-groups = An entry has one treatment for each group of colonies whose course went the same way; meta.sourceId names the entry, and the amounts add up to what it gave.
label-exchange-note-splits = Colonies that had a medicine carried over when split or united have a treatment of their own, without amounts.
label-exchange-note-honey = Every treatment has one withdrawal, for honey. Without endDate its end is not known: the medicine is still in, or no period is recorded. Treat the colonies as blocked in that case.
label-exchange-note-end = endDate of a withdrawal is the last blocked day; with a period of 0 days it is the day on which the treatment ended.
label-exchange-note-period = The standard has no field for a withdrawal period in days: it is in remark.
label-exchange-note-remark = The standard has no field for the address of a supplier, the batch of a movement, or how and where something was disposed of: they are in remark.
label-exchange-note-location = A location is the apiary on the day of the treatment; later apiaries are in remark.
label-exchange-note-units = Strips, trays, tablets, wafers and pieces have no unit of dose in the standard; as stock they are EA. remark says which.
label-exchange-note-corrected = A corrected entry keeps its id, with a later meta.modified. What was struck out has meta.isDeleted, under every id that may have been sent; so has a group of colonies, or the use of a lot, that may have been sent and is no more. The register has both values.
label-exchange-no-group-any-more = no group of its own any more: its colonies are in another treatment of this entry, or in none
label-exchange-not-used-any-more = none of this lot was used in this entry, as it was corrected
label-exchange-note-archived = Entries that were moved into an archive are left out; the register says how many, and names the file by its hash.

## Calendar

calendar-name = Combclear: what is due, { $holding }
calendar-overdue = overdue: { $summary }
calendar-summary = { $title } ({ $colonies })

## Pack

label-pack-title = Inspection pack
label-heic-no-copy = some offices cannot open HEIC, and no copy in another format could be made
label-pdf-locked = locked: it may not open without a password
label-pdf-script = contains a script
label-pdf-launch = may start another program when it is opened
label-pdf-file-inside = holds another file
label-pdf-not-looked-into = not looked into as a whole
label-pack-reading = reading the register
label-pack-put-together = Produced on
label-pack-contents = Contents
# Each of these stands after the name of its file and a colon.
label-pack-html = the register, for reading and printing
label-pack-pdf = the same as PDF, made as PDF/A-2a (no independent validator has checked that)
label-pack-csv = the same for a spreadsheet
label-pack-json = the same for programs
label-pack-exchange = treatments and movements of stock in the format of the ICAR Animal Data Exchange
label-pack-gaps = what is missing from the register
pack-season = the season of { $apiary }, as a picture
label-pack-checkpoint = a checkpoint of the journal, in three lines
label-pack-sums = the hash of every other file
label-pack-no-pdf = There is no PDF: the program that made this pack cannot produce one. register.html is made for printing.
label-pack-gaps-not-asked = The pack was made without a list of what is missing from the register.
label-pack-proofs = Supporting documents
label-pack-no-proofs = No document is attached to the acquisitions and prescriptions of this period.
label-pack-proofs-caption = Supporting documents and the entries they belong to
label-pack-belongs-to = belongs to
label-pack-file = file
label-pack-called = original name
label-pack-not-kept = left out: its content is no longer kept
label-pack-altered = left out: the content kept is not what was attached
label-pack-office-copy = a copy in JPEG for offices that cannot open HEIC; the original counts
pack-acquisition = acquisition { paper-entry-number }, lot { $lot }
pack-vet-lot = vet's lot { paper-entry-number }, lot { $lot }
pack-prescription = prescription { paper-entry-number }, { $number }
label-pack-how-to-check = How to check it
# $command, $hash and the like are set apart from the words around them.
pack-check-files = Unpack it and run { $command } to check that every file is as it was packed.
label-pack-check-proofs = The hash of each supporting document is also in the register, in the entry that attached it.
pack-check-journal = Whoever has the journal can show that the register was made from it and that nothing was changed since: { $command } proves the { $entries ->
    [one] first entry
   *[other] first { $entries } entries
} by the hash { $hash }.

## Terminal: tables and headings

# Heads of columns, titles and labels; the last stand before a colon. Those of the paper are used here too.
label-blank = { "" }
label-answer = answer
label-at-home = At home
label-by = by
label-cautions = cautions
label-colony = colony
label-conditions = conditions
label-disposed = disposed
label-dose = dose
label-entries = entries
label-first-free = first free
label-for-all = for all
label-free-for-supers = free for supers
label-from = from
label-grounds = grounds
label-how-it-stands = status
label-how-sure = how sure
label-it-takes = needed
label-keep-until = keep until
label-last-blocked = last blocked
label-last-used-or-disposed = last used or disposed of
label-leaflet = leaflet
label-left = left
label-lots = lots
label-missing = missing
label-need = need
label-next-and-why = what is next, and why
label-option = option
label-one-dose-for-all = one dose for all
label-otherwise = otherwise
label-rests-on = based on
label-rule = rule
label-rules = rules
label-says = says
label-see-to = to check
label-short = short
label-since = since
label-source = source
label-sources = Sources
label-start-days = start days
label-supers-asked = supers?
label-title-lots = Lots
label-to-carry = to carry
label-to-dispose-of = To dispose of
label-visits = visits
label-what = what
label-where = where
label-why = why
label-with-rules-of = includes the rules of

# Answers and other words of a closed list.
label-yes = yes
label-no = no
label-unknown = unknown
label-usable = usable
label-ruled-out = ruled out
label-met = met
label-broken = broken
label-unknown-met-in-a-usual-year = unknown, met in a usual year
label-unknown-broken-in-a-usual-year = unknown, broken in a usual year
label-confidence-document = document
label-confidence-second-hand = second hand
label-confidence-unconfirmed = unconfirmed
label-must = must
label-advice = advice
label-may = may
label-overdue = overdue
label-none-on-record = none on record
label-on-unknown-day = day not known

# A day with its name.
terminal-day = { $day } ({ $weekday ->
    [Monday] Monday
    [Tuesday] Tuesday
    [Wednesday] Wednesday
    [Thursday] Thursday
    [Friday] Friday
    [Saturday] Saturday
   *[Sunday] Sunday
})
terminal-at-least = at least { $what }
terminal-label-revision = label { $revision }
terminal-days-counted-by = { $notice } Days counted by { $policy }.

# supering: the board, and one colony.
terminal-supering-board = May they be supered? Holding { $holding }, { $day }
terminal-supering-sums = { $colonies ->
    [one] 1 colony
   *[other] { $colonies } colonies
}: { $yes } yes, { $no } no, { $unknown } unknown
label-supering-may = Yes
label-supering-may-not = No
label-supering-not-known = Not known
label-supering-in-brackets = A first free day in brackets applies if everything in the hive comes out as early as it may.
label-supering-more = In full: combclear supering --full; one colony: combclear supering COLONY
terminal-supering-next = next: { $next }
terminal-supering-more = all the grounds: combclear supering { $colony } --full
terminal-supering-breaches-in = Breaches on record: { $colonies }
terminal-supering-breaches = { $breaches ->
    [one] 1 breach on record
   *[other] { $breaches } breaches on record
}
terminal-supering-one = { $colony } on { $day }: { $answer }
terminal-supering-if-out = { $day }, if everything is out on { $out }
terminal-supering-left-out = { $asks } At { $apiary } these were not given it in that round: { $colonies }
terminal-supering-ahead = { $from } to { $to }: { $answer }
label-supering-kept = on record, kept
label-supering-broken = on record, broken
label-supering-open = on record, open
label-supering-note = note
label-supering-comes-next = what comes next
label-supering-must-happen-first = what must happen first
label-supering-missing = missing for an answer
label-supering-missing-else = also missing
label-supering-whole-apiary = the whole apiary
label-supering-if-nothing-else = if nothing else is recorded

# due: a head and a sum around the visits.
terminal-due-head = What is due in { $holding }, { $from } to { $to }
terminal-due-sums = { $items ->
    [one] 1 item
   *[other] { $items } items
}: { $overdue } overdue. { $must } must be done, { $advice } advised, { $may } optional.
label-due-both-days = Date ranges include both days.
terminal-due-entries-lack = { $count ->
    [one] 1 record lacks
   *[other] { $count } records lack
} something that the law requires: combclear gaps
label-due-more = In full: combclear due --full
terminal-due-on = on { $day }
terminal-due-between = { $from } to { $to }
terminal-due-from = from { $day }
terminal-due-by = by { $day }; the earliest day is not known

terminal-register-written = { $file }: the register of { $holding }, { $from } to { $to }

# today: the morning's page.
terminal-today-head = { $holding }: { $day } and the next six days
label-today-nothing-due = Nothing is due today or in the next six days.
label-today-nothing-else-due = Nothing is due today or in the next six days apart from what is listed below.
label-today-free = May be supered
label-today-none-free = no colony today
terminal-today-new = free from today: { $colonies }
label-today-unknown = To find out
terminal-today-not-free = { $count ->
    [one] 1 colony
   *[other] { $count } colonies
} may not be supered today: combclear supering
label-today-records = Records
terminal-today-incomplete = { $required ->
    [one] 1 item required by law is
   *[other] { $required } items required by law are
} missing this year; { $irregular ->
    [one] 1 irregularity
   *[other] { $irregular } irregularities
}: combclear gaps
terminal-today-not-checked = the law could not be checked for every record of this year: combclear gaps
terminal-today-complete = complete for this year, { $irregular ->
    [0] no irregularities
    [one] 1 irregularity: combclear gaps
   *[other] { $irregular } irregularities: combclear gaps
}

# stock
terminal-stock-head = Stock of { $holding }, { $day }
terminal-stock-course = For one course of all { $colonies ->
    [one] 1 colony
   *[other] { $colonies } colonies
}
label-stock-look-again = Check again
terminal-stock-taken-by = taken by entry { $entry }
label-stock-how-to-record = To record it: replace null with how and where, save these lines in a file, and run combclear import FILE.
terminal-stock-dispose = { $amount } of { $pack }, lot { $lot }: { $why }
terminal-stock-dispose-lot = lot { $lot }: { $why }
terminal-stock-leaflet-says = leaflet: { $says } ({ $confidence }; { $sources })
label-stock-leaflet-silent = the leaflet used here does not say how: read it on the pack, or ask the supplier
terminal-stock-empty = empty: { $lots }
terminal-stock-dispose-brief = { $amount } of { $pack }, lot { $lot }
terminal-stock-short = { $medicine }: { $short } short
terminal-stock-enough = enough: { $medicines }
terminal-stock-need-not-known = { $medicine }: not known whether it is enough
label-stock-more = In full, with the entries to record a disposal: combclear stock --full
terminal-stock-doses = { $doses ->
    [one] 1 dose
   *[other] { $doses } doses
}
terminal-stock-not-known = not known for { $colonies }: { $gap }

# gaps
terminal-gaps-head = Is the record complete? Holding { $holding }, { $from } to { $to }
terminal-gaps-by-law = by { $law }
label-gaps-required = Missing: required by law
label-gaps-irregular = Irregular
label-gaps-where-applicable = Missing, if it applies
label-gaps-advised = Advised
terminal-gaps-brief = { $what }: entries no. { $numbers }
terminal-gaps-of-many = { $what }: { $count } entries; the first are no. { $numbers }
label-gaps-more = In full, with the stock account of each lot: combclear gaps --full
terminal-gaps-times = { $what }: { $count } times
terminal-gaps-entries = entries no. { $numbers }
terminal-gaps-more-gone = { $amount } more gone than acquired
label-gaps-count-corrected = the count was corrected

# retention
terminal-retention-head = How long the medicine records must be kept. Holding { $holding }, { $day }
terminal-retention-nothing = No records may be archived on { $day }. { label-retention-note }
terminal-retention-could-go = { $sets ->
    [one] 1 set of records
   *[other] { $sets } sets of records
} may be archived on { $day }: { $lots }. { label-retention-note }
label-retention-at-least = "at least": some is left, a removal is not on record, or the law is known here only second hand, so that day may still move.
label-retention-more = In full, with reasons and sources: combclear retention --full
label-retention-note = Nothing is archived automatically. The day given is the last on which the records must be kept.
label-retention-own-prescription = (a prescription of its own)
label-retention-keep-it = not known: keep it

# law
label-law-union = A member state of the Union that is not listed uses the rules of eu.
terminal-law-head = What the law requires in { part-jurisdiction } on { $day }
label-law-in-force = in force
terminal-law-not-yet = not in force yet, from { $day }
terminal-law-over = no longer in force, until { $day }
label-law-none-in-force = No rule known here is in force on that day. That does not mean that nothing was required.
label-law-how-soon = How soon:
label-law-at-the-time = at the time
terminal-law-within = within { days }
label-law-in-what-form = In what form:
label-law-how-long = How long to keep it (the longest applies):
# $from completes "5 years from".
terminal-law-keep = { $years ->
    [one] 1 year from { $from }
   *[other] { $years } years from { $from }
}
terminal-law-keep-scheme = { terminal-law-keep } (a scheme or advice)

# leaflets
label-leaflets-more = One of them: combclear leaflets ID; how well each is established: combclear leaflets --full
terminal-leaflets-elsewhere = These leaflets are those for { part-jurisdiction }, where the holding { $holding } is. Other countries: --all-countries
label-leaflets-one-more = In full, with notes and sources: --full
label-leaflets-note = Only what was read in a document can support a yes. Your own reading of the pack takes precedence over all of these.

# options: the head, and what several tables share.
label-options-usable = Usable
label-options-unknown = Not known
label-options-ruled-out = Ruled out
label-options-none-in-stock = none in stock
label-options-supers-not-known = day for supers not known
label-options-supers-stay = supers may be on
label-options-more = In full: --full; one of them: --leaflet ID (ids: combclear leaflets)
label-options-apiary-more = In full, with the amounts for all colonies: --full
label-options-first-find-out = To find out first, for all that are not known
label-options-for-all-unknown = Not known for all of them, because
terminal-options-out-and-margin = { $out } ({ $margin })
# $rest is made of those that follow.
terminal-options-start = from { $day }: { $rest }
terminal-options-out = out { $day }
terminal-options-supers = supers { $day }
terminal-options-before-flow = { $days ->
    [one] 1 day before the flow
   *[other] { $days } days before the flow
}
terminal-options-before-flow-range = { $least } to { $most } days before the flow
terminal-options-too-late-for-flow = up to { $days ->
    [one] 1 day
   *[other] { $days } days
} too late for the flow
terminal-options-advice-not-kept = { $count ->
    [one] 1 recommendation
   *[other] { $count } recommendations
} not followed
terminal-options-find-out = find out: { $topics }
terminal-options-find-out-and-more = find out: { $topics } and { $more } more
terminal-options-reason-and-more = { $why } (and { $more } more)
terminal-options-answer-for = { $answer } for { $colonies }
terminal-options-head = What can be used? { $what }, start days { $from } to { $to }
terminal-options-colony = Holding { $holding }, colony { $colony }
terminal-options-colony-at = Holding { $holding }, colony { $colony } at { $apiary }
terminal-options-apiary = Holding { $holding }, the { $colonies ->
    [one] 1 colony
   *[other] { $colonies } colonies
} at { $apiary }
terminal-options-assumed = assumed for the site, not recorded: { $assumed }
terminal-options-assumed-until = assumed for the site, not recorded: { $assumed }, until { $until }
terminal-options-power = power { $power }
terminal-options-access = access { $access }
terminal-options-ground = ground { $ground }
label-options-no-flow = next nectar flow: none on record
terminal-options-flow = next nectar flow: { $forage }, { $stage } from { $day }
terminal-options-flow-years = next nectar flow: { $forage }, { $stage } from { $day } ({ $years })
terminal-options-flow-early = early { $day }
terminal-options-flow-late = late { $day }
terminal-options-usual-year = { $days } (usable in a usual year)
terminal-options-not-usual-year = { $days } (not in a usual year)
terminal-options-days-short = { days } short
terminal-options-days-to-spare = { days } to spare
terminal-options-missing-from = from { $day }, { $fact }
terminal-options-times = { $doses ->
    [one] once
   *[other] { $doses } times
}
label-options-times-not-stated = number of times not stated
terminal-options-out-if-brood = out from { $day } if brood is seen
label-options-stands-here = ranked here because
label-not-counted = not counted
terminal-options-in-stock = in stock { $amount }
terminal-options-short = short of { $amount }
terminal-options-short-at-least = short of at least { $amount }
terminal-options-to-mix-for-all = to mix { $ml } ml for all: { $mixture }
terminal-options-to-mix = to mix { $ml } ml: { $mixture } (recipe: { $recipe })

# options: one colony.
label-options-no-day = none in this period
terminal-options-not-before = not before { $day }
terminal-options-nearest = nearest to usable on { $day }
label-options-would-have-to-change = would have to change
terminal-options-sums = { $options ->
    [one] 1 option
   *[other] { $options } options
}: { $usable } usable, { $unknown } unknown, { $ruled_out } ruled out
label-options-first-day-shown = The first free day applies to a start on the first day shown. All conditions of one: --leaflet ID.
label-options-advice-not-kept = advice not followed
terminal-options-if-started = if started on { $day } ({ $answer })
label-options-none-of-these-days = none of these days
terminal-options-latest-start = latest start before the flow of { $flow } ({ $year } year): { $day }
label-options-in-stock-and-in-date = in stock and in date
label-options-expired = expired by then, or no expiry date on record
label-options-no-label = the label revision is not on record, or the leaflet does not have it
terminal-options-out-between = may be out from { $from }, must be out by { $by }
terminal-options-out-from = may be out from { $from }
terminal-options-out-by = must be out by { $by }; the minimum stay is not stated
label-options-stay-not-stated = how long it stays is not stated
terminal-options-out-without-brood = without brood, or with brood at its lowest, it might be out from { $day }: no brood inspection counts for that day
terminal-options-not-before-if-brood = if brood is seen while it is in, not before { $day }
terminal-options-margin = flow of { $flow } ({ $year } year): { $spare }
terminal-options-visit = visit { $when }: { $what }
terminal-options-visit-opened = visit { $when }: { $what }, hive opened
terminal-options-by = by { $day }, from a day that is not known

## Reading: what cannot be read, and what does not fit

# Text that is not of its form; it stands in backticks.
misread-name = `{ $text }` cannot be { $of ->
    [holding] the name of a holding
    [apiary] the name of an apiary
    [colony] the name of a colony
    [medicine] the name of a medicine
    [lot] the name of a lot
    [prescription] the number of a prescription
    [harvest-lot] the name of a harvest lot
    [leaflet] the id of a leaflet
    [method] the name of a method
    [jurisdiction] the code of a jurisdiction
   *[person] the name of a person
}: { $why ->
    [empty] it is empty
    [outer-space] it begins or ends with a space
    [control-character] it contains a control character
    [slash] it contains a `/`
   *[too-long] it is longer than 80 characters
}
misread-date = `{ $text }` is not { $wanted ->
    [date] a date written like 2026-04-11
    [day-of-calendar] a day of the calendar
    [day-in-range] a day between 1900-01-01 and 2199-12-31
    [year-day] a day of the year, such as `11-01`
    [time-of-day] a time of day written like 09:30
   *[instant] an instant written like 2026-04-11T08:15:30.123Z
}
misread-id = `{ $text }` is not a UUID written like 0198c7d2-5a3b-7c41-8f00-3b2a6e9d1c77, in lower case
misread-hash = `{ $text }` is not a hash of 64 hexadecimal digits
misread-key = `{ $text }` is not the id of a key: eight digits and small letters
misread-places = `{ $text }` is not a list of places in a journal, in order and each once, like 12-18,25
misread-checkpoint = this is not a checkpoint: a checkpoint has three lines, `combclear journal of <holding>`, a number, a hash
misread-amount = `{ $text }` is not an amount: { $why ->
    [not-a-number] write a number of zero or more, such as 2 or 2.3
    [decimals] at most three decimals are kept
   *[too-much] at most 1000000 is kept
}
misread-temperature = `{ $text }` is not a temperature: { $why ->
    [not-a-number] write degrees Celsius, such as 12.5
    [decimals] one decimal is kept; round it
   *[out-of-range] it is out of range; write degrees Celsius between -60 and 50
}
misread-fahrenheit = { misread-temperature }; if it is in Fahrenheit, write { $celsius }

# JSON that is not of its form.
misread-list-for-object = expected an object with named fields, not a list
misread-missing-field = missing field `{ $field }`
misread-unknown-field = unknown field `{ $field }`, expected { $known }
misread-no-fields = unknown field `{ $field }`, there are no fields
misread-duplicate-field = duplicate field `{ $field }`
misread-unknown-word = unknown word `{ $word }`, expected { $known }
misread-wrong-type = { $found }, expected { $wanted }
misread-wrong-value = { $found }, expected { $wanted }
# What there is in place of an unknown field or word: one, two or several, in backticks.
misread-in-backticks = `{ $name }`
misread-either = { $one } or { $other }
misread-one-of = one of { $names }
misread-found = { $found ->
    [null] null
    [boolean] `{ $value }`
    [number] the number `{ $value }`
    [text] the text { $value }
    [list] a list
   *[object] an object
}
misread-wanted = { $wanted ->
    [text] a text
    [whole] a whole number
    [whole-to] a whole number from 0 to { $most }
    [list] a list
    [entry] the id of an entry, or its number in the journal
   *[object] an object with named fields
}
misread-nothing-confirmed = missing field `says` or `value`
misread-confirmed-twice = `says` and `value` are both given; give only one of them
misread-near = { $message } (near character { $near })

# Entries that cannot be read, and how to fix them.
label-unreadable-not-text = the line is not UTF-8 text
label-unreadable-not-text-help = save the file as UTF-8
label-unreadable-calendar-help = look the date up; February has 29 days in leap years only
label-unreadable-json-help = each entry is one JSON object on one line; look for a missing quote, comma or bracket
label-unreadable-envelope-help = an entry has id, on, at, recorded_by, kind, body, copied_from, written_on, corrects, reason
unreadable-missing-help = add it to the body of this `{ $kind }` entry
label-unreadable-duplicate-help = the field is given twice; keep one of them
unreadable-unknown-help = an entry of kind `{ $kind }` has no such field; correct or remove it
unreadable-body-help = see the fields of `{ $kind }` in the API document
unreadable-kind = `{ $written }` is not a kind of entry
unreadable-kinds-help = the kinds are: { $kinds }
label-unreadable-no-id = the entry has no id
label-unreadable-no-id-help = make a UUID for it before sending it
label-unreadable-no-reason = a correction must give its reason
label-unreadable-no-reason-help = say in `reason` why the earlier entry was wrong
label-unreadable-null-character = the text contains U+0000, which stands for nothing
label-unreadable-null-character-help = leave that sign out
label-unreadable-copied-from-nothing = it is not said what the entry was copied from
label-unreadable-copied-from-nothing-help = name it in `copied_from`, such as red notebook 2025
label-unreadable-not-said-when-written = it is not said when the entry was written there
label-unreadable-not-said-when-written-help = give in `written_on` the day on which it was written on paper
label-unreadable-nothing-corrected = a reason is given but no entry is corrected
label-unreadable-nothing-corrected-help = name the entry in `corrects`, or leave `reason` out
label-unreadable-nothing-struck-out = a strike-out must name the entry it strikes out
label-unreadable-nothing-struck-out-help = name the entry in `corrects` and say why in `reason`
label-unreadable-other-spelling = the entry is not written exactly as it was sealed
label-unreadable-other-spelling-help = import the file as it was exported; a sealed entry has only one spelling

# The first line of a file.
label-header-journal = the first line is not a journal header
unreadable-header-journal-help = the first line looks like { $header }
label-header-archive = the first line is not the header of an archive
label-header-archive-help = name the file that `combclear archive` wrote
header-version = { $file ->
    [archive] the archive has format version `{ $found }`; this program reads version { $known }
   *[journal] the journal has format version `{ $found }`; this program reads version { $known }
}
label-header-version-help = use the program that wrote the file, or one that reads its version
label-header-no-number = a sealed journal must say how many entries follow
label-header-export-again = export the journal again
label-header-contents-in-drafts = a file of drafts cannot carry the contents of documents
label-header-contents-in-drafts-help = leave `contents` out; attach each document once the entries are imported

# A line with the content of a document.
label-content-not-base64 = the bytes of the document are not base64
content-other-length = the document has { $found } bytes; the line says { $promised }
content-size = the document has { $bytes } bytes; it must have at least 1 byte and at most 10 MB
content-other-hash = the document does not match its hash, `{ $hash }`
label-content-other-spelling = the document is not written exactly as it was exported
label-content-again = the file was cut short or changed; export the journal again
label-content-line-help = a line with a document has content, bytes and base64; the file was cut short or changed; export the journal again

# Documents that cannot be kept. $kind is PDF, JPEG, PNG or HEIC.
label-unfit-empty = the document is empty
label-unfit-empty-help = attach the file itself
unfit-too-large = the document has more than 10 MB ({ $most } bytes)
label-unfit-too-large-help = scan it at a lower resolution, or take a smaller photograph
unfit-other-type = the content is `{ $of }`, not a PDF, JPEG, PNG or HEIC
label-unfit-unknown-type = the content is of an unknown type, not a PDF, JPEG, PNG or HEIC
label-unfit-other-type-help = attach a scan or a photograph of the paper
unfit-cut-off = the { $kind } looks cut off: { $lacks ->
    [end-of-pdf] there is no `%%EOF` near its end
    [end-of-jpeg] its end marker is missing
    [end-of-png] its last chunk, IEND, is missing
    [rest-of-box] a box runs past the end
   *[description] the box that describes the picture is missing
}
label-unfit-cut-off-help = copy it again from the original, check that it opens, and attach that copy

# What does not fit about an entry of a journal, and about a row of a database; $column is a column of it.
misfit-entry = entry { $seq } ({ $id }): { $what }
misfit-out-of-place = it comes after entry { $last }, so it should be entry { $next }
label-misfit-other-prev = its `prev` is not the hash of the entry before it
label-misfit-changed = its content does not match its hash: it was changed after it was recorded
label-misfit-body-gone = its body is not here, and no entry says that it was moved into an archive
label-misfit-number-differs = it names more or fewer entries than it announces
misfit-not-borne-out = it says that entry { $seq } was moved into an archive, which that entry does not confirm
misfit-digest-differs = what remains of the entries { $places } does not match its digest: one of them was changed
label-misfit-no-archive = its `body` does not say what was moved into an archive
label-misfit-empty-time = its `happened_at` is empty; it must be a time, or null
label-misfit-empty-corrects = its `corrects` is empty; it must be an id, or null
label-misfit-half-copied = it has one of `copied_from` and `written_on` without the other
label-misfit-half-a-correction = it has one of `corrects` and `reason` without the other
misfit-bytes = its `{ $column }` has { $found } bytes, not { $wanted }
misfit-not-text = its `{ $column }` is not text
misfit-misread = its `{ $column }` cannot be read: { $why }
misfit-unknown-kind = its `kind` is `{ $kind }`, which this program does not know
misfit-unknown-role = its `role` is `{ $role }`, which this program does not know
misfit-body = its `body` does not fit its kind: { $why } (at `{ $pointer }`)
misfit-place = its place is { $seq }

## Files: what is wrong with a leaflet or a law file, and how to fix it

# The text as a whole, before any key is looked at. $says is what the parser of TOML says.
fault-toml-key-twice = `{ $key }` is written twice in one table
fault-toml-key-twice-help = keep one of the two
fault-toml-no-value = the key has no value
fault-toml-no-value-help = write a value after the `=`, or drop the line
fault-toml-not-in-quotes = `{ $written }` is not in quotes
fault-toml-not-in-quotes-help = write "{ $written }"
fault-toml-not-closed = the text is not closed
fault-toml-not-closed-help = end it with a double quote on the same line
fault-toml = not TOML: { $says }
fault-toml-help = { $within ->
    [list] close the list with `]`, and put a comma between its texts
   *[line] write each line as `key = value`, with text in double quotes and dates such as 2026-04-11
}

# How a table is called: the file as a whole, or one of a list; $list is its key, such as rule or source.
fault-table = { $table ->
    [leaflet] the leaflet
    [law] the law file
    [one] this { $list }
   *[named] { $list } `{ $name }`
}
fault-key-unknown = { $table } has no key `{ $key }`
fault-key-unknown-help = { $table } takes the keys: { $keys }
fault-key-missing = { $table } lacks `{ $key }`
fault-key-missing-help = add `{ $key }`, { $wanted }

# A value that its key cannot have.
fault-value = `{ $key }` of { $table } cannot be { $found ->
    [empty-list] an empty list
    [list] a list
    [table] a single table
   *[written] `{ $written }`
}
fault-write = write { $wanted }
# What a value would have to be, as it stands after "write" and after "add `key`,".
fault-wanted = { $wanted ->
    [text] some text in double quotes
    [date] a date without quotes, such as 2026-04-11
    [true] true, or leave the key out
    [amount] a number above 0 with at most three decimals, such as 2 or 2.3
    [degrees] degrees Celsius from -30 to 60 with at most one decimal
    [year-day] month and day in double quotes, such as "11-01"
    [file-name] the file name without `.toml`, in double quotes
    [folder-name] the name of the folder, in double quotes
    [country] the lower-case code of a country, or `eu`, in double quotes
    [method] one of the names in `methods`, in double quotes
    [actives] a list of the active substances, such as ["amitraz"]
    [methods] a list of names, such as ["trickle", "sublimation"]
    [states] a list of member states, such as ["de", "fr"]
    [revisions] a list of label revisions in order, such as ["2013-03", "2021-02"]
    [source-keys] a list of keys of sources, such as ["S1"]
    [jurisdictions] a list of jurisdictions, such as ["eu"]
   *[records] a list of records, such as ["acquisition", "proof"]
}
fault-wanted-format = the number { $format }
fault-wanted-one-of = one of: { $list }
fault-wanted-any-of = a list of any of: { $list }
fault-wanted-whole = a whole number from { $least } to { $most }
fault-drop-quotes = drop the quotes: { $value }
fault-day-of-calendar = write a date that the calendar has, year first, such as 2026-04-11
fault-day-in-range = write a date from { $first } to { $last }
fault-date-alone = leave the time of day out: { $date }
fault-in-brackets = put it in square brackets: ["{ $text }"]
# $help says to write degrees Celsius, or the number of the format.
fault-celsius = { $help }: { $fahrenheit } °F are { $celsius } °C
fault-format = { $help }; a later format needs a later version of this program
fault-own-tables = write each { $list } under a line of its own with two pairs of brackets: [[{ $list }]]
fault-unlisted = { $of ->
    [needs] `{ $written }` is not a need
    [others] `{ $written }` is not something that can be told from the record
   *[records] there is no sort of record `{ $written }`
}
fault-twice = { $of ->
    [method] the method `{ $name }` is named twice
    [state] the state `{ $name }` is named twice
    [revision] the revision `{ $name }` is named twice
    [record] `{ $name }` is named twice
   *[include] `{ $name }` is included twice
}
fault-twice-help = { $of ->
    [method] name each method once
    [state] name each state once
    [revision] name each revision once
    [record] name each sort of record once
   *[include] name each jurisdiction once
}
fault-until-before-from = `until` { $until } lies before `from` { $from }
fault-until-before-from-help = write the last day in force, or leave `until` out
fault-checked-before-from = `checked_on` { $checked } lies before `from` { $from }
fault-checked-before-from-help = correct the one that is wrong: a value is checked once it is in force
fault-not-the-file = { $key ->
    [id] the id is `{ $name }`, but the file is `{ $file }`
   *[jurisdiction] the jurisdiction is `{ $name }`, but the file is `{ $file }`
}
fault-not-the-file-help = rename the file to `{ $name }.toml`, or write `{ $key } = "{ $stem }"`

# Sources.
fault-source-no-country = { $source } does not say whose text it is
fault-source-no-country-help = add `country`, such as "gb"; `kind = "memory"` where no text was read
fault-source-union-of-a-state = a text of the Union has the country `eu`
fault-source-union-of-a-state-help = write `country = "eu"`, or `kind = "authority"` for a text of that country
fault-source-union-as-authority = the Union's own texts are of kind `union`
fault-source-union-as-authority-help = write `kind = "union"`, or the country whose authority it is
fault-source-twice = the source `{ $id }` is already defined in line { $line }
fault-source-twice-help = give each source an `id` of its own, or drop one of the two
fault-source-not-defined = the source `{ $id }` is not defined
fault-source-not-defined-help = add a [[source]] with `id = "{ $id }"`
fault-source-not-defined-near-help = { refusal-did-you-mean-help } if not, { fault-source-not-defined-help }
fault-source-not-cited = no rule cites the source `{ $id }`
fault-source-not-cited-help = cite it in the `source` of a rule, or drop it

# Values that do not go together.
fault-not-above = `{ $most }` is not above `{ $least }`
fault-less = `{ $most }` { $high } is less than `{ $least }` { $low }
fault-swap-help = swap or correct them
fault-leave-out-help = correct it, or leave `{ $most }` out
fault-none-of = { $rule } { $lacking ->
    [limit] sets no limit
    [size] says nothing
   *[bees] does not say for how many bees
}
# $keys are all of them; $others are those before the $last.
fault-none-of-help = { $lacking ->
    [limit] add { $keys } or both, in degrees Celsius
    [size] add { $others } or { $last }
   *[bees] add { $keys } or both
}
fault-needed-help = add `{ $key }`: `{ $of } = "{ $word }"` needs it
fault-misplaced = `{ $key }` does not go with `{ $of } = "{ $written }"`
fault-misplaced-help = drop it, or write `{ $of } = "{ $word }"`
fault-days-beside-none = a label that knows no withdrawal period does not state one in days
fault-days-beside-none-help = keep `{ $key }`, or keep `none_by_label = true`
fault-nothing-stays = a single dose leaves nothing in the hive, so `{ $topic }` means nothing
fault-nothing-stays-help = drop the rule, or write `release = "slow"` at the head of the leaflet
# $of is a kind of rule in backticks, or one of those that follow.
fault-two-in-force = two values of { $of } are in force on { $on }: this one and that of line { $line }
fault-two-in-force-always = two values of { $of } are in force from the first day on: this one and that of line { $line }
fault-value-of-field = `{ $field }` at { $occasion }
fault-value-of-years = `years` for { $records }
fault-value-of-days = `within_days` at { $occasion }
fault-keep-apart-help = { $how ->
    [revision] a rule without `revision` holds for every revision: name the one it is for, or drop it
    [method] a rule without `method` holds for every method: name the one it is for, or drop it
    [window] write `min_c` and `max_c` of one window in one rule, or keep one of the two
   *[one-of-two] keep one of the two; or, if one replaced the other, give it a later `from`
}
fault-until-help = write `until = { $until }` in the one that has no `from`
fault-until-of-help = write `until = { $until }` in the one that is in force from { $from }
fault-any-brood = this `{ $topic }` holds for any brood, but that of line { $line } for one state of it
fault-any-brood-help = give both rules a `brood`, or neither
fault-stay-bounds = it must stay at least { $least } days but at most { $most }; the other number is in line { $line }
fault-stay-bounds-help = correct the one that is wrong

# Leaflets.
fault-leaflet-no-rule = the leaflet holds no rule
fault-leaflet-no-rule-help = add at least one [[rule]]
fault-other-folder = the jurisdiction is `{ $jurisdiction }`, but the folder is `{ $folder }`
fault-other-folder-help = move the file to the folder `{ $jurisdiction }`, or write `jurisdiction = "{ $folder }"`
fault-method-name-help = give the method a short name, such as `trickle`
fault-unknown-method = the leaflet has no method `{ $method }`
fault-unknown-method-help = the head of the leaflet declares { $declared }: add it there, or correct it
fault-no-methods-help = add `methods = ["{ $method }"]` to the head of the leaflet, or drop the key
fault-unknown-revision = the leaflet has no label revision `{ $revision }`
fault-unknown-revision-help = add "{ $revision }" to `revisions` at the head of the leaflet, or drop the key
fault-not-a-state = `{ $written }` is no member state
fault-not-a-state-help = write the lower-case code of a member state of the Union, such as `fr`
fault-states-elsewhere = a leaflet of `{ $jurisdiction }` holds there alone
fault-states-elsewhere-help = drop `states`: only leaflets of `eu` name them
fault-no-authority = this `{ $topic }` is marked as a document, but { $sources } is no text of an authority of `{ $jurisdiction }`
fault-no-authority-help = write `confidence = "second_hand"`, or cite the authority's own text
fault-leaflet-in-two-files = the leaflet `{ $leaflet }` is also in `{ $other }`
fault-leaflet-in-two-files-help = give the variant an id of its own, or keep one of the two files
fault-would-replace = there is a built-in leaflet `{ $leaflet }`, which this one would replace
fault-would-replace-help = give it another id, or say so: instead_of = "{ $leaflet }"
fault-instead-of-another = `instead_of` names `{ $of }`, but the leaflet is `{ $leaflet }`
fault-instead-of-another-help = a leaflet stands in for the one of its own jurisdiction and id
fault-instead-of-none = there is no built-in leaflet `{ $of }`
fault-instead-of-none-help = drop `instead_of`, or correct the id

# Laws.
fault-law-no-rule = the law file holds no rule
fault-law-no-rule-help = add at least one [[field]], [[retention]], [[time_limit]] or [[form]]
fault-include-name-help = write the code of a jurisdiction, such as `eu`
fault-includes-itself = `{ $jurisdiction }` includes itself
fault-includes-itself-help = drop it: its own rules hold anyway
fault-leads-back = `{ $own }` includes `{ $include }`, which leads back to `{ $own }`
fault-leads-back-help = drop one of the includes: each must lead to wider rules
fault-nothing-to-include = there is no law of `{ $include }` to include
fault-nothing-to-include-help = add the file `{ $include }.toml`, or drop the include
fault-law-in-two-files = the law of `{ $jurisdiction }` is also in `{ $other }`
fault-law-in-two-files-help = keep one of the two files

## Keeping: the database of a journal, and the contents of documents

# $place is where the database is, $what its own words.
store-cannot-open = cannot open `{ $place }`: { $why ->
    [folder] it is a folder
    [no-folder] its folder does not exist
    [no-file] there is no such file, and none can be created there
   *[refused] the system refuses access to it or to its folder
}
label-store-cannot-open-help = check the path, and that its folder exists and is writable
store-read-only = `{ $place }` is read-only
label-store-read-only-help = allow this program to write the file and its folder, or work on a copy elsewhere
store-not-a-database = `{ $place }` is not a database
store-foreign = `{ $place }` is a database of another program
label-store-other-file-help = it was left as it is; name another file, or restore this one from a copy
store-newer = `{ $place }` has version { $version } of the tables; this program knows versions up to { $known }
label-store-newer-help = use the version of this program that made it, or a later one
store-altered = version { $version } of the tables in `{ $place }` is not the one that this program creates
label-store-altered-help = export the journal with the program that created it
store-full = there is no space left to write to `{ $place }`; nothing was recorded
label-store-full-help = free some disk space, then send the same entries again under the same ids
store-locked = `{ $place }` is locked by another writer
label-store-locked-help = try again; if it stays locked, look for another program that has it open
store-unreachable = the database at `{ $place }` does not answer: { $what }
label-store-unreachable-help = check that the server runs and can be reached, then send the same entries again under the same ids
store-not-admitted = the database at `{ $place }` refuses this user: { $what }
label-store-not-admitted-help = check the user, the password and the database in the address, and what that user may do there: it needs to create tables and schemas in this database
store-follows = `{ $place }` only follows another server and may be behind it, so nothing is answered from it
label-store-follows-help = name the server that it follows; export works here too
store-too-old = `{ $place }` runs PostgreSQL { $version }; this program needs version { $least } or later
label-store-too-old-help = upgrade the server, or keep the journal in a file: `sqlite:journal.db`
store-other-encoding = the database at `{ $place }` keeps texts as { $encoding }, not as UTF8
label-store-other-encoding-help = create a database with `encoding 'UTF8'`
store-damaged = `{ $place }` is damaged: { $what }
label-store-damaged-help = keep the file as it is, and restore the journal from a copy or an export
store-device = `{ $place }` could not be read or written: { $what }
label-store-device-help = check the disk and its connection, then try again
store-replaced = `{ $place }` was taken away or replaced while it was open; nothing was recorded in it
label-store-replaced-help = put the file back, or end this program and start it with the file that is there now
store-guards = the tables in `{ $place }` are not as this program makes them: { $names }
label-store-guards-help = somebody changed them with another program, so entries may have been changed too: keep the file as it is, and restore the journal from a copy or an export
store-broken = the journal of `{ $holding }` was changed at entry { $seq }: { $what }
label-store-broken-help = nothing is answered from a journal that was changed: keep the file as it is, and restore the journal from a copy or an export
store-lost = the journal of `{ $holding }` is damaged: { $by_place } of its entries are found by their places, { $by_id } by their ids
store-unreadable = entry { $seq } of `{ $holding }` cannot be read: { $what }
store-unreadable-name = entries are kept under a name that cannot be read: { $what }
label-store-unreadable-help = verify the journal: it was changed outside this program, or a newer version of it wrote the entry
store-unreadable-key = key `{ $id }` cannot be read: { $what }
store-database = the database at `{ $place }` refuses: { $what }
label-store-database-help = nothing was recorded; try again, and report it if it persists

# Addresses of databases.
address-no-kind = `{ $address }` does not say what kind of database it is
address-for-a-file = for a file, write `sqlite:{ $address }`
address-other-kind = `{ $kind }` is not a kind of database that a journal can be kept in
label-address-name-a-file = name a file: `sqlite:journal.db`, or a server: `postgres://user@server/database`
label-address-unreadable-server = the address of the server cannot be read
label-address-unreadable-server-help = write `postgres://user@server/database`; write signs such as `@` and `/` in a password as `%40` and `%2F`
address-other-parameter = `{ $parameter }` is not a parameter of a server's address
label-address-other-parameter-help = the usual ones are `sslmode`, `sslrootcert`, `host` and `options`
label-address-no-file = the address names no file
label-address-no-file-help = write `sqlite:journal.db`
address-not-a-path = `{ $file }` is not the path of a file
label-address-not-a-path-help = a journal is kept in a file; write its plain path, as in `sqlite:journal.db`
address-other-asked = `{ $asked }` is not an option for a file
label-address-other-asked-help = `?mode=rw` opens only an existing file; write a `?` in a file name as `%3F`
address-unreadable-path = `{ $file }` cannot be read as a path
label-address-unreadable-path-help = write a `%` in a file name as `%25`

# Documents whose content is not kept as it was attached. $of is what the document belongs to.
keeping-kept = document `{ $hash }` of { $of } (entry { $seq }, { $id }) is kept
keeping-missing = document `{ $hash }` of { $of } (entry { $seq }, { $id }) is missing: nothing is kept under its hash
label-keeping-missing-help = attach the same file again, or import an export that has it
keeping-altered = document `{ $hash }` of { $of } (entry { $seq }, { $id }) is altered: its content is not what was attached
label-keeping-altered-help = import an export from before the change into a new database (--db), and continue with that one

# A journal held against a checkpoint.
missed-other-holding = the checkpoint is for `{ $of }`
missed-shorter = the journal had { $had ->
    [one] 1 entry
   *[other] { $had } entries
} when the checkpoint was taken, and now has { $has }
missed-differs = entry { $seq } had another hash when the checkpoint was taken: it or an entry before it was replaced

# Entries that were not recorded.
keeping-conflict = an entry with the id { $id } is already recorded, with different content
label-keeping-busy = other writers keep adding to this journal; nothing was recorded
label-misfit-other-entry = the journal holds another entry in its place
label-misfit-other-meaning = the text of its body does not match the entry
label-misfit-moves-nothing = it moves nothing into an archive
label-misfit-went-before = its body had already been moved
label-misfit-contents-differ = it names more or fewer contents than are moved
misfit-nothing-to-move = there is no entry { $seq } before it to move
misfit-no-document = there is no document { $hash } to move

## Service: what is wrong with a request

http-not-an-entry = this is not the id of an entry: { $why }
label-http-id-help = the id of an entry is a UUID, as in 01964c7e-6f00-7000-8000-000000000001
label-http-document-help = GET /holdings/{"{"}holding{"}"}/documents lists the hashes of the attached documents
label-http-name-help = a name has 1 to 80 characters, no `/`, no control characters and no outer spaces
http-given-twice = the query parameter `{ $parameter }` is given twice
label-http-give-once = give it once
http-missing = the query parameter `{ $parameter }` is missing
label-http-add-to-address = add it to the address
http-no-parameter = this path has no query parameter `{ $parameter }`
# $known are the parameters that it takes, in backticks.
http-takes = this path takes { $known }
label-http-takes-none = this path takes none
http-correct-or-leave-out = correct `{ $parameter }`, or leave it out
http-not-a-limit = `{ $text }` is not a whole number from 1 to { $most }
http-not-a-place = `{ $text }` is not a place in a journal: a whole number, 0 or more
http-not-yes-or-no = `{ $text }` is neither `true` nor `false`
http-at-line = line { $line }, column { $column }: { $what }
label-http-json-help = check there, or just before, for a missing quote, comma or bracket
label-http-path-not-utf8 = a part of the path is not UTF-8 once percent-decoded
label-http-path-not-utf8-help = encode its UTF-8 bytes, as `%C3%B6` for `ö`
label-http-body-not-whole = the body did not arrive in full
label-http-body-not-utf8 = the body is not UTF-8 text
label-http-body-not-utf8-help = encode it as UTF-8
label-http-body-undeclared = the request does not declare the media type of its body
http-body-declared = the body is declared as `{ $declared }`
label-http-declare-json = send it with the header `Content-Type: application/json`
label-http-site-until-alone = `site_until` is given, but nothing is assumed about the site
label-http-site-until-alone-help = give `power`, `access` or `ground` as well, or leave it out
label-http-no-pdf = this service cannot produce PDF
label-http-no-pdf-help = ask for `html`, which is made for printing, or build the program with its typesetter

# Requests that no handler answers, and journals that cannot be read or written.
http-nothing-recorded = { $why }; nothing was recorded
label-http-nothing-served = nothing is served at this path
label-http-wrong-method = this path does not take this method; see the Allow header
label-http-body-too-large = the body is larger than 4 MiB
label-http-timeout = no answer was ready within 30 seconds; an append may still have been recorded
label-http-reports-busy = as many reports are being worked out as this machine can take
label-http-reports-busy-help = ask again in a moment; questions about one colony or one apiary are answered meanwhile
label-http-bodies-busy = others are sending as much as this service takes in at a time; nothing was recorded
label-http-bodies-busy-help = send it again in a moment, under the same id
label-http-unreadable = the request could not be read
label-http-internal = an internal error; it is not known whether the request took effect
label-http-not-ready = the database does not answer
http-not-own-name = `{ $host }` is not a local name of this machine
label-http-no-key = a key is needed here, and none came that holds
label-http-foreign-holding = this key is for another holding
label-http-too-many-requests = too many requests in a short time
http-not-allowed = a key for a { $role } does not { $deed ->
    [read] read the records of a holding
    [add] record entries
    [correct] correct or strike out entries
    [begin] begin a holding
   *[watch] show what the service measures
}
http-not-allowed-kind = a key for a { $role } does not record entries of kind `{ $kind }`
label-http-not-allowed-help = ask the keeper to record it
http-key-ended = key `{ $id }` was ended
http-key-ran-out = key `{ $id }` ran out on { $until }
label-http-store-locked = the journal is locked by another writer
label-http-store-unreachable = the database cannot be reached
label-http-store-full = there is no space left to write the journal
label-http-store-read-only = the journal can be read but not written
label-http-store-failed = the journal could not be read or written

# What is asked for and is not there. { $slugs } are the kinds of problems.
http-no-holding = no entry is recorded under the holding `{ $holding }`
label-http-no-holding-help = GET /holdings lists the holdings that have entries; PUT /holdings/{"{"}holding{"}"} begins a new one
http-no-apiary = the holding `{ $holding }` has no apiary `{ $apiary }`
label-http-no-apiary-help = look it up among the apiaries of the holding; if it is new, record its details
http-no-colony = no entry of the holding `{ $holding }` mentions a colony `{ $colony }`
label-http-no-colony-help = look it up among the colonies of the holding; if it is new, record it as established
http-no-lot = the holding `{ $holding }` has no lot `{ $lot }`
label-http-no-lot-help = look it up in the stock of the holding; if it is new, record how it was acquired
http-no-leaflet = there is no leaflet `{ $leaflet }` for `{ $jurisdiction }`
http-no-active = no leaflet has the active substance `{ $active }`
http-leaflet-for = there is one for `{ $jurisdiction }`
label-http-lists-leaflets = GET /leaflets lists the leaflets available
http-no-file = the page has no file `{ $file }`
label-http-no-file-help = the page is at /docs
http-no-problem = there is no problem `{ $slug }`
http-problems-are = the problems are: { $slugs }

# Entries, and batches of them. { $why } is a refusal.
http-no-entry = the holding `{ $holding }` has no entry with the id { $id }
http-no-entry-help = GET { $path } lists what is recorded
label-http-not-an-object = this is not an entry
label-http-not-an-object-help = an entry is one JSON object with on, recorded_by, kind, body and its other fields
http-other-id = the id in the entry is { $id }, but the id in the path is { $named }
label-http-other-id-help = leave `id` out, or make both the same
label-http-new-id = make a new id for a new entry, or correct the recorded one with another entry
label-http-not-a-batch = the body is not a batch of entries
http-batch-of = the batch has { $entries } entries
http-not-a-batch-help = send a JSON array of 1 to { $most } entries
http-not-a-form = the body is not a filled-in form: { $why }
label-http-not-a-form-help = send an object with on, recorded_by and fields; each field is a list of texts under its key
http-form-faults = { $faults ->
    [one] one thing in the form is to be fixed
   *[other] { $faults } things in the form are to be fixed
}
label-http-form-untrue = what the form says cannot be true
http-no-form = there is no form for `{ $kind }`
http-and-more = { $first }, and { $more } more
http-untrue = { label-problem-refused-entry }: { $why }
http-untrue-in-batch = entry { $number } of the { $of } in the batch cannot be true: { $why }

# Documents. { $kind } is PDF, JPEG, PNG or HEIC.
http-no-document = no entry of `{ $holding }` attaches a document `{ $hash }`
http-no-document-help = GET { $path } lists the attached documents
http-document-missing = the content of document `{ $hash }` is not kept
label-http-document-missing-help = send the same file again with PUT under the id of its entry, or import an export that has it
http-document-altered = the content kept for document `{ $hash }` is not what was attached
label-http-document-altered-help = restore the journal from a copy, or import an export from before the change into a new database
label-http-document-of-nothing = neither a lot nor a prescription is named
label-http-document-of-two-things-help = name one of them, and attach it to the other under an id of its own
http-document-declared = the document is declared as `{ $declared }`, but its content is a { $kind }
http-document-declared-help = leave the header Content-Type out, or send `Content-Type: { $media-type }`
label-http-upload-not-whole = the upload broke off: the document did not arrive in full
http-upload-shorter = the upload broke off: { $announced } bytes were announced, { $arrived } arrived
label-http-upload-broken-off-help = send the whole file again under the same id
label-http-upload-stalled = the upload stopped in the middle
label-http-upload-too-slow = the upload did not arrive in time
label-http-upload-too-slow-help = send it again under the same id

# Names of files; the reasons stand as { $why }.
http-not-a-file-name = `{ $name }` cannot be the name of a file: { $why }
label-http-file-name-empty = it is empty
label-http-file-name-too-long = it is longer than 200 characters
label-http-file-name-slash = it contains a `/` or a `\`
label-http-file-name-control-character = it contains a control character
label-http-file-name-help = give the name without its folder, or leave `file_name` out

## Problems: each kind that the service knows

# Its title, and its page, which says what to do.
part-nothing-was-recorded = Nothing was recorded.
part-names-are-exact = Names are exact, capital letters included.
http-status = HTTP status { $status }
label-problem-bad-parameter = a part of the address cannot be used
label-problem-bad-parameter-page = A part of the path or a query parameter is malformed, out of range, or not known to this path. `errors` names it and says how to write it. Dates are civil dates like 2026-04-11.
label-problem-malformed-json = the body is not JSON
label-problem-malformed-json-page = The body ends too early or is not valid JSON at the line and column given. { part-nothing-was-recorded } Fix it and send it again under the same id.
label-problem-unreadable-body = the body cannot be read
label-problem-unreadable-body-page = The body did not arrive in full, or is not UTF-8 text. { part-nothing-was-recorded } Send it again under the same id.
label-problem-foreign-host = this host name is not accepted
label-problem-foreign-host-page = Without keys the service answers only under the local names of this machine: localhost, 127.0.0.1, [::1]. Otherwise a web page from elsewhere could point its own name at this machine, and read and write the journal.
label-problem-unknown-path = no such path
label-problem-unknown-path-page = Nothing is served there. /openapi.json lists every path, /docs shows them. A name cannot contain a `/`; percent-encode other special characters.
label-problem-unknown-holding = no such holding
label-problem-unknown-holding-page = No entry is recorded under this name. GET /holdings lists the names that have entries. A holding is begun on purpose, with PUT /holdings/{"{"}holding{"}"} and its first entry, so that a slip of the pen never makes a second one.
label-problem-unknown-entry = no such entry
label-problem-unknown-entry-page = The holding has no entry with this id. If you sent it and got no answer, send it again under the same id: it is recorded once. GET /holdings/{"{"}holding{"}"}/entries lists what is recorded.
label-problem-unknown-document = no such document
label-problem-unknown-document-page = No entry of the holding attaches a document with this hash. GET /holdings/{"{"}holding{"}"}/documents lists the attached documents.
label-problem-missing-document = the content of the document is missing
label-problem-missing-document-page = An entry attaches the document, but its content is not here: the entry arrived without it, or the content was removed. Send the same file again with PUT under the id of the entry, or import an export that has it.
label-problem-unknown-colony = no such colony
label-problem-unknown-colony-page = No entry of the holding mentions a colony of this name, or the one that did was struck out. { part-names-are-exact } If the colony exists but is not on record, record an entry of kind colony_established.
label-problem-unknown-apiary = no such apiary
label-problem-unknown-apiary-page = No apiary of this name is recorded. { part-names-are-exact } If it is new, record an entry of kind apiary_details.
label-problem-unknown-lot = no such lot
label-problem-unknown-lot-page = No entry of the holding acquires a lot of this name, or the one that did was struck out. { part-names-are-exact } If the lot is new, record an entry of kind lot_acquired.
label-problem-unknown-leaflet = no such leaflet
label-problem-unknown-leaflet-page = There is no built-in leaflet of this id for this jurisdiction. { label-http-lists-leaflets }. A medicine without one can be described with terms of its own.
label-problem-unknown-law = no such law
label-problem-unknown-law-page = No law of this jurisdiction is built in. GET /laws lists the laws built in; a member state of the Union without a law of its own here has that of the Union. This program does not know what the law requires there: ask the authority.
label-problem-unknown-problem = no such problem
label-problem-unknown-problem-page = There is no page about a problem of this name. The `type` of a problem document is the address of its page.
label-problem-wrong-method = wrong method for this path
label-problem-wrong-method-page = The path is right, the method is not. The Allow header lists the methods that it takes. Entries are never changed or deleted: record a new entry that names the wrong one in `corrects`.
label-problem-same-id-other-content = the id is already used for another entry
label-problem-same-id-other-content-page = An entry with this id is already recorded, and the one sent differs from it. { part-nothing-was-recorded } GET the entry to compare. If this is a new entry, make a new id for it. If the recorded one is wrong, record a new entry that names it in `corrects` and gives the reason.
label-problem-holding-exists = the holding exists already
label-problem-holding-exists-page = A holding is begun once. { part-nothing-was-recorded } Record entries with PUT or POST below /holdings/{"{"}holding{"}"}/entries; a change of keeper or country is an entry of kind holding_details.
label-problem-stalled-body = the body stopped arriving
label-problem-stalled-body-page = Nothing more of the body arrived for some seconds, so the request was let go. { part-nothing-was-recorded } Send it again under the same id.
label-problem-body-too-large = the body is too large
label-problem-body-too-large-page = A body is at most 4 MiB, a document at most 10 MB. { part-nothing-was-recorded } Send entries in several batches; scan a document at a lower resolution, or take a smaller photograph.
label-problem-wrong-media-type = the body is not declared as JSON
label-problem-wrong-media-type-page = Send the body with the header `Content-Type: application/json`. { part-nothing-was-recorded }
label-problem-other-document-type = the document is of another type
label-problem-other-document-type-page = A document is a PDF, JPEG, PNG or HEIC, as its content shows; neither the name of the file nor the Content-Type counts. If a Content-Type is declared, it must be the right one. { part-nothing-was-recorded } Attach a scan or a photograph of the paper.
label-problem-unfit-document = the document is incomplete
label-problem-unfit-document-page = The document is empty, or looks cut off: its end is missing. { part-nothing-was-recorded } Copy it again from the original, check that it opens, and send that copy under the same id.
label-problem-altered-document = the document was altered
label-problem-altered-document-page = The content kept is not what was attached, so it is not served. Restore the journal from a copy, or import an export from before the change into a new database.
label-problem-unreadable-entry = the entry does not have the fields of its kind
label-problem-unreadable-entry-page = A field is missing, unknown or malformed. `errors` names each with a JSON pointer. { part-nothing-was-recorded } The fields of every kind of entry are in /openapi.json and at /docs.
label-problem-refused-entry = the entry cannot be true
label-problem-refused-entry-page = The entry contradicts what is recorded: for example, a removal before the placing, a colony or lot that nobody entered, or a day in the future. Nothing was recorded; a batch is refused as a whole. `errors` names the contradiction. If the recorded entry is the wrong one, correct that first. A broken rule is not a reason for refusal: record what happened.
label-problem-no-key = no key
label-problem-no-key-page = This service asks for a key. Send it in the header: `Authorization: Bearer KEY`. Whoever runs the service makes keys with `combclear key add`.
label-problem-ended-key = the key has ended
label-problem-ended-key-page = The key held once, and holds no longer. Ask whoever runs the service for another.
label-problem-not-allowed = the key does not allow this
label-problem-not-allowed-page = Each key has a role. A keeper may do everything in the holding; a helper reads and adds entries, but corrects none; a vet reads, and adds prescriptions, the vet's own stock and what was given; a reader only reads; an operator begins holdings and sees what the service measures. { part-nothing-was-recorded }
label-problem-foreign-holding = a key for another holding
label-problem-foreign-holding-page = A key is for one holding. Whether there is another of the name that was asked for is not said.
label-problem-too-many-requests = too many requests
label-problem-too-many-requests-page = The same key, or clients without one, sent more requests than the service takes in. Wait as many seconds as the header Retry-After says.
label-problem-store-failed = the journal cannot be read or written
label-problem-store-failed-page = The database could not do its work; `errors` says how to fix it, and the log of the service says more. After a failed append look the entry up by its id, or send it again under the same id: it is recorded once.
label-problem-store-untrusted = the journal does not hold
label-problem-store-untrusted-page = What the database holds was changed or damaged outside this program, so nothing is answered from it and nothing is recorded in it. `errors` and the log of the service say what is wrong. Keep the file as it is, and restore the journal from a copy or an export.
label-problem-store-full = there is no room left
label-problem-store-full-page = The disk of the database takes in nothing more. { part-nothing-was-recorded } Questions are still answered. Make room, then send the same entries again under the same ids.
label-problem-internal = a fault in this program
label-problem-internal-page = This is a fault of the program, not of the request. The log of the service says more; look there for the request's x-request-id. An append may be sent again under the same id: it is recorded once.
label-problem-store-busy = the journal is busy
label-problem-store-busy-page = Another program or client is writing to the journal. { part-nothing-was-recorded } Try again in a moment, with the same id.
label-problem-store-unreachable = the database cannot be reached
label-problem-store-unreachable-page = The service runs, but the database behind it does not answer. The service finds it again by itself. An entry may have been recorded all the same: send it again under the same id. It is recorded once.
label-problem-service-busy = too much is asked at once
label-problem-service-busy-page = The service takes on only so much at a time, and this request found no room for some seconds. { part-nothing-was-recorded } Send it again after the seconds that the header Retry-After names; an entry or a document under the same id.
label-problem-not-ready = not ready to answer
label-problem-not-ready-page = The database does not answer. The log of the service says more.
label-problem-timeout = it took too long
label-problem-timeout-page = No answer was ready within 30 seconds. An append still runs to its end: look the entry up by its id, or send it again under the same id. It is recorded once.

## Command line: what a command did, and why it could not

# Around a message and how to fix it; a second help may follow the first.
failure-error = error: { $message }
failure-warning = warning: { $message }
clock-is-behind = by this machine's clock it is { $today }, but entry { $seq } was recorded on { $recorded_at }
label-clock-is-behind-help = set the clock before you record anything or ask about today; if it was wrong then, name the day
failure-help = help: { $help }
failure-help-and = { $help }; { $more }
label-failure-try-again-unrecorded = nothing was recorded; try again
label-failure-swap-days = swap --from and --to, or correct one of them

# Files and standard output. $why is what the system says, in the labels below where there is one.
label-system-no-such-file = there is no such file or folder
label-system-refuses = the system refuses access to it
label-system-is-a-folder = it is a folder
label-system-no-folder = a part of its path is not a folder
label-system-disk-full = there is no space left on the disk
label-system-not-text = it is not UTF-8 text
file-cannot-read = cannot read `{ $file }`: { $why }
file-cannot-make = cannot create `{ $file }`: { $why }
file-cannot-write = cannot write `{ $file }`: { $why }
file-is-there = `{ $file }` already exists; it was left as it is
file-named-twice = `{ $file }` is named twice, for different things
label-file-name-a-new-one = name a file that does not exist yet
label-file-name-one-for-each = name a separate file for each
label-file-name-a-folder = name a file in an existing folder
label-file-name-a-writable-folder = name a file in an existing folder that can be written to
label-file-look-try-again = check the destination, then try again
label-file-not-whole = what was written so far is incomplete; delete it
output-cannot-write = cannot write to standard output: { $why }
label-output-look = check where it is sent
output-not-json = cannot write this as JSON: { $why }
label-output-leave-json-out = leave --json out
label-output-try-json = try --json
label-output-standard = standard output

# The journal and the rules that are meant.
label-journal-is-empty = the journal is empty
label-journal-take-one-in = import a journal first
label-journal-import-first = begin one: combclear begin NAME; or import one: combclear import FILE
journal-no-entry-under = no entry is recorded under `{ $holding }`
journal-none-kept = `{ $address }` has no journal yet
journal-none-of-holding = `{ $address }` has no journal of `{ $holding }`
journal-of-several = `{ $address }` has the journals of several holdings
journal-keeps = it has: { $holdings }
journal-say-which = say which with --holding: { $holdings }
journal-no-database = there is no database at `{ $place }` yet
label-journal-name-the-database = name the right one with --db; or begin one: combclear begin NAME; or import one: combclear import FILE
label-rules-law-faulty = the built-in law does not load
label-rules-leaflets-faulty = the built-in leaflets do not load
label-program-is-broken = this is a fault in the program; please report it
rules-cannot-read-folder = cannot read the leaflets in `{ $folder }`: { $why }
label-rules-name-a-folder = name a folder that contains folders such as gb, with leaflets in them
rules-faults-in-folder = { $faults ->
    [one] 1 fault
   *[other] { $faults } faults
} in the leaflets of `{ $folder }`
label-rules-mend-folder = fix these files; nothing in the folder is used until then

# What was asked for by a name or a word that is not there, or not together with something else.
asked-did-you-mean-one-of = did you mean { $names }?
# Between two names that may have been meant.
asked-or = { $names } or { $name }
asked-write-one-of = write one of: { $list }
label-asked-write-address = write the number of an address and a port, like 127.0.0.1:8420
label-asked-write-origin = write scheme, host and port as a browser sends them, in lower case and without a path, like https://hives.example.org
asked-apiaries-are = the apiaries are: { $names }
label-asked-list-colonies = list them all: combclear supering
label-asked-name-a-colony = name a colony, or an apiary with --apiary
asked-no-leaflet = there is no leaflet `{ $leaflet }`
label-asked-list-leaflets = list them all: combclear leaflets
asked-no-option = there is no option `{ $leaflet }` here
label-asked-leave-leaflet-out = leave --leaflet out to see them all
asked-no-law = there is no law of `{ $jurisdiction }`
asked-laws-are = the laws built in are: { $names }
label-asked-site-until-alone = `--site-until` is given, but nothing is assumed about the site
label-asked-assume-something = give --power, --access or --ground as well, or leave it out
asked-site-until-too-early = what is assumed would end on { $until }, before the first day, { $from }
label-asked-give-a-later-day = give a later day, or leave it out
label-asked-one-to-standard-output = only one thing can go to standard output
label-asked-name-files = write `-` once at most, and not together with --json; name files for the others
label-asked-no-typesetter = this program was built without its typesetter, so it cannot write PDF
label-asked-print-the-page = use --html and print that page, or build the program with `--features pdf`
label-asked-register-as-json = this program is broken; --json still gives the register
asked-no-shape = the PDF has no shape for { $signs }; they stand in it as that

# Documents: attached, listed, saved. $to is one of the first three; $kind is PDF, JPEG, PNG or HEIC.
document-of-lot = lot `{ $lot }`
document-of-prescription = prescription `{ $prescription }`
label-document-of-nothing = nothing
part-size = { $bytes ->
    [one] 1 byte
   *[other] { $bytes } bytes
}
document-attached = `{ $file }` ({ $kind }, { part-size }) is attached to { $to }: document { $hash }, entry { $entry }
document-caution =
    Caution, this file is as follows: { $cautions }.
    It is kept as it is, and the pack says so. An office may refuse it; a plain scan is safer.
document-not-attached = `{ $file }` was not attached: { $why }
label-document-name-a-file = name a file: a PDF, JPEG, PNG or HEIC
document-attached-before = it is already attached to { $to }, on { $on } by { $by } (entry { $entry }); nothing was added
document-supplied = it is already attached to { $to }, on { $on } by { $by } (entry { $entry }); its content was missing and is now kept
label-document-none = No document is attached.
label-document-attached = attached
label-document-to = to
label-document-content = content
label-document-kept = kept
label-document-missing = missing
label-document-altered = altered
document-attached-on =
    { $on }
    by { $by }
document-corrected =
    { $to }
    corrected by entry { $entry }
document-kind-and-size = { $kind }, { part-size }
documents-in-all = { $documents ->
    [one] 1 document
   *[other] { $documents } documents
}
documents-lacking = { documents-in-all }; { $lacking ->
    [one] 1 is
   *[other] { $lacking } are
} missing or altered, see combclear verify
document-saved = `{ $file }`: { $kind }, { part-size }, attached to { $to }
document-cannot-save = cannot write the document to `{ $file }`: { $why }
label-document-save-again = check the destination, then save it again
document-hash-too-short = `{ $hash }` is too short to find a document by
label-document-give-8-digits = give at least 8 digits of its hash
document-no-such = no document `{ $hash }` is attached
label-document-list = list them: combclear documents
document-several = the hashes of several documents begin with `{ $hash }`
label-document-give-more-digits = give more digits of the one you mean

# pack
pack-administrations = { $administrations ->
    [one] 1 administration
   *[other] { $administrations } administrations
}
pack-administrations-and-earlier = { pack-administrations } and { $earlier } given earlier and still in or with a period running
# $administrations is one of the two before.
pack-made = `{ $file }`: the register of { $holding } from { $from } to { $to }, { $given }, { documents-in-all }
pack-lost = { $lost ->
    [one] 1 document is
   *[other] { $lost } documents are
} missing or altered; the index says what each belonged to

# export. $place is a file, or standard output.
export-in-backticks = `{ $file }`
export-without = { $fault }; the export leaves it out
export-changed = document `{ $hash }` was changed while it was written to { $place }
label-export-verify-first = verify the journal, then export again
export-cannot-write = cannot write the export to { $place }: { $why }
label-export-look-again = check the destination, then export again
label-export-not-whole = what was written so far is an incomplete export; delete it

# import
import-cannot-read = nothing was imported: cannot read `{ $file }`: { $why }
label-import-name-a-file = name a journal file, or - for standard input
import-empty = nothing was imported: `{ $file }` is empty
import-begins-like = a journal file begins like { $header }
import-other-holding = nothing was imported: `{ $file }` is the journal of `{ $holding }`, not of `{ $wanted }`
label-import-name-the-right-file = leave --holding out, or name the right file
import-sealed = nothing was imported: `{ $file }` is sealed, so no entry can be left out
label-import-leave-keep-going-out = leave --keep-going out; an export is imported in full or not at all
import-faults = nothing was imported: { $faults ->
    [one] 1 fault
   *[other] { $faults } faults
} in `{ $file }`
label-import-mend = fix them, or import the rest with --keep-going
label-import-mend-first = fix them, or import the rest with --keep-going; contradictions are looked for once all lines can be read
import-and-more = ... and { $more } more
part-entries = { $entries ->
    [one] 1 entry
   *[other] { $entries } entries
}
import-added = { $added ->
    [one] 1 entry
   *[other] { $added } entries
} added
import-added-some-known = { import-added }, { $known ->
    [one] 1 was
   *[other] { $known } were
} already there
# $what is one of the two before.
import-with-documents = { $what }, with { documents-in-all }
import-done = { $holding }: { $what }; the journal has { part-entries }
import-done-head = { import-done }, head { $head }
import-left-out = { $lines ->
    [one] 1 line was
   *[other] { $lines } lines were
} left out:
label-import-new-id = make a new id for a new entry
label-import-journals-part = the file and the journal diverge here; import an export of this journal, or this file into a new database (--db)
label-import-try-again = try again
label-import-taking-in = importing the journal
label-import-recording = recording
label-import-reading = reading
# How long the rest takes.
import-left = { $time } left
import-none-sealed-here = no entry of the file was sealed in a journal of `{ $holding }`
label-import-holding-changed = the name of the holding was changed, or every entry was; export the journal again
label-import-never-edited = export the journal again; a sealed entry is never edited
import-entries-promised = the header announces { $promised ->
    [one] 1 entry
   *[other] { $promised } entries
}; { $found } are here
import-documents-promised = the header announces { $promised ->
    [one] 1 document
   *[other] { $promised } documents
}; { $found } are here
label-import-cut = the file was cut short or added to; export the journal again
# Both are hashes in backticks, or "none".
import-other-head = /head: the header names { $promised } as the last hash; it is { $found }
label-import-changed = the file was changed; export the journal again
import-document-among-entries = document `{ $hash }` is among the entries, not after them
import-document-of-none = no entry in the file attaches document `{ $hash }`
import-document-twice = document `{ $hash }` is here twice
# A fault with its place, a JSON pointer.
import-at = { $pointer }: { $message }

# verify
verify-holds = The journal of { $holding } is intact: { part-entries }, each as it was recorded.
verify-holds-with-checkpoint = The journal of { $holding } is intact: { part-entries }, each as it was recorded, and it agrees with the checkpoint.
verify-clock-set-back = Entry { $seq } gives an earlier time ({ $recorded_at }) than the entry before it ({ $before }): the clock of the machine was wrong at one of them.
label-verify-keep-checkpoint = Keep these three lines elsewhere as a checkpoint:
verify-documents-bad = { $bad ->
    [one] 1 document is
   *[other] { $bad } documents are
} missing or altered
verify-lacking = The entries of { $holding } are intact: { part-entries }, each as it was recorded. But { $bad ->
    [one] 1 document is
   *[other] { $bad } documents are
} MISSING OR ALTERED:
verify-broken = The journal of { $holding } FAILS VERIFICATION. First fault: { $broken }
verify-missed = The journal of { $holding } DOES NOT AGREE with the checkpoint: { $missed }
verify-archive-fault = the archive `{ $file }` fails verification: { $what }
verify-archive-broken = The archive `{ $file }` FAILS VERIFICATION: { $what }
verify-both = { $first }; { $second }
verify-archive-holds = The archive { $file } is intact: { part-entries } and { documents-in-all }, as recorded in entry { $seq } ({ $id }).
verify-archive-untold = no entry in the journal of { $holding } records it
verify-archive-other-file = entry { $seq } ({ $id }) records these entries in another file
verify-archive-other-entries = its entries are not those that entry { $seq } ({ $id }) records
checkpoint-cannot-read = cannot read the checkpoint `{ $file }`: { $why }
label-checkpoint-give-three-lines = give the three lines that `combclear verify` printed
label-checkpoint-several = it holds several; keep each in a file of its own
checkpoint-other-holding = `{ $file }` is a checkpoint of `{ $of }`, not of `{ $holding }`
label-name-the-right-file = name the right file, or the holding with --holding

# archive
archive-after-today = { $day } is after today, { $today }
label-archive-earlier-day = name today or an earlier day with --through
archive-nothing-moved = nothing was moved: { $why }
label-archive-nothing-moved = nothing was moved
archive-journal-broken = nothing was moved: the journal of { $holding } fails verification
label-archive-see-what-is-wrong = see what is wrong: combclear verify
label-archive-see-what = see what is wrong: combclear verify
archive-not-as-written = nothing was moved: `{ $file }` does not read back as it was written
archive-does-not-read-back = nothing was moved: `{ $file }` does not read back: { $what }
label-archive-keep-the-file = whether it was moved could not be read: keep the file, and check with `combclear verify --archive`
label-archive-somebody-wrote = nothing was moved: somebody recorded something in the meantime
label-archive-when-nobody-writes = try again when nobody else is writing
archive-document-missing = nothing was moved: document { $hash } is missing
archive-document-altered = nothing was moved: document { $hash } is altered
label-archive-delete-file = the file was not recorded as an archive; delete it
# $day has its name.
archive-head = Records that need not be kept after { $day }. Holding { $holding }
label-archive-documents = documents
label-archive-last-day = last day to keep
archive-held-back = Held back: { $lots }: { $why }.
archive-nothing = No records may be archived by { $day }; no file was made.
archive-would-move = { part-entries } and { documents-in-all } would be moved into { $file }: places { $places }.
label-archive-not-moved-yet = NOTHING HAS BEEN MOVED YET. This cannot be undone: afterwards only the file holds what these entries say, and the journal only their places, ids, days, kinds and hashes. Choose a place that lasts as long as you may be asked for the records, keep a copy of the file elsewhere, and make an export first. Then use --move-for-good.
archive-moved = { part-entries } and { documents-in-all } were moved into { $file }: places { $places }. Entry { $entry } records this.
label-archive-keep-a-copy = Keep a copy of the file elsewhere; check it with `combclear verify --archive`. Its SHA-256 hash:
label-archive-name-the-file = name the file of an archive
label-archive-name-one-of-this-journal = name an archive file of this journal; combclear verify --archive FILE says the same
archive-of-other-holding = `{ $file }` is an archive of `{ $of }`, not of `{ $holding }`
archive-line = line { $line }: { $what }
label-archive-cut-line = it ends in the middle of a line
label-archive-not-text = it is not text
archive-entry-changed = entry { $seq } does not match its hash: it was changed
archive-entry-out-of-order = entry { $seq } is out of order
archive-document-of-none = no entry in the file attaches document { $hash }
archive-promised = { $entries } entries and { $documents } documents are announced, { $entries-here } and { $documents-here } are here

# serve
serve-answers = Combclear answers at http://{ $address } (documentation at http://{ $address }/docs); stop it with Ctrl-C
serve-no-threads = cannot begin to work: { $why }
label-failure-look-at-the-machine = end other programs, or let this one have more threads and memory
serve-no-signals = cannot listen for signals: { $why }
label-serve-start-again = start it again
serve-in-use = `{ $address }` is in use by another program
serve-cannot-listen = cannot listen at `{ $address }`: { $why }
label-serve-other-port = choose another port, such as --listen 127.0.0.1:8421, or end the program that uses it
serve-answers-encrypted = Combclear answers at https://{ $address }; it asks for a key; stop it with Ctrl-C
serve-answers-keyed = Combclear answers at http://{ $address }; it asks for a key; stop it with Ctrl-C
serve-open-to-others = `{ $address }` can be reached from other machines, and what is sent there can be read on the way
serve-this-machine-only = give it a certificate (--certificate and --certificate-key), put it behind a proxy that encrypts (--behind-proxy), or listen at `127.0.0.1:{ $port }`, which only this machine can reach
label-serve-no-keys = others can reach the service, and there is no key to let anybody in
label-serve-no-keys-help = make one first: combclear key add keeper --for "A. Keeper"
label-serve-no-name = others can reach the service, and it does not know by which name
label-serve-no-name-help = say it with --name, such as --name hives.example.org
serve-bad-certificate = the certificate or its key cannot be used: { $why }
label-serve-bad-certificate-help = both are PEM files: the certificate followed by those that vouch for it, and its private key

# key
key-made = Key { $id } { $whose } was made. It is shown this once and kept nowhere; send it as `Authorization: Bearer KEY`:
key-ended = Key { $id } { $whose } holds no longer.
key-ended-before = Key { $id } { $whose } was ended before.
key-whose = for { $holder }, { $role } of { $holding },
key-whose-operator = for { $holder }, { $role },
key-over-already = a key until { $until } would never hold: today is { $today }
label-key-until-help = name a day that is still to come, or leave --until out
key-no-such = there is no key `{ $id }`
label-key-no-such-help = see them with: combclear key list
key-no-chance = no key can be made: { $why }
label-key-none = There are no keys. While only this machine can reach the service, none are needed.
label-key-head-id = Key
label-key-head-role = Role
label-key-head-holding = Holding
label-key-head-holder = Held by
label-key-head-holds = Holds
label-key-holds = yes
key-holds-until = until { $until }
label-key-is-ended = no: ended
key-ran-out = no: ran out on { $until }

# backup, restore, doctor
part-keys = { $keys ->
    [0] no keys
    [one] 1 key
   *[other] { $keys } keys
}
care-backed-up = Backed up into { $file }, { $bytes } bytes, with { part-keys }; the copy passes verification:
care-restored = Restored from { $file } into { $db }, with { part-keys }; it passes verification:
care-of-holding = { $holding }: { part-entries }, { documents-in-all }, head { $head }
care-not-backed-up = no backup was made: { $why }
care-not-restored = the backup was not restored: { $why }
care-lost = the copy lacks the journal of { $holding }
care-not-empty = `{ $db }` is not empty
label-care-other-keys = the keys in the copy are not those in the database
label-care-try-again = try again; if it stays like this, look for what is wrong: combclear doctor
label-care-name-a-backup = name a file that `combclear backup` made
label-care-not-empty-help = it was left as it is; a backup is restored into a database without holdings and keys, such as a new file
label-care-in-part = a part of it is in the database now, and nothing is ever removed from a journal: make another database before you try again
care-opens = `{ $db }` opens, and its tables are in order
care-journal-holds = the journal of { $holding } is intact: { part-entries }, { documents-in-all }, head { $head }
care-open-to-others = others on this machine have access to `{ $file }`, which holds names and places
care-open-to-others-help = chmod 600 { $file }
care-setting-off = the server is set to `{ $setting } = off`: if it or its machine stops, recorded entries can be lost
care-setting-off-help = set `{ $setting } = on` on the server, and load its settings again
care-no-right = the user of the address has no right to { $right } in the table `{ $table }`
care-no-right-help = on the server: grant { $right } on { $table } to that user
care-key-ran-out = key { $id } of { $holder } ran out on { $until }
care-key-ran-out-help = make a new one: combclear key add; and end this one: combclear key end { $id }
care-key-ends-soon = key { $id } of { $holder } ends on { $until }
label-care-key-ends-soon-help = make a new one in time: combclear key add
label-care-well = Well
label-care-note = Note
label-care-wrong = WRONG
label-care-all-well = All is well.
care-wrong-in-all = { $wrong ->
    [one] 1 thing is wrong.
   *[other] { $wrong } things are wrong.
}

## Forms: each kind of entry, and the fields to fill in

# form-KIND is what an entry of the kind records. field-NAME is the label of a field in any form, field-KIND-NAME in one form.
# A label may be followed by a -hint, and by an -example of what is filled in.

# The visit sheet. { $medicine } is the keeper's name for it.
visit-inside = { $medicine }, placed { $placed }

# The picture of a colony's season. { $name } is the name on a pack, or the keeper's name for a medicine.
timeline-title = { $colony }: the season around { $on }
timeline-title-apiary = { $apiary }: the season around { $on }
timeline-shown = { $from } to { $to }
timeline-run = { $answer } from { $from } to { $to }
timeline-answers = may be supered: { $runs }
timeline-course = { $name }, placed { $placed }
timeline-dose = { $name }, given { $placed }
timeline-out = { $course }, out { $out }
timeline-inside = { $course }, in
timeline-may-come-out = { $course }; may come out from { $day }
timeline-must-be-out = { $course }; must be out by { $day }
timeline-supers = harvest supers on from { $from }
timeline-supers-off = harvest supers on from { $from } to { $off }
timeline-flow = nectar flow from { $from } to { $to }
label-timeline-answers = may be supered
label-timeline-supers = harvest supers on
label-timeline-flow = nectar flow, as expected or seen
label-timeline-key = slanted lines: no; dots: unknown; white: yes. ▷ may come out, ◁ must be out, ○ dose
label-picture-of-what = there is nothing to draw
label-picture-of-what-help = name one colony, or an apiary with colonies: --apiary NAME

# A choice of a form, by the word under which it is filled in.
choice-absent = absent
choice-allowed = allowed
choice-battery = battery
choice-bees_only = for the bees alone
choice-both = in both colonies
choice-dry = dry
choice-expected = expected
choice-flooded = flooded
choice-forbidden = not allowed
choice-forecast = forecast
choice-g = grams
choice-generator = generator
choice-harvest = for harvest
choice-lowest = at its lowest
choice-mains = mains
choice-measured = measured
choice-ml = millilitres
choice-natural_fall = natural fall
choice-needed = must come out
choice-none = none
choice-none_by_label = none, by the label
choice-not_known = not known
choice-not_needed = need not come out
choice-nothing_stays = nothing stays inside
choice-off = off
choice-on = on
choice-on_foot = on foot
choice-on_no_harvest = on, without harvest
choice-opened_brood = opened brood
choice-piece = pieces
choice-present = present
choice-seen = seen
choice-stayed = stayed
choice-strip = strips
choice-sugar_roll = sugar roll
choice-tablet = tablets
choice-taken_out = taken out
choice-tray = trays
choice-vehicle = by vehicle
choice-wafer = wafers
choice-wash = wash
choice-went = went with the new colony
choice-went_along = went along
choice-wet = wet

# The page at the hive. A place in square brackets is filled in by the page.
page-date = { "[" }year]-[month]-[day]
page-holdings = Holdings
page-no_holding = There is none yet.
page-begin = Begin a holding
page-apiaries = Apiaries
page-no_apiary = There is none yet. Write one down below.
page-apiary_counts = may be supered: [yes] yes, [no] no, [unknown] not known
page-write_down = Write down
page-key = Key
page-key_hint = The key that you were given
page-sign_in = Sign in
page-not_reached = The service was not reached
page-not_reached_help = Look whether you have signal, and try again
page-not_shown = This cannot be shown
page-again = Try again
page-as_of = { "[" }day]. The answers hold through [through], unless something is written down.
page-due_here = Due here
page-nothing_due = Nothing is due today.
page-may_be_supered = May supers go on?
page-nobody_here = No colony stands here.
page-all_of_them = Tick all, for one entry
page-free_from = supers may go on from [day]
page-free_if_out = supers may go on from [day], if all is out on [out]
page-done = Done
page-overdue = Overdue
page-no_hive_ticked = No hive is ticked: you name them in the form.
page-hives_ticked = For [hives]
page-back = Back
page-something_else = Something else
page-to_do_first = To do first
page-missing = What is missing
page-because = Because
page-also_on_record = Also on record
page-season_alt = The season of [colony] as a picture. The answer, its grounds and the medicine on record stand beside it in words.
page-kept = No signal. These answers were fetched at [at]; whatever was written down since is missing.
page-kept_here = Not from the service, but worked out on this phone: the record as it was at [at], with what you wrote down here. What others wrote down since is missing.
page-in_doubt = Something was written down on this phone that is not recorded. Settle that first
page-waits = Written down on this phone; it is sent when there is signal
page-waiting = Not sent yet
page-waiting_hint = Kept safe on this phone, and counted in its answers. It is sent by itself when there is signal, and recorded once. What is refused stays here until you settle it.
page-nothing_waits = Nothing waits: all that was written down here is recorded.
page-some_wait = Not sent yet: [number]
page-some_refused = Something was refused and is not recorded: look at it
page-send_now = Send now
page-send_again = Send again
page-refused = Refused
page-throw_away = Throw away
page-throw_away_sure = Throw away for good
page-clock_behind = The clock of this phone is about [hours] h behind that of the service. The page goes by the service.
page-clock_ahead = The clock of this phone is about [hours] h ahead of that of the service. The page goes by the service.
page-older_page = The service has a newer page than this one.
page-load_again = Load it
page-which_lot = The leaflet of which lot?
page-no_lot = No lot is on record. Write down how one was bought first.
page-leaflet_of = The leaflet of lot [lot]
page-no_leaflet_built_in = No leaflet is built in for it: write down what the pack says.
page-leaflet_same = The same
page-leaflet_other = It differs
page-leaflet_says = It says
page-leaflet_silent = Not in the leaflet
page-read_it = Read [lot]
page-desk = At the desk
page-board = Every colony
page-stock = Stock
page-register = Register
page-proofs = Proofs
page-journal = Journal
page-sign_in_anew = Sign in with a key
page-options = What else can be used here
page-colony = Colony
page-apiary = Apiary
page-to_dispose = To be disposed of
page-lot = Lot
page-medicine = Medicine
page-batch = Batch
page-expiry = Expiry
page-sum = Count
page-state = State
page-as_recorded = as recorded
page-start = First day
page-assumed_hint = What is chosen here is assumed, and not recorded.
page-ask = Ask
page-option_usable = usable
page-option_ruled_out = ruled out
page-option_unknown = not known
page-as_pages = Pages for reading and printing
page-as_pdf = PDF
page-as_table = Table (CSV)
page-as_pack = Everything in one file for an inspector (ZIP)
page-last_day = Last day
page-complete = Is it complete?
page-what_is_missing = What is missing?
page-open = Open
page-attach = Attach a proof
page-proof_file = File or photograph
page-proof_needs = Name the lot, the file and who attaches it
page-attached = Attached to lot [lot].
page-no_proof = None is attached yet.
page-chain_sound = All [entries] entries are as they were recorded. The last hash: [head]
page-chain_lacking = All entries are as they were recorded, but a document is missing or altered.
page-chain_broken = From entry [seq] on the journal is not as it was recorded.
page-earlier = Earlier entries
page-verify = Verify
page-order = The order in which you walk
page-order_hint = Tap the hives in the order in which you walk. It is kept on this phone; hives that you do not tap come last.
page-keep_order = Keep this order
page-no_room = There is no room left on this phone to keep it. It may have been recorded: try again when there is signal; what was recorded is not recorded twice.
page-write_anew = Write it anew
page-supers_from = Supers may go on from
page-other_key = Written down with another key, or before signing in. Send it only if it is yours
page-send_with_this_key = Send with this key
page-cannot_be_read = What was written down on this phone cannot be read: no answer counts. Close the page and open it again.
page-history = What was written down
page-was_struck_out = Struck out by entry [number]: [reason]
page-was_corrected = Corrected by entry [number]: [reason]
page-what_it_says = write what it says
page-kept_too_long = This is not known without the service: the last answer that was fetched is of other days
page-what_is_in = Medicine on record
page-nothing_in = None.
page-entries = entries [numbers]
page-course_out = out on [day]
page-course_placed = given or placed [day]
page-not_said = not said
page-found_if_left_out = filled in from the record if empty
page-may_be_left_out = optional
page-for_example = for example
page-day = Day
page-day_hint = the day on which it happened
page-who = Written down by
page-who_hint = your name
page-more = More
page-look = Check it
page-is_it_right = Is it right? Nothing is recorded yet.
page-record = Record
page-recorded = Recorded
page-undo = Strike it out
page-undo_hint = Nothing is deleted. The entry stays on record, and so does your reason.
page-reason = Reason
page-struck_out = Struck out.
page-nothing_recorded = It is not known whether anything was recorded. Try again: what was recorded is not recorded twice.
page-careful = The leaflet on the pack says how to give it and what to wear. Acid vapour and drops burn eyes, skin and lungs: mask, goggles and gloves. No electric current on wet ground. If the leaflet, your prescriber or the law say otherwise than this page, they are right.
page-holding_name = Name of the holding
page-holding_hint = a short name for all your apiaries together
page-yes = yes
page-no = no
page-unknown = unknown

form-holding_details = Keeper and country of the holding
form-apiary_details = A new apiary
form-site_conditions = Power, access and ground at an apiary
form-nectar_flow = A nectar flow, expected or seen
form-temperature = Temperatures by day, forecast or measured
form-temperature_normals = Usual temperatures by month
form-colony_established = A colony comes into the record
form-colony_moved = A colony is moved to another apiary
form-colony_split = A new colony is made from part of another
form-colony_united = A colony is united into another
form-colony_ended = A colony died, was sold or was given away
form-supers_on = Supers put on
form-supers_off = Supers taken off
form-inspection = A hive inspected
form-mite_count = Mites counted
form-medicine_described = A medicine, as its pack describes it
form-lot_acquired = A lot bought or received
form-vet_lot = A lot that a vet gave from the vet's own stock
form-lot_opened = The first pack of a lot opened
form-document_attached = A document attached
form-leaflet_reading = What the leaflet in the pack says
form-prescription = A prescription
form-administration = Strips placed or a dose given
form-removal = Strips taken out
form-disposal = Medicine disposed of
form-harvest = Honey harvested
form-strike_out = An entry struck out: it did not happen
form-archived = Entries moved into an archive

# The tab of a spreadsheet that takes entries of a kind: at most 31 letters, and none of : \ / ? * [ ].
tab-holding_details = Keeper
tab-apiary_details = Apiaries
tab-site_conditions = Sites
tab-nectar_flow = Nectar flows
tab-temperature = Temperatures
tab-temperature_normals = Usual temperatures
tab-colony_established = Colonies
tab-colony_moved = Moved
tab-colony_split = Split
tab-colony_united = United
tab-colony_ended = Ended
tab-supers_on = Supers on
tab-supers_off = Supers off
tab-inspection = Inspections
tab-mite_count = Mite counts
tab-medicine_described = Medicines
tab-lot_acquired = Lots
tab-vet_lot = Lots of a vet
tab-lot_opened = Opened
tab-leaflet_reading = Leaflets
tab-prescription = Prescriptions
tab-administration = Given
tab-removal = Taken out
tab-disposal = Disposed of
tab-harvest = Harvests

field-on = Day
field-on-hint = the day on which it happened; today if left out
field-on-example = 2026-08-24
field-at = Time
field-at-hint = the time of day, if you noted it, such as 09:30
field-at-example = 09:30
field-copied_from = Copied from
field-copied_from-hint = the paper register it is copied from, if it is
field-copied_from-example = red notebook 2025
field-written_on = Written there
field-written_on-hint = the day on which it was written in that register
field-written_on-example = 2026-08-24
field-recorded_by = Recorded by
field-recorded_by-hint = who writes this down; whoever did last if left out
field-recorded_by-example = A. Keeper

field-keeper = Keeper
field-keeper-hint = the person or business that keeps the bees
field-keeper-example = A. Keeper (invented)
field-holding_details-address = Address
field-holding_details-address-hint = postal address of the keeper
field-holding_details-address-example = 1 Nowhere Lane (invented)
field-jurisdiction = Country
field-jurisdiction-hint = two letters, such as gb, de or us: the law and the leaflets that apply
field-jurisdiction-example = gb
field-registration = Registration number
field-registration-hint = of the keeper or the holding, where the law gives one
field-registration-example = 12-345

field-apiary = Apiary
field-apiary-hint = its name
field-apiary-example = Saltmarsh
field-place = Place
field-place-hint = where it is, in words or as a grid reference
field-place-example = behind the sea wall
field-power = Power
field-power-hint = electric power at the apiary
field-power-example = none
field-access = Access
field-access-hint = how the apiary can be reached
field-access-example = on_foot
field-ground = Ground
field-ground-hint = the ground at the stands
field-ground-example = wet
field-until = Until
field-until-hint = the last day of this, if known
field-until-example = 2026-08-31
field-forage = Forage
field-forage-hint = what is in flower, such as lime, heather or ivy
field-forage-example = ivy
field-nectar_flow-stage = Expected or seen
field-nectar_flow-stage-hint = whether you expect the flow or have seen it
field-nectar_flow-stage-example = expected
field-nectar_flow-from = From
field-nectar_flow-from-hint = first day of the flow; of one expected, in a usual year
field-nectar_flow-from-example = 2026-09-10
field-from_early = Early year
field-from_early-hint = first day of an expected flow in an early year
field-from_early-example = 2026-09-01
field-from_late = Late year
field-from_late-hint = first day of an expected flow in a late year
field-from_late-example = 2026-09-20
field-nectar_flow-to = To
field-nectar_flow-to-hint = last day of the flow, if known
field-nectar_flow-to-example = 2026-10-20
field-temperature-stage = Forecast or measured
field-temperature-stage-hint = whether the temperatures are forecast or were measured
field-temperature-stage-example = forecast
field-temperature-days = Days
field-temperature-days-hint = each day with its lowest and highest temperature in °C; a semicolon between days
field-temperature-days-example = 2026-08-24 11 19; 2026-08-25 12 21
field-temperature-origin = Source
field-temperature-origin-hint = where the temperatures come from
field-temperature-origin-example = my own thermometer
field-months = Months
field-months-hint = each month by number with its usual lowest and highest temperature in °C; a semicolon between months
field-months-example = 8 12 20; 9 10 17
field-temperature_normals-origin = Source
field-temperature_normals-origin-hint = where the temperatures come from
field-temperature_normals-origin-example = my own notes of ten years

field-colony = Colony
field-colony-hint = its name
field-colony-example = S7
field-colony_established-colony = Colony
field-colony_established-colony-hint = its name, never used before; several as S1-S7
field-colony_established-colony-example = S7
field-colonies = Colonies
field-colonies-hint = their names; several as S1-S7
field-colonies-example = S1, S2
field-hive_mark = Hive mark
field-hive_mark-hint = the mark on the hive
field-hive_mark-example = blue 7
field-colony_established-origin = Origin
field-colony_established-origin-hint = where the colony came from
field-colony_established-origin-example = swarm from the church
field-medicines = Medicine inside
field-medicines-hint = none if no strips are inside and no period runs; otherwise not_known
field-medicines-example = none
field-colony_moved-to = To
field-colony_moved-to-hint = the apiary where it stands from this day on
field-colony_moved-to-example = Hill
field-colony_split-into = New colony
field-colony_split-into-hint = the name of the new colony, never used before
field-colony_split-into-example = S8
field-colony_split-to = To
field-colony_split-to-hint = the apiary of the new colony; that of the old one if left out
field-colony_split-to-example = Hill
field-colony_split-strips = Strips
field-colony_split-strips-hint = where the strips inside went: they stayed, went with the new colony, or both have some
field-colony_split-strips-example = stayed
field-colony_united-colony = Colony that ends
field-colony_united-colony-hint = the colony that is united into the other
field-colony_united-colony-example = S8
field-colony_united-into = Into
field-colony_united-into-hint = the colony that receives it
field-colony_united-into-example = S7
field-colony_united-strips = Strips
field-colony_united-strips-hint = what became of the strips inside: they went along or were taken out
field-colony_united-strips-example = taken_out
field-cause = Cause
field-cause-hint = died, sold, given away, and why
field-cause-example = died in winter
field-supers = Supers
field-supers-hint = how many were put on each colony
field-supers-example = 1
field-purpose = Purpose
field-purpose-hint = harvest for honey you take; bees_only for stores that stay with the bees
field-purpose-example = harvest
field-left_on = Left on
field-left_on-hint = how many supers are still on each colony
field-left_on-example = 0
field-brood = Brood
field-brood-hint = the brood you saw
field-brood-example = present
field-seams = Seams of bees
field-seams-hint = how many
field-seams-example = 8
field-inspection-bees = Bees
field-inspection-bees-hint = your estimate of their number
field-inspection-bees-example = 20000
field-brood_boxes = Brood boxes
field-brood_boxes-hint = how many
field-brood_boxes-example = 1
field-hive_litres = Litres
field-hive_litres-hint = volume of the brood boxes
field-hive_litres-example = 42
field-feeder = Feeder
field-feeder-hint = whether a feeder is on
field-feeder-example = no
field-note = Note
field-note-hint = anything else
field-note-example = calm, new queen
field-mite_count-method = Method
field-mite_count-method-hint = how the mites were counted; counts by different methods are never compared
field-mite_count-method-example = natural_fall
field-mites = Mites
field-mites-hint = how many; in opened brood, how many infested cells
field-mites-example = 12
field-mite_count-days = Days
field-mite_count-days-hint = on a board: the days over which they fell
field-mite_count-days-example = 3
field-mite_count-bees = Bees
field-mite_count-bees-hint = in a sample: how many bees
field-mite_count-bees-example = 300
field-cells = Cells
field-cells-hint = in brood: how many cells were opened
field-cells-example = 100

field-medicine = Medicine
field-medicine-hint = your short name for it
field-medicine-example = amitraz strips
field-pack_name = Name on the pack
field-pack_name-hint = the name as the pack prints it
field-pack_name-example = Amitraz strips 500 mg (invented)
field-authorisation = Authorisation number
field-authorisation-hint = as the pack prints it
field-authorisation-example = 00000/0001
field-unit = Unit
field-unit-hint = what it is counted in
field-unit-example = strip
field-leaflet = Leaflet
field-leaflet-hint = the built-in leaflet with its directions; see the command leaflets
field-leaflet-example = amitraz-strip-500mg-a
field-lot = Lot
field-lot-hint = your short name for the lot; the only one in stock if left out
field-lot-example = L1
field-lot_acquired-lot = Lot
field-lot_acquired-lot-hint = your short name for the lot, never used before
field-lot_acquired-lot-example = L1
field-vet_lot-lot = Lot
field-vet_lot-lot-hint = your short name for the lot, never used before
field-vet_lot-lot-example = V1
field-batch = Batch
field-batch-hint = the batch number as the pack prints it
field-batch-example = B 1234
field-expiry = Expiry
field-expiry-hint = as the pack prints it; a month such as 2028-05 stands for its last day
field-expiry-example = 2028-05
field-quantity = Amount
field-quantity-hint = in the unit of the medicine
field-quantity-example = 20
field-supplier = Supplier
field-supplier-hint = who supplied it
field-supplier-example = Market Vets (invented)
field-supplier_address = Address of the supplier
field-supplier_address-hint = postal address
field-supplier_address-example = 2 Nowhere Lane (invented)
field-proof = Proof of purchase
field-proof-hint = such as an invoice number, and where it is kept
field-proof-example = invoice 17
field-label_revision = Label revision
field-label_revision-hint = the revision or date of the label, if the pack prints one
field-label_revision-example = 2024-03
field-prescription = Prescription
field-prescription-hint = its number
field-prescription-example = 2026-001
field-revision = Revision of the leaflet
field-revision-hint = the revision or date that the leaflet prints
field-revision-example = 03/2024
field-vet = Vet
field-vet-hint = name of the vet
field-vet-example = V. Vet (invented)
field-contact = Contact
field-contact-hint = how to reach the vet
field-contact-example = 3 Nowhere Lane (invented)

field-each = Each
field-each-hint = amount for each colony, in the unit of the medicine
field-each-example = 2
field-administration-method = Method
field-administration-method-hint = the way it was given, if the leaflet names several
field-administration-method-example = trickle
field-continues = Continues
field-continues-hint = the number of the entry with the first dose, if this is a further dose; "yes" for the course of this medicine that is in
field-continues-example = yes
field-withdrawal_days = Withdrawal period
field-withdrawal_days-hint = for honey, in days, as the pack says; 0 if it says none is needed
field-withdrawal_days-example = 0
field-given_by = Given by
field-given_by-hint = who gave it
field-given_by-example = A. Keeper
field-against = Against
field-against-hint = the disease or reason
field-against-example = varroa
field-certificate = Certificate
field-certificate-hint = licence or certificate of the person who gave it, where the law asks for one
field-certificate-example = C 77
field-count_corrected = Count corrected
field-count_corrected-hint = yes if you counted the stock and more is there than the record says
field-count_corrected-example = no
field-administration-prescription = Prescription
field-administration-prescription-hint = the number of the prescription under which it was given
field-administration-prescription-example = 2026-001
field-administration-vet = Vet
field-administration-vet-hint = name of the vet, if a vet gave it
field-administration-vet-example = V. Vet (invented)
field-removal-administration = Strips
field-removal-administration-hint = the number of the entry that placed them; the strips that are in there if left out
field-removal-administration-example = 12
field-left_inside = Left inside
field-left_inside-hint = pieces still inside each colony; 0 when all are out
field-left_inside-example = 0
field-removal-how_and_where = Disposed of
field-removal-how_and_where-hint = how and where the used strips were disposed of
field-removal-how_and_where-example = council hazardous waste
field-disposal-how_and_where = How and where
field-disposal-how_and_where-hint = how and where it was disposed of
field-disposal-how_and_where-example = returned to the pharmacy
field-harvest_lot = Honey lot
field-harvest_lot-hint = your name for the lot of honey, never used before
field-harvest_lot-example = 2026-3
field-kilograms = Kilograms
field-kilograms-hint = how much honey
field-kilograms-example = 48.5

field-supers_during = Supers while it is in
field-supers_during-hint = whether honey supers may be on: off, on, or on_no_harvest if that honey is not taken
field-supers_during-example = off
field-flow_during = During a nectar flow
field-flow_during-hint = whether it may be used during a nectar flow
field-flow_during-example = forbidden
field-withdrawal = No withdrawal period
field-withdrawal-hint = none_by_label if the label has no withdrawal period at all
field-withdrawal-example = none_by_label
field-flow_before_days = Days before a flow
field-flow_before_days-hint = days before a nectar flow on which it must not be used; 0 only if it does not bar use before a flow; leave it out if it bars use without a number of days
field-flow_before_days-example = 14
field-wait_after_removal_days = Wait before supers
field-wait_after_removal_days-hint = days between taking it out and putting supers on
field-wait_after_removal_days-example = 14
field-removal = Removal
field-removal-hint = whether it must be taken out: needed, not_needed, or nothing_stays
field-removal-example = needed
field-stay_min_days = Stays at least
field-stay_min_days-hint = days it must stay in
field-stay_min_days-example = 42
field-stay_min_days_with_brood = With brood at least
field-stay_min_days_with_brood-hint = days it must stay in while there is brood, if that differs
field-stay_min_days_with_brood-example = 56
field-stay_max_days = Stays at most
field-stay_max_days-hint = days it may stay in
field-stay_max_days-example = 70
field-doses = Doses
field-doses-hint = how many doses make a course
field-doses-example = 1

## Recording: what is wrong with a form as it was filled in, and an entry in one line

# { $field } is the label of a field, { $key } its name in a command or a sheet, { $hint } and { $example } as above.
recording-missing = { $field } must be given
recording-missing-help = { $hint }; for example { $example }
recording-no-such-field = there is no field `{ $key }` here
recording-no-such-field-help = the fields are { $keys }
recording-misread = { $field }: { $why }
recording-not-whole = `{ $text }` is not a whole number
recording-not-whole-to = `{ $text }` is not a whole number from 0 to { $most }
recording-not-a-number = `{ $text }` is not a number
recording-neither-yes-nor-no = `{ $text }` is neither yes nor no
recording-misread-help = { $hint }; for example { $example }
recording-one-only = { $field } takes one value, and { $given } were given
label-recording-one-only-help = record an entry for each
recording-range-backwards = the range `{ $text }` runs backwards
label-recording-range-backwards-help = begin with the lower number, as in S1-S7
recording-range-too-long = the range `{ $text }` has more than { $most } names
label-recording-range-too-long-help = give a shorter range
recording-range-end = the range `{ $text }` ends at `{ $colony }`, and there is no such colony on record
recording-did-you-mean = did you mean `{ $near }`?
label-recording-range-end-help = name the first and the last colony of the range as they are on record
recording-nobody-in-range = no colony of the range `{ $text }` is alive on that day
label-recording-nobody-in-range-help = look at the board for the colonies that are; if they were there already, correct the day in their first entry: combclear record correction NUMBER --on DAY
recording-nobody-at = no colony is at `{ $apiary }` on that day
label-recording-nobody-with-something-in = no colony has anything in on that day
label-recording-nobody-alive = no colony is on record on that day
label-recording-nobody-there-help = name the colonies, or another day
label-recording-nobody-yet = who records this is not known yet
label-recording-nobody-yet-help = name the person once; later entries take the person named last
label-recording-no-lot = no lot has anything left on that day
label-recording-no-lot-help = record the lot first, as it was bought
recording-several-lots = several lots have something left: { $lots }
label-recording-several-lots-help = name the one you took
recording-no-entry = there is no entry `{ $text }` in the journal; the last is { $last }
label-recording-no-entry-help = give its number as the register prints it
recording-nothing-inside = nothing is recorded as inside { $colonies }
label-recording-nothing-inside-help = leave out the colonies without strips, or record first what was placed
recording-several-inside = more than one course is in { $colony }: { $courses }
label-recording-several-inside-help = give the number of the entry that placed the strips you mean
recording-entry = entry { $number }
recording-course = entry { $number } ({ $medicine } of { $placed })

recording-same-dose = entry { $entry } records a dose of the same lot for { $colonies } on the same day
recording-supers-barred = { $answer ->
    [no] by the record no supers may go on { $colonies } that day
   *[unknown] it is not known whether supers may go on { $colonies } that day
}: honey from supers that go on too early is not for human consumption
recording-dose-to-come = a further dose for { $colonies } is still to come, and supers must be off for it
recording-honey-barred = { $answer ->
    [no] by the record no honey may be taken from { $colonies } that day
   *[unknown] it is not known whether honey may be taken from { $colonies } that day
}: honey from supers that were on with the medicine is not for human consumption
recording-given-under-supers = harvest supers are on { $colonies } that day, and no document on record allows this medicine under them: take them off first; their honey is not for human consumption
recording-expired = lot { $lot } expired on { $expiry }: a medicine must not be used after that
recording-no-leaflet = this program has no leaflet `{ $leaflet }` here: without one its answers stay unknown
recording-no-leaflet-but-near = this program has no leaflet `{ $leaflet }` here: did you mean `{ $near }`?
label-recording-still-to-come = that day is still to come: write down what was done once it is done
recording-strips-not-said = { $from } has medicine inside, and it is not said where that went: whether { $from } and { $into } may be supered will not be known; say it with --strips
recording-left-out-not-on-record = { $colony } is left out: it is not on record
recording-left-out-not-yet = { $colony } is left out: it came into the record on { $begun }
recording-left-out-ended = { $colony } is left out: it ended on { $ended }

# An entry in one line; { $what } are its fields, each as "label value".
recording-in-one-line = { $title }, { $day }: { $what }
recording-title-only = { $title }, { $day }
recording-value = { $label } { $value }
label-recording-yes = yes
label-recording-no = no

## The command record

record-field-help = { $needed ->
    [yes] { $hint }; for example { $example } (needed)
   *[no] { $hint }; for example { $example }
}
record-field-choices = { $needed ->
    [yes] { $hint }; one of { $choices } (needed)
   *[no] { $hint }; one of { $choices }
}
label-record-heading-fields = What to write down
label-record-heading-colonies = Colonies, otherwise than by name
record-question = { $label } ({ $hint }):
record-question-choices = { $label } ({ $hint }; { $choices }):
record-faults = nothing was recorded; { $count ->
    [one] 1 thing to fix
   *[other] { $count } things to fix
}
record-fault = { "  " }{ $message }
record-fault-at = { "  " }{ $option }: { $message }
record-fault-help = { $message }
    { "    " }help: { $help }
record-was = entry { $number } was: { $entry }
record-is-now = now: { $entry }
record-struck-out = entry { $number } did not happen: { $entry }
record-recorded = { $count ->
    [one] recorded as entry { $first }
   *[other] recorded as entries { $first } to { $last }
}
record-not-a-day = { $why }
record-cannot-ask = cannot ask on the terminal: { $why }
label-record-nothing-recorded = nothing was recorded
label-record-may-it = Record this? (yes or no)
label-record-nobody-to-ask = nothing was recorded: nobody can be asked, since this is not a terminal
label-record-nobody-to-ask-help = add --yes to record without asking
label-record-terminal-closed = nothing was recorded: the terminal was closed before all was answered
label-record-terminal-closed-help = start again, or give every field as an option
label-record-no-reason = a correction needs its reason
label-record-no-reason-help = add --reason, such as --reason "typed the wrong day"
label-asked-day-tomorrow = tomorrow
label-record-day-today = today
label-record-day-yesterday = yesterday
label-record-day-help = write today, yesterday, a weekday such as monday, or a date such as 2026-08-24
label-record-time-help = write the time of day as 09:30
label-record-by-help = give the name of a person
label-record-option-on = The day on which it happened: today, yesterday, a weekday or a date; today if left out
label-record-option-on-value = DAY
label-record-option-at = The time of day, if you noted it
label-record-option-at-value = TIME
label-record-option-by = Who records it; the person named last if left out
label-record-option-by-value = NAME
label-record-option-copied-from = The paper register it is copied from, if it is; it is then not called late. To withdraw it, strike the entry out
label-record-option-copied-from-value = WHAT
label-record-option-written-on = The day on which it was written in that register
label-record-option-yes = Record without asking
label-record-option-again = With --yes: record it although a dose of the same lot is on record for that day
label-record-twice-help = nothing was recorded; if it was given twice, say --again, or --at with the time of day
label-record-option-apiary = All colonies at this apiary
label-record-option-apiary-value = NAME
label-record-option-inside = All colonies that have medicine in the hive
label-record-option-all = All colonies
label-record-option-number = The number of the entry, as the register prints it
label-record-option-set = What changes, such as withdrawal-days=7; nothing after the equals sign removes the value
label-record-option-set-value = FIELD=VALUE
label-record-option-reason = Why
label-record-option-reason-value = TEXT
label-record-set-form = write FIELD=VALUE, such as withdrawal-days=7
label-record-correction = Correct an entry: only what changes is given
label-record-strike-out = Strike out an entry that did not happen

## Beginning a holding

http-holding-exists = the holding `{ $holding }` exists already
label-http-first-entry = the first entry of a holding is of kind holding_details: it names the keeper and the country
label-http-first-entry-help = send an entry of kind holding_details with its id
begin-begun = holding `{ $holding }` is begun; record what happens with: combclear record
begin-exists = the database keeps a holding `{ $holding }` already
label-begin-exists-help = record a change of keeper or country with: combclear record keeper
label-begin-name = Its name, as every command takes it
label-begin-name-value = HOLDING
import-no-holding = `{ $file }` is of holding `{ $holding }`, which this database does not keep; it keeps { $known }
label-import-no-holding-help = import it with --begin to keep this holding too

## Recording what the leaflet of a lot says

record-leaflet-in-hand = Built in: { $title }. Take the leaflet from the pack.
label-record-leaflet-how = Answer yes if it says the same, or write what it says. If the leaflet is silent, write the word nothing.
label-record-leaflet-nothing = nothing
label-record-leaflet-empty = nothing that the leaflet says was given
label-recording-leaflet-empty-help = answer at least one question
label-record-leaflet-empty-help = answer the questions at a terminal, or give at least one term, such as --withdrawal-days 0
record-leaflet-same = { $label }: built in { $value }. Does the pack say the same?
record-leaflet-what = { $label } ({ $hint }); nothing is built in. What does the pack say?
record-leaflet-barred = { $label }: built in not allowed right before a flow, without a number of days. How many days does the pack give? (write the word nothing if it gives none: the ban stays; write 0 only if it allows use right before a flow)
leaflet-says-too = Does the pack say too: { $value }?
record-leaflet-too = Does the pack say too: { $value }? (yes or no)
record-still-open = still not known: { $what }

## Sheets: the template, and what is wrong with a filled-in one

# The name of the first tab, and of the tab with the lists of choices: at most 31 letters.
label-sheet-about = How to fill this in
label-sheet-choices = Choices
label-sheet-holding = Holding
label-sheet-kind = Kind
label-sheet-about-tabs = One tab for each kind of entry, one row for each entry. Leave empty what you do not need.
label-sheet-about-needed = Fill in the columns with a star. The grey row says what belongs in each column; it is not imported.
label-sheet-about-days = Write days as 2026-08-24. An expiry may be a month, such as 2028-05.
label-sheet-about-names = Lists offer what is on record; you may type other names. Several colonies in one cell: S1-S7, S9.
label-sheet-about-import = Use no formulas and no merged cells. Then run `combclear import` with this file: all rows are recorded, or none.
label-sheet-day-hint = the day on which it happened, as 2026-08-24
label-sheet-choose = Choose from the list
sheet-written = { $file }: a template with { $tabs ->
    [one] 1 tab
   *[other] { $tabs } tabs
}; fill it in and import it
sheet-written-csv = { $file }: a template for `{ $tab }`; fill it in and import it
sheet-needed = { $label } *

sheet-cannot-read = nothing was imported: `{ $file }` is not a spreadsheet that can be read: { $why }
label-sheet-reader-failed = it holds something that no spreadsheet program writes
label-sheet-cannot-read-help = open it in a spreadsheet program and save it as .xlsx
sheet-other-format = `{ $file }` is neither .xlsx nor .csv
label-sheet-other-format-help = save it as .xlsx, or as .csv with one kind of entry
sheet-too-large = nothing was imported: `{ $file }` is larger than { $most } MB
label-sheet-too-large-help = take out pictures, and columns and rows that are not entries; or split it into several files
sheet-too-many-rows = nothing was imported: `{ $file }` has more than { $most } rows
label-sheet-too-many-rows-help = split it into several files
sheet-not-utf8 = nothing was imported: `{ $file }` is not UTF-8 text, from line { $line }
label-sheet-not-utf8-help = save it again as CSV UTF-8
sheet-no-kind = nothing was imported: the column `{ $column }` of `{ $file }` does not say which kind of entry this is
sheet-no-kind-help = write one of these into the first column: { $tabs }
sheet-other-kind = nothing was imported: the column `{ $column }` of `{ $file }` has `{ $kind }`, which is no kind of entry
sheet-two-kinds = nothing was imported: `{ $file }` has two kinds of entry, `{ $one }` and `{ $other }`
label-sheet-two-kinds-help = make one CSV file for each kind of entry, or one .xlsx with a tab for each
sheet-other-holding = nothing was imported: `{ $file }` is a sheet of `{ $holding }`, not of `{ $wanted }`
sheet-no-holding = nothing was imported: `{ $file }` does not say for which holding it is
label-sheet-no-holding-help = name the holding with --holding, or in the first tab
label-sheet-keep-going = nothing was imported: a sheet is imported in full or not at all
label-sheet-keep-going-help = leave --keep-going out
label-sheet-kind-for-csv = a CSV file takes one kind of entry
label-sheet-kind-for-csv-help = say which with --kind, such as --kind inspection; or write an .xlsx file, which has a tab for each
label-sheet-kind-for-xlsx = an .xlsx file has a tab for every kind of entry
label-sheet-kind-for-xlsx-help = leave --kind out, or write a .csv file
sheet-unknown-kind = there is no kind of entry `{ $kind }`; it is one of { $kinds }
label-sheet-is-for-new = for a holding that is not on record yet, add --new

# Where a fault is: { $tab } is the name of a tab, { $row } and { $column } are as the spreadsheet shows them.
sheet-at-cell = { $tab }, row { $row }, column { $column }: { $message }
sheet-at-row = { $tab }, row { $row }: { $message }
sheet-at-column = { $tab }, column { $column }: { $message }
sheet-at-tab = { $tab }: { $message }
sheet-fault = { "  " }{ $message }
    { "    " }help: { $help }
sheet-and-more = { "  " }... and { $more } more

label-sheet-fix = fix them in the file, then import it again
label-sheet-fix-first = fix them in the file, then import it again; contradictions are looked for once every cell can be read
sheet-no-such-tab = no kind of entry has a tab `{ $tab }`
sheet-no-such-tab-help = take the tab out; the tabs are { $tabs }
sheet-did-you-mean = did you mean `{ $near }`?
sheet-did-you-mean-tab = did you mean `{ $near }`? if not, take the tab out
sheet-no-such-day = { $field }: `{ $text }` is not a day of the calendar
sheet-no-day = { $field } is missing
sheet-no-such-column = there is no column `{ $heading }` here
sheet-no-such-column-help = the columns are { $columns }
sheet-column-twice = there are two columns `{ $heading }`
label-sheet-column-twice-help = take one of them out
label-sheet-no-heading = something is written in a column without a heading
label-sheet-no-heading-help = clear the column, or give it one of the headings of this tab
sheet-merged = the cells { $range } are merged
label-sheet-merged-help = split them, and write the value into each row
sheet-formula = { $field } is a formula
label-sheet-formula-help = write the value itself
sheet-error = { $field } holds the error { $text }
sheet-not-a-day = { $field }: `{ $text }` is not a day in the order that this sheet takes
label-sheet-not-a-day-help = write year-month-day, such as 2026-08-24; no other order is guessed
label-sheet-no-day-help = write year-month-day, such as 2026-08-24
label-sheet-not-printed-help = write 2028-05 for a month, or 2028-05-31 for a day; no other order is guessed
sheet-day-of-number = { $field }: { $text } is a number, not a day
sheet-day-with-time = { $field }: the day has a time of day with it, { $text }
label-sheet-day-with-time-help = write the time into the column for it
sheet-printed-first = { $field }: { $text } may have been typed as a month
label-sheet-printed-first-help = format the cell as text, then write 2028-05 for a month, or the day in full
sheet-date-in-text = { $field } holds the date { $text }, and takes none
label-sheet-date-in-text-help = format the cell as text, then write it again
sheet-not-a-time = { $field }: `{ $text }` is not a time of day
label-sheet-not-a-time-help = write hours and minutes, such as 09:30
sheet-same-row = this says the same as row { $row }
label-sheet-same-row-help = take one of them out; if it happened twice, write the time of day into both
label-sheet-nothing-filled-in = no row is filled in; nothing was recorded
sheet-by-tab = { $tab } { $entries }
sheet-all-tabs = recorded: { $tabs }
sheet-row-known = { $rows ->
    [one] 1 row was
   *[other] { $rows } rows were
} imported before and { $rows ->
    [one] was
   *[other] were
} not recorded again
sheet-left-out = { $tab }, row { $row }: { $left-out }

## The manual

failure-cannot-write-manual = the manual cannot be written to `{ $folder }`: { $why }
failure-manual-written = the manual is in `{ $folder }`
label-manual-name-a-folder = name a folder that exists and may be written to

## Entries by their number over HTTP

misread-entry = `{ $text }` is neither the id of an entry, written like 0198c7d2-5a3b-7c41-8f00-3b2a6e9d1c77 in lower case, nor its number in the journal
label-unreadable-numbered-nowhere = an entry is named by its number, but there is no journal here in which to look it up
label-unreadable-numbered-nowhere-help = name the entry by its id
label-http-no-entry-numbered-help = give the number that `seq` has in the list of entries, or the id
label-http-entry-help = name the entry by its id, as in 01964c7e-6f00-7000-8000-000000000001, or by its number in the journal, as in 70

## Worked examples

label-example-reason = it was another colony
field-disposal-quantity = Amount
field-disposal-quantity-hint = in the unit of the medicine
field-disposal-quantity-example = 4
