// At the desk: every colony at once, what else can be used, and what is in stock.

import { at, get, kept } from "./ask.js";
import { date, today } from "./clock.js";
import { answerInto, bar, button, el, hold, show } from "./draw.js";
import { said, to } from "./page.js";
import { answered, counts, keptNote } from "./visit.js";
import { inDoubt } from "./waiting.js";
import { word } from "./words.js";

/** The head of a screen. @param {string} holding @param {string} title @param {{ fetched_at?: string, on: string }} [answer] */
export function head(holding, title, answer) {
  return [el("nav", {}, el("a", { href: to(holding) }, holding)), el("h1", {}, title), answer && keptNote(kept(answer))];
}

/** @param {string[]} heads @param {import("./draw.js").Child[][]} rows */
export const table = (heads, rows) => el("div", { class: "wide", tabindex: 0, role: "region", "aria-label": heads.join(", ") }, el("table", {},
  el("thead", {}, el("tr", {}, heads.map((head) => el("th", { scope: "col" }, head)))),
  el("tbody", {}, rows.map(([first, ...rest]) => el("tr", {}, el("th", { scope: "row" }, first), rest.map((cell, place) => el("td", { "data-head": heads[place + 1] }, cell)))))));

/** Every colony of the holding, and may it be supered. @param {string} holding */
export async function board(holding) {
  const answer = await get(`${at(holding)}/colonies`);
  const doubted = await inDoubt(holding, answer);
  const old = kept(answer);
  const all = answer.items.map((/** @type {any} */ item) => {
    const why = doubted(item.colony) ? word("in_doubt") : old && !old.holds ? word("kept_too_long") : undefined;
    return why ? { ...item, answer: "unknown", summary: why, first_free_day: null } : item;
  });
  const row = (/** @type {any} */ item) => [el("a", { href: to(holding, item.apiary ?? "", "hive", item.colony) }, item.colony), item.apiary ?? "",
    answered(item.answer, word(item.answer)), item.first_free_day && item.answer !== "yes" ? date(item.first_free_day) : "", item.summary];
  show(word("board"), head(holding, word("board"), answer),
    el("p", {}, counts(all)),
    table([word("colony"), word("apiary"), word("may_be_supered"), word("supers_from"), word("because")], all.map(row)),
    el("p", { class: "note" }, answer.notice));
}

/** What is in stock. @param {string} holding */
export async function stock(holding) {
  const answer = await get(`${at(holding)}/stock`);
  const row = (/** @type {any} */ lot) => [lot.lot, lot.pack_name ?? lot.medicine, lot.batch ?? word("not_said"),
    lot.expiry ? date(lot.expiry) : word("not_said"), lot.sum, lot.says];
  show(word("stock"), head(holding, word("stock"), answer),
    answer.dispose.length > 0 && el("h2", {}, word("to_dispose")),
    el("ul", {}, answer.dispose.map((/** @type {any} */ item) => el("li", { class: "row" }, `${item.prepared.body.lot}: ${item.why}`))),
    table([word("lot"), word("medicine"), word("batch"), word("expiry"), word("sum"), word("state")], answer.lots.map(row)),
    answer.notes.map((/** @type {any} */ note) => el("p", {}, typeof note === "string" ? note : note.statement)),
    el("p", { class: "note" }, answer.notice));
}

/** What may be assumed of the site. */
const ASSUMED = ["power", "access", "ground"];

/** What else can be used at an apiary, as it is or as it might be. @param {string} holding @param {string} apiary */
export async function options(holding, apiary) {
  const forms = (await get("/forms")).items.find((/** @type {any} */ form) => form.kind === "site_conditions").fields;
  const field = (/** @type {string} */ key) => forms.find((/** @type {any} */ field) => field.key === key);
  const chooser = (/** @type {string} */ key) => [el("label", { class: "field", for: key }, field(key).label),
    el("select", { id: key }, el("option", { value: "" }, word("as_recorded")),
      field(key).choices.map((/** @type {any} */ choice) => el("option", { value: choice.word }, choice.said)))];
  const found = el("div", { id: "found", "aria-live": "polite" });
  const value = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (document.getElementById(id)).value;
  const ask = () => answerInto(found, async () => {
    const asked = new URLSearchParams({ from: value("from") || today() });
    for (const key of ASSUMED) if (value(key)) asked.set(key, value(key));
    const answer = await get(`${at(holding, "apiaries", apiary)}/treatment-options?${asked}`);
    const doubted = await inDoubt(holding, answer);
    const old = kept({ ...answer, on: answer.from });
    const doubt = old && !old.here && !old.holds ? word("kept_too_long") : answer.colonies.some(doubted) ? word("in_doubt") : undefined;
    return [...doubt ? [el("p", { class: "fault" }, doubt)] : answer.options.map(option), el("p", { class: "note" }, answer.notice)];
  }, said);
  show(word("options"), el("nav", {}, el("a", { href: to(holding, apiary) }, apiary)), el("h1", {}, word("options")),
    el("p", { class: "note" }, word("careful")),
    el("label", { class: "field", for: "from" }, word("start")), el("input", { id: "from", type: "date", value: today() }),
    ASSUMED.flatMap(chooser), el("p", { class: "hint" }, word("assumed_hint")), found);
  bar(button(word("ask"), () => void ask(), "go"));
  hold();
  await ask();
}

/** How each looks: as the answer to a question. @type {Record<string, string>} */
const LOOKS = { usable: "yes", ruled_out: "no" };

/** One way of treating: usable, not known, or ruled out, and why. @param {any} option */
function option(option) {
  const free = option.start?.first_free_day;
  return el("details", { class: "row" }, el("summary", {}, option.title, option.method && `, ${option.method}`, " ", answered(LOOKS[option.answer] ?? "unknown", word(`option_${option.answer}`)),
    free && ` ${word("free_from", { day: date(free) })}`),
    option.colonies.map((/** @type {any} */ part) => [
      el("p", {}, `${part.colonies.join(", ")}: ${word(`option_${part.answer}`)}`),
      el("ul", {}, part.why.map((/** @type {any} */ why) => el("li", {}, why.why)))]).flat(),
    option.start?.visits.length > 0 && el("ul", {}, option.start.visits.map((/** @type {any} */ visit) => el("li", {}, visit.from && `${date(visit.from)}: `, visit.what))),
    option.start?.supers && el("p", {}, option.start.supers),
    option.see_to.map((/** @type {string} */ text) => el("p", { class: "note" }, text)));
}
