// A nearer look: the drawing grows inside its frame, and the frame scrolls. By
// buttons, + − 0, the wheel with Ctrl, two fingers; moved by scrolling, by the
// arrow keys, or with the mouse. The place is kept in the address.

import { keep, kept } from "./address.js";

const MOST = 16;
const GRIP = matchMedia("(pointer: coarse)").matches ? 30 : 24; // pixels across a handle, however near
const PIXEL = 250; // micrometres of the drawing to a pixel it is laid out for
const LEGIBLE = 7.5; // pixels: a size written smaller is not shown at all

const frame = () => document.getElementById("drawing");
const svg = () => frame()?.querySelector("svg");

// place is how near, and which part of the drawing is in the middle of the
// frame, in shares of its width and height.
let place = read();

function read() {
  const [near, x, y] = (kept("view") ?? "").split(",").map(Number);
  return near > 1 && near <= MOST && x >= 0 && y >= 0 ? { near, x, y } : { near: 1, x: 0, y: 0.5 }; // a wide drawing begins at its left
}

// A frame that has just changed its size scrolls by itself; that is no wish.
let size = "";
const sized = () => `${frame().clientWidth} ${frame().clientHeight}`;

// apply shows the place on the drawing as it is now.
function apply() {
  const drawing = svg();
  if (!drawing) return;
  const { width, height } = drawing.viewBox.baseVal;
  frame().style.setProperty("--laid", `${width / PIXEL}px`);
  frame().style.setProperty("--tall", `${height / PIXEL}px`);
  frame().style.setProperty("--near", place.near);
  const box = drawing.getBoundingClientRect();
  size = sized();
  frame().scrollLeft = place.x * box.width - frame().clientWidth / 2;
  frame().scrollTop = place.y * box.height - frame().clientHeight / 2;
  frame().style.setProperty("--grip", Math.min(1.25, GRIP / 6000 * width / box.width)); // no larger, or one covers the next
  legible(drawing, LEGIBLE * width / box.width);
}

const sizes = new WeakMap(); // by drawing, the groups of its sizes

// legible hides the sizes written smaller than least, and the plates under them.
function legible(drawing, least) {
  if (!sizes.has(drawing)) sizes.set(drawing, new Set([...drawing.querySelectorAll("text.size")].map((text) => text.parentElement)));
  for (const group of sizes.get(drawing)) {
    const small = Number(group.getAttribute("font-size")) < least, plates = group.previousElementSibling;
    group.classList.toggle("small", small);
    if (plates?.querySelector(".of-size")) plates.classList.toggle("small", small);
  }
}

// seen reads the place off the frame's scroll position.
function seen() {
  const box = svg().getBoundingClientRect();
  place.x = (frame().scrollLeft + frame().clientWidth / 2) / box.width;
  place.y = (frame().scrollTop + frame().clientHeight / 2) / box.height;
}

// zoom comes nearer by a factor and keeps what is at a point of the window
// where it is; without a point, the middle.
function zoom(by, x, y) {
  if (!svg()) return;
  const at = frame().getBoundingClientRect();
  x ??= at.x + at.width / 2;
  y ??= at.y + at.height / 2;
  const old = svg().getBoundingClientRect();
  const share = { x: (x - old.x) / old.width, y: (y - old.y) / old.height };
  place.near = Math.min(MOST, Math.max(1, place.near * by));
  apply();
  const box = svg().getBoundingClientRect();
  frame().scrollLeft += box.x + share.x * box.width - x;
  frame().scrollTop += box.y + share.y * box.height - y;
  seen();
  note();
}

let timer = 0;
function note() {
  clearTimeout(timer);
  timer = setTimeout(() => {
    keep("view", place.near > 1 ? [place.near, place.x, place.y].map((n) => Number(n.toFixed(3))).join(",") : null);
  }, 200);
}

// reveal scrolls the frame so that a part of the drawing is in it; what is folded out of
// the walls has no frame.
export function reveal(part) {
  if (!frame().contains(part)) return;
  const box = part.getBoundingClientRect(), at = frame().getBoundingClientRect();
  const over = (from, to, low, high) => (from < low ? from - low : to > high ? to - high : 0);
  frame().scrollLeft += over(box.left, box.right, at.left, at.right);
  frame().scrollTop += over(box.top, box.bottom, at.top, at.bottom);
}

const WAYS = { in: 1.5, out: 1 / 1.5, fit: 0 };
const KEYS = { "+": "in", "=": "in", "-": "out", 0: "fit" };

document.addEventListener("click", (e) => {
  const button = e.target.closest?.("[data-zoom]");
  if (button) zoom(WAYS[button.dataset.zoom]);
});

document.addEventListener("keydown", (e) => {
  const way = KEYS[e.key];
  if (!way || e.ctrlKey || e.metaKey || e.altKey || !e.target.closest?.("#drawing")) return;
  e.preventDefault();
  zoom(WAYS[way]);
});

document.addEventListener("wheel", (e) => {
  if (!e.ctrlKey || !e.target.closest?.("#drawing")) return;
  e.preventDefault();
  zoom(Math.exp(-e.deltaY * 0.004), e.clientX, e.clientY);
}, { passive: false });

document.addEventListener("scroll", (e) => {
  if (e.target !== frame() || !svg()) return;
  if (sized() !== size) return apply();
  seen();
  note();
}, { capture: true, passive: true });

// Two fingers.
let spread = 0;
const fingers = ([a, b]) => ({
  apart: Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY), x: (a.clientX + b.clientX) / 2, y: (a.clientY + b.clientY) / 2,
});

document.addEventListener("touchstart", (e) => {
  spread = e.touches.length === 2 && e.target.closest?.("#drawing") ? fingers(e.touches).apart : 0;
}, { passive: true });

document.addEventListener("touchmove", (e) => {
  if (!spread || e.touches.length !== 2) return;
  e.preventDefault();
  const now = fingers(e.touches);
  zoom(now.apart / spread, now.x, now.y);
  spread = now.apart;
}, { passive: false });

// The mouse takes hold of the paper.
let hold = null;

document.addEventListener("pointerdown", (e) => {
  if (e.pointerType !== "mouse" || e.button || place.near === 1 || !e.target.closest?.("#drawing svg") || e.target.closest(".handle")) return;
  hold = { x: e.clientX, y: e.clientY, far: false };
});

document.addEventListener("pointermove", (e) => {
  if (!hold || !e.buttons) return;
  if (!hold.far && Math.hypot(e.clientX - hold.x, e.clientY - hold.y) < 4) return;
  if (!hold.far) frame().setPointerCapture(e.pointerId);
  frame().scrollLeft -= e.clientX - hold.x;
  frame().scrollTop -= e.clientY - hold.y;
  hold = { x: e.clientX, y: e.clientY, far: true };
});

addEventListener("click", (e) => {
  if (hold?.far) e.stopPropagation(); // the end of a move picks nothing
  hold = null;
}, true);

document.addEventListener("redrawn", apply);
addEventListener("resize", apply);
addEventListener("popstate", () => { place = read(); apply(); });
document.fonts?.ready.then(apply);
apply();
