// Joint lines: what is dragged goes to the nearest one that is close enough.
// Each wall of the drawing lists where its joints begin, in millimetres, and how
// wide they are; each handle says to which side of them it goes.

const REACH = 6; // pixels from a joint line at which a mark goes to it
const SHARE = 0.25; // of the way to the next joint line, where lines lie close
const SAME = 0.001; // millimetres: places are written to a thousandth

// lines lists the places along an axis to which a handle goes, counted as its
// figures are, each with the middle of its joint.
function lines(handle, axis) {
  const wish = handle.dataset.snaps?.split(";").map((one) => one.split(" ")).find(([of]) => of === axis);
  const { level, plumb, joint } = handle.closest(".wall")?.dataset ?? {};
  const list = axis === "x" ? plumb : level;
  if (!wish || !list) return [];
  const [, side, from] = wish, wide = Number(joint);
  return list.split(" ").map(Number).map((at) => ({ at: at + (side === "begins" ? wide : 0) - from, middle: at + wide / 2, wide }));
}

const nearest = (all, at) => all.reduce((a, b) => (a && Math.abs(a.at - at) <= Math.abs(b.at - at) ? a : b), null);

// snapped is the joint line's place where one is close enough to a place, else
// nothing; pixels are those of a millimetre.
export function snapped(handle, axis, at, pixels) {
  const all = lines(handle, axis), best = nearest(all, at);
  if (!best) return null;
  const next = nearest(all.filter((l) => l !== best), best.at);
  const reach = Math.min(REACH / pixels, next ? SHARE * Math.abs(next.at - best.at) : Infinity);
  return Math.abs(best.at - at) <= reach ? best.at : null;
}

// onLine gives the joint that a place lies on, or nothing.
export function onLine(handle, axis, at) {
  const best = nearest(lines(handle, axis), at);
  return best && Math.abs(best.at - at) < 2 * SAME ? best : null;
}
