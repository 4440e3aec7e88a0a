import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, rmSync } from "node:fs";
import { hostname } from "node:os";
import { dirname } from "node:path";
import { EnvironmentError, readEnvironment } from "../environment.ts";
import { dataFolder } from "../folders.ts";
import { certificateFiles } from "../web/certificate.ts";
import { networkHosts } from "../web/origin.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);
const days = "825";

/** The names a certificate is for, as openssl takes them. */
const alternativeNames = (names: readonly string[]): string =>
  [...networkHosts(names)]
    .map((name) => name.replace(/^\[(.*)\]$/, "$1"))
    .map((name) => (/^[\d.]+$|:/.test(name) ? `IP:${name}` : `DNS:${name}`))
    .join(",");

/**
 * `certificate`: makes the certificate with which the bench's link to the network is encrypted, by this machine's
 * openssl, for the bench's names and addresses of today. A browser does not know who made it and asks once; a centre
 * that has a certificate of its own puts it in the place of the two files. Exit code 0 where it was made, 1 where there
 * is one already or openssl is not there.
 */
export async function run(): Promise<number> {
  let environment;
  try {
    environment = readEnvironment(process.env);
  } catch (error) {
    if (!(error instanceof EnvironmentError)) throw error;
    say(error.message);
    return 1;
  }
  const { cert, key } = certificateFiles(dataFolder(environment.data));
  if (existsSync(cert) || existsSync(key)) {
    say(`There is a certificate already: ${cert}. Take it and its key away to have another made.`);
    return 1;
  }
  mkdirSync(dirname(key), { recursive: true, mode: 0o700 });
  const what = ["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes"];
  const names = [
    "-subj",
    `/CN=${hostname()}`,
    "-addext",
    `subjectAltName=${alternativeNames(environment.names)}`,
  ];
  const { status, error, stderr } = spawnSync(
    "openssl",
    [...what, "-days", days, ...names, "-keyout", key, "-out", cert],
    { encoding: "utf8" },
  );
  if (error || status !== 0) {
    for (const file of [cert, key]) rmSync(file, { force: true });
    const why = error ? "openssl is not on this machine" : stderr.trim();
    say(`No certificate was made: ${why}. Put one of your own at ${cert}, its key at ${key}.`);
    return 1;
  }
  chmodSync(key, 0o600);
  say(`Made ${cert}, for ${days} days. The next start uses it. Browsers ask once whether to trust it.`);
  return 0;
}
