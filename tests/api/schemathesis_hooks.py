"""A check beside those of schemathesis: why a request was refused that is as the document says.

Everything that a schema can say, the document must say. So such a request is refused only for what lies between several fields, or
between an entry and the journal.
"""

import re

import schemathesis

# The parameter, and what no schema can say of it.
BETWEEN_PARAMETERS = {
    "to": ("is before", "days are too many"),
    "site_until": ("",),
    # Either a lot or a prescription.
    "lot": ("",),
    # Only a build with the typesetter has it.
    "format": ("this service cannot produce PDF",),
    # A substance that no leaflet has.
    "active": ("no leaflet has the active substance",),
    # A kind of entry that nobody fills in.
    "kind": ("there is no form",),
}
# An entry with fields that go together: where it was copied from and when it was written there, what it corrects and why.
BETWEEN_FIELDS = ("copied_from", "written_on", "corrects", "reason")
# Of an entry and the journal, or of an entry and the file that it attaches.
KINDS = {
    404: None,
    409: {"/problems/same-id-other-content", "/problems/holding-exists"},
    415: {"/problems/other-document-type"},
}


@schemathesis.check
def what_is_as_the_document_says_is_refused_for_a_reason_that_it_cannot_say(ctx, response, case):
    if case.meta is None or not case.meta.generation.mode.is_positive or not 400 <= response.status_code < 500:
        return
    problem = response.json()
    kind, faults = problem["type"], problem["errors"]
    if response.status_code in KINDS:
        kinds = KINDS[response.status_code]
        assert kinds is None or kind in kinds, response.text
    elif kind == "/problems/bad-parameter":
        for fault in faults:
            reasons = BETWEEN_PARAMETERS.get(fault["parameter"], ())
            assert any(reason in fault["detail"] for reason in reasons), fault
    elif kind == "/problems/unreadable-entry" and "/forms/" in case.operation.path:
        # A form takes texts, and its fields and their words depend on its kind and on what is on record.
        for fault in faults:
            of_form = fault["pointer"].startswith("/fields/") or fault["pointer"][1:] in ("recorded_by", *BETWEEN_FIELDS)
            nobody_there = fault["pointer"].startswith(("/colon", "/apiar"))
            # The form of a confirmed value depends on its topic. The document has one form for all of them.
            is_confirmed = fault["pointer"].startswith("/confirms")
            assert of_form or nobody_there or is_confirmed, fault
    elif kind == "/problems/unreadable-entry":
        for fault in faults:
            last = fault["pointer"].rsplit("/", 1)[-1]
            # A number that no entry of the journal has; another id than that of the path; places that are not in order.
            between = fault["detail"].startswith(("there is no entry `", "the id in the entry is"))
            between = between or (last == "places" and "in order and each once" in fault["detail"])
            # The form of a confirmed value depends on its topic. The document has one form for all of them.
            is_confirmed = "/confirms/" in fault["pointer"]
            # How a number is written: a whole one without a point, others with few decimals. To a schema 2.0 is whole, and
            # `multipleOf` 0.1 means something else to each reader of binary fractions.
            is_of_decimals = re.match(r"(the number )?`-?\d+(\.\d+(e-?\d+)?|e-\d+)`", fault["detail"])
            assert between or is_confirmed or is_of_decimals or last in BETWEEN_FIELDS, fault
    else:
        assert kind in {"/problems/refused-entry", "/problems/unfit-document"}, response.text
