// What is wrong with a box, said beside it; and big keys for the box a hand was in last.

/** Say what is wrong beside the box of a name; nothing takes the words away. */
export function tellWrong(page, name, words) {
  const input = page.querySelector(`#f-${name}`);
  const id = `wrong-${name}`;
  page.querySelector(`#${id}`)?.remove();
  input.removeAttribute("aria-invalid");
  input.removeAttribute("aria-describedby");
  if (!words) return;
  const said = document.createElement("p");
  said.className = "wrong state ask";
  said.id = id;
  said.setAttribute("role", "status");
  said.append(page.querySelector("#glyph-ask").content.cloneNode(true), words);
  input.closest(".shows, .typed").after(said);
  input.setAttribute("aria-invalid", "true");
  input.setAttribute("aria-describedby", id);
}

/** Big keys type into the box that was touched last, `first` until one was, while it is alone. */
export function bigKeys(keys, first) {
  let box = first;
  const form = first.form;
  form.addEventListener("focusin", ({ target }) => { if (target.matches(".shows input")) box = target; });
  keys.addEventListener("click", ({ target }) => {
    const button = target.closest("[data-key]");
    if (!button) return;
    const { key } = button.dataset;
    box.value = key === "back" ? box.value.slice(0, -1) : box.value + key;
  });
  const isCoarse = matchMedia("(pointer: coarse)").matches;
  const more = form.querySelector("details");
  // With more boxes open there is no room for both: the phone's own keys then.
  const show = () => {
    keys.hidden = more.open;
    const mode = isCoarse && !more.open ? "none" : "decimal";
    for (const input of form.querySelectorAll(".shows input")) input.inputMode = mode;
  };
  more.addEventListener("toggle", show);
  show();
}
