// The bench without reloads. The server renders every state; this posts the
// form, takes the page that comes back, and swaps in what changed. Text that
// somebody is typing is never touched. Without this script the form posts.

const form = () => document.getElementById("survey");
const status = () => document.getElementById("status");

const PAUSE = 500; // ms without a key before an edit is sent
const AGAIN = 3000; // ms before the server is tried again

let timer = 0;
let sending = false;
let waiting = null; // the newest request that has not been sent
let answered = ""; // the last form that was answered, so that leaving a box sends nothing twice

const say = (text) => { status().textContent = text; };

// released waits until no finger or button is down: a control must not be
// swapped between press and click.
let pressed = false;
addEventListener("pointerdown", () => { pressed = true; }, true);
for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => { pressed = false; }, true);

async function released() {
  while (pressed) await new Promise((done) => setTimeout(done, 30));
  await new Promise((done) => setTimeout(done, 0)); // the click comes after the release
}

// edited sends the form once the person pauses.
function edited(pause) {
  say("Not saved yet");
  clearTimeout(timer);
  timer = setTimeout(() => send(() => request(form())), pause);
}

function request(from, button) {
  const body = new URLSearchParams(new FormData(from));
  if (button?.name) body.set(button.name, button.value);
  return { url: from.action, body, whole: Boolean(button) };
}

// send posts one request at a time: each edit names the revision it is made
// on, so the next one has to wait for the answer. Of several only the last is
// sent; answers that are older than it are not shown.
async function send(make) {
  clearTimeout(timer);
  waiting = make;
  if (sending) return;
  sending = true;
  while (waiting) {
    const next = waiting;
    waiting = null;
    const asked = next();
    if (!await post(asked)) {
      waiting ??= next;
      await new Promise((done) => setTimeout(done, AGAIN));
    }
  }
  sending = false;
}

async function post({ url, body, whole }) {
  let answer, text;
  try {
    answer = await fetch(url, { method: "POST", body, headers: { "X-Bench": "live" } });
    text = await answer.text();
  } catch {
    say("Not saved: the server cannot be reached. What you typed is kept here; trying again.");
    return false;
  }
  const page = new DOMParser().parseFromString(text, "text/html");
  if (answer.status === 409) { // two edits at odds: the page shows both
    document.title = page.title;
    document.body.replaceWith(page.body);
    return true;
  }
  if (!page.getElementById("live")) {
    say(page.querySelector("h1")?.textContent ?? "Not saved");
    return true;
  }
  await released();
  if (waiting) takeRevision(page);
  else show(page, whole, body);
  return true;
}

// settled notes what the form holds once an answer is in it.
function settled() { answered = String(request(form()).body); }

function takeRevision(page) {
  const now = page.querySelector("input[name=revision]").value;
  for (const box of document.querySelectorAll("input[name=revision]")) box.value = now;
}

// show swaps the drawing and, after a button, the form; after typing only what
// the form says about the fields.
function show(page, whole, sent) {
  const focus = document.activeElement;
  const at = { id: focus?.id, value: focus?.value, name: focus?.name, handle: focus?.dataset?.handle, wall: focus?.dataset?.wall };
  const open = [...document.querySelectorAll("details[open]")].map((d) => d.id).filter(Boolean);
  takeRevision(page);
  for (const id of ["live", "more", "jobtitle"]) swap(page, id);
  for (const id of ["undo", "redo"]) {
    document.getElementById(id).disabled = page.getElementById(id).disabled;
  }
  reachable();
  say(page.getElementById("status").textContent);
  document.title = page.title;
  if (whole) form().replaceWith(page.getElementById("survey"));
  for (const id of open) document.getElementById(id)?.setAttribute("open", "");
  if (!whole) {
    told(page, sent);
  }
  if (whole || document.activeElement?.value === sent.get(document.activeElement?.name)) settled();
  refocus(at);
}

function swap(page, id) {
  document.getElementById(id).replaceWith(page.getElementById(id));
}

// told copies how each field was understood, and each section's line. A field
// nobody has touched since takes the server's text: a width takes the readings
// at its end along.
function told(page, sent) {
  form().elements.filled.value = page.querySelector("input[name=filled]").value;
  for (const fresh of page.querySelectorAll(".said, .line[id]")) {
    const old = document.getElementById(fresh.id);
    if (old && old.innerHTML !== fresh.innerHTML) old.replaceWith(fresh);
  }
  for (const box of form().querySelectorAll("input[id], select[id]")) {
    const fresh = page.getElementById(box.id);
    if (!fresh) continue;
    box.toggleAttribute("aria-invalid", fresh.hasAttribute("aria-invalid"));
    if (box !== document.activeElement && box.value === sent.get(box.name)) box.value = fresh.value;
  }
}

function refocus({ id, name, value, handle, wall }) {
  if (document.activeElement && document.activeElement !== document.body) return;
  const same = handle ? document.querySelector(`[data-handle="${CSS.escape(handle)}"][data-wall="${wall}"]`)
    : id ? document.getElementById(id)
    : [...document.querySelectorAll("button")].find((b) => b.name === name && b.value === value);
  same?.focus({ preventScroll: true });
}

document.addEventListener("input", (e) => {
  if (e.target.dataset.pin) return slid(e.target);
  if (e.target.form === form() && e.target.matches("input:not([type=checkbox])")) edited(PAUSE);
});

document.addEventListener("change", (e) => {
  if (e.target.dataset.pin) return pin(e.target);
  if (e.target.form !== form()) return;
  if (e.target.matches("select, [type=checkbox]")) {
    return send(() => ({ ...request(form()), whole: true })); // the choice decides which fields there are
  }
  if (String(request(form()).body) !== answered) edited(0);
});

document.addEventListener("submit", (e) => {
  const from = e.target;
  if (from !== form() && !("live" in from.dataset)) return;
  e.preventDefault();
  say("Saving");
  const button = e.submitter ?? { name: "do", value: "" };
  send(() => request(from, button));
});

// slid tells where the start would go; pin sends it when it is let go.
function slid(range) {
  const text = `${range.dataset.is} at ${tape(range.value, range.dataset.per)}`;
  range.setAttribute("aria-valuetext", text);
  document.querySelector(`output[for="${range.id}"]`).textContent = text;
}

function pin(range) {
  act(`pin ${range.dataset.pin} ${range.dataset.is}=${tape(range.value, range.dataset.per)}`);
}

// act sends the form with what a button would ask for.
function act(value) {
  say("Saving");
  send(() => request(form(), { name: "do", value }));
}

// tape writes a count of steps as a tape reads: 519 at 16 an inch is 32 7/16.
function tape(count, per) {
  const n = Number(count), of = Number(per);
  const whole = Math.trunc(Math.abs(n) / of);
  let part = Math.abs(n) % of, den = of;
  while (part && part % 2 === 0 && den % 2 === 0) { part /= 2; den /= 2; }
  const text = [whole || !part ? whole : "", part ? `${part}/${den}` : ""].filter((t) => t !== "").join(" ");
  return n < 0 ? `-${text}` : text;
}

// A piece in the drawing and its row in the table select each other.
document.addEventListener("click", (e) => {
  const piece = e.target.closest?.("[data-piece]");
  if (piece) select(piece.dataset.piece);
});

function select(id) {
  for (const old of document.querySelectorAll(".selected")) old.classList.remove("selected");
  for (const one of document.querySelectorAll(`[data-piece="${CSS.escape(id)}"]`)) one.classList.add("selected");
  const row = document.getElementById(`row-${id}`);
  if (row?.closest("details").open) row.scrollIntoView({ block: "nearest" });
}

// A flag on the drawing opens its finding.
document.addEventListener("click", (e) => {
  const flag = e.target.closest?.("#drawing [data-finding]");
  const finding = flag && document.getElementById(`finding-${flag.dataset.finding}`);
  if (!finding) return;
  finding.closest("details").open = true;
  finding.querySelector("details").open = true;
  finding.querySelector("summary").focus({ preventScroll: true });
  finding.scrollIntoView({ block: "center" });
});

// A link to a field opens the section that holds it.
document.addEventListener("click", (e) => {
  const link = e.target.closest?.(".faults a");
  if (!link) return;
  const field = document.getElementById(decodeURIComponent(link.hash.slice(1)));
  if (!field) return;
  e.preventDefault();
  field.closest("details")?.setAttribute("open", "");
  field.focus();
});

addEventListener("beforeunload", (e) => { if (sending || waiting) e.preventDefault(); });

// A row of keys for what a phone's keyboard hides.
const KEYS = ["½", "¼", "⅛", "/", "′", "″", "-", "␣"];
const touch = matchMedia("(pointer: coarse)");
let typing = null;

document.addEventListener("focusin", (e) => {
  const keys = document.getElementById("keys");
  if (!keys) return;
  typing = e.target.matches("input.length") ? e.target : typing;
  keys.hidden = !touch.matches || !e.target.matches("input.length");
  if (!keys.childElementCount) keys.append(...KEYS.map(key));
});

function key(text) {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = text;
  button.setAttribute("aria-label", text === "␣" ? "space" : text);
  button.addEventListener("pointerdown", (e) => { // the box keeps the focus
    e.preventDefault();
    typing.setRangeText(text === "␣" ? " " : text, typing.selectionStart, typing.selectionEnd, "end");
    typing.dispatchEvent(new Event("input", { bubbles: true }));
  });
  return button;
}

// Handles on the drawing: dragged, or nudged with the arrow keys. A handle
// follows the finger in steps of the tape; the job changes once, when it is
// let go. Esc puts it back.
let held = null;

// grab reads where a handle stands, in steps of the tape.
function grab(handle) {
  const svg = handle.ownerSVGElement, { step, big } = scale();
  const count = (mm) => Math.round(Number(mm) / step);
  return {
    handle, step, big, x: count(handle.dataset.x), y: count(handle.dataset.y), dx: 0, dy: 0,
    paper: svg.dataset.paper / svg.dataset.real * 1000, // micrometres drawn per millimetre of wall
    pixel: svg.viewBox.baseVal.width / svg.getBoundingClientRect().width, // micrometres drawn per pixel
  };
}

// scale gives the step of the tape in millimetres, and how many a big step is.
function scale() {
  const { unit, per } = document.getElementById("live").dataset;
  return { per, step: (unit === "in" ? 25.4 : 1) / per, big: unit === "in" ? 8 : 10 };
}

function moveBy(h, dx, dy) {
  h.dx = h.handle.dataset.axis.includes("x") ? dx : 0;
  h.dy = h.handle.dataset.axis.includes("y") ? dy : 0;
  const drawn = h.step * h.paper;
  h.handle.setAttribute("transform", `translate(${h.dx * drawn} ${-h.dy * drawn})`);
  h.handle.classList.add("moved");
  say(`${h.handle.getAttribute("aria-label")}: ${where(h).replace(";", ", ")}`);
}

function where(h) {
  const { per } = scale();
  const x = tape(h.x + h.dx, per), y = tape(h.y + h.dy, per);
  return { x, y, xy: `${x};${y}` }[h.handle.dataset.axis];
}

function letGo(h) {
  held = null;
  if (!h.dx && !h.dy) return putBack(h);
  const wall = Number(h.handle.dataset.wall) + 1;
  let name = h.handle.dataset.handle;
  if (name === "start") name = document.getElementById(`slide-${wall - 1}`).dataset.is;
  act(`place ${wall} ${name}=${where(h)}`);
}

function putBack(h) {
  held = null;
  h.handle.removeAttribute("transform");
  h.handle.classList.remove("moved");
  say("");
}

document.addEventListener("pointerdown", (e) => {
  const handle = e.target.closest?.(".handle");
  if (!handle || e.button) return;
  e.preventDefault();
  handle.focus();
  handle.setPointerCapture(e.pointerId);
  held = { ...grab(handle), from: e };
});

document.addEventListener("pointermove", (e) => {
  if (!held?.from) return;
  const steps = (pixels) => Math.round(pixels * held.pixel / held.paper / held.step);
  moveBy(held, steps(e.clientX - held.from.clientX), steps(held.from.clientY - e.clientY));
});

document.addEventListener("pointerup", () => { if (held?.from) letGo(held); });
document.addEventListener("pointercancel", () => { if (held) putBack(held); });

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

document.addEventListener("keydown", (e) => {
  if (e.key === "Escape" && held) return putBack(held);
  const handle = e.target.closest?.(".handle"), way = ARROWS[e.key];
  if (!handle || !way) return;
  e.preventDefault();
  held ??= grab(handle);
  const by = e.shiftKey ? held.big : 1;
  moveBy(held, held.dx + way[0] * by, held.dy + way[1] * by);
  clearTimeout(timer);
  timer = setTimeout(() => held && letGo(held), PAUSE);
});

// Handles are reached with the tab key where there is a script to move them.
function reachable() {
  for (const handle of document.querySelectorAll(".handle")) handle.setAttribute("tabindex", "0");
}
reachable();
