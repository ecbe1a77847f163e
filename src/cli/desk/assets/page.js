// The page: asks about the text as it is typed, saves it, and keeps with the file.

import { showBead } from "./bead.js";
import * as piece from "./piece.js";
import { offerStart } from "./start.js";
import { ask, asked, element, got, latest, made } from "./talk.js";
import { changed, mark, replace, rewrite, text } from "./text.js";
import { offerVariants } from "./variant.js";
import { showRemarks } from "./words.js";

const area = element("text");
const { edit, name, size, colourway } = document.body.dataset;
const canEdit = edit === "yes";
const DRAFT = `festoon ${name}`;
/** An answer that takes longer than this, in ms, comes after one for which each strand is hung alone, */
const SLOW = 80;
/** and is asked for when nothing was typed for so long. */
const REST = 150;

const choice = { size: element("size"), colourway: element("colourway"), ink: element("ink"), paper: element("paper") };
const wanted = { size, colourway };

/** The version of the file from which the text was made, and the text as it was then. */
let madeFrom = null;
let saved = "";
let slow = true;
/** What may be chosen: sizes, colourways, beads, findings. */
let names = { sizes: [], colourways: [], measure: null, beads: [], findings: [] };
/** How long it took from each key to the first drawing of its text, and to the last, in ms. */
window.latencies = [];
window.solved = [];
/** The piece that is shown, for those who look on. */
window.piece = () => piece.shown();
/** Whether what is shown is of the text as it stands. */
window.isFresh = () => lookedAt === text();
let lookedAt = null;
/** The text whose piece is shown. */
let drawnFrom = null;

const value = (key) => choice[key].value || wanted[key] || null;
const question = () => ({ text: text(), size: value("size"), colourway: value("colourway"), ink: choice.ink.value, paper: choice.paper.value });

// Looking.

/** What is asked of the text as it stands; the next key takes back what would take long. */
let asking = new AbortController();

const looked = latest(async (since) => {
  const { signal } = asking;
  const now = question();
  if (slow) {
    await showLook(await asked("look", { ...now, soon: true }).catch(gone), now.text, true);
    window.latencies.push(performance.now() - since);
    await rest(signal);
    if (signal.aborted) return;
  }
  const start = performance.now();
  const seen = await asked("look", now, slow ? signal : null).catch((error) => (signal.aborted ? null : gone(error)));
  if (!seen) return;
  await showLook(seen, now.text, false);
  if (!slow) window.latencies.push(performance.now() - since);
  window.solved.push(performance.now() - since);
  slow = performance.now() - start > SLOW;
  lookedAt = now.text;
});

/** Waits until nothing was typed for a while. */
const rest = (signal) =>
  new Promise((done) => {
    const timer = setTimeout(done, REST);
    signal.addEventListener("abort", () => {
      clearTimeout(timer);
      done();
    });
  });

function look() {
  lookedAt = null;
  asking.abort();
  asking = new AbortController();
  looked(performance.now());
}

async function showLook(seen, from, soon) {
  if (!seen) return;
  const errors = seen.remarks.some((remark) => remark.level === "error");
  // What is said of how a piece hangs comes with the last answer; until then the advice that stands there stays.
  if (!soon || errors || element("remarks").querySelector(".error")) {
    showRemarks(seen.remarks, seen.summary);
    mark(seen.remarks);
  }
  if (seen.names) {
    names = seen.names;
    offerChoices("sizes", choice.size, names.sizes);
    offerChoices("colourways", choice.colourway, names.colourways);
  }
  element("stale").hidden = Boolean(seen.piece);
  element("stale").textContent = piece.shown() ? "The text has errors: this is the piece as it last was sound." : "The piece is drawn here as soon as the text has no errors.";
  element("panel").classList.toggle("old", !seen.piece);
  if (seen.piece) {
    drawnFrom = from;
    piece.show(seen.piece);
    if (!soon) piece.redraw();
  }
  await new Promise(requestAnimationFrame);
}

function offerChoices(of, select, names) {
  const kept = select.value || wanted[select.id] || "";
  document.querySelector(`[data-of=${of}]`).hidden = names.length === 0 && !canEdit;
  const known = [...select.options].slice(1).map((option) => option.value);
  if (known.join("\n") === names.join("\n")) return;
  const options = names.map((one) => made("option", { value: one, selected: one === kept }, one));
  select.replaceChildren(made("option", { value: "" }, "as written"), ...options);
  if (names.includes(kept)) select.value = kept;
  delete wanted[select.id];
}

// By hand.

/**
 * Does an act as one edit of the text, which is then shown in the variant that is wanted. What is done to a run goes by
 * its place in the text that is drawn, and nothing that was typed meanwhile is lost.
 */
async function act(doing, variant = {}) {
  const before = text();
  if ((doing.run ?? doing.only) && before !== drawnFrom) return say("the text is not the one that is drawn: nothing was done");
  try {
    const changed = (await asked("act", { text: before, act: doing })).text;
    if (text() !== before) return say("the text was changed meanwhile: do it again");
    for (const [of, name] of Object.entries(variant)) {
      choice[of].value = "";
      wanted[of] = name;
    }
    rewrite(changed);
  } catch (error) {
    gone(error);
  }
}

piece.begin({
  question,
  act,
  told: (thing) => showBead(thing, piece.shown(), { colourway: choice.colourway.value, names, act, text }),
});
if (canEdit) {
  offerVariants({
    act,
    names: () => names,
    beads: () => Object.values(piece.shown()?.kinds ?? {}).filter((kind) => kind.colour),
  });
}

// The file.

let news;
function say(words) {
  element("state").textContent = words;
  clearTimeout(news);
  news = setTimeout(state, 6000);
}

function state() {
  clearTimeout(news);
  const isSaved = text() === saved;
  if (canEdit) element("state").textContent = isSaved ? (madeFrom === "none" ? "not saved yet" : "saved") : "not saved";
  document.title = `${isSaved ? "" : "• "}${name} · festoon`;
}

/** Says that a question was refused, or that nobody answers. */
function gone(error) {
  if (error?.status) say(error.message);
  else element("state").textContent = "festoon does not answer: start it again. Your text is kept here.";
  return null;
}

function keepDraft() {
  try {
    if (canEdit && text() !== saved) localStorage.setItem(DRAFT, text());
    else localStorage.removeItem(DRAFT);
  } catch {
    // A browser that keeps nothing keeps no draft.
  }
}

/** Takes what the file holds as the text. */
function take(held) {
  madeFrom = held.version;
  saved = held.text ?? "";
  replace(saved);
  state();
  look();
}

const save = latest(async () => {
  const now = text();
  try {
    const held = await asked("save", { text: now, made_from: madeFrom });
    [madeFrom, saved] = [held.version, now];
    keepDraft();
    state();
  } catch (error) {
    if (error.status === 409) conflict(error.held);
    else gone(error);
  }
});

function conflict(theirs) {
  element("conflict").hidden = false;
  element("mine").value = text();
  element("theirs").value = theirs.text ?? `(${theirs.trouble || "the file is gone"})`;
  element("keep-mine").onclick = () => {
    element("conflict").hidden = true;
    madeFrom = theirs.version;
    save();
  };
  element("take-theirs").hidden = theirs.text === null;
  element("take-theirs").onclick = () => {
    element("conflict").hidden = true;
    [madeFrom, saved] = [theirs.version, theirs.text];
    rewrite(theirs.text);
    keepDraft();
    state();
  };
  element("conflict-title").scrollIntoView({ block: "nearest" });
}

/** The file holds another version: taken where nothing is unsaved, else both are shown. */
async function changedFile(version) {
  if (version === madeFrom) return;
  const held = await got("file").catch(() => null);
  if (!held || held.version === madeFrom) return;
  if (held.text === text()) [madeFrom, saved] = [held.version, held.text];
  else if (held.text === null) say(held.trouble || "the file is gone: saving writes it anew");
  else if (text() === saved) {
    [madeFrom, saved] = [held.version, held.text];
    if (canEdit) rewrite(held.text);
    else replace(held.text);
    if (!canEdit) look();
    say("another program changed the file: this is its text");
  } else conflict(held);
  state();
}

/** The version of the shelves that was told last. */
let shelves = null;

function listen() {
  const events = new EventSource("events");
  events.addEventListener("file", (event) => changedFile(event.data));
  events.addEventListener("shelves", ({ data }) => {
    if (shelves !== null && shelves !== data) look();
    shelves = data;
  });
  events.addEventListener("error", () => {
    if (events.readyState !== EventSource.OPEN) gone();
  });
  events.addEventListener("open", state);
}

// Downloads.

async function download(what) {
  try {
    const answer = await ask(`take/${what}`, { ...question(), at: piece.currentPage() });
    const encoded = /filename\*=UTF-8''([^;]+)/.exec(answer.headers.get("Content-Disposition") ?? "")?.[1];
    const address = URL.createObjectURL(await answer.blob());
    made("a", { href: address, download: decodeURIComponent(encoded ?? `piece.${what}`) }).click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  } catch (error) {
    gone(error);
  }
}

for (const button of document.querySelectorAll("[data-take]")) button.addEventListener("click", () => download(button.dataset.take));

// Beginning.

function offerDraft() {
  let draft = null;
  try {
    draft = canEdit ? localStorage.getItem(DRAFT) : null;
  } catch {
    return;
  }
  if (draft === null || draft === text()) return;
  element("draft").hidden = false;
  const close = () => (element("draft").hidden = true);
  element("take-draft").onclick = () => {
    close();
    rewrite(draft);
  };
  element("drop-draft").onclick = () => {
    close();
    localStorage.removeItem(DRAFT);
  };
}

async function begin() {
  const held = await got("file").catch(gone);
  if (!held) return;
  take(held);
  if (held.trouble) say(held.trouble);
  offerDraft();
  if (canEdit && !held.trouble && !text().trim() && element("draft").hidden) offerStart((start) => rewrite(start));
  listen();
}

area.addEventListener("input", () => {
  state();
  keepDraft();
  look();
});
for (const select of Object.values(choice)) select.addEventListener("change", () => look());
element("choices").addEventListener("submit", (event) => event.preventDefault());
element("save")?.addEventListener("click", () => save());
addEventListener("keydown", (event) => {
  if (canEdit && event.key === "s" && (event.ctrlKey || event.metaKey)) {
    event.preventDefault();
    save();
  }
});
addEventListener("beforeunload", (event) => {
  if (canEdit && text() !== saved) event.preventDefault();
});
changed();
begin();
