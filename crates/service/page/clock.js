// What day it is. The clock of the service counts, since it stamps the entries; where the service is not reached, the clock of this phone,
// set right by as much as it was wrong when both were last compared.

import { word } from "./words.js";

const WRONG_BY = "clock-wrong-by";
/** Less than this is the way of the answer, or nothing that matters, in milliseconds. */
const LITTLE = 2 * 60_000;

/** How far this phone's clock is behind that of the service, in milliseconds. */
export const wrongBy = () => Number(localStorage.getItem(WRONG_BY) ?? 0);

/** Compares the clocks. @param {Response} response an answer that was not kept */
export function setClock(response) {
  const theirs = Date.parse(response.headers.get("date") ?? "");
  if (Number.isNaN(theirs) || response.headers.has("fetched-at")) return;
  const by = theirs - Date.now();
  const told = Math.abs(by) < LITTLE ? 0 : by;
  if (Math.abs(told - wrongBy()) >= LITTLE || (told === 0 && wrongBy() !== 0)) {
    localStorage.setItem(WRONG_BY, String(told));
    dispatchEvent(new Event("clock"));
  }
}

/** Now. */
export const clock = () => new Date(Date.now() + wrongBy());

/** @param {number} number */
const two = (number) => String(number).padStart(2, "0");

/** The civil day of a moment here. @param {Date} at */
const dayOf = (at) => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;

/** The civil day here. */
export const today = () => dayOf(clock());

/** A day as it is written in the language of the page. @param {string} day */
export function date(day) {
  const [year, month, of] = day.split("-");
  return word("date", { year, month, day: of });
}

/** A moment by the clock on the wall here. @param {string} instant */
export function dateAndTime(instant) {
  const read = new Date(instant);
  return `${date(dayOf(read))} ${two(read.getHours())}:${two(read.getMinutes())}`;
}
