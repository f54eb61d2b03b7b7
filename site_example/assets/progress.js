"use strict";

/** How far along the reader is: of the piece, of a stage, of a step. */

/** @typedef {{id: string, checks: string[]}} StepChecks */
/** @typedef {{stages: {id: string, steps: StepChecks[]}[]}} PieceChecks */

(() => {
  /** From data/checks.js. @returns {PieceChecks} */
  function allChecks() {
    const given = /** @type {{benchalongChecks?: PieceChecks}} */ (globalThis);
    return given.benchalongChecks ?? { stages: [] };
  }

  /** The steps that `piece`, `stage:ID` or `step:ID` is made of. @param {string} of @returns {StepChecks[]} */
  function stepsOf(of) {
    const [kind, id] = of.split(":");
    const { stages } = allChecks();
    const steps = stages.flatMap((stage) => stage.steps);
    if (kind === "stage") return stages.find((stage) => stage.id === id)?.steps ?? [];
    return kind === "step" ? steps.filter((step) => step.id === id) : steps;
  }

  /** @param {HTMLProgressElement} bar */
  function show(bar) {
    const steps = stepsOf(bar.dataset.progress ?? "");
    const all = steps.reduce((sum, { checks }) => sum + checks.length, 0);
    const ticked = steps.reduce((sum, { id, checks }) => sum + benchalongTicks.count(id, checks), 0);
    const beside = bar.parentElement;
    const words = /** @type {HTMLElement | null} */ (beside?.querySelector("[data-progress-words]") ?? null);
    bar.max = Math.max(all, 1);
    bar.value = ticked;
    if (words) words.textContent = `${ticked} of ${all} ${all === 1 ? "check" : "checks"} ticked`;
    for (const element of [bar, words, beside]) if (element && all) element.hidden = false;
  }

  benchalongPage.whenReady(() => {
    const bars = /** @type {HTMLProgressElement[]} */ (benchalongPage.all("progress[data-progress]"));
    const showAll = () => bars.forEach(show);
    showAll();
    document.addEventListener("benchalong:ticks", showAll);
    benchalongStorage.whenChangedElsewhere(showAll);
  });
})();
