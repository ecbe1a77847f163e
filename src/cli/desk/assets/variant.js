// Adding a size or a colourway: its name, and what it changes.

import { element, made } from "./talk.js";

/** A dialog that a button opens; `begin` sets its fields, `done` makes an act of them. */
function form(button, dialog, begin, done) {
  button.addEventListener("click", () => {
    begin();
    dialog.showModal();
  });
  dialog.querySelector("form").addEventListener("submit", (event) => {
    event.preventDefault();
    dialog.close();
    done();
  });
  dialog.querySelector("[data-close]").addEventListener("click", () => dialog.close());
}

/** Lets sizes and colourways be added, each of which is shown then. */
export function offerVariants({ act, names, beads }) {
  const said = (id) => element(id).value.trim();
  const by = () => document.querySelector("[name=size-by]:checked").value;
  const example = () => {
    element("size-value").placeholder = by() === "change" ? "+25 mm" : "170 mm";
  };
  for (const radio of document.querySelectorAll("[name=size-by]")) radio.addEventListener("change", example);

  const beginSize = () => {
    const { measure } = names();
    element("by-measure").hidden = !measure;
    element("measure").textContent = measure ?? "";
    if (!measure) document.querySelector("[name=size-by][value=change]").checked = true;
    example();
  };
  form(element("add-size"), element("new-size"), beginSize, () => {
    const key = by() === "change" ? "change" : names().measure;
    act({ act: "add-size", name: said("size-name"), key, value: said("size-value") }, { size: said("size-name") });
  });

  const beginColourway = () => {
    const all = beads().map((bead) => made("option", { value: bead.id }, bead.name));
    element("way-bead").replaceChildren(...all);
    match();
  };
  const match = () => {
    element("way-colour").value = beads().find((bead) => bead.id === said("way-bead"))?.colour ?? "#888888";
  };
  element("way-bead").addEventListener("change", match);
  form(element("add-colourway"), element("new-colourway"), beginColourway, () => {
    const doing = { act: "add-colourway", name: said("way-name"), bead: said("way-bead"), colour: `"${said("way-colour")}"` };
    act(doing, { colourway: said("way-name") });
  });
}
