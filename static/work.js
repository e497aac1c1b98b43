// A row of the work and its pieces in the drawing mark each other.

const drawing = document.getElementById("drawing");
const rows = [...document.querySelectorAll("[data-pieces]")];

function mark(row) {
  for (const old of document.querySelectorAll(".selected")) old.classList.remove("selected");
  row.classList.add("selected");
  for (const id of row.dataset.pieces.split(" ")) {
    for (const one of drawing.querySelectorAll(`[data-piece="${CSS.escape(id)}"]`)) one.classList.add("selected");
  }
}

for (const row of rows) {
  row.addEventListener("click", (e) => {
    if (!drawing) return;
    if (e.target.closest("a[href*='?cut=']")) e.preventDefault();
    else if (e.target.closest("a")) return;
    mark(row);
  });
}

// A drawing that was laid out anew is marked as the old one was.
drawing?.addEventListener("redrawn", () => {
  const row = document.querySelector(".selected[data-pieces]");
  if (row) mark(row);
});

drawing?.addEventListener("click", (e) => {
  const id = e.target.closest("[data-piece]")?.dataset.piece;
  const row = id && rows.find((r) => r.id && r.dataset.pieces.split(" ").includes(id));
  if (!row) return;
  mark(row);
  row.scrollIntoView({ block: "nearest" });
});
