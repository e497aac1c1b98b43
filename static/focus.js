// Where the focus is while parts of the page are swapped. It is never lost: what had
// it gets it again; a button that has brought new boxes leads to the first of them, and of
// what is gone the box it stood at or else the nearest that is left takes its place.

import { form } from "./form.js";

// whereFocus says what has the focus, so that it can be found in a new page, and
// what is selected in it: a box that was tabbed into is typed over.
export function whereFocus() {
  const on = document.activeElement;
  const { handle, wall, piece } = on?.dataset ?? {};
  const marked = on?.matches?.("input:not([type]), input[type=text], textarea") ? [on.selectionStart, on.selectionEnd, on.value.length] : null;
  return { id: on?.id, name: on?.name, value: on?.value, handle, wall, piece, marked, around: marked ? null : around(on) };
}

export function refocus(at) {
  if (document.activeElement && document.activeElement !== document.body) return;
  const same = again(at), fresh = brought(at);
  if (fresh || !same || same.disabled) return lead(fresh ?? boxOf(at) ?? nearby(at));
  const { handle, piece, marked } = at;
  if (piece || handle) same.setAttribute("tabindex", "0"); // rove.js takes it from the others
  same.focus({ preventScroll: true });
  if (!marked || !same.setSelectionRange) return;
  const [from, to, length] = marked;
  if (length > 0 && from === 0 && to === length) same.select();
  else same.setSelectionRange(from, to);
}

// again finds what had the focus.
function again({ id, name, value, handle, wall, piece }) {
  if (handle) return document.querySelector(`[data-handle="${CSS.escape(handle)}"][data-wall="${wall}"]`);
  if (piece) return document.querySelector(`.pieces [data-piece="${CSS.escape(piece)}"]`);
  if (id) return document.getElementById(id);
  return name && [...document.querySelectorAll("button")].find((b) => b.name === name && b.value === value);
}

// lead takes the focus where it was not before, so it is scrolled to.
function lead(stop) {
  stop?.focus();
  if (stop?.matches("input:not([type]), input[type=text]")) stop.select();
}

// stops are what the tab key comes to, but for the drawing and the helps of fields.
const stops = (part) => [...(part?.querySelectorAll("a[href], button:not([popovertarget]), input:not([type=hidden]), select, textarea, summary") ?? [])];
const keyOf = (stop) => stop.id || `${stop.name ?? ""} ${stop.value ?? stop.getAttribute("href") ?? ""}`;
const open = (stop) => !stop.disabled && stop.checkVisibility();

// around is what a control stands in and beside: the parts of the page round it and the other
// stops, the nearest first. Of a button in the survey also the boxes that there are.
function around(on) {
  if (!on || on === document.body || on.closest("svg")) return null;
  const parts = [], all = stops(document), here = all.indexOf(on);
  for (let up = on.parentElement; up; up = up.parentElement) if (up.id) parts.push(up.id);
  const near = all.map((stop, i) => [Math.abs(i - here), keyOf(stop)]).sort((a, b) => a[0] - b[0]).map(([, key]) => key);
  const boxes = on.matches("#survey button[name=do]") ? new Set(stops(form()).map((box) => box.name)) : null;
  return { parts, near, boxes, step: on.closest("details.step")?.id, field: on.closest(".asked")?.dataset.field };
}

// boxOf is the box at which a button stood, as one that answers a doubt does.
function boxOf({ around }) {
  const box = around?.field && document.getElementById(around.field);
  return box && open(box) ? box : null;
}

// brought is the first box that a button of the survey has brought, in its own step if there is one: another step may
// have a new box too, as of a range that was typed into one.
function brought({ around }) {
  const fresh = around?.boxes ? stops(form()).filter((box) => box.matches("input, select") && !around.boxes.has(box.name) && open(box)) : [];
  return fresh.find((box) => box.closest("details.step")?.id === around.step) ?? fresh[0];
}

// nearby is what stands nearest to where a control was that is gone.
function nearby({ around }) {
  for (const id of around?.parts ?? []) {
    const there = new Map(stops(document.getElementById(id)).filter(open).map((stop) => [keyOf(stop), stop]));
    if (there.size) return there.get(around.near.find((key) => there.has(key))) ?? there.values().next().value;
  }
  return null;
}
