"use strict";

/**
 * What this device keeps for the reader of one project. A browser may refuse to keep anything, or run
 * out of room; then nothing is kept and the caller is told, so that the page can say so.
 */

const benchalongStorage = (() => {
  const prefix = `benchalong/${benchalongPage.project}/`;

  /** What was kept, or null. It may have been changed by anyone: check its shape. @param {string} key @returns {unknown} */
  function read(key) {
    try {
      return JSON.parse(localStorage.getItem(prefix + key) ?? "null");
    } catch {
      return null;
    }
  }

  /** True when it was kept. @param {string} key @param {unknown} value */
  function keep(key, value) {
    try {
      localStorage.setItem(prefix + key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  }

  /** @param {string} key */
  function forget(key) {
    try {
      localStorage.removeItem(prefix + key);
    } catch {
      // Where nothing can be kept there is nothing to forget.
    }
  }

  /** Whether this device keeps anything at all. */
  function canKeep() {
    const kept = keep("probe", 1);
    forget("probe");
    return kept;
  }

  /**
   * Runs `work` with the key when another page of the project has kept or forgotten something; with ""
   * when it could be anything, as on the way back to a page that the browser had put aside.
   * @param {(key: string) => void} work
   */
  function whenChangedElsewhere(work) {
    addEventListener("storage", ({ key }) => {
      if (key === null || key.startsWith(prefix)) work((key ?? "").slice(prefix.length));
    });
    addEventListener("pageshow", ({ persisted }) => {
      if (persisted) work("");
    });
  }

  return { read, keep, forget, canKeep, whenChangedElsewhere };
})();
