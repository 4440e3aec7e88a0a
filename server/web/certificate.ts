import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Where a bench keeps the certificate with which its link to the network is encrypted, and its key. */
export const certificateFiles = (dataFolder: string): { cert: string; key: string } => ({
  cert: join(dataFolder, "tls/cert.pem"),
  key: join(dataFolder, "tls/key.pem"),
});

/** The certificate of a bench; undefined where it has none. @throws a file system error. */
export function readCertificate(dataFolder: string): { cert: Buffer; key: Buffer } | undefined {
  const { cert, key } = certificateFiles(dataFolder);
  if (!existsSync(cert) || !existsSync(key)) return undefined;
  return { cert: readFileSync(cert), key: readFileSync(key) };
}
