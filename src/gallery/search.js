"use strict";
const form = document.getElementById("search");
const words = document.getElementById("words");
const kind = document.getElementById("kind");
const count = document.getElementById("count");
const cards = [...document.querySelectorAll(".cards > li")];
function sift() {
  const wanted = words.value.toLowerCase().split(/\s+/).filter(Boolean);
  let shown = 0;
  for (const card of cards) {
    const fits = (!kind.value || card.dataset.kind === kind.value) && wanted.every((word) => card.dataset.words.includes(word));
    card.hidden = !fits;
    shown += fits ? 1 : 0;
  }
  count.textContent = shown === cards.length ? count.dataset.all : count.dataset.found.replace("#", shown);
}
count.dataset.all = count.textContent;
form.hidden = false;
form.addEventListener("submit", (event) => event.preventDefault());
words.addEventListener("input", sift);
kind.addEventListener("change", sift);
document.addEventListener("keydown", (event) => {
  if (event.key === "/" && document.activeElement !== words) {
    event.preventDefault();
    words.focus();
  } else if (event.key === "Escape" && document.activeElement === words) {
    words.value = "";
    sift();
  }
});
sift();
