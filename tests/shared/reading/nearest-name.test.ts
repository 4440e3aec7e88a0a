import { describe, expect, it } from "vitest";
import { letterDistance, nearestName } from "../../../shared/reading/nearest-name.ts";

describe("how far two words are apart", () => {
  // The first three are the textbook examples of the edit distance (Levenshtein 1966), the last of a swap (Damerau 1964).
  it.each([
    { a: "kitten", b: "sitting", distance: 3 },
    { a: "saturday", b: "sunday", distance: 3 },
    { a: "", b: "abc", distance: 3 },
    { a: "form", b: "from", distance: 1 },
  ])("is $distance letters from $a to $b", ({ a, b, distance }) => {
    expect(letterDistance(a, b)).toBe(distance);
    expect(letterDistance(b, a)).toBe(distance);
  });
});

describe("the name that was meant", () => {
  const fields = ["from", "to", "csaMm2", "lengthM", "method", "insulationMm"];
  it.each([
    { written: "form", meant: "from" },
    { written: "length", meant: "lengthM" },
    { written: "csa", meant: "csaMm2" },
    { written: "csamm2", meant: "csaMm2" },
    { written: "insulatonMm", meant: "insulationMm" },
    { written: "colour", meant: undefined },
    { written: "x", meant: undefined },
  ])("of $written is $meant", ({ written, meant }) => {
    expect(nearestName(written, fields)).toBe(meant);
  });
});
