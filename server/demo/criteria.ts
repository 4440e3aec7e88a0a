import type { Criteria } from "../desk/criteria.ts";

/** Invented criteria for an invented workshop: a centre puts its own in their place. */
export const demoCriteria: Criteria = {
  id: "demo",
  title: { en: "Demonstration criteria (made up)", pl: "Kryteria na pokaz (zmyślone)" },
  isDemo: true,
  criteria: [
    {
      id: "safe",
      text: { en: "Nothing dangerous is left in the circuit.", pl: "W obwodzie nie zostało nic groźnego." },
      proposedBy: "danger",
    },
    {
      id: "right",
      text: {
        en: "Nothing is left in the circuit that has to be put right.",
        pl: "W obwodzie nie zostało nic do poprawy.",
      },
      proposedBy: "fix",
    },
    {
      id: "as-asked",
      text: { en: "The circuit does what was asked for.", pl: "Obwód robi to, o co poproszono." },
      proposedBy: "requirements",
    },
    {
      id: "tested",
      text: {
        en: "The tests are done in order, and judged rightly.",
        pl: "Pomiary są zrobione po kolei i dobrze ocenione.",
      },
      proposedBy: "tests",
    },
    {
      id: "way-of-working",
      text: {
        en: "The work was done safely and with care.",
        pl: "Praca była wykonana bezpiecznie i starannie.",
      },
    },
  ],
};
