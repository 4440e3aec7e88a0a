import type { Source } from "./source.ts";

const source: Source = {
  kind: "guidance",
  document: "On-Site Guide",
  clause: "Table H2.1 (formerly Table 8A)",
  checked: "secondary copy",
};

/** Floor area that one standard socket-outlet circuit serves. A 30 A and a 32 A device count alike. */
export const floorAreas: readonly {
  shape: "ring" | "radial";
  leastDeviceA: number;
  mostDeviceA: number;
  leastCsaMm2: number;
  mostAreaM2: number;
  source: Source;
}[] = [
  { shape: "ring", leastDeviceA: 30, mostDeviceA: 32, leastCsaMm2: 2.5, mostAreaM2: 100, source },
  { shape: "radial", leastDeviceA: 30, mostDeviceA: 32, leastCsaMm2: 4, mostAreaM2: 75, source },
  { shape: "radial", leastDeviceA: 20, mostDeviceA: 20, leastCsaMm2: 2.5, mostAreaM2: 50, source },
];
