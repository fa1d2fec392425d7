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

## Retention: until when records must be kept

## Stock: what is left, what to dispose of

## Law: fields, occasions and terms of a record

## Sites: power, access and ground
