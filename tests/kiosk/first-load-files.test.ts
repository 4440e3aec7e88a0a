import { describe, expect, it } from "vitest";
import { firstLoadFiles } from "../speed/first-load-files.ts";

describe("what a page loads at first", () => {
  it("is its script, what is loaded ahead for that, and its styles; neither its icon nor what is only named", () => {
    const page = `<head><link rel="icon" href="data:,"><meta content="/assets/not.js">
      <script type="module" crossorigin src="/assets/index-a.js"></script>
      <link rel="modulepreload" crossorigin href="/assets/shared-b.js">
      <link rel="stylesheet" crossorigin href="/assets/index-c.css">
      <link rel="prefetch" href="/assets/later-d.js"></head><body>TestStep-e.js</body>`;
    expect(firstLoadFiles(page)).toEqual([
      "/assets/index-a.js",
      "/assets/shared-b.js",
      "/assets/index-c.css",
    ]);
  });
});
