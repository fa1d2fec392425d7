//! Rows of the register as lines of text, for cases.

use combclear_domain::Quantity;
use std::fmt::Display;

use combclear_domain::questions::register::{CoursePart, Register, Written};

pub(crate) fn acquisitions(report: &Register) -> Vec<String> {
    let line = report.acquisitions.iter().map(|row| {
        let supplier = row
            .supplier
            .as_ref()
            .map(|supplier| format!("{} ({})", supplier.name, or_none(supplier.address.as_ref())));
        format!(
            "{}{} {} {} {}, batch {}, expiry {}, from {}, proof {}, {} documents",
            row.written.on,
            if row.earlier { " earlier" } else { "" },
            row.lot,
            row.quantity,
            or_none(row.medicine.unit),
            or_none(row.batch.as_ref()),
            or_none(row.expiry),
            or_none(supplier),
            or_none(row.proof.as_ref()),
            row.documents.len(),
        )
    });
    line.collect()
}

pub(crate) fn prescriptions(report: &Register) -> Vec<String> {
    let line = report.prescriptions.iter().map(|row| {
        format!(
            "{}{} {} by {} ({}), {} days",
            row.written.on,
            if row.earlier { " earlier" } else { "" },
            row.prescription.number,
            or_none(row.prescription.vet.as_ref()),
            or_none(row.prescription.contact.as_ref()),
            or_none(row.withdrawal_days),
        )
    });
    line.collect()
}

pub(crate) fn administrations(report: &Register) -> Vec<String> {
    let line = report.administrations.iter().map(|row| {
        let parts = row.given.iter().map(|part| {
            format!("{} {} each to {} from {}", part.total, part.each, joined(&part.colonies), part.lot)
        });
        format!(
            "{} {} dose {}: {} in all; {}; stated {}; by {}",
            row.written.on,
            row.medicine.medicine.known().unwrap(),
            row.dose,
            row.total,
            parts.collect::<Vec<_>>().join(" + "),
            or_none(row.withdrawal_stated),
            or_none(row.vet.as_ref().or(row.given_by.as_ref())),
        )
    });
    line.collect()
}

pub(crate) fn courses(report: &Register) -> Vec<String> {
    report.administrations.iter().flat_map(|row| row.courses.iter().map(course)).collect()
}

fn course(part: &CoursePart) -> String {
    let end = match (part.last, part.still_in, part.not_known_since) {
        (Some(last), _, _) => format!("to {last}, {} days", or_none(part.duration_days)),
        (None, true, _) => {
            let (from, by) = (or_none(part.may_come_out_from), or_none(part.must_be_out_by));
            format!("still in, out from {from} by {by}")
        }
        (None, false, since) => format!("not known since {}", or_none(since)),
    };
    let came = part.came_on.map(|on| format!(" (came {on})")).unwrap_or_default();
    let moves: Vec<String> =
        part.later_apiaries.iter().map(|stay| format!(", {} from {}", stay.apiary, stay.from)).collect();
    let withdrawal = part.withdrawal.as_ref().map(|said| {
        let by = serde_json::to_value(said.said_by).unwrap();
        format!("{} days by {}", said.days, by.as_str().unwrap())
    });
    format!(
        "{}{came} at {}{}: {} {end}; withdrawal {}; blocked {}, free {}",
        joined(&part.colonies),
        or_none(part.apiary.as_ref()),
        moves.concat(),
        part.first,
        or_none(withdrawal),
        or_none(part.last_blocked_day),
        or_none(part.first_free_day),
    )
}

pub(crate) fn removals(report: &Register) -> Vec<String> {
    let line = report.removals.iter().map(|row| {
        format!(
            "{} {} of {} from {}, {} left, {}",
            row.written.on,
            row.medicine.medicine.known().unwrap(),
            or_none(row.placed),
            joined(&row.colonies),
            row.left_inside,
            or_none(row.how_and_where.as_ref()),
        )
    });
    line.collect()
}

pub(crate) fn disposals(report: &Register) -> Vec<String> {
    let line = report.disposals.iter().map(|row| {
        let batch = or_none(row.batch.as_ref());
        format!("{} {} {}, batch {batch}, {}", row.written.on, row.quantity, row.lot, row.how_and_where)
    });
    line.collect()
}

pub(crate) fn corrections(report: &Register) -> Vec<String> {
    let line = report.corrections.iter().map(|row| {
        let changes = row.changes.iter().map(|change| {
            format!("{} {} -> {}", change.field, or_none(change.was.as_ref()), or_none(change.now.as_ref()))
        });
        format!(
            "{} {}{}, {}: {}",
            row.kind.as_str(),
            if row.struck_out { "struck out " } else { "" },
            row.written.recorded_by,
            row.reason,
            changes.collect::<Vec<_>>().join("; "),
        )
    });
    line.collect()
}

pub(crate) fn vet_lots(report: &Register) -> Vec<String> {
    let line = report.vet_lots.iter().map(|row| {
        format!(
            "{}{} {} of {}, batch {}, expiry {}, {} ({}), {} documents",
            row.written.on,
            if row.earlier { " earlier" } else { "" },
            row.lot,
            or_none(row.medicine.pack_name.as_ref()),
            or_none(row.batch.as_ref()),
            or_none(row.expiry),
            row.vet,
            or_none(row.contact.as_ref()),
            row.documents.len()
        )
    });
    line.collect()
}

pub(crate) fn totals(report: &Register) -> Vec<String> {
    let line = report.totals.iter().map(|total| {
        let or_not = |quantity: Option<Quantity>| quantity.map_or("?".to_owned(), |known| known.to_string());
        let (before, after) = (or_not(total.carried_in), or_not(total.left));
        let (acquired, given, disposed) = (total.acquired, total.given, total.disposed);
        let expired = if total.expired { " expired" } else { "" };
        format!("{} {before} +{acquired} -{given} -{disposed} = {after}{expired}", total.lot)
    });
    line.collect()
}

pub(crate) fn late(report: &Register) -> Vec<String> {
    let late = |kind: &'static str, written: &Written| {
        (written.days_late > 0).then(|| format!("{kind} {} {}", written.on, written.days_late))
    };
    let acquired = report.acquisitions.iter().filter_map(|row| late("acquisition", &row.written));
    let given = report.administrations.iter().filter_map(|row| late("administration", &row.written));
    let out = report.removals.iter().filter_map(|row| late("removal", &row.written));
    let disposed = report.disposals.iter().filter_map(|row| late("disposal", &row.written));
    acquired.chain(given).chain(out).chain(disposed).collect()
}

pub(crate) fn keepers(report: &Register) -> Vec<String> {
    report
        .keepers
        .iter()
        .map(|keeper| format!("{} {} {}", keeper.since, keeper.keeper, keeper.jurisdiction))
        .collect()
}

fn or_none(value: Option<impl Display>) -> String {
    value.map_or_else(|| "-".to_owned(), |value| value.to_string())
}

fn joined(names: &[impl Display]) -> String {
    names.iter().map(ToString::to_string).collect::<Vec<_>>().join(" ")
}
