// A wall's start goes along its slide curve: by the slider under it, by a finger
// on the curve itself, or by the arrow keys. The drawing follows; the job changes
// once, when it is let go.

import { act, PAUSE } from "./save.js";
import { say, PUT_BACK } from "./form.js";
import * as look from "./look.js";
import { figure, tape } from "./tape.js";

let timer = 0;
let began = null; // the slider that is moved, and where it stood
let byHand = false; // moved by mouse or finger, not by keys
let dropped = false; // given up with the hand still down: what it does until it is lifted counts no more

const asks = ({ dataset: d, value }) => d.sets ? `set ${d.sets}=${tape(value, d.per)}` : `pin ${d.pin} ${d.is}=${tape(value, d.per)}`;
const slides = ({ dataset: d }) => d.pin || d.sets;

// told says where what is slid stands; of a start, as it is struck on the wall.
function told(range) {
  const { says, is, shift, per } = range.dataset;
  const text = says ? `${says} ${figure(Math.round(Number(range.value) + Number(shift)))}` : `${is} at ${tape(range.value, per)}`;
  range.setAttribute("aria-valuetext", text);
  document.querySelector(`output[for="${range.id}"]`).textContent = text;
}

function slid(range) {
  if (dropped) range.value = range.defaultValue;
  if (dropped) return;
  clearTimeout(timer);
  began ??= { range, value: range.defaultValue };
  told(range);
  say("Not saved yet");
  look.at(asks(range));
}

// letGo pins the start; with keys once they pause, so that a run of them is one step.
function letGo(range, pause) {
  clearTimeout(timer);
  timer = setTimeout(() => {
    if (!began) return;
    began = null;
    look.stop();
    act(asks(range), true);
  }, pause);
}

function giveUp() {
  clearTimeout(timer);
  began.range.value = began.value;
  told(began.range);
  began = null;
  dropped = byHand;
  look.putBack();
  say(PUT_BACK);
}

document.addEventListener("pointerdown", (e) => {
  byHand = true;
  dropped = false;
  if (e.target.closest?.(".slide:not(.phases) svg") && !e.button) onCurve(e);
});
document.addEventListener("keydown", (e) => {
  if (e.key === "Escape" && began) return giveUp();
  byHand = false;
  dropped = false;
});
document.addEventListener("input", (e) => { if (slides(e.target)) slid(e.target); });
document.addEventListener("change", (e) => { if (slides(e.target) && began) letGo(e.target, byHand ? 0 : PAUSE); });

// onCurve moves the slider with a finger on the curve over it.
function onCurve(e) {
  const slide = e.target.closest(".slide"), range = slide.querySelector("[data-pin]");
  const from = e.clientX;
  let held = false;
  const move = (m) => {
    if (!held && Math.abs(m.clientX - from) < 4) return; // a tap is no drag
    held = true;
    const box = range.getBoundingClientRect(), knob = 16;
    const along = (m.clientX - box.left - knob / 2) / (box.width - knob);
    range.value = Math.round(Number(range.min) + along * (range.max - range.min));
    slid(range);
  };
  const end = () => {
    removeEventListener("pointermove", move);
    removeEventListener("pointerup", end);
    removeEventListener("pointercancel", end);
    if (held && began) letGo(range, 0);
  };
  slide.setPointerCapture(e.pointerId);
  addEventListener("pointermove", move);
  addEventListener("pointerup", end);
  addEventListener("pointercancel", end);
}
