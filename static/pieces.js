// One piece: pointed at, tapped or reached with the keys it shows its card; its
// rows in the tables and its place in the drawing select each other. All
// listeners are on the document, however many pieces there are.

import { job, keep, kept } from "./address.js";
import { reveal } from "./zoom.js";
import { reach, step } from "./rove.js";
import { outline, pointed } from "./onwall.js";

const DWELL = 90; // ms the mouse rests on a piece before its card is asked for

let selected = kept("piece") ?? null;
let shown = null; // the piece whose card is shown
let passing = false; // it is selected because the keys came by, and until they leave the drawing
let timer = 0;
const cards = new Map(); // by piece, what was asked for already

// Pieces are on the drawing of the walls, and on those of what is folded out of them.
const pieceOf = (target) => target.closest?.(":is(#drawing, #insides) .piece[data-piece]");
const passedBy = (target) => target.closest?.("#drawing .handle:not(.taken)");
const ofCard = (target) => target.matches?.("#card .piececard") && inDrawing(target.dataset.piece); // its arrow keys lead on from the piece
const inDrawing = (id) => document.querySelector(`:is(#drawing, #insides) .piece[data-piece="${CSS.escape(id)}"]`);

// select marks a piece everywhere and shows its card; null marks none.
function select(id) {
  passing = false;
  selected = id;
  keep("piece", id);
  mark(id ? [id] : []);
  show(id);
}

// mark puts a ring round pieces and shades the rows that hold them.
function mark(ids) {
  for (const old of document.querySelectorAll("tr.selected")) old.classList.remove("selected");
  for (const old of document.querySelectorAll(":is(#drawing, #insides) [aria-selected]")) old.removeAttribute("aria-selected");
  const parts = ids.map(inDrawing).filter(Boolean);
  for (const part of parts) part.setAttribute("aria-selected", "true");
  ringed("rings", parts);
  for (const id of ids) {
    for (const row of document.querySelectorAll(`tr[data-piece="${CSS.escape(id)}"], tr[data-pieces~="${CSS.escape(id)}"]`)) {
      row.classList.add("selected");
      inTable(row);
    }
  }
  if (parts.length === 1) {
    reveal(parts[0]);
    reach(parts[0]);
  }
}

// ringed draws rings round pieces, each on the drawing it is on; none where there are none.
function ringed(name, parts) {
  for (const old of document.querySelectorAll(`:is(#drawing, #insides) .${name}`)) old.remove();
  for (const svg of new Set(parts.map((part) => part.ownerSVGElement))) {
    ring(svg, name, parts.filter((part) => part.ownerSVGElement === svg).map((part) => part.getAttribute("d")));
  }
}

// ring draws outlines over all else, on lines of the ground so that they are seen on any colour; the pieces themselves
// stay where they are.
function ring(svg, name, outlines) {
  svg.querySelector(`.${name}`)?.remove();
  const group = document.createElementNS(svg.namespaceURI, "g");
  group.setAttribute("class", name);
  for (const under of ["ground", ""]) for (const d of outlines) {
    const path = document.createElementNS(svg.namespaceURI, "path");
    path.setAttribute("d", d);
    path.setAttribute("class", under);
    group.append(path);
  }
  svg.append(group);
}

// inTable scrolls a row into its own table's frame, never the page.
function inTable(row) {
  const table = row.closest(".scroll");
  if (!table?.clientHeight) return;
  const box = row.getBoundingClientRect(), at = table.getBoundingClientRect();
  if (box.top < at.top + 40) table.scrollTop += box.top - at.top - 40;
  else if (box.bottom > at.bottom) table.scrollTop += box.bottom - at.bottom;
}

// show puts the card of a piece beside the drawing, on the side away from it.
async function show(id) {
  shown = id;
  const place = document.getElementById("card");
  if (!id) return place.replaceChildren();
  if (place.querySelector(".piececard")?.dataset.piece !== id) {
    if (!cards.has(id)) cards.set(id, fetch(job(`/piece/${encodeURIComponent(id)}`)).then((a) => (a.ok ? a.text() : "")).catch(() => ""));
    const text = await cards.get(id);
    if (shown !== id) return; // another one is shown by now
    put(text);
  }
  aside(id);
}

// put shows a card, with a ring round its tile where that is not drawn by itself.
function put(text) {
  const place = document.getElementById("card"), svg = document.querySelector("#drawing svg");
  place.replaceChildren(...new DOMParser().parseFromString(text, "text/html").body.children);
  const { piece, wall, box } = place.querySelector(".piececard")?.dataset ?? {};
  if (!svg || !piece || !box || inDrawing(piece)) return;
  const d = outline(svg, wall, box.split(" ").map(Number));
  if (d) ring(svg, "rings", [d]);
}

// found shows the card of the tile at a place, on a wall of so many that the
// whole ones are drawn as one.
async function found(part, e) {
  const at = pointed(part, e.clientX, e.clientY);
  if (!at) return;
  const [x, y] = at.map((mm) => mm.toFixed(1));
  const answer = await fetch(job(`/piece?wall=${Number(part.dataset.wall) + 1}&x=${x}&y=${y}`)).catch(() => null);
  if (!answer?.ok) return select(null);
  const text = await answer.text();
  const id = new DOMParser().parseFromString(text, "text/html").querySelector(".piececard").dataset.piece;
  cards.set(id, text);
  select(id);
}

// aside puts the card on the side of the drawing away from the piece, or beside what is
// folded out, on a screen that has room there.
function aside(id) {
  const part = inDrawing(id), place = document.getElementById("card"), folded = part?.closest("#insides figure");
  const frame = (folded ?? document.getElementById("drawing")).getBoundingClientRect();
  const box = part?.getBoundingClientRect();
  const right = !box || box.x + box.width / 2 < frame.x + frame.width / 2;
  place.classList.toggle("right", right && !folded);
  place.classList.toggle("beside", Boolean(folded));
  if (!folded) return;
  const stage = place.parentElement.getBoundingClientRect(), wide = place.offsetWidth;
  const after = frame.right + 8 - stage.left, within = right ? frame.right - stage.left - wide : frame.left - stage.left;
  place.style.setProperty("--over", `${frame.top - stage.top}px`);
  place.style.setProperty("--along", `${after + wide <= stage.width ? after : within}px`);
}

document.addEventListener("pointerover", (e) => {
  if (e.pointerType !== "mouse" || e.buttons) return;
  const part = pieceOf(e.target);
  clearTimeout(timer);
  if (!part && e.target.closest?.("#stage, #insides figure")) return;
  if (!part && shown === selected) return;
  timer = setTimeout(() => {
    ringed("hover", part?.isConnected ? [part] : []);
    show(part ? part.dataset.piece : selected);
  }, DWELL);
});

document.addEventListener("click", (e) => {
  const part = pieceOf(e.target), row = e.target.closest?.(":is(#more, #wallcuts) :is(tr[data-piece], tr[data-pieces])");
  const named = e.target.closest?.("#more .ids a, #more tr[data-piece] a");
  if (part) return focusOn(part);
  if (e.target.matches?.("#drawing .piece.whole")) return found(e.target, e);
  if (e.target.closest?.("[data-close]")) return close(e);
  if (!row || (e.target.closest("a") && !named)) return;
  e.preventDefault();
  const id = named?.dataset.piece ?? row.dataset.piece;
  if (id) return select(id);
  select(null);
  mark(row.dataset.pieces.split(" "));
});

// focusOn goes to a piece, or to a handle on the way to the next.
function focusOn(part) {
  reach(part);
  part.focus({ preventScroll: true });
  if (part.closest("#insides")) part.scrollIntoView({ block: "nearest", inline: "nearest" });
  if (part.dataset.piece) select(part.dataset.piece);
  else reveal(part);
}

function close(e) {
  e.preventDefault();
  const part = shown && inDrawing(shown);
  if (document.activeElement?.closest("#card")) part?.focus({ preventScroll: true });
  select(null);
}

document.addEventListener("focusin", (e) => {
  const part = pieceOf(e.target);
  if (part && part.dataset.piece !== selected && part.matches(":focus-visible")) pass(part);
  if (passing && !e.target.closest?.("#card, #drawing, #insides")) select(null);
});

// pass selects a piece for as long as the keys stay on the drawing or its card.
function pass(part) {
  select(part.dataset.piece);
  passing = true;
}

document.addEventListener("keydown", (e) => {
  if (e.key === "Escape" && shown && (pieceOf(e.target) || e.target.closest?.("#card") || e.target === document.body)) return close(e);
  const part = pieceOf(e.target) ?? passedBy(e.target) ?? ofCard(e.target);
  if (!part || e.altKey || e.metaKey) return;
  if (part.dataset.piece && (e.key === "Enter" || e.key === " ")) {
    e.preventDefault();
    passing = false;
    return show(part.dataset.piece).then(() => document.querySelector("#card .piececard")?.focus());
  }
  const next = step(part, e);
  if (!next) return;
  e.preventDefault();
  focusOn(next);
  next.scrollIntoView({ block: "nearest", inline: "nearest" }); // the window may be lower than the wall
  passing = Boolean(next.dataset.piece);
});

function redrawn() {
  cards.clear();
  if (!selected || !document.getElementById("card")) return;
  const card = document.querySelector("#card .piececard");
  mark([selected]);
  if (card?.dataset.piece === selected) put(card.outerHTML);
  else show(selected);
  aside(selected);
}
document.addEventListener("redrawn", redrawn);
document.addEventListener("loaded", () => { if (selected) mark([selected]); });

// An answer marks what it is about, where it leads to no other page.
document.addEventListener("click", (e) => {
  const answer = e.target.closest?.("#answers [data-marks]");
  if (!answer || e.ctrlKey || e.metaKey || new URL(answer.href).search.includes("wall=")) return;
  e.preventDefault();
  const ids = answer.dataset.marks.split(" ");
  document.getElementById("drawing").scrollIntoView({ block: "nearest" });
  if (ids.length === 1) return select(ids[0]);
  select(null);
  mark(ids);
});

redrawn();
