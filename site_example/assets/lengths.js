"use strict";

/**
 * Exact lengths and how they are shown. The same rule as the publisher's own: a length is a fraction of
 * millimetres, rounded only here, halves away from zero, and marked where rounding changed it.
 */

/** @typedef {{n: bigint, d: bigint}} Fraction  In lowest terms, `d` above zero. A length is one in millimetres. */
/** @typedef {"inch" | "millimetre"} System */
/** @typedef {{number: string, unit: "in" | "mm", isRounded: boolean, text: string}} Shown */

const benchalongLengths = (() => {
  const INCH = fraction(127n, 5n);
  const PLACES = 6;
  /** Longer than any length a plan can hold; what stands in storage may be anything. */
  const LONGEST = 400;

  /** @param {bigint} value */
  function magnitude(value) {
    return value < 0n ? -value : value;
  }

  /** @param {bigint} a @param {bigint} b @returns {bigint} */
  function commonDivisor(a, b) {
    while (b) [a, b] = [b, a % b];
    return a;
  }

  /** @param {bigint} n @param {bigint} d  not 0 @returns {Fraction} */
  function fraction(n, d) {
    const shared = commonDivisor(magnitude(n), magnitude(d)) * (d < 0n ? -1n : 1n);
    return { n: n / shared, d: d / shared };
  }

  /** Reads `305/8` or `60`; null for anything else. @param {unknown} text @returns {Fraction | null} */
  function read(text) {
    if (typeof text !== "string" || text.length > LONGEST) return null;
    const found = /^(-?\d+)(?:\/(\d+))?$/.exec(text);
    if (!found) return null;
    const below = BigInt(found[2] ?? "1");
    return below ? fraction(BigInt(found[1]), below) : null;
  }

  /** @param {Fraction} a @param {Fraction} b @returns {Fraction} */
  function divided(a, b) {
    return fraction(a.n * b.d, a.d * b.n);
  }

  /** Below, at or above 0 as `a` is below, equal to or above `b`. @param {Fraction} a @param {Fraction} b */
  function compare(a, b) {
    const difference = a.n * b.d - b.n * a.d;
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  /** To a multiple of `step` (above zero), halves away from zero. @param {Fraction} value @param {Fraction} step */
  function toNearest(value, step) {
    const count = divided({ n: magnitude(value.n), d: value.d }, step);
    const whole = (2n * count.n + count.d) / (2n * count.d);
    return fraction((value.n < 0n ? -whole : whole) * step.n, step.d);
  }

  /** As a woodworker writes it: `2 3/8`, `7/16`, `-1 1/2`, `0`. @param {Fraction} value */
  function mixedFraction(value) {
    const sign = value.n < 0n ? "-" : "";
    const whole = magnitude(value.n) / value.d;
    const rest = magnitude(value.n) % value.d;
    if (!rest) return `${sign}${whole}`;
    return whole ? `${sign}${whole} ${rest}/${value.d}` : `${sign}${rest}/${value.d}`;
  }

  /** A decimal without trailing zeros: `60.3`, `19`. @param {Fraction} value */
  function decimal(value) {
    const one = { n: 1n, d: 1n };
    const scaled = toNearest(fraction(value.n * 10n ** BigInt(PLACES), value.d), one).n;
    const digits = String(magnitude(scaled)).padStart(PLACES + 1, "0");
    const rest = digits.slice(-PLACES).replace(/0+$/, "");
    return `${scaled < 0n ? "-" : ""}${digits.slice(0, -PLACES)}${rest && "."}${rest}`;
  }

  /**
   * A length in one system, to the nearest step of that system.
   * @param {Fraction} length @param {System} system @param {Fraction} step  in millimetres, above zero
   * @returns {Shown}
   */
  function shown(length, system, step) {
    const rounded = toNearest(length, step);
    const isRounded = compare(rounded, length) !== 0;
    const number = system === "inch" ? mixedFraction(divided(rounded, INCH)) : decimal(rounded);
    const unit = system === "inch" ? "in" : "mm";
    return { number, unit, isRounded, text: `${isRounded ? "≈ " : ""}${number} ${unit}` };
  }

  return { read, compare, shown };
})();
