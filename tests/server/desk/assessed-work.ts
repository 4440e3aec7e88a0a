import type { GivenAnswer } from "../../../server/desk/decision.ts";
import { demoCriteria } from "../../../server/demo/criteria.ts";
import type { ActMessage, ActName } from "../../../shared/protocol/acts.ts";
import type { StaffRole } from "../../../shared/protocol/author.ts";
import { leadsOf, rightCables, TestBench, type TestBenchOptions } from "../test-bench.ts";

/** Bryony Cole hands assessed work in: a ring of which one line core was left out. Gives the attempt's id. */
export async function handIn(bench: TestBench): Promise<string> {
  await bench.isWiring("assessed");
  for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
  const [line = ""] = leadsOf("socket-1.b", "socket-2.a");
  const [contactA, contactB] = line.split("~");
  await bench.does("pull", { what: "lead", contactA, contactB } as never);
  await bench.does("hand-in", {});
  return bench.attempt().id;
}

/** Takes every lead out by hand, as before the next learner. */
export function clearBoard(bench: TestBench): void {
  bench.port.byHand({ out: rightCables.flatMap(([from, to]) => leadsOf(from, to)) });
  bench.atRest();
}

export async function benchWithWork(
  options: TestBenchOptions = {},
): Promise<{ bench: TestBench; id: string }> {
  const bench = await new TestBench(options).start();
  return { bench, id: await handIn(bench) };
}

/** One of the staff at a browser on the network sends an act; gives the code it is refused with, or "done". */
export async function byStaff<Name extends ActName>(
  bench: TestBench,
  role: StaffRole,
  name: Name,
  message: ActMessage<Name>,
  staff = `demo-${role}`,
): Promise<string> {
  const actor = { kind: role, learner: null, session: `of ${staff}`, staff, isRemote: true } as const;
  const answer = await bench.bench.handle(name, message, { actor });
  return answer.ok ? "done" : answer.code;
}

/** Every criterion with all its ticks; what the bench proposed of the open ring, but where another answer is given. */
export const answers = (change: Record<string, Partial<GivenAnswer>> = {}): GivenAnswer[] =>
  demoCriteria.criteria.map(({ id }) => ({
    criterion: id,
    answer: id === "right" || id === "as-asked" ? "not-yet" : "met",
    isValid: true,
    isAuthentic: true,
    isCurrent: true,
    isSufficient: true,
    ...change[id],
  }));
