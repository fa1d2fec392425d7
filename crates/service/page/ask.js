// The service, asked over its public interface.

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

// A key is kept as long as the tab is open, and no longer.
const KEY = "key";

/**
 * Signs in with a key. What was kept for another key is forgotten.
 * @param {string} key
 */
export async function signIn(key) {
  sessionStorage.setItem(KEY, key.trim());
  await Promise.all((await globalThis.caches?.keys() ?? []).map((kept) => caches.delete(kept)));
}

/**
 * Records entries. What was kept of the holding is forgotten first: whether or not the service is heard again, no answer from before
 * may stand beside what was written down.
 * @param {string} holding @param {any[]} entries
 */
export async function record(holding, entries) {
  for (const name of await globalThis.caches?.keys() ?? []) {
    const kept = await caches.open(name);
    const of = (await kept.keys()).filter((request) => new URL(request.url).pathname.startsWith(`${at(holding)}/`));
    await Promise.all(of.map((request) => kept.delete(request)));
  }
  return post(`${at(holding)}/entries`, entries);
}

/**
 * @param {string} method
 * @param {string} path
 * @param {unknown} [body]
 * @returns {Promise<any>}
 */
async function ask(method, path, body) {
  /** @type {Record<string, string>} */
  const headers = { accept: "application/json" };
  const key = sessionStorage.getItem(KEY);
  if (key) headers.authorization = `Bearer ${key}`;
  if (body !== undefined) headers["content-type"] = "application/json";
  let response;
  try {
    response = await fetch(path, { method, headers, body: body === undefined ? undefined : JSON.stringify(body) });
  } catch (error) {
    throw new NotReached(String(error));
  }
  const answer = await response.json().catch(() => null);
  const fetched = response.headers.get("fetched-at");
  // The service says no such thing: the answer was kept on this device, and the service was not reached.
  if (fetched !== null && answer !== null && !Array.isArray(answer)) answer.fetched_at = fetched;
  if (response.ok && answer !== null) return answer;
  if (answer?.type) throw new Refused(answer);
  throw new NotReached(`${response.status}`);
}

/**
 * The address of a picture, which is fetched with the key. It holds as long as the page is open.
 * @param {string} path
 */
export async function picture(path) {
  const key = sessionStorage.getItem(KEY);
  try {
    const response = await fetch(path, { headers: key ? { authorization: `Bearer ${key}` } : {} });
    return response.status === 200 ? URL.createObjectURL(await response.blob()) : undefined;
  } catch {
    return undefined;
  }
}

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
  let time = Date.now();
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
 * @param {{ fetched_at?: string, on: string, holds_through?: string }} answer
 */
export function kept(answer) {
  if (answer.fetched_at === undefined) return undefined;
  const at = new Date(answer.fetched_at);
  const day = today();
  // An answer of a day to come is as doubtful as one that is over: one of the two clocks is wrong.
  const holds = answer.on <= day && day <= (answer.holds_through ?? answer.on);
  return { at: at.toLocaleString(), holds };
}

/** The civil day here, by the clock of this device. */
export function today() {
  const now = new Date();
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
