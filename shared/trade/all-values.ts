import { accessoryRatings } from "./accessory-ratings.ts";
import { ambientFactors } from "./ambient-factors.ts";
import { applianceLimits } from "./appliance-limits.ts";
import { assumptions } from "./assumptions.ts";
import { breakerCurves } from "./breaker-curves.ts";
import { breakerGates } from "./breaker-gates.ts";
import { cableCapacity } from "./cable-capacity.ts";
import { cableMakeUp } from "./cable-make-up.ts";
import { cableOverallSizes } from "./cable-overall-sizes.ts";
import { cableRun } from "./cable-run.ts";
import { cableVoltageDrop } from "./cable-voltage-drop.ts";
import { circuitBreakerZs } from "./circuit-breaker-zs.ts";
import { conductorTemperature } from "./conductor-temperature.ts";
import { copperHeat } from "./copper-heat.ts";
import { copperResistance } from "./copper-resistance.ts";
import { deviceRatings } from "./device-ratings.ts";
import { disconnectionLimits } from "./disconnection-limits.ts";
import { diversity } from "./diversity.ts";
import { flexibleCableCapacity } from "./flexible-cable-capacity.ts";
import { floorAreas } from "./floor-areas.ts";
import { fuseFusing } from "./fuse-fusing.ts";
import { fuseGates } from "./fuse-gates.ts";
import { fuseLimits } from "./fuse-limits.ts";
import { fuseRatings } from "./fuse-ratings.ts";
import { fuseZs } from "./fuse-zs.ts";
import { groupingFactors } from "./grouping-factors.ts";
import { houseAppliances } from "./house-appliances.ts";
import { insulationFactors } from "./insulation-factors.ts";
import { insulationLeakage } from "./insulation-leakage.ts";
import { insulationTests } from "./insulation-tests.ts";
import { isolationSteps } from "./isolation-steps.ts";
import { leastSizes } from "./least-sizes.ts";
import { leftInParts } from "./left-in-parts.ts";
import { lightingLimits } from "./lighting-limits.ts";
import { meterLimits } from "./meter-limits.ts";
import { overloadLimits } from "./overload-limits.ts";
import { plugFlexCapacity } from "./plug-flex-capacity.ts";
import { rcdLimits } from "./rcd-limits.ts";
import { rcdTimes } from "./rcd-times.ts";
import { ringLimits } from "./ring-limits.ts";
import { ringTestLimits } from "./ring-test-limits.ts";
import { ringTestSpread } from "./ring-test-spread.ts";
import { selvLimits } from "./selv-limits.ts";
import { simulatedLive } from "./simulated-live.ts";
import type { Source } from "./source.ts";
import type { Sourced } from "./sourced.ts";
import { spurLimits } from "./spur-limits.ts";
import { supply } from "./supply.ts";
import { testSequence } from "./test-sequence.ts";
import { testTemperatureFactors } from "./test-temperature-factors.ts";
import { unitOfName } from "./unit-of-name.ts";

/** One value of the trade tables in words, for lists of values by how far they were checked. */
export interface TradeValue {
  /** Words of the table's name, such as "cable capacity". */
  table: string;
  /** What the value is of, such as "csa 2.5 mm², method C". */
  name: string;
  /** The value with its unit, such as "27 A". */
  valueText: string;
  source: Source;
}

/** Every value of every trade table. The tables are listed by hand; a test holds the list to the folder. */
export const allValues: readonly TradeValue[] = [
  ...ofRows({ accessoryRatings }, "accessory"),
  ...ofRows({ ambientFactors }, "ambientC"),
  ...ofPairs({ applianceLimits }),
  ...ofPairs({ assumptions }),
  ...ofRows({ breakerCurves }, "curve"),
  ...ofRows({ breakerGates }, "test", "aboveRatingA", "toRatingA"),
  ...ofRows({ cableCapacity }, "csaMm2", "method"),
  ...ofRows({ cableMakeUp }, "csaMm2"),
  ...ofRows({ cableOverallSizes }, "csaMm2"),
  ...ofPairs({ cableRun }),
  ...ofRows({ cableVoltageDrop }, "csaMm2"),
  ...ofRows({ circuitBreakerZs }, "curve", "ratingA"),
  ...ofPairs({ conductorTemperature }),
  ...ofPairs({ copperHeat }),
  ...ofRows({ copperResistance }, "csaMm2"),
  ...ofRows({ deviceRatings }),
  ...ofPairs({ disconnectionLimits }),
  ...ofPairs({ diversity }),
  ...ofRows({ flexibleCableCapacity }, "csaMm2"),
  ...ofRows({ floorAreas }, "shape", "leastDeviceA", "mostDeviceA"),
  ...ofRows({ fuseFusing }, "fuse"),
  ...ofRows({ fuseGates }, "ratingA", "currentA"),
  ...ofPairs({ fuseLimits }),
  ...ofRows({ fuseRatings }),
  ...ofRows({ fuseZs }, "fuse", "ratingA", "disconnectionS"),
  ...ofRows({ groupingFactors }, "circuits"),
  ...ofRows({ houseAppliances }, "appliance"),
  ...ofRows({ insulationFactors }, "lengthMm"),
  ...ofPairs({ insulationLeakage }),
  ...ofRows({ insulationTests }, "circuit"),
  ...ofRows({ isolationSteps }, "step"),
  ...ofPairs({ leastSizes }),
  ...ofPairs({ leftInParts }),
  ...ofPairs({ lightingLimits }),
  ...ofPairs({ meterLimits }),
  ...ofPairs({ overloadLimits }),
  ...ofRows({ plugFlexCapacity }, "csaMm2"),
  ...ofPairs({ rcdLimits }),
  ...ofRows({ rcdTimes }, "type", "fromMultiple"),
  ...ofPairs({ ringLimits }),
  ...ofPairs({ ringTestLimits }),
  ...ofRows({ ringTestSpread }, "csaMm2", "cpcCsaMm2"),
  ...ofPairs({ selvLimits }),
  ...ofPairs({ simulatedLive }),
  ...ofPairs({ spurLimits }),
  ...ofPairs({ supply }),
  ...ofRows({ testSequence }, "test"),
  ...ofRows({ testTemperatureFactors }, "ambientC"),
];

/** A table comes as `{ name: rows }`, so that its word in the list is its name in the code. */
function ofRows<Row extends { source: Source }>(
  named: Record<string, readonly Row[]>,
  ...keys: (keyof Row & string)[]
): TradeValue[] {
  return Object.entries(named).flatMap(([table, rows]) =>
    rows.map((row) => {
      const fields = Object.entries(row).filter(([field]) => field !== "source");
      const isKey = ([field]: [string, unknown]) => keys.some((key) => key === field);
      const values = fields.filter((field) => !isKey(field));
      const [only, ...more] = values;
      return {
        table: unitOfName(table).words,
        name: fields.filter(isKey).map(inWords).join(", "),
        valueText: only && more.length === 0 ? withUnit(only) : values.map(inWords).join(", "),
        source: row.source,
      };
    }),
  );
}

function ofPairs<Name extends string>(named: Record<string, Sourced<Name>>): TradeValue[] {
  return Object.entries(named).flatMap(([table, values]) =>
    (Object.keys(values.sources) as Name[]).map((name) => ({
      table: unitOfName(table).words,
      name: unitOfName(name).words,
      valueText: withUnit([name, values[name]]),
      source: values.sources[name],
    })),
  );
}

function withUnit([field, value]: [string, unknown]): string {
  const { unit } = unitOfName(field);
  return unit === "" ? String(value) : `${String(value)} ${unit}`;
}

function inWords(field: [string, unknown]): string {
  return `${unitOfName(field[0]).words} ${withUnit(field)}`;
}
