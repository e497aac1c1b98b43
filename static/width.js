// The drawing is laid out for the width of its frame, which only the browser knows.
// It is noted in a cookie that the server finds with every request; where the
// drawing was laid out for another width it is asked for anew.

import { unknown, whereFocus, refocus } from "./form.js";

const NEAR = 12; // pixels: a drawing so little wider or narrower stays
const PAUSE = 200; // ms after the last change of the window

const frame = () => document.getElementById("drawing");
const note = (width) => { document.cookie = `frame=${width}; path=/; SameSite=Strict`; };

// laid is the width that the drawing was laid out for, as it was asked for.
let laid = Number(document.cookie.match(/(?:^|; )frame=(\d+)/)?.[1] ?? 0);

async function fit() {
  const width = frame()?.clientWidth;
  if (!width || Math.abs(width - laid) < NEAR) return;
  note(width);
  laid = width;
  const answer = await fetch(location.href).catch(() => null);
  if (!answer?.ok || laid !== width) return;
  const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("paper");
  if (!fresh || !document.getElementById("paper")) return;
  const focus = whereFocus();
  document.getElementById("paper").replaceWith(fresh);
  unknown("paper");
  document.dispatchEvent(new Event("redrawn"));
  refocus(focus);
}

let timer = 0;
addEventListener("resize", () => {
  clearTimeout(timer);
  timer = setTimeout(fit, PAUSE);
});
fit();
