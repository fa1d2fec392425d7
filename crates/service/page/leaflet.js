// The leaflet of a lot, read with the pack in hand: question by question beside what is built in.

import { Refused, at, get, post } from "./ask.js";
import { today } from "./clock.js";
import { bar, button, el, hold, show } from "./draw.js";
import { agree, input, nothingWrong, writtenIn, wrong } from "./form.js";
import { to } from "./page.js";
import { word } from "./words.js";

/** @typedef {import("./form.js").Field & { question: string, built_in?: string }} Question */

/** The lots of a holding, to choose the one whose leaflet is read. @param {string} holding @param {string} apiary */
export async function lots(holding, apiary) {
  const { lots } = await get(`${at(holding)}/stock`);
  show(word("which_lot"), el("nav", {}, el("a", { href: apiary ? to(holding, apiary) : to(holding) }, apiary || holding)),
    el("h1", {}, word("which_lot")), lots.length === 0 && el("p", {}, word("no_lot")),
    lots.map((/** @type {any} */ lot) => button(`${lot.lot}: ${lot.pack_name ?? lot.medicine}`, () => {
      location.hash = to(holding, apiary, "leaflet", lot.lot);
    }, "wide")));
}

/** @param {string} holding @param {string} apiary @param {string} lot */
export async function leaflet(holding, apiary, lot) {
  const asked = await get(`${at(holding, "lots", lot)}/leaflet`);
  const back = () => { location.hash = apiary ? to(holding, apiary) : to(holding); };
  const look = async () => {
    nothingWrong();
    const unsaid = asked.terms.filter((/** @type {Question} */ question) => chosen(`says-${question.key}`) === "other" && writtenIn(question.key) === "");
    if (unsaid.length > 0) {
      const fault = (/** @type {Question} */ { key, label }) => ({ pointer: `/fields/${key}`, detail: label, help: word("what_it_says") });
      wrong(new Refused({ type: "", title: "", status: 422, detail: "", errors: unsaid.map(fault) }));
      return;
    }
    const fields = Object.fromEntries([["lot", [lot]], ...asked.terms.flatMap(read)]);
    const confirms = asked.others.filter((/** @type {any} */ _, /** @type {number} */ place) => chosen(`too-${place}`) === "yes")
      .map((/** @type {any} */ other) => other.confirms);
    try {
      agree(holding, await post(at(holding, "forms", "leaflet_reading"), { on: today(), fields, confirms }), back);
    } catch (error) {
      wrong(error);
    }
  };
  show(lot, el("nav", {}, button(word("back"), back)), el("h1", {}, word("leaflet_of", { lot })),
    el("p", {}, asked.in_hand ?? word("no_leaflet_built_in")),
    asked.terms.map(term), asked.others.map(other), el("div", { id: "faults", role: "alert" }));
  bar(button(word("look"), look, "go"));
  hold();
}

/** A choice between few answers. @param {string} name @param {string} value @param {string} text @param {() => void} [then] */
const tap = (name, value, text, then) => el("label", { class: "choice" },
  el("input", { type: "radio", name, value, onchange: then }), text);

/** A term: the same as built in, something else, or the leaflet is silent. @param {Question} question */
function term(question) {
  const { key, built_in } = question;
  const other = el("div", { id: `other-${key}`, hidden: true }, built_in !== undefined && el("p", { class: "hint" }, question.hint), input(question, [], ""));
  const show = (/** @type {boolean} */ shown) => () => { other.hidden = !shown; };
  return el("fieldset", { id: `part-${key}` }, el("legend", { class: "field" }, question.question),
    el("div", { class: "choices" },
      built_in !== undefined && tap(`says-${key}`, "same", word("leaflet_same"), show(false)),
      tap(`says-${key}`, "other", word(built_in === undefined ? "leaflet_says" : "leaflet_other"), show(true)),
      tap(`says-${key}`, "silent", word("leaflet_silent"), show(false))),
    other);
}

/** @param {{ question: string }} other @param {number} place */
function other({ question }, place) {
  return el("fieldset", {}, el("legend", { class: "field" }, question),
    el("div", { class: "choices" }, tap(`too-${place}`, "yes", word("yes")), tap(`too-${place}`, "no", word("no"))));
}

/** @param {string} name */
const chosen = (name) => /** @type {HTMLInputElement | null} */ (document.querySelector(`input[name="${name}"]:checked`))?.value;

/** What was said of a term, for the form: nothing unless the leaflet says something. @param {Question} question @returns {[string, string[]][]} */
function read({ key, built_in }) {
  const says = chosen(`says-${key}`);
  if (says === "same" && built_in !== undefined) return [[key, [built_in]]];
  return says === "other" ? [[key, [writtenIn(key)]]] : [];
}
