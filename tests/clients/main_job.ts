// The main job with the types that a generator makes from the document: it must compile, and the wrong bodies below must not.
// `.ci/run` checks it; nothing is sent.

import type { components, paths } from "./api";

type Schemas = components["schemas"];
type Answer<Path extends keyof paths> = paths[Path] extends {
  get: { responses: { 200: { content: { "application/json": infer Body } } } };
}
  ? Body
  : never;

const strips: Schemas["NewAdministration"] = {
  on: "2026-02-20",
  recorded_by: "A. Keeper",
  kind: "administration",
  body: { given: [{ lot: "strips-1", each: 2, colonies: ["M1"] }] },
};

/** A wrong entry is corrected by its number. */
const corrected: Schemas["NewEntry"] = { ...strips, on: "2026-02-21", corrects: 7, reason: "it was the day after" };

/** In a batch each entry has its id. */
const batch: Schemas["NewEntries"] = [{ ...strips, id: "01964c7e-6f00-7000-8000-000000000007" }];

/** What is read is told apart by its kind. */
function treated(entry: Schemas["Entry"]): string[] {
  if (entry.kind === "administration") {
    return entry.body === null ? [] : entry.body.given.flatMap((given) => given.colonies);
  }
  return entry.kind === "inspection" && entry.body !== null ? [entry.body.colony] : [];
}

function mayBeSupered(report: Answer<"/holdings/{holding}/colonies/{colony}/supering">): boolean {
  return report.answer === "yes";
}

// @ts-expect-error: the body of another kind
const mixed: Schemas["NewEntry"] = { ...strips, kind: "inspection" };

// @ts-expect-error: a kind that there is not
const unknown: Schemas["NewEntry"] = { ...strips, kind: "super_on" };

// @ts-expect-error: a strike-out must say what it strikes out, and why
const nothing: Schemas["NewEntry"] = { on: "2026-02-20", recorded_by: "A. Keeper", kind: "strike_out", body: {} };

// @ts-expect-error: an entry of a batch without its id
const unnamed: Schemas["NewEntries"] = [strips];

export { batch, corrected, mayBeSupered, mixed, nothing, treated, unknown, unnamed };
