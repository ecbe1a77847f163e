// Asking the program, and being told.

/** A POST with JSON; throws what the program says against it. A signal takes the question back. */
export async function ask(path, question, signal = null) {
  const answer = await fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(question),
    signal,
  });
  if (!answer.ok) throw await refusal(answer);
  return answer;
}

export const asked = async (path, question, signal) => (await ask(path, question, signal)).json();

export async function got(path) {
  const answer = await fetch(path);
  if (!answer.ok) throw await refusal(answer);
  return answer.json();
}

async function refusal(answer) {
  const text = await answer.text();
  let held;
  try {
    held = JSON.parse(text);
  } catch {
    held = { why: text };
  }
  return Object.assign(new Error(held.why ?? text), { status: answer.status, held });
}

/** Runs one question at a time; of those that come meanwhile the last alone. */
export function latest(run) {
  let busy = false;
  let waiting = null;
  return async function next(...question) {
    waiting = question;
    if (busy) return;
    busy = true;
    try {
      while (waiting) {
        const now = waiting;
        waiting = null;
        await run(...now);
      }
    } finally {
      busy = false;
      if (waiting) next(...waiting);
    }
  };
}

export const element = (id) => document.getElementById(id);

/** An element of a name with attributes and children. */
export function made(name, attributes = {}, ...children) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === true) node.setAttribute(key, "");
    else if (value !== false && value != null) node.setAttribute(key, value);
  }
  node.append(...children);
  return node;
}

/** An SVG in a tree of its own, so that its ids meet no others. */
export function drawn(host, svg) {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  root.innerHTML = svg;
  const drawing = root.querySelector("svg");
  drawing.removeAttribute("width");
  drawing.removeAttribute("height");
  drawing.setAttribute("width", "100%");
  return drawing;
}
