// A form: filled in, looked at in a line, recorded. Whatever is recorded can be struck out again, with a reason; both stay on record.

import { NoRoom, Refused, RefusedBatch, at, get, newId, post, put, record } from "./ask.js";
import { today } from "./clock.js";
import { bar, button, el, hold, keep, sayNext, show } from "./draw.js";
import { dropBatch } from "./kept.js";
import { mayStrikeOut, to } from "./page.js";
import { course, ticked } from "./visit.js";
import { word } from "./words.js";

/** @typedef {{ word: string, said: string }} Choice */
/** @typedef {{ key: string, label: string, hint: string, example: string, input: string, choices: Choice[], of?: string, needed: boolean, found: boolean }} Field */

/** Fields that are shown at once although they may be left out: what one sees at the hive.
 * @type {Record<string, string[]>} */
const AT_ONCE = {
  removal: ["left_inside"], administration: ["method"], inspection: ["brood", "seams"], mite_count: ["days", "bees"],
  colony_established: ["hive_mark"], medicine_described: ["leaflet"], lot_acquired: ["batch", "expiry", "supplier"],
};

/** Work that can hurt somebody. The words of each are in the message file. */
const CAREFUL = ["administration", "disposal"];

/** @type {Promise<any> | undefined} */
let forms;

/** Every form, asked for once.
 * @returns {Promise<any[]>} */
export async function allForms() {
  forms ??= get("/forms").catch((/** @type {unknown} */ error) => {
    forms = undefined;
    throw error;
  });
  return (await forms).items;
}

/** @param {string} kind */
async function formOf(kind) {
  return (await allForms()).find((form) => form.kind === kind);
}

/** A button for each of these forms, in the order in which they are named.
 * @param {string[]} kinds @param {string} holding @param {string} apiary */
export async function openers(kinds, holding, apiary) {
  const forms = await allForms();
  const named = kinds.map((kind) => forms.find((form) => form.kind === kind)).filter(Boolean);
  // The leaflet of a lot is read question by question.
  const where = (/** @type {string} */ kind) => kind === "leaflet_reading" ? to(holding, apiary, "leaflet") : to(holding, apiary, "write", kind);
  return named.map((form) => button(form.title, () => { location.hash = where(form.kind); }, "wide"));
}

/** What the record offers for a field. Where it cannot be asked, nothing is offered, and everything can still be typed.
 * @param {string} holding @param {Field} field @returns {Promise<string[]>} */
const offered = (holding, field) => names(holding, field).catch(() => []);

/** @param {string} holding @param {Field} field @returns {Promise<string[]>} */
async function names(holding, field) {
  switch (field.of) {
    case "lot": return (await get(`${at(holding)}/stock`)).lots.map((/** @type {any} */ lot) => lot.lot);
    case "medicine": return (await get(`${at(holding)}/medicines`)).items.map((/** @type {any} */ item) => item.described.medicine);
    case "apiary": return (await get(`${at(holding)}/apiaries`)).items.map((/** @type {any} */ apiary) => apiary.apiary);
    case "colony": return (await get(`${at(holding)}/colonies`)).items.map((/** @type {any} */ colony) => colony.colony);
    default: return [];
  }
}

/** What there is to choose from. @param {Field} field */
const choices = (field) => field.input !== "yes_no" ? field.choices
  : [{ word: "yes", said: word("yes") }, { word: "no", said: word("no") }];

/** Few choices are shown at once, so that one tap chooses. @param {Field} field */
const isTapped = (field) => choices(field).length > 0 && choices(field).length <= 5;

/** @param {Field} field @param {string} value */
function taps(field, value) {
  const one = (/** @type {string} */ choice, /** @type {string} */ text) => el("label", { class: "choice" },
    el("input", { type: "radio", name: `field-${field.key}`, value: choice, checked: choice === value }), text);
  const unsaid = field.needed ? [] : [one("", word("not_said"))];
  return el("div", { class: "choices" }, choices(field).map((choice) => one(choice.word, choice.said)), unsaid);
}

/** @param {Field} field @param {string[]} names @param {string} value */
export function input(field, names, value) {
  const id = `field-${field.key}`;
  if (isTapped(field)) return taps(field, value);
  if (field.input === "choice") {
    return el("select", { id }, el("option", { value: "" }, word("not_said")),
      field.choices.map((choice) => el("option", { value: choice.word, selected: choice.word === value }, choice.said)));
  }
  if (field.input === "lines") return el("textarea", { id, rows: 3 }, value);
  const type = { day: "date", time: "time" }[field.input] ?? "text";
  const inputmode = { whole: "numeric", amount: "decimal", temperature: "decimal" }[field.input];
  const list = names.length > 0 ? `${id}-names` : undefined;
  const made = el("input", { id, type, inputmode, list, value, autocomplete: "off", autocapitalize: "off" });
  return list ? el("div", {}, made, el("datalist", { id: list }, names.map((name) => el("option", { value: name })))) : made;
}

/** @param {Field} field @param {HTMLElement} taking */
function labelled(field, taking) {
  const optional = field.needed && !field.found ? "" : ` (${word(field.found ? "found_if_left_out" : "may_be_left_out")})`;
  const hint = el("p", { class: "hint" }, field.hint, field.example && `, ${word("for_example")} ${field.example}`);
  return isTapped(field)
    ? el("fieldset", { id: `part-${field.key}` }, el("legend", { class: "field" }, field.label, optional), hint, taking)
    : el("div", { id: `part-${field.key}` }, el("label", { class: "field", for: `field-${field.key}` }, field.label, optional), hint, taking);
}

/** @param {string} holding @param {string} apiary @param {string} kind */
export async function form(holding, apiary, kind) {
  const asked = await formOf(kind);
  const back = () => { location.hash = apiary ? to(holding, apiary) : to(holding); };
  const write = async () => {
    const filled = read(asked.fields);
    const looked = await look(holding, kind, filled);
    if (looked) agree(holding, looked, back);
  };
  await fill(asked, holding, { apiary, ...preset(asked, apiary) }, back, write);
}

/** What is known before anything is typed: the ticked colonies, and the apiary one stands at.
 * @param {any} asked @param {string} apiary @returns {Record<string, string>} */
function preset(asked, apiary) {
  /** @type {Record<string, string>} */
  const known = {};
  for (const field of asked.fields) {
    if (field.input === "first_dose" && course.firstDose) known[field.key] = course.firstDose;
    else if (field.of === "colony" && field.input === "names" && ticked.size > 0) known[field.key] = [...ticked].join(", ");
    else if (field.of === "colony" && ticked.size > 0 && asked.kind !== "colony_established") {
      known[field.key] ??= [...ticked].join(", ");
      break;
    } else if (field.of === "apiary" && apiary && asked.kind !== "apiary_details") known[field.key] = apiary;
  }
  return known;
}

/** @param {any} asked @param {string} holding @param {Record<string, string>} known @param {() => void} back @param {() => Promise<void>} write */
async function fill(asked, holding, known, back, write) {
  const offers = await Promise.all(asked.fields.map((/** @type {Field} */ field) => holding ? offered(holding, field) : []));
  const parts = asked.fields.map((/** @type {Field} */ field, /** @type {number} */ place) =>
    ({ field, part: labelled(field, input(field, offers[place], known[field.key] ?? "")) }));
  const atOnce = (/** @type {{ field: Field }} */ { field }) => field.needed || known[field.key] || AT_ONCE[asked.kind]?.includes(field.key);
  const later = parts.filter((/** @type {any} */ part) => !atOnce(part));
  show(asked.title, el("nav", {}, button(word("back"), back)), el("h1", {}, asked.title),
    CAREFUL.includes(asked.kind) && el("p", { class: "note" }, word("careful")),
    parts.filter(atOnce).map((/** @type {any} */ { part }) => part),
    labelled({ key: "on", label: word("day"), hint: word("day_hint"), example: "", input: "day", choices: [], needed: true, found: false },
      el("input", { id: "field-on", type: "date", value: today() })),
    labelled({ key: "recorded_by", label: word("who"), hint: word("who_hint"), example: "", input: "text", choices: [], needed: true, found: true },
      el("input", { id: "field-recorded_by", type: "text", autocomplete: "name" })),
    later.length > 0 && el("details", { id: "more" }, el("summary", {}, word("more")), later.map((/** @type {any} */ { part }) => part)),
    el("div", { id: "faults", role: "alert" }));
  bar(button(word("look"), write, "go"));
  hold();
}

/** What was filled in or chosen in a field. @param {string} key */
export function writtenIn(key) {
  const chosen = document.querySelector(`input[name="field-${key}"]:checked`);
  const input = /** @type {HTMLInputElement | null} */ (chosen ?? document.getElementById(`field-${key}`));
  return (input?.value ?? "").trim();
}

/** What was filled in. @param {Field[]} fields */
function read(fields) {
  /** @type {Record<string, string[]>} */
  const texts = {};
  for (const { key, input } of fields) {
    const text = writtenIn(key);
    if (text !== "") texts[key] = input === "names" ? text.split(/\s*,\s*/).filter(Boolean) : [text];
  }
  /** @type {any} */
  const filled = { fields: texts };
  if (writtenIn("on")) filled.on = writtenIn("on");
  if (writtenIn("recorded_by")) filled.recorded_by = writtenIn("recorded_by");
  return filled;
}

/** Asks what the form would record, and shows what is wrong beside each field.
 * @param {string} holding @param {string} kind @param {any} filled */
async function look(holding, kind, filled) {
  nothingWrong();
  try {
    return await post(`${at(holding, "forms", kind)}`, filled);
  } catch (error) {
    wrong(error);
    return undefined;
  }
}

/**
 * Says what is wrong beside each field, and goes to the first. Whether it could be said: somebody may have gone on.
 * @param {unknown} error
 */
export function wrong(error) {
  const faults = document.getElementById("faults");
  if (!faults) return false;
  if (!(error instanceof Refused)) {
    const more = error instanceof NoRoom ? word("no_room") : word("nothing_recorded");
    faults.replaceChildren(el("p", { class: "fault" }, word("not_reached")), el("p", {}, more));
    return true;
  }
  let first;
  for (const { pointer, detail, help } of error.problem.errors) {
    const key = (pointer ?? "").split("/").pop() ?? "";
    const part = document.getElementById(`part-${key}`) ?? faults;
    const id = `fault-${key}`;
    part.append(el("p", { class: "fault", id }, `${detail}: ${help}`));
    part.closest("details")?.setAttribute("open", "");
    const taking = /** @type {HTMLElement | null} */ (part.querySelector("input, select, textarea"));
    taking?.setAttribute("aria-invalid", "true");
    taking?.setAttribute("aria-describedby", id);
    first ??= taking ?? part;
  }
  if (!first) faults.replaceChildren(el("p", { class: "fault" }, error.message));
  first?.scrollIntoView({ block: "center" });
  first?.focus({ preventScroll: true });
  return true;
}

/** Takes away what was said to be wrong. */
export function nothingWrong() {
  document.querySelectorAll(".fault").forEach((fault) => fault.remove());
  document.querySelectorAll("[aria-invalid]").forEach((taking) => ["aria-invalid", "aria-describedby"].forEach((name) => taking.removeAttribute(name)));
}

/** Shows what would be recorded. Whoever goes back finds the form as it was filled in.
 * @param {string} holding @param {any} looked @param {() => void} back */
export function agree(holding, looked, back) {
  const again = keep();
  const entries = looked.entries.map((/** @type {any} */ entry) => ({ id: newId(), ...entry }));
  const send = () => writeDown(holding, entries, looked.lines, (now) => {
    ticked.clear();
    sayNext(`${word(now)}: ${looked.lines.join("; ")} `, mayStrikeOut(holding) && button(word("undo"), () => undo(holding, entries, looked.lines)));
    back();
  });
  show(word("look"), el("nav", {}, button(word("back"), again)), el("h1", {}, word("is_it_right")),
    looked.lines.map((/** @type {string} */ line) => el("p", {}, line)),
    looked.doubts.map((/** @type {string} */ doubt) => el("p", { class: "note" }, doubt)),
    el("div", { id: "faults", role: "alert" }));
  bar(button(word("record"), send, "go"));
  hold();
}

/**
 * Writes entries down, and goes on; or says why not.
 * @param {string} holding @param {any[]} entries @param {string[]} lines @param {(now: "recorded" | "waits") => void} then
 */
async function writeDown(holding, entries, lines, then) {
  try {
    then(await record(holding, entries, lines));
  } catch (error) {
    // Nobody knows whether it arrived. The same ids are sent again, so that it is recorded once.
    const isShown = wrong(error);
    // Whoever wrote it stands before the reason, and mends it or leaves it. Else it lies among what was refused.
    if (isShown && error instanceof RefusedBatch) await dropBatch(error.number);
  }
}

/** Strikes entries out again. @param {string} holding @param {any[]} entries @param {string[]} lines */
export function undo(holding, entries, lines) {
  const reason = /** @type {HTMLInputElement} */ (el("input", { id: "reason", type: "text" }));
  const strike = () => {
    const struck = [...entries].reverse().map(({ id, on, recorded_by }) =>
      ({ id: newId(), on, recorded_by, kind: "strike_out", body: {}, corrects: id, reason: reason.value.trim() }));
    return writeDown(holding, struck, [`${word("undo")}: ${lines.join("; ")}`], (now) => {
      sayNext(word(now === "recorded" ? "struck_out" : "waits"));
      dispatchEvent(new HashChangeEvent("hashchange"));
    });
  };
  show(word("undo"), el("h1", {}, word("undo")), el("p", {}, word("undo_hint")),
    el("label", { class: "field", for: "reason" }, word("reason")), reason, el("div", { id: "faults", role: "alert" }));
  bar(button(word("undo"), strike, "go"));
  hold();
}

/** Begins a holding with its first entry. */
export async function begin() {
  const asked = await formOf("holding_details");
  const write = async () => {
    const { fields, on, recorded_by } = read(asked.fields);
    const name = (/** @type {HTMLInputElement} */ (document.getElementById("field-holding"))).value.trim();
    const body = Object.fromEntries(Object.entries(fields).map(([key, texts]) => [key, texts[0]]));
    nothingWrong();
    try {
      await put(at(name), { id: newId(), on, recorded_by: recorded_by ?? body.keeper, kind: "holding_details", body });
      location.hash = to(name);
    } catch (error) {
      wrong(error);
    }
  };
  await fill(asked, "", {}, () => { location.hash = ""; dispatchEvent(new HashChangeEvent("hashchange")); }, write);
  const heading = document.querySelector("h1");
  heading?.after(labelled({ key: "holding", label: word("holding_name"), hint: word("holding_hint"), example: "heathside", input: "text", choices: [], needed: true, found: false },
    el("input", { id: "field-holding", type: "text", autocapitalize: "off" })));
}
