// The drawing is laid out for the width of its frame, which only the browser knows.
// It is noted in a cookie that the server finds with every request; where the
// drawing says that it was laid out for another width it is asked for anew, and with it
// what is folded out of its walls. All windows share the cookie, so an answer may be laid
// out for that of another one.

import { unknown } from "./form.js";
import { whereFocus, refocus } from "./focus.js";

const NEAR = 12; // pixels: a drawing so little wider or narrower stays
const FAR = 40; // pixels: and so little once it was drawn anew, since that may bring a bar to scroll by
const LEAST = 280, MOST = 2000; // pixels: none is laid out narrower or wider
const PAUSE = 200; // ms after the last change of the window
const AGAIN = 5000; // ms after an answer that was none

const frame = () => document.getElementById("drawing");
const listed = () => document.getElementById("wallcuts")?.offsetWidth ?? 0; // the list beside a single wall, where it is shown
const paper = () => document.getElementById("paper");
const note = (width) => { document.cookie = `frame=${width}; path=/; SameSite=Strict`; };

// off tells how far a drawing is from the width that it should be laid out for.
const off = (drawn, width) => Math.abs(Math.min(Math.max(width, LEAST), MOST) - Number(drawn.dataset.wide));

// What is held or was drawn anew in the meantime is left alone, and looked at later.
let held = false;
addEventListener("pointerdown", () => { held = true; }, true);
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => { held = false; }, true);

async function fit(near = NEAR) {
  const old = paper();
  if (!frame()?.clientWidth) return;
  const width = frame().clientWidth + listed();
  if (!old || off(old, width) < near) return;
  if (held) return later();
  note(width);
  if (!document.cookie.includes(`frame=${width}`)) return; // nobody gets to know it
  const answer = await fetch(location.href).catch(() => null);
  if (!answer?.ok) return later(AGAIN);
  const page = new DOMParser().parseFromString(await answer.text(), "text/html"), fresh = page.getElementById("paper");
  if (held || paper() !== old) return later();
  if (!fresh) return;
  const focus = whereFocus();
  old.replaceWith(fresh);
  const folded = page.getElementById("insides");
  if (folded) document.getElementById("insides")?.replaceWith(folded);
  unknown("paper", "insides");
  const list = page.getElementById("wallcuts");
  if (list) document.getElementById("wallcuts")?.replaceWith(list);
  unknown("wallcuts");
  wallsShown(page);
  document.dispatchEvent(new Event("redrawn"));
  refocus(focus);
}

// wallsShown follows where another width shows one wall instead of all, as on a phone.
function wallsShown(page) {
  const shown = page.getElementById("drawing");
  if (shown.className === frame().className) return;
  frame().className = shown.className;
  frame().setAttribute("aria-label", shown.getAttribute("aria-label"));
  unknown("tools", "more");
  for (const id of ["tools", "more", "hand-hint"]) document.getElementById(id)?.replaceWith(page.getElementById(id));
}

let timer = 0, nearest = Infinity;
function later(pause = PAUSE, near = NEAR) {
  nearest = Math.min(nearest, near);
  clearTimeout(timer);
  timer = setTimeout(() => {
    const asked = nearest;
    nearest = Infinity;
    fit(asked);
  }, pause);
}
addEventListener("resize", () => later());
document.addEventListener("redrawn", () => later(PAUSE, FAR));
fit();
