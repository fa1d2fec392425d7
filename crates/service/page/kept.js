// What lies on this phone: copies of journals, and entries that were written down and not sent yet. It outlives the page, the browser
// and the day. Entries leave it when the service has said that they are recorded, or when somebody throws them away on purpose.

/** @typedef {{ number?: number, holding: string, entries: any[], lines: string[], by: string, made: string, refused?: { detail: string, errors: import("./ask.js").Fault[] }, recorded?: number }} Batch */
/** @typedef {{ holding: string, last: number, hash: string, at: string }} Copy */
/** @typedef {{ holding: string, after: number, text: string }} Page */

/** @type {Promise<IDBDatabase> | undefined} */
let opened;

/** @returns {Promise<IDBDatabase>} */
function open() {
  opened ??= new Promise((done, failed) => {
    const asked = indexedDB.open("combclear", 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore("pages", { keyPath: ["holding", "after"] });
      asked.result.createObjectStore("copies", { keyPath: "holding" });
      asked.result.createObjectStore("batches", { keyPath: "number", autoIncrement: true });
    };
    asked.onsuccess = () => {
      // A phone may close it behind the page's back.
      asked.result.onclose = () => { opened = undefined; };
      done(asked.result);
    };
    asked.onerror = () => {
      opened = undefined;
      failed(asked.error);
    };
  });
  return opened;
}

/**
 * Does work in one transaction: all of it is kept, or nothing.
 * @template T
 * @param {string[]} stores @param {"readonly" | "readwrite"} mode
 * @param {(transaction: IDBTransaction) => IDBRequest<T> | void} work
 * @returns {Promise<T>}
 */
async function within(stores, mode, work) {
  let database = await open();
  try {
    database.transaction(stores, "readonly");
  } catch {
    opened = undefined;
    database = await open();
  }
  return new Promise((done, failed) => {
    const transaction = database.transaction(stores, mode, { durability: "strict" });
    const asked = work(transaction);
    transaction.oncomplete = () => done(/** @type {T} */ (asked?.result));
    transaction.onabort = () => failed(transaction.error);
    transaction.onerror = () => failed(transaction.error);
  });
}

/** Everything of a holding in the store of pages. @param {string} holding */
const ofHolding = (holding) => IDBKeyRange.bound([holding, 0], [holding, Infinity]);

/** @param {string} holding @returns {Promise<Copy | undefined>} */
export const copyOf = (holding) => within(["copies"], "readonly", (at) => at.objectStore("copies").get(holding)).catch(() => undefined);

/** The pages of the copy after a place, in order. @param {string} holding @param {number} after @returns {Promise<Page[]>} */
export const pagesOf = (holding, after) => within(["pages"], "readonly", (at) =>
  at.objectStore("pages").getAll(IDBKeyRange.bound([holding, after], [holding, Infinity])));

/** Adds a page to a copy. @param {Page | undefined} page @param {Copy} copy */
export const addPage = (page, copy) => within(["pages", "copies"], "readwrite", (at) => {
  if (page) at.objectStore("pages").put(page);
  at.objectStore("copies").put(copy);
});

/** Forgets the copy of a holding. @param {string} holding */
export const forgetCopy = (holding) => within(["pages", "copies"], "readwrite", (at) => {
  at.objectStore("pages").delete(ofHolding(holding));
  at.objectStore("copies").delete(holding);
});

/** Forgets every copy. What was not sent stays. */
export const forgetCopies = () => within(["pages", "copies"], "readwrite", (at) => {
  at.objectStore("pages").clear();
  at.objectStore("copies").clear();
});

/**
 * The batches that are not in the copy of the journal, in the order in which they were written down: those that wait, those that were
 * refused, and those that are recorded and were not copied yet. That they cannot be read is no sign that there are none.
 * @returns {Promise<Batch[]>}
 */
export const batches = () => within(["batches"], "readonly", (at) => at.objectStore("batches").getAll());

/** Those that are still to be sent. */
export const toSend = async () => (await batches()).filter((batch) => !batch.refused && batch.recorded === undefined);

/** Keeps a batch until it is sent. @param {Batch} batch @returns {Promise<number>} */
export function keepBatch(batch) {
  // Where room is short, the browser shall throw away something else.
  void navigator.storage?.persist?.();
  return within(["batches"], "readwrite", (at) => /** @type {IDBRequest<number>} */ (at.objectStore("batches").put(batch)));
}

/** @param {number} number */
export const dropBatch = (number) => within(["batches"], "readwrite", (at) => { at.objectStore("batches").delete(number); });
