"use strict";

/**
 * Which pages a few words lead to: whole words, beginnings of words, and words with a slip of the hand in
 * them. A word in a title counts before one in a text. It searches the list the site was published with.
 */

/** @typedef {[kind: string, title: string, url: string, text: string]} Entry */
/** @typedef {{entry: Entry, score: number, met: Set<string>}} Hit  `met` are the entry's own words that were met. */
/** @typedef {{hits: Hit[], hasAllWords: boolean}} Answer */
/** @typedef {Map<string, {titles: Set<number>, texts: Set<number>}>} Index  Which entries a word stands in. */

const benchalongSearching = (() => {
  const IN_TITLE = 10;
  const WHOLE = 6;
  const BEGINNING = 3;
  const SLIP = 1;

  /** The words of a text, without accents and capitals. @param {string} text @returns {string[]} */
  function wordsIn(text) {
    const plain = text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
    return plain.match(/[\p{L}\p{N}]+/gu) ?? [];
  }

  /** @param {readonly Entry[]} entries @returns {Index} */
  function indexed(entries) {
    /** @type {Index} */
    const index = new Map();
    /** @param {string} word */
    const placesOf = (word) => {
      const places = index.get(word) ?? { titles: new Set(), texts: new Set() };
      index.set(word, places);
      return places;
    };
    entries.forEach(([, title, , text], at) => {
      for (const word of wordsIn(title)) placesOf(word).titles.add(at);
      for (const word of wordsIn(text)) placesOf(word).texts.add(at);
    });
    return index;
  }

  /** How many slips a word of this length is forgiven. @param {string} word */
  function forgiven(word) {
    if (word.length < 4) return 0;
    return word.length < 8 ? 1 : 2;
  }

  /**
   * Whether at most `most` slips lead from one word to another, or to its beginning: a letter too many,
   * missing, wrong, or two swapped.
   * @param {string} typed @param {string} word @param {number} most
   */
  function isWithin(typed, word, most) {
    if (word.length < typed.length - most) return false;
    /** @type {number[]} */
    let last = [];
    /** @type {number[]} */
    let before = [];
    let row = Array.from({ length: word.length + 1 }, (_, at) => at);
    for (let i = 1; i <= typed.length; i++) {
      [last, before, row] = [before, row, [i]];
      for (let j = 1; j <= word.length; j++) {
        const wrong = typed[i - 1] === word[j - 1] ? 0 : 1;
        let best = Math.min(before[j] + 1, row[j - 1] + 1, before[j - 1] + wrong);
        const isSwap = i > 1 && j > 1 && typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1];
        if (isSwap) best = Math.min(best, last[j - 2] + 1);
        row.push(best);
      }
    }
    return Math.min(row[word.length], ...row.slice(typed.length)) <= most;
  }

  /**
   * The indexed words that a typed word may mean, with what each is worth. Slips are looked for only when
   * nothing begins with the word, so that a word typed right brings no strangers.
   * @param {string} typed @param {Index} index @returns {[word: string, worth: number][]}
   */
  function meant(typed, index) {
    const words = [...index.keys()];
    const begun = words.filter((word) => word.startsWith(typed));
    if (begun.length) return begun.map((word) => [word, word === typed ? WHOLE : BEGINNING]);
    const most = forgiven(typed);
    return most ? words.filter((word) => isWithin(typed, word, most)).map((word) => [word, SLIP]) : [];
  }

  /**
   * The entries that one typed word leads to: the best worth of each, and its words that were met.
   * @param {string} typed @param {Index} index
   */
  function found(typed, index) {
    /** @type {Map<number, {worth: number, met: Set<string>}>} */
    const entries = new Map();
    for (const [word, worth] of meant(typed, index)) {
      const { titles, texts } = index.get(word) ?? { titles: new Set(), texts: new Set() };
      for (const at of new Set([...titles, ...texts])) {
        const entry = entries.get(at) ?? { worth: 0, met: new Set() };
        entry.worth = Math.max(entry.worth, titles.has(at) ? worth * IN_TITLE : worth);
        entries.set(at, { ...entry, met: entry.met.add(word) });
      }
    }
    return entries;
  }

  /**
   * A search over a list of entries, made ready once. Entries with all the words; where there are none,
   * those with the most of them. Best first, equals in the order of the list.
   * @param {readonly Entry[]} entries
   * @returns {(query: string) => Answer}
   */
  function over(entries) {
    const index = indexed(entries);
    return (query) => {
      const typed = [...new Set(wordsIn(query))];
      const each = typed.map((word) => found(word, index));
      const counts = entries.map((_, at) => each.filter((entriesOf) => entriesOf.has(at)).length);
      const most = Math.max(0, ...counts);
      const hits = entries.flatMap((entry, at) => (most && counts[at] === most ? [hit(entry, at, each)] : []));
      return { hits: hits.sort((a, b) => b.score - a.score), hasAllWords: most === typed.length };
    };
  }

  /**
   * @param {Entry} entry @param {number} at @param {ReturnType<typeof found>[]} each
   * @returns {Hit}
   */
  function hit(entry, at, each) {
    const here = each.flatMap((entriesOf) => entriesOf.get(at) ?? []);
    const score = here.reduce((sum, { worth }) => sum + worth, 0);
    return { entry, score, met: new Set(here.flatMap(({ met }) => [...met])) };
  }

  return { over, wordsIn };
})();
