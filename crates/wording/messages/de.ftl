### German. One sentence for each thing that can be said; what stands in braces is filled in.

## Numbers with their nouns

# What stands before decimals.
mark-decimal = ,

days = { $days ->
    [one] 1 Tag
   *[other] { $days } Tage
}

# Colonies or lots in the order in which people count, runs of consecutive numbers in one.
colonies-run = { $first }-{ $last }
colonies-run-of-hyphens = { $first } bis { $last }
colonies-counted = { $names } ({ $count })

# A jurisdiction by its code.
part-jurisdiction = { $jurisdiction ->
    [gb] Großbritannien
    [ni] Nordirland
    [eu] Europäische Union
    [de] Deutschland
    [fr] Frankreich
    [ie] Irland
    [it] Italien
    [pl] Polen
    [ch] Schweiz
    [us] Vereinigte Staaten
   *[other] { $jurisdiction }
}

notice = Eine Hilfe beim Führen der Aufzeichnungen: Es entscheiden die Packungsbeilage, die verschreibende Tierärztin oder der verschreibende Tierarzt und das örtliche Recht.

# An amount with its unit; $quantity may be a range, $number says whether it is one.
amount = { $unit ->
    [g] { $quantity } g
    [ml] { $quantity } ml
    [strip] { $number ->
        [one] { $quantity } Streifen
       *[several] { $quantity } Streifen
    }
    [tray] { $number ->
        [one] { $quantity } Schale
       *[several] { $quantity } Schalen
    }
    [tablet] { $number ->
        [one] { $quantity } Tablette
       *[several] { $quantity } Tabletten
    }
    [wafer] { $number ->
        [one] { $quantity } Plättchen
       *[several] { $quantity } Plättchen
    }
    [piece] { $number ->
        [one] { $quantity } Stück
       *[several] { $quantity } Stück
    }
   *[other] { $number ->
        [one] { $quantity } { $unit }
       *[several] { $quantity } { $unit }
    }
}

# Stands for the name of a medicine whose lot, or first dose, is not on record.
medicine-not-on-record = (nicht eingetragen)

## Supering: may this colony be supered

# A course, by the name on its pack and its first day. One that is given leaves nothing in the hive to be taken out.
supering-course-given = { $pack } (gegeben am { $day })
supering-course-placed = { $pack } (eingelegt am { $day })

# A term of a course, as it stands after "the".
term-name = { $term ->
    [supers-during] Regel zum Honigraum während der Behandlung
    [flow-during] Regel zur Anwendung während der Tracht
    [flow-before] Regel zur Anwendung unmittelbar vor der Tracht
    [withdrawal] Wartezeit
    [wait] Frist von der Entnahme bis zum Honigraum
    [removal] Regel zur Entnahme
    [used-up] Zeit bis zum Aufbrauchen
    [stay-min] Mindestverweildauer
    [stay-min-with-brood] Mindestverweildauer bei Brut
    [stay-max] Höchstverweildauer
    [doses] Zahl der Gaben
   *[dose-interval] Abstand zwischen den Gaben
}

# The same in two or three words.
term-brief = { $term ->
    [supers-during] Regel zum Honigraum
    [flow-during] Regel für die Tracht
    [flow-before] Regel vor der Tracht
    [withdrawal] Wartezeit
    [wait] Frist bis zum Honigraum
    [removal] Regel zur Entnahme
    [used-up] Zeit bis zum Aufbrauchen
    [stay-min] Mindestverweildauer
    [stay-min-with-brood] Mindestverweildauer bei Brut
    [stay-max] Höchstverweildauer
    [doses] Zahl der Gaben
   *[dose-interval] Abstand der Gaben
}

# The same as a question; it stands as the subject before "is not stated" and "was not read".
term-question = { $term ->
    [supers-during] ob Honigräume aufgesetzt sein dürfen, solange es im Volk ist
    [flow-during] ob es während einer Tracht im Volk sein darf
    [flow-before] ob es unmittelbar vor einer Tracht angewendet werden darf
    [withdrawal] wie lang die Wartezeit ist
    [wait] wie lange nach der Entnahme mit dem Honigraum gewartet werden muss
    [removal] ob es herausgenommen werden muss
    [used-up] wann es aufgebraucht ist
    [stay-min] wie lange es im Volk bleiben muss
    [stay-min-with-brood] wie lange es bei Brut im Volk bleiben muss
    [stay-max] wie lange es im Volk bleiben darf
    [doses] wie viele Gaben zu einer Behandlung gehören
   *[dose-interval] wie viele Tage zwischen den Gaben liegen
}

# The answer in one sentence. Each of those that follow takes in what was said so far as $answer.
supering-yes = Ein Honigraum darf aufgesetzt werden
supering-yes-no-honey-before = Honigräume dürfen aufgesetzt bleiben, aber vor dem { $day } darf kein Honig geerntet werden
supering-yes-no-honey-yet = Honigräume dürfen aufgesetzt bleiben, aber noch darf kein Honig geerntet werden; ab welchem Tag er geerntet werden darf, ist nicht bekannt
supering-no = Es darf kein Honigraum aufgesetzt werden
supering-not-known = Nicht bekannt, ob ein Honigraum aufgesetzt werden darf
supering-must-come-off = { $answer } (und jetzt aufgesetzte müssen abgenommen werden)
supering-off-for-dose = { $answer }, und zur nächsten Gabe wieder ab: { $dose }
supering-because = { $answer }: { $why }
supering-free-from = { $answer }; ein Honigraum darf ab { $day } aufgesetzt werden
supering-free-once-out = { $answer }; ein Honigraum darf aufgesetzt werden, sobald alles heraus ist, frühestens am { $out }
supering-free-if-out = { $answer }; ein Honigraum darf ab { $free } aufgesetzt werden, wenn am { $out } alles heraus ist
supering-or-without-brood = { $answer }, oder am { $day }, wenn keine Brut da ist

# Grounds. $name is a course.
supering-breach = Verstoß: { $said }
supering-colony-not-recorded = kein solches Volk ist eingetragen
supering-not-yet-begun = das Volk war vor dem { $begun } nicht eingetragen
supering-ended = das Volk ist am { $day } abgegangen
supering-came-with-unknown = es ist nicht bekannt, welches Arzneimittel im Volk war, als die Aufzeichnungen über das Volk begannen
supering-records-in-archive = Einträge, die bis zum { $through } gegen Honigräume sprechen können, liegen in einem Archiv: mit diesem Archiv fragen
supering-nothing-on-record-since = was im Archiv liegt, steht Honigräumen ab { $since } nicht mehr entgegen, und bis zu diesem Tag ist kein anderes Arzneimittel eingetragen
supering-nothing-given = bis zu diesem Tag wurde kein Arzneimittel angewendet
supering-still-in = { $name } ist nach den Einträgen noch im Volk, und solange darf kein Honigraum aufgesetzt sein
supering-in-supers-allowed = { $name } ist im Volk, und Honigräume dürfen dabei aufgesetzt sein
supering-in-no-honey = { $name } ist im Volk, und Honigräume dürfen dabei aufgesetzt sein, aber es darf kein Honig geerntet werden
supering-whereabouts-not-said = niemand hat eingetragen, wohin { $name } bei der Teilung oder Vereinigung des Volkes am { $since } kam
supering-barred-wherever-it-went = { $name } sperrt den Honigraum, ob noch im Volk oder heraus: niemand hat eingetragen, wohin es bei der Teilung oder Vereinigung des Volkes am { $since } kam
supering-barred-used-up-or-not = { $name } sperrt den Honigraum, ob noch im Volk oder heraus: seit { $since } kann es aufgebraucht sein
supering-nothing-stays-yet-stays = { $name }: angegeben wurde, dass nichts in der Beute bleibt, aber nach der Packungsbeilage oder einer Mindestverweildauer bleibt etwas; eines von beiden ist falsch
supering-used-before-flow = { $name } darf nicht unmittelbar vor einer Tracht angewendet werden: es war bis { $out } im Volk, am { $began } begann eine Tracht, und bis einschließlich { $through } darf kein Honigraum aufgesetzt sein
supering-flow-names-no-days = { $name } darf nicht unmittelbar vor einer Tracht angewendet werden, aber die Packungsbeilage sagt nicht, wie viele Tage: es war bis { $out } im Volk, und am { $begins } beginnt eine Tracht
supering-flow-not-on-record = { $name } darf nicht unmittelbar vor einer Tracht angewendet werden: es war bis { $out } im Volk, und seither ist keine Tracht eingetragen
supering-read-afterwards = { $name }: nach der Anwendung weniger streng abgelesen: { $term }; das gilt für diese Behandlung nicht, außer der Eintrag, der falsch ist, wird berichtigt
supering-looser-than-leaflet = { $name }: weniger streng angegeben als in der belegten Packungsbeilage: { $term }; Packung noch einmal prüfen
supering-not-documented = { $name }: { $term } ({ $value }) nicht belegt, kann also kein Ja begründen
supering-used-up-not-known = { $name }: es ist nicht geklärt, ob es inzwischen aufgebraucht ist
supering-removal-not-known = { $name }: es ist nicht geklärt, ob es herausgenommen werden muss, also kann es noch im Volk oder aufgebraucht sein
supering-term-not-known = { $name }: { $term } nicht bekannt
supering-withdrawal-runs = { $name }: die Wartezeit läuft, { days } nach dem { $out }, letzter gesperrter Tag { $last }
supering-wait-runs = { $name }: die Frist bis zum Honigraum läuft, { days } nach dem { $out }, letzter gesperrter Tag { $last }
supering-withdrawal = Wartezeit { days }
supering-no-withdrawal-by-label = laut Etikett keine Wartezeit
supering-wait = Frist bis zum Honigraum { days }
supering-no-further-wait = keine weitere Frist
supering-over-once-given = { $name } sperrt den Honigraum nicht mehr ({ $withdrawal }, { $wait })
supering-over-once-out = { $name } ist seit { $out } heraus und sperrt den Honigraum nicht mehr ({ $withdrawal }, { $wait })
supering-no-honey-through = { $name }: bis einschließlich { $day } darf kein Honig geerntet werden
supering-no-honey-while-in = { $name }: solange es im Volk ist, darf kein Honig geerntet werden
supering-stayed-at-least = { $name }: { $came ->
    [too-early] zu früh herausgenommen, nach { $stayed ->
        [one] 1 Tag
       *[other] { $stayed } Tagen
    }
   *[long-enough] lange genug im Volk, { $stayed ->
        [one] 1 Tag
       *[other] { $stayed } Tage
    }
}, gefordert mindestens { days }; frühester Tag der Entnahme { $least }
supering-stayed-under-brood = { $said }, { $seen }
supering-stay-turns-on-brood = { $name }: im Volk { $stayed ->
    [one] 1 Tag
   *[other] { $stayed } Tage
}; ob { $shorter } oder { $longer } nötig waren, hängt von der Brut ab, und bis { $until } wurde keine Brutkontrolle eingetragen, die zählt
supering-out-in-time = { $name }: rechtzeitig herausgenommen, im Volk { $stayed ->
    [one] 1 Tag
   *[other] { $stayed } Tage
}, erlaubt höchstens { days }
supering-overdue = { $name } ist überfällig: es musste bis { $latest } heraus sein, { days } nach dem Einlegen
supering-stayed-too-long = { $name }: zu lange im Volk, { $stayed ->
    [one] 1 Tag
   *[other] { $stayed } Tage
}, erlaubt höchstens { days }; es musste bis { $latest } heraus sein
supering-all-doses-given = { $name }: { $doses ->
    [1] die einzige Gabe wurde gegeben
    [2] beide Gaben wurden gegeben
   *[other] alle { $doses } Gaben wurden gegeben
}
supering-doses-given = { $name }: { $given } von { $doses } Gaben gegeben
supering-dose-off-time = { $name }: Gabe { $number } am { $day } kam { $after ->
    [one] 1 Tag
   *[other] { $after } Tage
} nach der vorigen Gabe, gefordert: { $wanted }
supering-days-between = { $least } bis { $most } Tage
supering-days-at-least = mindestens { days }
supering-days-at-most = höchstens { days }
supering-another-time = Abstand wie angegeben
supering-supers-were-on = Honigraum am { $from } aufgesetzt und am { $off } abgenommen, während { $name } im Volk war: der Honig daraus darf nicht für den menschlichen Verzehr verwendet werden
supering-supers-are-on = Honigraum am { $from } aufgesetzt und noch nicht abgenommen, während { $name } im Volk war: der Honig daraus darf nicht für den menschlichen Verzehr verwendet werden
supering-no-supers-on = kein Honigraum war aufgesetzt, während { $name } im Volk war
supering-combs = { $name }, Waben: { $text }
supering-no-brood-seen = keine Brut gesehen am { $day }
supering-lowest-brood-seen = geringster Brutumfang gesehen am { $day }
supering-brood-seen = Brut gesehen am { $day }

# The values that a ground used.
supering-value-days = { days }
supering-value-forbidden = verboten
supering-value-forbidden-days = verboten für { days }
supering-value-none-by-label = laut Etikett keine
supering-value-days-apart = { $least } bis { $most } Tage Abstand
# Stands for a number of days that nobody stated.
supering-value-any = beliebig
supering-value-whole-time = die angegebene Wartezeit umfasst die ganze Zeit nach der Behandlung

# What must happen first. $earliest is one of the sentences on when it may come out.
supering-take-supers-off = Honigräume jetzt abnehmen (aufgesetzt seit { $since }); der Honig daraus darf nicht für den menschlichen Verzehr verwendet werden
supering-record-whereabouts = nach { $name } suchen und die Entnahme eintragen oder den Eintrag vom { $since } berichtigen und angeben, wohin die Streifen kamen
supering-dose-was-due = Gabe { $number } von { $of } geben, { $name }: war fällig bis { $by }
supering-dose-on = Gabe { $number } von { $of } geben, { $name }: am { $day }
supering-dose-from-by = Gabe { $number } von { $of } geben, { $name }: ab { $from }, bis { $by }
supering-dose-from = Gabe { $number } von { $of } geben, { $name }: ab { $from }
supering-dose-by = Gabe { $number } von { $of } geben, { $name }: bis { $by }
supering-dose-by-leaflet = Gabe { $number } von { $of } geben, { $name }: wie in der Packungsbeilage angegeben
supering-take-out = { $name } herausnehmen: { $earliest }
supering-take-out-by = { $name } herausnehmen: { $earliest }; muss bis { $latest } heraus sein
supering-take-out-late = { $name } herausnehmen: { $earliest }; musste bis { $latest } heraus sein
supering-no-least-stay = keine Mindestverweildauer angegeben
supering-earliest-not-known = ab wann, ist nicht bekannt, denn es ist nicht angegeben, { $lack }
supering-may-come-out = darf ab { $day } heraus
supering-not-before-tomorrow = nicht vor morgen, dem { $day }
supering-not-before = nicht vor dem { $day }, in { $days } Tagen
supering-earliest-under-brood = { $earliest } ({ $seen })
supering-earliest-turns-on-brood = { $earliest }; keine Brutkontrolle eingetragen, die zählt: { $absent } ohne Brut, { $present } mit Brut; bis eine eingetragen ist, gilt der spätere Tag
supering-wait-until-spent = { $name } abwarten: am { $spent } aufgebraucht; nichts muss herausgenommen werden
supering-wait-through = { $name } abwarten: sperrt den Honigraum bis einschließlich { $last }

# What is missing, and what the keeper is asked for. $lots are lots as the two last messages put them.
supering-brood-not-known = { $name }: ob Brut da ist; der früheste Tag ist { $absent } ohne Brut, { $present } mit Brut
supering-ask-arrival = eintragen, wann das Volk in den Betrieb kam
supering-ask-earlier-arrival = Eintrag { $entry } berichtigen, wenn das Volk schon früher hier war
supering-ask-former-keeper = den Vorbesitzer fragen, dann Eintrag { $entry } berichtigen
supering-ask-look-inside = in der Beute nachsehen: eine Entnahme eintragen oder Eintrag { $entry } berichtigen
supering-ask-where-strips-went = Eintrag { $entry } berichtigen und angeben, wohin die Streifen kamen
supering-ask-look-at-pack = Packung noch einmal prüfen, dann Eintrag { $entry }, nach dem nichts in der Beute bleibt, oder die Angabe einer Mindestverweildauer berichtigen
supering-ask-next-flow = die nächste Tracht dort eintragen, beobachtet oder erwartet
supering-ask-days-before-flow = in der Packungsbeilage von Posten { $lots } ablesen, wie viele Tage vor einer Tracht gemeint sind, oder Tierarzt oder Bezugsquelle fragen, und eintragen (0 nur, wenn die Anwendung unmittelbar vor einer Tracht erlaubt ist; nennt sie keine Zahl, nichts eintragen)
supering-ask-brood-between = eintragen, welche Brut zwischen dem { $from } und dem { $until } gesehen wurde, falls jemand nachgesehen hat
supering-ask-brood = Brut kontrollieren und eintragen
supering-ask-jurisdiction = das Rechtsgebiet des Betriebs eintragen, damit die dort geltenden Packungsbeilagen verwendet werden
supering-ask-pack = dieses Programm hat hier keine Packungsbeilage `{ $leaflet }`: eintragen, was auf der Packung steht
supering-ask-pack-or-near-leaflet = dieses Programm hat hier keine Packungsbeilage `{ $leaflet }`: `{ $near }` angeben oder eintragen, was auf der Packung steht
supering-ask-term = in der Packungsbeilage von Posten { $lots } ablesen und eintragen: { $term }
supering-ask-term-or-zero = in der Packungsbeilage von Posten { $lots } ablesen und eintragen, auch wenn es 0 ist: { $term }
supering-ask-stays = in der Packungsbeilage von Posten { $lots } ablesen und eintragen, wie lange es im Volk bleiben muss und bleiben darf
supering-lot = `{ $lot }`
supering-lots = { $lots } und Posten { $lot }

# The answer at a glance: a reason in a line, then what to do next. $said is a sentence on taking it out.
glance-at = { $colonies } am Bienenstand { $apiary }
glance-no-honey-before = vor dem { $day } darf kein Honig geerntet werden
glance-no-honey-yet = noch darf kein Honig geerntet werden; ab welchem Tag er geerntet werden darf, ist nicht bekannt
glance-still-in = { $name } noch im Volk
glance-came-with-unknown = nicht bekannt, welches Arzneimittel im Volk war, als die Aufzeichnungen über das Volk begannen
glance-whereabouts = { $name }: nicht angegeben, wohin es am { $since } kam
glance-not-known = { $name }: { $term } nicht bekannt
glance-not-documented = { $name }: { $term } nicht belegt
glance-withdrawal = Wartezeit nach { $name } bis einschließlich { $last }
glance-wait = Frist bis zum Honigraum nach { $name }: bis einschließlich { $last }
glance-supers-off = Honigräume jetzt abnehmen (aufgesetzt seit { $since })
glance-take-out-now = jetzt herausnehmen (war fällig bis { $by })
glance-take-out-on = am { $day } herausnehmen
glance-take-out-between = herausnehmen ab { $from }, bis { $by }
glance-take-out-by = herausnehmen bis { $by }
glance-take-out-from = herausnehmen ab { $from }
glance-take-out-by-leaflet = zum Zeitpunkt laut Packungsbeilage herausnehmen
glance-without-brood = { $said } (ohne Brut ab { $day })
glance-supers-from = ein Honigraum darf ab { $day } aufgesetzt werden
glance-then-supers = { $next }; Aufsetzen erlaubt ab { $day }
glance-both = { $one }; { $other }
glance-off-for-dose = zur nächsten Gabe wieder ab: { $dose }
glance-supers-once-out = { $next }; danach Aufsetzen erlaubt ab { $day }
glance-read-leaflet = Packungsbeilage { $lots } ablesen und eintragen
glance-ask-former-keeper = den Vorbesitzer fragen, dann den ersten Eintrag des Volkes berichtigen
glance-look-inside = in der Beute nachsehen, dann eine Entnahme eintragen oder berichtigen, wohin es kam
glance-where-strips-went = die Teilung oder Vereinigung berichtigen und angeben, wohin die Streifen kamen

## Due: what must or may be done

# Titles stand alone on a phone. $pack is a name on a pack, $name a course, $lots lots as due-lots puts them.
# A task in a line: $said is the title with its colonies.
due-brief-in = { $title }: { $colonies }
due-brief-overdue = { $said }, war fällig bis { $by }
due-brief-on = { $said }, am { $day }
due-brief-between = { $said }, { $from } bis { $by }
due-brief-from = { $said }, ab { $from }
due-brief-by = { $said }, bis { $by }
due-take-supers-off-title = Honigräume abnehmen
due-take-supers-off = Honigräume jetzt abnehmen: sie sind seit { $since } aufgesetzt und müssen abgenommen sein wegen { $courses }; der Honig daraus darf nicht für den menschlichen Verzehr verwendet werden
due-take-supers-off-for-dose-title = Honigräume vor der { $number }. Gabe abnehmen
due-take-supers-off-for-dose = Honigräume abnehmen, bevor { $name } zum { $number }. Mal gegeben wird: jetzt dürfen sie aufgesetzt sein, bei dieser Gabe nicht
due-courses = { $courses } und { $course }
due-find-carriers-title = Verbleib klären: { $pack }
due-record-end-title = Eintragen, was aus dem Arzneimittel im Volk wurde
due-record-end = { $name } war noch im Volk, als es am { $ended } abging, und niemand hat eingetragen, was daraus wurde: die Entnahme eintragen, spätestens mit dem Datum dieses Tages
due-give-dose-title = Gabe { $number } von { $of } geben: { $pack }
due-dose-by = Gabe { $number } von { $of } geben, { $name }: bis { $by }; der früheste Tag ist nicht angegeben
due-dose-by-leaflet = Gabe { $number } von { $of } geben, { $name }: zum Zeitpunkt laut Packungsbeilage; der Tag ist nicht angegeben
due-take-out-title = { $pack } herausnehmen
due-not-before = nicht vor dem { $day }
due-not-before-by-brood = ohne Brut nicht vor dem { $without }, mit Brut nicht vor dem { $with }; keine Brutkontrolle eingetragen, die zählt
due-used-up-title = { $pack } ist aufgebraucht
due-used-up = { $name } ist am { $day } aufgebraucht; nichts muss herausgenommen werden
due-supers-free-title = Ab diesem Tag darf ein Honigraum aufgesetzt werden
due-supers-free-if-out-title = Ab diesem Tag darf ein Honigraum aufgesetzt werden, wenn alles heraus ist
due-supers-free = erster freier Tag für den Honigraum nach { $name }: { $free }
due-supers-free-if-out = erster freier Tag für den Honigraum nach { $name }: { $free }, wenn am { $out } alles heraus ist
due-count-mites-title = Milben zählen nach der Behandlung
due-count-mites = Milben zählen, um zu sehen, ob { $name } gewirkt hat: 10 bis 14 Tage nach dem Ende am { $ended }, also { $from } bis { $by } (Empfehlung)
due-ask-former-keeper-title = Klären, welches Arzneimittel im Volk war
due-ask-former-keeper = den Vorbesitzer (vor dem { $since }) fragen, welches Arzneimittel im Volk war; dann den Eintrag dieses Tages berichtigen
due-read-leaflet-title = Packungsbeilage { $lots } ablesen
due-record-jurisdiction-title = Rechtsgebiet des Betriebs eintragen
due-look-inside-title = Nachsehen, ob es heraus ist
due-record-missing-title = Fehlendes eintragen
due-record-missing = { $name }: { $how }
# $said is the sentence before.
due-record-missing-and-terms = { $said }; außerdem: { $terms }
due-read-leaflet = { $name }: in der Packungsbeilage { $lots } ablesen und eintragen: { $terms }
# $said asks for terms, a period in days among them.
due-zero-included = { $said } (auch eine 0)
due-terms = { $terms } und { $term }
due-lots = { $count ->
    [0] zum Posten
    [one] zu Posten { $lots }
   *[other] zu den Posten { $lots }
}
due-last-day-title = Letzter Tag für Angebrochenes aus Posten { $lot }
due-last-day = { $lot }: Angebrochenes darf bis { $until } angewendet werden
due-lot-expires-title = Posten { $lot } läuft ab
due-lot-expires = { $lot } darf bis { $expiry } angewendet werden; danach entsorgen
due-dispose-title = Posten { $lot } entsorgen
due-dispose = { $lot } entsorgen: { $why }
due-lot-left = { $amount } { $pack } (Posten { $lot })
# Where the book of the lot does not come out.
due-lot-named = { $pack } (Posten { $lot })
due-complete-record-title = Aufzeichnungen ergänzen: Eintrag Nr. { $place }
due-complete-record = { $gap }: { $supply }

## Options: what else can be used here

options-notice = { $notice } Ein Arzneimittel wählt das Programm nicht für Sie aus.

# Where several things are named in a row.
options-and = { $one } und { $other }
options-from-to = { $from } bis { $to }
# The value of a rule, and what is found of it.
options-rule-and-fact = { $rule }: { $fact }

# What a leaflet speaks of, as it stands after "nothing of" and "read".
options-topic = { $topic ->
    [supers_during] Honigraum während der Behandlung
    [flow_during] Anwendung während der Tracht
    [flow_before] Anwendung unmittelbar vor der Tracht
    [withdrawal] Wartezeit
    [wait_after_removal] Frist bis zum Honigraum
    [harvest_during] Honigernte während der Behandlung
    [comb_rule] Waben
    [removal] Entnahme
    [stay_min] Mindestverweildauer
    [stay_max] Höchstverweildauer
    [doses] Gaben
    [courses_per_year] Zahl der Behandlungen in einem Jahr
    [courses_per_broodless_period] Zahl der Behandlungen in einer brutfreien Zeit
    [gap_between_courses] Abstand zwischen Behandlungen
    [season] Jahreszeit
    [timing] Zeitpunkt
    [temperature] Temperatur
    [brood] Brut
    [colony_size] Volksstärke
    [brood_boxes] Brutzargen
    [entrance] Flugloch
    [dose] Dosis
    [dose_cap] Höchstmenge für ein Volk
    [recipe] Mischanleitung
    [needs] benötigte Ausrüstung
    [not_with] Arzneimittel, die nicht zugleich im Volk sein dürfen
    [contraindication] Gegenanzeigen
    [class] Wirkstoffklasse
    [whole_apiary] Behandlung aller Völker des Bienenstands
    [user_safety] Vorsichtsmaßnahmen bei der Anwendung
    [after_opening] Haltbarkeit nach Anbruch
    [storage] Lagerung
   *[disposal] Entsorgung
}

options-counting = { $what ->
    [seams-of-bees] besetzte Wabengassen
    [bees] Bienen
    [brood-boxes] Brutzargen
   *[litres-of-hive] Liter Beutenvolumen
}
# The same with the number.
part-options-count = { $what ->
    [seams-of-bees] { $count ->
        [one] 1 besetzte Wabengasse
       *[other] { $count } besetzte Wabengassen
    }
    [bees] { $count ->
        [one] 1 Biene
       *[other] { $count } Bienen
    }
    [brood-boxes] { $count ->
        [one] 1 Brutzarge
       *[other] { $count } Brutzargen
    }
   *[litres-of-hive] { $count ->
        [one] 1 Liter Beutenvolumen
       *[other] { $count } Liter Beutenvolumen
    }
}

options-within = { $within ->
    [calendar-year] Kalenderjahr
    [twelve-months] zwölf Monate
    [year] Jahr
   *[time-without-brood] brutfreie Zeit
}

# Why a condition holds, is broken or is not known.

options-not-here = das Volk ist an diesem Tag nicht im Betrieb
options-here = das Volk ist im Betrieb
options-apiary-not-known = es ist nicht eingetragen, wo das Volk steht
options-moved = das Volk wurde am { $on } umgestellt: ab diesem Tag erneut fragen
options-has-directions = die Packungsbeilage gibt für diesen Tag Anweisungen
options-no-directions = für diesen Tag sind keine Anweisungen bekannt
options-not-stated = in der hier verwendeten Packungsbeilage steht nichts dazu: { $topic }
options-not-documented = { $confidence ->
    [second_hand] dies wäre erfüllt, aber der Wert wurde in einem anderen Text als dem Dokument dieses Landes gelesen
   *[unconfirmed] dies wäre erfüllt, aber niemand hat den Wert in einem Dokument gelesen
}
options-stay-not-documented = es wäre vor der Tracht heraus, aber dies wurde nicht in einem Dokument gelesen: { $lacks }
options-may-stay-longer = dies wäre für die angegebenen Tage erfüllt, aber dies wurde nicht in einem Dokument gelesen: { $lacks }
options-not-in-force = die Regel gilt an diesem Tag nicht
options-no-supers-on = kein Honigraum aufgesetzt
options-supers-on = { $value ->
    [off] Honigräume sind seit { $since } aufgesetzt
   *[on] Honigräume sind seit { $since } aufgesetzt und dürfen es sein
}
options-no-flow = keine Tracht eingetragen für die Zeit, in der es im Volk wäre
options-no-flow-until = keine Tracht, solange es im Volk wäre; die nächste beginnt frühestens am { $next }
options-in-flow = es wäre während der Tracht im Volk, die spätestens am { $from } beginnt
options-flow-without-end = die Tracht, die am { $from } begann, kann noch andauern: ihr Ende ist nicht eingetragen
options-perhaps-in-flow = es könnte während der Tracht im Volk sein, die zwischen dem { $early } und dem { $late } beginnt
options-flow-turns-on-brood = ohne Brut darf es am { $without } heraus, vor der Tracht; wird Brut gesehen, solange es im Volk ist, nicht vor dem { $with }
options-flow-before-stay-is-known = es ist nicht angegeben, { $lacks }; am { $from } kann eine Tracht beginnen, während es noch im Volk ist
options-right-before-flow = es wäre am { $out } heraus, unmittelbar vor der Tracht, die spätestens am { $from } beginnt
options-perhaps-before-flow = die Packungsbeilage verbietet die Anwendung unmittelbar vor einer Tracht, sagt aber nicht, wie viele Tage: es wäre am { $out } heraus, und die Tracht beginnt spätestens am { $from }
options-out-in-flow = es darf nicht unmittelbar vor einer Tracht angewendet werden: es wäre am { $out } heraus, und die Tracht, die am { $from } beginnen kann, kann danach noch andauern
options-perhaps-out-in-flow = die Packungsbeilage verbietet die Anwendung unmittelbar vor einer Tracht, nennt aber keine Zahl von Tagen: es wäre am { $out } heraus, und die Tracht, die am { $from } beginnen kann, kann danach noch andauern
options-no-flow-on-record-since = es darf nicht unmittelbar vor einer Tracht angewendet werden, und ab { $out }, dem Tag, an dem es heraus wäre, ist keine Tracht eingetragen
options-flows-not-recorded = für { $year } ist keine Tracht eingetragen
options-flow-allowed = es darf während einer Tracht angewendet werden
options-after-last-flow = die letzte eingetragene Tracht endete am { $last }, und kein Honigraum ist aufgesetzt
options-flow-still-to-come = die Tracht ab { $from } steht noch bevor oder ist noch nicht vorbei
options-already-in = `{ $medicine }`, eingelegt am { $placed }, ist im Volk
options-perhaps-in = `{ $medicine }`, eingelegt am { $placed }, kann bis dahin vorbei sein, ist aber nicht als heraus oder beendet eingetragen
options-perhaps-further-dose = eine weitere Gabe der am { $placed } begonnenen Behandlung mit `{ $medicine }` kann noch gegeben werden
options-came-with-unknown = niemand weiß, was das Volk bekommen hatte oder was darin war, als es am { $since } kam
options-beside-is-not-stated = `{ $medicine }`, eingelegt am { $placed }, ist im Volk, und keine Packungsbeilage sagt, ob beide zugleich im Volk sein dürfen
options-nothing-in = kein solches Arzneimittel ist im Volk
options-feeder = Futtergeschirr war aufgesetzt, gesehen am { $seen }
options-no-feeder = kein Futtergeschirr war aufgesetzt, gesehen am { $seen }
options-feeder-not-seen = es ist nicht eingetragen, ob ein Futtergeschirr aufgesetzt ist
options-brood-seen = { $brood ->
    [absent] keine Brut gesehen am { $on }
    [lowest] geringster Brutumfang gesehen am { $on }
   *[present] Brut gesehen am { $on }
}
options-brood-never-seen = keine Brutkontrolle eingetragen
options-brood-seen-too-long-ago = die Brut wurde zuletzt am { $last } kontrolliert, zu lange vor diesem Tag, um zu zählen
options-counted = { part-options-count } am { $on }
options-never-counted = keine Zählung eingetragen: { $what }
options-count-does-not-tell = { part-options-count } am { $on }, das zählt nicht für diesen Tag
options-courses-none-before = { $given } von höchstens { $most } Behandlungen je { $within }
options-courses = { $given } von höchstens { $most } Behandlungen je { $within }, die letzte begonnen am { $last }
options-courses-turn-on-year = { $in-calendar-year } von höchstens { $most } Behandlungen im Kalenderjahr, aber { $in-twelve-months } in zwölf Monaten; die Packungsbeilage sagt nicht, was zählt
options-no-brood-since = angewendet am { $last }, und seither keine Brut gesehen
options-not-looked-at-since = angewendet am { $last }, und seither wurde die Brut nicht kontrolliert
options-brood-since = angewendet am { $last }; danach wurde Brut gesehen, am { $seen }
options-no-course-before = keine frühere Behandlung damit zählt
options-since-last = die letzte Behandlung endete am { $ended }; Abstand bis zur nächsten mindestens { $days }
options-last-not-ended = für die am { $placed } begonnene Behandlung ist kein Ende eingetragen
options-in-season = innerhalb der vorgesehenen Jahreszeit, { $from } bis { $to }
options-outside-season = außerhalb der vorgesehenen Jahreszeit, { $from } bis { $to }
options-class-repeats = `{ $medicine }`, angewendet am { $placed }, gehört zur selben Wirkstoffklasse ({ $class }); ein Wechsel der Klasse bremst Resistenzen, schließt sie aber nicht aus
options-class-differs = keine der letzten beiden Behandlungen gehört zu seiner Wirkstoffklasse ({ $class })
options-class-not-known = die Wirkstoffklasse von `{ $medicine }`, angewendet am { $placed }, ist nicht bekannt

options-power-needed = { $need ->
    [battery] 12-V-Batterie
   *[mains] Netzstrom oder Stromerzeuger
}
# A fact of the site that the question itself gave.
options-assumed = { $fact } (wie in der Frage angenommen)
options-power = nötig: { $needed }; Stromanschluss dort: { $has ->
    [none] keiner
    [battery] Batterie
    [generator] Stromerzeuger
   *[mains] Netzstrom
}
options-power-not-known = nötig: { $needed }; der Stromanschluss dort ist nicht eingetragen
options-access = der Bienenstand ist { $access ->
    [vehicle] mit dem Fahrzeug
   *[on_foot] zu Fuß
} erreichbar
options-no-access = der Bienenstand ist am { $on } nicht erreichbar
options-access-not-known = es ist nicht eingetragen, ob der Bienenstand am { $on } erreichbar ist
options-ground = der Boden bei den Beuten ist { $ground ->
    [dry] trocken
    [wet] nass
   *[flooded] überschwemmt
}
options-ground-not-known = es ist nicht eingetragen, ob der Boden trocken ist

options-measure = { $measure ->
    [maximum] Tageshöchstwert
    [mean] Mittel über die Verweildauer
   *[some-moment] irgendwann am Tag
}
options-origin = { $origin ->
    [measured] gemessen
    [forecast] vorhergesagt
   *[usual-years] wie in einem üblichen Jahr
}
options-temperature = { $measure } { $value } °C, { $origin }
options-temperatures = { $measure } { $lowest } bis { $highest } °C, { $origin }
options-temperature-on = { $measure } { $value } °C am { $on }, { $origin }
options-no-temperature = für den { $first } ist keine Temperatur eingetragen
options-stay-not-known = es ist nicht angegeben, { $lacks }; darum ist nicht bekannt, welche Tage zählen
options-stay-not-known-at-all = es ist nicht angegeben, wie lange es im Volk bleibt; darum ist nicht bekannt, welche Tage zählen

# What giving it needs of the site.
options-need = { $need ->
    [battery] 12-V-Batterie
    [mains_or_generator] Netzstrom oder Stromerzeuger
    [dry_ground] trockener Boden bei den Beuten
   *[return_visit] späterer Standbesuch
}

# What would have to change for a condition that is broken.

options-change-here = das Volk müsste im Betrieb sein
options-change-supers-off = die seit { $since } aufgesetzten Honigräume abnehmen
options-change-long-before-flow = so früh beginnen, dass es lange vor dem { $from }, an dem die Tracht beginnen kann, heraus ist, oder nach der Tracht
options-change-before-flow = so früh beginnen, dass es vor dem { $from }, an dem die Tracht beginnen kann, heraus ist, oder nach der Tracht
options-change-after-harvest = bis nach der Ernte der Tracht ab { $from } warten
options-change-taken-out = warten, bis `{ $medicine }`, eingelegt am { $placed }, heraus darf, und es herausnehmen
options-change-feeder-off = Futtergeschirr abnehmen
options-change-brood = warten, bis Brut da ist
options-change-no-brood = eine brutfreie Zeit abwarten oder schaffen
options-change-fewer-boxes = Brutzargen abnehmen
options-change-stronger = das Volk erst verstärken oder vereinigen
options-change-next = den nächsten Zeitraum abwarten: { $within }
options-change-after = bis nach dem { $last } warten
options-change-season = die vorgesehene Jahreszeit abwarten, ab { $from }
options-change-power = { $need ->
    [battery] 12-V-Batterie mitbringen
   *[mains] dort für Netzstrom oder einen Stromerzeuger sorgen
}
options-change-reached = der Bienenstand müsste am { $on } erreichbar sein
options-change-dry-ground = warten, bis der Boden bei den Beuten trocken ist
options-change-weather = geeignetes Wetter abwarten
options-change-weather-than-on = besseres Wetter als am { $on } abwarten

# How to supply what is not known.

options-how-pack = lässt sich nicht eintragen: die Packungsbeilage der Packung befolgen
options-how-pack-or-own = lässt sich nicht eintragen: die Packungsbeilage der Packung befolgen oder eine eigene Packungsbeilage laden
options-how-year-is-counted = lässt sich nicht eintragen: Bezugsquelle oder Tierarzt fragen, wie das Jahr gezählt wird; bis dahin strenger zählen
options-how-brood-since = Brut kontrollieren und eintragen: Brut, die nach dem { $last } gesehen wird, beendet die brutfreie Zeit; wird keine gesehen, bleibt die Frage offen, außer die Brut wurde alle drei Wochen kontrolliert
options-how-brood-shows = vorher ist es nicht feststellbar: Kontrollen während der Behandlung zeigen es, und wird dann Brut gesehen, muss es länger im Volk bleiben
options-how-ask-with-ground = es hängt von der Annahme in der Frage ab: mit dem Boden fragen, wie er dann sein wird
options-how-next-dose = warten, bis die nächste Gabe nicht mehr gegeben werden kann, oder diese Gabe zuerst geben und eintragen
options-how-vet-or-another-day = Tierarzt fragen, ob beide am selben Tag angewendet werden dürfen, oder an einem anderen Tag beginnen
options-how-ask-from = für die Tage ab { $day } erneut fragen
options-how-ask-once-apiary-is-known = für Tage erneut fragen, für die eingetragen ist, wo das Volk steht
options-how-look-after-parting = eine Kontrolle am Tag der Teilung oder Vereinigung des Volkes zählt nicht: am Tag danach { $look } und für die Tage von da an erneut fragen
options-how-was-in-until = es war bis { $out } im Volk: für Tage ab diesem Tag fragen oder den Tag berichtigen, wenn er falsch ist
options-how-later-dose = am { $given } wurde davon eine spätere Gabe gegeben: für Tage danach fragen oder diese Gabe berichtigen, wenn sie falsch ist
options-look = { $look ->
    [brood] Brut kontrollieren
    [feeder] nach einem Futtergeschirr sehen
   *[count] { $what } zählen
}
options-how-look-on = Volk { $colony }: am { $day } { $look } und eintragen
options-how-look-between = Volk { $colony }: zwischen dem { $from } und dem { $to } { $look } und eintragen
options-those-days = diese Tage
options-how-temperatures = gemessene Temperaturen für { $days } eintragen oder die Vorhersage, sobald sie diese Tage abdeckt; übliche Monatswerte zeigen, was zu erwarten ist
options-how-flows-of = die dort für { $year } erwarteten Trachten eintragen: früh, üblich und spät
options-how-next-flow = die dort ab { $from } erwartete nächste Tracht eintragen: früh, üblich und spät
options-how-flow-seen = Tracht { $forage } als beobachtet eintragen, sobald sie begonnen hat, mit dem ersten Tag, und mit dem letzten Tag, wenn sie vorbei ist
options-how-site = { $fact ->
    [power] Stromanschluss dort
    [access] Erreichbarkeit des Bienenstands
   *[ground] Zustand des Bodens bei den Beuten
} für den { $on } eintragen oder in der Frage angeben
options-how-take-out = was am { $placed } eingelegt wurde, herausnehmen und die Entnahme eintragen, spätestens am { $by }
options-how-ask-or-take-out = Tierarzt fragen, ob beide zugleich im Volk sein dürfen, oder herausnehmen, was am { $placed } eingelegt wurde, und die Entnahme eintragen, spätestens am { $by }
options-how-came-with = den Vorbesitzer fragen, dann Eintrag { $entry } berichtigen
options-how-leaflet-of-medicine = die Packungsbeilage dieses Arzneimittels angeben, damit seine Wirkstoffklasse bekannt ist
# $lots are the names of the lots, $count how many.
options-how-read = { $count ->
    [0] kein Posten davon im Vorrat: sobald einer da ist, in seiner Packungsbeilage ablesen und eintragen: { $what }
    [one] in der Packungsbeilage von Posten { $lots } ablesen und eintragen: { $what }
   *[other] in der Packungsbeilage jedes Postens ({ $lots }) ablesen und eintragen: { $what }
}
# $confirmation is what stands in the entry.
options-how-confirm = { $count ->
    [0] kein Posten davon im Vorrat: sobald einer da ist, prüfen, ob seine Packungsbeilage dasselbe sagt; wenn ja, mit leeren `terms` eintragen, in `confirms`: { $confirmation }
    [one] prüfen, ob die Packungsbeilage von Posten { $lots } dasselbe sagt; wenn ja, mit leeren `terms` eintragen, in `confirms`: { $confirmation }
   *[other] prüfen, ob die Packungsbeilage jedes Postens ({ $lots }) dasselbe sagt; wenn ja, mit leeren `terms` eintragen, in `confirms`: { $confirmation }
}

options-no-jurisdiction = das Rechtsgebiet, dessen Packungsbeilagen für diesen Betrieb gelten
options-how-jurisdiction = das Rechtsgebiet des Betriebs eintragen, damit die dort geltenden Packungsbeilagen verwendet werden
options-no-leaflets-of = dieses Programm hat keine Packungsbeilagen für das Rechtsgebiet `{ $jurisdiction }`
options-how-leaflets-of = das Rechtsgebiet berichtigen oder eigene Packungsbeilagen laden

# Doses, and why one is not known.

options-dose-not-counted = { $what ->
    [seams-of-bees] Dosis: wie viele besetzte Wabengassen es sind
    [bees] Dosis: wie viele Bienen es sind, geschätzt
    [brood-boxes] Dosis: wie viele Brutzargen es sind
   *[litres-of-hive] Dosis: wie viele Liter die Beute fasst
}
options-dose-not-stated = Dosis: die Packungsbeilage hier gibt keine an
options-dose-not-for-this-size = Dosis: die Packungsbeilage hier gibt für ein Volk dieser Größe keine an
options-dose-one-of = Dosis: aus den Einträgen geht nicht hervor, welche davon gilt: { $doses }
options-dose-other-unit = { $unit ->
    [strip] Dosis: wie viele Streifen es sind
    [tray] Dosis: wie viele Schalen es sind
    [tablet] Dosis: wie viele Tabletten es sind
    [wafer] Dosis: wie viele Plättchen es sind
    [piece] Dosis: wie viele Stück es sind
   *[other] Dosis: wie viel { $unit } es sind
}; die Packungsbeilage rechnet in { $counted-in ->
    [strip] Streifen
    [tray] Schalen
    [tablet] Tabletten
    [wafer] Plättchen
    [piece] Stück
   *[other] { $counted-in }
}
options-dose-count-not-stated = Behandlung: die Zahl der Gaben ist nicht angegeben
options-how-count = zählen und eintragen
options-how-read-amount = lässt sich nicht eintragen: die Menge auf der Packung ablesen oder Bezugsquelle oder Tierarzt fragen
options-how-read-doses = in der Packungsbeilage des Postens ablesen, wie viele Gaben zu einer Behandlung gehören, und eintragen
# Something with the condition under which it holds, in the words of the leaflet.
options-under-condition = { $what } ({ $condition })

options-seams = { $count ->
    [one] { $count } besetzte Wabengasse
   *[other] { $count } besetzte Wabengassen
}
options-dose-sum = { $amount } { $base }
# For what the leaflet states the amount, as it stands behind it.
options-base-hive = für die Beute
options-base-bees = für { $count } Bienen
options-base-brood-boxes = { $count ->
    [one] x { $count } Brutzarge
   *[other] x { $count } Brutzargen
}
options-base-seams = x { $seams }
options-base-frames = x { $seams }, für je { $frames } oder einen Teil davon
options-base-comb-sides = x 2 Wabenseiten je Gasse, { $seams }
options-base-litres = { $count ->
    [one] x { $count } Liter Beutenvolumen
   *[other] x { $count } Liter Beutenvolumen
}
options-dose-sum-comes-to = { $sum } = { $exact }
options-dose-sum-capped = { $sum }, begrenzt auf { $each }
options-dose-sum-rounded-up = { $sum }, aufgerundet auf { $each }

# What a start means for supers.

options-supers-all-along = Honigräume dürfen die ganze Zeit aufgesetzt sein
options-supers-all-along-no-harvest = Honigräume dürfen die ganze Zeit aufgesetzt sein, aber solange es im Volk ist, darf kein Honig geerntet werden
options-supers-from = ein Honigraum darf ab { $day } aufgesetzt werden
options-supers-from-if-out-early = ein Honigraum darf ab { $day } aufgesetzt werden, wenn es am frühesten Tag herausgenommen wird
options-supers-others-not-known = es ist nicht bekannt, wann ein Honigraum aufgesetzt werden darf, wegen dessen, was schon im Volk ist oder früher gegeben wurde
options-supers-stay-not-known = es ist nicht angegeben, wie lange es im Volk bleiben muss oder wie viele Gaben es wann gibt; darum ist kein erster freier Tag bekannt
options-supers-periods-not-known = Wartezeit oder Frist bis zum Honigraum ist nicht geklärt: in der Packungsbeilage des Postens ablesen

# Visits.

options-visit-dose = { $placed ->
    [yes] Gabe { $number } einlegen
   *[no] Gabe { $number } geben
}
options-visit-only-dose = { $placed ->
    [yes] einlegen
   *[no] geben
}
options-visit-wait-not-stated = { $what }; wie lange damit zu warten ist, ist nicht angegeben
options-visit-see-further-doses = in der Packungsbeilage nachsehen, ob weitere Gaben folgen und wann
options-visit-take-out = herausnehmen
options-visit-take-out-at-some-time = herausnehmen; keine Mindestverweildauer angegeben
options-visit-take-out-after-last-dose = herausnehmen; wie lange nach der letzten Gabe, ist nicht bekannt
options-visit-see-removal = in der Packungsbeilage nachsehen, ob es herausgenommen werden muss

# Why an option stands where it stands in the list.

options-order-answer = { $answer ->
    [usable] an einem der Tage anwendbar
    [unknown] für keinen Tag steht fest, dass es anwendbar ist
   *[ruled-out] an jedem Tag ausgeschlossen
}
options-order-class = { $state ->
    [met] andere Wirkstoffklasse als die letzten beiden Behandlungen
    [broken] gleiche Wirkstoffklasse wie eine der letzten beiden Behandlungen
   *[unknown] nicht bekannt, ob die Wirkstoffklasse sich von den letzten beiden Behandlungen unterscheidet
}
options-order-out-before-flow = vor der nächsten Tracht heraus, wenn am ersten Tag begonnen
options-order-not-out-before-flow = vor der nächsten Tracht nicht heraus, wenn am ersten Tag begonnen
options-order-before-flow-not-known = nicht bekannt, ob es vor der nächsten Tracht heraus ist
options-order-visits = { $count ->
    [one] 1 Standbesuch
   *[other] { $count } Standbesuche
}
options-order-visits-at-least = Zahl der Standbesuche nicht bekannt, mindestens { $count }
options-order-visits-not-known = Zahl der Standbesuche nicht bekannt

# What to carry and to see to.

options-carry-medicine = das Arzneimittel in seiner Packung mit Packungsbeilage und die Schutzausrüstung, die die Vorsichtsmaßnahmen verlangen
options-carry-kit = die Ausrüstung zum Anwenden, die sich zu Fuß hintragen lässt
options-carry-battery = Verdampfer und 12-V-Autobatterie mit mehr als 40 Ah, etwa 12 kg
options-carry-device = das Gerät und, wo es keinen Netzstrom gibt, ein Stromerzeuger
options-carry-tools = Smoker und Stockmeißel: die Beute wird geöffnet
options-advice = Empfehlung: { $text }
options-caution-flooded = überschwemmter Boden: das Arzneimittel und alles, was aus der Beute kommt, vom Wasser fernhalten und dort nichts lagern
options-caution-pack = die Vorsichtsmaßnahmen auf der Packung befolgen

## Leaflets: what a rule says

leaflet-supers-during = { $value ->
    [off] kein Honigraum erlaubt, solange es im Volk ist
    [on] Honigraum darf aufgesetzt sein, solange es im Volk ist
   *[on_no_harvest] Honigraum darf aufgesetzt sein, solange es im Volk ist, währenddessen keine Honigernte
}
leaflet-flow-during = { $value ->
    [forbidden] nicht in einer Tracht
   *[allowed] darf in einer Tracht angewendet werden
}
leaflet-harvest-during = { $value ->
    [forbidden] keine Honigernte, solange es im Volk ist
   *[allowed] Honig darf geerntet werden, solange es im Volk ist
}
leaflet-flow-before = nicht unmittelbar vor einer Tracht
leaflet-flow-before-days = vor einer Tracht { $days } lang nicht anwenden
leaflet-no-withdrawal = keine Wartezeit laut Etikett
leaflet-withdrawal = Wartezeit { $days }
leaflet-wait-after-removal = { $days } von der Entnahme bis zum Honigraum
leaflet-removal = { $value ->
    [needed] Entnahme nötig
    [not_needed] Entnahme nicht nötig
   *[nothing_stays] keine Entnahme, es bleibt nichts im Volk
}
leaflet-stay-min = { $brood ->
    [any] mindestens { $days }
    [absent_or_lowest] mindestens { $days }, brutfrei oder bei geringstem Brutumfang
   *[present] mindestens { $days }, mit Brut
}
leaflet-stay-max = { $brood ->
    [any] höchstens { $days }
    [absent_or_lowest] höchstens { $days }, brutfrei oder bei geringstem Brutumfang
   *[present] höchstens { $days }, mit Brut
}
leaflet-doses = { $count ->
    [one] 1 Gabe
   *[other] { $count } Gaben
}
leaflet-doses-range = { $count } bis { $most } Gaben
leaflet-doses-apart = { $doses }, Abstand { $days }
leaflet-doses-apart-range = { $doses }, Abstand { $least } bis { $days }
leaflet-doses-apart-at-least = { $doses }, Abstand mindestens { $days }
leaflet-doses-apart-at-most = { $doses }, Abstand höchstens { $days }
leaflet-courses = { $count ->
    [one] 1 Behandlung
   *[other] { $count } Behandlungen
}
leaflet-courses-per-year = { $counted ->
    [calendar_year] höchstens { $courses } im Kalenderjahr
    [twelve_months] höchstens { $courses } in zwölf Monaten
   *[not_said] höchstens { $courses } im Jahr
}
leaflet-courses-per-broodless-period = höchstens { $courses } je brutfreie Zeit
leaflet-gap-between-courses = mindestens { $days } zwischen zwei Behandlungen
leaflet-season = nur von { $from } bis { $to } eines Jahres
leaflet-timing = nur nach der letzten Ernte des Jahres
# $bounds is one of the four that follow.
leaflet-temperature = { $window ->
    [maximum_on_placing_day] Höchsttemperatur am Tag des Einlegens { $bounds }
    [maximum_in_first_days] Höchsttemperatur { $days ->
        [one] am ersten Tag
       *[other] an jedem der ersten { $days } Tage
    } { $bounds }
    [maximum_over_stay] Höchsttemperatur an jedem Tag der Verweildauer { $bounds }
    [mean_over_stay] mittlere Temperatur über die Verweildauer { $bounds }
    [at_use] Außentemperatur bei der Anwendung { $bounds }
   *[product] Temperatur des Arzneimittels { $bounds }
}
leaflet-bounds-both = { $min } bis { $max } °C
leaflet-bounds-min = mindestens { $min } °C
leaflet-bounds-max = höchstens { $max } °C
leaflet-bounds-none = ohne Grenzen
leaflet-brood = { $value ->
    [absent] brutfrei
    [lowest] geringster Brutumfang
   *[present] mit Brut
}
leaflet-brood-frames = { $frames ->
    [one] mindestens 1 mit Bienen besetzte Brutwabe
   *[other] mindestens { $frames } mit Bienen besetzte Brutwaben
}
leaflet-bees = mindestens { $bees } Bienen
leaflet-brood-boxes = { $max ->
    [one] nur bei einer einzigen Brutzarge
   *[other] nur bei höchstens { $max } Brutzargen
}
leaflet-range = { $least } bis { $most }
leaflet-dose = { $amount } { $per }
# Put behind a dose, in the words of the leaflet.
leaflet-when = { $says } ({ $when })
leaflet-per = { $per ->
    [hive] je Beute
    [brood_box] je Brutzarge
    [frames_of_bees] { $frames ->
        [one] je angefangene mit Bienen besetzte Wabe
       *[other] je angefangene { $frames } mit Bienen besetzte Waben
    }
    [seam] je besetzte Wabengasse
    [small_colony] für ein kleines Volk
    [comb_side] je Seite einer besetzten Wabe
   *[litre_of_hive] je Liter Beutenvolumen
}
leaflet-per-bees = für { $least } bis { $most } Bienen
leaflet-per-bees-at-least = ab { $least } Bienen
leaflet-per-bees-at-most = für höchstens { $most } Bienen
leaflet-per-colony = für ein Volk
leaflet-dose-cap = höchstens { $amount } { $unit ->
    [strip] Streifen
    [tray] Schale(n)
    [tablet] Tablette(n)
    [wafer] Plättchen
    [piece] Stück
   *[other] { $unit }
} in einem Volk
leaflet-recipe = { $parts } ergeben { $ml } ml
leaflet-recipe-medicine = { $amount } { $unit ->
    [strip] Streifen
    [tray] Schale(n)
    [tablet] Tablette(n)
    [wafer] Plättchen
    [piece] Stück
   *[other] { $unit }
}
leaflet-recipe-water = { $ml } ml Wasser
leaflet-recipe-sugar = { $g } g Zucker
leaflet-need = { $need ->
    [mains_or_generator] Netzstrom oder Stromerzeuger
    [battery] Batterie
    [carry_in_kit] Hintragen der Ausrüstung
    [hive_opened] Öffnen der Beute
    [return_visit] weiterer Standbesuch
   *[dry_ground] trockener Boden
}

## Gaps: what is missing from the legal record

# The row that a gap is about; its sentence begins with it.
gaps-about-medicine = Arzneimittel { $medicine }
gaps-about-acquisition = Posten { $lot }, { $medicine }, erworben am { $on }
gaps-about-vet-lot = Posten { $lot }, { $medicine }, aus dem eigenen Vorrat des Tierarztes, eingetragen für { $on }
gaps-about-administration = { $medicine }, gegeben am { $on }, bei { $colonies }
gaps-about-disposal = { $amount } aus Posten { $lot }, entsorgt am { $on }
# Stands in place of their names where there are more than a few.
gaps-many-colonies = { $colonies } Völkern

gaps-not-recorded = { $about }: { $field ->
    [proof_of_purchase] { law-field }
    [prescriber] { law-field }
    [route] { law-field }
    [colonies] { law-field }
    [disposal_how_and_where] { law-field }
   *[other] { law-field }
} nicht eingetragen
gaps-withdrawal-not-recorded = { $about }: Wartezeit nicht eingetragen
gaps-withdrawal-said-by-leaflet = { $about }: Wartezeit nicht eingetragen; die hinterlegte Packungsbeilage gibt { $days } an, aber das ist kein eigener Eintrag
gaps-end-not-known = { $about }: { law-field } nicht bekannt
gaps-end-lost = { $about }: { law-field } nicht bekannt: nicht eingetragen ist, was in { $colonies } daraus geworden ist
gaps-end-late = { $about }: { law-field } nicht bekannt: es musste heraus sein, aber keine Entnahme aus { $colonies } ist eingetragen
gaps-written-late = { $about }: { $days } später eingetragen; rechtlich vorgeschrieben ist die Eintragung { $within ->
    [0] am selben Tag
    [one] binnen eines Tages
   *[other] binnen { $within } Tagen
}
gaps-medicine-authorisation = { $medicine }: keine Zulassungsnummer eingetragen; nur ein zugelassenes Arzneimittel darf angewendet werden
gaps-medicine-leaflet = { $medicine }: für das Rechtsgebiet des Betriebs gibt es keine Packungsbeilage `{ $leaflet }`; ist das Arzneimittel dort zugelassen?
gaps-medicine-directions = { $medicine }: weder eine Packungsbeilage noch Angaben daraus sind eingetragen, daher ist nicht bekannt, wie es angewendet werden muss
gaps-prescribed-after = { $about }: Verschreibung { $number } wurde erst am { $on } ausgestellt
gaps-prescribed-later = { $about }: Verschreibung { $number } wurde erst später ausgestellt
gaps-same-dose-twice = { $about }: Eintrag { $earlier } enthält am selben Tag eine Gabe aus demselben Posten für { $colonies }
gaps-vet-lot-not-given = { $about }: kein Eintrag besagt, dass etwas davon gegeben wurde
gaps-use-after-expiry = { $about }: Posten { $lot } war am { $expiry } abgelaufen
gaps-past-life-in-use = { $about }: was am { $opened } von Posten { $lot } angebrochen wurde, war bis { $until } zu verbrauchen: { $says }
gaps-past-life-in-use-not-documented = { $about }: was am { $opened } von Posten { $lot } angebrochen wurde, war bis { $until } zu verbrauchen (nicht belegt: auf der Packung nachsehen): { $says }
gaps-whereabouts = { $about }: seit { $since } ist nicht eingetragen, ob es noch in { $colonies } ist
gaps-removal-late = { $about }: es musste bis { $by } aus { $colonies } heraus sein, und keine Entnahme ist eingetragen
gaps-removal-not-recorded = { $about }: keine Entnahme aus { $colonies } eingetragen, und niemand hat angegeben, wie lange es bleiben darf
gaps-document-not-kept = { $about }: `{ $file }` ist angehängt, aber der Inhalt fehlt oder ist verändert
gaps-nameless-document-not-kept = { $about }: ein Dokument ist angehängt, aber sein Inhalt fehlt oder ist verändert
gaps-no-document = { $about }: kein Dokument angehängt
gaps-no-document-but-words = { $about }: keine Kopie des Nachweises angehängt (er ist nur in Worten beschrieben)
gaps-expiry-not-told = { $about }: ohne Verfalldatum ist nicht bekannt, ob es rechtzeitig angewendet wurde
gaps-expired-when-acquired = { $about }: es war schon am { $expiry } abgelaufen
# { $sum } is the sum of the lot: what was acquired, given and disposed of.
gaps-more-gone = Posten { $lot }: { $sum }, { $amount } mehr als erworben
gaps-count-corrected = Posten { $lot }: Bestand nach Zählung berichtigt, die Bestandsrechnung beruht also auf einer Zählung

# How to supply what is missing.
gaps-supply-correct-entry = Eintrag Nr. { $place } berichtigen und ergänzen: { law-field }
gaps-supply-correct-each = jeden dieser Einträge berichtigen und ergänzen: { law-field }
gaps-supply-withdrawal-days-each = jeden dieser Einträge berichtigen und die Tage angeben, die auf der Packung stehen, auch wenn es 0 sind; oder eintragen, was die Packungsbeilage angibt
gaps-supply-describe-medicine = Beschreibung des Arzneimittels berichtigen: Name auf der Packung, Zulassungsnummer, Packungsbeilage
gaps-supply-prove-purchase = Rechnung oder Quittung an den Posten anhängen; oder den Erwerb berichtigen und angeben, was der Nachweis ist und wo er aufbewahrt wird
gaps-supply-attach-prescription = Kopie an die Verschreibung anhängen
gaps-supply-reach-of-lots-vet = Eintrag Nr. { $place } berichtigen und Kontaktangaben des Tierarztes ergänzen
gaps-supply-record-what-vet-gave = eintragen, was der Tierarzt gegeben hat: wann, wie viel und welchen Völkern; oder diesen Posten streichen
gaps-supply-reach-of-vet = Verschreibung berichtigen und Kontaktangaben des Tierarztes ergänzen
gaps-supply-who-dispensed-or-gave = Eintrag Nr. { $place } berichtigen und angeben, wer es gegeben hat; oder die Bezugsquelle des Postens nennen; oder, wenn ein Tierarzt es verschrieben hat, die Verschreibung eintragen
gaps-supply-who-dispensed-or-gave-each = diese Einträge berichtigen und angeben, wer es gegeben hat; oder die Bezugsquelle des Postens nennen; oder, wenn ein Tierarzt es verschrieben hat, die Verschreibung eintragen
gaps-supply-withdrawal-days = Eintrag Nr. { $place } berichtigen und die Tage angeben, die auf der Packung stehen, auch wenn es 0 sind; oder eintragen, was die Packungsbeilage angibt
gaps-supply-removal = Entnahme eintragen, mit dem Tag, an dem es herauskam
gaps-supply-removal-and-withdrawal = Entnahme eintragen und dazu die Wartezeit, die auf der Packung steht
gaps-supply-keeper-address = Angaben zum Betrieb eintragen, mit der Anschrift des Tierhalters
gaps-supply-nothing-mends = das lässt sich nicht mehr beheben; das Register zeigt, wann es eingetragen wurde
gaps-supply-read-on-pack = auf der Packung nachsehen und die Beschreibung des Arzneimittels berichtigen
gaps-supply-check-authorisation = Zulassung auf der Packung prüfen; die Packungsbeilage berichtigen oder eine eigene hinzufügen
gaps-supply-point-to-directions = Beschreibung berichtigen: eine Packungsbeilage nennen oder die Angaben machen, die auf der Packung stehen
gaps-supply-stays-on-record = es bleibt eingetragen; den Eintrag nur berichtigen, wenn er falsch ist
gaps-supply-strike-one-out = wurde es einmal gegeben: einen der beiden Einträge streichen; wurde es zweimal gegeben: beide berichtigen und die Uhrzeit angeben
gaps-supply-perhaps-another-pack = in Ordnung, wenn es aus einer später angebrochenen Packung kam; wenn nicht, den Rest nicht anwenden
gaps-supply-look-where-it-is = in der Beute nachsehen und die Entnahme oder den Verbleib eintragen
gaps-supply-take-out = herausnehmen und die Entnahme eintragen; kam es früher heraus, mit jenem Tag eintragen
gaps-supply-look-or-read-stay = in der Beute nachsehen und die Entnahme eintragen; oder in der Packungsbeilage ablesen, wie lange es bleiben darf
gaps-supply-attach-again = dieselbe Datei noch einmal anhängen; `verify` nennt jedes solche Dokument
gaps-supply-attach-invoice = Foto oder Scan der Rechnung an den Posten anhängen
gaps-supply-read-expiry = auf der Packung ablesen und den Erwerb berichtigen
gaps-supply-count-again = nachzählen und den falschen Eintrag berichtigen
gaps-supply-explain-difference = die Abweichung in einer Berichtigung erklären, falls sich die Ursache findet

# A place in a law: the title of the text, and where in it.
gaps-law-place = { $title }, { $locator }

# The answer in a few sentences.
gaps-complete = Von { $from } bis { $to } ist alles eingetragen, was das Recht vorschreibt.
gaps-nothing-recorded = Von { $from } bis { $to } ist nichts eingetragen; das beweist nicht, dass nichts gegeben wurde.
gaps-completeness-not-known = Von { $from } bis { $to } ist nicht bekannt, ob die Aufzeichnungen vollständig sind.
gaps-incomplete = { $count ->
    [one] Von { $from } bis { $to } fehlt 1 Angabe, die das Recht vorschreibt.
   *[other] Von { $from } bis { $to } fehlen { $count } Angaben, die das Recht vorschreibt.
}
gaps-copied = { $count ->
    [one] 1 Eintrag wurde
   *[other] { $count } Einträge wurden
} übertragen (aus: { $what }, dort eingetragen von { $first } bis { $last }): Die Vorlage so lange aufbewahren wie diese Aufzeichnungen; sie entstand zur Zeit des Geschehens.
gaps-copied-one-day = { $count ->
    [one] 1 Eintrag wurde
   *[other] { $count } Einträge wurden
} übertragen (aus: { $what }, dort eingetragen am { $day }): Die Vorlage so lange aufbewahren wie diese Aufzeichnungen; sie entstand zur Zeit des Geschehens.
gaps-count-irregular = { $count ->
    [one] Es gibt 1 Unregelmäßigkeit.
   *[other] Es gibt { $count } Unregelmäßigkeiten.
}
gaps-count-where-applicable = { $count ->
    [one] 1 Angabe fehlt, falls sie zutrifft.
   *[other] { $count } Angaben fehlen, falls sie zutreffen.
}
gaps-count-advised = { $count ->
    [one] 1 empfohlene Angabe fehlt.
   *[other] { $count } empfohlene Angaben fehlen.
}
gaps-in-archive = { $count ->
    [one] 1 Eintrag aus dieser Zeit wurde nicht geprüft: Er wurde am { $on } in ein Archiv verschoben (Eintrag { $entry }).
   *[other] { $count } Einträge aus dieser Zeit wurden nicht geprüft: Sie wurden am { $on } in ein Archiv verschoben (Eintrag { $entry }).
} Auf der Befehlszeile wird mit --with-archive alles aus der Archivdatei wieder eingelesen.
gaps-law-not-said = Die rechtlichen Vorgaben konnten nicht geprüft werden: Das Rechtsgebiet, dessen Recht gilt, ist nicht eingetragen.
gaps-law-not-known = Die rechtlichen Vorgaben konnten nicht geprüft werden: Für das Rechtsgebiet `{ $jurisdiction }` ist hier kein Recht bekannt.
gaps-law-not-in-force = Die rechtlichen Vorgaben konnten nicht geprüft werden: Kein hier bekanntes Recht für das Rechtsgebiet `{ $jurisdiction }` war in Kraft { $count ->
    [one] am { $first }
    [2] am { $first } und am { $last }
   *[other] an { $count } der geprüften Tage, zuerst am { $first }, zuletzt am { $last }
}.
gaps-law-of-union-only = Die rechtlichen Vorgaben konnten nicht geprüft werden: Vom Recht für das Rechtsgebiet `{ $jurisdiction }` ist hier nur der Teil der Union bekannt.
gaps-no-prescription = Es ist keine Verschreibung genannt: Wenn ein Tierarzt ein Arzneimittel verschrieben hat, die Verschreibung eintragen und eine Kopie anhängen.

## Retention: until when records must be kept

# Why the end of keeping is not known, or may yet move. In round brackets stands the kind of entry that would settle it.
retention-jurisdiction-not-recorded = das Rechtsgebiet, dessen Vorschriften gelten, ist nicht eingetragen (holding_details)
retention-law-not-built-in = für das Rechtsgebiet `{ $jurisdiction }` ist kein Recht eingebaut, daher ist die Aufbewahrungsfrist nicht bekannt
retention-unions-part-only = vom Recht für das Rechtsgebiet `{ $jurisdiction }` ist hier nur der Teil der Union bekannt
retention-rules-begin = die hier bekannten Vorschriften für das Rechtsgebiet `{ $jurisdiction }` beginnen am { $from }
retention-rules-ended = die hier bekannten Vorschriften für das Rechtsgebiet `{ $jurisdiction }` endeten am { $until }
retention-no-rule = keine hier bekannte Vorschrift sagt, wie lange solche Aufzeichnungen aufbewahrt werden müssen
retention-law-not-read = das Recht für das Rechtsgebiet `{ $jurisdiction }` ist hierzu nur { $confidence ->
    [second_hand] aus zweiter Hand
   *[unconfirmed] aus dem Gedächtnis
} bekannt, und sein Wortlaut kann mehr verlangen (nachlesen)
retention-left = Posten { $lot }: noch { $amount } übrig laut Einträgen, daher kann sich die Aufbewahrungsfrist noch verschieben (Anwendung oder Entsorgung eintragen)
retention-more-gone = Posten { $lot }: Abgang um { $amount } größer als Zugang, daher kann sich die Aufbewahrungsfrist noch verschieben (den falschen Eintrag berichtigen)
retention-not-out = Posten { $lot }: keine Entnahme aus { $colonies } eingetragen (Entnahme eintragen)
retention-perhaps-not-out = Posten { $lot }: nicht bekannt, ob es aus { $colonies } herausgenommen werden muss (Angabe der Packungsbeilage oder Entnahme eintragen)

# The rule that decided.
retention-by-law = { $years ->
    [one] 1 Jahr ab { $from } ({ law-counted-from }), rechtlich vorgeschrieben ({ part-jurisdiction })
   *[other] { $years } Jahre ab { $from } ({ law-counted-from }), rechtlich vorgeschrieben ({ part-jurisdiction })
}
retention-by-scheme = { $years ->
    [one] 1 Jahr ab { $from } ({ law-counted-from }), nach einem Qualitätsprogramm oder einer Empfehlung ({ part-jurisdiction })
   *[other] { $years } Jahre ab { $from } ({ law-counted-from }), nach einem Qualitätsprogramm oder einer Empfehlung ({ part-jurisdiction })
}

# Why records of a lot stay although the law would let them go.
retention-supering-turns = davon hängt ab, ob bei Volk { $colony } ein Honigraum aufgesetzt werden darf

## Stock: what is left, what to dispose of

stock-sum = { $acquired } erworben = { $given } gegeben + { $disposed } entsorgt + { $left } übrig
stock-sum-too-many = { $acquired } erworben, aber { $given } gegeben + { $disposed } entsorgt: { $over } zu viel

# How a lot stands: these are joined by semicolons.
stock-overdrawn = mehr Abgang als Zugang: nachzählen
stock-empty = leer
# The same in few words.
stock-brief-expires = läuft am { $expiry } ab
stock-brief-past-use = angebrochen; war bis { $until } zu verbrauchen
stock-brief-past-use-no-day = vor zu langer Zeit angebrochen
stock-brief-in-use = in Gebrauch
stock-brief-in-use-until = in Gebrauch, bis { $until }
stock-expired = abgelaufen am { $expiry }
stock-sealed = ungeöffnet
# { $since } is one of these two.
stock-opened = angebrochen am { $on }
stock-first-given = erstmals gegeben am { $on }, seither also angebrochen
stock-in-use = in Gebrauch: { $since }
stock-in-use-until = in Gebrauch: { $since }; bis { $until } verbrauchen
stock-in-use-until-not-documented = in Gebrauch: { $since }; bis { $until } verbrauchen (nicht belegt: auf der Packung nachsehen)
stock-past-use = { $since }; was angebrochen wurde, war bis { $until } zu verbrauchen
stock-past-use-not-documented = { $since }; was angebrochen wurde, war bis { $until } zu verbrauchen (nicht belegt: auf der Packung nachsehen)
stock-expires = { $days ->
    [0] läuft am { $expiry } ab, also heute
    [1] läuft am { $expiry } ab, also morgen
   *[other] läuft am { $expiry } ab, in { $days } Tagen
}
stock-no-expiry = kein Verfalldatum eingetragen
stock-count-corrected = Bestand nach Zählung berichtigt

# Why a lot is to be disposed of. { $open } is one of these two.
stock-dispose-opened = angebrochen am { $on }
stock-dispose-first-given = erstmals gegeben am { $on }, war also angebrochen
stock-dispose-expired = abgelaufen am { $expiry }
stock-dispose-past-use = { $open }; was angebrochen wurde, war bis { $until } zu verbrauchen („{ $says }“). Für ungeöffnete Packungen gilt das nicht: die angebrochene Menge eintragen
stock-dispose-past-use-not-documented = { $open }; was angebrochen wurde, war bis { $until } zu verbrauchen („{ $says }“; nicht belegt, auf der Packung nachsehen). Für ungeöffnete Packungen gilt das nicht: die angebrochene Menge eintragen

# Why a lot is not counted for a course.
stock-not-counted-overdrawn = mehr Abgang als Zugang
stock-not-counted-expired = abgelaufen
stock-not-counted-past-use = vor zu langer Zeit angebrochen; ungeöffnete Packungen dürfen angewendet werden

stock-same-batch = Posten { $earlier } und Posten { $later }, { $medicine }, haben dieselbe Chargennummer, { $batch }: zweimal gekauft oder zweimal eingetragen?
stock-no-expiry-of = Posten { $lot }, { $medicine }: kein Verfalldatum eingetragen

## Law: fields, occasions and terms of a record

law-notice = Eine Hilfe für die Aufzeichnungen, nach veröffentlichten Texten verfasst und unvollständig. Maßgebend ist das Recht.

# From when the years of keeping are counted: completes "5 years from".
law-counted-from = { $counted ->
    [last_use_or_disposal_of_lot] letzte Anwendung oder Entsorgung des Postens
    [entry_made] Tag der Eintragung
    [end_of_year_of_last_entry] Ende des Jahres der letzten Eintragung
   *[event] Tag des Geschehens
}

law-occasion = { $occasion ->
    [acquisition] Erwerb
    [administration] Anwendung durch den Tierhalter
    [vet_administration] Anwendung durch einen Tierarzt
   *[disposal] Entsorgung
}
law-need = { $need ->
    [required] vorgeschrieben
    [where_applicable] falls zutreffend
   *[advised] empfohlen
}
law-record-sort = { $sort ->
    [acquisition] Einträge über den Erwerb
    [proof] Erwerbsnachweise
    [administration] Einträge über die Anwendung
    [prescription] Verschreibungen
   *[disposal] Einträge über die Entsorgung
}
# What must be written down, in the words of the trade.
law-field = { $field ->
    [product_name] Bezeichnung des Arzneimittels
    [active_substance] Wirkstoff
    [authorisation_number] Zulassungsnummer
    [batch] Chargennummer
    [expiry] Verfalldatum
    [date_acquired] Datum des Erwerbs
    [quantity_acquired] erworbene Menge
    [supplier_name] Name der Bezugsquelle
    [supplier_address] Anschrift der Bezugsquelle
    [proof_of_purchase] Erwerbsnachweis
    [prescription_copy] Kopie der Verschreibung
    [prescriber] verschreibende Tierärztin oder verschreibender Tierarzt (mit Kontaktangaben)
    [date_first_given] Datum der (ersten) Anwendung
    [date_last_given] Datum der letzten Anwendung
    [duration] Dauer der Behandlung
    [time_of_day] Uhrzeit
    [quantity_given] angewendete Menge
    [quantity_per_colony] angewendete Menge je Volk
    [route] Art der Anwendung
    [colonies] behandelte Völker
    [number_treated] Anzahl der behandelten Völker
    [apiary] Bienenstand zur Zeit der Behandlung
    [apiary_during_withdrawal] Bienenstand während der Wartezeit
    [withdrawal_period] Wartezeit
    [withdrawal_end] Ende der Wartezeit
    [reason] Grund der Behandlung
    [given_by] Name der anwendenden Person
    [vet_name] Name des Tierarztes
    [certificate_number] Nummer des Sachkundenachweises der anwendenden Person
    [date_disposed] Datum der Entsorgung
    [quantity_disposed] entsorgte Menge
    [disposal_how_and_where] Art und Ort der Entsorgung
   *[keeper_name_and_address] Name und Anschrift des Tierhalters
}

## Sites: power, access and ground

## Refusals: what cannot be true

# Each refusal says what cannot be true, and how to fix it (`-help`). Both go without a capital and without a full stop; what the user wrote stands in backticks.

# How to fix more than one of them. { $near } is a name on record, or a code, that is written much like the one that was given.
refusal-check-dates-help = beide Daten prüfen
refusal-did-you-mean-help = war `{ $near }` gemeint?
refusal-correct-it-help = stattdessen jenen Eintrag berichtigen

# An entry by itself.
refusal-id-is-taken = ein Eintrag mit der ID { $id } ist schon eingetragen
refusal-id-is-taken-help = für einen neuen Eintrag eine neue ID bilden
refusal-in-the-future = { $on } liegt in der Zukunft; das späteste zulässige Datum eines Eintrags ist { $today }
refusal-in-the-future-help = eintragen, was geschehen ist, am Tag des Geschehens oder später
refusal-written-before = am { $written_on } auf Papier eingetragen, also bevor es am { $on } geschah
refusal-written-later = am { $written_on } auf Papier eingetragen, aber spätestens am { $today } übertragen
refusal-written-before-help = beide Tage auf dem Papier nachsehen: den Tag, an dem es geschah, und den Tag, an dem es eingetragen wurde
refusal-jurisdiction-is-unknown = für das Rechtsgebiet `{ $jurisdiction }` sind weder Packungsbeilagen noch Recht bekannt
refusal-jurisdiction-is-unknown-help = gb, ni, ch, us, eu oder das Kürzel eines Mitgliedstaats der Union in Kleinbuchstaben schreiben; anderswo ein Kürzel von xa bis xz, mit eigenen Packungsbeilagen

# Corrections and strike-outs. { $of } is the entry to be corrected.
refusal-no-entry-to-correct = es gibt keinen Eintrag { $of }, der berichtigt werden könnte
refusal-no-entry-to-correct-help = seine ID im Journal nachsehen
refusal-corrected-before = Eintrag { $of } wurde schon durch Eintrag { $by } berichtigt
refusal-corrected-before-help = Eintrag { $by } berichtigen oder neu eintragen, was gestrichen wurde
refusal-correction-of-archive-step = Eintrag { $of } hat andere in ein Archiv verschoben, das lässt sich nicht rückgängig machen
refusal-correction-of-moved-entry = Eintrag { $of } wurde in ein Archiv verschoben
refusal-correction-of-archived-help = Ergänzungen in einem eigenen Eintrag festhalten
refusal-correction-of-strike-out = Eintrag { $of } ist eine Streichung und kann nicht berichtigt werden
refusal-correction-of-strike-out-help = neu eintragen, was gestrichen wurde
refusal-correction-of-other-kind = Eintrag { $of } hat die Eintragsart `{ $was }`, nicht `{ $now }`
refusal-correction-of-other-kind-help = mit einem Eintrag derselben Eintragsart berichtigen oder streichen
# { $why } is any other refusal, { $kind } a word of the journal.
refusal-another-becomes-untrue = mit dieser Berichtigung kann Eintrag { $entry } (`{ $kind }`, { $on }) nicht mehr stimmen: { $why }
refusal-another-becomes-untrue-help = zuerst jenen Eintrag berichtigen oder streichen

# Colonies.
refusal-no-such-colony = es gibt kein Volk `{ $colony }`
refusal-no-such-colony-help = zuerst eintragen, wie es in den Bestand kam
refusal-colony-not-yet-there = Volk `{ $colony }` ist erst ab { $begun } eingetragen, und das liegt nach dem { $on }
refusal-colony-ended = Volk `{ $colony }` ist am { $ended } abgegangen
refusal-colony-ended-help = Volk und Datum prüfen
refusal-colony-lived-later = Volk `{ $colony }` hat einen Eintrag, der später ist als der { $on }: { $kind ->
    [holding_details] Angaben zum Betrieb
    [apiary_details] Angaben zu einem Bienenstand
    [site_conditions] Standortverhältnisse
    [nectar_flow] Tracht
    [temperature] Temperaturen
    [temperature_normals] übliche Temperaturen
    [colony_established] Aufnahme in den Bestand
    [colony_moved] Umstellung an einen anderen Bienenstand
    [colony_split] Teilung
    [colony_united] Vereinigung
    [colony_ended] Abgang des Volkes
    [supers_on] Honigraum aufgesetzt
    [supers_off] Honigraum abgenommen
    [inspection] Durchsicht
    [mite_count] Milbenzählung
    [medicine_described] Beschreibung eines Arzneimittels
    [lot_acquired] Erwerb eines Postens
    [vet_lot] Posten aus dem eigenen Vorrat eines Tierarztes
    [lot_opened] Anbruch eines Postens
    [document_attached] Dokument
    [leaflet_reading] Ablesung der Packungsbeilage
    [prescription] Verschreibung
    [administration] Anwendung
    [removal] Entnahme
    [disposal] Entsorgung
    [harvest] Ernte
    [strike_out] Streichung
   *[archived] Archivschritt
} ({ $last })
refusal-colony-lived-later-help = beide Daten prüfen oder zuerst jenen Eintrag berichtigen
refusal-no-colony-named = kein Volk ist genannt
refusal-no-colony-named-help = mindestens eines nennen
refusal-colony-named-twice = Volk `{ $colony }` ist zweimal genannt
refusal-colony-named-twice-help = nur einmal nennen
refusal-colony-name-is-taken = ein Volk `{ $colony }` gibt es seit { $since }
refusal-colony-name-is-taken-help = der Name eines Volkes wird nie wieder vergeben, ein Beutenzeichen darf wieder vergeben werden
refusal-colony-united-with-itself = Volk `{ $colony }` kann nicht mit sich selbst vereinigt werden
refusal-colony-united-with-itself-help = das Volk nennen, das es aufnimmt
refusal-no-super = es wird kein Honigraum aufgesetzt
refusal-no-super-help = angeben, wie viele Honigräume aufgesetzt werden, mindestens 1

# Apiaries, and the flows there.
refusal-no-such-apiary = es gibt keinen Bienenstand `{ $apiary }`
refusal-no-such-apiary-help = zuerst den Bienenstand eintragen
refusal-apiary-is-recorded = der Bienenstand `{ $apiary }` ist schon eingetragen
refusal-days-are-backwards = der letzte Tag { $to } liegt vor dem ersten, { $from }
refusal-flow-not-yet-seen = die Tracht würde am { $from } beginnen, also nach dem { $on }; beobachtet haben kann sie noch niemand
refusal-flow-not-yet-seen-help = als erwartet eintragen oder den Tag berichtigen
refusal-seen-flow-has-one-day = nur eine erwartete Tracht hat frühe und späte Jahre
refusal-seen-flow-has-one-day-help = weglassen: eine beobachtete Tracht hat an einem einzigen Tag begonnen
refusal-early-after-usual = in einem frühen Jahr würde sie am { $early } beginnen, nach dem Beginn in einem üblichen Jahr am { $usual }
refusal-late-before-usual = in einem späten Jahr würde sie am { $late } beginnen, vor dem Beginn in einem üblichen Jahr am { $usual }
refusal-late-after-end = in einem späten Jahr würde sie am { $late } beginnen, nach dem Ende der Tracht am { $to }

# Temperatures.
refusal-number-of-days = Anzahl der Tage in der Liste: { $days }
refusal-number-of-days-help = 1 bis { $most } Tage je Eintrag angeben
refusal-day-twice = { $day } steht zweimal in der Liste
refusal-day-not-yet-measured = { $day } liegt nach dem { $on }; gemessen haben kann da noch niemand
refusal-day-not-yet-measured-help = eine Vorhersage eintragen oder den Tag berichtigen
refusal-no-months = die Liste enthält keinen Monat
refusal-no-months-help = 1 bis 12 Monate angeben
refusal-no-such-month = einen Monat { $month } gibt es nicht
refusal-no-such-month-help = 1 für Januar bis 12 für Dezember schreiben
refusal-month-twice = Monat { $month } steht zweimal in der Liste
refusal-twice-in-list-help = nur eine der beiden Angaben behalten
refusal-lowest-above-highest = die Tiefsttemperatur { $min } liegt über der Höchsttemperatur, { $max }
refusal-lowest-above-highest-help = vertauschen oder berichtigen

# Counts of mites. { $field } and { $method } are words of the journal.
refusal-counted-over-none = bei `{ $field }` 0 lässt sich nichts zählen
refusal-counted-over-none-help = die Anzahl angeben; weglassen, wenn niemand gezählt hat
refusal-not-of-count-method = `{ $field }` gehört nicht zu einer Zählung nach `{ $method }`
refusal-not-of-count-method-help = weglassen oder die Zählweise berichtigen
refusal-more-mites-than-cells = von { $cells } Zellen wären { $mites } befallen
refusal-more-mites-than-cells-help = die befallenen Zellen zählen, nicht die Milben darin

# Names that cannot be told apart by looking at them.
refusal-invisible-sign = der Name `{ $name }` enthält ein unsichtbares Zeichen ({ $sign })
refusal-invisible-sign-help = den Namen neu tippen, nicht einfügen
refusal-looks-like-another = der Name `{ $name }` sieht aus wie `{ $other }`, ist aber mit anderen Buchstaben geschrieben
refusal-looks-like-another-help = wenn der andere gemeint ist, diesen schreiben; sonst einen Namen wählen, der anders aussieht

# Medicines, lots, prescriptions and amounts.
refusal-no-such-medicine = ein Arzneimittel `{ $medicine }` ist nicht beschrieben
refusal-no-such-medicine-help = zuerst das Arzneimittel beschreiben
refusal-medicine-is-described = das Arzneimittel `{ $medicine }` ist schon beschrieben
refusal-no-such-lot = es gibt keinen Posten `{ $lot }`
refusal-no-such-lot-help = zuerst eintragen, dass er erworben wurde oder dass ein Tierarzt ihn mitgebracht hat
refusal-lot-name-is-taken = einen Posten `{ $lot }` gibt es schon
refusal-lot-name-is-taken-help = diesem Posten einen eigenen Namen geben; zwei Posten dürfen dieselbe Chargennummer haben
refusal-lot-not-yet-acquired = Posten `{ $lot }` ist ab { $acquired } eingetragen, und das liegt nach dem { $on }
refusal-lot-of-vets-stock = Posten `{ $lot }` ist aus dem eigenen Vorrat eines Tierarztes, der Tierhalter hat daraus also nichts anzubrechen oder zu entsorgen
refusal-lot-of-vets-stock-help = wenn der Tierarzt etwas dagelassen hat, dies als vom Tierarzt erhaltenen Posten eintragen
refusal-more-than-lot-held = Posten `{ $lot }` enthielt { $held }, der Abgang läge aber bei { $gone }
refusal-more-than-lot-held-help = Menge und Posten prüfen; wenn der eingetragene Bestand falsch ist, `count_corrected` setzen
refusal-no-amount = die Menge ist null
refusal-no-amount-help = eine Menge über null angeben
refusal-in-other-unit = die Menge ist in `{ $unit }` angegeben, `{ $medicine }` wird aber in `{ $counted }` gezählt
refusal-in-other-unit-help = die Menge in `{ $counted }` umrechnen
refusal-no-such-prescription = eine Verschreibung `{ $prescription }` ist nicht eingetragen
refusal-no-such-prescription-help = zuerst die Verschreibung eintragen
refusal-prescription-is-recorded = eine Verschreibung `{ $prescription }` ist schon eingetragen

# What a leaflet, a label or a prescription states.
refusal-too-many-days = { $days } Tage sind mehr, als irgendeine Packungsbeilage angibt
refusal-too-many-days-help = Tage angeben, nicht Stunden; höchstens { $most }
refusal-withdrawal-stated-twice = ein Etikett ohne Wartezeit gibt keine in Tagen an
refusal-withdrawal-stated-twice-help = `withdrawal_days` behalten, wenn das Etikett eine Wartezeit angibt, auch eine von 0 Tagen; sonst `withdrawal` behalten
refusal-stay-of-no-days = eine Verweildauer von 0 Tagen ist keine
refusal-stay-of-no-days-help = weglassen; wenn nichts im Volk bleibt, das in `removal` angeben
refusal-nothing-stays-yet-stays = es bleibt nichts im Volk, und doch muss es mindestens { $least ->
    [one] 1 Tag
   *[other] { $least } Tage
} bleiben
refusal-nothing-stays-yet-stays-help = bei einem Träger `needed` oder `not_needed` schreiben; bei einer einzelnen Gabe die Mindestverweildauer weglassen
refusal-least-stay-above-longest = Mindestverweildauer { $least ->
    [one] 1 Tag
   *[other] { $least } Tage
}, Höchstverweildauer aber { $most ->
    [one] 1 Tag
   *[other] { $most } Tage
}
refusal-least-stay-above-longest-help = die falsche der beiden Angaben berichtigen
refusal-nothing-is-confirmed = nichts ist bestätigt
refusal-nothing-is-confirmed-help = den Wert in den Worten schreiben, in denen das Programm ihn zeigt
refusal-stated-not-confirmed = `{ $topic }` muss angegeben werden, eine Bestätigung genügt nicht
refusal-stated-not-confirmed-help = den abgelesenen Wert in `terms` schreiben

# Doses and removals.
refusal-nothing-is-given = es wird nichts gegeben
refusal-nothing-is-given-help = Posten, Menge und Völker nennen
refusal-two-medicines = Posten `{ $lot }` ist `{ $medicine }`, derselbe Eintrag gibt aber auch `{ $other }`
refusal-two-medicines-help = für jedes Arzneimittel einen eigenen Eintrag machen
refusal-prescription-of-other-medicine = Verschreibung `{ $prescription }` gilt für `{ $medicine }`
refusal-prescription-of-other-medicine-help = die Verschreibung des Arzneimittels nennen, das gegeben wurde
refusal-dose-goes-on-with-itself = eine Gabe kann nicht sich selbst fortsetzen
refusal-dose-goes-on-with-itself-help = die erste Gabe der Behandlung nennen oder `continues` weglassen
refusal-first-dose-struck-out = Eintrag { $entry } wurde gestrichen
refusal-first-dose-of-other-kind = Eintrag { $entry } ist keine Anwendung
refusal-first-dose-help = den Eintrag der ersten Gabe nennen
refusal-later-dose-named = Eintrag { $entry } ist eine spätere Gabe der Behandlung, die mit Eintrag { $first } begann
refusal-later-dose-named-help = die erste Gabe nennen, { $first }
refusal-first-dose-of-other-medicine = mit Eintrag { $first } wurde ein anderes Arzneimittel gegeben
refusal-first-dose-of-other-medicine-help = die erste Gabe desselben Arzneimittels nennen
refusal-before-first-dose = die erste Gabe war am { $first }, also nach dem { $on }
refusal-not-given-first-dose = Volk `{ $colony }` hat die erste Gabe nicht erhalten
refusal-not-given-first-dose-help = als eigene Behandlung eintragen, in einem Eintrag ohne `continues`
refusal-taken-out-before = das Arzneimittel dieser Behandlung wurde am { $out } aus Volk `{ $colony }` herausgenommen
refusal-taken-out-before-help = eine neue Behandlung beginnen, in einem Eintrag ohne `continues`
refusal-out-before-placed = eingelegt wurde es am { $placed }, es kann also nicht am { $on } herauskommen
refusal-no-part-in-course = Volk `{ $colony }` gehörte nicht zu Eintrag { $administration }
refusal-no-part-in-course-help = das Volk oder den genannten Eintrag prüfen
refusal-cleared-before = es wurde schon am { $out } aus Volk `{ $colony }` herausgenommen
refusal-cleared-before-help = jenen Eintrag berichtigen, wenn sein Datum falsch ist
refusal-later-dose-follows = Volk `{ $colony }` hat am { $given } eine spätere Gabe dieser Behandlung erhalten

# Documents.
refusal-document-is-empty = das Dokument ist leer
refusal-document-is-empty-help = die Datei selbst anhängen
refusal-document-too-large = das Dokument hat { $bytes } Byte; höchstens 10 MB werden gespeichert
refusal-document-too-large-help = mit geringerer Auflösung scannen oder ein kleineres Foto machen
refusal-document-before-its-subject = ein Dokument kann nicht für einen Tag vor dem { $from } angehängt werden, denn erst da beginnt, wozu es gehört
refusal-document-before-its-subject-help = den Tag angeben, an dem es angehängt wurde, { $from } oder später
refusal-document-of-nothing = das Dokument ist an nichts angehängt
refusal-document-of-nothing-help = den Posten nennen, dessen Erwerb es nachweist, oder die Verschreibung, deren Kopie es ist
refusal-document-of-two-things = ein Posten und eine Verschreibung sind genannt
refusal-document-of-two-things-help = nur eines nennen und das Dokument in einem eigenen Eintrag an das andere anhängen

# Archives. { $seq } is the place of an entry in the journal.
refusal-by-archive-step-only = Einträge der Eintragsart `{ $kind }` können so nicht gemacht werden
refusal-by-archive-step-only-help = für ein Archiv gibt es einen eigenen Befehl: combclear archive
refusal-archive-step-corrects = ein Archivschritt berichtigt nichts
refusal-archive-step-corrects-help = `corrects` weglassen
refusal-through-after-archive-step = { $through } liegt nach dem Archivschritt selbst, der am { $on } ist
refusal-through-after-archive-step-help = spätestens den Tag des Schritts nennen
refusal-number-of-places-differs = angekündigte Einträge: { $entries }, genannte Stellen: { $places }
refusal-number-of-places-differs-help = die Stellen nachzählen
refusal-places-not-there = nicht alle Stellen { $places } sind im Journal vorhanden
refusal-places-not-there-help = das Journal prüfen
refusal-tells-of-archive = Eintrag { $seq } hält einen Archivschritt fest und bleibt daher im Journal
refusal-moved-before = Eintrag { $seq } wurde schon in ein Archiv verschoben
refusal-leave-it-out-help = weglassen
refusal-still-whole = Eintrag { $seq } wurde in ein Archiv verschoben, ist hier aber noch vollständig
refusal-still-whole-help = die Datei in eine neue Datenbank importieren (--db)
refusal-not-beside-what-it-corrects = sein Inhalt ist in einem Archiv, aber Eintrag { $of }, den er berichtigt, fehlt
refusal-not-beside-what-it-corrects-help = einen vollständigen Export dieses Journals importieren

# Why entries cannot go apart: { $goes } would go into an archive, { $stays } would stay.
refusal-tied-by-correction = Eintrag { $goes } kann nicht ohne Eintrag { $stays } ins Archiv: einer berichtigt den anderen
refusal-tied-by-course = Eintrag { $goes } kann nicht ohne Eintrag { $stays } ins Archiv: beide gehören zu einer Behandlung
refusal-tied-by-name = Eintrag { $goes } kann nicht ins Archiv: Eintrag { $stays } bleibt und nennt, was er eingeführt hat
refusal-tied-help = nur vollständige Gruppen zusammengehöriger Aufzeichnungen archivieren
# Said of an entry that would go, and of one that should be a first dose.
refusal-no-such-entry = es gibt keinen Eintrag { $entry }

# Days that cannot be asked about.
refusal-span-backwards-help = `from` und `to` vertauschen oder eines davon berichtigen
refusal-span-too-long = { $days } Tage sind zu viele: höchstens { $most } können auf einmal abgefragt werden
refusal-span-too-long-help = einen kürzeren Zeitraum abfragen
refusal-period-backwards-help = die beiden Tage vertauschen oder einen davon berichtigen
## Words of closed lists

kind = { $kind ->
    [holding_details] Angaben zum Betrieb
    [apiary_details] Angaben zum Bienenstand
    [site_conditions] Standortverhältnisse
    [nectar_flow] Tracht
    [temperature] Temperatur
    [temperature_normals] übliche Temperaturen
    [colony_established] Volk aufgenommen
    [colony_moved] Volk umgestellt
    [colony_split] Volk geteilt
    [colony_united] Volk vereinigt
    [colony_ended] Volk abgegangen
    [supers_on] Honigraum aufgesetzt
    [supers_off] Honigraum abgenommen
    [inspection] Durchsicht
    [mite_count] Milbenzählung
    [medicine_described] Arzneimittel beschrieben
    [lot_acquired] Posten erworben
    [vet_lot] Posten aus dem eigenen Vorrat des Tierarztes
    [lot_opened] Posten angebrochen
    [document_attached] Dokument angehängt
    [leaflet_reading] Ablesung der Packungsbeilage
    [prescription] Verschreibung
    [administration] Anwendung
    [removal] Entnahme
    [disposal] Entsorgung
    [harvest] Ernte
    [strike_out] Streichung
   *[archived] Archivierung
}

# What a condition of an option is about.
about = { $about ->
    [leaflet] Packungsbeilage
    [access] Zugang zum Bienenstand
    [power] Stromanschluss
    [ground] Boden bei den Beuten
    [return_visits] spätere Standbesuche
    [carry_in_kit] Hintragen der Ausrüstung
    [hive_opened] Öffnen der Beute
    [colony] Volk
    [apiary] Bienenstand
    [already_in] laufende Behandlungen im Volk
    [other_medicines] andere Arzneimittel
    [supers_during] Honigraum während der Behandlung
    [flow_during] Anwendung in der Tracht
    [flow_before] Anwendung vor der Tracht
    [withdrawal] Wartezeit
    [wait_after_removal] Frist bis zum Honigraum
    [harvest_during] Honig während der Behandlung
    [comb_rule] Waben
    [removal] Entnahme
    [stay_min] Mindestverweildauer
    [stay_max] Höchstverweildauer
    [doses] Gaben
    [courses_per_year] Behandlungen im Jahr
    [courses_per_broodless_period] Behandlungen je brutfreie Zeit
    [gap_between_courses] Abstand zwischen Behandlungen
    [season] Jahreszeit
    [timing] Zeitpunkt
    [temperature] Temperatur
    [brood] Brut
    [colony_size] Volksstärke
    [brood_boxes] Brutzargen
    [entrance] Flugloch
    [dose] Dosis
    [dose_cap] Höchstmenge für ein Volk
    [recipe] Mischanleitung
    [needs] Ausrüstung
    [not_with] andere Arzneimittel im Volk
    [contraindication] Gegenanzeigen
    [class] Wirkstoffklasse
    [whole_apiary] ganzer Bienenstand
    [user_safety] Vorsichtsmaßnahmen bei der Anwendung
    [after_opening] Haltbarkeit nach Anbruch
    [storage] Lagerung
   *[disposal] Entsorgung
}

# What sort of thing is missing from the legal record: something of a row, or a field of the law.
gap-sort = { $sort ->
    [written_late] verspätet eingetragen
    [medicine_authorisation] Zulassung des Arzneimittels
    [medicine_leaflet] Packungsbeilage des Arzneimittels
    [medicine_directions] Anwendungsvorschrift des Arzneimittels
    [prescribed_after] erst nachträglich verschrieben
    [same_dose_twice] dieselbe Gabe zweimal
    [use_after_expiry] nach dem Verfalldatum angewendet
    [past_life_in_use] zu lange nach Anbruch angewendet
    [whereabouts_not_recorded] Verbleib nicht eingetragen
    [removal_not_recorded] Entnahme nicht eingetragen
    [document_not_kept] Dokument fehlt oder ist verändert
    [document] Dokument
    [expiry_not_told] Verfalldatum nicht angegeben
    [expired_when_acquired] beim Erwerb schon abgelaufen
    [more_gone_than_acquired] mehr abgegangen als erworben
    [product_name] Bezeichnung des Arzneimittels
    [active_substance] Wirkstoff
    [authorisation_number] Zulassungsnummer
    [batch] Chargennummer
    [expiry] Verfalldatum
    [date_acquired] Datum des Erwerbs
    [quantity_acquired] erworbene Menge
    [supplier_name] Name der Bezugsquelle
    [supplier_address] Anschrift der Bezugsquelle
    [proof_of_purchase] Erwerbsnachweis
    [prescription_copy] Kopie der Verschreibung
    [prescriber] verschreibende Tierärztin oder verschreibender Tierarzt
    [date_first_given] Datum der ersten Anwendung
    [date_last_given] Datum der letzten Anwendung
    [duration] Dauer der Behandlung
    [time_of_day] Uhrzeit
    [quantity_given] angewendete Menge
    [quantity_per_colony] angewendete Menge je Volk
    [route] Art der Anwendung
    [colonies] behandelte Völker
    [number_treated] Anzahl der behandelten Völker
    [apiary] Bienenstand
    [apiary_during_withdrawal] Bienenstand während der Wartezeit
    [withdrawal_period] Wartezeit
    [withdrawal_end] Ende der Wartezeit
    [reason] Grund der Behandlung
    [given_by] anwendende Person
    [vet_name] Name des Tierarztes
    [certificate_number] Nummer des Sachkundenachweises
    [date_disposed] Datum der Entsorgung
    [quantity_disposed] entsorgte Menge
    [disposal_how_and_where] Art und Ort der Entsorgung
    [keeper_name_and_address] Name und Anschrift des Tierhalters
   *[count_corrected] Bestand nach Zählung berichtigt
}

# Who stated a value that supers depend on.
part-said-by = { $by ->
    [prescription] Verschreibung
    [leaflet_reading] Ablesung der Packungsbeilage
    [pack] Packung
    [own_leaflet] eigene Packungsbeilage
    [leaflet] Packungsbeilage
   *[declared] Angabe des Tierhalters
}
said-in = { part-said-by }, Eintrag { $entry }
said-with = { part-said-by }, { $sources }

# How much a rule binds.
label-force-law = Recht
label-force-label = Etikett
label-force-advice = Empfehlung

## Paper: the register on paper

# A message whose id begins with `label-` stands fixed: nothing is put in. Tables, pages and the terminal share these.

# Papers and their sheets.
label-register-title = Bestandsbuch (Register der Tierarzneimittel)
label-gaps-title = Lücken im Register und Unregelmäßigkeiten
label-acquisitions = Erwerb
label-administrations = Anwendungen
label-removals = Entnahmen
label-disposals = Entsorgungen
label-vet-lots = Vom Tierarzt aus eigenem Vorrat angewendet
label-vet-lots-note = Nichts davon hat der Tierhalter erworben; daher ist kein Erwerb nachzuweisen und kein Bestand zu führen. Was davon angewendet wurde, steht unter den Anwendungen.
label-a-vet = Tierarzt
label-copied-from-paper = Von Papier übertragen
label-vets-own-stock = aus dem eigenen Vorrat des Tierarztes
label-prescriptions = Verschreibungen
label-corrections = Berichtigungen
label-books = Bestandsrechnung nach Posten
label-sheets = Blätter
label-nothing-recorded = Für diesen Zeitraum ist nichts eingetragen.

# What stands above the sheets: a head, and what it says.
label-holding = Betrieb
label-keeper = Tierhalter
label-keeper-not-recorded = Tierhalter nicht eingetragen
label-time = Zeitraum
label-as-of = Stand am
label-journal = Journal
label-in-an-archive = In einem Archiv
label-counted-by = Tage gezählt nach
label-laws-asked = Geprüft nach
paper-period = { $from } bis { $to }
paper-time = { $from } bis { $to } (beide Tage eingeschlossen)
paper-time-as-of = { $from } bis { $to } (beide Tage eingeschlossen); Stand am { $day }
paper-as-of = { $day } (spätere Ereignisse nicht berücksichtigt)
paper-journal = { part-entries }, letzter Hash: { $head }
paper-keeper = { $keeper }, seit { $since }; Anschrift: { $address }; Registriernummer: { $registration }; geltendes Recht: { part-jurisdiction }
paper-archived = { $entries ->
    [one] 1 Eintrag dieses Zeitraums wurde
   *[other] { $entries } Einträge dieses Zeitraums wurden
} am { $on } von { $by } ({ paper-entry-number }) aus dem Journal in ein Archiv verschoben, weil das Recht keine Aufbewahrung über den { $through } hinaus verlangte; zu finden nicht in diesem Register, sondern in der Datei mit dem SHA-256-Hash { $file }
paper-policy-calendar = { $policy }: der Tag des Ereignisses zählt nicht mit
paper-policy-elapsed = { $policy }: volle Tage zu 24 Stunden ab der eingetragenen Uhrzeit, eine Stunde mehr, wenn die Uhr vorgestellt wurde; neben den Kalendertagen angegeben

# Sentences above a table.
label-administrations-note = Eine Zeile für jeden Posten und jede Gruppe von Völkern, deren Behandlung gleich verlief; Zeilen mit derselben Nummer sind ein Eintrag. Als Bienenstand ist angegeben, wo die Völker bei der Behandlung standen und danach bis zum Ende der Wartezeit.
label-earlier-dose-note = Eine Gabe mit dem Vermerk „{ label-before-this-time }“ liegt vor dem ersten Tag dieses Registers. Sie ist aufgeführt, weil das Arzneimittel an diesem Tag noch im Volk war oder eine seiner Fristen noch lief; in den Summen ist sie nicht enthalten.
label-lots-note = Jeder Posten, bei dem sich im Zeitraum etwas geändert hat oder von dem am Ende etwas übrig ist: Übertrag + erworben - angewendet - entsorgt = Bestand.
label-complete-yes = Vollständig: ja. Alles, was diese Rechtsvorschriften verlangen, ist eingetragen.
label-complete-no = Vollständig: nein. Es fehlt etwas, was das Recht vorschreibt.
label-complete-unknown = Vollständig: nicht bekannt. Was nicht geprüft werden konnte, ist unten genannt.

# Heads of columns, and labels of values in a cell: these stand before a colon there.
label-acquired = erworben
label-active = Wirkstoff
label-address = Anschrift
label-amount-left = Bestand
label-apiary = Bienenstand
label-at = Uhrzeit
label-authorisation-number = Zulassungsnr.
label-batch = Charge
label-batch-and-expiry = Charge, Verfalldatum
label-batch-and-lot = Charge, Posten
label-carried-in = Übertrag
label-place = Lage
label-key-of-apiaries = Verzeichnis der Bienenstände
label-key-of-colonies = Verzeichnis der Völker
label-hive-mark = Beutenzeichen
label-apiary-at-the-end = Bienenstand am Ende
label-none-there = keiner: das Volk bestand nicht mehr
label-remarks = Bemerkungen
label-expired-stock = abgelaufen
label-more-gone-than-acquired = mehr abgegangen als erworben
label-blocked-and-free = Ende der Wartezeit / Honig darf geerntet werden ab
label-certificate = Sachkundenachweis
label-colonies = Völker
label-contact = Kontakt
label-copies = Kopien
label-corrected-entry = berichtigter Eintrag
label-date = Datum
label-date-given = Datum der Anwendung
label-annex-documents = Anhang: Dokumente und ihre Hashes
label-date-acquired = Datum des Erwerbs
label-date-removed = Datum der Entnahme
label-disposed-of = entsorgt
label-document = Dokument
label-duration = Dauer
label-each = je Volk
label-entry = Eintrag
label-entry-number = Nr.
label-expiry = Verfalldatum
label-first = Beginn
label-first-and-last-day = Behandlung
label-first-free-day = erster freier Tag
label-free-at = nach vollen Tagen zu 24 Stunden frei ab
label-given = angewendet
label-given-by = angewendet von
label-how-and-where = Art und Ort
label-how-and-where-disposed-of = Art und Ort der Entsorgung
label-how-to-supply-it = wie zu ergänzen
label-last = Ende
label-last-blocked-day = Sperre bis einschließlich
label-law = Rechtsgrundlage
label-left-inside-each = in jedem Volk verblieben
label-lot = Posten
label-medicine = Arzneimittel
label-method = Art der Anwendung
label-name-on-pack = Name auf der Packung
label-now = jetzt
label-number = Anzahl
label-placed = eingelegt
label-prescription = Verschreibung
label-proof-of-purchase = Erwerbsnachweis
label-quantity = Menge
label-reason = Grund
label-sha-256 = SHA-256
label-stated-in-entry = im Eintrag angegeben
label-struck = gestrichen
label-supplier = Bezugsquelle
label-together = Zwischensumme
label-values = Werte
label-vet = Tierarzt
label-wait-before-supers = Frist bis zum Honigraum
label-was = vorher
label-weight = Einstufung
label-what-is-missing = was fehlt
label-who-and-when = von wem und wann
label-whole-entry = Summe
label-withdrawal-period = Wartezeit
label-written = eingetragen
label-written-by = eingetragen von

# What stands in a cell.
label-not-recorded = nicht eingetragen
label-not-known = nicht bekannt
label-not-known-yet = noch nicht bekannt
label-none = keine
label-none-any-more = entfallen
label-none-kept = keine angehängt
label-none-named = keine genannt
label-still-in = noch im Volk
label-same-entry = derselbe Eintrag
label-before-this-time = vor diesem Zeitraum
label-before-this-time-used-in-it = vor diesem Zeitraum, darin angewendet
label-vet-not-recorded = Tierarzt nicht eingetragen
label-struck-out = ganz gestrichen
label-corrected = berichtigt
label-no-value-changed = kein Wert geändert
label-none-given = nicht selbst behandelt; Arzneimittel bei Teilung oder Vereinigung mitgekommen
label-required = fehlt, rechtlich vorgeschrieben
label-not-as-it-should-be = Unregelmäßigkeit
label-required-where-it-applies = fehlt, vorgeschrieben, falls zutreffend
label-advised = empfohlen
label-said-by-prescription = in der Verschreibung angegeben
label-said-by-reading = in der Packungsbeilage des Postens abgelesen
label-said-by-pack = auf der Packung abgelesen
label-said-by-keeper = Angabe des Tierhalters
label-said-by-leaflet = aus der hinterlegten Packungsbeilage; von niemandem eingetragen
paper-amount-without-unit = { $quantity } (Einheit { label-not-recorded })
# An entry by its place in the journal.
paper-entry-number = Nr. { $place }
# $entry is "no. 59", or the id of an entry.
paper-entry = Eintrag { $entry }
paper-corrects = berichtigt { $entry }
paper-copied-from = übertragen aus: { $what }, dort eingetragen am { $day }
paper-copied-here = übertragen aus [{ $number }], dort eingetragen am { $day }
paper-copied-source = [{ $number }] { $what }: { $count ->
    [one] 1 Eintrag
   *[other] { $count } Einträge
}, dort eingetragen { $first } bis { $last }; hier eingetragen { $entered_first } bis { $entered_last }
paper-written-late = { days } später eingetragen
paper-none-given-by = nicht selbst behandelt; Arzneimittel bei Teilung oder Vereinigung mitgekommen, { $entry }
paper-later-apiary = ab { $day }: { $apiary }
paper-not-known-since = nicht bekannt seit { $day }
paper-dose-of-course = Gabe { $dose } der Behandlung, begonnen mit { $entry }
paper-count-corrected = { $entries ->
    [one] durch 1 Eintrag berichtigt
   *[other] durch { $entries } Einträge berichtigt
}

# A field of an entry that was corrected; $name is its own name with blanks.
paper-field = { $field ->
    [on] Datum
    [at] Uhrzeit
    [written_on] dort eingetragen am
    [each] Menge je Volk
    [against] Grund
    [continues] erste Gabe
    [administration] erste Gabe
    [withdrawal_days] Wartezeit in Tagen
    [wait_days] Frist bis zum Honigraum in Tagen
    [authorisation] Zulassungsnr.
    [pack_name] Name auf der Packung
    [proof] Erwerbsnachweis
    [left_inside] in jedem Volk verblieben
    [recorded_by] eingetragen von
    [copied_from] übertragen aus
    [given] gegebene Posten
    [amount] Menge
    [quantity] Menge
    [unit] Einheit
    [lot] Posten
    [lots] Posten
    [batch] Chargennummer
    [expiry] Verfalldatum
    [medicine] Arzneimittel
    [leaflet] Packungsbeilage
    [label_revision] Fassung des Etiketts
    [revision] Fassung der Packungsbeilage
    [supplier] Bezugsquelle
    [supplier_address] Anschrift der Bezugsquelle
    [colony] Volk
    [colonies] Völker
    [apiary] Bienenstand
    [method] Art der Anwendung
    [given_by] angewendet von
    [certificate] Sachkundenachweis
    [prescription] Verschreibung
    [vet] Tierarzt
    [contact] Kontakt
    [count_corrected] Bestand nach Zählung berichtigt
    [how_and_where] Art und Ort der Entsorgung
    [disposal] Entsorgung
    [withdrawal] Wartezeit
    [terms] Angaben aus der Packungsbeilage
    [confirms] Bestätigtes
    [supers_during] Honigraum während der Behandlung
    [flow_during] Anwendung während der Tracht
    [flow_before_days] Tage vor einer Tracht
    [wait_after_removal_days] Frist bis zum Honigraum in Tagen
    [removal] Entnahme
    [stay_min_days] Mindestverweildauer in Tagen
    [stay_min_days_with_brood] Mindestverweildauer bei Brut in Tagen
    [stay_max_days] Höchstverweildauer in Tagen
    [doses] Zahl der Gaben
    [keeper] Tierhalter
    [address] Anschrift
    [jurisdiction] Rechtsgebiet
    [registration] Registriernummer
    [note] Anmerkung
    [text] Text
    [name] Name
   *[other] { $name }
}
paper-field-of-lot = { $field } ({ $lot })
paper-lot-of-entry = { $number ->
    [1] erster Posten
    [2] zweiter Posten
    [3] dritter Posten
   *[other] Posten { $number } des Eintrags
}

# At the foot of each printed page.
paper-page = Seite { $page } von { $pages }

# Remarks of a file for other programs, joined by full stops or commas.
label-exchange-untold = was daraus wurde, ist nicht eingetragen, Ende der Wartezeit nicht bekannt
label-exchange-end-not-known = Ende der Wartezeit nicht bekannt
label-exchange-wait-not-known = Frist bis zum Honigraum nicht bekannt
label-exchange-by-the-book = Bestand laut Einträgen, nicht gezählt
label-exchange-supplier-address = Anschrift der Bezugsquelle
label-exchange-proof = Nachweis
label-exchange-unit = Einheit
exchange-time-of-day = um { $time } Ortszeit
exchange-given = Posten { $lot }: je { $each } für { $colonies }
exchange-lot = Posten { $lot }
exchange-dose = Gabe { $dose } der Behandlung
exchange-course = { $colonies }: Beginn { $first }, Ende { $last }
exchange-course-came = { $colonies } (bei Teilung oder Vereinigung mitgekommen): Beginn { $first }, Ende { $last }
exchange-course-came-on = { $colonies } (bei Teilung oder Vereinigung am { $day } mitgekommen): Beginn { $first }, Ende { $last }
exchange-withdrawal = Wartezeit { $period }
exchange-wait = Frist bis zum Honigraum { days }
exchange-apiary = Bienenstand { $apiary }
exchange-struck-out = gestrichen: { $reason }
exchange-later-apiary = ab { $day } { $apiary }

# What a reader of such a file must know. Names of fields stay as they are.
label-exchange-note-species = Der Standard kennt keine Tierart für Bienen: specie ist nicht angegeben, und als Tier gilt ein Bienenvolk.
label-exchange-note-schemes = Kennungen verwenden Schemata dieses Programms: internal.combclear.colony, .apiary, .authorisation, .medicine.
label-exchange-note-dates = Alle Daten sind Kalendertage, geschrieben als 12 Uhr UTC; die Uhrzeit weglassen und die Tage nicht verschieben.
label-exchange-note-groups = Ein Eintrag hat eine Behandlung für jede Gruppe von Völkern, bei denen sie gleich verlief; meta.sourceId nennt den Eintrag, und die Mengen ergeben zusammen das, was er angewendet hat.
label-exchange-note-splits = Völker, in die ein Arzneimittel bei Teilung oder Vereinigung mitgekommen ist, haben eine eigene Behandlung ohne Mengen.
label-exchange-note-honey = Jede Behandlung hat eine einzige Wartezeit, für Honig. Ohne endDate ist ihr Ende nicht bekannt: das Arzneimittel ist noch im Volk, oder es ist keine Wartezeit eingetragen. Die Völker sind dann als gesperrt zu behandeln.
label-exchange-note-end = endDate einer Wartezeit ist der letzte gesperrte Tag; bei einer Wartezeit von 0 Tagen der Tag, an dem die Behandlung endete.
label-exchange-note-period = Der Standard hat kein Feld für eine Wartezeit in Tagen: sie steht in remark.
label-exchange-note-remark = Der Standard hat kein Feld für die Anschrift einer Bezugsquelle, die Charge einer Bewegung oder Art und Ort einer Entsorgung: sie stehen in remark.
label-exchange-note-location = Eine location ist der Bienenstand am Tag der Behandlung; spätere Bienenstände stehen in remark.
label-exchange-note-units = Streifen, Schalen, Tabletten, Plättchen und Stück haben im Standard keine Einheit der Dosis; als Bestand sind sie EA. remark sagt, was gemeint ist.
label-exchange-note-corrected = Ein berichtigter Eintrag behält seine id, mit späterem meta.modified. Was gestrichen wurde, trägt meta.isDeleted, unter jeder id, die gesendet worden sein kann; ebenso eine Gruppe von Völkern oder der Verbrauch eines Postens, die gesendet worden sein können und nicht mehr bestehen. Das Register enthält beide Werte.
label-exchange-no-group-any-more = keine eigene Gruppe mehr: ihre Völker gehören zu einer anderen Behandlung dieses Eintrags oder zu keiner
label-exchange-not-used-any-more = in der berichtigten Fassung dieses Eintrags wurde von diesem Posten nichts angewendet
label-exchange-note-archived = Einträge, die in ein Archiv verschoben wurden, fehlen hier; das Register sagt, wie viele es sind, und nennt die Datei mit ihrem Hash.

## Calendar

calendar-name = Combclear: was fällig ist, { $holding }
calendar-overdue = überfällig: { $summary }
calendar-summary = { $title } ({ $colonies })

## Pack

label-pack-title = Prüfmappe
label-heic-no-copy = manche Behörden können HEIC nicht öffnen, und eine Kopie in einem anderen Format war nicht möglich
label-pdf-locked = gesperrt: lässt sich ohne Passwort möglicherweise nicht öffnen
label-pdf-script = enthält ein Skript
label-pdf-launch = kann beim Öffnen ein anderes Programm starten
label-pdf-file-inside = enthält eine weitere Datei
label-pdf-not-looked-into = nicht vollständig untersucht
label-pack-reading = Register wird gelesen
label-pack-put-together = Erstellt am
label-pack-contents = Inhalt
# Each of these stands after the name of its file and a colon.
label-pack-html = das Register, zum Lesen und Drucken
label-pack-pdf = dasselbe als PDF, erstellt als PDF/A-2a (von keinem unabhängigen Prüfprogramm bestätigt)
label-pack-csv = dasselbe für eine Tabellenkalkulation
label-pack-json = dasselbe für Programme
label-pack-exchange = Behandlungen und Bestandsbewegungen im Format der ICAR Animal Data Exchange
label-pack-gaps = was im Register fehlt
pack-season = die Saison von { $apiary } als Bild
label-pack-checkpoint = ein Prüfpunkt des Journals, in drei Zeilen
label-pack-sums = der Hash jeder anderen Datei
label-pack-no-pdf = Es gibt kein PDF: das Programm, das diese Mappe erstellt hat, kann keines erzeugen. register.html ist zum Drucken gemacht.
label-pack-gaps-not-asked = Die Mappe wurde ohne eine Liste dessen erstellt, was im Register fehlt.
label-pack-proofs = Belege
label-pack-no-proofs = An Erwerb und Verschreibungen dieses Zeitraums ist kein Dokument angehängt.
label-pack-proofs-caption = Belege und die Einträge, zu denen sie gehören
label-pack-belongs-to = gehört zu
label-pack-file = Datei
label-pack-called = ursprünglicher Name
label-pack-not-kept = nicht enthalten: der Inhalt ist nicht mehr vorhanden
label-pack-altered = nicht enthalten: der gespeicherte Inhalt ist nicht der, der angehängt wurde
label-pack-office-copy = eine Kopie als JPEG für Behörden, die HEIC nicht öffnen können; maßgebend ist das Original
pack-acquisition = Erwerb { paper-entry-number }, Posten { $lot }
pack-vet-lot = Posten des Tierarztes, { paper-entry-number }, Posten { $lot }
pack-prescription = Verschreibung { paper-entry-number }, { $number }
label-pack-how-to-check = So wird geprüft
# $command, $hash and the like are set apart from the words around them.
pack-check-files = Mappe entpacken und { $command } ausführen; das prüft, ob jede Datei noch so ist, wie sie verpackt wurde.
label-pack-check-proofs = Der Hash jedes Belegs steht auch im Register, bei dem Eintrag, mit dem er angehängt wurde.
pack-check-journal = Wer das Journal hat, kann zeigen, dass das Register daraus erstellt und seither nichts geändert wurde: { $command } beweist { $entries ->
    [one] den ersten Eintrag
   *[other] die ersten { $entries } Einträge
} mit dem Hash { $hash }.

## Terminal: tables and headings

# Heads of columns, titles and labels; the last stand before a colon. Those of the paper are used here too.
label-blank = { "" }
label-answer = Antwort
label-at-home = Zu Hause
label-by = bis
label-cautions = Vorsichtsmaßnahmen
label-colony = Volk
label-conditions = Bedingungen
label-disposed = entsorgt
label-dose = Dosis
label-entries = Einträge
label-first-free = erster freier Tag
label-for-all = für alle
label-free-for-supers = frei für Honigraum
label-from = ab
label-grounds = Gründe
label-how-it-stands = Zustand
label-how-sure = wie sicher
label-it-takes = Bedarf
label-keep-until = aufbewahren bis
label-last-blocked = Sperre bis einschließlich
label-last-used-or-disposed = zuletzt angewendet oder entsorgt
label-leaflet = Packungsbeilage
label-left = Bestand
label-lots = Posten
label-missing = fehlt
label-need = Vorgabe
label-next-and-why = was als Nächstes, und warum
label-option = Möglichkeit
label-one-dose-for-all = eine Gabe für alle
label-otherwise = sonst
label-rests-on = beruht auf
label-rule = Regel
label-rules = Regeln
label-says = Angabe
label-see-to = zu prüfen
label-short = Fehlmenge
label-since = seit
label-source = Quelle
label-sources = Quellen
label-start-days = Tage für den Beginn
label-supers-asked = Aufsetzen erlaubt?
label-title-lots = Posten
label-to-carry = mitzunehmen
label-to-dispose-of = Zu entsorgen
label-visits = Standbesuche
label-what = was
label-where = wo
label-why = warum
label-with-rules-of = enthält die Regeln von

# Answers and other words of a closed list.
label-yes = ja
label-no = nein
label-unknown = nicht bekannt
label-usable = anwendbar
label-ruled-out = ausgeschlossen
label-met = erfüllt
label-broken = nicht erfüllt
label-unknown-met-in-a-usual-year = nicht bekannt, in einem üblichen Jahr erfüllt
label-unknown-broken-in-a-usual-year = nicht bekannt, in einem üblichen Jahr nicht erfüllt
label-confidence-document = belegt
label-confidence-second-hand = aus zweiter Hand
label-confidence-unconfirmed = unbestätigt
label-must = muss
label-advice = empfohlen
label-may = kann
label-overdue = überfällig
label-none-on-record = keine eingetragen
label-on-unknown-day = Tag nicht bekannt

# A day with its name.
terminal-day = { $day } ({ $weekday ->
    [Monday] Montag
    [Tuesday] Dienstag
    [Wednesday] Mittwoch
    [Thursday] Donnerstag
    [Friday] Freitag
    [Saturday] Samstag
   *[Sunday] Sonntag
})
terminal-at-least = mindestens { $what }
terminal-label-revision = Etikett { $revision }
terminal-days-counted-by = { $notice } Tage gezählt nach { $policy }.

# supering: the board, and one colony.
terminal-supering-board = Honigraum aufsetzen erlaubt? Betrieb { $holding }, { $day }
terminal-supering-sums = { $colonies ->
    [one] 1 Volk
   *[other] { $colonies } Völker
}: { $yes } ja, { $no } nein, { $unknown } nicht bekannt
label-supering-may = Ja
label-supering-may-not = Nein
label-supering-not-known = Nicht bekannt
label-supering-in-brackets = Ein erster freier Tag in Klammern gilt, wenn alles, was im Volk ist, so früh wie erlaubt herauskommt.
label-supering-more = Ausführlich: combclear supering --full; ein einzelnes Volk: combclear supering COLONY
terminal-supering-next = als Nächstes: { $next }
terminal-supering-more = alle Gründe: combclear supering { $colony } --full
terminal-supering-breaches-in = Verstöße eingetragen: { $colonies }
terminal-supering-breaches = { $breaches ->
    [one] 1 Verstoß eingetragen
   *[other] { $breaches } Verstöße eingetragen
}
terminal-supering-one = Volk { $colony } am { $day }: { $answer }
terminal-supering-if-out = { $day }, wenn am { $out } alles heraus ist
terminal-supering-left-out = { $asks } Am Bienenstand { $apiary } haben diese Völker es in dieser Runde nicht bekommen: { $colonies }
terminal-supering-ahead = { $from } bis { $to }: { $answer }
label-supering-kept = eingetragen, eingehalten
label-supering-broken = eingetragen, nicht eingehalten
label-supering-open = eingetragen, offen
label-supering-note = Hinweis
label-supering-comes-next = was als Nächstes kommt
label-supering-must-happen-first = was zuerst geschehen muss
label-supering-missing = für eine Antwort fehlt
label-supering-missing-else = außerdem fehlt
label-supering-whole-apiary = der ganze Bienenstand
label-supering-if-nothing-else = wenn nichts weiter eingetragen wird

# due: a head and a sum around the visits.
terminal-due-head = Fällig im Betrieb { $holding }, { $from } bis { $to }
terminal-due-sums = { $items ->
    [one] 1 Aufgabe
   *[other] { $items } Aufgaben
}: { $overdue } überfällig. Muss: { $must }, empfohlen: { $advice }, kann: { $may }.
label-due-both-days = Zeiträume schließen beide Tage ein.
terminal-due-entries-lack = { $count ->
    [one] In 1 Eintrag
   *[other] In { $count } Einträgen
} fehlt etwas, was das Recht vorschreibt: combclear gaps
label-due-more = Ausführlich: combclear due --full
terminal-due-on = am { $day }
terminal-due-between = { $from } bis { $to }
terminal-due-from = ab { $day }
terminal-due-by = bis { $day }; der früheste Tag ist nicht bekannt

terminal-register-written = { $file }: das Register, Betrieb { $holding }, { $from } bis { $to }

# today: the morning's page.
terminal-today-head = { $holding }: { $day } und die nächsten sechs Tage
label-today-nothing-due = Heute und in den nächsten sechs Tagen ist nichts fällig.
label-today-nothing-else-due = Außer dem, was unten steht, ist heute und in den nächsten sechs Tagen nichts fällig.
label-today-free = Honigraum darf aufgesetzt werden
label-today-none-free = heute bei keinem Volk
terminal-today-new = frei ab heute: { $colonies }
label-today-unknown = Zu klären
terminal-today-not-free = bei { $count ->
    [one] 1 Volk
   *[other] { $count } Völkern
} darf heute kein Honigraum aufgesetzt werden: combclear supering
label-today-records = Aufzeichnungen
terminal-today-incomplete = { $required ->
    [one] in diesem Jahr fehlt 1 rechtlich vorgeschriebene Angabe
   *[other] in diesem Jahr fehlen { $required } rechtlich vorgeschriebene Angaben
}; { $irregular ->
    [one] 1 Unregelmäßigkeit
   *[other] { $irregular } Unregelmäßigkeiten
}: combclear gaps
terminal-today-not-checked = nicht bei jedem Eintrag dieses Jahres konnte geprüft werden, was das Recht vorschreibt: combclear gaps
terminal-today-complete = für dieses Jahr vollständig, { $irregular ->
    [0] keine Unregelmäßigkeiten
    [one] 1 Unregelmäßigkeit: combclear gaps
   *[other] { $irregular } Unregelmäßigkeiten: combclear gaps
}

# stock
terminal-stock-head = Vorrat im Betrieb { $holding }, { $day }
terminal-stock-course = { $colonies ->
    [one] Für eine Behandlung von 1 Volk
   *[other] Für eine Behandlung aller { $colonies } Völker
}
label-stock-look-again = Noch einmal prüfen
terminal-stock-taken-by = abgegangen mit Eintrag { $entry }
label-stock-how-to-record = Zum Eintragen: null durch Art und Ort der Entsorgung ersetzen, diese Zeilen in einer Datei speichern und combclear import FILE ausführen.
terminal-stock-dispose = { $amount } { $pack }, Posten { $lot }: { $why }
terminal-stock-dispose-lot = Posten { $lot }: { $why }
terminal-stock-leaflet-says = Packungsbeilage: { $says } ({ $confidence }; { $sources })
label-stock-leaflet-silent = die hier verwendete Packungsbeilage sagt nicht, wie: auf der Packung nachlesen oder bei der Bezugsquelle fragen
terminal-stock-empty = leer: { $lots }
terminal-stock-dispose-brief = { $amount } { $pack }, Posten { $lot }
terminal-stock-short = { $medicine }: Fehlmenge { $short }
terminal-stock-enough = ausreichend: { $medicines }
terminal-stock-need-not-known = { $medicine }: nicht bekannt, ob es reicht
label-stock-more = Ausführlich, mit den Einträgen für eine Entsorgung: combclear stock --full
terminal-stock-doses = { $doses ->
    [one] 1 Gabe
   *[other] { $doses } Gaben
}
terminal-stock-not-known = nicht bekannt für { $colonies }: { $gap }

# gaps
terminal-gaps-head = Sind die Aufzeichnungen vollständig? Betrieb { $holding }, { $from } bis { $to }
terminal-gaps-by-law = geprüft nach: { $law }
label-gaps-required = Fehlt: rechtlich vorgeschrieben
label-gaps-irregular = Unregelmäßigkeiten
label-gaps-where-applicable = Fehlt, falls zutreffend
label-gaps-advised = Empfohlen
terminal-gaps-brief = { $what }: Einträge Nr. { $numbers }
terminal-gaps-of-many = { $what }: { $count } Einträge; die ersten: Nr. { $numbers }
label-gaps-more = Ausführlich, mit der Bestandsrechnung jedes Postens: combclear gaps --full
terminal-gaps-times = { $what }: { $count }-mal
terminal-gaps-entries = Einträge Nr. { $numbers }
terminal-gaps-more-gone = { $amount } mehr abgegangen als erworben
label-gaps-count-corrected = Bestand nach Zählung berichtigt

# retention
terminal-retention-head = Wie lange die Arzneimittel-Aufzeichnungen aufzubewahren sind. Betrieb { $holding }, { $day }
terminal-retention-nothing = Am { $day } dürfen keine Aufzeichnungen archiviert werden. { label-retention-note }
terminal-retention-could-go = { $sets ->
    [one] 1 Gruppe zusammengehöriger Aufzeichnungen darf
   *[other] { $sets } Gruppen zusammengehöriger Aufzeichnungen dürfen
} am { $day } archiviert werden: { $lots }. { label-retention-note }
label-retention-at-least = „mindestens“: es ist noch etwas übrig, eine Entnahme ist nicht eingetragen, oder das Recht ist hier nur aus zweiter Hand bekannt; der Tag kann sich also noch verschieben.
label-retention-more = Ausführlich, mit Gründen und Quellen: combclear retention --full
label-retention-note = Nichts wird von selbst archiviert. Der angegebene Tag ist der letzte, an dem die Aufzeichnungen aufbewahrt werden müssen.
label-retention-own-prescription = (eine Verschreibung für sich)
label-retention-keep-it = nicht bekannt: aufbewahren

# law
label-law-union = Für einen Mitgliedstaat der Union, der hier nicht steht, werden die Regeln von eu verwendet.
terminal-law-head = Was das Recht am { $day } vorschreibt: { part-jurisdiction }
label-law-in-force = in Kraft
terminal-law-not-yet = noch nicht in Kraft, erst ab { $day }
terminal-law-over = nicht mehr in Kraft, galt bis { $day }
label-law-none-in-force = Keine hier bekannte Regel ist an diesem Tag in Kraft. Das heißt nicht, dass nichts vorgeschrieben war.
label-law-how-soon = Wann einzutragen ist:
label-law-at-the-time = zur Zeit des Geschehens
terminal-law-within = spätestens { days } danach
label-law-in-what-form = In welcher Form:
label-law-how-long = Wie lange aufzubewahren ist (es gilt die längste Frist):
# $from completes "5 years from".
terminal-law-keep = { $years ->
    [one] 1 Jahr, gerechnet ab: { $from }
   *[other] { $years } Jahre, gerechnet ab: { $from }
}
terminal-law-keep-scheme = { terminal-law-keep } (nach einem Qualitätsprogramm oder einer Empfehlung)

# leaflets
label-leaflets-more = Eine davon: combclear leaflets ID; wie gut jede belegt ist: combclear leaflets --full
terminal-leaflets-elsewhere = Gezeigt werden die Packungsbeilagen für das Rechtsgebiet des Betriebs { $holding }: { part-jurisdiction }. Andere Länder: --all-countries
label-leaflets-one-more = Ausführlich, mit Anmerkungen und Quellen: --full
label-leaflets-note = Nur was in einem Dokument gelesen wurde, kann ein Ja begründen. Was Sie selbst auf der Packung abgelesen haben, hat Vorrang vor allen diesen Angaben.

# options: the head, and what several tables share.
label-options-usable = Anwendbar
label-options-unknown = Nicht bekannt
label-options-ruled-out = Ausgeschlossen
label-options-none-in-stock = nichts im Vorrat
label-options-supers-not-known = Tag für den Honigraum nicht bekannt
label-options-supers-stay = Honigraum darf aufgesetzt sein
label-options-more = Ausführlich: --full; eine davon: --leaflet ID (ids: combclear leaflets)
label-options-apiary-more = Ausführlich, mit den Mengen für alle Völker: --full
label-options-first-find-out = Zuerst zu klären, für alles unter „Nicht bekannt“
label-options-for-all-unknown = Gemeinsame Gründe für alles unter „Nicht bekannt“
terminal-options-out-and-margin = { $out } ({ $margin })
# $rest is made of those that follow.
terminal-options-start = ab { $day }: { $rest }
terminal-options-out = heraus ab { $day }
terminal-options-supers = Aufsetzen erlaubt ab { $day }
terminal-options-before-flow = { $days ->
    [one] 1 Tag vor der Tracht
   *[other] { $days } Tage vor der Tracht
}
terminal-options-before-flow-range = { $least } bis { $most } Tage vor der Tracht
terminal-options-too-late-for-flow = bis zu { $days ->
    [one] 1 Tag
   *[other] { $days } Tage
} zu spät für die Tracht
terminal-options-advice-not-kept = { $count ->
    [one] 1 Empfehlung
   *[other] { $count } Empfehlungen
} nicht befolgt
terminal-options-find-out = zu klären: { $topics }
terminal-options-find-out-and-more = zu klären: { $topics } und { $more ->
    [one] 1 weiteres
   *[other] { $more } weitere
}
terminal-options-reason-and-more = { $why } (und { $more ->
    [one] 1 weiterer Grund
   *[other] { $more } weitere Gründe
})
terminal-options-answer-for = { $answer } für { $colonies }
terminal-options-head = Was ist anwendbar? { $what }, Beginn { $from } bis { $to }
terminal-options-colony = Betrieb { $holding }, Volk { $colony }
terminal-options-colony-at = Betrieb { $holding }, Volk { $colony } am Bienenstand { $apiary }
terminal-options-apiary = Betrieb { $holding }, { $colonies ->
    [one] 1 Volk
   *[other] { $colonies } Völker
} am Bienenstand { $apiary }
terminal-options-assumed = für den Standort angenommen, nicht eingetragen: { $assumed }
terminal-options-assumed-until = für den Standort angenommen, nicht eingetragen: { $assumed }, bis { $until }
terminal-options-power = Stromanschluss: { $power ->
    [none] keiner
    [battery] Batterie
    [generator] Stromerzeuger
    [mains] Netzstrom
   *[other] { $power }
}
terminal-options-access = Zugang: { $access ->
    [vehicle] mit Fahrzeug
    [on_foot] nur zu Fuß
    [none] keine
   *[other] { $access }
}
terminal-options-ground = Boden: { $ground ->
    [dry] trocken
    [wet] nass
    [flooded] überschwemmt
   *[other] { $ground }
}
label-options-no-flow = nächste Tracht: keine eingetragen
terminal-options-flow = nächste Tracht: { $forage }, { $stage ->
    [expected] erwartet
    [seen] beobachtet
   *[other] { $stage }
} ab { $day }
terminal-options-flow-years = nächste Tracht: { $forage }, { $stage ->
    [expected] erwartet
    [seen] beobachtet
   *[other] { $stage }
} ab { $day } ({ $years })
terminal-options-flow-early = früh { $day }
terminal-options-flow-late = spät { $day }
terminal-options-usual-year = { $days } (in einem üblichen Jahr anwendbar)
terminal-options-not-usual-year = { $days } (nicht in einem üblichen Jahr)
terminal-options-days-short = { days } zu spät
terminal-options-days-to-spare = { days } Reserve
terminal-options-missing-from = ab { $day }, { $fact }
terminal-options-times = { $doses ->
    [one] einmal
   *[other] { $doses }-mal
}
label-options-times-not-stated = Anzahl der Gaben nicht angegeben
terminal-options-out-if-brood = heraus ab { $day }, wenn Brut gesehen wird
label-options-stands-here = Gründe für diesen Platz
label-not-counted = nicht gezählt
terminal-options-in-stock = im Vorrat { $amount }
terminal-options-short = Fehlmenge { $amount }
terminal-options-short-at-least = Fehlmenge mindestens { $amount }
terminal-options-to-mix-for-all = für alle anzumischen { $ml } ml: { $mixture }
terminal-options-to-mix = anzumischen { $ml } ml: { $mixture } (Mischanleitung: { $recipe })

# options: one colony.
label-options-no-day = keiner in diesem Zeitraum
terminal-options-not-before = nicht vor dem { $day }
terminal-options-nearest = die wenigsten Hindernisse am { $day }
label-options-would-have-to-change = zu ändern wäre
terminal-options-sums = { $options ->
    [one] 1 Möglichkeit
   *[other] { $options } Möglichkeiten
}: { $usable } anwendbar, { $unknown } nicht bekannt, { $ruled_out } ausgeschlossen
label-options-first-day-shown = Der erste freie Tag gilt für einen Beginn am ersten gezeigten Tag. Alle Bedingungen einer Möglichkeit: --leaflet ID.
label-options-advice-not-kept = Empfehlung nicht befolgt
terminal-options-if-started = bei Beginn am { $day } ({ $answer })
label-options-none-of-these-days = keiner dieser Tage
terminal-options-latest-start = spätester Beginn vor der Tracht ab { $flow } ({ $year ->
    [early] frühes Jahr
    [usual] übliches Jahr
    [late] spätes Jahr
    [seen] beobachtet
   *[other] { $year }
}): { $day }
label-options-in-stock-and-in-date = im Vorrat und nicht abgelaufen
label-options-expired = bis dahin abgelaufen, oder kein Verfalldatum eingetragen
label-options-no-label = Fassung des Etiketts nicht eingetragen, oder die Packungsbeilage kennt sie nicht
terminal-options-out-between = darf heraus ab { $from }, muss heraus sein bis { $by }
terminal-options-out-from = darf heraus ab { $from }
terminal-options-out-by = muss heraus sein bis { $by }; die Mindestverweildauer ist nicht angegeben
label-options-stay-not-stated = nicht angegeben, wie lange es im Volk bleibt
terminal-options-out-without-brood = ohne Brut oder bei geringstem Brutumfang könnte es ab { $day } heraus sein: für diesen Tag zählt keine Brutkontrolle
terminal-options-not-before-if-brood = wenn Brut gesehen wird, solange es im Volk ist, nicht vor dem { $day }
terminal-options-margin = Tracht ab { $flow } ({ $year ->
    [early] frühes Jahr
    [usual] übliches Jahr
    [late] spätes Jahr
    [seen] beobachtet
   *[other] { $year }
}): { $spare }
terminal-options-visit = Standbesuch { $when }: { $what }
terminal-options-visit-opened = Standbesuch { $when }: { $what }, Beute wird geöffnet
terminal-options-by = bis { $day }, ab einem nicht bekannten Tag
## Reading: what cannot be read, and what does not fit

# Text that is not of its form; it stands in backticks.
misread-name = `{ $text }` kann nicht { $of ->
    [holding] der Name eines Betriebs
    [apiary] der Name eines Bienenstands
    [colony] der Name eines Volkes
    [medicine] der Name eines Arzneimittels
    [lot] der Name eines Postens
    [prescription] die Nummer einer Verschreibung
    [harvest-lot] die Losnummer eines Honigs
    [leaflet] die ID einer Packungsbeilage
    [method] der Name eines Verfahrens
    [jurisdiction] das Kürzel eines Rechtsgebiets
   *[person] der Name einer Person
} sein: { $why ->
    [empty] da steht nichts
    [outer-space] am Anfang oder am Ende steht ein Leerzeichen
    [control-character] ein Steuerzeichen ist enthalten
    [slash] ein `/` ist enthalten
   *[too-long] mehr als 80 Zeichen
}
misread-date = `{ $text }` ist { $wanted ->
    [date] kein Datum in der Form 2026-04-11
    [day-of-calendar] kein Tag des Kalenders
    [day-in-range] kein Tag zwischen 1900-01-01 und 2199-12-31
    [year-day] kein Tag im Jahr in der Form `11-01`
    [time-of-day] keine Uhrzeit in der Form 09:30
   *[instant] kein Zeitpunkt in der Form 2026-04-11T08:15:30.123Z
}
misread-id = `{ $text }` ist keine UUID in der Form 0198c7d2-5a3b-7c41-8f00-3b2a6e9d1c77, in Kleinbuchstaben
misread-hash = `{ $text }` ist kein Hash aus 64 Hexadezimalziffern
misread-key = `{ $text }` ist nicht die ID eines Zugangsschlüssels: acht Ziffern und Kleinbuchstaben
misread-places = `{ $text }` ist keine Liste von Stellen im Journal, der Reihe nach und jede nur einmal, etwa 12-18,25
misread-checkpoint = das ist kein Prüfpunkt: ein Prüfpunkt hat drei Zeilen, `combclear journal of <holding>`, eine Zahl, einen Hash
misread-amount = `{ $text }` ist keine Menge: { $why ->
    [not-a-number] eine Zahl ab null schreiben, etwa 2 oder 2.3
    [decimals] höchstens drei Nachkommastellen werden gespeichert
   *[too-much] höchstens 1000000 wird gespeichert
}
misread-temperature = `{ $text }` ist keine Temperatur: { $why ->
    [not-a-number] Grad Celsius schreiben, etwa 12.5
    [decimals] nur eine Nachkommastelle wird gespeichert; runden
   *[out-of-range] außerhalb des möglichen Bereichs; Grad Celsius zwischen -60 und 50 schreiben
}
misread-fahrenheit = { misread-temperature }; falls es Fahrenheit sind, { $celsius } schreiben

# JSON that is not of its form.
misread-list-for-object = erwartet: ein Objekt mit benannten Feldern, keine Liste
misread-missing-field = das Feld `{ $field }` fehlt
misread-unknown-field = unbekanntes Feld `{ $field }`, erwartet: { $known }
misread-no-fields = unbekanntes Feld `{ $field }`, hier gibt es keine Felder
misread-duplicate-field = Feld `{ $field }` doppelt
misread-unknown-word = unbekanntes Wort `{ $word }`, erwartet: { $known }
misread-wrong-type = { $found }, erwartet: { $wanted }
misread-wrong-value = { $found }, erwartet: { $wanted }
# What there is in place of an unknown field or word: one, two or several, in backticks.
misread-in-backticks = `{ $name }`
misread-either = { $one } oder { $other }
misread-one-of = eines von { $names }
misread-found = { $found ->
    [null] null
    [boolean] `{ $value }`
    [number] die Zahl `{ $value }`
    [text] der Text { $value }
    [list] eine Liste
   *[object] ein Objekt
}
misread-wanted = { $wanted ->
    [text] ein Text
    [whole] eine ganze Zahl
    [whole-to] eine ganze Zahl von 0 bis { $most }
    [list] eine Liste
    [entry] die ID eines Eintrags oder seine Nummer im Journal
   *[object] ein Objekt mit benannten Feldern
}
misread-nothing-confirmed = das Feld `says` oder `value` fehlt
misread-confirmed-twice = `says` und `value` sind beide angegeben; nur eines davon angeben
misread-near = { $message } (nahe Zeichen { $near })

# Entries that cannot be read, and how to fix them.
label-unreadable-not-text = die Zeile ist kein UTF-8-Text
label-unreadable-not-text-help = die Datei als UTF-8 speichern
label-unreadable-calendar-help = das Datum nachsehen; der Februar hat nur in Schaltjahren 29 Tage
label-unreadable-json-help = jeder Eintrag ist ein JSON-Objekt in einer Zeile; nach einem fehlenden Anführungszeichen, Komma oder einer fehlenden Klammer suchen
label-unreadable-envelope-help = ein Eintrag hat id, on, at, recorded_by, kind, body, copied_from, written_on, corrects, reason
unreadable-missing-help = im `body` dieses Eintrags der Eintragsart `{ $kind }` ergänzen
label-unreadable-duplicate-help = das Feld ist zweimal angegeben; nur eines behalten
unreadable-unknown-help = ein Eintrag der Eintragsart `{ $kind }` hat kein solches Feld; korrigieren oder entfernen
unreadable-body-help = siehe die Felder von `{ $kind }` in der API-Beschreibung
unreadable-kind = `{ $written }` ist keine Eintragsart
unreadable-kinds-help = die Eintragsarten sind: { $kinds }
label-unreadable-no-id = der Eintrag hat keine ID
label-unreadable-no-id-help = vor dem Senden eine UUID dafür erzeugen
label-unreadable-no-reason = eine Berichtigung muss ihren Grund nennen
label-unreadable-no-reason-help = in `reason` angeben, warum der frühere Eintrag falsch war
label-unreadable-null-character = der Text enthält U+0000, das für nichts steht
label-unreadable-null-character-help = dieses Zeichen weglassen
label-unreadable-copied-from-nothing = nicht angegeben, woraus der Eintrag übertragen wurde
label-unreadable-copied-from-nothing-help = in `copied_from` nennen, etwa rotes Heft 2025
label-unreadable-not-said-when-written = nicht angegeben, wann der Eintrag dort eingetragen wurde
label-unreadable-not-said-when-written-help = in `written_on` den Tag angeben, an dem er auf Papier eingetragen wurde
label-unreadable-nothing-corrected = ein Grund ist angegeben, aber kein Eintrag wird berichtigt
label-unreadable-nothing-corrected-help = den Eintrag in `corrects` nennen oder `reason` weglassen
label-unreadable-nothing-struck-out = eine Streichung muss den Eintrag nennen, den sie streicht
label-unreadable-nothing-struck-out-help = den Eintrag in `corrects` nennen und in `reason` den Grund angeben
label-unreadable-other-spelling = der Eintrag ist nicht genau so geschrieben, wie er versiegelt wurde
label-unreadable-other-spelling-help = die Datei so importieren, wie sie exportiert wurde; ein versiegelter Eintrag hat nur eine Schreibweise

# The first line of a file.
label-header-journal = die erste Zeile ist nicht die Kopfzeile eines Journals
unreadable-header-journal-help = die erste Zeile sieht so aus: { $header }
label-header-archive = die erste Zeile ist nicht die Kopfzeile eines Archivs
label-header-archive-help = die Datei nennen, die `combclear archive` geschrieben hat
header-version = { $file ->
    [archive] das Archiv hat die Formatversion `{ $found }`; dieses Programm liest Version { $known }
   *[journal] das Journal hat die Formatversion `{ $found }`; dieses Programm liest Version { $known }
}
label-header-version-help = das Programm verwenden, das die Datei geschrieben hat, oder eines, das ihre Version liest
label-header-no-number = ein versiegeltes Journal muss angeben, wie viele Einträge folgen
label-header-export-again = das Journal erneut exportieren
label-header-contents-in-drafts = eine Datei mit Entwürfen kann keine Inhalte von Dokumenten enthalten
label-header-contents-in-drafts-help = `contents` weglassen; jedes Dokument anhängen, sobald die Einträge importiert sind

# A line with the content of a document.
label-content-not-base64 = die Bytes des Dokuments sind kein base64
content-other-length = Länge des Dokuments in Bytes: { $found }; in der Zeile angegeben: { $promised }
content-size = das Dokument hat { $bytes } Byte; es muss mindestens 1 Byte und höchstens 10 MB haben
content-other-hash = das Dokument passt nicht zu seinem Hash, `{ $hash }`
label-content-other-spelling = das Dokument ist nicht genau so geschrieben, wie es exportiert wurde
label-content-again = die Datei wurde abgeschnitten oder geändert; das Journal erneut exportieren
label-content-line-help = eine Zeile mit einem Dokument hat content, bytes und base64; die Datei wurde abgeschnitten oder geändert; das Journal erneut exportieren

# Documents that cannot be kept. $kind is PDF, JPEG, PNG or HEIC.
label-unfit-empty = das Dokument ist leer
label-unfit-empty-help = die Datei selbst anhängen
unfit-too-large = das Dokument hat mehr als 10 MB ({ $most } Byte)
label-unfit-too-large-help = mit geringerer Auflösung scannen oder ein kleineres Foto machen
unfit-other-type = der Inhalt ist `{ $of }`, nicht PDF, JPEG, PNG oder HEIC
label-unfit-unknown-type = der Inhalt ist von unbekanntem Typ, nicht PDF, JPEG, PNG oder HEIC
label-unfit-other-type-help = einen Scan oder ein Foto des Papiers anhängen
unfit-cut-off = die { $kind }-Datei sieht abgeschnitten aus: { $lacks ->
    [end-of-pdf] nahe dem Ende steht kein `%%EOF`
    [end-of-jpeg] die Endmarke fehlt
    [end-of-png] der letzte Abschnitt, IEND, fehlt
    [rest-of-box] eine Box reicht über das Ende hinaus
   *[description] die Box, die das Bild beschreibt, fehlt
}
label-unfit-cut-off-help = das Original erneut kopieren, prüfen, ob sich die Kopie öffnen lässt, und diese Kopie anhängen

# What does not fit about an entry of a journal, and about a row of a database; $column is a column of it.
misfit-entry = Eintrag { $seq } ({ $id }): { $what }
misfit-out-of-place = er folgt auf Eintrag { $last }, müsste also Eintrag { $next } sein
label-misfit-other-prev = sein `prev` ist nicht der Hash des Eintrags davor
label-misfit-changed = sein Inhalt passt nicht zu seinem Hash: er wurde nach dem Eintragen geändert
label-misfit-body-gone = sein `body` ist nicht hier, und kein Eintrag besagt, dass er in ein Archiv verschoben wurde
label-misfit-number-differs = er nennt mehr oder weniger Einträge, als er ankündigt
misfit-not-borne-out = er besagt, dass Eintrag { $seq } in ein Archiv verschoben wurde; jener Eintrag bestätigt das nicht
misfit-digest-differs = was von den Einträgen { $places } übrig ist, passt nicht zu ihrem Prüfwert: einer davon wurde geändert
label-misfit-no-archive = sein `body` besagt nicht, was in ein Archiv verschoben wurde
label-misfit-empty-time = sein `happened_at` ist leer; es muss eine Uhrzeit sein oder null
label-misfit-empty-corrects = sein `corrects` ist leer; es muss eine ID sein oder null
label-misfit-half-copied = er hat nur eines von `copied_from` und `written_on`, das andere fehlt
label-misfit-half-a-correction = er hat nur eines von `corrects` und `reason`, das andere fehlt
misfit-bytes = sein `{ $column }` hat die Länge { $found } (in Bytes), nicht { $wanted }
misfit-not-text = sein `{ $column }` ist kein Text
misfit-misread = sein `{ $column }` ist nicht lesbar: { $why }
misfit-unknown-kind = sein `kind` ist `{ $kind }`; das kennt dieses Programm nicht
misfit-unknown-role = sein `role` ist `{ $role }`; das kennt dieses Programm nicht
misfit-body = sein `body` passt nicht zu seiner Eintragsart: { $why } (bei `{ $pointer }`)
misfit-place = seine Stelle ist { $seq }

## Files: what is wrong with a leaflet or a law file, and how to fix it

# The text as a whole, before any key is looked at. $says is what the parser of TOML says.
fault-toml-key-twice = `{ $key }` steht zweimal in derselben Tabelle
fault-toml-key-twice-help = nur eines von beiden behalten
fault-toml-no-value = der Schlüssel hat keinen Wert
fault-toml-no-value-help = hinter das `=` einen Wert schreiben oder die Zeile entfernen
fault-toml-not-in-quotes = `{ $written }` steht nicht in Anführungszeichen
fault-toml-not-in-quotes-help = "{ $written }" schreiben
fault-toml-not-closed = der Text ist nicht abgeschlossen
fault-toml-not-closed-help = in derselben Zeile mit einem doppelten Anführungszeichen abschließen
fault-toml = kein TOML: { $says }
fault-toml-help = { $within ->
    [list] die Liste mit `]` schließen und zwischen ihre Texte je ein Komma setzen
   *[line] jede Zeile als `key = value` schreiben, Text in doppelten Anführungszeichen, ein Datum in der Form 2026-04-11
}

# How a table is called: the file as a whole, or one of a list; $list is its key, such as rule or source.
fault-table = { $table ->
    [leaflet] Packungsbeilage
    [law] Gesetzesdatei
    [one] { $list } an dieser Stelle
   *[named] { $list } `{ $name }`
}
fault-key-unknown = { $table }: einen Schlüssel `{ $key }` gibt es hier nicht
fault-key-unknown-help = { $table }: möglich sind die Schlüssel { $keys }
fault-key-missing = { $table }: `{ $key }` fehlt
fault-key-missing-help = `{ $key }` hinzufügen: { $wanted }

# A value that its key cannot have.
fault-value = { $table }: für `{ $key }` nicht möglich ist { $found ->
    [empty-list] eine leere Liste
    [list] eine Liste
    [table] eine einzelne Tabelle
   *[written] `{ $written }`
}
fault-write = hierher gehört { $wanted }
# What a value would have to be, as it stands after "write" and after "add `key`,".
fault-wanted = { $wanted ->
    [text] ein Text in doppelten Anführungszeichen
    [date] ein Datum ohne Anführungszeichen, etwa 2026-04-11
    [true] true; sonst den Schlüssel weglassen
    [amount] eine Zahl über 0 mit höchstens drei Nachkommastellen, etwa 2 oder 2.3
    [degrees] eine Temperatur in Grad Celsius von -30 bis 60 mit höchstens einer Nachkommastelle
    [year-day] ein Tag im Jahr, Monat und Tag in doppelten Anführungszeichen, etwa "11-01"
    [file-name] der Dateiname ohne `.toml`, in doppelten Anführungszeichen
    [folder-name] der Name des Ordners, in doppelten Anführungszeichen
    [country] das Kürzel eines Landes in Kleinbuchstaben oder `eu`, in doppelten Anführungszeichen
    [method] einer der Namen in `methods`, in doppelten Anführungszeichen
    [actives] eine Liste der Wirkstoffe, etwa ["amitraz"]
    [methods] eine Liste von Namen, etwa ["trickle", "sublimation"]
    [states] eine Liste von Mitgliedstaaten, etwa ["de", "fr"]
    [revisions] eine Liste der Fassungen des Etiketts in ihrer Reihenfolge, etwa ["2013-03", "2021-02"]
    [source-keys] eine Liste von Schlüsseln der Quellen, etwa ["S1"]
    [jurisdictions] eine Liste von Rechtsgebieten, etwa ["eu"]
   *[records] eine Liste von Unterlagen, etwa ["acquisition", "proof"]
}
fault-wanted-format = die Zahl { $format }
fault-wanted-one-of = eines von: { $list }
fault-wanted-any-of = eine Liste mit beliebigen davon: { $list }
fault-wanted-whole = eine ganze Zahl von { $least } bis { $most }
fault-drop-quotes = die Anführungszeichen weglassen: { $value }
fault-day-of-calendar = ein Datum schreiben, das der Kalender hat, mit dem Jahr voran, etwa 2026-04-11
fault-day-in-range = ein Datum von { $first } bis { $last } schreiben
fault-date-alone = die Uhrzeit weglassen: { $date }
fault-in-brackets = in eckige Klammern setzen: ["{ $text }"]
# $help says to write degrees Celsius, or the number of the format.
fault-celsius = { $help }; { $fahrenheit } °F sind { $celsius } °C
fault-format = { $help }; ein späteres Format braucht eine spätere Version dieses Programms
fault-own-tables = jeden Teil { $list } unter eine eigene Zeile mit doppelten eckigen Klammern schreiben: [[{ $list }]]
fault-unlisted = { $of ->
    [needs] `{ $written }` ist kein Wort für etwas, das gebraucht wird
    [others] `{ $written }` ist nichts, was sich aus den Einträgen erkennen lässt
   *[records] eine Art von Unterlage `{ $written }` gibt es nicht
}
fault-twice = { $of ->
    [method] das Verfahren `{ $name }` ist zweimal genannt
    [state] der Mitgliedstaat `{ $name }` ist zweimal genannt
    [revision] die Fassung `{ $name }` ist zweimal genannt
    [record] `{ $name }` ist zweimal genannt
   *[include] `{ $name }` ist zweimal eingebunden
}
fault-twice-help = { $of ->
    [method] jedes Verfahren nur einmal nennen
    [state] jeden Mitgliedstaat nur einmal nennen
    [revision] jede Fassung nur einmal nennen
    [record] jede Art von Unterlage nur einmal nennen
   *[include] jedes Rechtsgebiet nur einmal nennen
}
fault-until-before-from = `until` { $until } liegt vor `from` { $from }
fault-until-before-from-help = den letzten Tag der Gültigkeit schreiben oder `until` weglassen
fault-checked-before-from = `checked_on` { $checked } liegt vor `from` { $from }
fault-checked-before-from-help = das falsche Datum korrigieren: ein Wert wird geprüft, wenn er schon gilt
fault-not-the-file = { $key ->
    [id] die ID ist `{ $name }`, die Datei aber `{ $file }`
   *[jurisdiction] das Rechtsgebiet ist `{ $name }`, die Datei aber `{ $file }`
}
fault-not-the-file-help = die Datei in `{ $name }.toml` umbenennen oder `{ $key } = "{ $stem }"` schreiben

# Sources.
fault-source-no-country = { $source }: nicht angegeben, wessen Text es ist
fault-source-no-country-help = `country` hinzufügen, etwa "gb"; `kind = "memory"`, wo kein Text gelesen wurde
fault-source-union-of-a-state = ein Text der Union hat das Land `eu`
fault-source-union-of-a-state-help = `country = "eu"` schreiben oder `kind = "authority"` für einen Text dieses Landes
fault-source-union-as-authority = die eigenen Texte der Union sind von der Art `union`
fault-source-union-as-authority-help = `kind = "union"` schreiben oder das Land, dessen Behörde es ist
fault-source-twice = die Quelle `{ $id }` ist schon in Zeile { $line } definiert
fault-source-twice-help = jeder Quelle eine eigene `id` geben oder eine von beiden entfernen
fault-source-not-defined = die Quelle `{ $id }` ist nicht definiert
fault-source-not-defined-help = eine [[source]] mit `id = "{ $id }"` hinzufügen
fault-source-not-defined-near-help = { refusal-did-you-mean-help } Wenn nicht, { fault-source-not-defined-help }
fault-source-not-cited = keine Regel führt die Quelle `{ $id }` an
fault-source-not-cited-help = in `source` einer Regel anführen oder entfernen

# Values that do not go together.
fault-not-above = `{ $most }` liegt nicht über `{ $least }`
fault-less = `{ $most }` { $high } ist weniger als `{ $least }` { $low }
fault-swap-help = vertauschen oder korrigieren
fault-leave-out-help = korrigieren oder `{ $most }` weglassen
fault-none-of = { $rule }: { $lacking ->
    [limit] keine Grenze angegeben
    [size] nichts angegeben
   *[bees] nicht angegeben, für wie viele Bienen
}
# $keys are all of them; $others are those before the $last.
fault-none-of-help = { $lacking ->
    [limit] von { $keys } eines oder beide hinzufügen, in Grad Celsius
    [size] { $others } oder { $last } hinzufügen
   *[bees] von { $keys } eines oder beide hinzufügen
}
fault-needed-help = `{ $key }` hinzufügen: `{ $of } = "{ $word }"` braucht es
fault-misplaced = `{ $key }` passt nicht zu `{ $of } = "{ $written }"`
fault-misplaced-help = entfernen oder `{ $of } = "{ $word }"` schreiben
fault-days-beside-none = ein Etikett, das keine Wartezeit kennt, gibt keine in Tagen an
fault-days-beside-none-help = entweder `{ $key }` behalten oder `none_by_label = true`
fault-nothing-stays = eine einmalige Gabe lässt nichts in der Beute zurück, also bedeutet `{ $topic }` hier nichts
fault-nothing-stays-help = die Regel entfernen oder im Kopf der Packungsbeilage `release = "slow"` schreiben
# $of is a kind of rule in backticks, or one of those that follow.
fault-two-in-force = am { $on } gelten zwei Werte für { $of }: dieser und der in Zeile { $line }
fault-two-in-force-always = vom ersten Tag an gelten zwei Werte für { $of }: dieser und der in Zeile { $line }
fault-value-of-field = `{ $field }` bei `{ $occasion }`
fault-value-of-years = `years` bei `{ $records }`
fault-value-of-days = `within_days` bei `{ $occasion }`
fault-keep-apart-help = { $how ->
    [revision] eine Regel ohne `revision` gilt für jede Fassung: die Fassung nennen, für die sie gilt, oder die Regel entfernen
    [method] eine Regel ohne `method` gilt für jedes Verfahren: das Verfahren nennen, für das sie gilt, oder die Regel entfernen
    [window] `min_c` und `max_c` desselben Fensters in eine Regel schreiben oder nur eine der beiden behalten
   *[one-of-two] nur eine der beiden behalten; oder, wenn eine die andere abgelöst hat, ihr ein späteres `from` geben
}
fault-until-help = in der Regel ohne `from` `until = { $until }` schreiben
fault-until-of-help = in der Regel, die ab { $from } gilt, `until = { $until }` schreiben
fault-any-brood = `{ $topic }` gilt hier für jeden Brutzustand, in Zeile { $line } aber nur für einen
fault-any-brood-help = beiden Regeln ein `brood` geben oder keiner
fault-stay-bounds = Mindestverweildauer { $least }, aber Höchstverweildauer { $most }, in Tagen; die andere Zahl steht in Zeile { $line }
fault-stay-bounds-help = die falsche Zahl korrigieren

# Leaflets.
fault-leaflet-no-rule = die Packungsbeilage enthält keine Regel
fault-leaflet-no-rule-help = mindestens eine [[rule]] hinzufügen
fault-other-folder = das Rechtsgebiet ist `{ $jurisdiction }`, der Ordner aber `{ $folder }`
fault-other-folder-help = die Datei in den Ordner `{ $jurisdiction }` verschieben oder `jurisdiction = "{ $folder }"` schreiben
fault-method-name-help = dem Verfahren einen kurzen Namen geben, etwa `trickle`
fault-unknown-method = die Packungsbeilage hat kein Verfahren `{ $method }`
fault-unknown-method-help = der Kopf der Packungsbeilage nennt { $declared }: dort hinzufügen oder korrigieren
fault-no-methods-help = im Kopf der Packungsbeilage `methods = ["{ $method }"]` hinzufügen oder den Schlüssel entfernen
fault-unknown-revision = die Packungsbeilage hat keine Fassung `{ $revision }` des Etiketts
fault-unknown-revision-help = "{ $revision }" im Kopf der Packungsbeilage zu `revisions` hinzufügen oder den Schlüssel entfernen
fault-not-a-state = `{ $written }` ist kein Mitgliedstaat
fault-not-a-state-help = das Kürzel eines Mitgliedstaats der Union in Kleinbuchstaben schreiben, etwa `fr`
fault-states-elsewhere = eine Packungsbeilage von `{ $jurisdiction }` gilt nur dort
fault-states-elsewhere-help = `states` entfernen: nur Packungsbeilagen von `eu` nennen sie
fault-no-authority = dieses `{ $topic }` ist als belegt gekennzeichnet, aber mit { $sources } ist kein Text einer Behörde von `{ $jurisdiction }` genannt
fault-no-authority-help = `confidence = "second_hand"` schreiben oder den eigenen Text der Behörde anführen
fault-leaflet-in-two-files = die Packungsbeilage `{ $leaflet }` steht auch in `{ $other }`
fault-leaflet-in-two-files-help = der Variante eine eigene ID geben oder nur eine der beiden Dateien behalten
fault-would-replace = eine Packungsbeilage `{ $leaflet }` ist hinterlegt; diese würde sie ersetzen
fault-would-replace-help = eine andere ID geben oder das Ersetzen ausdrücklich angeben: instead_of = "{ $leaflet }"
fault-instead-of-another = `instead_of` nennt `{ $of }`, die Packungsbeilage ist aber `{ $leaflet }`
fault-instead-of-another-help = eine Packungsbeilage ersetzt nur die mit demselben Rechtsgebiet und derselben ID
fault-instead-of-none = eine Packungsbeilage `{ $of }` ist nicht hinterlegt
fault-instead-of-none-help = `instead_of` entfernen oder die ID korrigieren

# Laws.
fault-law-no-rule = die Gesetzesdatei enthält keine Regel
fault-law-no-rule-help = mindestens eines von [[field]], [[retention]], [[time_limit]] oder [[form]] hinzufügen
fault-include-name-help = das Kürzel eines Rechtsgebiets schreiben, etwa `eu`
fault-includes-itself = `{ $jurisdiction }` bindet sich selbst ein
fault-includes-itself-help = entfernen: die eigenen Regeln gelten ohnehin
fault-leads-back = `{ $own }` bindet `{ $include }` ein, und das führt zurück zu `{ $own }`
fault-leads-back-help = eine der Einbindungen entfernen: jede muss zu weiter gefassten Regeln führen
fault-nothing-to-include = es gibt kein Recht von `{ $include }`, das sich einbinden ließe
fault-nothing-to-include-help = die Datei `{ $include }.toml` hinzufügen oder die Einbindung entfernen
fault-law-in-two-files = das Recht von `{ $jurisdiction }` steht auch in `{ $other }`
fault-law-in-two-files-help = nur eine der beiden Dateien behalten

## Keeping: the database of a journal, and the contents of documents

# $place is where the database is, $what its own words.
store-cannot-open = `{ $place }` lässt sich nicht öffnen: { $why ->
    [folder] das ist ein Ordner
    [no-folder] den Ordner dafür gibt es nicht
    [no-file] diese Datei gibt es nicht, und dort lässt sich keine anlegen
   *[refused] das System verweigert den Zugriff auf die Datei oder ihren Ordner
}
label-store-cannot-open-help = den Pfad prüfen, und ob der Ordner existiert und beschreibbar ist
store-read-only = `{ $place }` ist schreibgeschützt
label-store-read-only-help = diesem Programm erlauben, die Datei und ihren Ordner zu beschreiben, oder mit einer Kopie an anderer Stelle arbeiten
store-not-a-database = `{ $place }` ist keine Datenbank
store-foreign = `{ $place }` ist eine Datenbank eines anderen Programms
label-store-other-file-help = die Datei wurde gelassen, wie sie war; eine andere Datei nennen oder diese aus einer Kopie wiederherstellen
store-newer = `{ $place }` hat Version { $version } der Tabellen; dieses Programm kennt Versionen bis { $known }
label-store-newer-help = die Version dieses Programms verwenden, die sie angelegt hat, oder eine spätere
store-altered = Version { $version } der Tabellen in `{ $place }` ist nicht die, die dieses Programm anlegt
label-store-altered-help = das Journal mit dem Programm exportieren, das sie angelegt hat
store-full = kein Platz mehr, um in `{ $place }` zu schreiben; es wurde nichts eingetragen
label-store-full-help = Speicherplatz freimachen, dann dieselben Einträge unter denselben IDs erneut senden
store-locked = `{ $place }` ist durch ein anderes schreibendes Programm gesperrt
label-store-locked-help = erneut versuchen; bleibt die Sperre, nach einem anderen Programm suchen, das die Datei geöffnet hat
store-unreachable = die Datenbank bei `{ $place }` antwortet nicht: { $what }
label-store-unreachable-help = prüfen, ob der Server läuft und erreichbar ist, dann dieselben Einträge unter denselben IDs erneut senden
store-not-admitted = die Datenbank bei `{ $place }` weist diesen Benutzer ab: { $what }
label-store-not-admitted-help = Benutzer, Passwort und Datenbank in der Adresse prüfen, und was dieser Benutzer dort darf: er muss in dieser Datenbank Tabellen und Schemas anlegen können
store-follows = `{ $place }` folgt nur einem anderen Server und kann hinter ihm zurückliegen, deshalb wird daraus nichts beantwortet
label-store-follows-help = den Server nennen, dem dieser folgt; exportieren geht auch hier
store-too-old = `{ $place }` läuft mit PostgreSQL { $version }; dieses Programm braucht Version { $least } oder später
label-store-too-old-help = den Server aktualisieren oder das Journal in einer Datei führen: `sqlite:journal.db`
store-other-encoding = die Datenbank bei `{ $place }` speichert Texte als { $encoding }, nicht als UTF8
label-store-other-encoding-help = eine Datenbank mit `encoding 'UTF8'` anlegen
store-damaged = `{ $place }` ist beschädigt: { $what }
label-store-damaged-help = die Datei lassen, wie sie ist, und das Journal aus einer Kopie oder einem Export wiederherstellen
store-device = `{ $place }` ließ sich nicht lesen oder schreiben: { $what }
label-store-device-help = den Datenträger und seine Verbindung prüfen, dann erneut versuchen
store-replaced = `{ $place }` wurde entfernt oder ersetzt, während die Datei geöffnet war; darin wurde nichts eingetragen
label-store-replaced-help = die Datei zurücklegen oder dieses Programm beenden und mit der Datei starten, die jetzt dort liegt
store-guards = die Tabellen in `{ $place }` sind nicht so, wie dieses Programm sie anlegt: { $names }
label-store-guards-help = jemand hat sie mit einem anderen Programm geändert, also können auch Einträge geändert worden sein: die Datei lassen, wie sie ist, und das Journal aus einer Kopie oder einem Export wiederherstellen
store-broken = das Journal von `{ $holding }` wurde bei Eintrag { $seq } geändert: { $what }
label-store-broken-help = aus einem geänderten Journal wird nichts beantwortet: die Datei lassen, wie sie ist, und das Journal aus einer Kopie oder einem Export wiederherstellen
store-lost = das Journal von `{ $holding }` ist beschädigt: Einträge, die über ihre Stelle zu finden sind: { $by_place }, über ihre ID: { $by_id }
store-unreadable = Eintrag { $seq } von `{ $holding }` ist nicht lesbar: { $what }
store-unreadable-name = Einträge sind unter einem Namen gespeichert, der nicht lesbar ist: { $what }
label-store-unreadable-help = das Journal prüfen: es wurde außerhalb dieses Programms geändert, oder eine neuere Version davon hat den Eintrag geschrieben
store-unreadable-key = Zugangsschlüssel `{ $id }` ist nicht lesbar: { $what }
store-database = die Datenbank bei `{ $place }` lehnt ab: { $what }
label-store-database-help = es wurde nichts eingetragen; erneut versuchen, und melden, wenn es so bleibt

# Addresses of databases.
address-no-kind = `{ $address }` gibt nicht an, welche Art von Datenbank es ist
address-for-a-file = für eine Datei `sqlite:{ $address }` schreiben
address-other-kind = `{ $kind }` ist keine Art von Datenbank, in der sich ein Journal führen lässt
label-address-name-a-file = eine Datei nennen: `sqlite:journal.db`, oder einen Server: `postgres://user@server/database`
label-address-unreadable-server = die Adresse des Servers ist nicht lesbar
label-address-unreadable-server-help = `postgres://user@server/database` schreiben; Zeichen wie `@` und `/` in einem Passwort als `%40` und `%2F` schreiben
address-other-parameter = `{ $parameter }` ist kein Parameter einer Serveradresse
label-address-other-parameter-help = üblich sind `sslmode`, `sslrootcert`, `host` und `options`
label-address-no-file = die Adresse nennt keine Datei
label-address-no-file-help = `sqlite:journal.db` schreiben
address-not-a-path = `{ $file }` ist nicht der Pfad einer Datei
label-address-not-a-path-help = ein Journal wird in einer Datei geführt; ihren einfachen Pfad schreiben, wie in `sqlite:journal.db`
address-other-asked = `{ $asked }` ist keine Option für eine Datei
label-address-other-asked-help = `?mode=rw` öffnet nur eine vorhandene Datei; ein `?` im Dateinamen als `%3F` schreiben
address-unreadable-path = `{ $file }` ist nicht als Pfad lesbar
label-address-unreadable-path-help = ein `%` im Dateinamen als `%25` schreiben

# Documents whose content is not kept as it was attached. $of is what the document belongs to.
keeping-kept = Dokument `{ $hash }` (gehört zu: { $of }; Eintrag { $seq }, { $id }): gespeichert
keeping-missing = Dokument `{ $hash }` (gehört zu: { $of }; Eintrag { $seq }, { $id }): fehlt, unter seinem Hash ist nichts gespeichert
label-keeping-missing-help = dieselbe Datei erneut anhängen oder einen Export importieren, der sie enthält
keeping-altered = Dokument `{ $hash }` (gehört zu: { $of }; Eintrag { $seq }, { $id }): verändert, der Inhalt ist nicht der, der angehängt wurde
label-keeping-altered-help = einen Export aus der Zeit vor der Änderung in eine neue Datenbank importieren (--db) und mit dieser weiterarbeiten

# A journal held against a checkpoint.
missed-other-holding = der Prüfpunkt gehört zu `{ $of }`
missed-shorter = das Journal hatte { $had ->
    [one] 1 Eintrag
   *[other] { $had } Einträge
}, als der Prüfpunkt gesetzt wurde, und hat jetzt { $has }
missed-differs = Eintrag { $seq } hatte einen anderen Hash, als der Prüfpunkt gesetzt wurde: er oder ein Eintrag davor wurde ersetzt

# Entries that were not recorded.
keeping-conflict = ein Eintrag mit der ID { $id } ist schon eingetragen, mit anderem Inhalt
label-keeping-busy = andere schreiben fortlaufend in dieses Journal; es wurde nichts eingetragen
label-misfit-other-entry = das Journal hat an seiner Stelle einen anderen Eintrag
label-misfit-other-meaning = der Text in seinem `body` passt nicht zum Eintrag
label-misfit-moves-nothing = er verschiebt nichts in ein Archiv
label-misfit-went-before = sein `body` war schon verschoben
label-misfit-contents-differ = er nennt mehr oder weniger Inhalte, als verschoben werden
misfit-nothing-to-move = davor gibt es keinen Eintrag { $seq }, der verschoben werden könnte
misfit-no-document = es gibt kein Dokument { $hash }, das verschoben werden könnte

## Service: what is wrong with a request

http-not-an-entry = das ist nicht die ID eines Eintrags: { $why }
label-http-id-help = die ID eines Eintrags ist eine UUID, etwa 01964c7e-6f00-7000-8000-000000000001
label-http-document-help = GET /holdings/{"{"}holding{"}"}/documents nennt die Hashes der angehängten Dokumente
label-http-name-help = ein Name hat 1 bis 80 Zeichen, kein `/`, keine Steuerzeichen und am Anfang und Ende kein Leerzeichen
http-given-twice = der Abfrageparameter `{ $parameter }` ist zweimal angegeben
label-http-give-once = nur einmal angeben
http-missing = der Abfrageparameter `{ $parameter }` fehlt
label-http-add-to-address = in der Adresse ergänzen
http-no-parameter = dieser Pfad hat keinen Abfrageparameter `{ $parameter }`
# $known are the parameters that it takes, in backticks.
http-takes = möglich sind hier: { $known }
label-http-takes-none = dieser Pfad hat keine Abfrageparameter
http-correct-or-leave-out = `{ $parameter }` korrigieren oder weglassen
http-not-a-limit = `{ $text }` ist keine ganze Zahl von 1 bis { $most }
http-not-a-place = `{ $text }` ist keine Stelle in einem Journal: eine ganze Zahl, 0 oder mehr
http-not-yes-or-no = `{ $text }` ist weder `true` noch `false`
http-at-line = Zeile { $line }, Spalte { $column }: { $what }
label-http-json-help = dort oder kurz davor nach einem fehlenden Anführungszeichen, Komma oder einer fehlenden Klammer suchen
label-http-path-not-utf8 = ein Teil des Pfads ist nach dem Auflösen der Prozentkodierung kein UTF-8
label-http-path-not-utf8-help = die UTF-8-Bytes kodieren, etwa `%C3%B6` für `ö`
label-http-body-not-whole = der Rumpf der Anfrage kam nicht vollständig an
label-http-body-not-utf8 = der Rumpf ist kein UTF-8-Text
label-http-body-not-utf8-help = als UTF-8 kodieren
label-http-body-undeclared = die Anfrage gibt den Medientyp ihres Rumpfs nicht an
http-body-declared = der Rumpf ist als `{ $declared }` angegeben
label-http-declare-json = mit dem Header `Content-Type: application/json` senden
label-http-site-until-alone = `site_until` ist angegeben, aber über den Standort ist nichts angenommen
label-http-site-until-alone-help = auch `power`, `access` oder `ground` angeben oder es weglassen
label-http-no-pdf = dieser Dienst kann kein PDF erzeugen
label-http-no-pdf-help = `html` verlangen, das zum Drucken gemacht ist, oder das Programm mit seinem Schriftsatz bauen

# Requests that no handler answers, and journals that cannot be read or written.
http-nothing-recorded = { $why }; es wurde nichts eingetragen
label-http-nothing-served = unter diesem Pfad gibt es nichts
label-http-wrong-method = dieser Pfad nimmt diese Methode nicht an; siehe den Header Allow
label-http-body-too-large = der Rumpf ist größer als 4 MiB
label-http-timeout = innerhalb von 30 Sekunden lag keine Antwort vor; eine Eintragung kann trotzdem erfolgt sein
label-http-reports-busy = es werden schon so viele Auswertungen berechnet, wie dieser Rechner schafft
label-http-reports-busy-help = gleich noch einmal fragen; Fragen zu einem einzelnen Volk oder Bienenstand werden inzwischen beantwortet
label-http-bodies-busy = andere senden schon so viel, wie dieser Dienst auf einmal annimmt; es wurde nichts eingetragen
label-http-bodies-busy-help = gleich noch einmal senden, unter derselben ID
label-http-unreadable = die Anfrage ließ sich nicht lesen
label-http-internal = interner Fehler; nicht bekannt, ob die Anfrage gewirkt hat
label-http-not-ready = die Datenbank antwortet nicht
http-not-own-name = `{ $host }` ist kein lokaler Name dieses Rechners
label-http-no-key = hier ist ein Zugangsschlüssel nötig, und es kam keiner, der gilt
label-http-foreign-holding = dieser Zugangsschlüssel ist für einen anderen Betrieb
label-http-too-many-requests = zu viele Anfragen in kurzer Zeit
http-not-allowed = ein Zugangsschlüssel der Rolle `{ $role }` erlaubt nicht, { $deed ->
    [read] die Einträge eines Betriebs zu lesen
    [add] Einträge vorzunehmen
    [correct] Einträge zu berichtigen oder zu streichen
    [begin] einen Betrieb anzulegen
   *[watch] die Messwerte des Dienstes zu sehen
}
http-not-allowed-kind = ein Zugangsschlüssel der Rolle `{ $role }` erlaubt keine Einträge der Eintragsart `{ $kind }`
label-http-not-allowed-help = den Tierhalter bitten, es einzutragen
http-key-ended = die Gültigkeit von Zugangsschlüssel `{ $id }` wurde beendet
http-key-ran-out = Zugangsschlüssel `{ $id }` ist am { $until } abgelaufen
label-http-store-locked = das Journal ist durch ein anderes schreibendes Programm gesperrt
label-http-store-unreachable = die Datenbank ist nicht erreichbar
label-http-store-full = kein Platz mehr, um das Journal zu schreiben
label-http-store-read-only = das Journal ist lesbar, aber nicht beschreibbar
label-http-store-failed = das Journal ließ sich nicht lesen oder schreiben

# What is asked for and is not there. { $slugs } are the kinds of problems.
http-no-holding = unter dem Betrieb `{ $holding }` ist nichts eingetragen
label-http-no-holding-help = GET /holdings nennt die Betriebe, die Einträge haben; PUT /holdings/{"{"}holding{"}"} legt einen neuen an
http-no-apiary = der Betrieb `{ $holding }` hat keinen Bienenstand `{ $apiary }`
label-http-no-apiary-help = unter den Bienenständen des Betriebs nachsehen; ist er neu, seine Angaben eintragen
http-no-colony = kein Eintrag des Betriebs `{ $holding }` nennt ein Volk `{ $colony }`
label-http-no-colony-help = unter den Völkern des Betriebs nachsehen; ist es neu, als neues Volk eintragen
http-no-lot = der Betrieb `{ $holding }` hat keinen Posten `{ $lot }`
label-http-no-lot-help = im Vorrat des Betriebs nachsehen; ist er neu, seinen Erwerb eintragen
http-no-leaflet = für `{ $jurisdiction }` gibt es keine Packungsbeilage `{ $leaflet }`
http-no-active = keine Packungsbeilage hat den Wirkstoff `{ $active }`
http-leaflet-for = es gibt eine für `{ $jurisdiction }`
label-http-lists-leaflets = GET /leaflets nennt die vorhandenen Packungsbeilagen
http-no-file = die Seite hat keine Datei `{ $file }`
label-http-no-file-help = die Seite liegt unter /docs
http-no-problem = es gibt kein Problem `{ $slug }`
http-problems-are = die Probleme sind: { $slugs }

# Entries, and batches of them. { $why } is a refusal.
http-no-entry = der Betrieb `{ $holding }` hat keinen Eintrag mit der ID { $id }
http-no-entry-help = GET { $path } nennt, was eingetragen ist
label-http-not-an-object = das ist kein Eintrag
label-http-not-an-object-help = ein Eintrag ist ein JSON-Objekt mit on, recorded_by, kind, body und seinen übrigen Feldern
http-other-id = die ID im Eintrag ist { $id }, die ID im Pfad aber { $named }
label-http-other-id-help = `id` weglassen oder beide gleich machen
label-http-new-id = für einen neuen Eintrag eine neue ID erzeugen oder den eingetragenen mit einem weiteren Eintrag berichtigen
label-http-not-a-batch = der Rumpf ist kein Stapel von Einträgen
http-batch-of = der Stapel hat { $entries ->
    [one] 1 Eintrag
   *[other] { $entries } Einträge
}
http-not-a-batch-help = ein JSON-Array mit 1 bis { $most } Einträgen senden
http-not-a-form = der Rumpf ist kein ausgefülltes Formular: { $why }
label-http-not-a-form-help = ein Objekt mit on, recorded_by und fields senden; jedes Feld ist eine Liste von Texten unter seinem Schlüssel
http-form-faults = { $faults ->
    [one] eine Angabe im Formular ist zu korrigieren
   *[other] { $faults } Angaben im Formular sind zu korrigieren
}
label-http-form-untrue = was das Formular angibt, kann nicht stimmen
http-no-form = für `{ $kind }` gibt es kein Formular
http-and-more = { $first }, und { $more } weitere
http-untrue = { label-problem-refused-entry }: { $why }
http-untrue-in-batch = Eintrag { $number } von { $of } im Stapel kann nicht stimmen: { $why }

# Documents. { $kind } is PDF, JPEG, PNG or HEIC.
http-no-document = kein Eintrag von `{ $holding }` hat ein Dokument `{ $hash }` angehängt
http-no-document-help = GET { $path } nennt die angehängten Dokumente
http-document-missing = der Inhalt von Dokument `{ $hash }` ist nicht gespeichert
label-http-document-missing-help = dieselbe Datei mit PUT unter der ID ihres Eintrags erneut senden oder einen Export importieren, der sie enthält
http-document-altered = der zu Dokument `{ $hash }` gespeicherte Inhalt ist nicht der, der angehängt wurde
label-http-document-altered-help = das Journal aus einer Kopie wiederherstellen oder einen Export aus der Zeit vor der Änderung in eine neue Datenbank importieren
label-http-document-of-nothing = weder ein Posten noch eine Verschreibung ist genannt
label-http-document-of-two-things-help = nur eines von beiden nennen und das Dokument dem anderen unter einer eigenen ID anhängen
http-document-declared = das Dokument ist als `{ $declared }` angegeben, der Inhalt ist aber { $kind }
http-document-declared-help = den Header Content-Type weglassen oder `Content-Type: { $media-type }` senden
label-http-upload-not-whole = die Übertragung brach ab: das Dokument kam nicht vollständig an
http-upload-shorter = die Übertragung brach ab: angekündigte Bytes: { $announced }, angekommen: { $arrived }
label-http-upload-broken-off-help = die ganze Datei unter derselben ID erneut senden
label-http-upload-stalled = die Übertragung blieb mittendrin stehen
label-http-upload-too-slow = die Übertragung kam nicht rechtzeitig an
label-http-upload-too-slow-help = unter derselben ID erneut senden

# Names of files; the reasons stand as { $why }.
http-not-a-file-name = `{ $name }` kann nicht der Name einer Datei sein: { $why }
label-http-file-name-empty = da steht nichts
label-http-file-name-too-long = mehr als 200 Zeichen
label-http-file-name-slash = ein `/` oder ein `\` ist enthalten
label-http-file-name-control-character = ein Steuerzeichen ist enthalten
label-http-file-name-help = den Namen ohne Ordner angeben oder `file_name` weglassen

## Problems: each kind that the service knows

# Its title, and its page, which says what to do.
part-nothing-was-recorded = Es wurde nichts eingetragen.
part-names-are-exact = Namen müssen genau übereinstimmen, auch in Groß- und Kleinschreibung.
http-status = HTTP-Status { $status }
label-problem-bad-parameter = ein Teil der Adresse ist nicht verwendbar
label-problem-bad-parameter-page = Ein Teil des Pfads oder ein Abfrageparameter ist falsch geschrieben, außerhalb des möglichen Bereichs oder diesem Pfad nicht bekannt. `errors` nennt ihn und die richtige Schreibweise. Ein Datum ist ein Kalendertag wie 2026-04-11.
label-problem-malformed-json = der Rumpf ist kein JSON
label-problem-malformed-json-page = Der Rumpf endet zu früh oder ist an der genannten Zeile und Spalte kein gültiges JSON. { part-nothing-was-recorded } Korrigieren und unter derselben ID erneut senden.
label-problem-unreadable-body = der Rumpf ist nicht lesbar
label-problem-unreadable-body-page = Der Rumpf kam nicht vollständig an oder ist kein UTF-8-Text. { part-nothing-was-recorded } Unter derselben ID erneut senden.
label-problem-foreign-host = dieser Hostname wird nicht angenommen
label-problem-foreign-host-page = Ohne Zugangsschlüssel antwortet der Dienst nur unter den lokalen Namen dieses Rechners: localhost, 127.0.0.1, [::1]. Sonst könnte eine fremde Webseite ihren eigenen Namen auf diesen Rechner zeigen lassen und das Journal lesen und beschreiben.
label-problem-unknown-path = diesen Pfad gibt es nicht
label-problem-unknown-path-page = Unter diesem Pfad gibt es nichts. /openapi.json nennt jeden Pfad, /docs zeigt sie. Ein Name kann kein `/` enthalten; andere Sonderzeichen mit Prozentzeichen kodieren.
label-problem-unknown-holding = diesen Betrieb gibt es nicht
label-problem-unknown-holding-page = Unter diesem Namen ist nichts eingetragen. GET /holdings nennt die Namen, die Einträge haben. Ein Betrieb wird bewusst angelegt, mit PUT /holdings/{"{"}holding{"}"} und seinem ersten Eintrag, damit nie ein Schreibfehler einen zweiten entstehen lässt.
label-problem-unknown-entry = diesen Eintrag gibt es nicht
label-problem-unknown-entry-page = Der Betrieb hat keinen Eintrag mit dieser ID. Kam nach dem Senden keine Antwort, unter derselben ID erneut senden: er wird nur einmal eingetragen. GET /holdings/{"{"}holding{"}"}/entries nennt, was eingetragen ist.
label-problem-unknown-document = dieses Dokument gibt es nicht
label-problem-unknown-document-page = Kein Eintrag des Betriebs hat ein Dokument mit diesem Hash angehängt. GET /holdings/{"{"}holding{"}"}/documents nennt die angehängten Dokumente.
label-problem-missing-document = der Inhalt des Dokuments fehlt
label-problem-missing-document-page = Ein Eintrag hat das Dokument angehängt, aber sein Inhalt ist nicht hier: der Eintrag kam ohne ihn an, oder der Inhalt wurde entfernt. Dieselbe Datei mit PUT unter der ID des Eintrags erneut senden oder einen Export importieren, der sie enthält.
label-problem-unknown-colony = dieses Volk gibt es nicht
label-problem-unknown-colony-page = Kein Eintrag des Betriebs nennt ein Volk dieses Namens, oder der Eintrag, der es nannte, wurde gestrichen. { part-names-are-exact } Gibt es das Volk, ist es aber nicht eingetragen, einen Eintrag der Eintragsart colony_established vornehmen.
label-problem-unknown-apiary = diesen Bienenstand gibt es nicht
label-problem-unknown-apiary-page = Ein Bienenstand dieses Namens ist nicht eingetragen. { part-names-are-exact } Ist er neu, einen Eintrag der Eintragsart apiary_details vornehmen.
label-problem-unknown-lot = diesen Posten gibt es nicht
label-problem-unknown-lot-page = Kein Eintrag des Betriebs nennt den Erwerb eines Postens dieses Namens, oder der Eintrag, der ihn nannte, wurde gestrichen. { part-names-are-exact } Ist der Posten neu, einen Eintrag der Eintragsart lot_acquired vornehmen.
label-problem-unknown-leaflet = diese Packungsbeilage gibt es nicht
label-problem-unknown-leaflet-page = Für dieses Rechtsgebiet ist keine Packungsbeilage mit dieser ID hinterlegt. { label-http-lists-leaflets }. Ein Arzneimittel ohne Packungsbeilage lässt sich mit eigenen Angaben beschreiben.
label-problem-unknown-law = dieses Recht gibt es hier nicht
label-problem-unknown-law-page = Für dieses Rechtsgebiet ist kein Recht eingebaut. GET /laws nennt, welches eingebaut ist; ein Mitgliedstaat der Union, für den hier kein eigenes Recht eingebaut ist, hat das der Union. Dieses Programm weiß nicht, was das Recht dort vorschreibt: die Behörde fragen.
label-problem-unknown-problem = dieses Problem gibt es nicht
label-problem-unknown-problem-page = Zu einem Problem dieses Namens gibt es keine Seite. Der `type` eines Problemdokuments ist die Adresse seiner Seite.
label-problem-wrong-method = falsche Methode für diesen Pfad
label-problem-wrong-method-page = Der Pfad stimmt, die Methode nicht. Der Header Allow nennt die Methoden, die er annimmt. Einträge werden nie geändert oder gelöscht: einen neuen Eintrag vornehmen, der den falschen in `corrects` nennt.
label-problem-same-id-other-content = die ID gehört schon zu einem anderen Eintrag
label-problem-same-id-other-content-page = Ein Eintrag mit dieser ID ist schon eingetragen, und der gesendete weicht davon ab. { part-nothing-was-recorded } Zum Vergleich den Eintrag mit GET abrufen. Ist dies ein neuer Eintrag, eine neue ID dafür erzeugen. Ist der eingetragene falsch, einen neuen Eintrag vornehmen, der ihn in `corrects` nennt und den Grund angibt.
label-problem-holding-exists = den Betrieb gibt es schon
label-problem-holding-exists-page = Ein Betrieb wird nur einmal angelegt. { part-nothing-was-recorded } Einträge mit PUT oder POST unter /holdings/{"{"}holding{"}"}/entries vornehmen; ein Wechsel des Tierhalters oder des Landes ist ein Eintrag der Eintragsart holding_details.
label-problem-stalled-body = der Rumpf kam nicht weiter an
label-problem-stalled-body-page = Einige Sekunden lang kam vom Rumpf nichts mehr an, deshalb wurde die Anfrage abgebrochen. { part-nothing-was-recorded } Unter derselben ID erneut senden.
label-problem-body-too-large = der Rumpf ist zu groß
label-problem-body-too-large-page = Ein Rumpf hat höchstens 4 MiB, ein Dokument höchstens 10 MB. { part-nothing-was-recorded } Einträge in mehreren Stapeln senden; ein Dokument mit geringerer Auflösung scannen oder ein kleineres Foto machen.
label-problem-wrong-media-type = der Rumpf ist nicht als JSON angegeben
label-problem-wrong-media-type-page = Den Rumpf mit dem Header `Content-Type: application/json` senden. { part-nothing-was-recorded }
label-problem-other-document-type = das Dokument ist von anderem Typ
label-problem-other-document-type-page = Ein Dokument ist PDF, JPEG, PNG oder HEIC, wie sein Inhalt zeigt; weder der Dateiname noch der Content-Type zählt. Ist ein Content-Type angegeben, muss es der richtige sein. { part-nothing-was-recorded } Einen Scan oder ein Foto des Papiers anhängen.
label-problem-unfit-document = das Dokument ist unvollständig
label-problem-unfit-document-page = Das Dokument ist leer oder sieht abgeschnitten aus: sein Ende fehlt. { part-nothing-was-recorded } Das Original erneut kopieren, prüfen, ob sich die Kopie öffnen lässt, und diese Kopie unter derselben ID senden.
label-problem-altered-document = das Dokument wurde verändert
label-problem-altered-document-page = Der gespeicherte Inhalt ist nicht der, der angehängt wurde, deshalb wird er nicht ausgegeben. Das Journal aus einer Kopie wiederherstellen oder einen Export aus der Zeit vor der Änderung in eine neue Datenbank importieren.
label-problem-unreadable-entry = der Eintrag hat nicht die Felder seiner Eintragsart
label-problem-unreadable-entry-page = Ein Feld fehlt, ist unbekannt oder falsch geschrieben. `errors` nennt jedes mit einem JSON-Zeiger. { part-nothing-was-recorded } Die Felder jeder Eintragsart stehen in /openapi.json und unter /docs.
label-problem-refused-entry = der Eintrag kann nicht stimmen
label-problem-refused-entry-page = Der Eintrag widerspricht dem, was eingetragen ist: etwa eine Entnahme vor dem Einlegen, ein Volk oder Posten, den niemand eingetragen hat, oder ein Tag in der Zukunft. Es wurde nichts eingetragen; ein Stapel wird als Ganzes abgelehnt. `errors` nennt den Widerspruch. Ist der schon vorhandene Eintrag der falsche, zuerst diesen berichtigen. Ein Regelverstoß ist kein Grund zur Ablehnung: eintragen, was geschehen ist.
label-problem-no-key = kein Zugangsschlüssel
label-problem-no-key-page = Dieser Dienst verlangt einen Zugangsschlüssel. Im Header senden: `Authorization: Bearer KEY`. Wer den Dienst betreibt, erzeugt Zugangsschlüssel mit `combclear key add`.
label-problem-ended-key = der Zugangsschlüssel gilt nicht mehr
label-problem-ended-key-page = Der Zugangsschlüssel galt einmal und gilt nicht mehr. Einen anderen beim Betreiber des Dienstes anfordern.
label-problem-not-allowed = der Zugangsschlüssel erlaubt das nicht
label-problem-not-allowed-page = Jeder Zugangsschlüssel hat eine Rolle. `keeper` (Imker) darf im Betrieb alles; `helper` (Hilfskraft) liest und nimmt Einträge vor, berichtigt aber keine; `vet` (Tierarzt) liest und trägt Verschreibungen, den eigenen Vorrat des Tierarztes und die Anwendungen ein; `reader` (Leserecht) liest nur; `operator` (Betreiber) legt Betriebe an und sieht, was der Dienst misst. { part-nothing-was-recorded }
label-problem-foreign-holding = ein Zugangsschlüssel für einen anderen Betrieb
label-problem-foreign-holding-page = Ein Zugangsschlüssel gilt für einen Betrieb. Ob es einen anderen mit dem angefragten Namen gibt, wird nicht gesagt.
label-problem-too-many-requests = zu viele Anfragen
label-problem-too-many-requests-page = Mit demselben Zugangsschlüssel, oder von Clients ohne einen, kamen mehr Anfragen, als der Dienst annimmt. So viele Sekunden warten, wie der Header Retry-After angibt.
label-problem-store-failed = das Journal ist nicht lesbar oder nicht beschreibbar
label-problem-store-failed-page = Die Datenbank konnte ihre Arbeit nicht tun; `errors` nennt die Abhilfe, das Protokoll des Dienstes sagt mehr. Nach einer misslungenen Eintragung den Eintrag unter seiner ID nachsehen oder unter derselben ID erneut senden: er wird nur einmal eingetragen.
label-problem-store-untrusted = das Journal hält der Prüfung nicht stand
label-problem-store-untrusted-page = Was die Datenbank enthält, wurde außerhalb dieses Programms geändert oder beschädigt, deshalb wird daraus nichts beantwortet und nichts darin eingetragen. `errors` und das Protokoll des Dienstes nennen den Fehler. Die Datei lassen, wie sie ist, und das Journal aus einer Kopie oder einem Export wiederherstellen.
label-problem-store-full = kein Platz mehr
label-problem-store-full-page = Der Datenträger der Datenbank nimmt nichts mehr auf. { part-nothing-was-recorded } Fragen werden weiter beantwortet. Platz schaffen, dann dieselben Einträge unter denselben IDs erneut senden.
label-problem-internal = ein Fehler in diesem Programm
label-problem-internal-page = Das ist ein Fehler des Programms, nicht der Anfrage. Das Protokoll des Dienstes sagt mehr; dort nach der x-request-id der Anfrage suchen. Eine Eintragung kann unter derselben ID erneut gesendet werden: sie erfolgt nur einmal.
label-problem-store-busy = das Journal ist belegt
label-problem-store-busy-page = Ein anderes Programm oder ein anderer Client schreibt gerade in das Journal. { part-nothing-was-recorded } Gleich noch einmal versuchen, mit derselben ID.
label-problem-store-unreachable = die Datenbank ist nicht erreichbar
label-problem-store-unreachable-page = Der Dienst läuft, aber die Datenbank dahinter antwortet nicht. Der Dienst findet sie von selbst wieder. Ein Eintrag kann trotzdem eingetragen worden sein: unter derselben ID erneut senden. Er wird nur einmal eingetragen.
label-problem-service-busy = zu viel wird auf einmal verlangt
label-problem-service-busy-page = Der Dienst übernimmt nur eine begrenzte Menge auf einmal, und für diese Anfrage war einige Sekunden lang kein Platz. { part-nothing-was-recorded } Nach so vielen Sekunden, wie der Header Retry-After angibt, erneut senden; einen Eintrag oder ein Dokument unter derselben ID.
label-problem-not-ready = nicht bereit zu antworten
label-problem-not-ready-page = Die Datenbank antwortet nicht. Das Protokoll des Dienstes sagt mehr.
label-problem-timeout = es dauerte zu lange
label-problem-timeout-page = Innerhalb von 30 Sekunden lag keine Antwort vor. Eine Eintragung läuft trotzdem bis zum Ende: den Eintrag unter seiner ID nachsehen oder unter derselben ID erneut senden. Er wird nur einmal eingetragen.
## Command line: what a command did, and why it could not

# Around a message and how to fix it; a second help may follow the first.
failure-error = Fehler: { $message }
failure-warning = Warnung: { $message }
clock-is-behind = nach der Uhr dieses Rechners ist heute { $today }, aber Eintrag { $seq } wurde am { $recorded_at } eingetragen
label-clock-is-behind-help = die Uhr stellen, bevor etwas eingetragen oder nach dem heutigen Stand gefragt wird; ging sie damals falsch, den Tag angeben
failure-help = Hilfe: { $help }
failure-help-and = { $help }; { $more }
label-failure-try-again-unrecorded = es wurde nichts eingetragen; noch einmal versuchen
label-failure-swap-days = --from und --to vertauschen oder eine der beiden Angaben berichtigen

# Files and standard output. $why is what the system says, in the labels below where there is one.
label-system-no-such-file = eine solche Datei oder einen solchen Ordner gibt es nicht
label-system-refuses = das System verweigert den Zugriff
label-system-is-a-folder = es ist ein Ordner
label-system-no-folder = ein Teil des Pfads ist kein Ordner
label-system-disk-full = auf dem Datenträger ist kein Platz mehr
label-system-not-text = es ist kein UTF-8-Text
file-cannot-read = `{ $file }` lässt sich nicht lesen: { $why }
file-cannot-make = `{ $file }` lässt sich nicht anlegen: { $why }
file-cannot-write = `{ $file }` lässt sich nicht schreiben: { $why }
file-is-there = `{ $file }` gibt es schon; die Datei blieb unverändert
file-named-twice = `{ $file }` ist zweimal angegeben, für verschiedene Zwecke
label-file-name-a-new-one = eine Datei angeben, die es noch nicht gibt
label-file-name-one-for-each = für jeden Zweck eine eigene Datei angeben
label-file-name-a-folder = eine Datei in einem vorhandenen Ordner angeben
label-file-name-a-writable-folder = eine Datei in einem vorhandenen Ordner angeben, in den geschrieben werden darf
label-file-look-try-again = den Zielort prüfen, dann noch einmal versuchen
label-file-not-whole = was bisher geschrieben wurde, ist unvollständig; die Datei löschen
output-cannot-write = auf die Standardausgabe lässt sich nicht schreiben: { $why }
label-output-look = prüfen, wohin sie geleitet wird
output-not-json = das lässt sich nicht als JSON schreiben: { $why }
label-output-leave-json-out = --json weglassen
label-output-try-json = mit --json versuchen
label-output-standard = Standardausgabe

# The journal and the rules that are meant.
label-journal-is-empty = das Journal ist leer
label-journal-take-one-in = zuerst ein Journal importieren
label-journal-import-first = eines beginnen: combclear begin NAME; oder eines importieren: combclear import DATEI
journal-no-entry-under = unter `{ $holding }` gibt es keinen Eintrag
journal-none-kept = unter `{ $address }` gibt es noch kein Journal
journal-none-of-holding = unter `{ $address }` gibt es kein Journal von `{ $holding }`
journal-of-several = unter `{ $address }` liegen die Journale mehrerer Betriebe
journal-keeps = vorhanden: { $holdings }
journal-say-which = mit --holding angeben, welcher Betrieb gemeint ist: { $holdings }
journal-no-database = unter `{ $place }` gibt es noch keine Datenbank
label-journal-name-the-database = mit --db die richtige nennen; oder eines beginnen: combclear begin NAME; oder eines importieren: combclear import DATEI
label-rules-law-faulty = die eingebauten Rechtsvorschriften lassen sich nicht laden
label-rules-leaflets-faulty = die hinterlegten Packungsbeilagen lassen sich nicht laden
label-program-is-broken = das ist ein Fehler im Programm; bitte melden
rules-cannot-read-folder = die Packungsbeilagen in `{ $folder }` lassen sich nicht lesen: { $why }
label-rules-name-a-folder = einen Ordner angeben, der Ordner wie gb mit Packungsbeilagen enthält
rules-faults-in-folder = { $faults ->
    [one] 1 Fehler
   *[other] { $faults } Fehler
} in den Packungsbeilagen von `{ $folder }`
label-rules-mend-folder = diese Dateien in Ordnung bringen; bis dahin wird nichts aus dem Ordner verwendet

# What was asked for by a name or a word that is not there, or not together with something else.
asked-did-you-mean-one-of = war { $names } gemeint?
# Between two names that may have been meant.
asked-or = { $names } oder { $name }
asked-write-one-of = eins davon schreiben: { $list }
label-asked-write-address = IP-Adresse und Port in Ziffern schreiben, etwa 127.0.0.1:8420
label-asked-write-origin = Schema, Host und Port schreiben, wie ein Browser sie sendet, in Kleinbuchstaben und ohne Pfad, etwa https://hives.example.org
asked-apiaries-are = vorhandene Bienenstände: { $names }
label-asked-list-colonies = alle auflisten: combclear supering
label-asked-name-a-colony = ein Volk angeben oder mit --apiary einen Bienenstand
asked-no-leaflet = es gibt keine Packungsbeilage `{ $leaflet }`
label-asked-list-leaflets = alle auflisten: combclear leaflets
asked-no-option = die Möglichkeit `{ $leaflet }` gibt es hier nicht
label-asked-leave-leaflet-out = --leaflet weglassen, um alle zu sehen
asked-no-law = Rechtsvorschriften für `{ $jurisdiction }` gibt es hier nicht
asked-laws-are = eingebaut sind die Rechtsvorschriften für: { $names }
label-asked-site-until-alone = `--site-until` ist angegeben, aber zum Standort ist nichts angenommen
label-asked-assume-something = auch --power, --access oder --ground angeben oder --site-until weglassen
asked-site-until-too-early = das Angenommene würde am { $until } enden, vor dem ersten Tag, { $from }
label-asked-give-a-later-day = einen späteren Tag angeben oder die Angabe weglassen
label-asked-one-to-standard-output = auf die Standardausgabe kann nur eines gehen
label-asked-name-files = `-` höchstens einmal schreiben und nicht zusammen mit --json; für alles andere Dateien angeben
label-asked-no-typesetter = dieses Programm wurde ohne seinen Schriftsatz gebaut und kann deshalb kein PDF schreiben
label-asked-print-the-page = --html verwenden und diese Seite drucken oder das Programm mit `--features pdf` bauen
label-asked-register-as-json = dieses Programm ist fehlerhaft; mit --json gibt es das Register trotzdem aus
asked-no-shape = die Schriften des PDF haben kein Zeichenbild für { $signs }; im PDF steht stattdessen diese Angabe

# Documents: attached, listed, saved. $to is one of the first three; $kind is PDF, JPEG, PNG or HEIC.
document-of-lot = Posten `{ $lot }`
document-of-prescription = Verschreibung `{ $prescription }`
label-document-of-nothing = nichts
part-size = { $bytes ->
    [one] 1 Byte
   *[other] { $bytes } Byte
}
document-attached = `{ $file }` ({ $kind }, { part-size }) ist angehängt an { $to }: Dokument { $hash }, Eintrag { $entry }
document-caution =
    Achtung, zu dieser Datei: { $cautions }.
    Sie wird unverändert aufbewahrt, und die Prüfmappe weist darauf hin. Eine Behörde kann sie zurückweisen; mit einem einfachen Scan sind Sie sicherer.
document-not-attached = `{ $file }` wurde nicht angehängt: { $why }
label-document-name-a-file = eine Datei angeben: PDF, JPEG, PNG oder HEIC
document-attached-before = schon angehängt an { $to }, am { $on } von { $by } (Eintrag { $entry }); es wurde nichts hinzugefügt
document-supplied = schon angehängt an { $to }, am { $on } von { $by } (Eintrag { $entry }); der Inhalt fehlte und ist jetzt gespeichert
label-document-none = Kein Dokument ist angehängt.
label-document-attached = angehängt
label-document-to = an
label-document-content = Inhalt
label-document-kept = gespeichert
label-document-missing = fehlt
label-document-altered = verändert
document-attached-on =
    { $on }
    von { $by }
document-corrected =
    { $to }
    berichtigt durch Eintrag { $entry }
document-kind-and-size = { $kind }, { part-size }
documents-in-all = { $documents ->
    [one] 1 Dokument
   *[other] { $documents } Dokumente
}
documents-lacking = { documents-in-all }; { $lacking ->
    [one] 1 fehlt oder ist
   *[other] { $lacking } fehlen oder sind
} verändert, siehe combclear verify
document-saved = `{ $file }`: { $kind }, { part-size }, angehängt an { $to }
document-cannot-save = das Dokument lässt sich nicht in `{ $file }` schreiben: { $why }
label-document-save-again = den Zielort prüfen, dann noch einmal speichern
document-hash-too-short = `{ $hash }` ist zu kurz, um damit ein Dokument zu finden
label-document-give-8-digits = mindestens 8 Stellen des Hashs angeben
document-no-such = ein Dokument `{ $hash }` ist nicht angehängt
label-document-list = auflisten: combclear documents
document-several = mit `{ $hash }` beginnen die Hashes mehrerer Dokumente
label-document-give-more-digits = vom gemeinten Hash mehr Stellen angeben

# pack
pack-administrations = { $administrations ->
    [one] 1 Anwendung
   *[other] { $administrations } Anwendungen
}
pack-administrations-and-earlier = { pack-administrations } und { $earlier } von früher (noch im Volk oder mit laufender Frist)
# $administrations is one of the two before.
pack-made = `{ $file }`: Register des Betriebs { $holding }, { $from } bis { $to }, { $given }, { documents-in-all }
pack-lost = { $lost ->
    [one] 1 Dokument fehlt oder ist verändert; das Verzeichnis sagt, wozu es
   *[other] { $lost } Dokumente fehlen oder sind verändert; das Verzeichnis sagt, wozu jedes
} gehört hat

# export. $place is a file, or standard output.
export-in-backticks = `{ $file }`
export-without = { $fault }; im Export ist es nicht enthalten
export-changed = Dokument `{ $hash }` wurde geändert, während es geschrieben wurde (Ziel: { $place })
label-export-verify-first = das Journal prüfen, dann noch einmal exportieren
export-cannot-write = der Export lässt sich nicht schreiben (Ziel: { $place }): { $why }
label-export-look-again = den Zielort prüfen, dann noch einmal exportieren
label-export-not-whole = was bisher geschrieben wurde, ist ein unvollständiger Export; die Datei löschen

# import
import-cannot-read = es wurde nichts importiert: `{ $file }` lässt sich nicht lesen: { $why }
label-import-name-a-file = eine Journaldatei angeben oder - für die Standardeingabe
import-empty = es wurde nichts importiert: `{ $file }` ist leer
import-begins-like = eine Journaldatei beginnt etwa so: { $header }
import-other-holding = es wurde nichts importiert: `{ $file }` ist das Journal von `{ $holding }`, nicht von `{ $wanted }`
label-import-name-the-right-file = --holding weglassen oder die richtige Datei angeben
import-sealed = es wurde nichts importiert: `{ $file }` ist versiegelt, darum kann kein Eintrag ausgelassen werden
label-import-leave-keep-going-out = --keep-going weglassen; ein Export wird ganz oder gar nicht importiert
import-faults = es wurde nichts importiert: { $faults ->
    [one] 1 Fehler
   *[other] { $faults } Fehler
} in `{ $file }`
label-import-mend = beheben oder den Rest mit --keep-going importieren
label-import-mend-first = beheben oder den Rest mit --keep-going importieren; nach Widersprüchen wird erst gesucht, wenn alle Zeilen lesbar sind
import-and-more = ... und { $more } weitere
part-entries = { $entries ->
    [one] 1 Eintrag
   *[other] { $entries } Einträge
}
import-added = { $added ->
    [one] 1 Eintrag
   *[other] { $added } Einträge
} hinzugefügt
import-added-some-known = { import-added }, { $known ->
    [one] 1 war
   *[other] { $known } waren
} schon da
# $what is one of the two before.
import-with-documents = { $what }, dazu { documents-in-all }
import-done = { $holding }: { $what }; im Journal jetzt { part-entries }
import-done-head = { import-done }, letzter Hash { $head }
import-left-out = { $lines ->
    [one] 1 Zeile
   *[other] { $lines } Zeilen
} ausgelassen:
label-import-new-id = für einen neuen Eintrag eine neue ID bilden
label-import-journals-part = Datei und Journal gehen hier auseinander; einen Export dieses Journals importieren oder diese Datei in eine neue Datenbank (--db)
label-import-try-again = noch einmal versuchen
label-import-taking-in = Journal wird importiert
label-import-recording = wird eingetragen
label-import-reading = wird gelesen
# How long the rest takes.
import-left = noch { $time }
import-none-sealed-here = kein Eintrag der Datei wurde in einem Journal von `{ $holding }` versiegelt
label-import-holding-changed = der Name des Betriebs wurde geändert oder jeder Eintrag; das Journal neu exportieren
label-import-never-edited = das Journal neu exportieren; ein versiegelter Eintrag wird nie bearbeitet
import-entries-promised = die Kopfzeile kündigt { $promised ->
    [one] 1 Eintrag
   *[other] { $promised } Einträge
} an; vorhanden: { $found }
import-documents-promised = die Kopfzeile kündigt { $promised ->
    [one] 1 Dokument
   *[other] { $promised } Dokumente
} an; vorhanden: { $found }
label-import-cut = die Datei wurde gekürzt oder ergänzt; das Journal neu exportieren
# Both are hashes in backticks, or "none".
import-other-head = /head: letzter Hash laut Kopfzeile: { $promised }; tatsächlich: { $found }
label-import-changed = die Datei wurde geändert; das Journal neu exportieren
import-document-among-entries = Dokument `{ $hash }` steht zwischen den Einträgen, nicht dahinter
import-document-of-none = kein Eintrag in der Datei hängt das Dokument `{ $hash }` an
import-document-twice = Dokument `{ $hash }` ist zweimal vorhanden
# A fault with its place, a JSON pointer.
import-at = { $pointer }: { $message }

# verify
verify-holds = Das Journal des Betriebs { $holding } ist unversehrt: { part-entries }, alles so, wie es eingetragen wurde.
verify-holds-with-checkpoint = Das Journal des Betriebs { $holding } ist unversehrt: { part-entries }, alles so, wie es eingetragen wurde, und es stimmt mit dem Prüfpunkt überein.
verify-clock-set-back = Eintrag { $seq } nennt eine frühere Zeit ({ $recorded_at }) als der Eintrag davor ({ $before }): Bei einem der beiden ging die Uhr des Rechners falsch.
label-verify-keep-checkpoint = Diese drei Zeilen als Prüfpunkt an anderer Stelle aufbewahren:
verify-documents-bad = { $bad ->
    [one] 1 Dokument fehlt oder ist
   *[other] { $bad } Dokumente fehlen oder sind
} verändert
verify-lacking = Die Einträge des Betriebs { $holding } sind unversehrt: { part-entries }, alles so, wie es eingetragen wurde. Aber { $bad ->
    [one] 1 Dokument FEHLT ODER IST
   *[other] { $bad } Dokumente FEHLEN ODER SIND
} VERÄNDERT:
verify-broken = Das Journal des Betriebs { $holding } BESTEHT DIE PRÜFUNG NICHT. Erster Fehler: { $broken }
verify-missed = Das Journal des Betriebs { $holding } STIMMT NICHT mit dem Prüfpunkt ÜBEREIN: { $missed }
verify-archive-fault = das Archiv `{ $file }` besteht die Prüfung nicht: { $what }
verify-archive-broken = Das Archiv `{ $file }` BESTEHT DIE PRÜFUNG NICHT: { $what }
verify-both = { $first }; { $second }
verify-archive-holds = Das Archiv { $file } ist unversehrt: { part-entries } und { documents-in-all }, wie in Eintrag { $seq } ({ $id }) festgehalten.
verify-archive-untold = kein Eintrag im Journal des Betriebs { $holding } hält dieses Archiv fest
verify-archive-other-file = Eintrag { $seq } ({ $id }) nennt für diese Einträge eine andere Datei
verify-archive-other-entries = seine Einträge sind nicht die, die Eintrag { $seq } ({ $id }) nennt
checkpoint-cannot-read = der Prüfpunkt `{ $file }` lässt sich nicht lesen: { $why }
label-checkpoint-give-three-lines = die drei Zeilen angeben, die `combclear verify` ausgegeben hat
label-checkpoint-several = die Datei enthält mehrere; jeden in einer eigenen Datei aufbewahren
checkpoint-other-holding = `{ $file }` ist ein Prüfpunkt von `{ $of }`, nicht von `{ $holding }`
label-name-the-right-file = die richtige Datei angeben oder mit --holding den Betrieb

# archive
archive-after-today = { $day } liegt in der Zukunft, heute ist { $today }
label-archive-earlier-day = mit --through heute oder einen früheren Tag angeben
archive-nothing-moved = es wurde nichts verschoben: { $why }
label-archive-nothing-moved = es wurde nichts verschoben
archive-journal-broken = es wurde nichts verschoben: das Journal des Betriebs { $holding } besteht die Prüfung nicht
label-archive-see-what-is-wrong = nachsehen, was nicht stimmt: combclear verify
label-archive-see-what = nachsehen, was nicht stimmt: combclear verify
archive-not-as-written = es wurde nichts verschoben: beim Zurücklesen weicht `{ $file }` von dem ab, was geschrieben wurde
archive-does-not-read-back = es wurde nichts verschoben: `{ $file }` besteht das Zurücklesen nicht: { $what }
label-archive-keep-the-file = ob etwas verschoben wurde, war nicht festzustellen: die Datei behalten und mit `combclear verify --archive` prüfen
label-archive-somebody-wrote = es wurde nichts verschoben: inzwischen hat jemand etwas eingetragen
label-archive-when-nobody-writes = noch einmal versuchen, wenn sonst niemand einträgt
archive-document-missing = es wurde nichts verschoben: Dokument { $hash } fehlt
archive-document-altered = es wurde nichts verschoben: Dokument { $hash } ist verändert
label-archive-delete-file = die Datei wurde nicht als Archiv eingetragen; löschen
# $day has its name.
archive-head = Aufzeichnungen, die nach dem { $day } nicht mehr aufbewahrt werden müssen. Betrieb { $holding }
label-archive-documents = Dokumente
label-archive-last-day = letzter Tag der Aufbewahrung
archive-held-back = Zurückgehalten: { $lots }: { $why }.
archive-nothing = Zum { $day } dürfen keine Aufzeichnungen archiviert werden; es wurde keine Datei angelegt.
archive-would-move = { part-entries } und { documents-in-all } würden in { $file } verschoben: Stellen { $places }.
label-archive-not-moved-yet = NOCH IST NICHTS VERSCHOBEN. Das Verschieben lässt sich nicht rückgängig machen: Danach steht nur noch in der Datei, was diese Einträge besagen, im Journal dagegen nur noch ihre Stellen, IDs, Tage, Eintragsarten und Hashes. Einen Ort wählen, der so lange hält, wie jemand die Aufzeichnungen verlangen kann, eine Kopie der Datei anderswo aufbewahren und vorher einen Export machen. Dann --move-for-good verwenden.
archive-moved = { part-entries } und { documents-in-all } wurden in { $file } verschoben: Stellen { $places }. Eintrag { $entry } hält dies fest.
label-archive-keep-a-copy = Eine Kopie der Datei anderswo aufbewahren; prüfen mit `combclear verify --archive`. Ihr SHA-256-Hash:
label-archive-name-the-file = die Datei eines Archivs angeben
label-archive-name-one-of-this-journal = eine Archivdatei dieses Journals angeben; combclear verify --archive FILE sagt dasselbe
archive-of-other-holding = `{ $file }` ist ein Archiv von `{ $of }`, nicht von `{ $holding }`
archive-line = Zeile { $line }: { $what }
label-archive-cut-line = die Datei endet mitten in einer Zeile
label-archive-not-text = das ist kein Text
archive-entry-changed = Eintrag { $seq } passt nicht zu seinem Hash: er wurde geändert
archive-entry-out-of-order = Eintrag { $seq } steht nicht an der richtigen Stelle
archive-document-of-none = kein Eintrag in der Datei hängt das Dokument { $hash } an
archive-promised = Einträge: { $entries } angekündigt, { $entries-here } vorhanden; Dokumente: { $documents } angekündigt, { $documents-here } vorhanden

# serve
serve-answers = Combclear antwortet unter http://{ $address } (Dokumentation unter http://{ $address }/docs); beenden mit Strg+C
serve-no-threads = die Arbeit lässt sich nicht beginnen: { $why }
label-failure-look-at-the-machine = andere Programme beenden oder diesem mehr Threads und Speicher zugestehen
serve-no-signals = Signale lassen sich nicht empfangen: { $why }
label-serve-start-again = neu starten
serve-in-use = `{ $address }` wird von einem anderen Programm verwendet
serve-cannot-listen = unter `{ $address }` lassen sich keine Verbindungen annehmen: { $why }
label-serve-other-port = einen anderen Port wählen, etwa --listen 127.0.0.1:8421, oder das Programm beenden, das ihn verwendet
serve-answers-encrypted = Combclear antwortet unter https://{ $address }; ein Zugangsschlüssel wird verlangt; beenden mit Strg+C
serve-answers-keyed = Combclear antwortet unter http://{ $address }; ein Zugangsschlüssel wird verlangt; beenden mit Strg+C
serve-open-to-others = `{ $address }` ist von anderen Rechnern aus erreichbar, und was dorthin gesendet wird, kann unterwegs mitgelesen werden
serve-this-machine-only = ein Zertifikat angeben (--certificate und --certificate-key), den Dienst hinter einen Proxy stellen, der verschlüsselt (--behind-proxy), oder `127.0.0.1:{ $port }` verwenden, was nur dieser Rechner erreicht
label-serve-no-keys = andere können den Dienst erreichen, und es gibt keinen Zugangsschlüssel, mit dem jemand eingelassen wird
label-serve-no-keys-help = zuerst einen erstellen: combclear key add keeper --for "A. Keeper"
label-serve-no-name = andere können den Dienst erreichen, und er weiß nicht, unter welchem Namen
label-serve-no-name-help = mit --name angeben, etwa --name hives.example.org
serve-bad-certificate = das Zertifikat oder sein Schlüssel ist nicht verwendbar: { $why }
label-serve-bad-certificate-help = beides sind PEM-Dateien: das Zertifikat, gefolgt von denen, die es beglaubigen, und sein privater Schlüssel

# key
key-made = Zugangsschlüssel { $id } { $whose } wurde erstellt. Er wird nur dieses eine Mal gezeigt und nirgends aufbewahrt; zu senden als `Authorization: Bearer KEY`:
key-ended = Zugangsschlüssel { $id } { $whose } gilt nicht mehr.
key-ended-before = Zugangsschlüssel { $id } { $whose } wurde schon früher beendet.
key-whose = für { $holder }, Rolle `{ $role }` im Betrieb { $holding },
key-whose-operator = für { $holder }, Rolle `{ $role }`,
key-over-already = ein Zugangsschlüssel bis { $until } würde nie gelten: heute ist { $today }
label-key-until-help = einen Tag angeben, der noch kommt, oder --until weglassen
key-no-such = es gibt keinen Zugangsschlüssel `{ $id }`
label-key-no-such-help = alle auflisten: combclear key list
key-no-chance = es lässt sich kein Zugangsschlüssel erstellen: { $why }
label-key-none = Es gibt keine Zugangsschlüssel. Solange nur dieser Rechner den Dienst erreichen kann, sind keine nötig.
label-key-head-id = Zugangsschlüssel
label-key-head-role = Rolle
label-key-head-holding = Betrieb
label-key-head-holder = Ausgestellt für
label-key-head-holds = Gilt
label-key-holds = ja
key-holds-until = bis { $until }
label-key-is-ended = nein: beendet
key-ran-out = nein: abgelaufen am { $until }

# backup, restore, doctor
part-keys = { $keys ->
    [0] keine Zugangsschlüssel
    [one] 1 Zugangsschlüssel
   *[other] { $keys } Zugangsschlüssel
}
care-backed-up = Gesichert in { $file }: { $bytes } Byte, { part-keys }; die Kopie besteht die Prüfung:
care-restored = Wiederhergestellt aus { $file } in { $db }: { part-keys }; die Datenbank besteht die Prüfung:
care-of-holding = { $holding }: { part-entries }, { documents-in-all }, letzter Hash { $head }
care-not-backed-up = keine Sicherung angelegt: { $why }
care-not-restored = die Sicherung wurde nicht wiederhergestellt: { $why }
care-lost = in der Kopie fehlt das Journal des Betriebs { $holding }
care-not-empty = `{ $db }` ist nicht leer
label-care-other-keys = die Zugangsschlüssel in der Kopie sind nicht die der Datenbank
label-care-try-again = noch einmal versuchen; bleibt es dabei, nachsehen, was nicht stimmt: combclear doctor
label-care-name-a-backup = eine Datei angeben, die `combclear backup` angelegt hat
label-care-not-empty-help = die Datenbank blieb, wie sie war; eine Sicherung wird in eine Datenbank ohne Betriebe und Zugangsschlüssel wiederhergestellt, etwa in eine neue Datei
label-care-in-part = ein Teil davon ist jetzt in der Datenbank, und aus einem Journal wird nie etwas entfernt: vor dem nächsten Versuch eine andere Datenbank anlegen
care-opens = `{ $db }` lässt sich öffnen, die Tabellen sind in Ordnung
care-journal-holds = das Journal des Betriebs { $holding } ist unversehrt: { part-entries }, { documents-in-all }, letzter Hash { $head }
care-open-to-others = andere auf diesem Rechner haben Zugriff auf `{ $file }`; darin stehen Namen und Orte
care-open-to-others-help = chmod 600 { $file }
care-setting-off = der Server ist auf `{ $setting } = off` eingestellt: fällt er oder sein Rechner aus, kann bereits Eingetragenes verloren gehen
care-setting-off-help = auf dem Server `{ $setting } = on` setzen und seine Einstellungen neu laden
care-no-right = dem Benutzer der Adresse fehlt das Recht { $right } an der Tabelle `{ $table }`
care-no-right-help = auf dem Server diesem Benutzer das Recht { $right } an { $table } geben (GRANT)
care-key-ran-out = Zugangsschlüssel { $id } für { $holder } ist am { $until } abgelaufen
care-key-ran-out-help = einen neuen erstellen: combclear key add; und diesen beenden: combclear key end { $id }
care-key-ends-soon = Zugangsschlüssel { $id } für { $holder } läuft am { $until } ab
label-care-key-ends-soon-help = rechtzeitig einen neuen erstellen: combclear key add
label-care-well = Gut
label-care-note = Hinweis
label-care-wrong = FEHLER
label-care-all-well = Alles ist in Ordnung.
care-wrong-in-all = { $wrong ->
    [one] 1 Punkt ist nicht in Ordnung.
   *[other] { $wrong } Punkte sind nicht in Ordnung.
}
## Forms: each kind of entry, and the fields to fill in

# form-KIND is what an entry of the kind records. field-NAME is the label of a field in any form, field-KIND-NAME in one form.
# A label may be followed by a -hint, and by an -example of what is filled in.

# The visit sheet. { $medicine } is the keeper's name for it.
visit-inside = { $medicine }, eingelegt am { $placed }

# The picture of a colony's season. { $name } is the name on a pack, or the keeper's name for a medicine.
timeline-title = Volk { $colony }: die Saison rund um den { $on }
timeline-title-apiary = Bienenstand { $apiary }: die Saison rund um den { $on }
timeline-shown = { $from } bis { $to }
timeline-run = { $answer } von { $from } bis { $to }
timeline-answers = Darf ein Honigraum aufgesetzt werden? { $runs }
timeline-course = { $name }, eingelegt am { $placed }
timeline-dose = { $name }, gegeben am { $placed }
timeline-out = { $course }, heraus am { $out }
timeline-inside = { $course }, noch im Volk
timeline-may-come-out = { $course }; darf heraus ab { $day }
timeline-must-be-out = { $course }; muss spätestens am { $day } heraus sein
timeline-supers = Honigräume zur Ernte aufgesetzt ab { $from }
timeline-supers-off = Honigräume zur Ernte aufgesetzt von { $from } bis { $off }
timeline-flow = Tracht von { $from } bis { $to }
label-timeline-answers = Darf ein Honigraum aufgesetzt werden?
label-timeline-supers = Honigräume zur Ernte aufgesetzt
label-timeline-flow = Tracht, erwartet oder beobachtet
label-timeline-key = Schräge Linien: nein; Punkte: nicht bekannt; weiß: ja. ▷ darf heraus, ◁ muss heraus sein, ○ Gabe
label-picture-of-what = es gibt nichts zu zeichnen
label-picture-of-what-help = ein Volk nennen oder einen Bienenstand mit Völkern: --apiary NAME

# A choice of a form, by the word under which it is filled in.
choice-absent = keine
choice-allowed = erlaubt
choice-battery = Batterie
choice-bees_only = nur für die Bienen
choice-both = in beiden Völkern
choice-dry = trocken
choice-expected = erwartet
choice-flooded = überschwemmt
choice-forbidden = nicht erlaubt
choice-forecast = vorhergesagt
choice-g = Gramm
choice-generator = Stromerzeuger
choice-harvest = zur Ernte
choice-lowest = geringster Brutumfang
choice-mains = Netzstrom
choice-measured = gemessen
choice-ml = Milliliter
choice-natural_fall = natürlicher Milbenfall
choice-needed = muss heraus
choice-none = nicht vorhanden
choice-none_by_label = keine, laut Etikett
choice-not_known = nicht bekannt
choice-not_needed = muss nicht heraus
choice-nothing_stays = nichts bleibt im Volk
choice-off = nein, kein Honigraum erlaubt
choice-on = ja, Honigraum erlaubt
choice-on_foot = zu Fuß
choice-on_no_harvest = ja, aber keine Ernte
choice-opened_brood = geöffnete Brut
choice-piece = Stück
choice-present = vorhanden
choice-seen = beobachtet
choice-stayed = geblieben
choice-strip = Streifen
choice-sugar_roll = Puderzuckermethode
choice-tablet = Tabletten
choice-taken_out = herausgenommen
choice-tray = Schalen
choice-vehicle = mit Fahrzeug
choice-wafer = Plättchen
choice-wash = Auswaschmethode
choice-went = mit in den Ableger
choice-went_along = mitgegangen
choice-wet = nass

# The page at the hive. A place in square brackets is filled in by the page.
page-date = { "[" }day].[month].[year]
page-holdings = Betriebe
page-no_holding = Es gibt noch keinen.
page-begin = Betrieb anlegen
page-apiaries = Bienenstände
page-no_apiary = Es gibt noch keinen. Unten einen eintragen.
page-apiary_counts = Aufsetzen erlaubt? [yes] ja, [no] nein, [unknown] nicht bekannt
page-write_down = Neuer Eintrag
page-key = Zugangsschlüssel
page-key_hint = Der Zugangsschlüssel, den Sie erhalten haben
page-sign_in = Anmelden
page-not_reached = Der Dienst wurde nicht erreicht
page-not_reached_help = Prüfen, ob Empfang da ist, und noch einmal versuchen
page-not_shown = Das kann nicht gezeigt werden
page-again = Noch einmal versuchen
page-as_of = { "[" }day]. Die Antworten gelten bis einschließlich [through], wenn nichts Neues eingetragen wird.
page-due_here = Hier fällig
page-nothing_due = Heute ist nichts fällig.
page-may_be_supered = Darf ein Honigraum aufgesetzt werden?
page-nobody_here = Hier steht kein Volk.
page-all_of_them = Alle ankreuzen, für einen Eintrag
page-free_from = Honigraum darf ab [day] aufgesetzt werden
page-free_if_out = Honigraum darf ab [day] aufgesetzt werden, wenn am [out] alles heraus ist
page-done = Erledigt
page-overdue = Überfällig
page-no_hive_ticked = Keine Beute ist angekreuzt: Die Völker werden im Formular genannt.
page-hives_ticked = Für [hives]
page-back = Zurück
page-something_else = Etwas anderes
page-to_do_first = Zuerst zu tun
page-missing = Was noch fehlt
page-because = Gründe
page-also_on_record = Außerdem eingetragen
page-season_alt = Die Saison als Bild, Volk [colony]. Die Antwort, ihre Gründe und die eingetragenen Arzneimittel stehen daneben in Worten.
page-kept = Kein Netz. Diese Antworten wurden am [at] geholt; was danach eingetragen wurde, fehlt.
page-kept_here = Nicht vom Dienst, sondern auf diesem Handy berechnet: Stand [at], mit dem, was Sie hier notiert haben. Was andere danach eingetragen haben, fehlt.
page-in_doubt = Auf diesem Handy ist etwas notiert, was nicht im Journal steht. Das muss zuerst geklärt werden
page-waits = Auf diesem Handy notiert, noch nicht eingetragen; es wird gesendet, sobald Netz da ist
page-waiting = Noch nicht gesendet
page-waiting_hint = Auf diesem Handy gespeichert und in seinen Antworten berücksichtigt. Es wird von selbst gesendet, sobald Netz da ist, und nur einmal eingetragen. Was abgelehnt wird, bleibt hier, bis Sie es klären.
page-nothing_waits = Nichts wartet: Alles, was hier notiert wurde, ist eingetragen.
page-some_wait = Noch nicht gesendet: [number]
page-some_refused = Etwas wurde abgelehnt und ist nicht eingetragen: bitte ansehen
page-send_now = Jetzt senden
page-send_again = Noch einmal senden
page-refused = Abgelehnt
page-throw_away = Verwerfen
page-throw_away_sure = Endgültig verwerfen
page-clock_behind = Die Uhr dieses Handys geht gegenüber dem Dienst etwa [hours] h nach. Die Seite richtet sich nach dem Dienst.
page-clock_ahead = Die Uhr dieses Handys geht gegenüber dem Dienst etwa [hours] h vor. Die Seite richtet sich nach dem Dienst.
page-older_page = Der Dienst hat eine neuere Seite als diese.
page-load_again = Laden
page-which_lot = Packungsbeilage welches Postens?
page-no_lot = Kein Posten ist eingetragen. Zuerst eintragen, wie einer gekauft wurde.
page-leaflet_of = Packungsbeilage von Posten [lot]
page-no_leaflet_built_in = Dafür ist keine Packungsbeilage hinterlegt: eintragen, was die Packung sagt.
page-leaflet_same = Stimmt
page-leaflet_other = Steht anders da
page-leaflet_says = Es steht drin
page-leaflet_silent = Steht nicht drin
page-read_it = Packungsbeilage von Posten { "[" }lot] ablesen
page-desk = Am Schreibtisch
page-board = Alle Völker
page-stock = Vorrat
page-register = Bestandsbuch
page-proofs = Nachweise
page-journal = Journal
page-sign_in_anew = Mit Zugangsschlüssel anmelden
page-options = Was hier sonst anwendbar ist
page-colony = Volk
page-apiary = Bienenstand
page-to_dispose = Zu entsorgen
page-lot = Posten
page-medicine = Arzneimittel
page-batch = Charge
page-expiry = Verfalldatum
page-sum = Bestandsrechnung
page-state = Zustand
page-as_recorded = wie eingetragen
page-start = Erster Tag
page-assumed_hint = Was hier gewählt wird, wird angenommen und nicht eingetragen.
page-ask = Fragen
page-option_usable = anwendbar
page-option_ruled_out = ausgeschlossen
page-option_unknown = nicht bekannt
page-as_pages = Seiten zum Lesen und Drucken
page-as_pdf = PDF
page-as_table = Tabelle (CSV)
page-as_pack = Alles in einer Datei für eine Kontrolle (ZIP)
page-last_day = Letzter Tag
page-complete = Ist es vollständig?
page-what_is_missing = Was fehlt?
page-open = Öffnen
page-attach = Nachweis anhängen
page-proof_file = Datei oder Foto
page-proof_needs = Posten, Datei und Namen angeben
page-attached = An Posten [lot] angehängt.
page-no_proof = Noch keiner ist angehängt.
page-chain_sound = Alle [entries] Einträge sind so, wie sie eingetragen wurden. Der letzte Hash: [head]
page-chain_lacking = Alle Einträge sind so, wie sie eingetragen wurden, aber ein Dokument fehlt oder ist verändert.
page-chain_broken = Ab Eintrag [seq] ist das Journal nicht so, wie es eingetragen wurde.
page-earlier = Frühere Einträge
page-verify = Prüfen
page-order = Die Reihenfolge beim Rundgang
page-order_hint = Die Beuten in der Reihenfolge antippen, in der Sie gehen. Sie wird auf diesem Handy behalten; nicht angetippte Beuten kommen zuletzt.
page-keep_order = Diese Reihenfolge behalten
page-no_room = Auf diesem Handy ist kein Platz mehr, um es zu behalten. Vielleicht wurde es eingetragen: noch einmal versuchen, sobald Netz da ist; was eingetragen ist, wird nicht doppelt eingetragen.
page-write_anew = Neu eintragen
page-supers_from = Aufsetzen erlaubt ab
page-other_key = Mit einem anderen Zugangsschlüssel oder vor der Anmeldung notiert. Nur senden, wenn es Ihr Eintrag ist
page-send_with_this_key = Mit diesem Schlüssel senden
page-cannot_be_read = Was auf diesem Handy notiert wurde, lässt sich nicht lesen: Keine Antwort zählt. Die Seite schließen und neu öffnen.
page-history = Was eingetragen wurde
page-was_struck_out = Gestrichen durch Eintrag [number]: [reason]
page-was_corrected = Berichtigt durch Eintrag [number]: [reason]
page-what_it_says = eintragen, was darin steht
page-kept_too_long = Ohne den Dienst ist das nicht bekannt: Die zuletzt abgerufene Antwort gilt für andere Tage
page-what_is_in = Eingetragene Arzneimittel
page-nothing_in = Keine.
page-entries = Einträge: [numbers]
page-course_out = heraus am [day]
page-course_placed = gegeben oder eingelegt am [day]
page-not_said = keine Angabe
page-found_if_left_out = leer: wird aus den Einträgen ergänzt
page-may_be_left_out = darf zunächst leer bleiben
page-for_example = zum Beispiel
page-day = Tag
page-day_hint = der Tag, an dem es geschah
page-who = Eingetragen von
page-who_hint = Ihr Name
page-more = Weitere Angaben
page-look = Prüfen
page-is_it_right = Stimmt es so? Noch ist nichts eingetragen.
page-record = Eintragen
page-recorded = Eingetragen
page-undo = Streichen
page-undo_hint = Nichts wird gelöscht. Der Eintrag bleibt im Journal, Ihr Grund ebenso.
page-reason = Grund
page-struck_out = Gestrichen.
page-nothing_recorded = Es ist nicht bekannt, ob etwas eingetragen wurde. Noch einmal versuchen: Was schon eingetragen ist, wird nicht doppelt eingetragen.
page-careful = Die Packungsbeilage sagt, wie das Arzneimittel anzuwenden ist und was dabei zu tragen ist. Säuredämpfe und Säuretropfen verätzen Augen, Haut und Lunge: geeignete Atemschutzmaske (keine Stoffmaske), dichte Schutzbrille und säurefeste Handschuhe. Auf nassem Boden kein elektrisches Gerät benutzen. Sagen die Packungsbeilage, Ihr Tierarzt oder das Recht etwas anderes als diese Seite, so gilt, was sie sagen.
page-holding_name = Name des Betriebs
page-holding_hint = ein kurzer Name für alle Ihre Bienenstände zusammen
page-yes = ja
page-no = nein
page-unknown = nicht bekannt

form-holding_details = Tierhalter und Land des Betriebs
form-apiary_details = Neuer Bienenstand
form-site_conditions = Stromanschluss, Zugang und Boden an einem Bienenstand
form-nectar_flow = Tracht, erwartet oder beobachtet
form-temperature = Temperaturen nach Tagen, vorhergesagt oder gemessen
form-temperature_normals = Übliche Temperaturen nach Monaten
form-colony_established = Volk neu aufgenommen
form-colony_moved = Volk an einen anderen Bienenstand umgestellt
form-colony_split = Neues Volk aus einem Teil eines anderen gebildet (Ableger)
form-colony_united = Volk mit einem anderen vereinigt
form-colony_ended = Volk eingegangen, verkauft oder verschenkt
form-supers_on = Honigräume aufgesetzt
form-supers_off = Honigräume abgenommen
form-inspection = Durchsicht
form-mite_count = Milben gezählt
form-medicine_described = Arzneimittel, wie seine Packung es beschreibt
form-lot_acquired = Posten gekauft oder erhalten
form-vet_lot = Posten, aus dem ein Tierarzt Arzneimittel aus eigenem Vorrat angewendet hat
form-lot_opened = Erste Packung eines Postens angebrochen
form-document_attached = Dokument angehängt
form-leaflet_reading = Was die Packungsbeilage in der Packung sagt
form-prescription = Verschreibung
form-administration = Streifen eingelegt oder Arzneimittel gegeben
form-removal = Streifen herausgenommen
form-disposal = Arzneimittel entsorgt
form-harvest = Honig geerntet
form-strike_out = Eintrag gestrichen, weil es nicht geschehen ist
form-archived = Einträge in ein Archiv verschoben

# The tab of a spreadsheet that takes entries of a kind: at most 31 letters, and none of : \ / ? * [ ].
tab-holding_details = Tierhalter
tab-apiary_details = Bienenstände
tab-site_conditions = Standorte
tab-nectar_flow = Trachten
tab-temperature = Temperaturen
tab-temperature_normals = Übliche Temperaturen
tab-colony_established = Völker
tab-colony_moved = Umgestellt
tab-colony_split = Ableger
tab-colony_united = Vereinigt
tab-colony_ended = Abgänge
tab-supers_on = Honigraum aufgesetzt
tab-supers_off = Honigraum abgenommen
tab-inspection = Durchsichten
tab-mite_count = Milbenzählungen
tab-medicine_described = Arzneimittel
tab-lot_acquired = Posten
tab-vet_lot = Posten eines Tierarztes
tab-lot_opened = Angebrochen
tab-leaflet_reading = Packungsbeilagen
tab-prescription = Verschreibungen
tab-administration = Anwendungen
tab-removal = Entnahmen
tab-disposal = Entsorgungen
tab-harvest = Ernten

field-on = Tag
field-on-hint = der Tag, an dem es geschah; ohne Angabe heute
field-on-example = 2026-08-24
field-at = Uhrzeit
field-at-hint = die Uhrzeit, falls notiert, etwa 09:30
field-at-example = 09:30
field-copied_from = Übertragen aus
field-copied_from-hint = das Papierregister, aus dem es übertragen ist, falls es das ist
field-copied_from-example = rotes Heft 2025
field-written_on = Dort eingetragen am
field-written_on-hint = der Tag, an dem es in jenes Register eingetragen wurde
field-written_on-example = 2026-08-24
field-recorded_by = Eingetragen von
field-recorded_by-hint = wer das einträgt; ohne Angabe, wer zuletzt eingetragen hat
field-recorded_by-example = A. Imker

field-keeper = Tierhalter
field-keeper-hint = die Person oder Firma, die die Bienen hält
field-keeper-example = A. Imker (erfunden)
field-holding_details-address = Anschrift
field-holding_details-address-hint = Postanschrift des Tierhalters
field-holding_details-address-example = Nirgendweg 1 (erfunden)
field-jurisdiction = Land
field-jurisdiction-hint = das Rechtsgebiet in zwei Buchstaben, etwa gb, de oder us: Recht und Packungsbeilagen, die gelten
field-jurisdiction-example = de
field-registration = Registriernummer
field-registration-hint = des Tierhalters oder des Betriebs, wo das Recht eine vorsieht
field-registration-example = 12-345

field-apiary = Bienenstand
field-apiary-hint = sein Name
field-apiary-example = Salzwiese
field-place = Lage
field-place-hint = wo er liegt, in Worten oder als Koordinaten
field-place-example = hinter dem Deich
field-power = Stromanschluss
field-power-hint = welcher Strom am Bienenstand da ist
field-power-example = none
field-access = Zugang
field-access-hint = wie der Bienenstand zu erreichen ist
field-access-example = on_foot
field-ground = Boden
field-ground-hint = der Boden, auf dem die Beuten stehen
field-ground-example = wet
field-until = Bis
field-until-hint = der letzte Tag, an dem das gilt, falls bekannt
field-until-example = 2026-08-31
field-forage = Trachtpflanze
field-forage-hint = was blüht, etwa Linde, Heide oder Efeu
field-forage-example = Efeu
field-nectar_flow-stage = Erwartet oder beobachtet
field-nectar_flow-stage-hint = ob Sie die Tracht erwarten oder beobachtet haben
field-nectar_flow-stage-example = expected
field-nectar_flow-from = Beginn
field-nectar_flow-from-hint = erster Tag der Tracht; bei einer erwarteten in einem üblichen Jahr
field-nectar_flow-from-example = 2026-09-10
field-from_early = Beginn in einem frühen Jahr
field-from_early-hint = erster Tag einer erwarteten Tracht in einem frühen Jahr
field-from_early-example = 2026-09-01
field-from_late = Beginn in einem späten Jahr
field-from_late-hint = erster Tag einer erwarteten Tracht in einem späten Jahr
field-from_late-example = 2026-09-20
field-nectar_flow-to = Ende
field-nectar_flow-to-hint = letzter Tag der Tracht, falls bekannt
field-nectar_flow-to-example = 2026-10-20
field-temperature-stage = Vorhergesagt oder gemessen
field-temperature-stage-hint = ob die Temperaturen vorhergesagt sind oder gemessen wurden
field-temperature-stage-example = forecast
field-temperature-days = Tage
field-temperature-days-hint = jeder Tag mit seiner tiefsten und höchsten Temperatur in °C; ein Strichpunkt zwischen den Tagen
field-temperature-days-example = 2026-08-24 11 19; 2026-08-25 12 21
field-temperature-origin = Quelle
field-temperature-origin-hint = woher die Temperaturen stammen
field-temperature-origin-example = eigenes Thermometer
field-months = Monate
field-months-hint = jeder Monat als Zahl mit seiner üblichen tiefsten und höchsten Temperatur in °C; ein Strichpunkt zwischen den Monaten
field-months-example = 8 12 20; 9 10 17
field-temperature_normals-origin = Quelle
field-temperature_normals-origin-hint = woher die Temperaturen stammen
field-temperature_normals-origin-example = eigene Aufzeichnungen aus zehn Jahren

field-colony = Volk
field-colony-hint = sein Name
field-colony-example = S7
field-colony_established-colony = Volk
field-colony_established-colony-hint = sein Name, bisher nie verwendet; mehrere so: S1-S7
field-colony_established-colony-example = S7
field-colonies = Völker
field-colonies-hint = ihre Namen; mehrere so: S1-S7
field-colonies-example = S1, S2
field-hive_mark = Beutenzeichen
field-hive_mark-hint = das Zeichen auf der Beute
field-hive_mark-example = blau 7
field-colony_established-origin = Herkunft
field-colony_established-origin-hint = woher das Volk kam
field-colony_established-origin-example = Schwarm von der Kirche
field-medicines = Arzneimittel im Volk
field-medicines-hint = none (nicht vorhanden), wenn keine Streifen im Volk sind und keine Wartezeit oder Frist läuft; sonst not_known (nicht bekannt)
field-medicines-example = none
field-colony_moved-to = Neuer Bienenstand
field-colony_moved-to-hint = der Bienenstand, an dem es von diesem Tag an steht
field-colony_moved-to-example = Hügel
field-colony_split-into = Neues Volk
field-colony_split-into-hint = der Name des neuen Volkes, bisher nie verwendet
field-colony_split-into-example = S8
field-colony_split-to = Bienenstand des neuen Volkes
field-colony_split-to-hint = wo das neue Volk steht; ohne Angabe am Bienenstand des alten
field-colony_split-to-example = Hügel
field-colony_split-strips = Streifen
field-colony_split-strips-hint = wohin die eingelegten Streifen kamen: sie blieben, gingen mit dem neuen Volk, oder beide Völker haben welche
field-colony_split-strips-example = stayed
field-colony_united-colony = Aufgelöstes Volk
field-colony_united-colony-hint = das Volk, das mit dem anderen vereinigt wird
field-colony_united-colony-example = S8
field-colony_united-into = Aufnehmendes Volk
field-colony_united-into-hint = das Volk, das es aufnimmt
field-colony_united-into-example = S7
field-colony_united-strips = Streifen
field-colony_united-strips-hint = was aus den eingelegten Streifen wurde: sie gingen mit oder wurden herausgenommen
field-colony_united-strips-example = taken_out
field-cause = Ursache
field-cause-hint = eingegangen, verkauft, verschenkt, und warum
field-cause-example = im Winter eingegangen
field-supers = Honigräume
field-supers-hint = wie viele auf jedes Volk aufgesetzt wurden
field-supers-example = 1
field-purpose = Zweck
field-purpose-hint = harvest (zur Ernte) für Honig, den Sie ernten; bees_only (nur für die Bienen) für Vorräte, die den Bienen bleiben
field-purpose-example = harvest
field-left_on = Noch aufgesetzt
field-left_on-hint = wie viele Honigräume noch auf jedem Volk sind
field-left_on-example = 0
field-brood = Brut
field-brood-hint = welche Brut Sie gesehen haben
field-brood-example = present
field-seams = Besetzte Wabengassen
field-seams-hint = wie viele
field-seams-example = 8
field-inspection-bees = Bienen
field-inspection-bees-hint = wie viele es nach Ihrer Schätzung sind
field-inspection-bees-example = 20000
field-brood_boxes = Brutzargen
field-brood_boxes-hint = wie viele
field-brood_boxes-example = 1
field-hive_litres = Liter
field-hive_litres-hint = Rauminhalt der Brutzargen
field-hive_litres-example = 42
field-feeder = Futtergeschirr
field-feeder-hint = ob ein Futtergeschirr aufgesetzt ist
field-feeder-example = no
field-note = Anmerkung
field-note-hint = was sonst noch auffiel
field-note-example = sanft, neue Königin
field-mite_count-method = Zählweise
field-mite_count-method-hint = wie die Milben gezählt wurden; Zählungen nach verschiedenen Zählweisen werden nie miteinander verglichen
field-mite_count-method-example = natural_fall
field-mites = Milben
field-mites-hint = wie viele; in geöffneter Brut, wie viele befallene Zellen
field-mites-example = 12
field-mite_count-days = Tage
field-mite_count-days-hint = auf der Bodeneinlage: in wie vielen Tagen sie fielen
field-mite_count-days-example = 3
field-mite_count-bees = Bienen
field-mite_count-bees-hint = in einer Bienenprobe: wie viele Bienen
field-mite_count-bees-example = 300
field-cells = Zellen
field-cells-hint = in der Brut: wie viele Zellen geöffnet wurden
field-cells-example = 100

field-medicine = Arzneimittel
field-medicine-hint = Ihr kurzer Name dafür
field-medicine-example = Amitraz-Streifen
field-pack_name = Name auf der Packung
field-pack_name-hint = der Name, wie er auf der Packung steht
field-pack_name-example = Amitraz-Streifen 500 mg (erfunden)
field-authorisation = Zulassungsnummer
field-authorisation-hint = wie sie auf der Packung steht
field-authorisation-example = 00000/0001
field-unit = Einheit
field-unit-hint = worin es gezählt wird
field-unit-example = strip
field-leaflet = Packungsbeilage
field-leaflet-hint = die hinterlegte Packungsbeilage mit ihren Anweisungen; siehe den Befehl leaflets
field-leaflet-example = amitraz-strip-500mg-a
field-lot = Posten
field-lot-hint = Ihr kurzer Name für den Posten; ohne Angabe der einzige im Vorrat
field-lot-example = L1
field-lot_acquired-lot = Posten
field-lot_acquired-lot-hint = Ihr kurzer Name für den Posten, bisher nie verwendet
field-lot_acquired-lot-example = L1
field-vet_lot-lot = Posten
field-vet_lot-lot-hint = Ihr kurzer Name für den Posten, bisher nie verwendet
field-vet_lot-lot-example = V1
field-batch = Charge
field-batch-hint = die Chargennummer, wie sie auf der Packung steht
field-batch-example = B 1234
field-expiry = Verfalldatum
field-expiry-hint = wie es auf der Packung steht; ein Monat wie 2028-05 steht für seinen letzten Tag
field-expiry-example = 2028-05
field-quantity = Menge
field-quantity-hint = in der Einheit des Arzneimittels
field-quantity-example = 20
field-supplier = Bezugsquelle
field-supplier-hint = wer es geliefert hat
field-supplier-example = Tierarztpraxis am Markt (erfunden)
field-supplier_address = Anschrift der Bezugsquelle
field-supplier_address-hint = Postanschrift
field-supplier_address-example = Nirgendweg 2 (erfunden)
field-proof = Erwerbsnachweis
field-proof-hint = etwa eine Rechnungsnummer, und wo der Nachweis aufbewahrt wird
field-proof-example = Rechnung 17
field-label_revision = Fassung des Etiketts
field-label_revision-hint = Fassung oder Datum des Etiketts, falls auf der Packung angegeben
field-label_revision-example = 2024-03
field-prescription = Verschreibung
field-prescription-hint = ihre Nummer
field-prescription-example = 2026-001
field-revision = Fassung der Packungsbeilage
field-revision-hint = Fassung oder Datum, wie in der Packungsbeilage gedruckt
field-revision-example = 03/2024
field-vet = Tierarzt
field-vet-hint = Name des Tierarztes
field-vet-example = T. Tierarzt (erfunden)
field-contact = Kontakt
field-contact-hint = wie der Tierarzt zu erreichen ist
field-contact-example = Nirgendweg 3 (erfunden)

field-each = Je Volk
field-each-hint = Menge für jedes Volk, in der Einheit des Arzneimittels
field-each-example = 2
field-administration-method = Art der Anwendung
field-administration-method-hint = wie es angewendet wurde, falls die Packungsbeilage mehrere Arten nennt
field-administration-method-example = trickle
field-continues = Setzt fort
field-continues-hint = die Nummer des Eintrags mit der ersten Gabe, wenn dies eine weitere Gabe ist; "yes" für die Behandlung mit diesem Arzneimittel, das noch im Volk ist
field-continues-example = yes
field-withdrawal_days = Wartezeit
field-withdrawal_days-hint = für Honig, in Tagen, wie die Packung sagt; 0, wenn sie sagt, dass keine nötig ist
field-withdrawal_days-example = 0
field-given_by = Angewendet von
field-given_by-hint = wer es angewendet hat
field-given_by-example = A. Imker
field-against = Gegen
field-against-hint = die Krankheit oder der Grund
field-against-example = Varroa
field-certificate = Sachkundenachweis
field-certificate-hint = Erlaubnis oder Nachweis der Person, die es angewendet hat, wo das Recht danach fragt
field-certificate-example = C 77
field-count_corrected = Bestand nach Zählung berichtigt
field-count_corrected-hint = yes (ja), wenn Sie den Vorrat gezählt haben und mehr da ist, als die Einträge sagen
field-count_corrected-example = no
field-administration-prescription = Verschreibung
field-administration-prescription-hint = die Nummer der Verschreibung, nach der es angewendet wurde
field-administration-prescription-example = 2026-001
field-administration-vet = Tierarzt
field-administration-vet-hint = Name des Tierarztes, falls ein Tierarzt es angewendet hat
field-administration-vet-example = T. Tierarzt (erfunden)
field-removal-administration = Streifen
field-removal-administration-hint = die Nummer des Eintrags, mit dem sie eingelegt wurden; ohne Angabe die Streifen, die im Volk sind
field-removal-administration-example = 12
field-left_inside = Noch im Volk
field-left_inside-hint = Stücke, die noch in jedem Volk sind; 0, wenn alle heraus sind
field-left_inside-example = 0
field-removal-how_and_where = Entsorgung
field-removal-how_and_where-hint = wie und wo die gebrauchten Streifen entsorgt wurden
field-removal-how_and_where-example = Schadstoffsammlung der Gemeinde
field-disposal-how_and_where = Wie und wo
field-disposal-how_and_where-hint = wie und wo es entsorgt wurde
field-disposal-how_and_where-example = an die Apotheke zurückgegeben
field-harvest_lot = Honiglos
field-harvest_lot-hint = Ihre Losnummer für diesen Honig, bisher nie verwendet
field-harvest_lot-example = 2026-3
field-kilograms = Kilogramm
field-kilograms-hint = wie viel Honig
field-kilograms-example = 48,5

field-supers_during = Honigraum während der Behandlung
field-supers_during-hint = ob Honigräume aufgesetzt sein dürfen, solange es im Volk ist: off (nein), on (ja) oder on_no_harvest (ja, aber dieser Honig wird nicht geerntet)
field-supers_during-example = off
field-flow_during = Während einer Tracht
field-flow_during-hint = ob es während einer Tracht angewendet werden darf
field-flow_during-example = forbidden
field-withdrawal = Keine Wartezeit
field-withdrawal-hint = none_by_label (keine, laut Etikett), wenn es laut Etikett überhaupt keine Wartezeit gibt
field-withdrawal-example = none_by_label
field-flow_before_days = Tage vor einer Tracht
field-flow_before_days-hint = Tage vor einer Tracht, an denen es nicht angewendet werden darf; 0 nur, wenn die Anwendung vor einer Tracht nicht verboten ist; weglassen, wenn sie ohne Zahl von Tagen verboten ist
field-flow_before_days-example = 14
field-wait_after_removal_days = Frist bis zum Honigraum
field-wait_after_removal_days-hint = Tage von der Entnahme bis zum Aufsetzen der Honigräume
field-wait_after_removal_days-example = 14
field-removal = Entnahme
field-removal-hint = ob es herausgenommen werden muss: needed (muss heraus), not_needed (muss nicht heraus) oder nothing_stays (nichts bleibt im Volk)
field-removal-example = needed
field-stay_min_days = Mindestverweildauer
field-stay_min_days-hint = wie viele Tage es im Volk bleiben muss
field-stay_min_days-example = 42
field-stay_min_days_with_brood = Mindestverweildauer bei Brut
field-stay_min_days_with_brood-hint = wie viele Tage es im Volk bleiben muss, solange Brut da ist, falls das abweicht
field-stay_min_days_with_brood-example = 56
field-stay_max_days = Höchstverweildauer
field-stay_max_days-hint = wie viele Tage es im Volk bleiben darf
field-stay_max_days-example = 70
field-doses = Gaben
field-doses-hint = wie viele Gaben zu einer Behandlung gehören
field-doses-example = 1

## Recording: what is wrong with a form as it was filled in, and an entry in one line

# { $field } is the label of a field, { $key } its name in a command or a sheet, { $hint } and { $example } as above.
recording-missing = { $field }: Angabe ist erforderlich
recording-missing-help = { $hint }; zum Beispiel { $example }
recording-no-such-field = ein Feld `{ $key }` gibt es hier nicht
recording-no-such-field-help = die Felder sind { $keys }
recording-misread = { $field }: { $why }
recording-not-whole = `{ $text }` ist keine ganze Zahl
recording-not-whole-to = `{ $text }` ist keine ganze Zahl von 0 bis { $most }
recording-not-a-number = `{ $text }` ist keine eindeutige Zahl
recording-neither-yes-nor-no = `{ $text }` ist weder `yes` (ja) noch `no` (nein)
recording-misread-help = { $hint }; zum Beispiel { $example }
recording-one-only = { $field }: nur ein Wert ist möglich, angegeben sind { $given }
label-recording-one-only-help = für jeden einen eigenen Eintrag machen
recording-range-backwards = der Bereich `{ $text }` läuft rückwärts
label-recording-range-backwards-help = mit der kleineren Zahl beginnen, wie in S1-S7
recording-range-too-long = der Bereich `{ $text }` hat mehr als { $most } Namen
label-recording-range-too-long-help = einen kürzeren Bereich angeben
recording-range-end = der Bereich `{ $text }` endet mit `{ $colony }`, und ein solches Volk ist nicht eingetragen
recording-did-you-mean = war `{ $near }` gemeint?
label-recording-range-end-help = das erste und das letzte Volk des Bereichs so nennen, wie sie eingetragen sind
recording-nobody-in-range = kein Volk des Bereichs `{ $text }` lebt an diesem Tag
label-recording-nobody-in-range-help = in der Übersicht nachsehen, welche Völker leben; waren sie schon da, den Tag in ihrem ersten Eintrag berichtigen: combclear record correction NUMMER --on TAG
recording-nobody-at = am Bienenstand `{ $apiary }` steht an diesem Tag kein Volk
label-recording-nobody-with-something-in = an diesem Tag ist in keinem Volk ein Arzneimittel
label-recording-nobody-alive = an diesem Tag ist kein Volk eingetragen
label-recording-nobody-there-help = die Völker nennen oder einen anderen Tag
label-recording-nobody-yet = wer das einträgt, ist noch nicht bekannt
label-recording-nobody-yet-help = die Person einmal nennen; für spätere Einträge gilt die zuletzt genannte Person
label-recording-no-lot = an diesem Tag ist von keinem Posten noch etwas übrig
label-recording-no-lot-help = zuerst den Posten eintragen, wie er gekauft wurde
recording-several-lots = von mehreren Posten ist noch etwas übrig: { $lots }
label-recording-several-lots-help = den Posten nennen, von dem genommen wurde
recording-no-entry = einen Eintrag `{ $text }` gibt es im Journal nicht; der letzte ist { $last }
label-recording-no-entry-help = seine Nummer so angeben, wie sie im Register steht
recording-nothing-inside = nach den Einträgen ist nichts im Volk: { $colonies }
label-recording-nothing-inside-help = Völker ohne Streifen weglassen oder zuerst eintragen, was eingelegt wurde
recording-several-inside = in Volk { $colony } ist das Arzneimittel aus mehr als einer Behandlung: { $courses }
label-recording-several-inside-help = die Nummer des Eintrags angeben, mit dem die gemeinten Streifen eingelegt wurden
recording-entry = Eintrag { $number }
recording-course = Eintrag { $number } ({ $medicine } vom { $placed })

recording-same-dose = Eintrag { $entry } enthält am selben Tag eine Gabe aus demselben Posten für { $colonies }
recording-supers-barred = { $answer ->
    [no] nach den Einträgen darf an diesem Tag bei { $colonies } kein Honigraum aufgesetzt werden
   *[unknown] es ist nicht bekannt, ob an diesem Tag bei { $colonies } ein Honigraum aufgesetzt werden darf
}: Honig aus zu früh aufgesetzten Honigräumen darf nicht für den menschlichen Verzehr verwendet werden
recording-dose-to-come = bei { $colonies } steht noch eine weitere Gabe aus, und dafür muss der Honigraum ab sein
recording-honey-barred = { $answer ->
    [no] nach den Einträgen darf an diesem Tag bei { $colonies } kein Honig entnommen werden
   *[unknown] es ist nicht bekannt, ob an diesem Tag bei { $colonies } Honig entnommen werden darf
}: Honig aus Honigräumen, die mit dem Arzneimittel aufgesetzt waren, darf nicht für den menschlichen Verzehr verwendet werden
recording-given-under-supers = bei { $colonies } ist an diesem Tag ein Honigraum aufgesetzt, und kein eingetragenes Dokument erlaubt dieses Arzneimittel darunter: zuerst abnehmen; der Honig daraus darf nicht für den menschlichen Verzehr verwendet werden
recording-expired = Posten { $lot } ist am { $expiry } verfallen: danach darf das Arzneimittel nicht angewendet werden
recording-no-leaflet = dieses Programm hat hier keine Packungsbeilage `{ $leaflet }`: ohne eine bleiben seine Antworten unbekannt
recording-no-leaflet-but-near = dieses Programm hat hier keine Packungsbeilage `{ $leaflet }`: ist `{ $near }` gemeint?
label-recording-still-to-come = dieser Tag kommt erst noch: Getanes eintragen, sobald es getan ist
recording-strips-not-said = in Volk { $from } ist ein Arzneimittel, und es ist nicht angegeben, wohin es kam: ob ein Honigraum aufgesetzt werden darf, wird für { $from } und { $into } nicht bekannt sein; mit --strips angeben
recording-left-out-not-on-record = Volk { $colony } wird ausgelassen: es ist nicht eingetragen
recording-left-out-not-yet = Volk { $colony } wird ausgelassen: es wurde erst am { $begun } aufgenommen
recording-left-out-ended = Volk { $colony } wird ausgelassen: es ist am { $ended } abgegangen

# An entry in one line; { $what } are its fields, each as "label value".
recording-in-one-line = { $title }, { $day }; { $what }
recording-title-only = { $title }, { $day }
recording-value = { $label }: { $value }
label-recording-yes = ja
label-recording-no = nein

## The command record

record-field-help = { $needed ->
    [yes] { $hint }; zum Beispiel { $example } (erforderlich)
   *[no] { $hint }; zum Beispiel { $example }
}
record-field-choices = { $needed ->
    [yes] { $hint }; eines von { $choices } (erforderlich)
   *[no] { $hint }; eines von { $choices }
}
label-record-heading-fields = Was einzutragen ist
label-record-heading-colonies = Völker, anders als mit Namen
record-question = { $label } ({ $hint }):
record-question-choices = { $label } ({ $hint }; { $choices }):
record-faults = es wurde nichts eingetragen; { $count ->
    [one] 1 Fehler ist zu beheben
   *[other] { $count } Fehler sind zu beheben
}
record-fault = { "  " }{ $message }
record-fault-at = { "  " }{ $option }: { $message }
record-fault-help = { $message }
    { "    " }Hilfe: { $help }
record-was = Eintrag { $number } war: { $entry }
record-is-now = jetzt: { $entry }
record-struck-out = nicht geschehen, Eintrag { $number }: { $entry }
record-recorded = { $count ->
    [one] eingetragen als Eintrag { $first }
   *[other] eingetragen als Einträge { $first } bis { $last }
}
record-not-a-day = { $why }
record-cannot-ask = am Terminal kann nicht gefragt werden: { $why }
label-record-nothing-recorded = es wurde nichts eingetragen
label-record-may-it = So eintragen? (ja oder nein)
label-record-nobody-to-ask = es wurde nichts eingetragen: niemand kann gefragt werden, denn dies ist kein Terminal
label-record-nobody-to-ask-help = --yes hinzufügen, um ohne Rückfrage einzutragen
label-record-terminal-closed = es wurde nichts eingetragen: das Terminal wurde geschlossen, bevor alles beantwortet war
label-record-terminal-closed-help = neu beginnen oder jedes Feld als Option angeben
label-record-no-reason = eine Berichtigung braucht ihren Grund
label-record-no-reason-help = --reason hinzufügen, etwa --reason "falschen Tag getippt"
label-asked-day-tomorrow = morgen
label-record-day-today = heute
label-record-day-yesterday = gestern
label-record-day-help = heute, gestern, einen Wochentag wie `monday` oder ein Datum wie 2026-08-24 schreiben
label-record-time-help = die Uhrzeit als 09:30 schreiben
label-record-by-help = den Namen einer Person angeben
label-record-option-on = Der Tag, an dem es geschah: heute, gestern, ein Wochentag oder ein Datum; ohne Angabe heute
label-record-option-on-value = TAG
label-record-option-at = Die Uhrzeit, falls notiert
label-record-option-at-value = UHRZEIT
label-record-option-by = Wer es einträgt; ohne Angabe die zuletzt genannte Person
label-record-option-by-value = NAME
label-record-option-copied-from = Das Papierregister, aus dem es übertragen ist, falls es das ist; der Eintrag wird dann nicht als verspätet gemeldet. Um das zurückzunehmen, den Eintrag streichen
label-record-option-copied-from-value = WAS
label-record-option-written-on = Der Tag, an dem es in jenes Register eingetragen wurde
label-record-option-yes = Ohne Rückfrage eintragen
label-record-option-again = Mit --yes: eintragen, obwohl für diesen Tag schon eine Gabe aus demselben Posten eingetragen ist
label-record-twice-help = es wurde nichts eingetragen; wenn zweimal gegeben wurde, --again angeben oder --at mit der Uhrzeit
label-record-option-apiary = Alle Völker an diesem Bienenstand
label-record-option-apiary-value = NAME
label-record-option-inside = Alle Völker, die ein Arzneimittel in der Beute haben
label-record-option-all = Alle Völker
label-record-option-number = Die Nummer des Eintrags, wie sie im Register steht
label-record-option-set = Was sich ändert, etwa withdrawal-days=7; nichts nach dem Gleichheitszeichen entfernt den Wert
label-record-option-set-value = FELD=WERT
label-record-option-reason = Warum
label-record-option-reason-value = TEXT
label-record-set-form = FELD=WERT schreiben, etwa withdrawal-days=7
label-record-correction = Einen Eintrag berichtigen: nur angeben, was sich ändert
label-record-strike-out = Einen Eintrag streichen über etwas, das nicht geschehen ist

## Beginning a holding

http-holding-exists = den Betrieb `{ $holding }` gibt es schon
label-http-first-entry = der erste Eintrag eines Betriebs hat die Eintragsart `holding_details`: er nennt den Tierhalter und das Land
label-http-first-entry-help = einen Eintrag der Eintragsart `holding_details` mit seiner ID senden
begin-begun = Betrieb `{ $holding }` ist angelegt; was geschieht, eintragen mit: combclear record
begin-exists = die Datenbank führt schon einen Betrieb `{ $holding }`
label-begin-exists-help = einen Wechsel von Tierhalter oder Land eintragen mit: combclear record keeper
label-begin-name = Sein Name, wie ihn jeder Befehl erwartet
label-begin-name-value = BETRIEB
import-no-holding = `{ $file }` gehört zum Betrieb `{ $holding }`, den diese Datenbank nicht führt; sie führt { $known }
label-import-no-holding-help = mit --begin importieren, um auch diesen Betrieb zu führen

## Recording what the leaflet of a lot says

record-leaflet-in-hand = Hinterlegt: { $title }. Die Packungsbeilage aus der Packung zur Hand nehmen.
label-record-leaflet-how = Mit ja antworten, wenn dort dasselbe steht, oder schreiben, was dort steht. Sagt die Packungsbeilage dazu nichts, das Wort "nichts" schreiben.
label-record-leaflet-nothing = nichts
label-record-leaflet-empty = es wurde nichts angegeben, was die Packungsbeilage sagt
label-recording-leaflet-empty-help = mindestens eine Frage beantworten
label-record-leaflet-empty-help = die Fragen an einem Terminal beantworten oder mindestens eine Angabe machen, etwa --withdrawal-days 0
record-leaflet-same = { $label }: hinterlegt ist `{ $value }`. Sagt die Packung dasselbe?
record-leaflet-what = { $label } ({ $hint }); nichts ist hinterlegt. Was sagt die Packung?
record-leaflet-barred = { $label }: hinterlegt ist, dass es unmittelbar vor einer Tracht nicht erlaubt ist, ohne Zahl von Tagen. Wie viele Tage nennt die Packung? (das Wort "nichts" schreiben, wenn sie keine nennt: das Verbot bleibt; 0 nur schreiben, wenn sie die Anwendung unmittelbar vor einer Tracht erlaubt)
leaflet-says-too = Steht auch in der Packungsbeilage: { $value }?
record-leaflet-too = Sagt die Packung auch: { $value }? (ja oder nein)
record-still-open = weiterhin nicht bekannt: { $what }

## Sheets: the template, and what is wrong with a filled-in one

# The name of the first tab, and of the tab with the lists of choices: at most 31 letters.
label-sheet-about = So wird ausgefüllt
label-sheet-choices = Auswahl
label-sheet-holding = Betrieb
label-sheet-kind = Eintragsart
label-sheet-about-tabs = Ein Tabellenblatt für jede Eintragsart, eine Zeile für jeden Eintrag. Leer lassen, was nicht gebraucht wird.
label-sheet-about-needed = Die Spalten mit Stern ausfüllen. Die graue Zeile sagt, was in jede Spalte gehört; sie wird nicht importiert.
label-sheet-about-days = Tage als 2026-08-24 schreiben. Ein Verfalldatum darf ein Monat sein, etwa 2028-05.
label-sheet-about-names = Die Listen bieten an, was eingetragen ist; andere Namen dürfen eingetippt werden. Mehrere Völker in einer Zelle: S1-S7, S9.
label-sheet-about-import = Keine Formeln und keine verbundenen Zellen verwenden. Danach `combclear import` mit dieser Datei ausführen: Alle Zeilen werden eingetragen oder keine.
label-sheet-day-hint = der Tag, an dem es geschah, als 2026-08-24
label-sheet-choose = Aus der Liste wählen
sheet-written = { $file }: eine Vorlage mit { $tabs ->
    [one] 1 Tabellenblatt
   *[other] { $tabs } Tabellenblättern
}; ausfüllen und importieren
sheet-written-csv = { $file }: eine Vorlage für `{ $tab }`; ausfüllen und importieren
sheet-needed = { $label } *

sheet-cannot-read = es wurde nichts importiert: `{ $file }` ist keine lesbare Tabelle: { $why }
label-sheet-reader-failed = sie enthält etwas, das kein Tabellenprogramm schreibt
label-sheet-cannot-read-help = in einem Tabellenprogramm öffnen und als .xlsx speichern
sheet-other-format = `{ $file }` ist weder .xlsx noch .csv
label-sheet-other-format-help = als .xlsx speichern oder als .csv mit einer einzigen Eintragsart
sheet-too-large = es wurde nichts importiert: `{ $file }` ist größer als { $most } MB
label-sheet-too-large-help = Bilder herausnehmen, ebenso Spalten und Zeilen, die keine Einträge sind; oder auf mehrere Dateien aufteilen
sheet-too-many-rows = es wurde nichts importiert: `{ $file }` hat mehr als { $most } Zeilen
label-sheet-too-many-rows-help = auf mehrere Dateien aufteilen
sheet-not-utf8 = es wurde nichts importiert: `{ $file }` ist ab Zeile { $line } kein UTF-8-Text
label-sheet-not-utf8-help = erneut als CSV UTF-8 speichern
sheet-no-kind = es wurde nichts importiert: die Spalte `{ $column }` von `{ $file }` sagt nicht, welche Eintragsart das ist
sheet-no-kind-help = eines davon in die erste Spalte schreiben: { $tabs }
sheet-other-kind = es wurde nichts importiert: in der Spalte `{ $column }` von `{ $file }` steht `{ $kind }`, und das ist keine Eintragsart
sheet-two-kinds = es wurde nichts importiert: `{ $file }` hat zwei Eintragsarten, `{ $one }` und `{ $other }`
label-sheet-two-kinds-help = für jede Eintragsart eine eigene CSV-Datei machen oder eine .xlsx-Datei mit je einem Tabellenblatt
sheet-other-holding = es wurde nichts importiert: `{ $file }` ist eine Tabelle von `{ $holding }`, nicht von `{ $wanted }`
sheet-no-holding = es wurde nichts importiert: `{ $file }` sagt nicht, für welchen Betrieb die Tabelle ist
label-sheet-no-holding-help = den Betrieb mit --holding oder im ersten Tabellenblatt nennen
label-sheet-keep-going = es wurde nichts importiert: eine Tabelle wird ganz importiert oder gar nicht
label-sheet-keep-going-help = --keep-going weglassen
label-sheet-kind-for-csv = eine CSV-Datei nimmt eine einzige Eintragsart auf
label-sheet-kind-for-csv-help = mit --kind sagen, welche, etwa --kind inspection; oder eine .xlsx-Datei schreiben, die für jede ein Blatt hat
label-sheet-kind-for-xlsx = eine .xlsx-Datei hat ein Tabellenblatt für jede Eintragsart
label-sheet-kind-for-xlsx-help = --kind weglassen oder eine .csv-Datei schreiben
sheet-unknown-kind = eine Eintragsart `{ $kind }` gibt es nicht; möglich ist eine von { $kinds }
label-sheet-is-for-new = für einen Betrieb, der noch nicht eingetragen ist, --new hinzufügen

# Where a fault is: { $tab } is the name of a tab, { $row } and { $column } are as the spreadsheet shows them.
sheet-at-cell = { $tab }, Zeile { $row }, Spalte { $column }: { $message }
sheet-at-row = { $tab }, Zeile { $row }: { $message }
sheet-at-column = { $tab }, Spalte { $column }: { $message }
sheet-at-tab = { $tab }: { $message }
sheet-fault = { "  " }{ $message }
    { "    " }Hilfe: { $help }
sheet-and-more = { "  " }... und { $more } weitere

label-sheet-fix = in der Datei beheben, dann erneut importieren
label-sheet-fix-first = in der Datei beheben, dann erneut importieren; Widersprüche werden erst gesucht, wenn jede Zelle lesbar ist
sheet-no-such-tab = zu keiner Eintragsart gehört ein Tabellenblatt `{ $tab }`
sheet-no-such-tab-help = das Blatt herausnehmen; die Blätter sind { $tabs }
sheet-did-you-mean = war `{ $near }` gemeint?
sheet-did-you-mean-tab = war `{ $near }` gemeint? Wenn nicht, das Blatt herausnehmen
sheet-no-such-day = { $field }: `{ $text }` ist kein Tag des Kalenders
sheet-no-day = { $field } fehlt
sheet-no-such-column = eine Spalte `{ $heading }` gibt es hier nicht
sheet-no-such-column-help = die Spalten sind { $columns }
sheet-column-twice = es gibt zwei Spalten `{ $heading }`
label-sheet-column-twice-help = eine davon herausnehmen
label-sheet-no-heading = in einer Spalte ohne Überschrift steht etwas
label-sheet-no-heading-help = die Spalte leeren oder ihr eine der Überschriften dieses Blatts geben
sheet-merged = die Zellen { $range } sind verbunden
label-sheet-merged-help = die Verbindung aufheben und den Wert in jede Zeile schreiben
sheet-formula = { $field }: in der Zelle steht eine Formel
label-sheet-formula-help = den Wert selbst schreiben
sheet-error = { $field }: in der Zelle steht der Fehler { $text }
sheet-not-a-day = { $field }: `{ $text }` ist kein Tag in der Reihenfolge, die in dieser Tabelle gilt
label-sheet-not-a-day-help = Jahr-Monat-Tag schreiben, etwa 2026-08-24; eine andere Reihenfolge wird nicht erraten
label-sheet-no-day-help = Jahr-Monat-Tag schreiben, etwa 2026-08-24
label-sheet-not-printed-help = 2028-05 für einen Monat schreiben oder 2028-05-31 für einen Tag; eine andere Reihenfolge wird nicht erraten
sheet-day-of-number = { $field }: { $text } ist eine Zahl, kein Tag
sheet-day-with-time = { $field }: beim Tag steht eine Uhrzeit, { $text }
label-sheet-day-with-time-help = die Uhrzeit in die Spalte dafür schreiben
sheet-printed-first = { $field }: { $text } kann als Monat eingetippt worden sein
label-sheet-printed-first-help = die Zelle als Text formatieren, dann 2028-05 für einen Monat schreiben oder den Tag vollständig
sheet-date-in-text = { $field }: in der Zelle steht das Datum { $text }, hierher gehört aber keines
label-sheet-date-in-text-help = die Zelle als Text formatieren, dann neu schreiben
sheet-not-a-time = { $field }: `{ $text }` ist keine Uhrzeit
label-sheet-not-a-time-help = Stunden und Minuten schreiben, etwa 09:30
sheet-same-row = hier steht dasselbe wie in Zeile { $row }
label-sheet-same-row-help = eine der beiden herausnehmen; wenn es zweimal geschah, in beide die Uhrzeit schreiben
label-sheet-nothing-filled-in = keine Zeile ist ausgefüllt; es wurde nichts eingetragen
sheet-by-tab = { $tab } { $entries }
sheet-all-tabs = eingetragen: { $tabs }
sheet-row-known = { $rows ->
    [one] 1 Zeile war schon importiert und wurde
   *[other] { $rows } Zeilen waren schon importiert und wurden
} nicht noch einmal eingetragen
sheet-left-out = { $tab }, Zeile { $row }: { $left-out }

## The manual

failure-cannot-write-manual = das Handbuch kann nicht nach `{ $folder }` geschrieben werden: { $why }
failure-manual-written = das Handbuch ist in `{ $folder }`
label-manual-name-a-folder = einen Ordner nennen, den es gibt und in den geschrieben werden darf

## Entries by their number over HTTP

misread-entry = `{ $text }` ist weder die ID eines Eintrags, geschrieben wie 0198c7d2-5a3b-7c41-8f00-3b2a6e9d1c77 in Kleinbuchstaben, noch seine Nummer im Journal
label-unreadable-numbered-nowhere = ein Eintrag wird mit seiner Nummer genannt, aber hier ist kein Journal, in dem sie nachzuschlagen wäre
label-unreadable-numbered-nowhere-help = den Eintrag mit seiner ID nennen
label-http-no-entry-numbered-help = die Nummer angeben, die `seq` in der Liste der Einträge hat, oder die ID
label-http-entry-help = den Eintrag mit seiner ID nennen, wie 01964c7e-6f00-7000-8000-000000000001, oder mit seiner Nummer im Journal, wie 70

## Worked examples

label-example-reason = es war ein anderes Volk
field-disposal-quantity = Menge
field-disposal-quantity-hint = in der Einheit des Arzneimittels
field-disposal-quantity-example = 4
