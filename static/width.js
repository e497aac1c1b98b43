// The drawing is laid out for the width of its frame, which only the browser knows.
// It is noted in a cookie that the server finds with every request; where the
// drawing was laid out for another width it is asked for anew, and with it what is
// folded out of its walls.

import { unknown } from "./form.js";
import { whereFocus, refocus } from "./focus.js";

const NEAR = 12; // pixels: a drawing so little wider or narrower stays
const PAUSE = 200; // ms after the last change of the window

const frame = () => document.getElementById("drawing");
const note = (width) => { document.cookie = `frame=${width}; path=/; SameSite=Strict`; };

// laid is the width that the drawing was laid out for, as it was asked for.
let laid = Number(document.cookie.match(/(?:^|; )frame=(\d+)/)?.[1] ?? 0);

// What is held or was drawn anew in the meantime is left alone, and looked at later.
let held = false;
addEventListener("pointerdown", () => { held = true; }, true);
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => { held = false; }, true);

async function fit() {
  const width = frame()?.clientWidth, old = document.getElementById("paper");
  if (!width || Math.abs(width - laid) < NEAR) return;
  if (held) return later();
  note(width);
  const answer = await fetch(location.href).catch(() => null);
  if (!answer?.ok) return;
  const page = new DOMParser().parseFromString(await answer.text(), "text/html"), fresh = page.getElementById("paper");
  if (held || document.getElementById("paper") !== old) return later();
  laid = width;
  if (!fresh || !old) return;
  const focus = whereFocus();
  old.replaceWith(fresh);
  const folded = page.getElementById("insides");
  if (folded) document.getElementById("insides")?.replaceWith(folded);
  unknown("paper", "insides");
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
  for (const id of ["tools", "more"]) document.getElementById(id)?.replaceWith(page.getElementById(id));
}

let timer = 0;
function later() {
  clearTimeout(timer);
  timer = setTimeout(fit, PAUSE);
}
addEventListener("resize", later);
fit();
