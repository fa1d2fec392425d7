// Between this phone and the service: what was written down goes there once, and what was recorded there is copied here.

import { Refused, at, forgetAnswers, fromService, textFromService, whose } from "./ask.js";
import { forget } from "./engine.js";
import { addPage, batches, copyOf, dropBatch, forgetCopy, keepBatch, toSend } from "./kept.js";
import { page } from "./words.js";

/** @typedef {import("./kept.js").Batch} Batch */

/** The most entries that are fetched at once. */
const PAGE = 500;

/** What became of an attempt to send: whether the service was reached, and whether it asks for a key.
 * @typedef {{ reached: boolean, asksForKey: boolean }} Attempt */

/** @type {Promise<Attempt> | undefined} */
let sending;

/**
 * Sends what waits, oldest first, each batch as it was written down and under the same ids: sent twice, it is recorded once. What the
 * service refuses stays here, with the reason. Ends at once where the service is not reached.
 */
export function send() {
  sending ??= alone("send", sendAll).finally(() => {
    sending = undefined;
    dispatchEvent(new Event("waiting"));
  });
  return sending;
}

/** Does work while no other tab does the same. @template T @param {string} what @param {() => Promise<T>} work @returns {Promise<T>} */
const alone = (what, work) => navigator.locks ? /** @type {Promise<any>} */ (navigator.locks.request(`combclear-${what}`, work)) : work();

/** Tells the other tabs of this phone that a journal has gone on. */
export const others = new BroadcastChannel("journal");

/** @returns {Promise<Attempt>} */
async function sendAll() {
  for (const batch of await toSend()) {
    // The key may be another by now: whoever wrote it sends it.
    if (batch.by !== whose()) continue;
    try {
      await sendOne(batch);
    } catch (error) {
      // Not reached, or the key does not hold any more: all of it waits on.
      if (!(error instanceof Refused)) return { reached: false, asksForKey: false };
      if (!isFinal(error)) return { reached: true, asksForKey: error.problem.status === 401 };
    }
  }
  return { reached: true, asksForKey: false };
}

/** Whether sending the same again would be refused again. @param {Refused} refused */
const isFinal = ({ problem }) => [400, 403, 404, 409, 413, 422].includes(problem.status);

/**
 * Sends one batch that is kept. It lies here until the copy of the journal has it, so that no answer is without it. If it is refused it
 * stays, with the reason.
 * @param {Batch} batch
 */
async function sendOne(batch) {
  let recorded;
  try {
    recorded = await fromService("POST", `${at(batch.holding)}/entries`, batch.entries);
  } catch (error) {
    if (error instanceof Refused && isFinal(error)) {
      const { detail, errors } = error.problem;
      await keepBatch({ ...batch, refused: { detail, errors } });
    }
    throw error;
  }
  await forgetAnswers(batch.holding);
  others.postMessage(batch.holding);
  if (!page().engine) {
    await dropBatch(/** @type {number} */ (batch.number));
    return;
  }
  const last = Math.max(...recorded.items.map((/** @type {any} */ item) => item.entry.seq));
  await keepBatch({ ...batch, recorded: last });
  await keepUp(batch.holding).catch(() => undefined);
}

/** @type {Map<string, Promise<void>>} */
const keeping = new Map();

/** Fetches what the copy of a holding lacks, and lets go of what was recorded and is in it. @param {string} holding */
export async function keepUp(holding) {
  // One that began before may end before what is asked for now.
  await keeping.get(holding)?.catch(() => undefined);
  const going = keeping.get(holding) ?? alone(`copy-${holding}`, () => fetchRest(holding)).finally(() => keeping.delete(holding));
  keeping.set(holding, going);
  await going;
}

/** @param {string} holding */
async function fetchRest(holding) {
  let copy = await copyOf(holding);
  if (copy && !await isSame(holding, copy)) {
    await Promise.all([forgetCopy(holding), forget(holding)]);
    copy = undefined;
  }
  let [after, hash, more] = [copy?.last ?? 0, copy?.hash ?? "", true];
  while (more) {
    const text = await textFromService(`${at(holding)}/entries?after=${after}&limit=${PAGE}`);
    const { items, next } = JSON.parse(text);
    const last = items.at(-1);
    const page = last && { holding, after, text };
    if (last) ({ seq: after, hash } = last);
    await addPage(page, { holding, last: after, hash, at: new Date().toISOString() });
    more = next !== undefined;
  }
  for (const batch of await batches()) {
    if (batch.holding === holding && batch.recorded !== undefined && batch.recorded <= after) await dropBatch(/** @type {number} */ (batch.number));
  }
}

/** Whether the journal of the service begins as the copy does. @param {string} holding @param {import("./kept.js").Copy} copy */
async function isSame(holding, copy) {
  try {
    return (await fromService("GET", `${at(holding)}/entries/${copy.last}`)).hash === copy.hash;
  } catch (error) {
    // Only that there is no such entry tells of another journal.
    if (error instanceof Refused && error.problem.status === 404) return false;
    throw error;
  }
}
