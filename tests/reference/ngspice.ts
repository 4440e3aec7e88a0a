import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { CurrentSource, Network } from "../../shared/electrical/network.ts";

/** True where the Debian package `ngspice` is installed. */
export const hasNgspice = spawnSync("ngspice", ["--version"]).status === 0;

/** Never skipped where checks decide; elsewhere the reason is printed. */
export const skipsNgspice = !hasNgspice && !process.env["CI"];
if (skipsNgspice) {
  console.warn(
    "skipped: ngspice is not installed (apt-get install ngspice), so currents are not compared with it",
  );
}

export interface SpiceAnswer {
  /** Per node; undefined for a node that no element touches. */
  voltageV: (number | undefined)[];
  resistorCurrentA: number[];
  linkCurrentA: number[];
  heldCurrentA: number[];
}

const digits = (value: number): string => value.toExponential(16);

/** Per node the lowest node of its island, found by flooding; and whether a held node is in it. */
export function islands({ nodeCount, resistors, links = [], held }: Network): {
  root: number[];
  isFed: boolean[];
} {
  const root = Array.from({ length: nodeCount }, (_, node) => node);
  const leads = [...resistors, ...links];
  for (let changed = true; changed;) {
    changed = false;
    for (const { a, b } of leads) {
      const least = Math.min(root[a]!, root[b]!);
      if (root[a] !== least || root[b] !== least) changed = true;
      root[a] = root[b] = least;
    }
  }
  return { root, isFed: root.map((own) => held.some(({ node }) => root[node] === own)) };
}

/**
 * The network as a netlist: links are sources of 0 V, every node has 1e15 ohm to the reference. An island that no
 * supply reaches would leave ngspice's matrix singular: one node of it is tied to the reference by 1 kilohm.
 */
export function netlist(network: Network, sources: readonly CurrentSource[]): string {
  const node = (index: number): string => `n${index}`;
  const { root, isFed } = islands(network);
  return [
    "network",
    ...network.held.map((held, index) => `Vh${index} ${node(held.node)} 0 DC ${digits(held.voltageV)}`),
    ...network.resistors.map(
      (each, index) => `R${index} ${node(each.a)} ${node(each.b)} ${digits(each.resistanceOhm)}`,
    ),
    ...(network.links ?? []).map((link, index) => `Vl${index} ${node(link.a)} ${node(link.b)} DC 0`),
    ...sources.map(
      (each, index) => `I${index} ${node(each.from)} ${node(each.to)} DC ${digits(each.currentA)}`,
    ),
    ...root.flatMap((own, index) =>
      own === index && !isFed[index] ? [`Rtie${index} ${node(index)} 0 1000`] : [],
    ),
    ".options gmin=1e-15 rshunt=1e15 reltol=1e-9 abstol=1e-15 vntol=1e-12",
    ".end",
    "",
  ].join("\n");
}

/** Operating points of many networks from one ngspice process. */
export function solveWithNgspice(
  cases: { network: Network; sources: readonly CurrentSource[] }[],
): SpiceAnswer[] {
  const folder = mkdtempSync(join(tmpdir(), "ngspice-"));
  try {
    const script = ["all cases", ".control", "set numdgt=15"];
    cases.forEach(({ network, sources }, index) => {
      writeFileSync(join(folder, `case-${index}.cir`), netlist(network, sources));
      script.push(`source ${join(folder, `case-${index}.cir`)}`, "op", `echo case ${index}`, "print all");
      network.resistors.forEach((_, at) => script.push(`print @r${at}[i]`));
      script.push("destroy all", "remcirc");
    });
    script.push("quit", ".endc", ".end", "");
    writeFileSync(join(folder, "all.cir"), script.join("\n"));
    const text = execFileSync("ngspice", ["-b", join(folder, "all.cir")], {
      encoding: "utf8",
      maxBuffer: 1 << 28,
      stdio: ["ignore", "pipe", "ignore"],
    });
    const parts = text.split(/^case \d+$/m).slice(1);
    if (parts.length !== cases.length)
      throw new Error(`ngspice answered ${parts.length} of ${cases.length} cases`);
    return parts.map((part, index) => parse(part, cases[index]!.network));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function parse(text: string, network: Network): SpiceAnswer {
  const values = new Map<string, number>();
  for (const [, name, value] of text.matchAll(/^(\S+) = (\S+)$/gm)) values.set(name!, Number(value));
  const need = (name: string): number => {
    const value = values.get(name);
    if (value === undefined || Number.isNaN(value)) throw new Error(`ngspice did not answer ${name}`);
    return value;
  };
  return {
    voltageV: Array.from({ length: network.nodeCount }, (_, node) => values.get(`n${node}`)),
    resistorCurrentA: network.resistors.map((_, index) => need(`@r${index}[i]`)),
    linkCurrentA: (network.links ?? []).map((_, index) => need(`vl${index}#branch`)),
    // A source's branch current runs from its plus through it: what it takes, not what it gives.
    heldCurrentA: network.held.map((_, index) => -need(`vh${index}#branch`)),
  };
}
