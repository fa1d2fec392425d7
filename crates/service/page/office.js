// The legal record: the register and what is missing from it, the proofs, and the journal with its chain.

import { at, file, get, newId, send } from "./ask.js";
import { date, dateAndTime, today } from "./clock.js";
import { head, table } from "./desk.js";
import { answerInto, bar, button, el, hold, sayNext, show } from "./draw.js";
import { nothingWrong, undo, wrong } from "./form.js";
import { mayStrikeOut, mayWrite, said } from "./page.js";
import { word } from "./words.js";

/** The first day of the year of a day. @param {string} day */
const newYear = (day) => `${day.slice(0, 4)}-01-01`;

/** What can be fetched of a register: the address, the parameters and the end of the file's name. */
const FILES = [
  { word: "as_pages", path: "register", format: "html", end: "html" },
  { word: "as_pdf", path: "register", format: "pdf", end: "pdf" },
  { word: "as_table", path: "register", format: "csv", end: "csv" },
  { word: "as_pack", path: "register/pack", format: "", end: "zip" },
];

/** The register of a period. @param {string} holding */
export async function register(holding) {
  const value = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (document.getElementById(id)).value;
  const found = el("div", { id: "found", "aria-live": "polite" });
  const period = () => new URLSearchParams({ from: value("from"), to: value("to"), as_of: today() });
  const ask = () => answerInto(found, async () => {
    const gaps = await get(`${at(holding)}/register/gaps?${period()}`);
    const gap = (/** @type {any} */ gap) => el("li", { class: "row" }, el("div", { class: "what" }, gap.statement, el("p", { class: "faint" }, gap.supply)));
    return [el("h2", {}, word("complete")), ...gaps.summary.map((/** @type {string} */ line) => el("p", {}, line)),
      el("ul", {}, gaps.gaps.map(gap)), el("p", { class: "note" }, gaps.notice)];
  }, said);
  const fetchFile = async (/** @type {typeof FILES[number]} */ kind) => {
    const asked = period();
    if (kind.format) asked.set("format", kind.format);
    try {
      const url = await file(`${at(holding)}/${kind.path}?${asked}`);
      const link = el("a", { href: url, download: `${holding}-${value("from")}-${value("to")}.${kind.end}` });
      link.click();
      setTimeout(() => URL.revokeObjectURL(url), 60_000);
    } catch (error) {
      wrong(error);
    }
  };
  show(word("register"), head(holding, word("register")),
    el("label", { class: "field", for: "from" }, word("start")), el("input", { id: "from", type: "date", value: newYear(today()) }),
    el("label", { class: "field", for: "to" }, word("last_day")), el("input", { id: "to", type: "date", value: today() }),
    FILES.map((kind) => button(word(kind.word), () => fetchFile(kind), "wide")), el("div", { id: "faults", role: "alert" }), found);
  bar(button(word("what_is_missing"), () => void ask(), "go"));
  await ask();
}

/** The proofs of purchase and the prescriptions, and a new one from the camera or a file. @param {string} holding */
export async function proofs(holding) {
  const [{ items }, { lots }] = await Promise.all([get(`${at(holding)}/documents`), get(`${at(holding)}/stock`)]);
  // The window is opened by the tap itself, or the browser takes it for an advertisement.
  const opened = async (/** @type {any} */ item) => {
    const shown = open("", "_blank");
    try {
      const url = await file(item.path);
      if (shown) shown.location.href = url;
    } catch (error) {
      shown?.close();
      wrong(error);
    }
  };
  const row = (/** @type {any} */ item) => [item.lot ?? item.prescription, item.file_name ?? item.media_type, date(item.on), item.recorded_by,
    item.state === "kept" ? button(word("open"), () => opened(item)) : item.state];
  const value = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (document.getElementById(id)).value.trim();
  const attach = async () => {
    nothingWrong();
    const chosen = /** @type {HTMLInputElement} */ (document.getElementById("file")).files?.[0];
    const faults = /** @type {HTMLElement} */ (document.getElementById("faults"));
    if (!chosen || !value("lot") || !value("recorded_by")) {
      faults.append(el("p", { class: "fault" }, word("proof_needs")));
      return;
    }
    const asked = new URLSearchParams({ lot: value("lot"), on: today(), recorded_by: value("recorded_by"), file_name: chosen.name.slice(-200) });
    try {
      await send(`${at(holding, "documents", newId())}?${asked}`, chosen);
      sayNext(word("attached", { lot: value("lot") }));
      dispatchEvent(new HashChangeEvent("hashchange"));
    } catch (error) {
      wrong(error);
    }
  };
  const offer = mayWrite(holding) && [el("h2", {}, word("attach")),
    el("label", { class: "field", for: "lot" }, word("lot")),
    el("select", { id: "lot" }, el("option", { value: "" }, word("not_said")), lots.map((/** @type {any} */ lot) => el("option", { value: lot.lot }, `${lot.lot}: ${lot.pack_name ?? lot.medicine}`))),
    el("label", { class: "field", for: "recorded_by" }, word("who")), el("input", { id: "recorded_by", type: "text", autocomplete: "name" }),
    el("label", { class: "field", for: "file" }, word("proof_file")),
    el("input", { id: "file", type: "file", accept: "application/pdf,image/jpeg,image/png,image/heic", capture: "environment" })];
  show(word("proofs"), head(holding, word("proofs")),
    items.length === 0 ? el("p", {}, word("no_proof")) : table([word("lot"), word("proof_file"), word("day"), word("who"), word("open")], items.map(row)),
    offer || null, el("div", { id: "faults", role: "alert" }));
  bar(...offer ? [button(word("attach"), attach, "go")] : []);
  if (offer) hold();
}

/** How many entries are shown at once. */
const SHOWN = 50;

/** The journal, newest first, and whether its chain holds. @param {string} holding @param {string} [before] */
export async function journal(holding, before) {
  const { items: holdings } = await get("/holdings");
  const last = before ? Number(before) : holdings.find((/** @type {any} */ item) => item.holding === holding)?.entries ?? 0;
  const after = Math.max(0, last - SHOWN);
  const [{ items }, { items: forms, titles }] = await Promise.all([get(`${at(holding)}/entries?after=${after}&limit=${SHOWN}`), get("/forms")]);
  const title = (/** @type {any} */ entry) => titles[entry.kind] ?? entry.kind;
  const labels = (/** @type {string} */ kind) => new Map((forms.find((/** @type {any} */ form) => form.kind === kind)?.fields ?? [])
    .map((/** @type {any} */ field) => [field.key, field.label]));
  const line = (/** @type {any} */ entry) => el("li", { class: "row" }, el("div", { class: "what" },
    `${entry.seq}. ${title(entry)}, ${date(entry.on)}`,
    el("p", {}, text(entry.body, labels(entry.kind))), entry.reason && el("p", {}, `${word("reason")}: ${entry.reason}`),
    el("p", { class: "faint" }, `${entry.recorded_by}, ${dateAndTime(entry.recorded_at)}`)),
    mayStrikeOut(holding) && !["strike_out", "archived", "holding_details"].includes(entry.kind)
      && button(word("undo"), () => undo(holding, [entry], [`${entry.seq}. ${title(entry)}`])));
  const found = el("div", { id: "found", role: "status" });
  const verify = () => answerInto(found, async () => {
    const answer = await get(`${at(holding)}/verification`);
    return [answer.answer === "sound" ? word("chain_sound", { entries: answer.entries, head: answer.head })
      : answer.answer === "lacking" ? `${word("chain_lacking")} ${answer.documents.map((/** @type {any} */ one) => one.help).join("; ")}`
      : `${word("chain_broken", { seq: answer.seq })} ${answer.what}`];
  }, said);
  show(word("journal"), head(holding, word("journal")), found, el("ul", {}, items.reverse().map(line)),
    after > 0 && button(word("earlier"), () => void journal(holding, String(after)), "wide"));
  bar(button(word("verify"), verify, "go"));
}

/** What an entry says, in the words of its fields. @param {any} body @param {Map<string, string>} labels @returns {string} */
function text(body, labels) {
  if (body === null) return "";
  if (Array.isArray(body)) return body.map((part) => text(part, labels)).join(", ");
  if (typeof body !== "object") return String(body);
  return Object.entries(body).map(([key, value]) => `${labels.get(key) ?? key.replaceAll("_", " ")}: ${text(value, labels)}`).join("; ");
}
