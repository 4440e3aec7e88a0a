import { writeFileSync } from "node:fs";
import { folders } from "../folders.ts";
import { readNotices } from "../public-text/notices.ts";
import { installedNotices } from "../public-text/installed-notices.ts";

/** Writes the notices of all packages that go out with the program anew. Exit code 0; 2 for an argument. */
export async function run(args: string[]): Promise<number> {
  if (args.length > 0) {
    console.error(`notices: "${args[0]}" is not known. It takes nothing.`);
    return 2;
  }
  const notices = installedNotices(folders.root, readNotices());
  writeFileSync(folders.notices, `${JSON.stringify(notices, undefined, 2)}\n`);
  console.log(`${notices.length} packages are named.`);
  return 0;
}
