"use strict";

/** The page that searches: results as words are typed, or for the `?q=` that another page's form came with. */

(() => {
  const MOST = 50;
  const EXCERPT = 140;
  const PAUSE = 150;

  /** From data/search.js. @returns {Entry[]} */
  function allEntries() {
    return /** @type {{benchalongSearch?: Entry[]}} */ (globalThis).benchalongSearch ?? [];
  }

  /** The piece of a text around the first word that was met, whole words only. @param {string} text @param {Set<string>} met */
  function excerpt(text, met) {
    const words = text.split(/\s+/);
    const at = Math.max(0, words.findIndex((word) => isMet(word, met)));
    let start = Math.max(0, at - 6);
    let piece = words[start++] ?? "";
    while (start < words.length && piece.length < EXCERPT) piece += ` ${words[start++]}`;
    return `${at > 6 ? "… " : ""}${piece}${start < words.length ? " …" : ""}`;
  }

  /** @param {string} word @param {Set<string>} met */
  function isMet(word, met) {
    return benchalongSearching.wordsIn(word).some((part) => met.has(part));
  }

  /** A text in which the words that were met are marked. @param {string} text @param {Set<string>} met */
  function marked(text, met) {
    return text.split(/(\s+)/).map((word) => (isMet(word, met) ? benchalongPage.make("mark", {}, word) : word));
  }

  /** @param {string} word */
  function capital(word) {
    return word.charAt(0).toUpperCase() + word.slice(1);
  }

  /** @param {Hit} hit */
  function result({ entry: [kind, title, url, text], met }) {
    const { make } = benchalongPage;
    const link = make("a", { href: benchalongPage.root + url }, ...marked(title, met));
    const item = make("li", {}, link, " ", make("span", { class: "kind" }, capital(kind)));
    if (text) item.append(make("p", { class: "excerpt" }, ...marked(excerpt(text, met), met)));
    return item;
  }

  /** @param {Answer} answer */
  function told({ hits, hasAllWords }) {
    if (!hits.length) return "Nothing found. Try fewer words, or only the beginning of one.";
    const count = hits.length === 1 ? "1 found" : `${hits.length} found`;
    const first = hits.length > MOST ? `, the first ${MOST} shown` : "";
    return hasAllWords ? `${count}${first}.` : `Nothing has all of these words. ${count}${first} with some of them.`;
  }

  /** @param {HTMLFormElement} form */
  function start(form) {
    const input = /** @type {HTMLInputElement | null} */ (form.elements.namedItem("q"));
    const list = document.querySelector("[data-results]");
    if (!input || !list) return;
    const search = benchalongSearching.over(allEntries());

    function show() {
      const query = input?.value.trim() ?? "";
      const answer = search(query);
      list?.replaceChildren(...(query ? answer.hits.slice(0, MOST).map(result) : []));
      for (const region of benchalongPage.all("[data-found]")) region.textContent = query ? told(answer) : "";
      for (const index of benchalongPage.all("[data-index]")) /** @type {HTMLElement} */ (index).hidden = query !== "";
    }

    let waiting = 0;
    input.addEventListener("input", () => {
      clearTimeout(waiting);
      waiting = setTimeout(show, PAUSE);
    });
    input.value ||= new URLSearchParams(location.search).get("q") ?? "";
    show();
  }

  benchalongPage.whenReady(() => {
    const form = document.querySelector("form[data-find]");
    if (form instanceof HTMLFormElement) start(form);
  });
})();
