// One colony: the answer in a sentence, what it rests on, what is in it, and what was written down.

import { at, get, kept, picture } from "./ask.js";
import { date, dateAndTime } from "./clock.js";
import { bar, button, el, show } from "./draw.js";
import { mayWrite, to } from "./page.js";
import { answered, keptNote, named, ticked } from "./visit.js";
import { inDoubt } from "./waiting.js";
import { word } from "./words.js";

/** @param {string} holding @param {string} apiary @param {string} name */
export async function colony(holding, apiary, name) {
  const path = at(holding, "colonies", name);
  const asked = [get(`${path}/supering`), get(path), get(`${path}/history`), picture(`${path}/season`)];
  const [answer, now, history, season] = await Promise.all(asked);
  const old = kept({ ...answer, holds_through: answer.ahead[0]?.to });
  const doubted = (await inDoubt(holding, answer))(name);
  if ((old && !old.holds) || doubted) {
    const why = word(doubted ? "in_doubt" : "kept_too_long");
    show(name, el("h1", {}, name), el("p", {}, answered("unknown", word("unknown")), " ", why));
    return;
  }
  const numbers = new Map([...answer.named_entries, ...now.named_entries].map((entry) => [entry.entry, entry.seq]));
  const decides = answer.grounds.filter((/** @type {any} */ ground) => ground.decides);
  const others = answer.grounds.filter((/** @type {any} */ ground) => !ground.decides);
  const list = (/** @type {any[]} */ grounds) => el("ul", {}, grounds.map((ground) => groundLine(ground, numbers)));
  ticked.clear();
  ticked.add(name);
  show(name,
    el("nav", {}, el("a", { href: to(holding, now.apiary ?? apiary) }, now.apiary ?? holding)),
    el("h1", {}, named(name, now.hive_mark)),
    el("p", {}, answered(answer.answer, word(answer.answer)), " ", answer.summary),
    keptNote(old),
    answer.clock_behind && el("p", { class: "note" }, answer.clock_behind.said),
    answer.steps.length > 0 && el("h2", {}, word("to_do_first")),
    el("ul", {}, answer.steps.map((/** @type {any} */ step) => el("li", { class: "row" }, step.statement))),
    answer.missing.length > 0 && el("h2", {}, word("missing")),
    el("ul", {}, answer.missing.map((/** @type {any} */ missing) => el("li", { class: "row" }, missing.how))),
    el("h2", {}, word("because")), list(decides),
    others.length > 0 && el("details", {}, el("summary", {}, word("also_on_record")), list(others)),
    season && el("img", { class: "season", src: season, alt: word("season_alt", { colony: name }) }),
    el("h2", {}, word("what_is_in")),
    now.courses.length === 0 && el("p", {}, word("nothing_in")),
    el("ul", {}, now.courses.map((/** @type {any} */ course) => el("li", { class: "row" }, courseLine(course)))),
    el("details", { id: "history" }, el("summary", {}, word("history")), el("ul", {}, history.items.map(historyLine))),
    answer.ahead[0] && el("p", { class: "faint" }, word("as_of", { day: date(answer.on), through: date(answer.ahead[0].to) })),
    el("p", { class: "note" }, answer.notice));
  bar(...!mayWrite(holding) ? [] : [button(word("write_down"), () => { location.hash = to(holding, now.apiary ?? apiary); }, "go")]);
}

/** @param {any} ground @param {Map<string, number>} numbers */
function groundLine(ground, numbers) {
  const entries = ground.entries.map((/** @type {string} */ id) => numbers.get(id)).filter(Boolean);
  return el("li", { class: "row" }, el("div", { class: "what" }, ground.statement,
    ground.values.filter((/** @type {any} */ value) => value.sources.length > 0).map(sourceLine),
    entries.length > 0 && el("p", { class: "faint" }, word("entries", { numbers: entries.join(", ") }))));
}

/** A value of a built-in leaflet, with where it was read. @param {any} value */
function sourceLine(value) {
  return el("p", { class: "faint" }, `${value.value}: ${value.sources.join("; ")}`, value.note && `. ${value.note}`);
}

/** An entry; one that was corrected or struck out is still read, with the reason. @param {any} item */
function historyLine({ seq, line, superseded, recorded_by, recorded_at }) {
  const said = superseded && word(superseded.struck_out ? "was_struck_out" : "was_corrected", { number: superseded.by, reason: superseded.reason });
  return el("li", { class: "row" }, el("div", { class: "what" }, superseded ? el("s", {}, `${seq}. ${line}`) : `${seq}. ${line}`,
    said && el("p", {}, said), el("p", { class: "faint" }, `${recorded_by}, ${dateAndTime(recorded_at)}`)));
}

/** @param {any} course */
function courseLine(course) {
  const end = course.end.state === "out" ? `, ${word("course_out", { day: date(course.end.on) })}` : "";
  return `${course.pack_name || course.medicine}, ${word("course_placed", { day: date(course.placed) })}${end}`;
}
