import { z } from "zod";
import { type StaffRole, staffRoles } from "../../shared/protocol/author.ts";

/** The parts people have in the workshop. */
export const personRoles = ["learner", ...staffRoles] as const;
export type PersonRole = (typeof personRoles)[number];

/** A person as the bench knows them. The log knows only the id. */
export interface Person {
  id: string;
  name: string;
  role: PersonRole;
}

/** Whoever is not a learner: unlocks with a PIN or a badge. */
export type Staff = Person & { role: StaffRole };

export const isStaff = (person: Person): person is Staff => person.role !== "learner";

/** What was agreed with a learner. */
export const adjustmentsSchema = z.strictObject({
  extraTimePercent: z.number().int().min(0).max(300),
  hasRests: z.boolean(),
  isLarge: z.boolean(),
  isReadAloud: z.boolean(),
});

/** What is told of a person, and sealed where it is kept. */
export const toldSchema = z.strictObject({
  name: z.string().trim().min(1).max(60),
  centreNumber: z.string().trim().max(30).default(""),
  adjustments: adjustmentsSchema.optional(),
});
export type Told = z.infer<typeof toldSchema>;

/** A PIN: digits alone, six to twelve of them. */
export const pinSchema = z.string().regex(/^\d{6,12}$/, "six to twelve digits");
/** What a badge reads as. */
export const badgeSchema = z.string().min(1).max(64);
