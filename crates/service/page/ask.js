// The service, asked over its public interface; and this phone, where the service is not reached.

import { clock, dateAndTime, setClock, today } from "./clock.js";
import { forget, holdingOf, workedOut } from "./engine.js";
import { batches, forgetCopies, forgetCopy, keepBatch, toSend } from "./kept.js";
import { keepUp, send as sendWhatWaits } from "./sync.js";

/** @typedef {{ pointer?: string, parameter?: string, detail: string, help: string }} Fault */
/** @typedef {{ type: string, title: string, status: number, detail: string, errors: Fault[] }} Problem */

/** What the service says went wrong. */
export class Refused extends Error {
  /** @param {Problem} problem */
  constructor(problem) {
    super(problem.detail || problem.title);
    this.problem = problem;
  }
}

/** The service was not reached: nobody knows what it would have said. */
export class NotReached extends Error {}

/** The service was not reached, and nothing can be kept on this phone. */
export class NoRoom extends NotReached {}

/** A batch that was refused and lies here still. */
export class RefusedBatch extends Refused {
  /** @param {number} number @param {Problem} problem */
  constructor(number, problem) {
    super(problem);
    this.number = number;
  }
}

/** Somebody went on to another screen before the answer came. */
export class Superseded extends Error {}

// A key is kept as long as the tab is open, and no longer.
const KEY = "key";

/**
 * Signs in with a key, if the service knows it. What was copied for another key is forgotten; what was written down with it stays until
 * it is sent with it.
 * @param {string} key
 */
export async function signIn(key) {
  const headers = { authorization: `Bearer ${key.trim()}` };
  await sent(await fetch("/holdings", { headers }).catch((error) => { throw new NotReached(String(error)); }));
  sessionStorage.setItem(KEY, key.trim());
  await Promise.all([forgetAnswers(), forgetCopies()]);
}

/** Whose entries are written down here: the name of the key, which is no secret. Without a key there is one keeper. */
export const whose = () => sessionStorage.getItem(KEY)?.split(".")[0] ?? "";

/**
 * Writes entries down: they are kept on this phone first, and then sent. What was kept of answers about the holding is forgotten:
 * whether or not the service is heard again, no answer from before may stand beside what was written down. What is refused stays, until
 * whoever wrote it was shown why.
 * @param {string} holding @param {any[]} entries @param {string[]} lines what they say
 * @returns {Promise<"recorded" | "waits">}
 */
export async function record(holding, entries, lines) {
  await forgetAnswers(holding);
  const batch = { holding, entries, lines, by: whose(), made: clock().toISOString() };
  // Where nothing can be kept, it is sent at once or not at all.
  const number = await keepBatch(batch).catch(() => undefined);
  dispatchEvent(new Event("waiting"));
  if (number === undefined) {
    try {
      await fromService("POST", `${at(holding)}/entries`, entries);
      return "recorded";
    } catch (error) {
      throw error instanceof NotReached ? new NoRoom(error.message) : error;
    } finally {
      // It may be recorded, and nothing here would know of it.
      await Promise.all([forgetAnswers(holding), forgetCopy(holding), forget(holding)]).catch(() => undefined);
    }
  }
  await sendWhatWaits();
  const left = await batches().catch(() => undefined);
  const still = left?.find((kept) => kept.number === number);
  if (still?.refused) throw new RefusedBatch(number, { type: "", title: "", status: 422, ...still.refused });
  return left === undefined || (still && still.recorded === undefined) ? "waits" : "recorded";
}

/** Forgets what was kept of answers: about one holding, or all. @param {string} [holding] */
export async function forgetAnswers(holding) {
  const of = holding === undefined ? "/holdings" : `${at(holding)}/`;
  for (const name of await globalThis.caches?.keys() ?? []) {
    const kept = await caches.open(name);
    const old = (await kept.keys()).filter((request) => new URL(request.url).pathname.startsWith(of));
    await Promise.all(old.map((request) => kept.delete(request)));
  }
}

/** How long the service may keep silent before an answer is worked out here, in milliseconds. */
const PATIENCE = 6_000;

/** How long a file may take, in milliseconds. */
const LONG = 120_000;

/**
 * @param {string} method @param {string} path @param {unknown} [body] @param {number} [patience]
 * @returns {Promise<Response>}
 */
async function fetched(method, path, body, patience = PATIENCE * (method === "GET" ? 1 : 3)) {
  /** @type {Record<string, string>} */
  const headers = { accept: "application/json" };
  const key = sessionStorage.getItem(KEY);
  if (key) headers.authorization = `Bearer ${key}`;
  const isFile = body instanceof File;
  if (body !== undefined) headers["content-type"] = isFile ? body.type : "application/json";
  const signal = AbortSignal.timeout(patience);
  try {
    const response = await fetch(path, { method, headers, signal, body: body === undefined || isFile ? body : JSON.stringify(body) });
    setClock(response);
    return response;
  } catch (error) {
    throw new NotReached(String(error));
  }
}

/**
 * Asks the service, and nobody else.
 * @param {string} method @param {string} path @param {unknown} [body] @returns {Promise<any>}
 */
export async function fromService(method, path, body) {
  const response = await fetched(method, path, body);
  const answer = await response.json().catch(() => null);
  const at = response.headers.get("fetched-at");
  // The service says no such thing: the answer was kept on this device, and the service was not reached.
  if (at !== null && answer !== null && !Array.isArray(answer)) answer.fetched_at = at;
  if (response.ok && answer !== null) return answer;
  if (answer?.type) throw new Refused(answer);
  throw new NotReached(`${response.status}`);
}

/** What the service itself sent; what was kept on this phone is none of it. @param {Response} response */
async function sent(response) {
  if (response.ok && !response.headers.has("fetched-at")) return response;
  const problem = await response.json().catch(() => null);
  throw problem?.type ? new Refused(problem) : new NotReached(`${response.status}`);
}

/** The text of an answer of the service, to the letter. @param {string} path */
export const textFromService = async (path) => (await sent(await fetched("GET", path))).text();

/**
 * Asks the service; or this phone, where the service is not reached or does not know yet what was written down here.
 * @param {string} method @param {string} path @param {unknown} [body] @returns {Promise<any>}
 */
async function ask(method, path, body) {
  const screen = location.hash;
  const answer = await heard(method, path, body);
  if (location.hash !== screen) throw new Superseded();
  return answer;
}

/** @param {string} method @param {string} path @param {unknown} body @returns {Promise<any>} */
async function heard(method, path, body) {
  const holding = holdingOf(path);
  const waits = async () => (await toSend().catch(() => [])).some((batch) => batch.holding === holding);
  if (holding !== undefined && await waits()) {
    const { reached, asksForKey } = await sendWhatWaits();
    if (!asksForKey && await waits()) {
      // What others recorded counts too.
      if (reached) await keepUp(holding).catch(throwIfKeyIsAsked);
      const here = await onThisPhone(path, body);
      if (here) return here;
    }
  }
  let answer;
  try {
    answer = await fromService(method, path, body);
    if (answer.fetched_at === undefined) return answer;
  } catch (error) {
    if (!(error instanceof NotReached)) throw error;
    answer = error;
  }
  const here = await onThisPhone(path, body);
  if (here) return here;
  if (answer instanceof NotReached) throw answer;
  return answer;
}

/** @param {unknown} error */
function throwIfKeyIsAsked(error) {
  if (error instanceof Refused && error.problem.status === 401) throw error;
}

/** What can be worked out here: an answer, or the refusal that the service would give. @param {string} path @param {unknown} body */
async function onThisPhone(path, body) {
  const here = await workedOut(path, body, clock(), today()).catch(() => undefined);
  if (!here) return undefined;
  if (here.status >= 400) throw new Refused(here.body);
  return Object.assign(here.body, { fetched_at: here.at, here: true, expected: here.expected });
}

/**
 * The address of a picture, which is fetched with the key. It holds as long as the page is open.
 * @param {string} path
 */
export async function picture(path) {
  const show = (/** @type {BlobPart} */ part) => URL.createObjectURL(new Blob([part], { type: "image/svg+xml" }));
  const waits = (await toSend().catch(() => [])).some((batch) => batch.holding === holdingOf(path));
  const response = waits ? undefined : await fetched("GET", path).catch(() => undefined);
  if (response?.status === 200 && !response.headers.has("fetched-at")) return show(await response.blob());
  const here = await workedOut(path, undefined, clock(), today()).catch(() => undefined);
  if (here?.status === 200) return show(here.body);
  return response?.status === 200 ? show(await response.blob()) : undefined;
}

/** A file, which is fetched with the key. Its address holds as long as the page is open. @param {string} path @returns {Promise<string>} */
export const file = async (path) => URL.createObjectURL(await (await sent(await fetched("GET", path, undefined, LONG))).blob());

/** Sends a file. @param {string} path @param {File} content */
export const send = async (path, content) => (await sent(await fetched("PUT", path, content, LONG))).json();

/** @param {string} path */
export const get = (path) => ask("GET", path);
/** @param {string} path @param {unknown} body */
export const post = (path, body) => ask("POST", path, body);
/** @param {string} path @param {unknown} body */
export const put = (path, body) => ask("PUT", path, body);

/**
 * The path of something in a holding. Names are of any letters.
 * @param {...string} parts
 */
export const at = (...parts) => `/holdings/${parts.map(encodeURIComponent).join("/")}`;

/** An id for a new entry: a UUID of version 7 (RFC 9562), made before the entry is sent, so that sent twice it is recorded once. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  let time = clock().getTime();
  for (let at = 5; at >= 0; at -= 1) {
    bytes[at] = time % 256;
    time = Math.floor(time / 256);
  }
  bytes[6] = (bytes[6] & 0x0f) | 0x70;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/**
 * What must be said of an answer that was kept: when it was fetched, and whether it still holds today.
 * @param {{ fetched_at?: string, here?: boolean, on: string, holds_through?: string }} answer
 */
export function kept(answer) {
  if (answer.fetched_at === undefined) return undefined;
  const at = dateAndTime(answer.fetched_at);
  const day = today();
  // An answer of a day to come is as doubtful as one that is over: one of the two clocks is wrong.
  const holds = answer.on <= day && day <= (answer.holds_through ?? answer.on);
  return { at, holds, here: answer.here === true };
}
