/**
 * Optional fields of a wiring that may be left out without an answer of `undetermined`, and what is then taken, with
 * the reason. Every other field that a finding rests on is asked for.
 */
export const assumedFields: Readonly<Record<string, string>> = {
  "supply.earthing": "TN-C-S: most dwellings are supplied so",
  "supply.zeOhm": "0.35 ohm on TN-C-S, 0.8 ohm on TN-S: the most a distributor declares",
  "stations[].settings.rcdMa": "30 mA on every way: a task about a missing RCD says 0",
  "stations[].settings.floorAreaM2": "not judged: floor area is guidance for whole circuits",
  "stations[].settings.litres": "a water heater above 2 kW counts as over 15 l",
  "stations[].settings.makersFuseA": "3 A for the controls of a boiler, nothing asked of the rest",
  "stations[].settings.letThroughA2s": "not judged without the maker's figure",
  "stations[].settings.inBathroom": "a room without a bath or shower, but for a shower itself",
  "stations[].settings.switched": "a connection unit without a switch isolates least",
  "stations[].settings.hasSocketOutlet": "a cooker control without one",
  "cables[].method": "C: clipped direct is what a learner sees on a wall",
  "cables[].ambientC": "30 °C: what the capacity tables are made for",
  "cables[].groupedCircuits": "1: cables that lie apart",
  "cables[].insulationMm": "none round the cable",
  "cables[].depthMm": "on the surface or deeper than 50 mm",
  "cables[].inMetalFramedWall": "no metal-framed wall",
  "cables[].conductors": "every core straight",
  loads: "what loads decide alone is silent without stated loads; lamps count as 100 W each",
  "loads[].isLongRunning": "a load that comes and goes",
  wants: "only what is built is judged",
  taskStations: "the task uses all stations",
  readings: "no readings are on record",
  "readings[].judged": "a reading that nobody has judged is not misjudged",
};
