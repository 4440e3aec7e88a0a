import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { run as classListCommand } from "../../../server/commands/class-list.ts";
import { readClassList } from "../../../server/people/class-list.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";

const read = (text: string) => readClassList(Buffer.from(text, "utf8"));
const faultsOf = (text: string) => {
  const list = read(text);
  return list.ok ? [] : list.faults.map(({ line, message }) => `${line}: ${message}`);
};

describe("a class list", () => {
  it("is read by its headings, in any order and with what is not wanted left out", () => {
    expect(read("\uFEFFbadge;Name;Centre Number\r\nL-1;Kasia Wrona;T-011\r\n;Leo Ashdown;\r\n")).toEqual({
      ok: true,
      learners: [
        { line: 2, name: "Kasia Wrona", centreNumber: "T-011", badge: "L-1" },
        { line: 3, name: "Leo Ashdown", centreNumber: "", badge: undefined },
      ],
    });
    expect(read("Imię i nazwisko\nKasia Wrona\n")).toMatchObject({
      ok: true,
      learners: [{ name: "Kasia Wrona" }],
    });
  });

  it("says what is wrong line by line, and takes nothing then", () => {
    expect(
      faultsOf(
        `name,centre number,badge\nKasia,1,L-1\n,2,\n${"x".repeat(61)},3,\nLeo,${"4".repeat(31)},\nMia,5,L-1\nNoor,6,${"b".repeat(65)}\nOla,7,L-7,more\n`,
      ),
    ).toEqual([
      "3: the name is missing or longer than 60 letters",
      "4: the name is missing or longer than 60 letters",
      "5: the centre number is longer than 30 letters",
      "6: the badge stands in line 2 already",
      "7: the badge is longer than 64 letters",
      "8: there are 4 cells, and 3 columns",
    ]);
  });

  it.each([
    { what: "has no heading", text: "Kasia Wrona,T-011\n", says: '1: the first line has no column "name"' },
    { what: "is empty", text: "", says: '1: the first line has no column "name"' },
    {
      what: "is too large",
      text: `name\n${"Kasia\n".repeat(60_000)}`,
      says: "1: the file is larger than 256 kB",
    },
    {
      what: "has too many names",
      text: `name\n${"Kasia\n".repeat(501)}`,
      says: "502: there are more than 500 names",
    },
    {
      what: "is no table",
      text: 'name\n"Kasia\n',
      says: "2: a quotation mark stands where none may stand, or is not closed",
    },
  ])("is refused where it $what", ({ text, says }) => {
    expect(faultsOf(text)).toEqual([says]);
  });

  it("is refused where it is no text, and after twenty faults says that there are more", () => {
    expect(readClassList(Buffer.from([0x6e, 0xff, 0xfe]))).toMatchObject({
      ok: false,
      faults: [{ line: 1 }],
    });
    expect(faultsOf(`name,badge\n${",L\n".repeat(40)}`)).toHaveLength(21);
  });
});

describe("the class list command", () => {
  async function benchFolder(): Promise<string> {
    const folder = temporaryFolder();
    const bench = await new TestBench({ folder, hasDemo: false }).start();
    await bench.parts.people.list.add(
      { name: "Ida Nowak", role: "technician", pin: "482915" },
      { by: "bench", session: null },
    );
    await bench.stop();
    return folder;
  }

  async function command(folder: string, ...args: string[]): Promise<{ code: number; said: string }> {
    let said = "";
    const write = vi.spyOn(process.stdout, "write").mockImplementation((text) => {
      said += String(text);
      return true;
    });
    vi.stubEnv("SPURWISE_DATA", folder);
    try {
      return { code: await classListCommand(args), said };
    } finally {
      write.mockRestore();
      vi.unstubAllEnvs();
    }
  }

  const listFile = (text: string): string => {
    const file = join(temporaryFolder(), "class.csv");
    writeFileSync(file, text);
    return file;
  };

  it("puts all of a list on it or none, whatever the names look like, and the log tells of each", async () => {
    const folder = await benchFolder();
    const names = [
      "Kasia Wrona",
      "../../evil",
      "/etc/passwd",
      '=HYPERLINK("x")',
      "Robert'); DROP TABLE person;--",
    ];
    const rows = names
      .map((name, index) => `"${name.replaceAll('"', '""')}",T-${index},L-${index}\n`)
      .join("");
    const file = listFile(`name,centre number,badge\n${rows}`);
    expect(await command(folder, file)).toEqual({ code: 0, said: "5 learners were added.\n" });
    const own = /^(spurwise\.db|in-use\.lock|secrets\.json|person-keys\.json|signing-key\.pem)/;
    expect(readdirSync(folder).filter((name) => !own.test(name))).toEqual([]);

    const again = await command(folder, file);
    expect(again.code).toBe(1);
    expect(again.said).toContain(
      "line 2: Kasia Wrona is on the list already\nline 2: the badge is somebody's already",
    );
    expect(again.said).toContain("Nobody was added.");
    expect((await command(folder, listFile("name,badge\nNew One,L-99\nNew Two,L-0\n"))).said).toBe(
      "line 3: the badge is somebody's already\nNobody was added.\n",
    );

    const printed = await command(folder);
    expect(printed.said).toContain('"\'=HYPERLINK(""x"")",T-3');
    expect(readClassList(Buffer.from(printed.said))).toMatchObject({ ok: true, learners: { length: 5 } });

    const bench = await new TestBench({ folder, hasDemo: false }).start();
    await bench.does("sign-in", { by: "badge", badge: "L-1" });
    expect(bench.view().person?.name).toBe("../../evil");
    expect(bench.events("person-kept").slice(1)).toHaveLength(5);
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
  });

  it("ends with 2 where there is no such file or no bench, and with 1 where a file is far too large", async () => {
    const folder = await benchFolder();
    expect((await command(folder, "/nowhere.csv")).code).toBe(2);
    expect((await command(temporaryFolder(), listFile("name\nKasia\n"))).code).toBe(2);
    expect((await command(folder, listFile("name\n".padEnd(9_000_000, "x")))).said).toContain(
      "larger than 256 kB",
    );
  });
});
