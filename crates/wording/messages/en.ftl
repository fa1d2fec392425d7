### English. One sentence for each thing that can be said; what stands in braces is filled in.

## Numbers with their nouns

days = { $days ->
    [one] 1 day
   *[other] { $days } days
}

notice = An aid to record-keeping: the leaflet on the pack, the prescriber and local law decide.

## Supering: may this colony be supered

## Due: what must or may be done

## Options: what else can be used here

## Leaflets: what a rule says

## Gaps: what the legal record misses

# The row that a gap is about; its sentence begins with it.
gaps-about-medicine = the medicine { $medicine }
gaps-about-acquisition = lot { $lot } of { $medicine }, acquired on { $on }
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
gaps-withdrawal-said-by-leaflet = { $about }: the withdrawal period is not recorded; the built-in leaflet says { $days }, but that is no record of yours
gaps-end-not-known = { $about }: the { law-field } is not known
gaps-end-lost = { $about }: the { law-field } is not known: in { $colonies } nobody recorded where it went
gaps-end-late = { $about }: the { law-field } is not known: in { $colonies } its removal is not recorded, and it had to be out
gaps-written-late = { $about }: written down { $days } later; the law wants it { $within ->
    [0] on the same day
    [one] within a day
   *[other] within { $within } days
}
gaps-medicine-authorisation = { $medicine }: no authorisation number is recorded; only an authorised medicine may be given
gaps-medicine-leaflet = { $medicine }: no leaflet `{ $leaflet }` is known where the holding is; is it authorised there?
gaps-medicine-directions = { $medicine }: neither a leaflet nor terms are recorded, so nobody can tell how it is to be used
gaps-prescribed-after = { $about }: prescription { $number } was written only on { $on }
gaps-prescribed-later = { $about }: prescription { $number } was written only later
gaps-use-after-expiry = { $about }: lot { $lot } had expired on { $expiry }
gaps-past-life-in-use = { $about }: what was opened of lot { $lot }, opened on { $opened } was to be used by { $until }: { $says }
gaps-past-life-in-use-not-documented = { $about }: what was opened of lot { $lot }, opened on { $opened } was to be used by { $until } (not documented: check the pack): { $says }
gaps-whereabouts = { $about }: since { $since } nobody recorded whether it is still in { $colonies }
gaps-removal-late = { $about }: it had to be out of { $colonies } by { $by }, and no removal is recorded
gaps-removal-not-recorded = { $about }: no removal from { $colonies } is recorded, and nobody stated how long it may stay
gaps-document-not-kept = { $about }: `{ $file }` is attached, but its content is missing or altered
gaps-nameless-document-not-kept = { $about }: `a document` is attached, but its content is missing or altered
gaps-no-document = { $about }: no document is kept with it
gaps-no-document-but-words = { $about }: no document is kept with it (what proves it is told in words only)
gaps-expiry-not-told = { $about }: without its expiry date nobody can tell whether it was used in time
gaps-expired-when-acquired = { $about }: it had expired on { $expiry } already
# { $sum } is the sum of the lot: what was acquired, given and disposed of.
gaps-more-gone = lot { $lot }: { $sum }, { $amount } more than was acquired
gaps-count-corrected = lot { $lot }: the count was corrected, so its book rests on a count

# How to supply what is missing.
gaps-supply-correct-entry = correct entry no. { $place } and give the { law-field }
gaps-supply-describe-medicine = correct the description of the medicine: pack name, authorisation number, leaflet
gaps-supply-prove-purchase = attach the invoice or receipt to the lot, or correct the acquisition and say what proves it and where it is kept
gaps-supply-attach-prescription = attach a copy to the prescription
gaps-supply-reach-of-vet = correct the prescription and say how the vet is reached
gaps-supply-withdrawal-days = correct entry no. { $place } and give the days that the pack states, 0 too; or record what its leaflet says
gaps-supply-removal = record the removal with the day on which it came out
gaps-supply-removal-and-withdrawal = record the removal, and the withdrawal period that the pack states
gaps-supply-keeper-address = record the holding's details with the keeper's address
gaps-supply-nothing-mends = nothing can mend it; the register shows when it was written down
gaps-supply-read-on-pack = look on the pack, and correct the description of the medicine
gaps-supply-check-authorisation = check the authorisation on the pack; correct the leaflet, or add one of your own
gaps-supply-point-to-directions = correct the description: point to a leaflet, or declare the terms that the pack states
gaps-supply-stays-on-record = it stays on record as it was; correct the entry only if it is wrong
gaps-supply-perhaps-another-pack = all is well if it came from a pack that was opened later; if not, do not use the rest
gaps-supply-look-where-it-is = look, and record the removal, or where it went
gaps-supply-take-out = take it out and record the removal; if it came out before, record it with that day
gaps-supply-look-or-read-stay = look, and record the removal; or read on the leaflet how long it may stay
gaps-supply-attach-again = attach the same file again; `verify` names every such document
gaps-supply-attach-invoice = photograph or scan the invoice, and attach it to the lot
gaps-supply-read-expiry = read it on the pack, and correct the acquisition
gaps-supply-count-again = count again, and correct the entry that is wrong
gaps-supply-explain-difference = say in a correction what became of the difference, if it is found

# A place in a law: the title of the text, and where in it.
gaps-law-place = { $title }, { $locator }

# The answer in a few sentences.
gaps-complete = From { $from } to { $to } everything that the law wants is in the record.
gaps-nothing-recorded = From { $from } to { $to } nothing is recorded; that does not show that nothing was given.
gaps-completeness-not-known = From { $from } to { $to } it is not known whether the record is complete.
gaps-incomplete = { $count ->
    [one] From { $from } to { $to } 1 thing is missing that the law wants.
   *[other] From { $from } to { $to } { $count } things are missing that the law wants.
}
gaps-count-amiss = { $count ->
    [one] 1 thing was not as it should be.
   *[other] { $count } things were not as they should be.
}
gaps-count-where-applicable = { $count ->
    [one] 1 thing is missing if it applies.
   *[other] { $count } things are missing if they apply.
}
gaps-count-advised = { $count ->
    [one] 1 thing is missing that practice advises.
   *[other] { $count } things are missing that practice advises.
}
gaps-law-not-said = What the law wants could not be asked: the record does not say whose law holds.
gaps-law-not-known = What the law wants could not be asked: no law of `{ $jurisdiction }` is known here.
gaps-law-not-in-force = What the law wants could not be asked: no law of `{ $jurisdiction }` is known that was in force on { $on }.
gaps-law-of-union-only = What the law wants could not be asked: of the law of `{ $jurisdiction }` only the Union's part is known here.
gaps-no-prescription = No prescription is named: if a vet prescribed a medicine, record the prescription and attach a copy.

## Retention: until when records must be kept

# Why the end of keeping is not known, or may yet move. In round brackets stands the kind of entry that would settle it.
retention-jurisdiction-not-recorded = whose rules hold is not recorded (holding_details)
retention-law-not-built-in = no law of `{ $jurisdiction }` is built in: how long it asks is not known
retention-unions-part-only = of the law of `{ $jurisdiction }` only the Union's part is known here
retention-rules-begin = the rules of `{ $jurisdiction }` known here begin on { $from }
retention-rules-ended = the rules of `{ $jurisdiction }` known here ended on { $until }
retention-no-rule = no rule known here says how long such a record is kept
retention-left = lot { $lot }: { $amount } left by the book: the count still runs (disposal)
retention-more-gone = lot { $lot }: { $amount } more gone than acquired: the count still runs (correct the entry that is wrong)
retention-not-out = lot { $lot }: not recorded as out of { $colonies } (removal)
retention-perhaps-not-out = lot { $lot }: whether it has to come out is not known, in { $colonies } (leaflet_reading, or removal)

# The rule that decided.
retention-by-law = { $years ->
    [one] 1 year from { law-counted-from } ({ $from }), law of { $jurisdiction }
   *[other] { $years } years from { law-counted-from } ({ $from }), law of { $jurisdiction }
}
retention-by-scheme = { $years ->
    [one] 1 year from { law-counted-from } ({ $from }), a scheme or advice of { $jurisdiction }
   *[other] { $years } years from { law-counted-from } ({ $from }), a scheme or advice of { $jurisdiction }
}

# Why a story stays although the law would let it go.
retention-supering-turns = whether colony { $colony } may be supered turns on it

## Stock: what is left, what to dispose of

stock-sum = { $acquired } acquired = { $given } given + { $disposed } disposed of + { $left } left
stock-sum-too-many = { $acquired } acquired, but { $given } given + { $disposed } disposed of: { $over } too many

# How a lot stands: these are joined by semicolons.
stock-overdrawn = more is gone than was acquired: count again
stock-empty = empty
stock-expired = expired on { $expiry }
stock-sealed = sealed
# { $since } is one of these two.
stock-opened = opened on { $on }
stock-first-given = first given on { $on }, so open since then
stock-in-use = in use: { $since }
stock-in-use-until = in use: { $since }; use it by { $until }
stock-in-use-until-not-documented = in use: { $since }; use it by { $until } (not documented: check the pack)
stock-past-use = { $since }; what was opened was to be used by { $until }
stock-past-use-not-documented = { $since }; what was opened was to be used by { $until } (not documented: check the pack)
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
stock-dispose-past-use = { $open }; what was opened was to be used by { $until } ("{ $says }"). Packs still sealed are not meant: write the amount that was opened
stock-dispose-past-use-not-documented = { $open }; what was opened was to be used by { $until } ("{ $says }"; not documented, check the pack). Packs still sealed are not meant: write the amount that was opened

# Why a lot is not counted for a course.
stock-not-counted-overdrawn = more is gone than was acquired
stock-not-counted-expired = expired
stock-not-counted-past-use = past its life in use; what is still sealed may be used

stock-same-batch = lots { $earlier } and { $later } of { $medicine } have one batch number, { $batch }: bought twice, or written down twice?
stock-no-expiry-of = lot { $lot } of { $medicine } has no expiry date on record

## Law: fields, occasions and terms of a record

law-notice = An aid to record-keeping, written from published texts, with gaps. The law decides.

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
