// Elements from data. What comes from the journal is only ever put in as text, so markup in a name is shown and does nothing.

/**
 * @typedef {Node | string | number | null | undefined | false} Child
 * @typedef {Record<string, string | boolean | number | EventListener | undefined>} Attributes
 */

/**
 * An element. An attribute that begins with `on` is a listener.
 * @param {string} tag
 * @param {Attributes} [attributes]
 * @param {...(Child | Child[])} children
 * @returns {HTMLElement}
 */
export function el(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== undefined && value !== false) made.setAttribute(name, String(value));
  }
  for (const child of children.flat()) {
    if (child !== null && child !== undefined && child !== false) made.append(typeof child === "number" ? String(child) : child);
  }
  return made;
}

/** @returns {HTMLElement} */
const sheet = () => /** @type {HTMLElement} */ (document.getElementById("sheet"));

/** What is known of the screen: since when it is shown, and whether something on it would be lost if it were drawn anew. */
export const screen = { since: 0, isHeld: false };

/** From now on the screen is not drawn anew by itself: somebody fills something in. */
export const hold = () => { screen.isHeld = true; };

/**
 * Shows something else. Whoever reads with a screen reader or the keyboard begins at its top.
 * @param {string} title
 * @param {...(Child | Child[])} children
 */
export function show(title, ...children) {
  Object.assign(screen, { since: Date.now(), isHeld: false });
  document.title = `${title} · Combclear`;
  document.querySelector(".bar")?.remove();
  sheet().querySelectorAll("img").forEach((picture) => URL.revokeObjectURL(picture.src));
  sheet().replaceChildren(...el("div", {}, ...children).childNodes);
  sheet().focus({ preventScroll: true });
  scrollTo(0, 0);
}

/** Keeps what is shown. Returns what shows it again, with everything that was filled in. */
export function keep() {
  const [shown, foot, title] = [[...sheet().childNodes], document.querySelector(".bar"), document.title];
  const [held, focused] = [screen.isHeld, /** @type {HTMLElement | null} */ (document.activeElement)];
  return () => {
    Object.assign(screen, { since: Date.now(), isHeld: held });
    document.querySelector(".bar")?.remove();
    sheet().replaceChildren(...shown);
    if (foot) document.body.append(foot);
    document.title = title;
    (focused?.isConnected ? focused : sheet()).focus({ preventScroll: true });
  };
}

/** What is to be said on the screen that comes next. @type {Child[]} */
let toSay = [];

/**
 * Says what happened in a line at the foot of the screen that comes next.
 * @param {...Child} what
 */
export function sayNext(...what) {
  toSay = what;
}

/** The address of the screen on which something was said last. */
let saidOn = "";

/** Says on this screen what was to be said on it, or nothing. A screen that is drawn anew says it still. */
export function saySo() {
  if (toSay.length === 0 && location.hash === saidOn) return;
  const said = /** @type {HTMLElement} */ (document.getElementById("said"));
  said.replaceChildren(...el("div", {}, toSay).childNodes);
  [toSay, saidOn] = [[], location.hash];
}

/**
 * Puts buttons at the foot of the screen, where a thumb reaches them.
 * @param {...HTMLElement} buttons
 */
export function bar(...buttons) {
  document.querySelector(".bar")?.remove();
  if (buttons.length > 0) document.body.append(el("div", { class: "bar" }, ...buttons));
}

/**
 * A button. While that goes on which a tap began, a tap too many does nothing: nothing is written down twice.
 * @param {string} text
 * @param {() => unknown} act
 * @param {string} [kind]
 */
export function button(text, act, kind = "") {
  let acts = false;
  const onclick = async () => {
    if (acts) return;
    acts = true;
    try {
      await act();
    } finally {
      acts = false;
    }
  };
  return el("button", { type: "button", class: kind, onclick }, text);
}

/** Questions that were asked on the screens so far. */
let asked = 0;

/**
 * Puts an answer into a place of the screen. What stood there goes at once, and only the newest question is answered there; if it cannot
 * be, it says why.
 * @param {HTMLElement} place
 * @param {() => Promise<Child[]>} answer
 * @param {(error: unknown) => string} said
 */
export async function answerInto(place, answer, said) {
  asked += 1;
  const number = asked;
  place.replaceChildren();
  let children;
  try {
    children = await answer();
  } catch (error) {
    children = [el("p", { class: "fault", role: "alert" }, said(error))];
  }
  if (number === asked) place.replaceChildren(...el("div", {}, children).childNodes);
}
