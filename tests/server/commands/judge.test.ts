import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { run } from "../../../server/commands/judge.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { scenarioSchema } from "../../../shared/scenario/scenario.schema.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import type { Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { temporaryFolder } from "../temporary-folder.ts";

const scenario = scenarioSchema.parse(JSON.parse(readFileSync("scenarios/first-spur.json", "utf8")));
const [model] = scenario.modelAnswers;
const right = toWiring({ scenario, built: model ?? { cables: [] } });
const open = toWiring({ scenario, built: { cables: right.cables.slice(0, 2) } });

/** Runs the command on a file with this content; gives its exit code and what it printed. */
async function judged(content: string | Wiring, ...args: string[]) {
  const path = join(temporaryFolder(), "wiring.json");
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  const printed = { out: "", err: "" };
  const out = vi
    .spyOn(console, "log")
    .mockImplementation((line: string) => void (printed.out += `${line}\n`));
  const err = vi
    .spyOn(console, "error")
    .mockImplementation((line: string) => void (printed.err += `${line}\n`));
  onTestFinished(() => {
    out.mockRestore();
    err.mockRestore();
  });
  return { code: await run([path, ...args]), ...printed };
}

describe("judging a wiring file", () => {
  it("ends with 0 and says what it covers where nothing has to be mended", async () => {
    const { code, out } = await judged(right);
    expect(code).toBe(0);
    expect(out).toContain("No findings.");
    expect(out).toContain("Proposal: met");
    expect(out).toMatch(/not workmanship.*Real circuits can kill/);
  });

  it("ends with 1 and says where, what, why and the remedy where something has to be mended", async () => {
    const { code, out } = await judged(open);
    expect(code).toBe(1);
    expect(out).toMatch(/^\S.* {2}.*\[ring-open\/open\]\n( {2}\S.*\n){5}/m);
    expect(out).toContain("Proposal: not yet");
    expect(out).toMatch(/not yet: .*ring/);
  });

  it("is one note for the cables of a radial that the device does not protect; --json keeps one each", async () => {
    const radial = scenarioSchema.parse(JSON.parse(readFileSync("scenarios/branching-radial.json", "utf8")));
    const wrong = radial.wrongAnswers.find(({ name }) => name === "a device too big for the cable");
    const wiring = toWiring({ scenario: radial, built: wrong?.built ?? { cables: [] } });
    const { out } = await judged(wiring);
    expect(out.match(/\[radial-cable\/underrated\]/g)).toHaveLength(1);
    expect(out).toMatch(/ {2}These cables are 2\.5 mm²: (the cable from [^;]*; ){4}the cable from/);
    const { out: json } = await judged(wiring, "--json");
    expect((JSON.parse(json) as ReturnType<typeof judge>).findings).toHaveLength(5);
  });

  it("prints the verdict itself with --json, the same every time", async () => {
    const { code, out } = await judged(open, "--json");
    expect(code).toBe(1);
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(judge(open))));
    expect((await judged(open, "--json")).out).toBe(out);
  });

  it("ends with 0 where something is not known: that has no exit code of its own", async () => {
    const cables = right.cables.map(({ csaMm2: _csaMm2, ...cable }) => cable);
    const { code, out } = await judged({ ...right, cables });
    expect(code).toBe(0);
    expect(out).toContain("Proposal: not yet");
  });

  it.each([
    { what: "no JSON", content: '{ "version": 1,', says: /line 1, column 16: this is not JSON/ },
    {
      what: "an unknown field",
      content: JSON.stringify({ ...right, cable: [] }),
      says: /cable: there is no such field.*"cables"/,
    },
    {
      what: "a cable from nowhere",
      content: JSON.stringify({ ...right, cables: [{ from: "way-1.a", to: "socket-9.a" }] }),
      says: /cables\[0\]\.to: there is no station socket-9/,
    },
    {
      what: "a number that no program can reckon with",
      content: JSON.stringify(right).replace(/"csaMm2":2.5/, '"csaMm2":1e400'),
      says: /csaMm2: the number is far too large/,
    },
    {
      what: "such a number where one of a few is wanted",
      content: JSON.stringify(right).replace(/"version":1/, '"version":1e400'),
      says: /version: a number that is far too large is not known here. Write 1/,
    },
    {
      what: "another version",
      content: JSON.stringify({ ...right, version: 2 }),
      says: /version: 2 is not known here\. Write 1\./,
    },
  ])("ends with 2 and names the place for $what", async ({ content, says }) => {
    const { code, out, err } = await judged(content);
    expect(code).toBe(2);
    expect(err).toMatch(says);
    expect(err).toContain("wiring.json");
    expect(out).toBe("");
  });

  it("finds the file from the folder the command was called in, which npm names in INIT_CWD", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "mine.json"), JSON.stringify(right));
    vi.stubEnv("INIT_CWD", folder);
    const out = vi.spyOn(console, "log").mockImplementation(() => undefined);
    onTestFinished(() => {
      out.mockRestore();
      vi.unstubAllEnvs();
    });
    expect(await run(["mine.json"])).toBe(0);
  });

  it("ends with 2 where no file, two files or a wrong option is named", async () => {
    expect((await judged(right, "another.json")).code).toBe(2);
    const { code, err } = await judged(right, "--jsn");
    expect(code).toBe(2);
    expect(err).toContain("name one wiring file");
  });
});
