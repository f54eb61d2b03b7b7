"use strict";

/**
 * The ticks kept for each step. A tick remembers the words it was put to and the sizes the step showed, so
 * that a later edition of the plan can say what has changed since. Steps are known by their id, which
 * stays when they are renumbered.
 */

/**
 * @typedef {object} Tick
 * @property {string} when  an ISO date and time
 * @property {string} words  of the check, as they were read
 * @property {number} at  its place in the list, counted from 0
 * @property {string[]} beside  the keys of all checks in the list then
 * @property {Record<string, string>} sizes  exact lengths by name, as the step showed them
 */
/** @typedef {{key: string, tick: Tick, isReworded: boolean}} Found  `key` is what the tick is kept under. */
/** @typedef {Map<string, Tick>} Ticks */

const benchalongTicks = (() => {
  /** @param {string} step */
  const keyOf = (step) => `step/${step}`;

  /** The tick in what was kept, or null where it isn't one. @param {unknown} kept @returns {Tick | null} */
  function tickIn(kept) {
    if (!benchalongPage.isTable(kept)) return null;
    const { when, words, at, beside, sizes } = kept;
    if (typeof when !== "string" || typeof words !== "string" || !Number.isInteger(at)) return null;
    const keys = Array.isArray(beside) ? beside.filter((key) => typeof key === "string") : [];
    return { when, words, at: Number(at), beside: keys, sizes: benchalongPage.textsIn(sizes) };
  }

  /** @param {string} step @returns {Ticks} */
  function of(step) {
    const kept = benchalongStorage.read(keyOf(step));
    /** @type {Ticks} */
    const ticks = new Map();
    for (const [key, value] of Object.entries(benchalongPage.isTable(kept) ? kept : {})) {
      const tick = tickIn(value);
      if (tick) ticks.set(key, tick);
    }
    return ticks;
  }

  /** True when they were kept. @param {string} step @param {Ticks} ticks */
  function keep(step, ticks) {
    if (ticks.size) return benchalongStorage.keep(keyOf(step), Object.fromEntries(ticks));
    benchalongStorage.forget(keyOf(step));
    return true;
  }

  /**
   * The tick of each check, or null. A check with other words than before takes over the tick that stood in
   * its place, if that one's check is gone and this one wasn't in the list then.
   * @param {readonly string[]} keys  of today's checks, in order
   * @param {Ticks} ticks
   * @returns {(Found | null)[]}
   */
  function matched(keys, ticks) {
    const gone = [...ticks].filter(([key]) => !keys.includes(key));
    return keys.map((key, at) => {
      const own = ticks.get(key);
      if (own) return { key, tick: own, isReworded: false };
      const before = gone.find(([, tick]) => tick.at === at && !tick.beside.includes(key));
      return before ? { key: before[0], tick: before[1], isReworded: true } : null;
    });
  }

  /** How many of a step's checks are ticked. @param {string} step @param {readonly string[]} keys */
  function count(step, keys) {
    return matched(keys, of(step)).filter(Boolean).length;
  }

  return { of, keep, matched, count };
})();
