// The pattern's text: the platform's own text area, over a layer that shows its colours and what is remarked on.
// Only the lines in sight are coloured, so that a long text costs no more than a short one.

import { element } from "./talk.js";

const area = element("text");
const lines = element("lines");

/** Stretches of the text to mark: `{ place: [from, to], level }`. */
let marked = [];
let chosen = null;

export const text = () => area.value;

/** Signs of a line: a note, a key, a text in quotes, a number with its unit, what parts. */
const SIGNS = /(#(?<=(?:^|\s)#).*)|([A-Za-z][\w -]*?(?=:(?:\s|$)))|("[^"]*"?|'[^']*'?)|(#[0-9a-f]{6}\b)|(\d[\d.,/½¼¾⅛⅜⅝⅞ ]*(?:mm|cm|m|in|ft|g\/m|g|N|h|min|deg|%)?\b|\d+)|([[\]{},:-])/giu;
const KINDS = ["note", "key", "quoted", "colour", "number", "sign"];

function lineHeight() {
  return parseFloat(getComputedStyle(area).lineHeight);
}

/** A line as pieces of one kind: `[text, class]`. */
function pieces(line) {
  const found = [];
  let end = 0;
  for (const match of line.matchAll(SIGNS)) {
    if (match.index > end) found.push([line.slice(end, match.index), ""]);
    const kind = KINDS[match.slice(1).findIndex((group) => group !== undefined)];
    found.push([match[0], kind]);
    end = match.index + match[0].length;
  }
  if (end < line.length) found.push([line.slice(end), ""]);
  return found;
}

/** A line's pieces cut where marks begin and end. */
function coloured(line, start, marks) {
  const row = document.createElement("span");
  let at = start;
  for (const [words, kind] of pieces(line)) {
    const cuts = new Set([at, at + words.length]);
    for (const { place } of marks) {
      for (const edge of place) if (edge > at && edge < at + words.length) cuts.add(edge);
    }
    const edges = [...cuts].sort((one, other) => one - other);
    for (let part = 0; part + 1 < edges.length; part += 1) {
      const span = document.createElement("span");
      span.className = [kind, ...classes(edges[part], marks)].join(" ").trim();
      span.textContent = line.slice(edges[part] - start, edges[part + 1] - start);
      row.append(span);
    }
    at += words.length;
  }
  row.append("\n");
  return row;
}

function classes(at, marks) {
  return marks.filter(({ place }) => place[0] <= at && at < place[1]).map(({ level }) => level);
}

let starts = [0];

function measure() {
  starts = [0];
  const value = area.value;
  for (let at = value.indexOf("\n"); at >= 0; at = value.indexOf("\n", at + 1)) starts.push(at + 1);
}

/** The line that holds a place, from 0. */
function lineOf(place) {
  let [low, high] = [0, starts.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle] <= place) low = middle;
    else high = middle;
  }
  return low;
}

/** Colours the lines in sight. */
function colour() {
  const height = lineHeight();
  const first = Math.max(0, Math.floor(area.scrollTop / height) - 2);
  const last = Math.min(starts.length, Math.ceil((area.scrollTop + area.clientHeight) / height) + 2);
  const value = area.value;
  const [from, to] = [starts[first], starts[last] ?? value.length + 1];
  const all = chosen ? [...marked, { place: chosen, level: "chosen" }] : marked;
  const near = all.filter(({ place }) => place && place[0] < to && place[1] > from);
  const rows = [];
  for (let line = first; line < last; line += 1) {
    const start = starts[line];
    const end = line + 1 < starts.length ? starts[line + 1] - 1 : value.length;
    const marks = near.filter(({ place }) => place[0] <= end && place[1] > start);
    rows.push(coloured(value.slice(start, Math.min(end, start + 2000)), start, marks));
  }
  lines.replaceChildren(...rows);
  lines.style.transform = `translate(${-area.scrollLeft}px, ${first * height - area.scrollTop}px)`;
}

export function changed() {
  measure();
  colour();
}

export function mark(remarks) {
  marked = remarks.filter((remark) => remark.place);
  colour();
}

/** Marks the entry that says what was chosen, and brings it into sight. */
export function choose(place, scroll = true) {
  chosen = place;
  if (place && scroll) show(place[0]);
  colour();
}

function show(place) {
  const top = lineOf(place) * lineHeight();
  if (top < area.scrollTop || top > area.scrollTop + area.clientHeight - 3 * lineHeight()) {
    area.scrollTop = Math.max(0, top - area.clientHeight / 3);
  }
}

/** Sets the cursor at a place. */
export function goTo([from, to]) {
  area.focus();
  area.setSelectionRange(from, to);
  show(from);
  colour();
}

/** Another text without an undo: what a file or a draft holds. */
export function replace(value) {
  area.value = value;
  changed();
}

/** Puts in place of a stretch what the browser can undo in one step. */
export function put([from, to], words) {
  const focused = document.activeElement;
  const { scrollTop, scrollLeft } = area;
  area.focus();
  area.setSelectionRange(from, to);
  const done = words ? document.execCommand("insertText", false, words) : document.execCommand("delete");
  if (!done) {
    area.setRangeText(words, from, to, "end");
    area.dispatchEvent(new Event("input"));
  }
  Object.assign(area, { scrollTop, scrollLeft });
  if (focused && focused !== area && focused !== document.body) focused.focus();
}

/** Another text as one edit, of what differs alone. */
export function rewrite(value) {
  const old = area.value;
  let start = 0;
  while (start < old.length && start < value.length && old[start] === value[start]) start += 1;
  let end = 0;
  while (end < old.length - start && end < value.length - start && old.at(-1 - end) === value.at(-1 - end)) end += 1;
  if (old !== value) put([start, old.length - end], value.slice(start, value.length - end));
}

/** Where a place of the text stands in the editor, in pixels from its corner. */
export function spot(place) {
  const line = lineOf(place);
  const style = getComputedStyle(area);
  const x = (place - starts[line]) * width() + parseFloat(style.paddingLeft) - area.scrollLeft;
  return [x, (line + 1) * lineHeight() + parseFloat(style.paddingTop) - area.scrollTop];
}

/** The place of the text at a point of the window; nothing beside the text. */
export function placeAt(x, y) {
  const box = area.getBoundingClientRect();
  const style = getComputedStyle(area);
  const line = Math.floor((y - box.top - parseFloat(style.paddingTop) + area.scrollTop) / lineHeight());
  const column = Math.floor((x - box.left - parseFloat(style.paddingLeft) + area.scrollLeft) / width());
  if (line < 0 || line >= starts.length || column < 0) return null;
  const place = starts[line] + column;
  const end = line + 1 < starts.length ? starts[line + 1] - 1 : area.value.length;
  return place < end ? place : null;
}

const pen = document.createElement("canvas").getContext("2d");
function width() {
  pen.font = getComputedStyle(area).font;
  return pen.measureText("0".repeat(100)).width / 100;
}

area.addEventListener("input", changed);
area.addEventListener("scroll", colour);
new ResizeObserver(colour).observe(area);
