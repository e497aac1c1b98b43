// The address holds the place: the wall, the piece and the part of the drawing
// looked at, so that back, reload and a link find it again.

export const kept = (name) => new URL(location.href).searchParams.get(name);

export function keep(name, value) {
  const url = new URL(location.href);
  if (value === null) url.searchParams.delete(name);
  else url.searchParams.set(name, value);
  if (url.href !== location.href) history.replaceState(history.state, "", url);
}

// job is the address of a page of this job.
export const job = (rest) => new URL(document.getElementById("survey").action).pathname + rest;
