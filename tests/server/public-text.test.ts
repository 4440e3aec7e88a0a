import { describe, expect, it } from "vitest";
import { type PublicSheet, publicSheetNames } from "../../shared/protocol/public-text.ts";
import { languages } from "../../shared/text/languages.ts";
import { installedNotices } from "../../server/public-text/installed-notices.ts";
import { readNotices } from "../../server/public-text/notices.ts";
import { publicSheet } from "../../server/public-text/public-sheet.ts";
import { testServer } from "./test-server.ts";

const facts = { keepYears: 6 };
const textOf = ({ parts }: PublicSheet): string =>
  parts.flatMap(({ heading, lines }) => [heading, ...lines]).join("\n");

describe("the sheets that anybody may read", () => {
  it.each([
    ["en", 1, "1 year after you last worked here"],
    ["en", 6, "6 years after you last worked here"],
    ["pl", 1, "jeszcze 1 rok po"],
    ["pl", 3, "jeszcze 3 lata po"],
    ["pl", 6, "jeszcze 6 lat po"],
    ["pl", 22, "jeszcze 22 lata po"],
  ] as const)("count years as people do: %s, %i", (language, keepYears, said) => {
    expect(textOf(publicSheet("data-protection", language, { keepYears }))).toContain(said);
  });

  it("are there in every language, each with as many parts and lines as in the others and no gap left", () => {
    for (const name of publicSheetNames) {
      const [first, ...others] = languages.map((language) => publicSheet(name, language, facts));
      const shape = (sheet: PublicSheet | undefined) => sheet?.parts.map(({ lines }) => lines.length);
      for (const other of others) {
        expect(shape(other), name).toEqual(shape(first));
        expect(textOf(other), name).not.toBe(first && textOf(first));
      }
      for (const language of languages)
        expect(textOf(publicSheet(name, language, facts)), name).not.toMatch(/\{\w+\}/);
    }
  });

  // Regulation (EU) 2016/679 (GDPR), kept in UK law, Article 13(1) and (2): what a person is told.
  it.each([
    ["13(1)(a) the controller", /controller/],
    ["13(1)(b) the data protection officer", /data protection officer/],
    ["13(1)(c) purposes and lawful basis", /taught and assessed.*\n?.*lawful basis/s],
    ["13(1)(e) recipients", /Your trainer, your assessor, the verifier/],
    ["13(1)(f) other countries", /another country/],
    ["13(2)(a) how long", /6 years after you last worked here/],
    [
      "13(2)(b) access, rectification, erasure, restriction, objection, portability",
      /show you.*copy.*put right.*erase.*use it less.*object/,
    ],
    ["13(2)(c) withdrawing consent", /take it back/],
    ["13(2)(d) complaint", /Information Commissioner/],
    ["13(2)(e) whether it has to be given", /To work here assessed you have to be known by name/],
    ["13(2)(f) automated decisions", /A person decides/],
  ])("tell what Article %s asks for", (_article, said) => {
    expect(textOf(publicSheet("data-protection", "en", facts))).toMatch(said);
  });

  it("send whoever could be hurt to the wiring rules in force and to competent people", () => {
    const told = textOf(publicSheet("cautions", "en", facts));
    for (const said of [
      "prove dead",
      "competent",
      "BS 7671",
      "Part P",
      "extra-low voltage",
      "no certificate",
    ])
      expect(told).toContain(said);
  });
});

describe("the notices of what others made", () => {
  it("name every package that goes out with the program, as it is installed: else `npm run notices`", () => {
    const now = installedNotices(".", readNotices());
    const nameOf = ({ name, version, licence }: (typeof now)[number]) => `${name} ${version} ${licence}`;
    expect(readNotices().map(nameOf)).toEqual(now.map(nameOf));
    expect(readNotices()).toEqual(now);
    const names = now.map(({ name }) => name);
    for (const name of ["express", "better-sqlite3", "svelte", "uplot", "@fontsource/atkinson-hyperlegible"])
      expect(names).toContain(name);
    expect(names).not.toContain("typescript");
    expect(now.filter(({ licence }) => licence === "")).toEqual([]);
  });

  it("are under licences that let them be passed on", () => {
    const known =
      /^(MIT|ISC|Apache-2\.0|BSD-[23]-Clause|OFL-1\.1|0BSD|Unlicense|MPL-2\.0|MIT-0|CC0-1\.0|BlueOak-1\.0\.0)$/;
    const strange = readNotices().filter(({ licence }) =>
      licence
        .replace(/[()]/g, "")
        .split(" OR ")
        .every((one) => !known.test(one)),
    );
    expect(strange).toEqual([]);
  });
});

describe("the addresses of what is public", () => {
  it("give each sheet as a page and as data, in the language that is asked for, else in the bench's", async () => {
    const { bench, url } = await testServer();
    for (const name of publicSheetNames) {
      const page = await fetch(`${url}/public/${name}?language=pl`);
      expect(page.headers.get("content-type")).toContain("text/html");
      const html = await page.text();
      expect(html).toContain(`<html lang="pl">`);
      expect(html).not.toContain("<script");
      const data = (await (await fetch(`${url}/public/${name}.json?language=en`)).json()) as PublicSheet;
      expect(data.name).toBe(name);
      expect(data.all.map((one) => one.name)).toEqual([...publicSheetNames]);
    }
    bench.bench.core.session.remember({ language: "pl" });
    expect(await (await fetch(`${url}/public`)).text()).toContain(`<html lang="pl">`);
    expect(await (await fetch(`${url}/public?language=en`)).text()).toContain(`<html lang="en">`);
    expect((await fetch(`${url}/public/nothing`)).status).toBe(404);
    expect(await (await fetch(`${url}/public/data-protection?language=en`)).text()).toContain(
      "3 years after",
    );
  });

  it("bring the bench's own letters along, and no other file", async () => {
    const { url } = await testServer();
    const html = await (await fetch(`${url}/public/cautions?language=pl`)).text();
    const files = [...html.matchAll(/url\("([^"]+)"\)/g)].map(([, path]) => path);
    expect(files).toHaveLength(4);
    for (const path of files) {
      const file = await fetch(`${url}${path}`);
      // A WOFF2 file begins with its signature (W3C WOFF File Format 2.0, 4.1).
      expect(
        Buffer.from(await file.arrayBuffer())
          .subarray(0, 4)
          .toString("latin1"),
      ).toBe("wOF2");
    }
    for (const path of ["greek-400", "latin-400.woff2", "..%2f..%2fpackage.json"])
      expect((await fetch(`${url}/public/letters/${path}`)).status).toBe(404);
  });
});
