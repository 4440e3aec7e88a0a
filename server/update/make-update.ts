import { createPrivateKey, sign } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { manifestName, sha256Of, signatureName, type UpdateManifest } from "./update-manifest.ts";
import { versionIn } from "./program-to-start.ts";

/** What a bench is brought up to date with: what is set up on a Pi, but its packages. */
const parts = [
  "dist/kiosk",
  "dist/server",
  "hardware/boards",
  "scenarios",
  "package.json",
  "package-lock.json",
  "LICENSE",
];

const filesUnder = (root: string, path: string): string[] =>
  statSync(join(root, path)).isDirectory()
    ? readdirSync(join(root, path))
        .sort()
        .flatMap((name) => filesUnder(root, `${path}/${name}`))
    : [path];

interface MakeParts {
  /** The built project. */
  root: string;
  /** The folder of the update; files of the same names in it are written over. */
  to: string;
  /** The key of whoever publishes it: Ed25519, PEM. */
  privateKey: string | Buffer;
  wallMs: number;
}

/** Makes a signed update of a built project. @throws where the key is none or a file cannot be read or written. */
export function makeUpdate({ root, to, privateKey, wallMs }: MakeParts): UpdateManifest {
  const key = createPrivateKey(privateKey);
  if (key.asymmetricKeyType !== "ed25519") throw new TypeError("the key is none of Ed25519");
  const paths = parts
    .filter((path) => existsSync(join(root, path)))
    .flatMap((path) => filesUnder(root, path));
  const files = paths.map((path) => {
    const bytes = readFileSync(join(root, path));
    mkdirSync(dirname(join(to, path)), { recursive: true });
    cpSync(join(root, path), join(to, path));
    return { path, sha256: sha256Of(bytes), bytes: bytes.length };
  });
  const manifest: UpdateManifest = { format: 1, version: versionIn(root), madeWallMs: wallMs, files };
  const text = Buffer.from(`${JSON.stringify(manifest, undefined, 1)}\n`);
  writeFileSync(join(to, manifestName), text);
  writeFileSync(join(to, signatureName), `${sign(null, text, key).toString("base64")}\n`);
  return manifest;
}
