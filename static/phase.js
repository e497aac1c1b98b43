// The phase of a wall laid in a pattern goes over its map by mouse or finger: along it the
// start of the wall, up it the line of all walls. The drawing follows; the job changes once,
// when it is let go. By keys the two sliders under it do the same (slide.js).

import { act } from "./save.js";
import { say, PUT_BACK } from "./form.js";
import * as look from "./look.js";
import { tape } from "./tape.js";

let held = null; // the map under the hand, its mark, and what it asks for

// under gives the start and the line of the field under the hand, which are those that its colour tells of: a mark
// of the tape beside them may cut quite another way. And where on the picture the hand is.
function under(e, map) {
  const { dataset: d } = map, box = map.querySelector("svg").getBoundingClientRect();
  const [left, top, right, foot] = d.field.split(" ").map(Number);
  const part = (at, from, to) => Math.min(1, Math.max(0, (at - from) / (to - from)));
  const u = part((e.clientX - box.left) / box.width, left, right), v = part((e.clientY - box.top) / box.height, foot, top);
  const of = (from, all, one, x) => Math.round(Number(from) + one * Math.min(Math.floor(x * all / one), Math.round(all / one) - 1));
  const edge = of(d.edge, d.wide, d.across, u), line = of(d.line, d.high, d.up, v);
  return {
    asks: `place ${d.phase} phase=${tape(edge, d.per)};${tape(line, d.per)}`,
    x: (left + u * (right - left)) * box.width, y: (foot + v * (top - foot)) * box.height,
  };
}

function moveTo(e) {
  const now = under(e, held.map);
  held.mark.style.left = `${now.x}px`;
  held.mark.style.top = `${now.y}px`;
  if (held.asks === now.asks) return;
  held.asks = now.asks;
  say("Not saved yet");
  look.at(now.asks);
}

function drop() {
  held.mark.remove();
  delete held.map.dataset.keeps;
  held = null;
}

document.addEventListener("pointerdown", (e) => {
  const map = e.target.closest?.(".phases svg") && !e.button && e.target.closest(".phases");
  if (!map) return;
  e.preventDefault();
  const mark = document.createElement("i");
  mark.className = "phase-mark";
  map.append(mark);
  map.dataset.keeps = ""; // the map itself stays as it is under the hand
  held = { map, mark };
  map.setPointerCapture(e.pointerId);
  moveTo(e);
});
document.addEventListener("pointermove", (e) => { if (held) moveTo(e); });
document.addEventListener("pointerup", () => {
  if (!held) return;
  const { asks } = held;
  drop();
  look.stop();
  act(asks, true);
});
function giveUp() {
  if (!held) return;
  drop();
  look.putBack();
  say(PUT_BACK);
}
document.addEventListener("pointercancel", giveUp);
document.addEventListener("keydown", (e) => { if (e.key === "Escape") giveUp(); });
