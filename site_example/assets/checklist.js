"use strict";

/** The boxes to tick on a page, and what is said beside those that were ticked before something changed. */

(() => {
  const NOTE = "[data-made-before]";
  /** One size changed often changes ten that follow from it; the note is read at arm's length. */
  const MOST_CHANGES = 3;
  const THEN = "Check the wood, then untick and tick again.";

  /**
   * @typedef {object} Checklist
   * @property {string} step
   * @property {HTMLInputElement[]} boxes
   * @property {string[]} keys
   * @property {StepSizes} shows
   */
  /** @typedef {{called: string, was: Fraction, now: Fraction}} Change */

  /** @param {HTMLElement} list @returns {Checklist} */
  function checklistIn(list) {
    const step = list.dataset.step ?? "";
    /** @type {HTMLInputElement[]} */
    const boxes = benchalongPage.all("input[data-tick]", list);
    const keys = boxes.map((box) => box.dataset.tick ?? "");
    return { step, boxes, keys, shows: benchalongPage.sizesOf(step) };
  }

  /** @param {Checklist} checklist */
  function show({ step, boxes, keys, shows }) {
    const found = benchalongTicks.matched(keys, benchalongTicks.of(step));
    boxes.forEach((box, at) => {
      box.checked = found[at] !== null;
      showNotes(box, found[at] ? notesFor(found[at], shows) : []);
    });
  }

  /** @param {Found} found @param {StepSizes} shows */
  function notesFor({ tick, isReworded }, shows) {
    const notes = [];
    if (isReworded) notes.push([`The words have changed since this was ticked. They were: ${tick.words}`]);
    const changes = changedSizes(tick, shows);
    if (changes.length) notes.push(["Ticked before a change: ", ...inWords(changes), ". ", THEN]);
    return notes;
  }

  /** The sizes that differ from those remembered. @param {Tick} tick @param {StepSizes} shows @returns {Change[]} */
  function changedSizes(tick, { sizes, names }) {
    return Object.keys(sizes).flatMap((name) => {
      const was = benchalongLengths.read(Object.hasOwn(tick.sizes, name) ? tick.sizes[name] : null);
      const now = benchalongLengths.read(sizes[name]);
      if (!was || !now || benchalongLengths.compare(was, now) === 0) return [];
      return [{ called: names[name] ?? name.replace(/[._]/g, " "), was, now }];
    });
  }

  /** The first few changes in words, each once, and how many are left. @param {Change[]} changes */
  function inWords(changes) {
    const said = changes.filter((change, at) => changes.findIndex((other) => isSameChange(change, other)) === at);
    const pieces = said.slice(0, MOST_CHANGES).map(changeInWords);
    const left = changes.length - pieces.length;
    if (left) pieces.push([`and ${left} more ${left === 1 ? "size" : "sizes"}`]);
    return pieces.flatMap((piece, at) => (at ? ["; ", ...piece] : piece));
  }

  /** @param {Change} change @returns {(Node | string)[]} */
  function changeInWords({ called, was, now }) {
    const hint = looksTheSame(was, now) ? " (a change too small to show)" : "";
    return [`${called} was `, benchalongUnits.live(was), ", now ", benchalongUnits.live(now), hint];
  }

  /** A part as wide as a size of the plan changes with it; that is said once. @param {Change} a @param {Change} b */
  function isSameChange(a, b) {
    const { compare } = benchalongLengths;
    return compare(a.was, b.was) === 0 && compare(a.now, b.now) === 0;
  }

  /** @param {Fraction} was @param {Fraction} now */
  function looksTheSame(was, now) {
    return benchalongUnits.shown(was).number === benchalongUnits.shown(now).number;
  }

  /** @param {HTMLInputElement} box @param {(Node | string)[][]} notes */
  function showNotes(box, notes) {
    const item = box.closest("li") ?? box.parentElement;
    if (!item) return;
    for (const old of benchalongPage.all(NOTE, item)) old.remove();
    const id = `made-before-${box.dataset.tick}`;
    box.removeAttribute("aria-describedby");
    if (!notes.length) return;
    const said = notes.map((note) => benchalongPage.make("p", { class: "made-before", "data-made-before": "" }, ...note));
    item.append(...said);
    said.forEach((note, at) => (note.id = `${id}-${at}`));
    box.setAttribute("aria-describedby", said.map((note) => note.id).join(" "));
  }

  /** The words of a check, without what was added to it. @param {HTMLInputElement} box */
  function wordsOf(box) {
    return benchalongPage.wordsOf(box.labels?.[0] ?? box.closest("li")).slice(0, 500);
  }

  /** Keeps or forgets the tick of one box. @param {Checklist} checklist @param {HTMLInputElement} box */
  function changed(checklist, box) {
    const { step, keys, shows } = checklist;
    const at = checklist.boxes.indexOf(box);
    const ticks = benchalongTicks.of(step);
    const before = benchalongTicks.matched(keys, ticks)[at];
    if (before) ticks.delete(before.key);
    if (box.checked) {
      const tick = { when: new Date().toISOString(), words: wordsOf(box), at, beside: keys, sizes: shows.sizes };
      ticks.set(keys[at], tick);
    }
    if (!benchalongTicks.keep(step, ticks)) return sayNotKept();
    show(checklist);
    document.dispatchEvent(new Event("benchalong:ticks"));
  }

  /** Says once, above the first list, that this device keeps no ticks. The boxes still work until the page is left. */
  function sayNotKept() {
    if (document.querySelector("[data-not-kept]")) return;
    const attributes = { class: "not-kept", "data-not-kept": "", role: "status" };
    const note = benchalongPage.make("p", attributes, "Ticks can't be kept on this device.");
    document.querySelector("[data-checks]")?.before(note);
  }

  benchalongPage.whenReady(() => {
    const checklists = benchalongPage.all("[data-checks]").map((list) => checklistIn(/** @type {HTMLElement} */ (list)));
    if (!checklists.length) return;
    if (!benchalongStorage.canKeep()) sayNotKept();
    for (const checklist of checklists) {
      show(checklist);
      for (const box of checklist.boxes) box.addEventListener("change", () => changed(checklist, box));
    }
    const showAll = () => checklists.forEach(show);
    document.addEventListener("benchalong:units", showAll);
    benchalongStorage.whenChangedElsewhere(showAll);
  });
})();
