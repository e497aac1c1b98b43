// The form of the survey: what it holds, what is said of it, and where the
// focus is while parts of the page are swapped. Knows nothing of saving.

export const form = () => document.getElementById("survey");
export const say = (text) => { document.getElementById("status").textContent = text; };

// parts are what the page has of the server's, each as id=sum, so that only what
// has changed is sent again.
const sums = new Map();

export const have = () => [...[...sums].map(([id, sum]) => `${id}=${sum}`), ...walls().map((wall) => `${wall.id}=${wall.dataset.hash}`)].join(" ");

const walls = () => [...document.querySelectorAll("#paper .wall[data-hash]")];

export function noted(answer) {
  for (const one of (answer.headers.get("X-Parts") ?? "").split(" ").filter(Boolean)) {
    const at = one.lastIndexOf("=");
    sums.set(one.slice(0, at), one.slice(at + 1));
  }
}

// unknown says that parts have been put there by other means.
export function unknown(...ids) { for (const id of ids) sums.delete(id); }

// request is a form as it stands; the answer is to show the place looked at.
export function request(from, button) {
  const body = new URLSearchParams(new FormData(from));
  if (button?.name) body.set(button.name, button.value);
  const url = new URL(from.action);
  url.search = location.search;
  return { url, body, whole: from !== form() || Boolean(button?.value) };
}

// whereFocus says what has the focus, so that it can be found in a new page, and
// what is selected in it: a box that was tabbed into is typed over.
export function whereFocus() {
  const on = document.activeElement;
  const { handle, wall, piece } = on?.dataset ?? {};
  const marked = on?.matches?.("input:not([type]), input[type=text], textarea") ? [on.selectionStart, on.selectionEnd, on.value.length] : null;
  return { id: on?.id, name: on?.name, value: on?.value, handle, wall, piece, marked };
}

export function refocus({ id, name, value, handle, wall, piece, marked }) {
  if (document.activeElement && document.activeElement !== document.body) return;
  const same = handle ? document.querySelector(`[data-handle="${CSS.escape(handle)}"][data-wall="${wall}"]`)
    : piece ? document.querySelector(`.pieces [data-piece="${CSS.escape(piece)}"]`)
    : id ? document.getElementById(id)
    : name && [...document.querySelectorAll("button")].find((b) => b.name === name && b.value === value);
  if (piece || handle) same?.setAttribute("tabindex", "0"); // rove.js takes it from the others
  same?.focus({ preventScroll: true });
  if (!marked || !same?.setSelectionRange) return;
  const [from, to, length] = marked;
  if (length > 0 && from === 0 && to === length) same.select();
  else same.setSelectionRange(from, to);
}
