"use strict";

/**
 * The form in which a builder writes a question. There is no server: the builder hands the text over
 * themselves. What is half written is kept on the device, and so is the name they go by.
 */

(() => {
  const HANDLE = "handle";
  /** A step with many parts shows more sizes than anyone reads in a mail. */
  const MOST_SIZES = 12;

  /** @param {string} step */
  const draftOf = (step) => `draft/${step}`;

  /** The day on the reader's own clock. */
  function today() {
    const now = new Date();
    return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
  }

  /** The sizes of a step in the reader's system, in words: `stile 2 3/8 in`. @param {StepSizes} shows @param {string} only */
  function sizesInWords({ sizes, names }, only) {
    const chosen = Object.keys(sizes).filter((name) => !only || name === only);
    const said = chosen.slice(0, MOST_SIZES).map((name) => `${names[name] ?? name} ${sizeInWords(sizes[name])}`);
    const left = chosen.length - said.length;
    return [...said, ...(left ? [`and ${left} more`] : [])].join("; ");
  }

  /** @param {string} exact */
  function sizeInWords(exact) {
    const length = benchalongLengths.read(exact);
    return length ? benchalongUnits.shown(length).text : "";
  }

  /** @param {HTMLFormElement} form @param {string} name */
  function field(form, name) {
    const found = form.elements.namedItem(name);
    const isField =
      found instanceof HTMLInputElement || found instanceof HTMLTextAreaElement || found instanceof HTMLSelectElement;
    return isField ? found : null;
  }

  /** @param {HTMLFormElement} form @returns {Question} */
  function written(form) {
    const { step = "", stepTitle = "", projectTitle = "" } = form.dataset;
    /** @param {string} name */
    const valueOf = (name) => field(form, name)?.value ?? "";
    return {
      project: projectTitle,
      step,
      stepTitle,
      edition: benchalongPage.edition,
      sizes: sizesInWords(benchalongPage.sizesOf(step), valueOf("size")),
      units: benchalongUnits.words().long,
      title: valueOf("title"),
      text: valueOf("text"),
      by: valueOf("by"),
      when: today(),
    };
  }

  /** @param {HTMLFormElement} form @param {string} words */
  function tell(form, words) {
    for (const region of benchalongPage.all("[data-question-told]", form)) region.textContent = words;
  }

  /** False, and the reader is led to the field, when what a question can't do without is missing. @param {HTMLFormElement} form */
  function isWhole(form) {
    return form.reportValidity();
  }

  /** @param {HTMLFormElement} form */
  async function copy(form) {
    const text = benchalongAsking.asText(written(form));
    const isCopied = (await copied(text)) || selectedAndCopied(form, text);
    tell(form, isCopied ? "Copied." : "The text is selected. Copy it with your keyboard, or press on it and choose copy.");
  }

  /** Through the clipboard, which a browser may refuse or not have. @param {string} text */
  async function copied(text) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {
      return false;
    }
  }

  /** Selects the text where it stands on the page, and copies it if the browser still does that. @param {HTMLFormElement} form @param {string} text */
  function selectedAndCopied(form, text) {
    const whole = form.querySelector("[data-question-whole]");
    if (!(whole instanceof HTMLTextAreaElement)) return false;
    whole.value = text;
    whole.focus();
    whole.select();
    return document.execCommand("copy");
  }

  /** @param {HTMLFormElement} form */
  function download(form) {
    const question = written(form);
    const address = URL.createObjectURL(new Blob([benchalongAsking.asFile(question)], { type: "text/markdown" }));
    const name = benchalongAsking.fileName(question);
    benchalongPage.make("a", { href: address, download: name }).click();
    // The browser may start reading only after this turn.
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
    tell(form, `Saved as ${name}.`);
  }

  /** Shows what would be handed over now, and keeps the draft. @param {HTMLFormElement} form */
  function show(form) {
    const question = written(form);
    for (const whole of benchalongPage.all("[data-question-whole]", form)) {
      /** @type {HTMLTextAreaElement} */ (whole).value = benchalongAsking.asText(question);
    }
    for (const link of benchalongPage.all("a[data-hand-over=mail]", form)) {
      link.setAttribute("href", benchalongAsking.asMail(link.getAttribute("href") ?? "mailto:", question));
    }
  }

  /** @param {HTMLFormElement} form */
  function keepDraft(form) {
    const { step, title, text, by } = written(form);
    if (title || text) benchalongStorage.keep(draftOf(step), { title, text });
    else benchalongStorage.forget(draftOf(step));
    benchalongStorage.keep(HANDLE, by);
  }

  /** @param {HTMLFormElement} form */
  function takeUpDraft(form) {
    const draft = benchalongPage.textsIn(benchalongStorage.read(draftOf(form.dataset.step ?? "")));
    const by = benchalongStorage.read(HANDLE);
    const kept = { ...draft, by: typeof by === "string" ? by : "" };
    for (const [name, value] of Object.entries(kept)) {
      const into = name === "title" || name === "text" || name === "by" ? field(form, name) : null;
      if (into && !into.value) into.value = value;
    }
  }

  /** Offers each size of the step, where the form asks which one it is about. @param {HTMLFormElement} form */
  function offerSizes(form) {
    const select = field(form, "size");
    if (!(select instanceof HTMLSelectElement)) return;
    const { sizes, names } = benchalongPage.sizesOf(form.dataset.step ?? "");
    for (const name of Object.keys(sizes)) {
      const option = select.querySelector(`option[value="${CSS.escape(name)}"]`) ?? benchalongPage.make("option", { value: name });
      option.textContent = `${names[name] ?? name}: ${sizeInWords(sizes[name])}`;
      select.append(option);
    }
  }

  /** @param {HTMLFormElement} form */
  function start(form) {
    /** @type {Record<string, () => unknown>} */
    const ways = { copy: () => copy(form), file: () => download(form) };
    takeUpDraft(form);
    offerSizes(form);
    show(form);
    form.hidden = false;
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("input", () => {
      keepDraft(form);
      show(form);
    });
    document.addEventListener("benchalong:units", () => {
      offerSizes(form);
      show(form);
    });
    for (const button of benchalongPage.all("[data-hand-over]", form)) {
      const way = ways[button.getAttribute("data-hand-over") ?? ""];
      if (way) button.addEventListener("click", () => isWhole(form) && way());
    }
  }

  benchalongPage.whenReady(() => {
    for (const form of benchalongPage.all("form[data-question]")) start(/** @type {HTMLFormElement} */ (form));
  });
})();
