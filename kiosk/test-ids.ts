/**
 * Names that browser checks find things by, as `data-testid`. Ids of the board stand in them as they are.
 *
 * Whole screens: `screen-sign-in`, `screen-scenarios`, `screen-caution`, `screen-make-dead`, `screen-plan`,
 * `screen-wire`, `screen-test`, `screen-load`, `screen-hand-in`, `screen-handed-in`, `screen-no-board`, `screen-locked`.
 * Edges: `step-<step>`, `say`, `caution-floor`, `link-lost`, `banner-<kind>`, `refusal`, `live`.
 * Keys: `key-<what>`, such as `key-check`, `key-hint`, `key-undo`, `key-face`, `key-menu`, `key-ready`, `key-hand-in`.
 */
export const testId = {
  station: (id: string) => `station-${id}`,
  entry: (id: string) => `entry-${id}`,
  contact: (id: string) => `contact-${id}`,
  cable: (id: string) => `cable-${id}`,
  /** A finding by its rule: the id of a finding begins with it. */
  finding: (id: string) => `finding-${ruleOf(id)}`,
  requirement: (index: number) => `requirement-${index}`,
  step: (step: string) => `step-${step}`,
  key: (what: string) => `key-${what}`,
  screen: (name: string) => `screen-${name}`,
  banner: (kind: string) => `banner-${kind}`,
  learner: (id: string) => `learner-${id}`,
  scenario: (id: string) => `scenario-${id}`,
  /** The tick of a scenario that was met. */
  met: (id: string) => `met-${id}`,
  /** Something that can be touched in the make-dead scene. */
  dead: (what: string) => `dead-${what}`,
  /** Something of the meter, the circuit under test or its record. */
  meter: (what: string) => `meter-${what}`,
  /** Something of the step Load. */
  load: (what: string) => `load-${what}`,
  /** Something of how a learner gets better. */
  progress: (what: string) => `progress-${what}`,
  /** Something of a fault hunt. */
  hunt: (what: string) => `hunt-${what}`,
  question: (question: string) => `question-${question}`,
} as const;

function ruleOf(findingId: string): string {
  return /^[a-z]+(-[a-z]+)*/.exec(findingId)?.[0] ?? findingId;
}
