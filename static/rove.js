// One tab stop to a wall: the tab key comes to the piece or the handle that was
// the last to have the focus there, and the arrow keys lead from it to every
// other. A handle on the way is only passed by; drag.js takes hold of it.

import "./tiles.js"; // first of all: it makes the pieces of whole tiles
import { near } from "./neighbours.js";

const ITEMS = "[role=option][data-piece], .handle";
const last = new Map(); // by wall, how to find what had the focus there

const wallOf = (item) => item.closest("#drawing .wall");
const named = ({ dataset: { piece, handle } }) => (piece ? `[data-piece="${CSS.escape(piece)}"]` : `[data-handle="${CSS.escape(handle)}"]`);

// reach makes an item the one of its wall that the tab key comes to. It comes
// first, because an item that loses its place in the order loses the focus.
export function reach(item) {
  const wall = wallOf(item);
  if (!wall) return;
  item.setAttribute("tabindex", "0");
  for (const old of wall.querySelectorAll('[tabindex="0"]')) {
    if (old !== item) old.matches(".handle") ? old.setAttribute("tabindex", "-1") : old.removeAttribute("tabindex");
  }
  last.set(wall.dataset.wall, named(item));
}

// step gives what a key leads to from a piece or a handle, or nothing.
export function step(item, e) {
  return e.altKey || e.metaKey ? null : near(item, e.key, e.ctrlKey);
}

document.addEventListener("focusin", (e) => {
  const item = e.target.closest?.("#drawing .wall :is([role=option][data-piece], .handle)");
  if (item) reach(item);
});

// redrawn gives every wall its stop again. The frame needs one of its own only
// where there is none inside.
function redrawn() {
  const frame = document.getElementById("drawing");
  if (!frame) return;
  let stops = 0;
  for (const wall of frame.querySelectorAll(".wall")) {
    const item = (last.has(wall.dataset.wall) && wall.querySelector(last.get(wall.dataset.wall))) || wall.querySelector(ITEMS);
    if (!item) continue;
    reach(item);
    stops++;
  }
  frame.setAttribute("tabindex", stops ? "-1" : "0");
}
document.addEventListener("redrawn", redrawn);
redrawn();
