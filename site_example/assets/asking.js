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
  /** What a project's files may not hold: control characters, odd line ends, what only programs use. */
  const ODD = /[\0-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ufdd0-\ufdef\ufeff\ufffe\uffff]/g;
  const HALF_CHARACTERS = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
  /** With the backslashes before it: what opens a live size, HTML or the address of a link. */
  const OPENS = /(\\*)(\(=|<(?=[a-z/!?])|(?<=\])[(:])/gi;
  const LONGEST_HANDLE = 40;

  /** A text on one line. @param {string} text */
  function oneLine(text) {
    return text.replace(ODD, " ").replace(HALF_CHARACTERS, "\ufffd").replace(/\s+/g, " ").trim();
  }

  /** A text's own lines. @param {string} text */
  function lines(text) {
    return text.replace(/\r\n?/g, "\n").replace(ODD, "").replace(HALF_CHARACTERS, "\ufffd").trim();
  }

  /**
   * A builder's words hold no live sizes, no HTML and no links: what would open one stands as it was typed.
   * @param {string} text
   */
  function asTyped(text) {
    return text.replace(OPENS, (_, before, opens) => `${before}${before.length % 2 ? "" : "\\"}${opens}`);
  }

  /** A scalar in double quotes, in which nothing has a second meaning. @param {string} text */
  function quoted(text) {
    return JSON.stringify(oneLine(text).replace(/\\*\(=/g, "\\(="));
  }

  /** Markdown that a project reads without a problem; a line of hyphens would begin a reply. @param {string} text */
  function body(text) {
    return asTyped(lines(text)).replace(/^([ \t]*)-{3,}[ \t]*$/gm, "$1***");
  }

  /** A name as a project knows builders by: letters and digits, with `_ . -` between. @param {string} name */
  function handle(name) {
    const plain = name.normalize("NFC").replace(/[^\p{L}\p{Nd}_.-]+/gu, "-").replace(/^[.-]+/, "");
    return Array.from(plain).slice(0, LONGEST_HANDLE).join("").replace(/-+$/, "") || "a-builder";
  }

  /** Where the question was asked, in a sentence or two. @param {Question} question */
  function asked({ step, edition, sizes, units }) {
    return `Asked at step ${step}, edition ${edition}, shown in ${units}.${sizes && ` Sizes shown: ${sizes}.`}`;
  }

  /** As a text to read. @param {Question} question */
  function asText(question) {
    const { project, stepTitle, title, text, by } = question;
    const head = `${oneLine(project)}: ${oneLine(stepTitle)}\n${oneLine(title)}`;
    return [head, lines(text), asked(question), by && `From ${oneLine(by)}`].filter(Boolean).join("\n\n");
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
