### English. One sentence for each thing that can be said; what stands in braces is filled in.

## Numbers with their nouns

days = { $days ->
    [one] 1 day
   *[other] { $days } days
}

notice = An aid to record-keeping: the leaflet on the pack, the prescriber and local law decide.

## Supering: may this colony be supered

# A course, by the name on its pack and its first day. One that is given leaves nothing in the hive to be taken out.
supering-course-given = { $pack } given { $day }
supering-course-placed = { $pack } placed { $day }

# The terms, as they stand after "the".
supering-term-supers-during = rule on supers while it is in
supering-term-withdrawal = withdrawal period
supering-term-wait = wait between removal and supers
supering-term-removal = rule on taking it out
supering-term-used-up = time after which it is used up
supering-term-stay-min = least stay
supering-term-stay-max = longest stay
supering-term-flow-before = rule on the time right before a nectar flow

# The answer in one sentence. Each of those that follow takes in what was said so far as $answer.
supering-yes = Supers may go on
supering-yes-no-honey-before = Supers may stay on, but no honey may be taken before { $day }
supering-yes-no-honey-yet = Supers may stay on, but no honey may be taken yet, and from when on is not known
supering-no = No supers
supering-not-known = Not known whether supers may go on
supering-must-come-off = { $answer } (and those that are on must come off)
supering-because = { $answer }: { $why }
supering-free-from = { $answer }; free from { $day }
supering-free-once-out = { $answer }; free from the day all is out, { $out } at the earliest
supering-free-if-out = { $answer }; free from { $free } if all is out on { $out }
supering-or-without-brood = { $answer }, or on { $day } if there is no brood

# Grounds. $name is a course.
supering-breach = breach: { $said }
supering-colony-not-recorded = no such colony is in the record
supering-not-yet-begun = the colony came into the record only on { $begun }
supering-ended = the colony ended on { $day }
supering-came-with-unknown = it is not known what medicine was in the colony when it came into the record
supering-nothing-given = no medicine was given by this day
supering-still-in = { $name } is still in by the record, and honey supers stay off while it is
supering-in-supers-allowed = { $name } is in, and honey supers may be on meanwhile
supering-in-no-honey = { $name } is in, and honey supers may be on meanwhile, but no honey may be taken
supering-whereabouts-not-said = nobody recorded where { $name } went when the colony was split or united on { $since }
supering-barred-wherever-it-went = { $name } bars supers whether it is in or out: nobody recorded where it went when the colony was split or united on { $since }
supering-barred-used-up-or-not = { $name } bars supers whether it is in or out: it may be used up since { $since }
supering-nothing-stays-yet-stays = { $name }: it was stated that nothing stays in the hive, yet a least stay is known; one of the two is wrong
supering-used-before-flow = { $name } must not be used right before a nectar flow: it was in until { $out }, a flow began on { $began }, and supers stay off through { $through }
supering-flow-names-no-days = { $name } must not be used right before a nectar flow, and the leaflet names no days: it was in until { $out }, a flow begins on { $begins }
supering-flow-not-on-record = { $name } must not be used right before a nectar flow: it was in until { $out }, and no flow is on record since
supering-read-afterwards = { $name }: a looser { $term } was read after it was given; it does not count for it, unless the entry that is wrong is corrected
supering-looser-than-leaflet = { $name }: the stated { $term } is looser than the documented leaflet; check the pack again
supering-not-documented = { $name }: the { $term } ({ $value }) is not documented, so no yes can rest on it
supering-used-up-not-known = { $name }: whether it is used up by now is not established
supering-removal-not-known = { $name }: whether it has to be taken out is not established, so it may be in or used up
supering-term-not-known = { $name }: the { $term } is not known
supering-withdrawal-runs = the withdrawal period of { $name } runs: { $days } days after { $out }, last blocked day { $last }
supering-wait-runs = the wait before supers of { $name } runs: { $days } days after { $out }, last blocked day { $last }
supering-withdrawal = withdrawal { days }
supering-no-withdrawal-by-label = no withdrawal period by the label
supering-wait = wait { days }
supering-no-further-wait = no further wait
supering-over-once-given = { $name }: nothing of it bars supers any more ({ $withdrawal }, { $wait })
supering-over-once-out = { $name } is out since { $out }, and nothing of it bars supers any more ({ $withdrawal }, { $wait })
supering-no-honey-through = { $name }: no honey may be taken through { $day }
supering-no-honey-while-in = { $name }: no honey may be taken while it is in
supering-stayed-at-least = { $name } { $came ->
    [too-early] came out too early
   *[long-enough] stayed long enough
}: { $stayed } of at least { $days } days, not before { $least }
supering-stayed-under-brood = { $said }, { $seen }
supering-stay-turns-on-brood = { $name } stayed { $stayed } days; whether { $shorter } or { $longer } were needed turns on brood, and none was recorded by { $until }
supering-out-in-time = { $name } came out in time: { $stayed } of at most { $days } days
supering-overdue = { $name } is overdue: it had to be out on { $latest }, { $days } days after placing
supering-stayed-too-long = { $name } stayed too long: { $stayed } of at most { $days } days, until { $latest }
supering-all-doses-given = { $name }: { $doses ->
    [1] its one dose was given
   *[other] all { $doses } doses were given
}
supering-doses-given = { $name }: { $given } of { $doses } doses were given
supering-dose-off-time = { $name }: dose { $number } on { $day } came { $after } days after the one before, not { $wanted }
supering-days-between = { $least } to { $most } days
supering-days-at-least = at least { days }
supering-days-at-most = at most { days }
supering-another-time = another time
supering-supers-were-on = honey supers were put on { $from } and came off { $off }, while { $name } was in: their honey is not for people
supering-supers-are-on = honey supers were put on { $from } and are still on, while { $name } was in: their honey is not for people
supering-no-supers-on = no honey supers were on while { $name } was in
supering-combs = { $name }, the combs: { $text }
supering-no-brood-seen = no brood seen on { $day }
supering-lowest-brood-seen = brood at its lowest seen on { $day }
supering-brood-seen = brood seen on { $day }

# The values that a ground used.
supering-value-days = { $days } days
supering-value-forbidden = forbidden
supering-value-forbidden-days = forbidden for { $days } days
supering-value-none-by-label = none by label
supering-value-days-apart = { $least } to { $most } days apart
# Stands for a number of days that nobody stated.
supering-value-any = any
supering-value-whole-time = the stated withdrawal period is the whole time after treatment

# What must happen first. $earliest is one of the sentences on when it may come out.
supering-take-supers-off = take the honey supers off now; on since { $since }; keep their honey from people
supering-record-whereabouts = look for { $name } and record it as out, or correct the entry of { $since } to say where the strips went
supering-dose-was-due = give dose { $number } of { $of } of { $name }: it was due by { $by }
supering-dose-on = give dose { $number } of { $of } of { $name }: on { $day }
supering-dose-from-by = give dose { $number } of { $of } of { $name }: from { $from }, by { $by }
supering-dose-from = give dose { $number } of { $of } of { $name }: from { $from }
supering-dose-by = give dose { $number } of { $of } of { $name }: by { $by }
supering-dose-by-leaflet = give dose { $number } of { $of } of { $name }: as the leaflet says
supering-take-out = take out { $name }: { $earliest }
supering-take-out-by = take out { $name }: { $earliest }; must be out by { $latest }
supering-take-out-late = take out { $name }: { $earliest }; it had to be out by { $latest }
supering-no-least-stay = no least stay is stated
supering-may-come-out = may come out since { $day }
supering-not-before-tomorrow = not before { $day }, tomorrow
supering-not-before = not before { $day }, in { $days } days
supering-earliest-under-brood = { $earliest } ({ $seen })
supering-earliest-turns-on-brood = { $earliest }; no brood is on record: { $absent } without brood, { $present } with; the later holds until brood is recorded
supering-wait-until-spent = wait for { $name }: it is used up on { $spent }, and nothing has to be taken out
supering-wait-through = wait for { $name }: first free day { $free }

# What is missing, and what the keeper is asked for. $lots are lots as the two last messages put them.
supering-brood-not-known = { $name }: whether there is brood, which makes the earliest day { $absent } or { $present }
supering-ask-arrival = record when it came into the holding
supering-ask-earlier-arrival = correct entry { $entry } if the colony was here earlier
supering-ask-former-keeper = ask whoever kept it before, then correct entry { $entry }
supering-ask-look-inside = look into the hive: record a removal, or correct entry { $entry }
supering-ask-look-at-pack = look at the pack again: correct entry { $entry }, which says that nothing stays, or what states a least stay
supering-ask-next-flow = record the next nectar flow there, as it was seen or is expected
supering-ask-days-before-flow = read or ask the prescriber or the supplier how many days before a flow are meant, 0 if none are, on the leaflet of lot { $lots } and record it
supering-ask-brood-between = record the brood that was seen between { $from } and { $until }, if it was
supering-ask-brood = record the brood that is seen
supering-ask-jurisdiction = record the holding's jurisdiction, so that its leaflets are used
supering-ask-pack = this program has no leaflet `{ $leaflet }` here: record what the pack says
supering-ask-pack-or-near-leaflet = this program has no leaflet `{ $leaflet }` here, or name `{ $near }`: record what the pack says
supering-ask-term = read the { $term } on the leaflet of lot { $lots } and record it
supering-ask-term-or-zero = read the { $term }, 0 included, on the leaflet of lot { $lots } and record it
supering-ask-stays = read how long it must and may stay on the leaflet of lot { $lots } and record it
supering-lot = `{ $lot }`
supering-lots = { $lots } and lot { $lot }

## Due: what must or may be done

# Titles stand alone on a phone. $pack is a name on a pack, $name a course, $lots lots as due-lots puts them.
due-take-supers-off-title = Take the honey supers off
due-take-supers-off = take the honey supers off now: they are on since { $since }, and must be off for { $courses }; keep their honey from people
due-courses = { $courses } and { $course }
due-find-carriers-title = Look where { $pack } went
due-record-end-title = Record what became of what was in it
due-record-end = { $name } was in when the colony ended on { $ended }, and nobody recorded what became of it: record its removal, on that day at the latest
due-give-dose-title = Give dose { $number } of { $of } of { $pack }
due-dose-by = give dose { $number } of { $of } of { $name }: by { $by }; its first day is not stated
due-dose-by-leaflet = give dose { $number } of { $of } of { $name }: when the leaflet says; its day is not stated
due-take-out-title = Take out { $pack }
due-not-before = not before { $day }
due-not-before-by-brood = not before { $without } without brood, { $with } with brood; no brood is on record
due-used-up-title = { $pack } is used up
due-used-up = { $name } is used up on { $day }; nothing has to be taken out
due-supers-free-title = Supers may go on from this day
due-supers-free-if-out-title = Supers may go on from this day, if all is out
due-supers-free = first free day for supers after { $name }: { $free }
due-supers-free-if-out = first free day for supers after { $name }: { $free }, if all is out on { $out }
due-count-mites-title = Count mites after the treatment
due-count-mites = count mites to see whether { $name } worked: 10 to 14 days after its end on { $ended }, so { $from } to { $by } (advice)
due-ask-former-keeper-title = Find out what medicine was in it
due-ask-former-keeper = ask whoever kept it before { $since } what medicine was in it, then correct the entry of that day
due-read-leaflet-title = Read the leaflet of { $lots }
due-record-jurisdiction-title = Record the holding's jurisdiction
due-look-inside-title = Look whether it is out
due-record-missing-title = Record what is missing
due-record-missing = for { $name }: { $how }
# $said is the sentence before.
due-record-missing-and-terms = { $said }, and the { $terms }
due-read-leaflet = for { $name }: read on the leaflet of { $lots } and record the { $terms }
# $said asks for terms, a period in days among them.
due-zero-included = { $said }, 0 included
due-terms = { $terms } and the { $term }
due-lots = { $count ->
    [0] the lot
    [one] lot { $lots }
   *[other] lots { $lots }
}
due-last-day-title = Last day for what was opened of lot { $lot }
due-last-day = what was opened of { $lot } may be given until { $until }
due-lot-expires-title = Lot { $lot } expires
due-lot-expires = { $lot } may be given until { $expiry }; after that it is to be disposed of
due-dispose-title = Dispose of lot { $lot }
due-dispose = dispose of { $lot }: { $why }
due-lot-left = { $amount } of { $pack } (lot { $lot })
# Where the book of the lot does not come out.
due-lot-named = { $pack } (lot { $lot })
due-complete-record-title = Complete the record: entry no. { $place }
due-complete-record = { $gap }: { $supply }

## Options: what else can be used here

## Leaflets: what a rule says

## Gaps: what the legal record misses

## Retention: until when records must be kept

## Stock: what is left, what to dispose of

## Law: fields, occasions and terms of a record

## Sites: power, access and ground
