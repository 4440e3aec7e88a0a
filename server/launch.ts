import { pathToFileURL } from "node:url";
import { dataFolder, folders } from "./folders.ts";
import { programToStart, versionIn } from "./update/program-to-start.ts";

const note = (sentence: string): void => void process.stderr.write(`Spurwise: ${sentence}\n`);

// What the service starts: the program that was installed, or the one that brought it up to date.
const data = dataFolder(process.env["SPURWISE_DATA"]);
// Another program would look for its data beside itself.
process.env["SPURWISE_DATA"] = data;
const chosen = await programToStart(data, versionIn(folders.root), note).catch((error: unknown) => {
  note(error instanceof Error ? error.message : String(error));
  return undefined;
});
if (chosen === undefined) await import("./main.ts");
else await import(/* @vite-ignore */ pathToFileURL(chosen).href);
