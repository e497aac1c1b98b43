// Outside the bench too, drawings are laid out for the width of their frame, which only the browser
// knows. A cookie that the frame names tells the server, and the frame says what its drawing was laid
// out for; where that is another width they are asked for anew, and with them what says which wall is
// shown. The frames themselves stay, and what is typed beside them.

const LEAST = 280; // pixels: no drawing is laid out narrower
const NEAR = 12; // pixels: a drawing so little wider or narrower stays
const PAUSE = 200; // ms after the last change of the window

async function fit() {
  const frame = document.querySelector("[data-frame]"), width = Math.max(frame?.clientWidth, LEAST);
  if (!frame?.clientWidth || Math.abs(width - frame.dataset.wide) < NEAR) return;
  document.cookie = `${frame.dataset.frame}=${width}; path=/; SameSite=Strict`;
  const answer = await fetch(location.href).catch(() => null);
  if (!answer?.ok) return;
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const old of document.querySelectorAll("[data-frame], [data-laid]")) {
    const fresh = page.getElementById(old.id);
    if (!fresh) continue;
    old.replaceChildren(...fresh.childNodes);
    for (const { name, value } of fresh.attributes) old.setAttribute(name, value);
    old.dispatchEvent(new Event("redrawn"));
  }
}

let timer = 0;
addEventListener("resize", () => {
  clearTimeout(timer);
  timer = setTimeout(fit, PAUSE);
});
fit();
