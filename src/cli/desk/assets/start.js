// Beginning where there is no pattern yet: a kind with a note at every key, or a worked piece.

import { drawn, element, got, made } from "./talk.js";

const dialog = element("start");

function card(one, take) {
  const picture = made("div", { class: "thumb", "aria-hidden": "true" });
  drawn(picture, one.svg).setAttribute("height", "100%");
  const button = made("button", { type: "button", class: "card", "data-name": one.name }, picture, made("b", {}, one.title), made("span", {}, one.summary));
  button.addEventListener("click", async () => {
    dialog.close();
    take((await got(`start/${one.name}`)).text);
  });
  return button;
}

/** Offers what there is to begin from; `take` is given the text that is chosen. */
export async function offerStart(take) {
  dialog.showModal();
  element("start-empty").addEventListener("click", () => dialog.close(), { once: true });
  const all = await got("starts");
  const group = (title, is) =>
    made("section", {}, made("h3", {}, title), made("div", { class: "cards" }, ...all.filter((one) => one.is_kind === is).map((one) => card(one, take))));
  element("starts").replaceChildren(group("A kind of piece, with a note at every key", true), group("A worked piece", false));
}
