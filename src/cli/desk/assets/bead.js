// The bead that was chosen: its facts, and what can be done with it by hand. Every act is an edit of the text.

import { element, made } from "./talk.js";

const box = element("bead");
const canEdit = document.body.dataset.edit === "yes";

let scope = "run";

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

function button(words, act, doing) {
  const node = made("button", { type: "button", id: doing.act }, words);
  node.addEventListener("click", () => act(doing));
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

/** Another bead, or finding, of the pattern or its shelves. */
function swap(thing, kind, names, act) {
  const own = kind.id;
  const others = kind.colour ? names.beads : names.findings;
  const option = ([id, name]) => made("option", { value: id, selected: id === own }, name);
  const select = made("select", { id: "swap" }, ...others.map(option));
  select.addEventListener("change", () => act({ act: "swap", run: run(thing), from: own, to: select.value, everywhere: scope === "all" }));
  return field(kind.colour ? "Bead" : "Finding", select);
}

const run = (thing) => ({ start: thing.place[0], end: thing.place[1] });

/** Another value of a key of a bead, in its run or everywhere; in a colourway it is the bead's wherever that is strung. */
function set(thing, kind, key, input, value, colourway, act) {
  const only = () => (scope === "run" && !colourway ? run(thing) : null);
  input.addEventListener("change", () =>
    act({ act: "set", bead: kind.id, key, value: value(input), only: only(), colourway: colourway || null }),
  );
  return input;
}

/** Shows a thing that was chosen, or nothing; what had the focus there has it again. */
export function showBead(...shown) {
  const focused = box.contains(document.activeElement) ? document.activeElement.id : "";
  show(...shown);
  if (focused) element(focused)?.focus({ preventScroll: true });
}

function show(thing, piece, { colourway, names, act, text }) {
  box.hidden = !thing;
  const kind = thing && piece.kinds[thing.kind];
  if (!thing) return box.replaceChildren();
  const title = made("h3", { id: "bead-title", "aria-live": "polite" }, kind ? kind.name : "a knot");
  if (!kind) return box.replaceChildren(title);
  const parts = [title, facts(thing, kind)];
  if (canEdit) {
    const entry = text().slice(...thing.place);
    const counted = Number(/^["']?(\d+)\s|\b(?:random|fade): *(\d+)/.exec(entry)?.slice(1).find(Boolean) ?? 1);
    const count = made("input", { type: "number", min: 1, max: 20000, value: counted, id: "count" });
    count.addEventListener("change", () => act({ act: "count", run: run(thing), count: Math.max(1, Math.round(Number(count.value) || 1)) }));
    const fields = [swap(thing, kind, names, act), field("How many here", count)];
    if (kind.colour) {
      const colour = made("input", { type: "color", value: kind.colour, id: "colour" });
      const size = made("input", { type: "text", value: kind.size ?? "", id: "bead-size", spellcheck: "false" });
      fields.push(
        field(colourway ? `Colour in ${colourway}` : "Colour", set(thing, kind, "colour", colour, (input) => `"${input.value}"`, colourway, act)),
        field("Size", set(thing, kind, "size", size, (input) => input.value.trim(), "", act)),
      );
    }
    parts.push(
      scopes(),
      made("div", { class: "fields" }, ...fields),
      made(
        "div",
        { class: "acts", role: "group", "aria-label": "The repeat that it stands in" },
        button("One more repeat", act, { act: "repeat-more", run: run(thing) }),
        button("Twice as often", act, { act: "repeat-double", run: run(thing) }),
        button("Take the repeat out", act, { act: "repeat-delete", run: run(thing) }),
      ),
    );
  }
  box.replaceChildren(...parts);
}
