// Looks: while something is held or typed, the server is asked what would come
// of it, and its drawing is shown as soon as it is there. Nothing is saved. One look is
// asked for at a time; of those that wait only the newest is asked for. Looks are
// numbered, and an answer to one from before the thing was let go is dropped.

import { form, request, say, asks, noted, unknown } from "./form.js";
import { whereFocus, refocus } from "./focus.js";
import { put } from "./paper.js";
import { job } from "./address.js";

let number = 0; // of the last look
let since = 0; // answers up to this one are stale
let waiting = null;
let flying = null; // what stops the look that is asked for
const before = new Map(); // by id, the parts of the page that looks have replaced

// at asks what would come of doing something.
export function at(doing) {
  waiting = { doing };
  if (!flying) ask();
}

// typed asks what would come of the form as it stands, a key after the other.
// What does not read yet changes nothing, nor does a size that would be far too many pieces if it
// were all of it, as the “1” of “12”: of that a "later" tells.
export function typed(field) {
  waiting = { doing: "", field };
  if (!flying) ask();
}

async function ask() {
  while (waiting) {
    const { doing, field } = waiting;
    waiting = null;
    flying = new AbortController();
    const mine = ++number;
    try {
      const { body } = request(form(), { name: "do", value: doing });
      const answer = await fetch(job("/look") + location.search, { method: "POST", body, signal: flying.signal, headers: { "X-Look": mine, ...asks(), ...(field && { "X-Typing": encodeURI(field) }) } });
      const text = await answer.text();
      if (field && !waiting && answer.headers.get("X-Later")) document.dispatchEvent(new Event("later"));
      show(text, answer, field);
    } catch (why) {
      if (why.name !== "AbortError" && !field) say("The drawing cannot follow: the server cannot be reached");
    }
    flying = null;
  }
}

// show puts each part of the answer in the place of the one with its id.
function show(text, answer, field) {
  if (!(Number(answer.headers.get("X-Look")) > since) || (field && !answer.ok)) return;
  const page = new DOMParser().parseFromString(text, "text/html");
  const focus = whereFocus();
  noted(answer);
  for (const part of page.querySelectorAll("body > [id]")) {
    const old = document.getElementById(part.id);
    if (!old || old.closest("[data-keeps]")) continue;
    const back = !field && !before.has(part.id);
    if (back) before.set(part.id, old);
    if (part.id === "paper") put(part, old, back);
    else old.replaceWith(part);
  }
  document.dispatchEvent(new Event("redrawn"));
  refocus(focus);
}

// stop drops what is asked for: the thing has been let go.
export function stop() {
  since = number;
  waiting = null;
  flying?.abort();
}

// putBack shows the page as it was before the first look.
export function putBack() {
  stop();
  const focus = whereFocus();
  for (const [id, old] of before) document.getElementById(id)?.replaceWith(old);
  unknown("answers", "paper", "insides");
  forget();
  document.dispatchEvent(new Event("redrawn"));
  refocus(focus);
}

// forget takes the page as it is for good.
export function forget() { before.clear(); }
