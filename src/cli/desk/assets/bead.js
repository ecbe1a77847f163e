// The bead that was chosen: its facts, and what can be done with it by hand. Every act is an edit of the text.

import { element, made } from "./talk.js";

const box = element("bead");
const canEdit = document.body.dataset.edit === "yes";

let scope = "run";
/** The thing that is shown, of the kind that it is: a field that is being typed in outlasts other drawings. */
let now = { thing: null, kind: null };

function facts(thing, kind) {
  const rows = [
    ["is", kind.asked_for],
    ["is long", kind.length],
    ["weighs", kind.mass],
    ["lies", `${thing.station.toFixed(1)} mm from the first end`],
    ["all of it costs", kind.price],
    ["said here", thing.count === 1 ? "once" : `${thing.count} are strung by this entry`],
  ];
  const row = ([name, fact]) => made("div", {}, made("dt", {}, name), made("dd", {}, fact));
  return made("dl", { class: "facts" }, ...rows.filter(([, fact]) => fact).map(row));
}

function field(words, input) {
  return made("label", {}, words, input);
}

/** A button for an act on the run that is shown. */
function button(words, act, name) {
  const node = made("button", { type: "button", id: name }, words);
  node.addEventListener("click", () => act({ act: name, run: run() }));
  return node;
}

function scopes() {
  const choice = (value, words) => {
    const radio = made("input", { type: "radio", name: "scope", id: `scope-${value}`, value, checked: scope === value });
    radio.addEventListener("change", () => (scope = value));
    return made("label", { class: "choice" }, radio, words);
  };
  return made("fieldset", {}, made("legend", {}, "Change it"), choice("run", "in this run"), choice("all", "everywhere"));
}

/** An input that does something once it is changed; until then it holds what is half typed. */
function doing(input, act, what) {
  input.addEventListener("change", () => {
    input.defaultValue = input.value;
    act(what());
  });
  return input;
}

/** Another bead, or finding, of the pattern or its shelves. */
function swap(kind, names, act) {
  const others = kind.colour ? names.beads : names.findings;
  const option = ([id, name]) => made("option", { value: id, selected: id === kind.id }, name);
  const select = made("select", { id: "swap" }, ...others.map(option));
  select.addEventListener("change", () => act({ act: "swap", run: run(), from: kind.id, to: select.value, everywhere: scope === "all" }));
  return field(kind.colour ? "Bead" : "Finding", select);
}

const run = () => ({ start: now.thing.place[0], end: now.thing.place[1] });

/** Another value of a key of a bead, in its run or everywhere; in a colourway it is the bead's wherever that is strung. */
function set(kind, key, input, value, colourway, act) {
  const only = () => (scope === "run" && !colourway ? run() : null);
  return doing(input, act, () => ({ act: "set", bead: kind.id, key, value: value(input), only: only(), colourway: colourway || null }));
}

/** Whether a field holds what nothing was done with yet. */
function isHalfTyped() {
  const field = document.activeElement;
  return box.contains(field) && field.type !== "radio" && field.defaultValue !== undefined && field.value !== field.defaultValue;
}

/** Shows a thing that was chosen, or nothing; what had the focus there has it again, and what is half typed stays. */
export function showBead(thing, piece, context) {
  const kind = thing && piece.kinds[thing.kind];
  const stays = kind && kind.id === now.kind?.id && isHalfTyped();
  now = { thing, kind };
  if (stays) return;
  const focused = box.contains(document.activeElement) ? document.activeElement.id : "";
  show(thing, kind, context);
  if (focused) element(focused)?.focus({ preventScroll: true });
}

function show(thing, kind, { colourway, names, act, text }) {
  box.hidden = !thing;
  if (!thing) return box.replaceChildren();
  const title = made("h3", { id: "bead-title", "aria-live": "polite" }, kind ? kind.name : "a knot");
  if (!kind) return box.replaceChildren(title);
  const parts = [title, facts(thing, kind)];
  if (canEdit) {
    const entry = text().slice(...thing.place);
    const counted = Number(/^["']?(\d+)\s|\b(?:random|fade): *(\d+)/.exec(entry)?.slice(1).find(Boolean) ?? 1);
    const count = made("input", { type: "number", min: 1, max: 20000, value: counted, id: "count" });
    const times = () => Math.max(1, Math.round(Number(count.value) || 1));
    doing(count, act, () => ({ act: "count", run: run(), count: times() }));
    const fields = [swap(kind, names, act), field("How many here", count)];
    if (kind.colour) {
      const colour = made("input", { type: "color", value: kind.colour, id: "colour" });
      const size = made("input", { type: "text", value: kind.size ?? "", id: "bead-size", spellcheck: "false" });
      fields.push(
        field(colourway ? `Colour in ${colourway}` : "Colour", set(kind, "colour", colour, (input) => `"${input.value}"`, colourway, act)),
        field("Size", set(kind, "size", size, (input) => input.value.trim(), "", act)),
      );
    }
    parts.push(
      scopes(),
      made("div", { class: "fields" }, ...fields),
      made(
        "div",
        { class: "acts", role: "group", "aria-label": "The repeat that it stands in" },
        button("One more repeat", act, "repeat-more"),
        button("Twice as often", act, "repeat-double"),
        button("Take the repeat out", act, "repeat-delete"),
      ),
    );
  }
  box.replaceChildren(...parts);
}
