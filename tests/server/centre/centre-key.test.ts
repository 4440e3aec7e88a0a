import { existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { CentreKey, openCentreKey, readCentreKey, sealForCentre } from "../../../server/centre/centre-key.ts";
import { temporaryFolder } from "../temporary-folder.ts";

const told = { name: "Ada Marsh", centreNumber: "N-17" };

describe("the centre's key", () => {
  it("reads what was sealed for it, of the person it was sealed of alone", async () => {
    const key = openCentreKey(temporaryFolder());
    const sealed = await sealForCentre("person-1", told, key.publicKey);
    expect(sealed).not.toContain("Ada");
    expect(await key.unseal("person-1", sealed)).toEqual(told);
    expect(await key.unseal("person-2", sealed)).toBeUndefined();
    expect(await openCentreKey(temporaryFolder()).unseal("person-1", sealed)).toBeUndefined();
    const parts = sealed.split(".");
    // Each part of what was sealed counts (RFC 7516, 5.2): header, nonce, what is told, and what proves it.
    for (const at of [0, 2, 3, 4]) {
      const part = parts[at] ?? "";
      const changed = parts.with(at, (part.startsWith("A") ? "B" : "A") + part.slice(1)).join(".");
      expect([at, await key.unseal("person-1", changed)]).toEqual([at, undefined]);
    }
    // Not the same twice: nobody sees that two benches know the same name.
    expect(await sealForCentre("person-1", told, key.publicKey)).not.toBe(sealed);
  });

  it("is made once and kept for its own user alone; a broken one is not written over", () => {
    const folder = temporaryFolder();
    expect(readCentreKey(folder)).toBeUndefined();
    const { publicKey } = openCentreKey(folder);
    expect(openCentreKey(folder).publicKey).toBe(publicKey);
    const path = join(folder, "centre-key.json");
    expect(statSync(path).mode & 0o777).toBe(0o600);
    const other = openCentreKey(temporaryFolder()).publicKey;
    writeFileSync(path, readFileSync(path, "utf8").replace(publicKey, other));
    expect(() => openCentreKey(folder)).toThrow(expect.objectContaining({ code: "secret-broken" }));
    expect(existsSync(path)).toBe(true);
  });

  it("is a key of RFC 7748: its two halves belong together as those of section 6.1 (from memory)", () => {
    const base64Url = (hex: string) => Buffer.from(hex, "hex").toString("base64url");
    const folder = temporaryFolder();
    const x = base64Url("de9edb7d7b7dc1b4d35b61c2ece435373f8343c85b78674dadfc7e146f882b4f");
    const d = base64Url("5dab087e624a8a4b79e17f8b83800ee66f3bb1292618b6fd1c2f8b27ff88e0eb");
    writeFileSync(join(folder, "centre-key.json"), JSON.stringify({ kty: "OKP", crv: "X25519", x, d }));
    expect(readCentreKey(folder)).toBeInstanceOf(CentreKey);
    expect(readCentreKey(folder)?.publicKey).toBe(x);
  });
});
