// The words of the page, from the message file of the program.

import { get } from "./ask.js";

/** @type {Record<string, string>} */
let words = {};

export async function readWords() {
  words = await get("/page/words.json");
}

/**
 * A text, with values in the places that it leaves for them in square brackets.
 * @param {string} name
 * @param {Record<string, string | number>} [values]
 */
export function word(name, values = {}) {
  const text = words[name] ?? name;
  return Object.entries(values).reduce((said, [key, value]) => said.replaceAll(`[${key}]`, String(value)), text);
}
