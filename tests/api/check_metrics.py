"""Reads the metrics of a running service with another implementation, and checks which there are and of which types.

Usage: check_metrics.py ADDRESS
"""

import sys
import urllib.request

from prometheus_client.openmetrics.parser import text_string_to_metric_families

WANTED = {
    "combclear_requests": "counter",
    "combclear_request_duration_seconds": "histogram",
    "combclear_entries_appended": "counter",
    "combclear_commit_entries": "histogram",
    "combclear_journal_head": "gauge",
    "combclear_folded_holdings": "gauge",
    "combclear_folded_entries": "gauge",
    "combclear_folds_bytes": "gauge",
    "combclear_kept_answers_bytes": "gauge",
    "combclear_reports_in_progress": "gauge",
    "combclear_bodies_bytes": "gauge",
}
CLASSES = {"2xx", "3xx", "4xx", "5xx", "gone"}


def main(address):
    with urllib.request.urlopen(f"{address}/metrics") as answer:
        assert answer.headers["content-type"].startswith("application/openmetrics-text; version=1.0.0"), answer.headers
        text = answer.read().decode()
    families = {family.name: family for family in text_string_to_metric_families(text)}
    types = {name: family.type for name, family in families.items()}
    assert types == WANTED, types
    assert all(family.documentation for family in families.values()), text

    requests = families["combclear_requests"].samples
    assert requests and sum(sample.value for sample in requests) > 100, requests
    for sample in requests:
        assert set(sample.labels) == {"method", "path", "status"}, sample
        assert sample.labels["status"] in CLASSES, sample
        # A route, never what a client asked for.
        path = sample.labels["path"]
        assert path == "(none)" or path.startswith("/"), sample
        assert "heathside" not in path, sample
    heads = families["combclear_journal_head"].samples
    assert heads and all(len(sample.labels["holding"]) == 16 and sample.value >= 1 for sample in heads), heads
    counted = {sample.name: sample.value for sample in families["combclear_commit_entries"].samples}
    appended = families["combclear_entries_appended"].samples[0].value
    assert counted["combclear_commit_entries_sum"] == appended > 0, (counted, appended)
    print(f"{len(families)} families, {len(requests)} counts of requests, {int(appended)} entries appended")


main(*sys.argv[1:])
