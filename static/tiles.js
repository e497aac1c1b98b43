// Whole tiles come as one path a wall: a broad line, one stretch to each run of
// tiles, broken where the joints are. Here they become pieces that can be pointed
// at and reached with the keys: at once where a wall has few of them, else when it
// is first pointed at, and of any wall when a key is to lead from piece to piece.

const FEW = 700, SOME = 2000, ANY = 1e6; // whole tiles of one wall

const runs = (part) => part.dataset.runs.split(" ").map((run) => {
  const at = run.lastIndexOf(":");
  return { first: run.slice(0, at), count: Number(run.slice(at + 1)) };
});

const counted = (part) => runs(part).reduce((sum, run) => sum + run.count, 0);

// expand puts the tiles of one path beside it, each as a piece of its own.
function expand(part) {
  const [long, gap] = part.getAttribute("stroke-dasharray").split(" ").map(Number);
  const broad = Number(part.getAttribute("stroke-width"));
  const starts = [...part.getAttribute("d").matchAll(/M(\S+) (\S+)([hv])/g)];
  const tiles = document.createDocumentFragment();
  runs(part).forEach(({ first, count }, i) => {
    const [x, y] = [Number(starts[i][1]), Number(starts[i][2])], up = starts[i][3] === "v";
    for (let n = 0; n < count; n++) {
      const on = n * (long + gap);
      tiles.append(tile(part, following(first, n), up ? [x - broad / 2, y - on - long, broad, long] : [x + on, y - broad / 2, long, broad]));
    }
  });
  part.after(tiles);
  delete part.dataset.runs;
  part.removeAttribute("role");
  part.removeAttribute("aria-label");
  part.removeAttribute("tabindex");
}

// following is the id of the nth piece after one in its course.
function following(first, n) {
  const at = first.lastIndexOf("-") + 1;
  return first.slice(0, at) + String(Number(first.slice(at)) + n).padStart(2, "0");
}

function tile(part, id, [x, y, wide, high]) {
  const made = document.createElementNS(part.namespaceURI, "path");
  const course = Number(id.split("-").at(-2));
  for (const [key, value] of Object.entries({
    class: "piece tile", "data-wall": part.dataset.wall, "data-piece": id, role: "option", fill: "#fff", "fill-opacity": 0,
    "aria-label": `${id}, ${part.dataset.course} ${course}, whole`, d: `M${x} ${y}h${wide}v${high}h${-wide}z`,
  })) made.setAttribute(key, value);
  return made;
}

function all(most, within = document) {
  for (const part of within.querySelectorAll("#drawing .pieces [data-runs]")) {
    if (counted(part) <= most) expand(part);
  }
}

const wanted = (most) => (e) => {
  const wall = e.target.closest?.("#drawing .wall");
  if (wall) all(most, wall);
};
document.addEventListener("pointerover", wanted(SOME), true);
document.addEventListener("keydown", wanted(ANY), true);
document.addEventListener("redrawn", () => all(FEW));
all(FEW);
