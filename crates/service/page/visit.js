// The visit sheet: what is due at an apiary, and a line for each colony, in the order in which one walks.

import { at, get, kept } from "./ask.js";
import { date } from "./clock.js";
import { bar, button, el, hold, keep, show } from "./draw.js";
import { openers } from "./form.js";
import { walked } from "./order.js";
import { mayWrite, to } from "./page.js";
import { inDoubt } from "./waiting.js";
import { word } from "./words.js";

/** What is most often written down at the hive, in the order of a visit. */
const AT_THE_HIVE = ["removal", "administration", "supers_on", "supers_off", "inspection", "mite_count"];

/** What is written down more seldom. */
const OTHERS = ["leaflet_reading", "colony_split", "colony_united", "colony_moved", "colony_ended", "site_conditions", "nectar_flow", "temperature", "harvest"];

/** The form that fits a task.
 * @type {Record<string, string>} */
const FOR_TASK = { take_out: "removal", used_up: "removal", give_dose: "administration", take_supers_off: "supers_off", count_mites: "mite_count" };

/** What was ticked, for the form that is opened next. */
export const ticked = new Set(/** @type {string[]} */ ([]));

/** Where they stand. */
let tickedAt = "";

/** The course that was ticked off, by the number of its first dose; empty if none was. */
export const course = { firstDose: "" };

/** @param {string} answer @param {string} text */
export const answered = (answer, text) => el("span", { class: `word ${answer}` }, text);

/** How many may be supered, and how many not. @param {{ answer: string }[]} items */
export function counts(items) {
  const count = (/** @type {string} */ answer) => items.filter((item) => item.answer === answer).length;
  return word("apiary_counts", { yes: count("yes"), no: count("no"), unknown: count("unknown") });
}

/** A colony by its name, and the mark on its hive if that says more. @param {string} colony @param {string | null} mark */
export const named = (colony, mark) => mark && mark !== colony ? `${colony} (${mark})` : colony;

/** That an answer was kept or worked out here. @param {ReturnType<typeof kept>} old */
export const keptNote = (old) => old && el("p", { class: "note", id: "kept" }, word(old.here ? "kept_here" : "kept", { at: old.at }));

/** @param {string} holding @param {string} apiary */
export async function visit(holding, apiary) {
  const sheet = await get(`${at(holding, "apiaries", apiary)}/visit`);
  // Whoever ticks hives and is shown the sheet anew finds them ticked.
  if (tickedAt !== `${holding}/${apiary}`) ticked.clear();
  tickedAt = `${holding}/${apiary}`;
  course.firstDose = "";
  const old = kept(sheet);
  if (old && !old.holds) {
    sheet.colonies.forEach((/** @type {any} */ line) => notKnown(line, word("kept_too_long")));
  }
  const doubted = await inDoubt(holding, sheet);
  sheet.colonies.filter((/** @type {any} */ line) => doubted(line.colony))
    .forEach((/** @type {any} */ line) => notKnown(line, word("in_doubt")));
  const rows = walked(holding, apiary, sheet.colonies).map((/** @type {any} */ line) => colonyLine(holding, apiary, line));
  const all = /** @type {HTMLInputElement} */ (el("input", { type: "checkbox", id: "all", onchange: () => {
    for (const box of /** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll("input.hive"))) {
      box.checked = all.checked;
      box.dispatchEvent(new Event("change"));
    }
  } }));
  show(apiary,
    el("nav", {}, el("a", { href: to(holding) }, holding)),
    el("h1", {}, apiary),
    el("p", {}, counts(sheet.colonies)),
    keptNote(old),
    sheet.clock_behind && el("p", { class: "note" }, sheet.clock_behind.said),
    el("h2", {}, word("due_here")),
    sheet.due.length === 0 ? el("p", {}, word("nothing_due")) : el("ul", {}, sheet.due.map((/** @type {any} */ task) => taskLine(holding, apiary, task))),
    el("h2", {}, word("may_be_supered")),
    rows.length === 0 ? el("p", {}, word("nobody_here"))
      : mayWrite(holding) && el("div", { class: "row" }, el("label", { class: "tick", for: "all" }, all), el("label", { class: "what", for: "all" }, word("all_of_them"))),
    el("ul", { id: "hives" }, rows),
    rows.length > 0 && el("p", { class: "faint" }, word("as_of", { day: date(sheet.on), through: date(sheet.holds_through) })),
    rows.length > 0 && el("p", {}, el("a", { class: "more", href: to(holding, apiary, "options") }, word("options"))),
    rows.length > 1 && el("p", {}, el("a", { class: "more", href: to(holding, apiary, "order") }, word("order"))),
    el("p", { class: "note" }, sheet.notice));
  bar(...mayWrite(holding) ? [button(word("write_down"), () => choose(holding, apiary), "go")] : []);
}

/** Takes the answer from a line: no yes stands where it may be wrong. @param {any} line @param {string} why */
function notKnown(line, why) {
  Object.assign(line, { answer: "unknown", word: word("unknown"), why, first_free_day: null });
}

/** @param {string} holding @param {string} apiary @param {any} line */
function colonyLine(holding, apiary, line) {
  const tick = el("input", { type: "checkbox", class: "hive", checked: ticked.has(line.colony), "aria-label": line.colony, onchange: (event) => {
    if (/** @type {HTMLInputElement} */ (event.target).checked) ticked.add(line.colony);
    else ticked.delete(line.colony);
  } });
  const day = line.answer !== "yes" && line.first_free_day
    && word(line.if_out_on ? "free_if_out" : "free_from", { day: date(line.first_free_day), out: line.if_out_on ? date(line.if_out_on) : "" });
  return el("li", { class: "row" }, mayWrite(holding) && el("label", { class: "tick" }, tick),
    el("div", { class: "what" },
      el("a", { href: to(holding, apiary, "hive", line.colony) }, named(line.colony, line.hive_mark)), " ", answered(line.answer, line.word), day && el("p", {}, day),
      line.why && el("p", { class: "faint" }, line.why)));
}

/** @param {string} holding @param {string} apiary @param {any} task */
function taskLine(holding, apiary, task) {
  const kind = FOR_TASK[task.kind];
  const done = kind && button(word("done"), () => {
    ticked.clear();
    task.colonies.forEach((/** @type {string} */ colony) => ticked.add(colony));
    course.firstDose = task.first_dose ? String(task.first_dose) : "";
    location.hash = to(holding, apiary, "write", kind);
  });
  const reads = (task.leaflets_of ?? []).map((/** @type {string} */ lot) =>
    button(word("read_it", { lot }), () => { location.hash = to(holding, apiary, "leaflet", lot); }));
  const may = mayWrite(holding);
  return el("li", { class: "row" }, el("div", { class: task.weight === "must" ? "what must" : "what" },
    task.overdue && `${word("overdue")}: `, task.line), may && done, may && reads);
}

/** @param {string} holding @param {string} apiary */
async function choose(holding, apiary) {
  const of = ticked.size === 0 ? word("no_hive_ticked") : word("hives_ticked", { hives: [...ticked].join(", ") });
  const [here, others] = await Promise.all([openers(AT_THE_HIVE, holding, apiary), openers(OTHERS, holding, apiary)]);
  const again = keep();
  show(word("write_down"), el("nav", {}, button(word("back"), again)),
    el("h1", {}, word("write_down")), el("p", {}, of), here,
    el("details", {}, el("summary", {}, word("something_else")), others));
  hold();
}
