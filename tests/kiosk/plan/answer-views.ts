import { readdirSync, readFileSync } from "node:fs";
import lighting from "../../../hardware/boards/lighting.json" with { type: "json" };
import workshop from "../../../hardware/boards/workshop.json" with { type: "json" };
import { cableCarries } from "../../../server/view/cable-carries.ts";
import { planZones } from "../../../server/view/plan-zones.ts";
import type { BoardDescription } from "../../../shared/board/board.schema.ts";
import type { AttemptView, BoardFace } from "../../../shared/protocol/bench-view.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { fitsBoard } from "../../../shared/scenario/fits-board.ts";
import { routes } from "../../../shared/scenario/plan-route.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import type { Built, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { strip } from "../../../shared/scenario/strip.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { faceOf } from "../faces.ts";
import { attempt } from "../views.ts";

const boards = [workshop, lighting].map((board) => board as unknown as BoardDescription);

/** A scenario with one of its answers on a board that fits it, as its learner sees it in practice. */
export interface AnswerView {
  face: BoardFace;
  scenario: string;
  answer: string;
  attempt: AttemptView;
}

const viewOf = (scenario: Scenario, built: Built, board: BoardDescription): AttemptView => {
  const stripped = strip(scenario);
  const routeBetween = routes(scenario.plan);
  const wiring = toWiring({ scenario: stripped, board, built, routeBetween });
  const verdict = judge(wiring);
  const model = buildModel(wiring);
  return attempt({
    scenario: stripped,
    zones: planZones(stripped.plan),
    cables: model.cables.map((cable) => ({
      id: cable.id,
      from: cable.from,
      to: cable.to,
      conductors: cable.conductors.map(({ from, to, class: kind }) => ({
        from,
        to,
        class: kind === "crossed" ? "live" : kind,
      })),
      path: routeBetween(cable.fromStation, cable.toStation)?.pathPoints ?? [],
      ...cableCarries(verdict.figures.cables[cable.id] ?? {}),
      ...(cable.csaMm2 === undefined ? {} : { csaMm2: cable.csaMm2 }),
    })),
    verdict: {
      findings: verdict.findings.map((finding) => ({
        ...finding,
        title: "",
        where: "",
        what: "",
        why: "",
        remedy: "",
        reference: "",
      })),
      requirements: [],
      undetermined: [],
      proposal: verdict.proposal,
      isCurrent: true,
      isHeld: false,
    },
  });
};

let known: readonly AnswerView[] | undefined;

/** Every answer, right and wrong, of every scenario that comes with the program. */
export const answerViews = (): readonly AnswerView[] => (known ??= workedOut());

const workedOut = (): AnswerView[] =>
  readdirSync("scenarios")
    .filter((name) => name.endsWith(".json"))
    .sort()
    .flatMap((name) => {
      const read = readScenario(readFileSync(`scenarios/${name}`, "utf8"), name);
      if (!read.ok) throw new Error(`${name} cannot be read`);
      const { modelAnswers, wrongAnswers, id } = read.value;
      const board = boards.find((each) => fitsBoard(read.value, each));
      if (!board) throw new Error(`${name} fits no board`);
      return [
        ...modelAnswers.map((built, i) => ({ answer: `model ${i + 1}`, built })),
        ...wrongAnswers.map(({ name: answer, built }) => ({ answer, built })),
      ].map(({ answer, built }) => ({
        scenario: id,
        answer,
        face: faceOf(board),
        attempt: viewOf(read.value, built, board),
      }));
    });
