import { createPublicKey, generateKeyPairSync } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { systemClock } from "../clock/system-clock.ts";
import { folders } from "../folders.ts";
import { fileModes } from "../store/write-whole.ts";
import { makeUpdate } from "../update/make-update.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/** A new key of whoever publishes updates: the private half for them alone, the public half for every bench. */
function makeKey(path: string): void {
  const { privateKey } = generateKeyPairSync("ed25519");
  const pem = privateKey.export({ type: "pkcs8", format: "pem" }).toString();
  writeFileSync(path, pem, { flag: "wx", mode: fileModes.secret });
  writeFileSync(`${path}.pub`, createPublicKey(pem).export({ type: "spki", format: "pem" }));
  say(`Made ${path}: keep it where no bench is. ${path}.pub is for the benches (SPURWISE_UPDATE_KEY).`);
}

/**
 * `make-update <folder> <key.pem>`: makes a signed update of this project, as it is built, in a folder such as a stick; a
 * key that is not there is made. Exit code 0 where it was made, 2 where it could not be.
 */
export async function run(args: string[]): Promise<number> {
  const [to, key] = args;
  if (to === undefined || key === undefined) {
    say("Say where it goes and what it is signed with: npm run make-update -- /media/stick/spurwise key.pem");
    return 2;
  }
  try {
    const path = resolve(key);
    if (!existsSync(path)) makeKey(path);
    const wallMs = Math.round(systemClock().wallMs());
    const made = { root: folders.root, to: resolve(to), privateKey: readFileSync(path), wallMs };
    const { version, files } = await Promise.resolve(makeUpdate(made));
    say(`Made ${resolve(to)}: version ${version}, ${files.length} files, signed.`);
    return 0;
  } catch (error) {
    say(`No update was made: ${error instanceof Error ? error.message : String(error)}`);
    return 2;
  }
}
