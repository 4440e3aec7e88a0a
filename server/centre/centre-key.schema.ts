import { z } from "zod";

/** Half of a centre's key, as benches are told the public one: 32 bytes in base64url (RFC 7748, RFC 8037). */
export const centreKeySchema = z.string().regex(/^[\w-]{43}$/, "43 letters, digits, hyphens and underscores");
