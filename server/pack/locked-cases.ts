import { basename, join } from "node:path";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { readCases } from "../cases/wiring-case.ts";
import { jsonFilesIn } from "../files/read-file-with.ts";
import { folders } from "../folders.ts";

/** The cases that the rule pack is locked by, by file. */
export const lockedCases = (): { file: string; wiring: Wiring }[] =>
  jsonFilesIn(join(folders.root, "tests/shared/rules/cases")).map((path) => ({
    file: basename(path, ".json"),
    wiring: readCases([path])[0]!.wiring,
  }));
