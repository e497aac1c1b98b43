// Which piece lies beside another, by where they are drawn.

const ARROWS = { ArrowLeft: ["x", -1], ArrowRight: ["x", 1], ArrowUp: ["y", -1], ArrowDown: ["y", 1] };
const boxes = new WeakMap(); // by wall, the boxes of its pieces
let goal = null; // where a walk up or down is aimed at, so that it does not drift

// near gives the piece that a key leads to: the next one that way, with Home and
// End the ends of the course, and of the wall with Ctrl. Nothing where none is.
export function near(part, key, whole) {
  const wall = part.closest(".pieces"), all = measured(wall), from = all.find((b) => b.part === part);
  if (!from) return null;
  if (key === "Home" || key === "End") return end(all, from, key === "End" ? 1 : -1, whole);
  const way = ARROWS[key];
  return way ? step(all, from, ...way) : null;
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
