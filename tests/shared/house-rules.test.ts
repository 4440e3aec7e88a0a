import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { describe, expect, it } from "vitest";

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });

const sources = (folder: string): string[] =>
  filesUnder(folder).filter((file) => /\.(ts|svelte|mjs)$/.test(file) && !file.endsWith(".d.ts"));

interface Import {
  file: string;
  target: string;
  isTypeOnly: boolean;
}

/** Every static and dynamic import of a file; a path is given from the project's root, a package by its name. */
const importsOf = (file: string): Import[] => {
  const text = readFileSync(file, "utf8");
  const found = [
    ...text.matchAll(/^\s*(import|export)\s+(type\s)?[^"';]*?from\s*["']([^"']+)["']/gm),
    ...text.matchAll(/^\s*(import)\s+(type\s)?["']([^"']+)["']/gm),
    ...text.matchAll(/\b(import)\((type\s)?["']([^"']+)["']\)/g),
  ];
  return found.map(([, , type, target = ""]) => ({
    file,
    target: target.startsWith(".") ? normalize(join(dirname(file), target)) : target,
    isTypeOnly: type !== undefined,
  }));
};

const allImports = (folder: string) => sources(folder).flatMap(importsOf);
const isPath = (target: string) => /^(shared|hardware|server|kiosk|scenarios|tests)\//.test(target);
const say = ({ file, target }: Import) => `${file} imports ${target}`;

describe("the arrows between folders", () => {
  it("finds the imports it is about to judge", () => {
    expect(allImports("shared").length).toBeGreaterThan(20);
  });

  it("shared/ imports shared/ alone, zod only in files named *.schema.ts, and the JSON parser only where JSON is read", () => {
    const wrong = allImports("shared").filter(({ file, target }) =>
      isPath(target)
        ? !target.startsWith("shared/")
        : !(target === "zod" && file.endsWith(".schema.ts")) &&
          !(target === "jsonc-parser" && file === "shared/reading/json-fault.ts"),
    );
    expect(wrong.map(say)).toEqual([]);
  });

  it("hardware/ imports shared/ and itself", () => {
    const wrong = allImports("hardware").filter(({ target }) => /^(server|kiosk|tests)\//.test(target));
    expect(wrong.map(say)).toEqual([]);
  });

  it("server/ opens the hardware in its composing file and its commands only, and never the kiosk", () => {
    const mayOpen = (file: string) => file === "server/parts.ts" || file.startsWith("server/commands/");
    const wrong = allImports("server").filter(
      ({ file, target, isTypeOnly }) =>
        /^(kiosk|tests)\//.test(target) ||
        ["onoff", "node-libgpiod"].includes(target) ||
        (target.startsWith("hardware/") && !mayOpen(file) && !isTypeOnly),
    );
    expect(wrong.map(say)).toEqual([]);
  });

  it("kiosk/ imports protocol, scenario types and words of the trade; never a rule or a computation", () => {
    const wrong = allImports("kiosk").filter(
      ({ target, isTypeOnly }) =>
        /^(server|hardware|tests)\//.test(target) ||
        (/^shared\/(rules|circuit|electrical)\//.test(target) && !isTypeOnly) ||
        (target.endsWith(".schema.ts") && !isTypeOnly) ||
        target.startsWith("zod"),
    );
    expect(wrong.map(say)).toEqual([]);
  });
});

describe("the top level", () => {
  it("holds the agreed folders and files and no other but dot, config, lock and licence files", () => {
    const agreed =
      "README.md DEVELOPERS.md package.json tsconfig.json server kiosk hardware scenarios tests shared";
    const others = /^(\..*|.*\.config\.(ts|js)|package-lock\.json|LICENSE|node_modules|dist|coverage)$/;
    const found = readdirSync(".").filter((name) => !agreed.split(" ").includes(name) && !others.test(name));
    expect(found).toEqual([]);
  });
});

describe("the lock file", () => {
  it("names no place that packages are fetched from", () => {
    expect(readFileSync("package-lock.json", "utf8")).not.toContain('"resolved": "http');
  });
});
