import { generateKeyPairSync } from "node:crypto";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { logFile } from "../../server/folders.ts";
import { openRecords } from "../../server/open-records.ts";
import { GuessGuard } from "../../server/people/guess-guard.ts";
import { GuessMemory } from "../../server/people/guess-memory.ts";
import { People } from "../../server/people/people.ts";
import { PinHasher } from "../../server/people/pin-hash.ts";
import { byBench } from "../../shared/protocol/author.ts";
import { type BenchProcess, newDataFolder, startBench } from "./bench-process.ts";

export const deskPin = "482915";

/** A class; the badges are L-2 and on. */
export const learners = ["Bryony Cole", "Aled Rees", "Noor Haddad", "Leo Marsh", "Ewa Sikora"] as const;

/** Sets a bench up that lies still: a class with badges, staff with a PIN, and the network let in. */
async function setUpPeople(dataFolder: string): Promise<void> {
  const opened = openRecords(logFile(dataFolder), () => undefined);
  const people = new People({
    store: opened.people,
    demo: [],
    pins: new PinHasher(),
    guard: new GuessGuard(() => performance.now(), new GuessMemory(opened.reading, opened.writing)),
  });
  for (const [name, role] of [
    ["Ida Nowak", "technician"],
    ["Maud Perrin", "trainer"],
    ["Olwen Tansley", "assessor"],
    ["Piotr Lasek", "verifier"],
  ] as const)
    await people.list.add({ name, role, pin: deskPin }, byBench);
  for (const [at, name] of learners.entries())
    await people.list.add({ name, role: "learner", badge: `L-${at + 2}` }, byBench);
  opened.records.memory.write({ language: "en", isLarge: false, person: null, isNetworkChosen: true });
  opened.records.log.checkpoint();
  opened.reading.close();
  opened.writing.close();
}

/** Starts a bench on the small board with those people, let into the network; its data go when it is stopped. */
export async function startBenchWithPeople(networkPort: number, leadPort?: number): Promise<BenchProcess> {
  const dataFolder = newDataFolder();
  await setUpPeople(dataFolder);
  const updateKeyFile = join(dataFolder, "publisher.pub");
  const { publicKey } = generateKeyPairSync("ed25519");
  writeFileSync(updateKeyFile, publicKey.export({ type: "spki", format: "pem" }));
  const running = await startBench({
    ...{ board: "small", dataFolder, networkPort, updateKeyFile },
    ...(leadPort === undefined ? {} : { leadPort }),
  });
  return {
    ...running,
    stop: async () => {
      await running.stop();
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}
