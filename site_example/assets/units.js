"use strict";

/**
 * Inches or millimetres, one at a time: two numbers side by side get mixed up at the saw. What the
 * reader chose is remembered, and is put in place while the page is still being read in, so that no
 * number changes before their eyes.
 */

const benchalongUnits = (() => {
  const KEY = "units";
  const SIZES = "[data-mm].size, data.size[value]";
  /** Drills come in 64ths of an inch and tenths of a millimetre, however finely the plan shows its sizes. */
  const DRILLS = { inch: { n: 127n, d: 320n }, millimetre: { n: 1n, d: 10n } };
  const WORDS = "[data-unit-word]";

  /** @type {Record<System, {long: string, short: string}>} */
  const words = {
    inch: { long: "inches", short: "in" },
    millimetre: { long: "millimetres", short: "mm" },
  };
  /** @type {Record<System, Fraction>} */
  const steps = {
    inch: benchalongLengths.read(benchalongPage.inchStep) ?? { n: 127n, d: 160n },
    millimetre: benchalongLengths.read(benchalongPage.millimetreStep) ?? { n: 1n, d: 10n },
  };

  const written = isSystem(benchalongPage.units) ? benchalongPage.units : "inch";
  let system = remembered() ?? written;

  /** @param {unknown} value @returns {value is System} */
  function isSystem(value) {
    return value === "inch" || value === "millimetre";
  }

  /** @returns {System | null} */
  function remembered() {
    const kept = benchalongStorage.read(KEY);
    return isSystem(kept) ? kept : null;
  }

  /** @param {System} of @returns {System} */
  function other(of) {
    return of === "inch" ? "millimetre" : "inch";
  }

  /** A length in the reader's system. @param {Fraction} length @param {Record<System, Fraction>} [as] */
  function shown(length, as = steps) {
    return benchalongLengths.shown(length, system, as[system]);
  }

  /** @param {Element} element @param {string} text */
  function setText(element, text) {
    if (element.textContent !== text) element.textContent = text;
  }

  /** @param {Element} element */
  function showSize(element) {
    const exact = benchalongLengths.read(element.getAttribute("data-mm") ?? element.getAttribute("value"));
    if (!exact) return;
    const { number, isRounded, text } = shown(exact, element.classList.contains("drill") ? DRILLS : steps);
    setText(element, element.classList.contains("bare") ? `${isRounded ? "≈" : ""}${number}` : text);
  }

  /** @param {Element} element */
  function showWord(element) {
    const { long, short } = words[system];
    setText(element, element.getAttribute("data-unit-word") === "short" ? short : long);
  }

  /** Shows all of the page in the reader's system. What is right already is left alone. */
  function show() {
    document.documentElement.dataset.units = system;
    for (const element of benchalongPage.all(SIZES)) showSize(element);
    for (const element of benchalongPage.all(WORDS)) showWord(element);
    for (const button of benchalongPage.all("[data-switch=units]")) setText(button, `Show ${words[other(system)].long}`);
  }

  /** An exact length as a live element. @param {Fraction} length */
  function live(length) {
    const exact = length.d === 1n ? `${length.n}` : `${length.n}/${length.d}`;
    return benchalongPage.make("data", { class: "size", value: exact }, shown(length).text);
  }

  /** @param {System} chosen */
  function change(chosen) {
    system = chosen;
    show();
    document.dispatchEvent(new Event("benchalong:units"));
  }

  /** Shows the page in the reader's system as it arrives, before it is first painted. */
  function showAsItArrives() {
    const watch = new MutationObserver(show);
    watch.observe(document, { childList: true, subtree: true });
    benchalongPage.whenReady(() => watch.disconnect());
  }

  if (system !== written && document.readyState === "loading") showAsItArrives();
  benchalongPage.whenReady(() => {
    show();
    for (const button of /** @type {HTMLElement[]} */ (benchalongPage.all("[data-switch=units]"))) {
      button.hidden = false;
      button.addEventListener("click", () => {
        change(other(system));
        benchalongStorage.keep(KEY, system);
      });
    }
    benchalongStorage.whenChangedElsewhere((key) => {
      if (key === KEY || key === "") change(remembered() ?? written);
    });
  });

  return { shown, live, words: () => words[system] };
})();
