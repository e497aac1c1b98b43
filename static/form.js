// The form of the survey: what it holds, and what is said of it. Knows nothing of saving.

export const form = () => document.getElementById("survey");
export const say = (text) => { document.getElementById("status").textContent = text; };
export const PUT_BACK = "Put back as it was"; // what is said of a move that was given up

// parts are what the page has of the server's, each as id=sum, so that only what
// has changed is sent again.
const sums = new Map();

const have = () => [...[...sums].map(([id, sum]) => `${id}=${sum}`), ...walls().map((wall) => `${wall.id}=${wall.dataset.hash}`)].join(" ");

// asks are the headers of an edit or a look: what the page has, and whether one of the folds is open
// that tell why the set-out is as it is.
export const asks = () => ({ "X-Have": have(), ...(document.querySelector("details[data-told][open]") && { "X-Told": "open" }) });

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
