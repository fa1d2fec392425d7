// What was written down on this phone and is not recorded: how much of it there is, what became of it, and what it puts in doubt.

import { whose } from "./ask.js";
import { send } from "./sync.js";
import { batches, dropBatch, keepBatch } from "./kept.js";
import { dateAndTime } from "./clock.js";
import { bar, button, el, show } from "./draw.js";
import { to } from "./page.js";
import { ticked } from "./visit.js";
import { word } from "./words.js";

/** @typedef {import("./kept.js").Batch} Batch */

/** The address of the list. No holding is called so, since those begin with a stroke. */
export const LIST = "#waiting";

/** What waits or was refused. */
const unsettled = async () => (await batches()).filter((batch) => batch.recorded === undefined);

/** Says on every screen how much waits. */
export async function sayHowMuch() {
  const line = /** @type {HTMLElement} */ (document.getElementById("waiting"));
  const all = await unsettled().catch(() => undefined);
  if (all === undefined) {
    line.replaceChildren(el("span", { class: "fault" }, word("cannot_be_read")));
    return;
  }
  const refused = all.some((batch) => batch.refused);
  const text = refused ? word("some_refused") : word("some_wait", { number: all.length });
  line.dataset.number = String(all.length);
  line.replaceChildren(...all.length > 0 && location.hash !== LIST ? [el("a", { href: LIST, class: refused ? "fault" : "" }, text)] : []);
}

/** What waits, one by one. */
export async function list() {
  const all = await unsettled();
  const sendNow = async () => {
    await send();
    await list();
  };
  show(word("waiting"), el("nav", {}, button(word("back"), () => history.back())), el("h1", {}, word("waiting")),
    el("p", {}, word(all.length > 0 ? "waiting_hint" : "nothing_waits")), el("ul", {}, all.map(batchLine)));
  bar(...all.some((batch) => !batch.refused) ? [button(word("send_now"), sendNow, "go")] : []);
}

/** @param {Batch} batch */
function batchLine(batch) {
  const ofAnotherKey = batch.by !== whose();
  const again = async () => {
    const { refused, ...rest } = batch;
    await keepBatch({ ...rest, by: whose() });
    await send();
    await list();
  };
  const throwAway = async () => {
    await dropBatch(/** @type {number} */ (batch.number));
    dispatchEvent(new Event("waiting"));
    await list();
  };
  // A slip of a thumb throws nothing away.
  const sure = button(word("throw_away"), () => {
    const really = button(word("throw_away_sure"), throwAway);
    sure.replaceWith(really);
    really.focus();
  });
  const anew = () => {
    ticked.clear();
    batch.entries.flatMap(names).forEach((colony) => ticked.add(colony));
    location.hash = to(batch.holding, "", "write", batch.entries[0].kind);
  };
  return el("li", { class: "row" }, el("div", { class: "what" },
    batch.lines.map((line) => el("p", {}, line)),
    el("p", { class: "faint" }, `${batch.holding}, ${dateAndTime(batch.made)}`),
    ofAnotherKey && el("p", { class: "fault" }, word("other_key")),
    batch.refused && reasons(batch.refused)),
    batch.refused && button(word("write_anew"), anew, "go"),
    (batch.refused || ofAnotherKey) && button(word(ofAnotherKey ? "send_with_this_key" : "send_again"), again),
    (batch.refused || ofAnotherKey) && sure);
}

/** @param {NonNullable<Batch["refused"]>} refused */
function reasons({ detail, errors }) {
  const all = errors.length > 0 ? errors : [{ detail, help: "" }];
  return all.flatMap((fault) => [el("p", { class: "fault" }, `${word("refused")}: ${fault.detail}`), el("p", {}, fault.help)]);
}

/**
 * Which colonies an answer may be wrong about, since something was written down here that is not in it: what was refused; of an answer
 * that was worked out here, what could not be expected beside the rest; of any other, whatever waits. If nobody can tell, all of them.
 * @param {string} holding @param {{ here?: boolean, expected?: number[] }} answer
 * @returns {Promise<(colony: string) => boolean>}
 */
export async function inDoubt(holding, answer) {
  const read = await batches().catch(() => undefined);
  if (read === undefined) return () => true;
  const isIn = (/** @type {Batch} */ batch) => !batch.refused
    && (answer.here ? answer.expected?.includes(batch.number ?? 0) === true : batch.recorded !== undefined);
  const left = read.filter((batch) => batch.holding === holding && !isIn(batch));
  const entries = left.flatMap((batch) => batch.entries);
  return (colony) => entries.some((entry) => !OF_ITSELF.includes(entry.kind) || names(entry).includes(colony));
}

/** What concerns the colonies that it names, and no other. Medicine may reach others: those that came from them, or that they joined. */
const OF_ITSELF = ["inspection", "mite_count", "supers_on", "supers_off"];

/** The colonies that an entry names. @param {any} entry @returns {string[]} */
function names({ body }) {
  const given = (body.given ?? []).flatMap((/** @type {any} */ part) => part.colonies ?? []);
  return [body.colony, body.into, ...(body.colonies ?? []), ...given].filter(Boolean);
}
