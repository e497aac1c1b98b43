// An edit: at each key the drawing follows (look.js), and once the person pauses
// the form is posted and what has changed is swapped in. Text
// that somebody is typing is never touched.

import { put } from "./paper.js";
import * as look from "./look.js";
import { form, say, request, asks, noted, unknown } from "./form.js";
import { whereFocus, refocus } from "./focus.js";
import * as refusals from "./refused.js";

export const PAUSE = 400; // ms without a key before an edit is sent
const LONGER = 1500; // ms after the last key, where what stands there is likely the beginning of a size
const AGAIN = 3000; // ms before the server is tried again

let timer = 0;
let keyed = 0; // when the last key was
let pending = false; // an edit waits for the person to pause
let sending = false;
let lost = false; // the server cannot be reached
const waiting = []; // what has not been sent: every button that was pressed and, last, the newest edit
let doing = ""; // what a button of the survey asked for that is being answered
let answered = ""; // the last form that was answered, so that leaving a box sends nothing twice

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
  pending = true;
  keyed = pause && performance.now();
  timer = setTimeout(() => send(() => request(form())), pause);
}

// A person who looks for the next digit is not one who has finished; who leaves the box is.
document.addEventListener("later", () => {
  if (!keyed) return;
  clearTimeout(timer);
  timer = setTimeout(() => send(() => request(form())), LONGER - (performance.now() - keyed));
});

// act sends the form with what a button would ask for. Where it was held on the
// drawing, a refusal puts it back and leaves the form alone.
export function act(value, held = false) {
  say("Saving");
  send(() => ({ ...request(form(), { name: "do", value }), held }), value);
}

// send posts one request at a time: each edit names the revision it is made
// on, so the next one has to wait for the answer. Every button that was pressed has its
// turn; of edits, each of which is all of the form, only the last is sent, and a button
// takes them along. Answers that are older than what waits are not shown.
async function send(make, button = "") {
  clearTimeout(timer);
  pending = false;
  keyed = 0;
  if (waiting.length && outdated(waiting.at(-1).button, button)) waiting.pop();
  waiting.push({ make, button });
  if (sending) return;
  sending = true;
  while (waiting.length) {
    const next = waiting.shift();
    const asked = next.make();
    if (!asked) continue;
    doing = asked.body.get("do") ?? "";
    const through = await post(asked);
    doing = "";
    if (!through) {
      if (next.button || !waiting.length) waiting.unshift(next);
      await new Promise((done) => setTimeout(done, AGAIN));
    }
  }
  sending = false;
}

// outdated tells whether what waits need not be asked for once something else is: an edit, and what
// puts the same thing elsewhere, as a handle that is nudged on.
function outdated(old, button) {
  const [what, to] = old.split("=", 2);
  return !old || to !== undefined && button.startsWith(`${what}=`);
}

async function post(asked) {
  let answer, text;
  try {
    answer = await fetch(asked.url, { method: "POST", body: asked.body, headers: { "X-Bench": "live", ...asks() }, keepalive: Boolean(asked.leaving) });
    text = await answer.text();
    lost = false;
  } catch {
    lost = true;
    refusals.keep();
    say("Not saved: the server cannot be reached. What you typed is kept here; trying again.");
    return false;
  }
  const page = new DOMParser().parseFromString(text, "text/html");
  if (answer.status === 409) { // two edits at odds: the page shows both
    if (waiting.length) return true; // and what was typed since, once that has been sent
    document.title = page.title;
    document.body.replaceWith(page.body);
    document.querySelector("h1").focus();
    clearTimeout(timer); // a box that lost the focus by this asks to be sent, and is gone
    return true;
  }
  if (!page.getElementById("state")) {
    say([...page.querySelectorAll("main h1, main h1 ~ p")].slice(0, 2).map((told) => told.textContent).join(": ") || "Not saved");
    return true;
  }
  await released();
  if (asked.held && answer.status === 422) refused(page);
  else if (waiting.length && !asked.whole) {
    takeRevision(page);
    swap(page, "state");
    told(page, asked.body);
    unknown("survey");
    document.dispatchEvent(new Event("told"));
  } else show(page, asked, answer);
  return true;
}

// refused tells why something cannot stand where it was let go.
function refused(page) {
  const said = [...document.querySelectorAll("#clash > *")];
  look.putBack();
  document.getElementById("clash").replaceChildren(...(said.length ? said : page.querySelectorAll(".faults li")));
  say("Not moved");
}

// solved says that the room is solved, and how well, to who does not see the drawing: anew each time, also where it is as before.
function solved() {
  const told = document.getElementById("solved");
  told.textContent = "";
  requestAnimationFrame(() => { told.textContent = document.getElementById("state").dataset.solved; });
}

// settled notes what the form holds once an answer is in it.
function settled() { answered = String(request(form()).body); }

function takeRevision(page) {
  const now = page.querySelector("input[name=revision]").value;
  for (const box of document.querySelectorAll("input[name=revision]")) box.value = now;
}

// show swaps what has changed and, after a button, the form; after typing only
// what the form says about the fields.
function show(page, { whole, body }, answer) {
  const at = whereFocus();
  const open = [...document.querySelectorAll("details[open]")].map((d) => d.id).filter(Boolean);
  look.stop();
  look.forget();
  takeRevision(page);
  noted(answer);
  for (const id of ["guess", "anew", "held", "answers", "faults", "tools", "paper", "insides", "wallcuts", "card", "clash", "wished", "pinned", "more", "jobtitle", "which", "undo", "redo", "state"]) swap(page, id);
  say(page.getElementById("status").textContent);
  solved();
  document.title = page.title;
  if (whole) swapForm(page, body);
  for (const id of open) document.getElementById(id)?.setAttribute("open", "");
  if (!whole) {
    told(page, body);
    unknown("survey");
  }
  document.dispatchEvent(new Event("redrawn"));
  if (whole || document.activeElement?.value === body.get(document.activeElement?.name)) settled();
  refocus(at);
  refusals.keep();
}

// swapForm swaps the form. What was typed since it was sent stays.
function swapForm(page, sent) {
  const since = [...form().querySelectorAll("input[name]:not([type=checkbox], [type=hidden])")]
    .filter((box) => sent.has(box.name) && box.value !== sent.get(box.name)).map((box) => [box.name, box.value]);
  swap(page, "survey");
  for (const [name, value] of since) {
    const box = form().querySelector(`input[name="${CSS.escape(name)}"]:not([type=hidden])`);
    if (box) box.value = value;
  }
}

function swap(page, id) {
  const fresh = page.getElementById(id), old = document.getElementById(id);
  if (!fresh || !old) return;
  if (id === "paper") put(fresh, old, false);
  else old.replaceWith(fresh);
}

// told copies how each field was understood, each section's line, and what is said of where things stand. A field
// nobody has touched since takes the server's text: a width takes the readings
// at its end along, and what another window has changed would else be put back by the next edit.
function told(page, sent) {
  for (const fresh of page.querySelectorAll(".said, .line[id], #survey .hint[id]")) {
    const old = document.getElementById(fresh.id);
    if (old && old.innerHTML !== fresh.innerHTML) old.replaceWith(fresh);
  }
  for (const box of form().querySelectorAll("input[id], select[id]")) {
    const fresh = page.getElementById(box.id);
    if (!fresh) continue;
    if (fresh.hasAttribute("aria-invalid")) box.setAttribute("aria-invalid", "true"); // an empty one says no to a screen reader
    else box.removeAttribute("aria-invalid");
    if (box.name.startsWith("right ")) continue; // counted from a corner it stays as typed: the job has it from the other end
    if (!typedIn(box) && box.value === sent.get(box.name)) box.value = fresh.value;
    if (box.value === fresh.value) box.defaultValue = fresh.value;
  }
  counted(page);
}

// typedIn tells whether somebody is typing in a box: it has the focus, and holds other text than the server gave it last.
function typedIn(box) { return box === document.activeElement && box.matches("input") && box.value !== box.defaultValue; }

// counted takes over what is measured and what is doubted: the head of the
// survey, and at each question all but the box itself.
function counted(page) {
  const head = page.querySelector(".survey-head"), old = document.querySelector(".survey-head");
  if (head && old && head.innerHTML !== old.innerHTML) old.replaceWith(head);
  for (const fresh of page.querySelectorAll("#survey .asked")) {
    const field = form().querySelector(`.asked[data-field="${CSS.escape(fresh.dataset.field)}"]`);
    const box = field?.querySelector("input"), now = fresh.querySelector("input");
    if (!box || !now) continue;
    field.className = fresh.className + (field.classList.contains("now") ? " now" : ""); // the question that is asked alone stays in sight
    box.className = now.className;
    box.placeholder = now.placeholder;
    for (const gone of field.querySelectorAll(".doubtbox, .box > button")) if (gone !== document.activeElement) gone.remove();
    const button = fresh.querySelector(".box > button");
    if (button && !field.querySelector(".box > button")) field.querySelector(".box").append(button);
    field.append(...fresh.querySelectorAll(".doubtbox"));
  }
}

document.addEventListener("input", (e) => {
  if (e.target.form !== form() || !e.target.matches("input:not([type=checkbox])")) return;
  look.typed(e.target.name);
  edited(PAUSE);
});

document.addEventListener("change", (e) => {
  if (!form() || e.target.form !== form()) return;
  if (e.target.matches("select, [type=checkbox]")) {
    const gap = e.target.matches(".leans select") && e.target.closest(".leans").querySelector("input");
    if (gap && !gap.value.trim()) return; // which way a corner leans says nothing before how far
    return send(() => ({ ...request(form()), whole: true })); // the choice decides which fields there are
  }
  if (e.target.matches('[name$=".name"]')) return send(() => ({ ...request(form()), whole: true })); // questions and buttons call a wall or a niche by its name
  if (String(request(form()).body) !== answered) edited(0);
});

document.addEventListener("submit", (e) => {
  const from = e.target;
  if (from !== form() && !("live" in from.dataset)) return;
  e.preventDefault();
  const button = e.submitter ?? { name: "do", value: "" };
  if (from === form() && button.value && button.value === (waiting.at(-1)?.button ?? doing)) return; // pressed twice, as by a double click
  say("Saving");
  send(() => {
    const [now, pressed] = standing(from, button);
    return now && request(now, pressed);
  }, from === form() ? button.value : from.action);
});

// standing is a form and a button of it as they stand when their turn comes: those of the survey may have been
// swapped meanwhile, and a button that is gone or means another thing by now asks for nothing.
function standing(from, button) {
  if (from.id !== "survey") return from.querySelector("button:disabled") ? [] : [from, button]; // nothing more to undo
  if (from.isConnected) return [from, button];
  if (!form()) return [];
  const same = [...form().querySelectorAll("button")].find((b) => b.name === button.name && b.value === button.value && b.textContent === button.textContent && b.ariaLabel === button.ariaLabel);
  return button.value && !same ? [] : [form(), same ?? button];
}

// Who leaves the page, or looks at another, before the pause is over has typed all the same: the edit goes off at once.
// keepalive lets it arrive without the page; browsers take 64 kB at most so.
const MOST_LEFT = 60_000;

function leave() {
  if (!pending || !form()) return;
  refusals.keep();
  send(() => {
    const asked = request(form());
    return { ...asked, leaving: String(asked.body).length < MOST_LEFT };
  });
}

// A link that is pressed right after the last key waits for the answer, so that the browser need not ask whether to
// leave; where something is refused the page stays, for the person to see it, until the link is pressed again.
document.addEventListener("click", async (e) => {
  const link = e.target.closest?.("a[href]");
  if (!link || e.defaultPrevented || e.button || e.metaKey || e.ctrlKey || e.shiftKey || e.altKey || link.target || link.hasAttribute("download")) return;
  if (link.origin !== location.origin || link.pathname === location.pathname || lost || !(pending || sending || waiting.length)) return;
  e.preventDefault();
  leave();
  while (sending && !lost) await new Promise((done) => setTimeout(done, 20));
  if (!lost && !document.querySelector(".fault")) location.assign(link.href);
});

addEventListener("beforeunload", (e) => {
  leave();
  if (sending || waiting.length) e.preventDefault();
});
document.addEventListener("visibilitychange", () => { if (document.hidden) leave(); });

refusals.putBack();
