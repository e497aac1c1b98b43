// Which piece lies beside another, by where they are drawn, and which handles lie
// on the way. A handle belongs to the piece it is nearest to and to the side of
// that piece on which it lies; who leaves the piece by that side comes past it.

const ARROWS = { ArrowLeft: ["x", -1], ArrowRight: ["x", 1], ArrowUp: ["y", -1], ArrowDown: ["y", 1] };
const BACK = { ArrowLeft: "ArrowRight", ArrowRight: "ArrowLeft", ArrowUp: "ArrowDown", ArrowDown: "ArrowUp" };
const boxes = new WeakMap(); // by wall, the boxes of its pieces
const sides = new WeakMap(); // by wall, where its handles lie
let goal = null; // where a walk up or down is aimed at, so that it does not drift

// near gives the piece or the handle that a key leads to: the next one that way,
// with Home and End the ends of the course, and of the wall with Ctrl. Nothing
// where none is.
export function near(item, key, whole) {
  const wall = item.closest(".wall, #insides svg"), all = measured(wall), lies = handles(wall).get(item);
  const from = lies?.on ?? all.find((b) => b.part === item);
  if (!from) return null;
  if (key === "Home" || key === "End") return end(all, from, key === "End" ? 1 : -1, whole);
  if (!ARROWS[key]) return null;
  if (!lies) return onSide(wall, from, key)[0] ?? step(all, from, ...ARROWS[key]);
  const row = onSide(wall, from, lies.side), at = row.indexOf(item);
  if (key === lies.side) return row[at + 1] ?? step(all, from, ...ARROWS[key]);
  return key === BACK[lies.side] ? row[at - 1] ?? from.part : step(all, from, ...ARROWS[key]);
}

function measured(wall) {
  if (!boxes.has(wall)) {
    boxes.set(wall, [...wall.querySelectorAll("[role=option][data-piece]")].map((part) => {
      const { x, y, width, height } = part.getBBox();
      return { part, x: [x, x + width], y: [y, y + height] };
    }));
  }
  return boxes.get(wall);
}

// handles gives where each handle of a wall lies: on which piece, on which side, how far out.
function handles(wall) {
  if (!sides.has(wall)) {
    const all = measured(wall);
    sides.set(wall, new Map([...wall.querySelectorAll(".handle")].map((handle) => [handle, lie(all, handle)])));
  }
  return sides.get(wall);
}

function lie(all, handle) {
  const [x, y] = handle.dataset.at.split(" ").map(Number);
  const far = (b) => away(b.x, x) + away(b.y, y);
  const on = all.reduce((a, b) => (a && far(a) <= far(b) ? a : b), null);
  if (!on) return { on: null };
  const dx = (x - mid(on.x)) / (on.x[1] - on.x[0]), dy = (y - mid(on.y)) / (on.y[1] - on.y[0]);
  const side = Math.abs(dx) > Math.abs(dy) ? (dx < 0 ? "ArrowLeft" : "ArrowRight") : dy < 0 ? "ArrowUp" : "ArrowDown";
  return { on, side, out: Math.abs(x - mid(on.x)) + Math.abs(y - mid(on.y)) };
}

// onSide lists the handles on one side of a piece, from its middle outwards.
function onSide(wall, piece, side) {
  return [...handles(wall)].filter(([, lies]) => lies.on === piece && lies.side === side)
    .sort(([, a], [, b]) => a.out - b.out).map(([handle]) => handle);
}

const mid = ([a, b]) => (a + b) / 2;
const away = ([a, b], from) => Math.max(a - from, from - b, 0);

// step goes along one axis to the nearest piece in line with where the walk is
// aimed; where none is in line, to the nearest of all that way.
function step(all, from, axis, sign) {
  const across = axis === "x" ? "y" : "x";
  if (goal?.part !== from.part || goal.axis !== axis) goal = { axis, at: mid(from[across]) };
  const ahead = all.filter((b) => sign * (mid(b[axis]) - mid(from[axis])) > 0 && (sign > 0 ? b[axis][0] - from[axis][1] : from[axis][0] - b[axis][1]) > -1000);
  const gap = (b) => (sign > 0 ? b[axis][0] - from[axis][1] : from[axis][0] - b[axis][1]);
  const line = ahead.filter((b) => away(b[across], goal.at) < 1000);
  const best = (line.length ? line : ahead).reduce((a, b) => (a && cost(a) <= cost(b) ? a : b), null);
  function cost(b) { return gap(b) + 3 * away(b[across], goal.at); }
  if (best) goal.part = best.part;
  return best?.part ?? null;
}

function end(all, from, sign, whole) {
  const row = whole ? all : all.filter((b) => b.y[0] < mid(from.y) && mid(from.y) < b.y[1]);
  const far = (b) => sign * (mid(b.x) - (whole ? 1000 * mid(b.y) : 0)) // courses count upwards;
  return row.reduce((a, b) => (a && far(a) >= far(b) ? a : b), null)?.part ?? null;
}
