// The answers of the service, worked out on this phone from its copy of the journal and from what was not sent yet. The program for it
// is the service's own, as WebAssembly; where the service was built without it, nothing is worked out here.

import { batches, copyOf, forgetCopy, pagesOf } from "./kept.js";
import { language, page } from "./words.js";

/** @typedef {(task: string) => any} Tell */

/** @type {Promise<Tell | undefined> | undefined} */
let loaded;
/** The last entry that the program has of each holding. @type {Map<string, number>} */
const tips = new Map();
/** What it was told to expect of each holding, and which batches of that it expects. @type {Map<string, { numbers: string, taken: number[] }>} */
const expected = new Map();

/** @returns {Promise<((task: string) => any) | undefined>} */
function program() {
  loaded ??= load().catch(() => {
    loaded = undefined;
    return undefined;
  });
  return loaded;
}

async function load() {
  const fetched = await fetch("/page/engine.wasm");
  if (!fetched.ok) return undefined;
  const { instance } = await WebAssembly.instantiate(await fetched.arrayBuffer(), {});
  const { memory, room, work: toWork, outcome } = /** @type {any} */ (instance.exports);
  const tell = (/** @type {string} */ task) => {
    const bytes = new TextEncoder().encode(task);
    try {
      const at = room(bytes.length);
      new Uint8Array(memory.buffer, at, bytes.length).set(bytes);
      const length = toWork();
      return JSON.parse(new TextDecoder().decode(new Uint8Array(memory.buffer, outcome(), length)));
    } catch (error) {
      // Nothing that it holds counts any more.
      loaded = undefined;
      tips.clear();
      expected.clear();
      throw error;
    }
  };
  // By other leaflets or laws than those of the service it would answer otherwise than the service.
  return tell('{"rules":{}}').rules === page().rules ? tell : undefined;
}

/** The holding that a path is about. @param {string} path */
export const holdingOf = (path) => /^\/holdings\/([^/?]+)\//.exec(path)?.slice(1).map(decodeURIComponent)[0];

/** @typedef {{ status: number, media_type: string, body: any, at: string, expected: number[] }} Answer */

/** One question after the other: two at a time would tell the program the same page twice. @type {Promise<unknown>} */
let turn = Promise.resolve();

/**
 * What the service would answer, if it can be worked out here.
 * @param {string} path @param {unknown} body @param {Date} now @param {string} today
 * @returns {Promise<Answer | undefined>}
 */
export function workedOut(path, body, now, today) {
  const answer = turn.then(() => work(path, body, now, today));
  turn = answer.catch(() => undefined);
  return answer;
}

/**
 * @param {string} path @param {unknown} body @param {Date} now @param {string} today
 * @returns {Promise<Answer | undefined>}
 */
async function work(path, body, now, today) {
  const holding = holdingOf(path);
  if (holding === undefined) return path === "/forms" ? ofNoHolding(path, now, today) : undefined;
  const [copy, tell] = await Promise.all([copyOf(holding), program()]);
  if (!copy || !tell) return undefined;
  if (!await caughtUp(tell, copy) && !await caughtUp(tell, copy)) return undefined;
  const waiting = (await batches()).filter((batch) => batch.holding === holding && !batch.refused);
  const numbers = `${tips.get(holding)}: ${waiting.map((batch) => batch.number)}`;
  const time = now.toISOString();
  if (expected.get(holding)?.numbers !== numbers) {
    const { refused } = tell(JSON.stringify({
      expect: { holding, batches: waiting.map((batch) => batch.entries), now: time, language: language() },
    }));
    if (!refused) return undefined;
    // What cannot be true beside the rest is not in the answer, and whoever shows the answer must know.
    const out = new Set(refused.map((/** @type {{ batch: number }} */ { batch }) => batch));
    expected.set(holding, { numbers, taken: waiting.filter((_, place) => !out.has(place)).map((batch) => batch.number ?? 0) });
  }
  const text = body === undefined ? undefined : JSON.stringify(body);
  const answer = tell(JSON.stringify({ answer: { path, body: text, now: time, today, language: language() } }));
  return answer?.status ? { ...answer, at: copy.at, expected: expected.get(holding)?.taken ?? [] } : undefined;
}

/** What rests on nothing that is recorded. @param {string} path @param {Date} now @param {string} today @returns {Promise<Answer | undefined>} */
async function ofNoHolding(path, now, today) {
  const tell = await program();
  const answer = tell?.(JSON.stringify({ answer: { path, now: now.toISOString(), today, language: language() } }));
  return answer?.status ? { ...answer, at: now.toISOString(), expected: [] } : undefined;
}

/**
 * Takes in what the copy has and the program has not. If they do not come together the program forgets what it had.
 * @param {(task: string) => any} tell @param {import("./kept.js").Copy} copy
 */
async function caughtUp(tell, { holding, last }) {
  for (const page of await pagesOf(holding, tips.get(holding) ?? 0)) {
    const { tip, broken } = tell(`{"take_in":{"holding":${JSON.stringify(holding)},"page":${page.text}}}`);
    if (broken) {
      // The copy is of no use: it is fetched again when there is signal.
      forgetNow(tell, holding);
      await forgetCopy(holding);
      return false;
    }
    tips.set(holding, tip);
  }
  if (tips.get(holding) === last) return true;
  // Another tab laid the pages down otherwise: once more, from the first.
  forgetNow(tell, holding);
  return false;
}

/** @param {(task: string) => any} tell @param {string} holding */
function forgetNow(tell, holding) {
  tell(JSON.stringify({ forget: { holding } }));
  tips.delete(holding);
  expected.delete(holding);
}

/** Forgets a holding, as its copy was forgotten. @param {string} holding */
export function forget(holding) {
  turn = turn.then(async () => {
    const tell = await loaded;
    if (tell) forgetNow(tell, holding);
  });
  return turn;
}
