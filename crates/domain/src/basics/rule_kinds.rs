//! Every kind of rule that a leaflet holds, declared once.
//!
//! This list produces [`Topic`](super::topic::Topic) and [`Says`](super::says::Says) with its JSON form and, in
//! `rules/leaflet/kinds.rs`, how a leaflet is read, its JSON Schema, and which rules may be in force together. It is on
//! this floor because journals carry topics and values too.
//!
//! ```text
//! /// What it speaks of.
//! Dose = "dose", confirmed, one per (when) {       // the kind and its word in leaflets
//!     /// What the field means.
//!     amount: Quantity = must(amount()),           // the field, and how a leaflet writes it: see `rules/leaflet/written.rs`
//!     min_tenths_c as "min_c": ...                 // its key in leaflets, if that is not its name
//! } together [Above("amount", "amount_max", Swap)] // what its keys mean to each other: see `rules/leaflet/together.rs`
//! ```
//!
//! - `stated`: a keeper who reads it on a leaflet states its value, since supers depend on it. `confirmed`: a keeper who finds the
//!   same value confirms it.
//! - `one`: two of these cannot be in force on one day. `one per (...)`: they can if they differ in one of these fields.
//!   `several`: they can.
//!
//! A type is written with its path if its kind has the same name.

/// Hands the list to the macro `$make`.
macro_rules! rule_kinds {
    ($make:ident) => { $make! {
        /// May honey supers be on while it is in.
        SupersDuring = "supers_during", stated, one {
            /// Off, on, or on without harvest.
            value: words::SupersDuring = must(word()),
        }

        /// May it be used in a nectar flow.
        FlowDuring = "flow_during", stated, one {
            /// Forbidden or allowed.
            value: Permission = must(word()),
        }

        /// It must not be used right before a nectar flow.
        FlowBefore = "flow_before", stated, one {
            /// Forbidden; nothing else is stated.
            value: Permission = must(one_of(&[Permission::Forbidden])),
            /// How many days the time before a flow is, where the leaflet says it.
            #[serde(skip_serializing_if = "Option::is_none")]
            days: Option<u16> = may(whole(1..=DAYS_MOST)),
        }

        /// Withdrawal period for honey.
        Withdrawal = "withdrawal", stated, one {
            /// Days, 0 included; or that the label knows no withdrawal period.
            days: WithdrawalPeriod = DaysOrNone,
        }

        /// Wait between removal and supers.
        WaitAfterRemoval = "wait_after_removal", stated, one {
            /// Days, 0 included.
            days: u16 = must(whole(0..=DAYS_MOST)),
        }

        /// May honey be taken while it is in.
        HarvestDuring = "harvest_during", confirmed, one {
            /// Forbidden or allowed.
            value: Permission = must(word()),
        }

        /// What may become of combs.
        CombRule = "comb_rule", confirmed, several {
            /// The rule in words, with its end.
            text: String = must(text()),
        }

        /// Whether it has to be taken out.
        Removal = "removal", stated, one {
            /// Needed or not.
            value: RemovalNeed = must(one_of(&[RemovalNeed::Needed, RemovalNeed::NotNeeded])),
        }

        /// Fewest days it must stay.
        StayMin = "stay_min", stated, one per (brood) {
            /// Days after placing.
            days: u16 = must(whole(1..=DAYS_MOST)),
            /// The brood under which this holds.
            #[serde(skip_serializing_if = "Option::is_none")]
            brood: Option<BroodState> = may(word()),
        }

        /// Most days it may stay.
        StayMax = "stay_max", stated, one per (brood) {
            /// Days after placing.
            days: u16 = must(whole(1..=DAYS_MOST)),
            /// The brood under which this holds.
            #[serde(skip_serializing_if = "Option::is_none")]
            brood: Option<BroodState> = may(word()),
        }

        /// Doses of a course.
        Doses = "doses", stated, one {
            /// How many, at least.
            count: u8 = must(whole(1..=12)),
            /// How many at most, where the leaflet lets the number vary.
            #[serde(skip_serializing_if = "Option::is_none")]
            count_max: Option<u8> = may(whole(1..=12)),
            /// Fewest days from one to the next.
            #[serde(skip_serializing_if = "Option::is_none")]
            interval_min_days: Option<u16> = may(whole(1..=DAYS_MOST)),
            /// Most days from one to the next.
            #[serde(skip_serializing_if = "Option::is_none")]
            interval_max_days: Option<u16> = may(whole(1..=DAYS_MOST)),
        } together [
            NotBelow("interval_min_days", "interval_max_days"),
            Above("count", "count_max", LeaveOut),
        ]

        /// Courses in a year.
        CoursesPerYear = "courses_per_year", confirmed, one {
            /// At most so many.
            count: u8 = must(whole(1..=12)),
            /// How the year is counted, where the leaflet says it.
            #[serde(skip_serializing_if = "Option::is_none")]
            counted: Option<YearCounting> = may(word()),
        }

        /// Courses while a colony is without brood.
        CoursesPerBroodlessPeriod = "courses_per_broodless_period", confirmed, one {
            /// At most so many.
            count: u8 = must(whole(1..=12)),
        }

        /// Days between courses.
        GapBetweenCourses = "gap_between_courses", confirmed, one {
            /// At least so many.
            days: u16 = must(whole(1..=DAYS_MOST)),
        }

        /// The time of year in which it may be given. It may run over the new year.
        Season = "season", confirmed, one {
            /// First day of the year.
            from_day: YearDay = must(year_day()),
            /// Last day of the year.
            to_day: YearDay = must(year_day()),
        }

        /// The time in the honey year in which it may be given.
        Timing = "timing", confirmed, one {
            /// When.
            value: rule_words::Timing = must(word()),
        }

        /// Temperature limits in degrees Celsius.
        Temperature = "temperature", confirmed, one per (window) {
            /// Which temperature, and when.
            window: TemperatureWindow = must(word()),
            /// In `maximum_in_first_days`: how many days.
            #[serde(skip_serializing_if = "Option::is_none")]
            first_days: Option<u16> = may(whole(1..=60)),
            /// At least, in tenths of a degree.
            #[serde(skip_serializing_if = "Option::is_none")]
            min_tenths_c as "min_c": Option<i16> = may(degrees()),
            /// At most, in tenths of a degree.
            #[serde(skip_serializing_if = "Option::is_none")]
            max_tenths_c as "max_c": Option<i16> = may(degrees()),
        } together [
            NeededBeside("first_days", ("window", "maximum_in_first_days")),
            AnyOf(&["min_c", "max_c"], Lacking::Limit),
            Above("min_c", "max_c", Swap),
        ]

        /// The brood under which it may be used.
        #[cfg_attr(feature = "openapi", schema(rename = "brood"))]
        BroodNeed = "brood", confirmed, one {
            /// Absent, at its lowest, or present.
            value: Brood = must(word()),
        }

        /// Strength of the colony.
        ColonySize = "colony_size", confirmed, one {
            /// At least so many frames of brood.
            #[serde(skip_serializing_if = "Option::is_none")]
            min_brood_frames: Option<u8> = may(whole(1..=40)),
            /// At least so many bees.
            #[serde(skip_serializing_if = "Option::is_none")]
            min_bees: Option<u32> = may(whole(BEES)),
            /// In words.
            #[serde(skip_serializing_if = "Option::is_none")]
            text: Option<String> = may(text()),
        } together [
            AnyOf(&["min_brood_frames", "min_bees", "text"], Lacking::Size),
        ]

        /// Number of brood boxes.
        BroodBoxes = "brood_boxes", confirmed, one {
            /// At most so many.
            max: u8 = must(whole(1..=10)),
        }

        /// The entrance.
        Entrance = "entrance", confirmed, several {
            /// In words.
            text: String = must(text()),
        }

        /// How much.
        Dose = "dose", confirmed, one per (per, min_bees, max_bees, when) {
            /// In the unit of the leaflet.
            #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
            amount: Quantity = must(amount()),
            /// The most, where the leaflet gives a range.
            #[serde(skip_serializing_if = "Option::is_none")]
            #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000))]
            amount_max: Option<Quantity> = may(amount()),
            /// Per what.
            per: DosePer = must(word()),
            /// In `frames_of_bees`: per how many.
            #[serde(skip_serializing_if = "Option::is_none")]
            frames: Option<u8> = may(whole(1..=40)),
            /// In `bees`: for a colony of at least so many.
            #[serde(skip_serializing_if = "Option::is_none")]
            min_bees: Option<u32> = may(whole(BEES)),
            /// In `bees`: for a colony of at most so many.
            #[serde(skip_serializing_if = "Option::is_none")]
            max_bees: Option<u32> = may(whole(BEES)),
            /// The unit where it is not that of the leaflet, such as ml of a mixed solution.
            #[serde(skip_serializing_if = "Option::is_none")]
            unit: Option<String> = may(text()),
            /// When this dose holds, in words, where the leaflet has several.
            #[serde(skip_serializing_if = "Option::is_none")]
            when: Option<String> = may(text()),
        } together [
            Above("amount", "amount_max", LeaveOut),
            Above("min_bees", "max_bees", LeaveOut),
            NeededBeside("frames", ("per", "frames_of_bees")),
            AnyBeside(&["min_bees", "max_bees"], ("per", "bees"), Lacking::Bees),
        ]

        /// Most that one colony may get.
        DoseCap = "dose_cap", confirmed, one per (when) {
            /// In `unit`.
            #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
            amount: Quantity = must(amount()),
            /// The unit where it is not that of the leaflet.
            #[serde(skip_serializing_if = "Option::is_none")]
            unit: Option<String> = may(text()),
            /// When this cap holds, in words, where the leaflet has several.
            #[serde(skip_serializing_if = "Option::is_none")]
            when: Option<String> = may(text()),
        }

        /// How a solution is mixed.
        Recipe = "recipe", confirmed, one {
            /// How much of the medicine.
            #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 35))]
            amount: Quantity = must(amount()),
            /// The unit where it is not that of the leaflet.
            #[serde(skip_serializing_if = "Option::is_none")]
            unit: Option<String> = may(text()),
            /// Millilitres of water.
            #[serde(skip_serializing_if = "Option::is_none")]
            #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000))]
            water_ml: Option<Quantity> = may(amount()),
            /// Grams of sugar.
            #[serde(skip_serializing_if = "Option::is_none")]
            #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000))]
            sugar_g: Option<Quantity> = may(amount()),
            /// Millilitres that come of it.
            #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 500))]
            makes_ml: Quantity = must(amount()),
            /// The order of mixing, and what is dangerous about it.
            text: String = must(text()),
        }

        /// What giving it needs.
        Needs = "needs", confirmed, one {
            /// All of these.
            list: Vec<Need> = must_list(WordsOf::Needs),
        }

        /// What must not be in at the same time.
        NotWith = "not_with", confirmed, several {
            /// In words.
            text: String = must(text()),
            /// What of it can be told from the record.
            #[serde(default, skip_serializing_if = "Vec::is_empty")]
            others: Vec<Other> = may_list(WordsOf::Others),
        }

        /// In which cases it must not be used.
        Contraindication = "contraindication", confirmed, several {
            /// In words.
            text: String = must(text()),
        }

        /// Chemical class, for rotation.
        Class = "class", confirmed, one {
            /// The class.
            name: String = must(text()),
        }

        /// All colonies of the apiary at the same time.
        WholeApiary = "whole_apiary", confirmed, several {
            /// In words.
            text: String = must(text()),
        }

        /// Cautions for the user.
        UserSafety = "user_safety", confirmed, several {
            /// In words.
            text: String = must(text()),
        }

        /// How long it may be used once opened.
        AfterOpening = "after_opening", confirmed, several {
            /// In words.
            text: String = must(text()),
            /// How many days after the day on which a pack was opened the rest of it may be used; 0 for that day only.
            #[serde(skip_serializing_if = "Option::is_none")]
            days: Option<u16> = may(whole(0..=IN_USE_MOST)),
        }

        /// How to store it.
        Storage = "storage", confirmed, several {
            /// In words.
            text: String = must(text()),
        }

        /// How to dispose of it.
        Disposal = "disposal", confirmed, several {
            /// In words.
            text: String = must(text()),
        }
    } };
}

pub(crate) use rule_kinds;
