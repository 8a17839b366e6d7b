"use strict";
// Filters and sorts a list where it stands. Without it the page is whole; nothing is kept, nothing is sent.
(() => {
  const form = document.getElementById("sift");
  const told = document.getElementById("sifted");
  const together = document.getElementById("together");
  const order = new Intl.Collator(document.documentElement.lang, { numeric: true });
  const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const digits = (text) => text.replace(/\D/g, "");

  const items = [...document.querySelectorAll("[data-item]")].map((element) => ({
    element,
    home: element.parentNode,
    after: element.parentNode.querySelector(":scope > [data-item] ~ p"),
    isCard: element.localName === "article",
    text: plain(element.textContent),
    numbers: [...element.querySelectorAll(".chip, .phone")].map((one) => digits(one.textContent)),
  }));
  const followUps = items.filter((item) => item.element.dataset.mark);

  // Words in any order; a number however its digits are grouped.
  function says(item, query) {
    const number = /^[\d\s()+.-]{4,}$/.test(query) ? digits(query) : "";
    return (
      plain(query).split(/\s+/).every((word) => item.text.includes(word)) ||
      (number !== "" && item.numbers.some((one) => one.includes(number)))
    );
  }

  function isWanted(item) {
    const names = ["band", "kind", "mark"];
    return (
      names.every((name) => ["", item.element.dataset[name]].includes(form.elements[name].value)) &&
      says(item, form.elements.text.value.trim())
    );
  }

  function sift() {
    items.forEach((item) => (item.element.hidden = !isWanted(item)));
    for (const group of [...document.querySelectorAll("[data-group]")].reverse()) {
      group.hidden = group.querySelector("[data-item]:not([hidden])") === null;
    }
    const shown = followUps.filter((item) => !item.element.hidden).length;
    const text = shown === 0 ? told.dataset.none : told.dataset.some;
    told.classList.toggle("narrowed", shown < followUps.length);
    told.textContent = text.replace("{shown}", shown).replace("{all}", followUps.length);
  }

  // What stands with the group that a card was taken out of: when, what, and what to take care of.
  function whence(item) {
    const note = document.createElement("div");
    const line = document.createElement("p");
    const band = item.home.parentNode.querySelector("h2").textContent;
    line.textContent = `${band} · ${item.home.querySelector("h3").textContent}`;
    note.className = "whence";
    note.append(line, item.home.querySelector(".care").cloneNode(true));
    item.element.querySelector(".top").after(note);
  }

  // What has no name or day goes last; equals stay in the order of urgency, in which the page came.
  function compare(by) {
    return (one, other) => {
      const [a, b] = [one, other].map((item) => item.element.dataset[by] ?? "");
      if (a === "" || b === "") {
        return (a === "") - (b === "");
      }
      return by === "day" ? order.compare(b, a) : order.compare(a, b);
    };
  }

  function sort() {
    const by = form.elements.sort.value;
    document.querySelectorAll(".whence").forEach((note) => note.remove());
    for (const item of by === "" ? items : [...items].sort(compare(by))) {
      const isMoved = by !== "" && item.isCard;
      (isMoved ? together : item.home).insertBefore(item.element, isMoved ? null : item.after);
      if (isMoved) {
        whence(item);
      }
    }
    document.getElementById("sorted-by").textContent = form.elements.sort.selectedOptions[0].text;
  }

  function showAll() {
    sort();
    sift();
  }

  form.elements.sort.addEventListener("change", showAll);
  form.addEventListener("input", sift);
  form.addEventListener("change", sift);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(showAll));
  // A link to what is not shown just now shows all again, and then leads there.
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    if (link && document.getElementById(link.hash.slice(1))?.closest("[hidden]")) {
      form.reset();
      showAll();
    }
  });
  form.hidden = false;
  told.hidden = false;
  sift();
})();
