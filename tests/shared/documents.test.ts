import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";

const folders = ["shared", "hardware", "server", "kiosk", "scenarios", "tests"];
const namesIn = (folder: string, recursive: boolean): string[] =>
  readdirSync(folder, { recursive, encoding: "utf8" }).map((name) => join(folder, name));
const documents = [...namesIn(".", false), ...folders.flatMap((folder) => namesIn(folder, true))]
  .filter((file) => file.endsWith(".md"))
  .map((file) => ({ file, text: readFileSync(file, "utf8") }));

const matches = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].map(([, wanted = ""]) => wanted);

/** Where a link of a document leads, its heading left off; none that leads out of the project. */
const linksOf = (text: string): string[] =>
  matches(text, /\]\(([^()\s]+)\)/g).filter((to) => !/^(https?|mailto):|^#/.test(to));

describe("what the project tells about itself", () => {
  it("is found where it stands, links and all", () => {
    expect(documents.map(({ file }) => file)).toEqual(
      expect.arrayContaining(["README.md", "DEVELOPERS.md", join("hardware", "pi-setup", "guide.md")]),
    );
    expect(documents.flatMap(({ text }) => linksOf(text)).length).toBeGreaterThan(5);
  });

  it.each(documents)("links from $file to files that are there", ({ file, text }) => {
    const dead = linksOf(text).filter((to) => !existsSync(join(dirname(file), to.replace(/#.*/, ""))));
    expect(dead).toEqual([]);
  });

  it.each(documents)("names in $file only files and folders that are there", ({ text }) => {
    const named = matches(text, /`((?:shared|hardware|server|kiosk|scenarios|tests)\/[\w./-]*)`/g);
    expect(named.filter((path) => !existsSync(path))).toEqual([]);
  });

  it.each(documents)("names in $file only commands that are there", ({ text }) => {
    const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: object };
    const named = matches(text, /npm run ([a-z][a-z-]*)/g);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });
});
