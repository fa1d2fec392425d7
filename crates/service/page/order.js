// The order in which the keeper walks round an apiary. It is no part of the record, and is kept on this phone.

import { at, get } from "./ask.js";
import { bar, button, el, hold, show } from "./draw.js";
import { to } from "./page.js";
import { named } from "./visit.js";
import { word } from "./words.js";

/** @param {string} holding @param {string} apiary */
const place = (holding, apiary) => `order-of-${JSON.stringify([holding, apiary])}`;

/** The order as it was kept. @param {string} holding @param {string} apiary @returns {string[]} */
function kept(holding, apiary) {
  try {
    return JSON.parse(localStorage.getItem(place(holding, apiary)) ?? "[]");
  } catch {
    return [];
  }
}

/**
 * Puts the lines of a sheet in the order in which one walks. Hives that have no place in it come last, as they came.
 * @param {string} holding @param {string} apiary @param {{ colony: string }[]} lines
 */
export function walked(holding, apiary, lines) {
  const order = kept(holding, apiary);
  const of = (/** @type {{ colony: string }} */ { colony }) => order.includes(colony) ? order.indexOf(colony) : order.length;
  return [...lines].sort((one, other) => of(one) - of(other));
}

/** The hives are tapped in the order in which one walks. @param {string} holding @param {string} apiary */
export async function order(holding, apiary) {
  const { colonies } = await get(`${at(holding, "apiaries", apiary)}/visit`);
  /** @type {string[]} */
  let tapped = [];
  const back = () => { location.hash = to(holding, apiary); };
  const keep = () => {
    localStorage.setItem(place(holding, apiary), JSON.stringify(tapped));
    back();
  };
  const hives = el("ul", {});
  const draw = () => hives.replaceChildren(...walked(holding, apiary, colonies).map((/** @type {any} */ line) => {
    const name = named(line.colony, line.hive_mark);
    const number = tapped.indexOf(line.colony) + 1;
    const tap = () => {
      tapped = number > 0 ? tapped.filter((colony) => colony !== line.colony) : [...tapped, line.colony];
      draw();
      document.getElementById(`walk-${line.colony}`)?.focus();
    };
    const made = button(number > 0 ? `${number}. ${name}` : name, tap, number > 0 ? "wide chosen" : "wide");
    made.id = `walk-${line.colony}`;
    made.setAttribute("aria-pressed", String(number > 0));
    return el("li", {}, made);
  }));
  draw();
  show(word("order"), el("nav", {}, button(word("back"), back)), el("h1", {}, word("order")), el("p", {}, word("order_hint")), hives);
  bar(button(word("keep_order"), keep, "go"));
  hold();
}
