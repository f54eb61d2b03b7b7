"use strict";

/** Tables sorted by a click on a column's head: up, down, and back to the order they were written in. */

(() => {
  /** @typedef {"ascending" | "descending" | null} Order */

  /** A cell's value: an exact length, a number, or its words. @param {Element | undefined} cell @returns {Fraction | string} */
  function valueOf(cell) {
    const exact = cell?.querySelector("data[value]")?.getAttribute("value");
    const words = benchalongPage.wordsOf(cell ?? null);
    return benchalongLengths.read(exact ?? words) ?? words;
  }

  /** Lengths and numbers before words. @param {Fraction | string} a @param {Fraction | string} b */
  function compare(a, b) {
    if (typeof a !== "string" && typeof b !== "string") return benchalongLengths.compare(a, b);
    if (typeof a !== "string" || typeof b !== "string") return typeof a === "string" ? 1 : -1;
    return a.localeCompare(b, document.documentElement.lang, { numeric: true });
  }

  /** Sorted by one column; rows with nothing in it come last. @param {HTMLTableRowElement[]} rows  as written @param {number} column @param {Order} order */
  function sorted(rows, column, order) {
    if (!order) return rows;
    const by = order === "ascending" ? 1 : -1;
    const valued = rows.map((row) => ({ row, value: valueOf(row.cells[column]) }));
    const filled = valued.filter(({ value }) => value !== "").sort((a, b) => by * compare(a.value, b.value));
    return [...filled, ...valued.filter(({ value }) => value === "")].map(({ row }) => row);
  }

  /** @param {Order} order @returns {Order} */
  function next(order) {
    if (order === null) return "ascending";
    return order === "ascending" ? "descending" : null;
  }

  /** @param {HTMLTableElement} table */
  function makeSortable(table) {
    const heads = Array.from(table.tHead?.rows[0]?.cells ?? []);
    const bodies = Array.from(table.tBodies, (body) => ({ body, rows: Array.from(body.rows).filter(isSorted) }));

    /** @param {HTMLTableCellElement} head @param {number} column */
    function sortBy(head, column) {
      const order = next(/** @type {Order} */ (head.getAttribute("aria-sort")));
      for (const each of heads) each.removeAttribute("aria-sort");
      if (order) head.setAttribute("aria-sort", order);
      for (const { body, rows } of bodies) body.append(...sorted(rows, column, order));
    }

    heads.forEach((head, column) => {
      if (head.hasAttribute("data-unsortable") || !benchalongPage.wordsOf(head)) return;
      const button = benchalongPage.make("button", { type: "button", class: "sort" }, ...head.childNodes);
      head.append(button);
      button.addEventListener("click", () => sortBy(head, column));
    });
  }

  /** Rows that head a group stay where they are. @param {HTMLTableRowElement} row */
  function isSorted(row) {
    return row.querySelector("th[scope=rowgroup], th[scope=colgroup]") === null;
  }

  benchalongPage.whenReady(() => {
    for (const table of benchalongPage.all("table[data-sortable]")) makeSortable(/** @type {HTMLTableElement} */ (table));
  });
})();
