"use strict";

/** What a page says of itself, and small help with its elements. */

/** @typedef {{sizes: Record<string, string>, names: Record<string, string>}} StepSizes  Exact lengths and plain words, by name. */

const benchalongPage = (() => {
  const said = document.documentElement.dataset;

  /** Runs `work` once all of the page is there, wherever the script stands in it. @param {() => void} work */
  function whenReady(work) {
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", work);
    else work();
  }

  /**
   * A new element. Text is always set as text, never as markup.
   * @template {keyof HTMLElementTagNameMap} T
   * @param {T} tag
   * @param {Record<string, string>} attributes
   * @param {...(Node | string)} inside
   * @returns {HTMLElementTagNameMap[T]}
   */
  function make(tag, attributes = {}, ...inside) {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.append(...inside);
    return element;
  }

  /**
   * Every element that a selector finds, typed.
   * @template {Element} E
   * @param {string} selector
   * @param {ParentNode} within
   * @returns {E[]}
   */
  function all(selector, within = document) {
    return Array.from(/** @type {NodeListOf<E>} */ (within.querySelectorAll(selector)));
  }

  /** The words of an element, as one line. @param {Element | null} element */
  function wordsOf(element) {
    return (element?.textContent ?? "").replace(/\s+/g, " ").trim();
  }

  /** @param {unknown} value @returns {value is Record<string, unknown>} */
  function isTable(value) {
    return typeof value === "object" && value !== null && !Array.isArray(value);
  }

  /** The entries of a table that are texts. @param {unknown} value @returns {Record<string, string>} */
  function textsIn(value) {
    if (!isTable(value)) return {};
    return Object.fromEntries(Object.entries(value).filter(isTextEntry));
  }

  /** @param {[string, unknown]} entry @returns {entry is [string, string]} */
  function isTextEntry(entry) {
    return typeof entry[1] === "string";
  }

  /** What the page's data block holds; an empty table where there is none. @returns {Record<string, unknown>} */
  function data() {
    try {
      const read = JSON.parse(document.getElementById("page-data")?.textContent ?? "{}");
      return isTable(read) ? read : {};
    } catch {
      return {};
    }
  }

  /** The sizes that a step shows on this page. @param {string} step @returns {StepSizes} */
  function sizesOf(step) {
    const read = data();
    const found = read.step === step ? read : isTable(read.steps) ? read.steps[step] : null;
    if (!isTable(found)) return { sizes: {}, names: {} };
    return { sizes: plansOwnFirst(textsIn(found.sizes)), names: textsIn(found.names) };
  }

  /** A size of the plan (`stile`) says more than those of parts that follow from it (`door_rail.width`). @param {Record<string, string>} sizes */
  function plansOwnFirst(sizes) {
    const isPartsOwn = (/** @type {string} */ name) => Number(/^\w+\.\w+$/.test(name));
    return Object.fromEntries(Object.entries(sizes).sort(([a], [b]) => isPartsOwn(a) - isPartsOwn(b)));
  }

  whenReady(() => {
    for (const number of all("[data-edition-number]")) {
      if (said.edition) number.textContent = said.edition;
    }
  });

  return {
    project: said.project ?? "",
    edition: said.edition ?? "",
    root: said.root ?? "",
    units: said.units ?? "",
    inchStep: said.inchStep ?? "",
    millimetreStep: said.millimetreStep ?? "",
    whenReady,
    make,
    all,
    wordsOf,
    isTable,
    textsIn,
    sizesOf,
  };
})();
