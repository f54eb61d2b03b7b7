"use strict";

/**
 * A builder's question as a text to hand over: to paste, to mail, or as a file that the project can take
 * in as it is (`questions/ID.md`: a block of step, by, when, status and title, then Markdown).
 */

/**
 * @typedef {object} Question
 * @property {string} project  its title
 * @property {string} step  its id
 * @property {string} stepTitle
 * @property {string} edition  of the plan the page was published from
 * @property {string} sizes  the sizes as the reader saw them; may be empty
 * @property {string} units  `inches` or `millimetres`
 * @property {string} title
 * @property {string} text
 * @property {string} by  a handle
 * @property {string} when  `2026-03-02`
 */

const benchalongAsking = (() => {
  /** A text on one line, without what a file can't hold. @param {string} text */
  function oneLine(text) {
    return wellFormed(text).replace(/[\s\p{Cc}\u0085\u2028\u2029]+/gu, " ").trim();
  }

  /** Half a character (a lone surrogate) can't be written to a file. @param {string} text */
  function wellFormed(text) {
    return text.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, "\ufffd");
  }

  /** What stands in brackets after `=` is a live size to the project; a builder's text is never one. @param {string} text */
  function withoutHoles(text) {
    return text.replace(/\(=/g, "( =");
  }

  /** A scalar in double quotes, in which nothing has a second meaning. @param {string} text */
  function quoted(text) {
    return JSON.stringify(withoutHoles(oneLine(text)));
  }

  /** Markdown that can't end the file's block or start a reply. @param {string} text */
  function body(text) {
    const lines = wellFormed(text).replace(/\r\n?/g, "\n").replace(/[^\P{Cc}\n\t]/gu, "");
    return withoutHoles(lines).replace(/^(\s*)---+\s*$/gm, "$1***").trim();
  }

  /** A handle: lower case letters, digits and hyphens. @param {string} name */
  function handle(name) {
    const plain = name.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
    return plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "a-builder";
  }

  /** Where the question was asked, in a sentence or two. @param {Question} question */
  function asked({ step, edition, sizes, units }) {
    return `Asked at step ${step}, edition ${edition}, shown in ${units}.${sizes && ` Sizes shown: ${sizes}.`}`;
  }

  /** As a text to read. @param {Question} question */
  function asText(question) {
    const { project, stepTitle, title, text, by } = question;
    const head = `${oneLine(project)}: ${oneLine(stepTitle)}\n${oneLine(title)}`;
    return [head, body(text), asked(question), by && `From ${oneLine(by)}`].filter(Boolean).join("\n\n");
  }

  /** As a file of the project's. @param {Question} question */
  function asFile(question) {
    const { step, by, when, title, text } = question;
    const block = [`step: ${step}`, `by: ${handle(by)}`, `when: ${when}`, "status: open", `title: ${quoted(title)}`];
    return `---\n${block.join("\n")}\n---\n${[body(text), asked(question)].filter(Boolean).join("\n\n")}\n`;
  }

  /** @param {Question} question */
  function fileName({ step, when }) {
    return `question-${step}-${when}.md`;
  }

  /** A mail to `address` (a `mailto:` link, without more). @param {string} address @param {Question} question */
  function asMail(address, question) {
    const subject = encodeURIComponent(`${oneLine(question.project)}: ${oneLine(question.title)}`);
    const text = encodeURIComponent(asText(question).replace(/\n/g, "\r\n"));
    return `${address.replace(/[?#].*$/, "")}?subject=${subject}&body=${text}`;
  }

  return { asText, asFile, asMail, fileName };
})();
