import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { chipsFor, codeCountOf, codePolesOf, lineCountOf, namedCodes, namedLines } from "./board-wiring.ts";
import { inputChip, letterOf, outputChip } from "./chip-pins.ts";
import { coreName, strapsOf } from "./label-sheets.ts";
import { leadSet } from "./lead-set.ts";
import { componentValues } from "../lines/component-values.ts";
import { pulledUpBcm, supplyPins } from "./header-pins.ts";
import { partsList } from "./parts-list.ts";
import { pinTable } from "./pin-table.ts";
import { powerBudget } from "./power-budget.ts";

/** A table of a page. */
export const table = (head: string[], rows: (string | number)[][]): string =>
  [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");

/** Where a page comes from. */
export const made = (board: BoardDescription): string =>
  `Made from the board description \`${board.id}\` by \`draw.ts\`; changed there, not here.`;

/** Parts, pins and power of one board as a page. */
export function partsAndPins(board: BoardDescription): string {
  const { worstMilliamp, worstMilliwatt, lineMilliamp, shortMilliamp, largestPromisedGroup } =
    powerBudget(board);
  const one = (value: number): string => value.toFixed(1);
  return [
    `# ${board.name}: parts, pins and power`,
    made(board),
    "> Caution: extra-low voltage only. Nothing of this board is ever joined to the mains, and no contact of it to " +
      "the mains earth. Read the cautions of the build guide first.",
    "## Parts",
    table(
      ["quantity", "part", "where"],
      partsList(board).map(({ quantity, what, where }) => [quantity, what, where]),
    ),
    "## Leads",
    ...leadTable(board),
    "## Pins of the Raspberry Pi",
    table(
      ["header pin", "BCM", "signal", "goes to", "at rest"],
      pinTable(board).map(({ headerPin, bcm, signal, to, atRest }) => [
        headerPin ?? "none",
        bcm,
        signal,
        to,
        atRest,
      ]),
    ),
    `3.3 V from header pins ${supplyPins.volts33.join(" and ")}; 0 V from ${supplyPins.zeroVolts.join(", ")} (use four ` +
      `or more). ${componentValues.gpioResistorOhm} Ω in each signal, at the Pi's end.`,
    ...pullUpCaution(board),
    "## Power",
    table(
      ["what", "value"],
      [
        [
          "all lines pulled, all codes strapped, chips at rest (more than a scan draws)",
          `${one(worstMilliamp)} mA at 3.3 V, ${one(worstMilliwatt)} mW`,
        ],
        [
          "what the Pi's 3.3 V pins may give (common practice, no source)",
          `${componentValues.piSupplyMilliamp} mA`,
        ],
        ["one pulled line", `${lineMilliamp.toFixed(2)} mA`],
        [
          "a contact shorted to 3.3 V while it is pulled",
          `${one(shortMilliamp)} mA through its ${componentValues.contactResistorOhm} Ω`,
        ],
        [
          "largest group of joined lines that data sheets promise to read low",
          `${largestPromisedGroup} lines`,
        ],
      ],
    ),
    "A healthy board has groups of two. A larger group than the promised one is reported as a fault of the board and " +
      "its contacts are unknown: what lies in it is not trusted, whatever is read.",
    "",
  ].join("\n\n");
}

/** Every kind of lead to make; a coded board has those of every task that ships. */
function leadTable(board: BoardDescription): string[] {
  const kinds = leadSet(board);
  const total = kinds.reduce((sum, { quantity }) => sum + quantity, 0);
  const rows = kinds.map(({ code, quantity }) =>
    code === undefined
      ? [quantity, "any", "brown, blue, green-and-yellow", "none"]
      : [
          quantity,
          `${code.csaMm2} mm²`,
          code.cores.map((core) => coreName[core]).join(", "),
          `code ${code.code}: ${strapsOf(code.code, codePolesOf(board))}`,
        ],
  );
  return [
    table(["quantity", "tells the size", "cores", "straps at both ends"], rows),
    `${total} leads in all. ` +
      (board.codes === undefined
        ? "The learner says the size of each on the screen."
        : "They are enough for every task that ships, each at once with some to spare."),
  ];
}

/** A direct board cannot use pins that the Pi pulls up hard: joined to another line they stay above a low. */
function pullUpCaution({ wiring }: BoardDescription): string[] {
  const wrong = wiring.kind === "direct" ? wiring.pins.filter((bcm) => pulledUpBcm.includes(bcm)) : [];
  if (wrong.length === 0) return [];
  return [
    `> Caution: the Pi has ${componentValues.piPullUpOhm / 1000} kΩ pull-ups on BCM ${wrong.join(" and ")}. Through the ` +
      "series resistors a joined line cannot pull them low enough. Give these lines other pins in the board description.",
  ];
}

/** Every line from contact to chip, as a list to solder and to check by. */
export function wiringList(board: BoardDescription): string {
  const { wiring } = board;
  const pinOf = (line: number): (string | number)[] => {
    if (wiring.kind === "direct") return [`BCM ${wiring.pins[line] ?? "none"}`];
    const [chip, bit] = [Math.floor(line / 8), line % 8];
    return [
      chip,
      `Q${letterOf(bit)} (pin ${outputChip.outputPins[bit]})`,
      `${letterOf(bit)} (pin ${inputChip.inputPins[bit]})`,
    ];
  };
  const names = new Map(namedLines(board).map(({ line, name }) => [line, name]));
  const lines = Array.from({ length: lineCountOf(board) }, (_, line) => [
    line,
    names.get(line) ?? "spare: pull-up only",
    ...pinOf(line),
  ]);
  const codes = namedCodes(board).map(({ codeContact, name }) => [
    codeContact,
    name,
    Math.floor(codeContact / 8),
    `${letterOf(codeContact % 8)} (pin ${inputChip.inputPins[codeContact % 8]})`,
  ]);
  const chips = chipsFor(lineCountOf(board));
  return [
    `# ${board.name}: wiring list`,
    made(board),
    ...(wiring.kind === "chain"
      ? [
          "## Between the chips",
          [
            `- ${outputChip.name}: number 0 is nearest to dataOut. Serial out (pin ${outputChip.serialOut}) of each goes to serial in (pin ${outputChip.serialIn}) of the next. Clear (pin ${outputChip.clear}) to 3.3 V.`,
            `- ${inputChip.name}: number 0 is farthest from dataIn. Serial out (pin ${inputChip.serialOut}) of each goes to serial in (pin ${inputChip.serialIn}) of the next; that of number ${chips - 1} to dataIn. Clock inhibit (pin ${inputChip.clockInhibit}) to 0 V.`,
            `- The tie: serial out (pin ${outputChip.serialOut}) of 595 number ${chips - 1} to serial in (pin ${inputChip.serialIn}) of 165 number 0. With it the bench finds a cut chain, a wrong length and swapped pins by itself.`,
            ...(codeCountOf(board) > 0
              ? [
                  `- Code chips: the same, number 0 farthest from codeIn; serial in of number 0 to 3.3 V. Every code contact has its pull-up; the plug straps it to 0 V.`,
                ]
              : []),
            `- Supply pin ${outputChip.supply}, 0 V pin ${outputChip.zeroVolts} of every chip. Spare inputs to 3.3 V.`,
          ].join("\n"),
        ]
      : []),
    "## Lines",
    table(
      wiring.kind === "chain"
        ? ["line", "contact", "chip number", "595 output", "165 input"]
        : ["line", "contact", "pin"],
      lines,
    ),
    ...(codes.length > 0
      ? ["## Code contacts", table(["code contact", "contact", "chip number", "165 input"], codes)]
      : []),
    "",
  ].join("\n\n");
}
