// Keeps the page and the last answers on the phone, for where there is no signal. What is kept is given only when the service cannot be
// reached, and says when it was fetched: whoever shows it says so too. Nothing is ever sent from here.

/// <reference lib="webworker" />
/** @typedef {{ waitUntil: (work: Promise<unknown>) => void, request: Request, respondWith: (answer: Promise<Response>) => void }} Work */

const KEPT = "kept-1";
const FILES = ["/", "/page/page.css", "/page/mark.svg", "/page/words.json", "/forms",
  ...["page", "ask", "draw", "words", "visit", "colony", "form"].map((name) => `/page/${name}.js`)];
/** The most answers that are kept; the oldest go first. */
const MOST = 300;

const here = /** @type {any} */ (globalThis);

here.addEventListener("install", (/** @type {Work} */ work) => {
  work.waitUntil(caches.open(KEPT).then((kept) => kept.addAll(FILES)).then(() => here.skipWaiting()));
});

here.addEventListener("activate", (/** @type {Work} */ work) => {
  const old = (/** @type {string[]} */ names) => names.filter((name) => name !== KEPT);
  work.waitUntil(caches.keys().then((names) => Promise.all(old(names).map((name) => caches.delete(name)))).then(() => here.clients.claim()));
});

here.addEventListener("fetch", (/** @type {Work} */ work) => {
  if (work.request.method === "GET" && new URL(work.request.url).origin === here.location.origin) {
    work.respondWith(answer(work.request));
  }
});

/** @param {Request} request */
async function answer(request) {
  const kept = await caches.open(KEPT);
  let fetched;
  try {
    fetched = await fetch(request);
  } catch {
    return (await kept.match(request, { ignoreVary: true })) ?? Response.error();
  }
  if (fetched.status === 200) await keep(kept, request, fetched.clone());
  return fetched;
}

/** @param {Cache} kept @param {Request} request @param {Response} fetched */
async function keep(kept, request, fetched) {
  const headers = new Headers(fetched.headers);
  headers.set("fetched-at", new Date().toISOString());
  const dated = new Response(await fetched.blob(), { headers });
  try {
    await kept.put(request, dated);
  } catch {
    // The phone has no room left. What it has kept stays.
    return;
  }
  const all = await kept.keys();
  await Promise.all(all.slice(0, Math.max(0, all.length - MOST - FILES.length)).map((old) => isFile(old) || kept.delete(old)));
}

/** @param {Request} request */
const isFile = (request) => FILES.includes(new URL(request.url).pathname);
