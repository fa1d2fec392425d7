// Where one is: a holding, an apiary, a colony or a form, by the part of the address after `#`.

import { NotReached, Refused, at, get, kept, signIn } from "./ask.js";
import { colony } from "./colony.js";
import { button, el, saySo, show } from "./draw.js";
import { begin, form, openers } from "./form.js";
import { visit } from "./visit.js";
import { readWords, word } from "./words.js";

/** @param {...string} parts */
export const to = (...parts) => `#/${parts.map(encodeURIComponent).join("/")}`;

/** What is written down away from the hives. */
const AT_HOME = ["apiary_details", "colony_established", "medicine_described", "lot_acquired", "leaflet_reading", "prescription", "disposal"];

async function holdings() {
  const { items } = await get("/holdings");
  if (items.length === 1 && !location.hash) {
    location.replace(to(items[0].holding));
    return;
  }
  const list = items.map((/** @type {any} */ item) =>
    el("li", { class: "row" }, el("a", { href: to(item.holding) }, item.holding)));
  show(word("holdings"), el("h1", {}, word("holdings")), el("ul", {}, list),
    items.length === 0 && el("p", {}, word("no_holding")),
    button(word("begin"), () => begin(), "wide"));
}

/** @param {string} holding */
async function apiaries(holding) {
  const asked = [get(`${at(holding)}/apiaries`), get(`${at(holding)}/colonies`), openers(AT_HOME, holding, "")];
  const [{ items }, board, writing] = await Promise.all(asked);
  const old = kept(board);
  const line = (/** @type {any} */ apiary) => {
    const here = board.items.filter((/** @type {any} */ colony) => colony.apiary === apiary.apiary);
    const count = (/** @type {string} */ answer) => here.filter((/** @type {any} */ colony) => colony.answer === answer).length;
    const told = old && !old.holds ? word("kept_too_long") : word("apiary_counts", { yes: count("yes"), no: count("no"), unknown: count("unknown") });
    return el("li", { class: "row" }, el("div", { class: "what" },
      el("a", { href: to(holding, apiary.apiary) }, apiary.apiary), el("p", { class: "faint" }, told)));
  };
  show(holding, el("h1", {}, holding), old && el("p", { class: "note", id: "kept" }, word("kept", { at: old.at })),
    el("h2", {}, word("apiaries")), el("ul", {}, items.map(line)),
    items.length === 0 && el("p", {}, word("no_apiary")),
    el("h2", {}, word("write_down")), writing,
    el("p", { class: "note" }, board.notice));
}

function keyAsked() {
  const input = /** @type {HTMLInputElement} */ (el("input", { type: "password", id: "key", autocomplete: "off" }));
  const go = () => void signIn(input.value).then(open);
  show(word("key"), el("h1", {}, word("key")), el("label", { class: "field", for: "key" }, word("key_hint")), input,
    el("p", {}, button(word("sign_in"), go, "go")));
}

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Refused && error.problem.status === 401) {
    keyAsked();
    return;
  }
  const help = error instanceof Refused ? error.problem.errors.map((fault) => fault.help) : [word("not_reached_help")];
  const what = error instanceof NotReached ? word("not_reached") : String(error instanceof Error ? error.message : error);
  show(word("not_shown"), el("h1", {}, word("not_shown")), el("p", { class: "fault" }, what),
    el("ul", {}, help.map((text) => el("li", {}, text))), el("p", {}, button(word("again"), () => void open(), "go")));
}

async function open() {
  const [holding, apiary, what, which] = location.hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  try {
    if (!holding) await holdings();
    else if (what === "write") await form(holding, apiary ?? "", which ?? "");
    else if (what === "hive") await colony(holding, apiary ?? "", which ?? "");
    else if (apiary) await visit(holding, apiary);
    else await apiaries(holding);
  } catch (error) {
    failed(error);
  }
  saySo();
}

addEventListener("hashchange", () => void open());
readWords().then(open, failed);
// Where it cannot be had, as on an address that is not encrypted, the page needs signal.
navigator.serviceWorker?.register("/page/sw.js", { scope: "/" }).catch(() => undefined);
