// One tab stop to a wall: the tab key comes to the piece or the handle that was
// the last to have the focus there, and the arrow keys lead from it to every
// other. A handle on the way is only passed by; drag.js takes hold of it.

import "./tiles.js"; // first of all: it makes the pieces of whole tiles
import { near } from "./neighbours.js";

const ITEMS = "[role=option][data-piece], .handle";
const WALLS = "#drawing .wall, #insides svg"; // what is folded out of a wall has a stop of its own
const last = new Map(); // by wall, how to find what had the focus there

const wallOf = (item) => item.closest(WALLS);
const nameOf = (wall) => wall.id || wall.getAttribute("aria-labelledby");
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
  last.set(nameOf(wall), named(item));
}

// step gives what a key leads to from a piece or a handle, or nothing.
export function step(item, e) {
  return e.altKey || e.metaKey ? null : near(item, e.key, e.ctrlKey);
}

document.addEventListener("focusin", (e) => {
  const item = e.target.closest?.(":is(#drawing .wall, #insides svg) :is([role=option][data-piece], .handle)");
  if (item) reach(item);
});

// redrawn gives every wall its stop again. The frame needs one of its own only
// where there is none inside.
function redrawn() {
  const frame = document.getElementById("drawing");
  if (!frame) return;
  let stops = 0;
  for (const wall of document.querySelectorAll(WALLS)) {
    const had = last.get(nameOf(wall));
    const item = (had && wall.querySelector(had)) || wall.querySelector(ITEMS);
    if (!item) continue;
    reach(item);
    if (frame.contains(wall)) stops++;
  }
  frame.setAttribute("tabindex", stops ? "-1" : "0");
}
document.addEventListener("redrawn", redrawn);
redrawn();
