// Help with words: what may stand at the cursor, what a word means, and the remarks with their remedies.

import { asked, element, got, made } from "./talk.js";
import { goTo, placeAt, put, spot, text } from "./text.js";

const area = element("text");
const list = element("offers");
const tip = element("tip");
const here = element("here");
const canEdit = document.body.dataset.edit === "yes";

let offers = [];
let picked = 0;
let remarks = [];

// What may stand here.

function close() {
  offers = [];
  list.hidden = true;
  list.replaceChildren();
  area.removeAttribute("aria-activedescendant");
}

function showOffers() {
  list.replaceChildren(
    ...offers.slice(0, 40).map((offer, at) =>
      made(
        "li",
        { role: "option", id: `offer-${at}`, "aria-selected": String(at === picked), "data-at": at },
        made("b", {}, offer.label),
        made("span", {}, offer.meaning.split("\n")[0]),
      ),
    ),
  );
  list.hidden = offers.length === 0;
  if (offers.length === 0) return close();
  const [x, y] = spot(offers[0].place[0]);
  list.style.left = `${Math.max(0, Math.min(x, area.clientWidth - 260))}px`;
  list.style.top = `${Math.min(y + 4, area.clientHeight - 40)}px`;
  area.setAttribute("aria-activedescendant", `offer-${picked}`);
  list.children[picked]?.scrollIntoView({ block: "nearest" });
}

async function offer() {
  const at = area.selectionStart;
  const found = await asked("offers", { text: text(), at }).catch(() => []);
  if (at !== area.selectionStart) return;
  const word = (one) => text().slice(one.place[0], at);
  offers = found.filter((one) => one.label !== word(one) || found.length > 1);
  picked = 0;
  showOffers();
}

function take(at) {
  const one = offers[at];
  close();
  if (one) put(one.place, one.text);
}

function walk(event) {
  if (list.hidden) return;
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (step) {
    picked = (picked + step + list.children.length) % list.children.length;
    showOffers();
  } else if (event.key === "Enter" || event.key === "Tab") take(picked);
  else if (event.key === "Escape") close();
  else return;
  event.preventDefault();
}

if (canEdit) {
  area.addEventListener("keydown", (event) => {
    if (event.key === " " && event.ctrlKey) {
      event.preventDefault();
      offer();
    } else walk(event);
  });
  area.addEventListener("input", (event) => {
    if (event.inputType === "insertText" && /[\p{L}]/u.test(event.data ?? "")) offer();
    else close();
  });
  area.addEventListener("blur", () => setTimeout(close, 150));
  list.addEventListener("pointerdown", (event) => {
    const one = event.target.closest("li");
    if (one) take(Number(one.dataset.at));
    event.preventDefault();
  });
}

// What a word means.

function showTip(x, y, parts) {
  tip.replaceChildren(...parts);
  tip.hidden = parts.length === 0;
  const box = area.getBoundingClientRect();
  tip.style.left = `${Math.max(0, Math.min(x - box.left, box.width - tip.offsetWidth - 8))}px`;
  const below = y - box.top + 18;
  tip.style.top = `${below + tip.offsetHeight > box.height ? y - box.top - tip.offsetHeight - 8 : below}px`;
}

const holds = (remark, place) => remark.place && remark.place[0] <= place && place <= remark.place[1];

async function meaning(place) {
  const said = remarks.filter((remark) => holds(remark, place));
  if (said.length > 0) return said.map((remark) => made("p", { class: remark.level }, `${remark.headline}. ${remark.help}`));
  const { told } = await asked("told", { text: text(), at: place }).catch(() => ({}));
  return told ? [made("p", {}, made("b", {}, told.title), ` ${told.text}`)] : [];
}

let resting;
area.addEventListener("pointermove", (event) => {
  clearTimeout(resting);
  tip.hidden = true;
  resting = setTimeout(async () => {
    const place = placeAt(event.clientX, event.clientY);
    if (place !== null) showTip(event.clientX, event.clientY, await meaning(place));
  }, 350);
});
area.addEventListener("pointerleave", () => {
  clearTimeout(resting);
  tip.hidden = true;
});
addEventListener("keydown", (event) => {
  if (event.key === "Escape") tip.hidden = true;
});

/** What is told of the cursor's place, below the text. */
let waiting;
document.addEventListener("selectionchange", () => {
  if (document.activeElement !== area) return;
  clearTimeout(waiting);
  waiting = setTimeout(async () => here.replaceChildren(...(await meaning(area.selectionStart))), 200);
});

// A key leads from an id to where it is defined.
area.addEventListener("keydown", async (event) => {
  if (event.key !== "F12") return;
  event.preventDefault();
  const { defined, on_shelf: shelf } = await asked("told", { text: text(), at: area.selectionStart }).catch(() => ({}));
  if (defined) goTo(defined);
  else if (shelf) here.textContent = `This is defined in ${shelf}.`;
});

// Remarks.

const WORDS = { error: "Error", warning: "Warning", advice: "Advice" };

export function showRemarks(all, summary) {
  remarks = all;
  element("summary").textContent = summary || "Nothing to remark on.";
  element("remarks").replaceChildren(
    ...all.map((remark) => {
      const go = made("button", { type: "button", class: "line" }, remark.line ? `line ${remark.line}` : "");
      go.addEventListener("click", () => goTo(remark.place));
      const mend = made("button", { type: "button", class: "strong" }, remark.remedy?.title ?? "");
      mend.addEventListener("click", () => {
        put(remark.remedy.place, remark.remedy.text);
        area.focus();
      });
      return made(
        "li",
        { class: remark.level },
        made("p", {}, made("b", {}, `${WORDS[remark.level]}: `), remark.headline),
        ...(remark.help ? [made("p", { class: "help" }, remark.help)] : []),
        made("p", { class: "quiet" }, remark.why),
        ...(remark.place ? [go] : []),
        ...(remark.remedy && canEdit ? [mend] : []),
      );
    }),
  );
}

// What the keys do.

element("keys").addEventListener("toggle", async (event) => {
  const words = event.target.querySelector("dl");
  if (words.children.length > 0) return;
  for (const [group, keys] of await got("language")) {
    words.append(made("dt", { class: "group" }, group[0].toUpperCase() + group.slice(1)));
    for (const { word, meaning } of keys) {
      words.append(made("dt", {}, made("code", {}, `${word}:`)), made("dd", {}, meaning.split("\n")[0]));
    }
  }
});
