"""The main job with a client that a generator makes from the document, against a running service.

Usage: main_job.py ADDRESS, where the generated package `client` is on the path. Everything in it is invented.
"""

import datetime
import sys
import uuid

from client import Client
from client.api.colonies import get_colony_supering
from client.api.journal import get_entry, list_holdings, post_entries, put_entry, put_holding
from client.models import (
    Administration,
    AdministrationEntry,
    ApiaryDetails,
    ColonyEstablished,
    Given,
    HoldingDetails,
    LotAcquired,
    MedicineDescribed,
    MedicinesInside,
    NewAdministration,
    NewAdministrationKind,
    NewAdministrationWithId,
    NewAdministrationWithIdKind,
    NewApiaryDetailsWithId,
    NewApiaryDetailsWithIdKind,
    NewColonyEstablishedWithId,
    NewColonyEstablishedWithIdKind,
    NewHoldingDetailsWithId,
    NewHoldingDetailsWithIdKind,
    NewLotAcquiredWithId,
    NewLotAcquiredWithIdKind,
    NewMedicineDescribedWithId,
    NewMedicineDescribedWithIdKind,
    Problem,
    Unit,
    Verdict,
)

HOLDING = "a client of its own"
TODAY = datetime.date.today()
BEGUN = TODAY - datetime.timedelta(days=60)
PLACED = TODAY - datetime.timedelta(days=20)


def around(kind, on):
    return {"id": uuid.uuid4(), "kind": kind, "on": on, "recorded_by": "A. Keeper"}


def recorded(response):
    """What was recorded, or the end."""
    if response.parsed is None or isinstance(response.parsed, Problem) or response.status_code >= 400:
        sys.exit(f"{response.status_code}: {response.content.decode()}")
    return response.parsed


def main(address):
    service = Client(base_url=address)

    details = HoldingDetails(keeper="A. Keeper", jurisdiction="gb")
    first = NewHoldingDetailsWithId(body=details, **around(NewHoldingDetailsWithIdKind.HOLDING_DETAILS, BEGUN))
    begun = put_holding.sync_detailed(HOLDING, client=service, body=first)
    assert begun.status_code == 201, begun
    assert put_holding.sync_detailed(HOLDING, client=service, body=first).status_code == 200
    assert HOLDING in [item.holding for item in recorded(list_holdings.sync_detailed(client=service)).items]

    given = Administration(given=[Given(lot="strips-1", each=2, colonies=["M1"])])
    batch = [
        NewApiaryDetailsWithId(
            body=ApiaryDetails(apiary="orchard"), **around(NewApiaryDetailsWithIdKind.APIARY_DETAILS, BEGUN)
        ),
        NewColonyEstablishedWithId(
            body=ColonyEstablished(colony="M1", apiary="orchard", medicines=MedicinesInside.NONE),
            **around(NewColonyEstablishedWithIdKind.COLONY_ESTABLISHED, BEGUN),
        ),
        NewMedicineDescribedWithId(
            body=MedicineDescribed(
                medicine="strips", pack_name="Demo strips", unit=Unit.STRIP, leaflet="amitraz-strip-500mg-a"
            ),
            **around(NewMedicineDescribedWithIdKind.MEDICINE_DESCRIBED, BEGUN),
        ),
        NewLotAcquiredWithId(
            body=LotAcquired(lot="strips-1", medicine="strips", quantity=20),
            **around(NewLotAcquiredWithIdKind.LOT_ACQUIRED, BEGUN),
        ),
        NewAdministrationWithId(body=given, **around(NewAdministrationWithIdKind.ADMINISTRATION, PLACED)),
    ]
    report = recorded(post_entries.sync_detailed(HOLDING, client=service, body=batch))
    placed = report.items[-1].entry
    assert isinstance(placed, AdministrationEntry), placed
    assert placed.body.given[0].colonies == ["M1"], placed

    answer = recorded(get_colony_supering.sync_detailed(HOLDING, "M1", client=service, on=TODAY))
    assert answer.answer == Verdict.NO, answer

    # The strips went in a day later: the wrong entry is named by its number.
    wrong = around(NewAdministrationKind.ADMINISTRATION, PLACED + datetime.timedelta(days=1))
    right = NewAdministration(body=given, corrects=placed.seq, reason="it was the day after", **wrong)
    correction = recorded(put_entry.sync_detailed(HOLDING, wrong["id"], client=service, body=right))
    assert isinstance(correction, AdministrationEntry) and correction.corrects == placed.id, correction
    read = recorded(get_entry.sync_detailed(HOLDING, correction.seq, client=service))
    assert read == correction, read
    print(f"{HOLDING}: {answer.summary}")


main(*sys.argv[1:])
