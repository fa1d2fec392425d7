// Between this phone and the service: what was written down goes there once, and what was recorded there is copied here.

import { NotReached, Refused, at, fromService, textFromService, whose } from "./ask.js";
import { forget } from "./engine.js";
import { addPage, batches, copyOf, dropBatch, forgetCopy, keepBatch } from "./kept.js";

/** @typedef {import("./kept.js").Batch} Batch */

/** The most entries that are fetched at once. */
const PAGE = 500;

/** @type {Promise<void> | undefined} */
let sending;

/**
 * Sends what waits, oldest first, each batch as it was written down and under the same ids: sent twice, it is recorded once. What the
 * service refuses stays here, with the reason. Ends at once where the service is not reached.
 */
export function send() {
  // Two at a time would be harmless, and of no use.
  sending ??= sendAll().finally(() => {
    sending = undefined;
    dispatchEvent(new Event("waiting"));
  });
  return sending;
}

async function sendAll() {
  const own = await whose();
  for (const batch of await batches()) {
    if (batch.refused || batch.by !== own) continue;
    try {
      await sendOne(batch);
    } catch (error) {
      // Not reached, or the key does not hold any more: all of it waits on.
      if (!(error instanceof Refused) || !isFinal(error)) return;
    }
  }
}

/** Whether sending the same again would be refused again. @param {Refused} refused */
const isFinal = ({ problem }) => [400, 403, 404, 409, 413, 422].includes(problem.status);

/**
 * Sends one batch that is kept, and lets go of it once it is recorded. If it is refused it stays, with the reason.
 * @param {Batch} batch
 */
export async function sendOne(batch) {
  const number = /** @type {number} */ (batch.number);
  try {
    await fromService("POST", `${at(batch.holding)}/entries`, batch.entries);
  } catch (error) {
    if (error instanceof Refused && isFinal(error)) {
      const { detail, errors } = error.problem;
      await keepBatch({ ...batch, refused: { detail, errors } });
    }
    throw error;
  }
  await keepUp(batch.holding).catch(() => undefined);
  await dropBatch(number);
}

/** @type {Map<string, Promise<void>>} */
const keeping = new Map();

/** Fetches what the copy of a holding lacks. @param {string} holding */
export function keepUp(holding) {
  const going = keeping.get(holding) ?? fetchRest(holding).finally(() => keeping.delete(holding));
  keeping.set(holding, going);
  return going;
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
}

/** Whether the journal of the service begins as the copy does. @param {string} holding @param {import("./kept.js").Copy} copy */
async function isSame(holding, copy) {
  try {
    return (await fromService("GET", `${at(holding)}/entries/${copy.last}`)).hash === copy.hash;
  } catch (error) {
    if (error instanceof NotReached) throw error;
    return false;
  }
}
