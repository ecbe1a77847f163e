// The piece: its drawing, on which beads are chosen and strands lengthened, and the other views of it.

import { asked, drawn, element, latest, made } from "./talk.js";
import { choose } from "./text.js";

const stage = element("stage");
const drawing = element("drawing");
const other = element("other");
const pages = element("pages");
const panel = element("panel");
const strung = element("strung");
const tabs = [...document.querySelectorAll("[role=tab]")];
const canEdit = document.body.dataset.edit === "yes";

const SVG = "http://www.w3.org/2000/svg";
const layer = document.createElementNS(SVG, "svg");
layer.id = "layer";
layer.setAttribute("role", "group");
layer.setAttribute("aria-label", "Lengths of the strands");

let piece = null;
let selected = -1;
let view = "drape";
let page = 0;
let question = () => ({});
let told = () => {};
let act = () => {};

/** Says what the other views ask about, who is told of a chosen bead, and what an act does. */
export function begin(listeners) {
  ({ question, told, act } = listeners);
}

export const shown = () => piece;
export const currentPage = () => page;

/** Shows a piece that was drawn. */
export function show(next) {
  const before = piece?.things[selected];
  piece = next;
  drawn(drawing, piece.svg).setAttribute("aria-label", piece.about);
  drawing.style.aspectRatio = `${piece.width} / ${piece.height}`;
  drawing.style.setProperty("--ratio", piece.width / piece.height);
  layer.setAttribute("viewBox", `0 0 ${piece.width} ${piece.height}`);
  drawing.after(layer);
  const held = layer.contains(document.activeElement) ? document.activeElement.id : "";
  layer.replaceChildren(...piece.lows.filter(() => canEdit).map(handle));
  if (held) element(held)?.focus({ preventScroll: true });
  element("facts").innerHTML = piece.facts;
  list();
  select(before ? again(before) : -1, false);
}

/** Everything strung as a table, which is made where it is open. */
function list() {
  if (strung.open && piece) strung.querySelector("div").innerHTML = piece.table;
}

strung.addEventListener("toggle", list);

/** The thing that lies where another lay. */
function again(before) {
  const near = (thing) => Math.abs(thing.station - before.station) + (thing.strand === before.strand ? 0 : 1e6);
  let best = -1;
  piece.things.forEach((thing, at) => {
    if (best < 0 || near(thing) < near(piece.things[best])) best = at;
  });
  return best;
}

// Choosing.

function select(at, scroll = true) {
  selected = at;
  layer.querySelector(".ring")?.remove();
  const thing = piece?.things[at];
  choose(thing?.place ?? null, scroll);
  if (thing) {
    const ring = document.createElementNS(SVG, "circle");
    ring.classList.add("ring");
    ring.setAttribute("cx", thing.x);
    ring.setAttribute("cy", thing.y);
    ring.setAttribute("r", thing.reach + 1);
    layer.append(ring);
  }
  told(thing ?? null);
}

/** The point of the drawing under a point of the window, in mm. */
function point(event) {
  const box = layer.getBoundingClientRect();
  const scale = Math.min(box.width / piece.width, box.height / piece.height);
  const x = (event.clientX - box.left - (box.width - piece.width * scale) / 2) / scale;
  const y = (event.clientY - box.top - (box.height - piece.height * scale) / 2) / scale;
  return { x, y };
}

stage.addEventListener("click", (event) => {
  if (!piece) return;
  const { x, y } = point(event);
  let best = -1;
  let least = Infinity;
  piece.things.forEach((thing, at) => {
    const away = Math.hypot(thing.x - x, thing.y - y) - thing.reach;
    if (away < 1.5 && away < least) [best, least] = [at, away];
  });
  select(best);
});

stage.addEventListener("keydown", (event) => {
  if (!piece || event.target !== stage) return;
  const last = piece.things.length - 1;
  const walks = {
    ArrowRight: () => Math.min(last, selected + 1),
    ArrowLeft: () => Math.max(0, selected - 1),
    ArrowDown: () => beside(1),
    ArrowUp: () => beside(-1),
    Home: () => 0,
    End: () => last,
    Escape: () => -1,
  };
  if (event.key === "Enter" && selected >= 0) element("bead").querySelector("select, input, button")?.focus();
  else if (walks[event.key]) select(walks[event.key]());
  else return;
  event.preventDefault();
});

/** What lies nearest on the next strand. */
function beside(step) {
  const here = piece.things[selected];
  if (!here) return 0;
  const on = piece.things.map((thing, at) => [thing, at]).filter(([thing]) => thing.strand === here.strand + step);
  const nearest = on.sort((one, two) => Math.abs(one[0].x - here.x) - Math.abs(two[0].x - here.x))[0];
  return nearest ? nearest[1] : selected;
}

// Lengthening: a handle at each strand's lowest point.

/** A handle that is dragged, or moved by arrow keys a millimetre at a time. */
function handle(low) {
  const grip = document.createElementNS(SVG, "circle");
  const attributes = {
    id: `grip-${low.strand}`, class: "grip", cx: low.x, cy: low.y + 5, r: 2.6, tabindex: 0, role: "slider", "aria-label": `Length of strand ${low.name}`,
    "aria-valuemin": 1, "aria-valuemax": 20000, "aria-valuenow": Math.round(low.finished), "aria-valuetext": `${Math.round(low.finished)} mm`,
  };
  for (const [key, value] of Object.entries(attributes)) grip.setAttribute(key, value);
  const to = (length) => {
    const { size } = question();
    if (size) act({ act: "resize", size, by: length - low.finished });
    else act({ act: "lengthen", strand: low.strand, length: Math.max(1, length) });
  };
  grip.addEventListener("keydown", (event) => {
    const step = { ArrowUp: -1, ArrowDown: 1, ArrowLeft: -1, ArrowRight: 1, PageUp: -10, PageDown: 10 }[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    to(Math.round(low.finished) + step);
  });
  grip.addEventListener("click", (event) => event.stopPropagation());
  grip.addEventListener("pointerdown", (event) => drag(event, grip, low, to));
  return grip;
}

function drag(event, grip, low, to) {
  event.preventDefault();
  grip.setPointerCapture(event.pointerId);
  const start = point(event).y;
  let length = low.finished;
  const move = (moved) => {
    const down = point(moved).y - start;
    grip.setAttribute("cy", low.y + 5 + down);
    length = low.finished + arc(low.span, Math.max(0, low.drop + down)) - arc(low.span, low.drop);
    element("state").textContent = `strand ${low.name}: ${Math.round(length)} mm`;
  };
  grip.addEventListener("pointermove", move);
  grip.addEventListener("pointerup", () => {
    grip.removeEventListener("pointermove", move);
    if (Math.abs(length - low.finished) >= 0.5) to(length);
  }, { once: true });
}

/** Length of a parabola of a span and a drop: what a strand that hangs is near to. */
function arc(span, drop) {
  if (span <= 0) return 2 * drop;
  const steep = (4 * drop) / span;
  if (steep < 1e-6) return span;
  return (span / 2) * Math.sqrt(1 + steep * steep) + ((span / 2) * Math.asinh(steep)) / steep;
}

// Views.

/** Draws the view that is open anew, where it is not the drape. */
export const redraw = latest(async () => {
  const [wanted, at] = [view, page];
  if (wanted === "drape") return;
  try {
    const seen = await asked(`view/${wanted}`, { ...question(), at });
    if (wanted !== view) return;
    panel.classList.remove("old");
    if (seen.svg) {
      if (!other.firstElementChild?.shadowRoot) other.replaceChildren(made("div", { role: "img" }));
      other.firstElementChild.setAttribute("aria-label", seen.about);
      drawn(other.firstElementChild, seen.svg).setAttribute("aria-hidden", "true");
    } else other.innerHTML = seen.html;
    page = Math.min(at, Math.max(0, seen.pages - 1));
    pages.hidden = wanted !== "sheet";
    element("page-number").textContent = `page ${page + 1} of ${seen.pages}`;
    element("before").disabled = page === 0;
    element("after").disabled = page + 1 >= seen.pages;
  } catch (error) {
    panel.classList.add("old");
    if (!other.firstChild) other.textContent = error.message;
  }
});

function open(tab) {
  view = tab.dataset.view;
  for (const one of tabs) {
    one.setAttribute("aria-selected", String(one === tab));
    one.tabIndex = one === tab ? 0 : -1;
  }
  panel.setAttribute("aria-labelledby", tab.id);
  const isDrape = view === "drape";
  stage.hidden = !isDrape;
  element("stage-help").hidden = !isDrape;
  other.hidden = isDrape;
  other.className = view;
  other.replaceChildren();
  pages.hidden = view !== "sheet";
  page = 0;
  redraw();
}

for (const tab of tabs) tab.addEventListener("click", () => open(tab));
element("views").addEventListener("keydown", (event) => {
  const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
  if (!step) return;
  const next = tabs[(tabs.indexOf(document.activeElement) + step + tabs.length) % tabs.length];
  next.focus();
  open(next);
});
const turn = (by) => () => {
  page = Math.max(0, page + by);
  redraw();
};
element("before").addEventListener("click", turn(-1));
element("after").addEventListener("click", turn(1));
