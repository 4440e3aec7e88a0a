import type { StrippedScenario } from "./scenario.schema.ts";

/**
 * Requirements, by index, that cannot be met together, none of which can be left out: without any one of them a wiring
 * is found. Empty where none is found even with nothing asked. Holds as far as the search that is passed can tell.
 *
 * @param isFound whether the search finds a wiring for a scenario that asks for these requirements alone
 */
export function cannotBeMet(
  { requirements }: Pick<StrippedScenario, "requirements">,
  isFound: (requirements: StrippedScenario["requirements"]) => boolean,
): number[] {
  const all = requirements.map((_, index) => index);
  const asked = (indexes: readonly number[]): StrippedScenario["requirements"] =>
    requirements.filter((_, index) => indexes.includes(index));
  return all.reduce<number[]>((left, index) => {
    const without = left.filter((one) => one !== index);
    return isFound(asked(without)) ? left : without;
  }, all);
}
