// Holds what answers on a phone against the service: the same random questions to both, word for word the same answers.
//
// check_answers.mjs ENGINE COMBCLEAR JOURNAL HOLDING [QUESTIONS] [SEED]
// Ends with 1 at the first difference.

import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const [engine, program, journal, holding, questions = "1000", seed = "1182"] = process.argv.slice(2);

// A generator of its own, so that a difference can be found again (mulberry32, in the public domain).
let state = Number(seed);
const random = (below) => {
  state = (state + 0x6d2b79f5) | 0;
  let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
  return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
};
const one = (list) => list[random(list.length)];

const { instance } = await WebAssembly.instantiate(readFileSync(engine), {});
const { memory, room, work, outcome } = instance.exports;
const told = (task) => {
  const bytes = new TextEncoder().encode(task);
  const at = room(bytes.length);
  new Uint8Array(memory.buffer, at, bytes.length).set(bytes);
  const length = work();
  return new TextDecoder().decode(new Uint8Array(memory.buffer, outcome(), length));
};

const folder = mkdtempSync(join(tmpdir(), "answers-"));
const env = { ...process.env, COMBCLEAR_DB: `sqlite:${folder}/here.db`, RUST_LOG: "warn" };
delete env.COMBCLEAR_HOLDING;
const imported = spawnSync(program, ["import", journal], { env });
if (imported.status !== 0) throw new Error(String(imported.stderr));
const service = spawn(program, ["serve", "--listen", "127.0.0.1:0"], { env, stdio: ["ignore", "pipe", "inherit"] });
const address = await new Promise((found) => service.stdout.once("data", (line) => found(/http:\/\/\S+/.exec(String(line))[0])));

const from = (path, init) => fetch(address + path, init);
const at = `/holdings/${encodeURIComponent(holding)}`;
let failed = false;
try {
  const began = performance.now();
  let entries = 0;
  for (let path = `${at}/entries?limit=500`; path;) {
    const text = await (await from(path)).text();
    const { tip, broken } = JSON.parse(told(`{"take_in":{"holding":${JSON.stringify(holding)},"page":${text}}}`));
    if (broken) throw new Error(broken);
    entries = tip;
    path = JSON.parse(text).next;
  }
  told(JSON.stringify({ expect: { holding, batches: [], now: new Date().toISOString(), language: "en" } }));
  console.log(`${entries} entries taken in, fetching included: ${Math.round(performance.now() - began)} ms`);

  const apiaries = (await (await from(`${at}/apiaries`)).json()).items.map((item) => item.apiary);
  const colonies = [...new Set((await (await from(`${at}/entries?limit=500`)).json()).items
    .flatMap(({ body }) => [body?.colony, body?.into, ...(body?.colonies ?? [])]).filter(Boolean))];
  const forms = (await (await from("/forms")).json()).items;
  const lots = (await (await from(`${at}/stock`)).json()).lots.map((lot) => lot.lot);
  const first = Date.UTC(2025, 0, 1);
  const day = () => new Date(first + random(1000) * 864e5).toISOString().slice(0, 10);
  const colony = () => encodeURIComponent(random(20) ? one(colonies) : "Nobody 7");
  const apiary = () => encodeURIComponent(random(20) ? one(apiaries) : "Nowhere");
  const on = () => (random(4) ? `?on=${day()}` : "");
  const site = () => {
    const asked = new URLSearchParams();
    if (random(3)) asked.set("from", day());
    if (!random(3)) asked.set("power", one(["none", "battery", "generator", "mains"]));
    if (!random(3)) asked.set("access", one(["vehicle", "on_foot", "none"]));
    if (!random(3)) asked.set("ground", one(["dry", "wet", "flooded"]));
    if (!random(6)) asked.set("site_until", day());
    return asked.size ? `?${asked}` : "";
  };
  const filled = () => {
    const { kind, fields } = one(forms);
    const text = (field) => ({
      colony: one(colonies), apiary: one(apiaries), lot: one(lots),
    })[field.of] ?? (field.choices.length ? one(field.choices).word : field.input === "yes_no" ? one(["yes", "no"])
      : field.input === "day" ? day() : ["whole", "amount", "temperature"].includes(field.input) ? String(random(30)) : field.example || "x");
    const given = Object.fromEntries(fields.filter((field) => random(field.needed ? 12 : 3)).map((field) => [field.key, [text(field)]]));
    return { path: `${at}/forms/${kind}`, body: JSON.stringify({ on: day(), fields: given }) };
  };
  const kinds = [
    () => ({ path: `${at}/colonies/${colony()}/supering${on()}` }),
    () => ({ path: `${at}/colonies/${colony()}${on()}` }),
    () => ({ path: `${at}/colonies/${colony()}/history${on()}` }),
    () => ({ path: `${at}/lots/${encodeURIComponent(one(lots))}/leaflet${on()}` }),
    () => ({ path: `${at}/colonies/${colony()}/season${on()}` }),
    () => ({ path: `${at}/colonies/${colony()}/treatment-options${site()}` }),
    () => ({ path: `${at}/apiaries/${apiary()}${on()}` }),
    () => ({ path: `${at}/apiaries/${apiary()}/supering${on()}` }),
    () => ({ path: `${at}/apiaries/${apiary()}/season${on()}` }),
    () => ({ path: `${at}/apiaries/${apiary()}/visit${on()}` }),
    () => ({ path: `${at}/apiaries/${apiary()}/treatment-options${site()}` }),
    () => ({ path: `${at}/${one(["colonies", "apiaries", "stock", "retention"])}${on()}` }),
    () => ({ path: `${at}/due?from=${day()}${random(3) ? "" : `&to=${day()}`}${random(3) ? "" : `&apiary=${apiary()}`}` }),
    () => ({ path: one([`${at}/medicines`, "/forms"]) }),
    filled, filled, filled,
  ];
  const counted = {};
  let spent = 0;
  for (let number = 1; number <= Number(questions); number += 1) {
    const { path, body } = one(kinds)();
    const language = one(["en", "de"]);
    const init = { headers: { "accept-language": language } };
    const sent = body ? { method: "POST", body, headers: { ...init.headers, "content-type": "application/json" } } : init;
    const answered = await from(path, sent);
    const theirs = await answered.text();
    // The service's own day, so that midnight between the two is no difference.
    const said = new Date(answered.headers.get("date"));
    const today = new Date(said - said.getTimezoneOffset() * 6e4).toISOString().slice(0, 10);
    const asked = performance.now();
    const text = told(JSON.stringify({ answer: { path, body, now: said.toISOString(), today, language } }));
    spent += performance.now() - asked;
    const mine = JSON.parse(text);
    const raw = mine && text.slice(text.indexOf(',"body":') + 8, -1);
    let same;
    if (answered.status === 204) same = mine === null;
    else if (answered.status !== 200) {
      const problem = JSON.parse(theirs);
      same = mine?.status === answered.status && mine.body.detail === problem.detail
        && JSON.stringify(mine.body.errors) === JSON.stringify(problem.errors);
    } else same = mine?.status === 200 && (mine.media_type === "application/json" ? raw === theirs : mine.body === theirs);
    counted[answered.status] = (counted[answered.status] ?? 0) + 1;
    if (!same) {
      console.error(`question ${number} (${language}): ${path} ${body ?? ""}\nservice ${answered.status}: ${theirs.slice(0, 1500)}\nphone: ${text.slice(0, 1500)}`);
      failed = true;
      break;
    }
  }
  if (!failed) {
    console.log(`${questions} questions, 0 differences; by status ${JSON.stringify(counted)}; ${(spent / Number(questions)).toFixed(1)} ms an answer`);
  }
} finally {
  service.kill();
  rmSync(folder, { recursive: true });
}
process.exitCode = failed ? 1 : 0;
