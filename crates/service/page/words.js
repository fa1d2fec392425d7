// The words of the page, from the message file of the program, in the language that the browser asks for.

import { get } from "./ask.js";

/** @type {{ language: string, version: string, engine: boolean, rules: string, words: Record<string, string> }} */
let known = { language: "en", version: "", engine: false, rules: "", words: {} };

export async function readWords() {
  known = await get("/page/words.json");
  document.documentElement.lang = known.language;
}

export const language = () => known.language;

/** Which page this is, and whether the service has what answers without signal. */
export const page = () => known;

/**
 * A text, with values in the places that it leaves for them in square brackets.
 * @param {string} name
 * @param {Record<string, string | number>} [values]
 */
export function word(name, values = {}) {
  const text = known.words[name] ?? name;
  return Object.entries(values).reduce((said, [key, value]) => said.replaceAll(`[${key}]`, String(value)), text);
}
