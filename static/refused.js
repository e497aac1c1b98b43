// What was refused, or typed and not sent, stands in no job. It is kept in this browser until it is taken or
// typed over, and put back into its boxes when the page is opened again: they are sent, and the server says
// once more what is wrong. Where the job has moved on meanwhile a box may mean another thing by now: then it is
// only said. So it is where another file is open by now, in which another job has the same address.

import { form, say } from "./form.js";
import { job } from "./address.js";

const key = () => `refused ${job("")}`;
const state = () => `${document.querySelector("input[name=revision]")?.value} ${document.getElementById("jobtitle")?.textContent}`;
const boxes = () => [...form().querySelectorAll("input[name]:not([type=checkbox], [type=hidden])")];
const called = (box) => box.ariaLabel ?? box.labels?.[0]?.textContent.trim() ?? box.name;

// keep notes what the form holds that is not saved; nothing forgets what was noted.
export function keep() {
  if (!form()) return;
  const left = boxes().filter((box) => box.hasAttribute("aria-invalid") || box.value !== box.defaultValue)
    .map((box) => ({ name: box.name, text: box.value, called: called(box) }));
  try {
    if (left.length) localStorage.setItem(key(), JSON.stringify({ state: state(), left }));
    else localStorage.removeItem(key());
  } catch { /* a browser that keeps nothing */ }
}

function noted() {
  try { return JSON.parse(localStorage.getItem(key())); } catch { return null; }
}

// putBack puts what was kept back into its boxes, as if it were typed.
export function putBack() {
  const was = form() && noted();
  if (!was) return;
  if (was.state !== state()) {
    localStorage.removeItem(key());
    return say(`Not taken when this page was left: ${was.left.map(({ called, text }) => `${called} “${text}”`).join(", ")}`);
  }
  for (const { name, text } of was.left) {
    const box = boxes().find((one) => one.name === name);
    if (!box || box.value === text) continue;
    box.value = text;
    box.dispatchEvent(new Event("input", { bubbles: true }));
  }
}
