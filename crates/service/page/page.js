// Where one is: a holding, an apiary, a colony or a form, by the part of the address after `#`.

import { NotReached, Refused, Superseded, at, get, kept, signIn } from "./ask.js";
import { today, wrongBy } from "./clock.js";
import { colony } from "./colony.js";
import { button, el, saySo, screen, show } from "./draw.js";
import { board, options, stock } from "./desk.js";
import { begin, form, openers } from "./form.js";
import { counts, keptNote, visit } from "./visit.js";
import { leaflet, lots } from "./leaflet.js";
import { journal, proofs, register } from "./office.js";
import { order } from "./order.js";
import { keepUp, others, send } from "./sync.js";
import { LIST, inDoubt, list, sayHowMuch } from "./waiting.js";
import { page, readWords, word } from "./words.js";

/** @param {...string} parts */
export const to = (...parts) => `#/${parts.map(encodeURIComponent).join("/")}`;

/** What is looked at away from the hives: each with its word and what shows it.
 * @type {Record<string, (holding: string) => Promise<void>>} */
const AT_THE_DESK = { board, stock, register, proofs, journal };

/** The role of the key in each holding that was listed. @type {Map<string, string | undefined>} */
const roles = new Map();

/** Whether the key may add entries. Whoever was asked for none may. @param {string} holding */
export const mayWrite = (holding) => !["reader", "operator"].includes(roles.get(holding) ?? "");

/** Whether the key may correct. @param {string} holding */
export const mayStrikeOut = (holding) => [undefined, "keeper"].includes(roles.get(holding));

/** @returns {Promise<any[]>} */
async function listed() {
  const { items } = await get("/holdings");
  for (const item of items) roles.set(item.holding, item.role);
  return items;
}

/** What is written down away from the hives. */
const AT_HOME = ["apiary_details", "colony_established", "medicine_described", "lot_acquired", "leaflet_reading", "prescription", "disposal"];

async function holdings() {
  const items = await listed();
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
  const doubted = await inDoubt(holding, board);
  board.items.filter((/** @type {any} */ colony) => doubted(colony.colony))
    .forEach((/** @type {any} */ colony) => { colony.answer = "unknown"; });
  const line = (/** @type {any} */ apiary) => {
    const here = board.items.filter((/** @type {any} */ colony) => colony.apiary === apiary.apiary);
    const told = old && !old.holds ? word("kept_too_long") : counts(here);
    return el("li", { class: "row" }, el("div", { class: "what" },
      el("a", { href: to(holding, apiary.apiary) }, apiary.apiary), el("p", { class: "faint" }, told)));
  };
  show(holding, el("h1", {}, holding), keptNote(old),
    el("h2", {}, word("apiaries")), el("ul", {}, items.map(line)),
    items.length === 0 && el("p", {}, word("no_apiary")),
    mayWrite(holding) && [el("h2", {}, word("write_down")), ...writing],
    el("h2", {}, word("desk")),
    Object.keys(AT_THE_DESK).map((name) => button(word(name), () => { location.hash = to(holding, "", name); }, "wide")),
    el("p", {}, button(word("sign_in_anew"), keyAsked)),
    el("p", { class: "note" }, board.notice));
}

function keyAsked() {
  const faults = el("div", { role: "alert" });
  const input = /** @type {HTMLInputElement} */ (el("input", { type: "password", id: "key", autocomplete: "off" }));
  // Nothing of what another key was shown stays.
  const refused = (/** @type {unknown} */ error) => faults.replaceChildren(el("p", { class: "fault" }, said(error)));
  const go = () => void signIn(input.value).then(() => location.reload(), refused);
  show(word("key"), el("h1", {}, word("key")), el("label", { class: "field", for: "key" }, word("key_hint")), input, faults,
    el("p", {}, button(word("sign_in"), go, "go")));
}

/** What went wrong, in a line. @param {unknown} error */
export const said = (error) => error instanceof NotReached ? word("not_reached") : String(error instanceof Error ? error.message : error);

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Refused && error.problem.status === 401) {
    keyAsked();
    return;
  }
  const help = error instanceof Refused ? error.problem.errors.map((fault) => fault.help) : [word("not_reached_help")];
  const what = said(error);
  show(word("not_shown"), el("h1", {}, word("not_shown")), el("p", { class: "fault" }, what),
    el("ul", {}, help.map((text) => el("li", {}, text))), el("p", {}, button(word("again"), () => void open(), "go")));
}

/** How many screens were opened so far. */
let opened = 0;

async function open() {
  opened += 1;
  const number = opened;
  let holding = "";
  try {
    const [of, apiary, what, which] = location.hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
    holding = of ?? "";
    if (holding && !roles.has(holding)) await listed().catch(() => undefined);
    if (number !== opened) return;
    const atTheDesk = apiary ? undefined : AT_THE_DESK[what ?? ""];
    if (location.hash === LIST) await list();
    else if (!holding) await holdings();
    else if (atTheDesk) await atTheDesk(holding);
    else if (what === "order") await order(holding, apiary ?? "");
    else if (what === "options") await options(holding, apiary ?? "");
    else if (what === "leaflet" && which) await leaflet(holding, apiary ?? "", which);
    else if (what === "leaflet") await lots(holding, apiary ?? "");
    else if (what === "write") await form(holding, apiary ?? "", which ?? "");
    else if (what === "hive") await colony(holding, apiary ?? "", which ?? "");
    else if (apiary) await visit(holding, apiary);
    else await apiaries(holding);
  } catch (error) {
    // The screen that somebody went on to shows itself.
    if (error instanceof Superseded) return;
    failed(error);
  }
  drawnOn = today();
  saySo();
  await sayHowMuch();
  // For where there is no signal. Nobody waits for it.
  if (holding && location.hash !== LIST && page().engine) void keepUp(holding).catch(() => undefined);
}

/** Says what is to be said on every screen: that the clock of this phone is wrong, or that the service has a newer page. */
function notes() {
  const hours = Math.round(Math.abs(wrongBy()) / 36e5);
  document.getElementById("notes")?.replaceChildren(...[
    wrongBy() !== 0 && el("p", { class: "note", id: "clock" }, wrongBy() > 0 ? word("clock_behind", { hours }) : word("clock_ahead", { hours })),
    outOfDate && el("p", { class: "note", id: "older" }, word("older_page"), " ", button(word("load_again"), () => location.reload())),
  ].filter((note) => note instanceof Node));
}

let outOfDate = false;

/** Whether anything waits to be sent. */
const doesWait = () => (document.getElementById("waiting")?.dataset.number ?? "0") !== "0";

/** The day on which the screen was drawn. */
let drawnOn = "";

/** A screen that was looked at for longer than this is drawn anew when somebody comes back to it, in milliseconds. */
const STALE = 60_000;

/** Draws the screen anew, unless somebody is filling something in. */
async function drawAnew() {
  if (!screen.isHeld) await open();
}

/** Sends what waits, and looks whether the service has a newer page than this one. */
async function catchUp() {
  const before = doesWait();
  if (before) await send();
  await sayHowMuch();
  const { version } = await get("/page/version.json").catch(() => page());
  outOfDate ||= version !== page().version;
  notes();
  if (before && !doesWait()) await drawAnew();
}

/** Somebody comes back to the page: what it says may be of another day. */
async function comeBack() {
  await catchUp();
  if (drawnOn !== today() || Date.now() - screen.since > STALE) await drawAnew();
}

others.addEventListener("message", () => void drawAnew());
addEventListener("hashchange", () => void open());
addEventListener("waiting", () => void sayHowMuch());
addEventListener("clock", notes);
addEventListener("online", () => void catchUp());
document.addEventListener("visibilitychange", () => { if (!document.hidden) void comeBack(); });
setInterval(() => { if (doesWait()) void catchUp(); }, 30_000);
readWords().then(open, failed).then(sayHowMuch).then(catchUp)
  // Where there was too little signal for it when the worker was installed.
  .then(async () => {
    const isKept = !navigator.serviceWorker?.controller || await caches.match("/page/engine.wasm");
    if (page().engine && !isKept) await fetch("/page/engine.wasm");
  }).catch(() => undefined);
// What was fetched before the worker was there is fetched once more, so that it is kept.
navigator.serviceWorker?.addEventListener("controllerchange", () => void get("/forms").catch(() => undefined));
// Where it cannot be had, as on an address that is not encrypted, the page needs signal.
navigator.serviceWorker?.register("/page/sw.js", { scope: "/" }).catch(() => undefined);
