import type { BoardDescription } from "../../shared/board/board.schema.ts";
import {
  chipsFor,
  codeCountOf,
  codePolesOf,
  entryCountOf,
  lineCountOf,
  namedLines,
  pullUpOf,
} from "./board-wiring.ts";
import { type LeadKind, leadSet } from "./lead-set.ts";
import { componentValues as values } from "../lines/component-values.ts";

export interface Part {
  quantity: number;
  what: string;
  where: string;
}

/** Everything on the board and its leads, with quantities; the panel, the Pi and its screen are in the guide. */
export function partsList(board: BoardDescription): Part[] {
  return [
    ...(board.wiring.kind === "chain" ? chainParts(board) : directParts(board)),
    ...leadParts(board),
  ].filter(({ quantity }) => quantity > 0);
}

const ohm = (value: number): string => (value >= 1000 ? `${value / 1000} kΩ` : `${value} Ω`);

function chainParts(board: BoardDescription): Part[] {
  if (board.wiring.kind !== "chain") return [];
  const { pins } = board.wiring;
  const [lines, codes] = [lineCountOf(board), codeCountOf(board)];
  const signals = Object.values(pins).filter((bcm) => bcm !== undefined).length;
  const chips = 2 * chipsFor(lines) + chipsFor(codes) + 1;
  return [
    { quantity: chipsFor(lines), what: "74HC595 shift register", where: "outputs, one for eight lines" },
    { quantity: chipsFor(lines), what: "74HC165 shift register", where: "inputs, one for eight lines" },
    { quantity: chipsFor(codes), what: "74HC165 shift register", where: "code contacts, one for eight" },
    {
      quantity: 1,
      what: "74LVC14A hex Schmitt-trigger inverter",
      where: "two gates in a row for each of shiftClock, latch and load: steep edges at every chip",
    },
    { quantity: chips, what: "100 nF ceramic capacitor", where: "one at the supply pins of each chip" },
    {
      quantity: Math.ceil(chips / 8) + 1,
      what: "47 µF capacitor, 6.3 V or more",
      where: "one for eight chips, and one where the ribbon comes in",
    },
    { quantity: lines, what: `${ohm(pullUpOf(board))} resistor`, where: "pull-up of each line" },
    {
      quantity: lines,
      what: "small-signal Schottky diode (BAT54, BAT85 or the like)",
      where: "each output to its line",
    },
    {
      quantity: lines,
      what: `${ohm(values.contactResistorOhm)} resistor`,
      where: "each line to its contact",
    },
    { quantity: codes, what: `${ohm(pullUpOf(board))} resistor`, where: "pull-up of each code contact" },
    { quantity: codes, what: `${ohm(values.contactResistorOhm)} resistor`, where: "each code contact" },
    {
      quantity: signals,
      what: `${ohm(values.gpioResistorOhm)} resistor`,
      where: "each GPIO pin, at the Pi's end",
    },
    {
      quantity: 3 + (pins.outputEnable === undefined ? 0 : 1),
      what: `${ohm(values.pullUpOhm)} resistor`,
      where:
        "at rest before the Pi is up: shiftClock and latch down, load up" +
        (pins.outputEnable === undefined ? "" : ", outputEnable up"),
    },
    {
      quantity: 3,
      what: `${ohm(values.clockResistorOhm)} resistor (47 to 100 Ω)`,
      where: "in series at the driver of each clock run",
    },
    { quantity: chips, what: "IC socket, as many pins as the chip", where: "every chip" },
    ...feedParts,
  ];
}

/** What joins the Pi and the board, with what keeps a short or a tug from doing harm. */
const feedParts: Part[] = [
  { quantity: 1, what: "40-way ribbon cable, 200 mm or less", where: "Pi to board" },
  { quantity: 2, what: "40-way IDC socket", where: "both ends of the ribbon" },
  { quantity: 1, what: "40-way box header on an adapter board", where: "where the ribbon comes in" },
  { quantity: 2, what: "strain relief or clamp for the ribbon", where: "both ends" },
  { quantity: 1, what: "0.5 A self-resetting fuse", where: "in the 3.3 V feed, before the first capacitor" },
];

function directParts(board: BoardDescription): Part[] {
  const lines = lineCountOf(board);
  return [
    { quantity: lines, what: `${ohm(pullUpOf(board))} resistor`, where: "pull-up of each line" },
    {
      quantity: lines,
      what: `${ohm(values.contactResistorOhm)} resistor`,
      where: "each line to its contact",
    },
    {
      quantity: lines,
      what: `${ohm(values.gpioResistorOhm)} resistor`,
      where: "each GPIO pin, at the Pi's end",
    },
    ...feedParts,
  ];
}

function leadParts(board: BoardDescription): Part[] {
  const contacts = namedLines(board).length - (board.probes === undefined ? 0 : 2);
  const entries = entryCountOf(board);
  const kinds = leadSet(board);
  const leads = kinds.reduce((sum, { quantity }) => sum + quantity, 0);
  const coresOf = ({ code }: LeadKind): readonly string[] => code?.cores ?? ["brown", "blue", "earth"];
  const codePoles = codePolesOf(board);
  const corePoles = Math.max(
    ...board.stations.flatMap(({ entries: all }) => all.map(({ lines }) => Object.keys(lines).length)),
  );
  const poles = corePoles + (codePoles > 0 ? codePoles + 1 : 0);
  const isCoded = codePoles > 0;
  return [
    {
      quantity: isCoded ? entries : contacts,
      what: isCoded
        ? `shrouded header of ${poles} poles, recessed in the panel`
        : "shrouded single socket, recessed, of a form that no 4 mm test lead fits",
      where: isCoded ? "each entry; fronts take safety sockets" : "each contact and front",
    },
    {
      quantity: isCoded ? contacts - coreContacts(board) : 0,
      what: "shrouded single socket, recessed, of a form that no 4 mm test lead fits",
      where: "each front",
    },
    {
      quantity: 2 * leads * (isCoded ? 1 : corePoles),
      what: isCoded
        ? `free connector of ${poles} poles with sockets, no pins`
        : "plug for it with a fixed rigid sleeve to the tip",
      where: `both ends of ${leads} cable leads`,
    },
    {
      quantity: kinds.reduce((sum, kind) => sum + kind.quantity * coresOf(kind).length, 0),
      what: "0.75 mm² flexible wire, 0.3 to 1 m, in the colours of the list of leads",
      where: "cores of the leads",
    },
    {
      quantity: board.probes === undefined ? 0 : 2,
      what: "probe tip with a fixed rigid sleeve that no mains socket outlet takes, on 1 m of red or black flexible wire",
      where: "probes",
    },
  ];
}

const coreContacts = ({ stations }: BoardDescription): number =>
  stations.reduce(
    (sum, { entries }) => sum + entries.reduce((all, { lines }) => all + Object.keys(lines).length, 0),
    0,
  );
