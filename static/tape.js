// Steps of the tape, and how they read.

// scale gives the unit, how many steps make it, the step in millimetres, and
// how many steps a big step is.
export function scale() {
  const { unit, per } = document.getElementById("state").dataset;
  return { unit, per: Number(per), step: (unit === "in" ? 25.4 : 1) / per, big: unit === "in" ? 8 : 10 };
}

// tape writes a count of steps as a tape reads: 519 at 16 an inch is 32 7/16.
export function tape(count, per) {
  const n = Number(count), of = Number(per);
  const whole = Math.trunc(Math.abs(n) / of);
  let part = Math.abs(n) % of, den = of;
  while (part && part % 2 === 0 && den % 2 === 0) { part /= 2; den /= 2; }
  const text = [whole || !part ? whole : "", part ? `${part}/${den}` : ""].filter((t) => t !== "").join(" ");
  return n < 0 ? `-${text}` : text;
}

// figure is the same with its unit, for people.
export function figure(count) {
  const { unit, per } = scale();
  return tape(count, per) + (unit === "in" ? "″" : " mm");
}

// moved is how far something went: +1/16″.
export function moved(count) { return (count > 0 ? "+" : "") + figure(count); }
