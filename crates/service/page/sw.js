// Keeps the page and the last answers on the phone, for where there is no signal. What is kept is given only when the service cannot be
// reached, and says when it was fetched: whoever shows it says so too. Nothing is ever sent from here.

/// <reference lib="webworker" />
/** @typedef {{ waitUntil: (work: Promise<unknown>) => void, request: Request, respondWith: (answer: Promise<Response>) => void }} Work */

// The service puts its version here: a new page is kept by a new worker.
const KEPT = "kept-1";
const FILES = ["/", "/page/page.css", "/page/mark.svg", "/page/words.json",
  ...["page", "ask", "clock", "draw", "engine", "form", "kept", "leaflet", "sync", "visit", "colony", "desk", "office", "order", "waiting", "words"].map((name) => `/page/${name}.js`)];
const ENGINE = "/page/engine.wasm";
/** A key may be asked for it, which is the page's and not the worker's: it is kept once the page has fetched it. */
const FORMS = "/forms";
/** How long a file of the page may be on its way before the one that was kept is taken, in milliseconds. */
const PATIENCE = 4_000;
/** The most answers that are kept; the oldest go first. */
const MOST = 300;

const here = /** @type {any} */ (globalThis);

here.addEventListener("install", (/** @type {Work} */ work) => {
  const files = async (/** @type {Cache} */ kept) => {
    await kept.addAll(FILES);
    // The service may have been built without it.
    await kept.add(ENGINE).catch(() => undefined);
  };
  work.waitUntil(caches.open(KEPT).then(files).then(() => here.skipWaiting()));
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
  const known = () => kept.match(request, { ignoreVary: true });
  let fetched;
  try {
    // Where there is hardly any signal, a page that was kept is better than one that never comes.
    const slow = isFile(request) && await known() ? AbortSignal.timeout(PATIENCE) : undefined;
    fetched = await fetch(request, slow && { signal: slow });
    // The rest of it may never come.
    if (fetched.status === 200 && isKept(request)) await keep(kept, request, fetched.clone());
  } catch {
    return (await known()) ?? Response.error();
  }
  return fetched;
}

/** The page itself keeps the journal, and asks which version there is now. @param {Request} request */
const isKept = (request) => !/\/entries|\/version\.json$/.test(new URL(request.url).pathname);

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
const isFile = (request) => [...FILES, ENGINE, FORMS].includes(new URL(request.url).pathname);
