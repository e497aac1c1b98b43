// Back and next by arrow keys, or by a long swipe; all else works without this.

const far = 90; // px, so that a wet thumb that slips turns no page
const go = (rel) => document.querySelector(`.thumb a[rel="${rel}"]`)?.click();
let from;

addEventListener("keydown", (e) => {
  if (e.altKey || e.ctrlKey || e.metaKey || e.target.closest("input, select, textarea")) return;
  if (e.key === "ArrowRight") go("next");
  if (e.key === "ArrowLeft") go("prev");
});

addEventListener("touchstart", (e) => { from = e.touches.length === 1 ? e.touches[0] : undefined; }, { passive: true });
addEventListener("touchend", (e) => {
  const to = e.changedTouches[0];
  if (!from || e.target.closest(".thumb")) return;
  const x = to.clientX - from.clientX, y = to.clientY - from.clientY;
  if (Math.abs(x) > far && Math.abs(x) > 3 * Math.abs(y)) go(x < 0 ? "next" : "prev");
}, { passive: true });
