// Handles on the drawing: dragged, or taken hold of with Enter and nudged with the
// arrow keys. A ghost line
// and its figures follow the finger at once, in steps of the tape or onto joint
// lines, and the drawing follows as the server answers. The job changes once, when
// the handle is let go. Esc puts it back.

import { act, PAUSE } from "./save.js";
import { say, PUT_BACK } from "./form.js";
import * as look from "./look.js";
import { scale, tape, exact, figure, moved } from "./tape.js";
import { snapped, onLine } from "./snap.js";
import * as ghost from "./ghost.js";

let held = null; // what is moved: which handle, from where, how far
let timer = 0;
let taken = null; // the handle that the arrow keys move

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
  held.moved = true;
  say("Not saved yet");
  follow();
  look.at(asked());
}

// follow shows where the held handle would stand on the drawing as it is.
function follow() {
  const handle = held && find(held);
  if (!handle) return;
  ghost.tell(handle, stands(held));
  const lit = places().map(([axis, count]) => [axis, onLine(handle, axis, count * held.step)]).filter(([, line]) => line);
  ghost.show(handle, held, [where(figure).join(" · "), ...shifts(), ...(lit.length ? ["on the joint line"] : [])], lit);
}

const places = (of = held) => [["x", of.x + of.dx], ["y", of.y + of.dy]].filter(([axis]) => of.axis.includes(axis));
const where = (write) => places().map(([, count]) => write(count));
const upright = (count) => `${figure(Math.abs(count))} ${count < 0 ? "down" : "up"}`;
const stands = (of) => places(of).map(([axis, count]) => (axis === "y" ? upright(count) : `${figure(count)} across`)).join(", "); // as the server writes it, in inches alone

const shifts = () => [["x", held.dx], ["y", held.dy]].filter(([axis]) => held.axis.includes(axis)).map(([, d]) => moved(d));

// asked is what the form is asked to do: put the handle where it is held.
function asked() {
  const number = held.wall + 1;
  return `place ${number} ${held.name}=${where((count) => (held.measured ? tape : exact)(count, held.per)).join(";")}`;
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

// take makes a handle the one that the arrow keys move; nothing lets it go.
function take(handle) {
  const before = taken && find(taken);
  if (before) ghost.still(before);
  before?.classList.remove("taken");
  taken = handle && { name: handle.dataset.handle, wall: handle.dataset.wall };
  showTaken();
}

function showTaken() {
  const handle = taken && find(taken);
  if (!handle) return;
  handle.classList.add("taken");
  ghost.tell(handle, `${stands(grab(handle))}: the arrow keys move it, Enter lets it go`);
}

function putBack() {
  clearTimeout(timer);
  if (held.moved) say(PUT_BACK);
  held = null;
  look.putBack(); // redraws, which hides the ghost
}

document.addEventListener("pointerdown", (e) => {
  const handle = e.target.closest?.("#drawing .handle");
  if (!handle || e.button) return;
  e.preventDefault();
  handle.focus({ preventScroll: true });
  take(handle);
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
  if (e.key === "Escape" && held) {
    if (held.from) take(null);
    return putBack();
  }
  const handle = e.target.closest?.("#drawing .handle");
  if (!handle || held?.from) return;
  if (e.key === "Enter" || e.key === " ") return hold(e, handle);
  if (e.key === "Escape") return take(null);
  const way = ARROWS[e.key];
  if (!way || !handle.matches(".taken")) return;
  e.preventDefault();
  held ??= grab(handle);
  const by = e.shiftKey ? held.big : 1;
  moveBy(held.dx + way[0] * by, held.dy + way[1] * by);
  clearTimeout(timer);
  timer = setTimeout(() => held && letGo(), PAUSE);
});

// hold takes hold of a handle, or lets go of the one that is held.
function hold(e, handle) {
  e.preventDefault();
  if (held) letGo();
  take(handle.matches(".taken") ? null : handle);
}

document.addEventListener("focusin", (e) => {
  if (taken && e.target !== find(taken)) take(null);
});

function redrawn() {
  if (!held) ghost.hide(); // a drawing that is put back may have one
  showTaken();
  follow();
}
document.addEventListener("redrawn", redrawn);
