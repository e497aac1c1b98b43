// Handles on the drawing: dragged, or nudged with the arrow keys. A ghost line
// and its figures follow the finger at once, in steps of the tape or onto joint
// lines, and the drawing follows as the server answers. The job changes once, when
// the handle is let go. Esc puts it back.

import { act, PAUSE } from "./save.js";
import { say } from "./form.js";
import * as look from "./look.js";
import { scale, tape, exact, figure, moved } from "./tape.js";
import { snapped, onLine } from "./snap.js";
import * as ghost from "./ghost.js";

let held = null; // what is moved: which handle, from where, how far
let timer = 0;

const find = ({ name, wall }) => document.querySelector(`#drawing .handle[data-handle="${CSS.escape(name)}"][data-wall="${wall}"]`);

// grab notes where a handle stands, in steps of the tape.
function grab(handle) {
  const { step, big, per } = scale(), { handle: name, wall, axis, x, y } = handle.dataset;
  const svg = handle.ownerSVGElement;
  const drawn = step * svg.dataset.paper / svg.dataset.real * 1000; // micrometres on paper to a step
  return {
    name, wall: Number(wall), axis, step, big, per, dx: 0, dy: 0, measured: "measured" in handle.dataset,
    x: Math.round(x / step), y: Math.round(y / step),
    pixels: drawn * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width,
  };
}

function moveBy(dx, dy) {
  const to = [held.axis.includes("x") ? dx : 0, held.axis.includes("y") ? dy : 0];
  if (to[0] === held.dx && to[1] === held.dy) return;
  [held.dx, held.dy] = to;
  say("Not saved yet");
  follow();
  look.at(asked());
}

// follow shows where the held handle would stand on the drawing as it is.
function follow() {
  const handle = held && find(held);
  if (!handle) return;
  handle.setAttribute("aria-valuetext", where(figure).join(", "));
  const lit = places().map(([axis, count]) => [axis, onLine(handle, axis, count * held.step)]).filter(([, line]) => line);
  ghost.show(handle, held, [where(figure).join(" · "), ...shifts(), ...(lit.length ? ["on the joint line"] : [])], lit);
}

const places = () => [["x", held.x + held.dx], ["y", held.y + held.dy]].filter(([axis]) => held.axis.includes(axis));
const where = (write) => places().map(([, count]) => write(count));

const shifts = () => [["x", held.dx], ["y", held.dy]].filter(([axis]) => held.axis.includes(axis)).map(([, d]) => moved(d));

// asked is what the form is asked to do: put the handle where it is held.
function asked() {
  const number = held.wall + 1;
  const name = held.name === "start" ? document.getElementById(`slide-${held.wall}`).dataset.is : held.name;
  return `place ${number} ${name}=${where((count) => (held.measured ? tape : exact)(count, held.per)).join(";")}`;
}

function letGo() {
  clearTimeout(timer);
  const far = held.dx || held.dy, doing = asked();
  if (!far) return putBack();
  held = null;
  ghost.hide();
  look.stop();
  act(doing, true);
}

function putBack() {
  clearTimeout(timer);
  held = null;
  ghost.hide();
  look.putBack();
  say("");
}

document.addEventListener("pointerdown", (e) => {
  const handle = e.target.closest?.("#drawing .handle");
  if (!handle || e.button) return;
  e.preventDefault();
  handle.focus({ preventScroll: true });
  document.getElementById("drawing").setPointerCapture(e.pointerId); // the drawing is swapped, its frame stays
  held = { ...grab(handle), from: e };
});

// A finger on a handle moves it and does not scroll. The style sheet cannot say
// so: touch-action is not heeded inside a drawing.
document.addEventListener("touchstart", (e) => {
  if (e.target.closest?.("#drawing .handle")) e.preventDefault();
}, { passive: false });

document.addEventListener("pointermove", (e) => {
  if (!held?.from || e.pointerId !== held.from.pointerId) return;
  const handle = find(held);
  const steps = (axis, pixels) => {
    const raw = pixels / held.pixels, from = held[axis];
    const line = handle && snapped(handle, axis, (from + raw) * held.step, held.pixels / held.step);
    return line === null ? Math.round(raw) : line / held.step - from;
  };
  moveBy(steps("x", e.clientX - held.from.clientX), steps("y", held.from.clientY - e.clientY));
});

document.addEventListener("pointerup", () => { if (held?.from) letGo(); });
document.addEventListener("pointercancel", () => { if (held?.from) putBack(); });

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

document.addEventListener("keydown", (e) => {
  if (e.key === "Escape" && held) return putBack();
  const handle = e.target.closest?.("#drawing .handle"), way = ARROWS[e.key];
  if (!handle || !way || held?.from) return;
  e.preventDefault();
  held ??= grab(handle);
  const by = e.shiftKey ? held.big : 1;
  moveBy(held.dx + way[0] * by, held.dy + way[1] * by);
  clearTimeout(timer);
  timer = setTimeout(() => held && letGo(), PAUSE);
});

// Handles are reached with the tab key where there is a script to move them.
function redrawn() {
  for (const handle of document.querySelectorAll("#drawing .handle")) handle.setAttribute("tabindex", "0");
  follow();
}
document.addEventListener("redrawn", redrawn);
redrawn();
