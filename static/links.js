// Links inside the page: a flag opens its finding, a fault or a doubt its field, and what
// takes long to work out is asked for when it is opened.

const REST = 300; // ms without an edit before something long is asked for

document.addEventListener("click", (e) => {
  const flag = e.target.closest?.("#drawing [data-finding]");
  const finding = flag && document.getElementById(`finding-${flag.dataset.finding}`);
  if (!finding) return;
  finding.closest("details").open = true;
  finding.querySelector("details").open = true;
  finding.querySelector("summary").focus({ preventScroll: true });
  finding.scrollIntoView({ block: "center" });
});

document.addEventListener("click", (e) => {
  const link = e.target.closest?.(".faults a, #line-count a");
  const field = link && document.getElementById(decodeURIComponent(link.hash.slice(1)));
  if (!field) return;
  e.preventDefault();
  field.closest("details")?.setAttribute("open", "");
  field.focus();
});

// To the survey means to the first box of it that is not measured yet, where there is one.
document.addEventListener("click", (e) => {
  const box = e.target.closest?.('a[href="#survey"]') && document.querySelector("#survey .asked input.none");
  if (!box) return;
  e.preventDefault();
  box.closest("details").open = true;
  box.focus();
});

document.addEventListener("toggle", async (e) => {
  const place = e.target.open && e.target.querySelector?.(":scope > [data-load]");
  if (!place || place.hasAttribute("aria-busy")) return;
  place.setAttribute("aria-busy", "true");
  place.textContent = "Working it out";
  await new Promise((done) => setTimeout(done, REST));
  if (!place.isConnected) return; // an edit has come meanwhile, and opened it anew
  try {
    const page = new DOMParser().parseFromString(await (await fetch(place.dataset.load)).text(), "text/html");
    const told = page.getElementById(place.id);
    place.replaceChildren(...(told ?? page.getElementById("main")).childNodes); // or what went wrong
    if (told) delete place.dataset.load;
  } catch {
    place.textContent = "The server cannot be reached. Close and open this again.";
  }
  place.removeAttribute("aria-busy");
  document.dispatchEvent(new Event("loaded"));
}, true);
