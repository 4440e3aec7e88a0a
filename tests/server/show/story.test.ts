import { describe, expect, it } from "vitest";
import { showEn } from "../../../kiosk/show/show-en.ts";
import { beatMs } from "../../../server/show/show.ts";
import { story } from "../../../server/show/story.ts";
import { storyKit } from "../../../server/show/story-house.ts";
import { storyView, tellStory } from "../../../server/show/story-view.ts";
import { sceneNames, type SceneName } from "../../../shared/protocol/show-view.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { planProblems } from "../../../shared/scenario/plan-problems.ts";

const told = await storyView("en", judge);
const scene = (name: SceneName) => told.scenes.find((one) => one.name === name)!;
const last = (name: SceneName) => scene(name).frames.at(-1)!;
const ampsOf = (name: SceneName, at: number) =>
  scene(name)
    .frames.at(at)!
    .bars.map(({ name: bar, currentA }) => [bar, Math.round(currentA * 10) / 10]);

describe("the story of the show", () => {
  it("tells each idea for six to eight seconds", () => {
    expect(story.map(({ name }) => name)).toEqual([...sceneNames]);
    for (const { name, pictures } of story) {
      const beats = pictures.reduce((sum, { beats: own = 1 }) => sum + own, 0);
      expect([name, beats * beatMs >= 6000 && beats * beatMs <= 8000]).toEqual([name, true]);
    }
  });

  it("has a sentence for each picture, short enough for two lines that are read from three metres", () => {
    for (const { name, pictures } of story)
      for (const { line } of pictures) {
        const text = showEn[`show.story.${name}.${line}` as keyof typeof showEn];
        expect([name, line, text.length > 5 && text.length <= 40]).toEqual([name, line, true]);
      }
  });

  it("stands in a house that the plan can draw", () => {
    for (const { name, pictures } of story)
      for (const { house } of pictures) {
        const { plan, stations } = storyKit(house, name).scenario;
        expect(planProblems(plan, new Map(stations.map(({ id, kind }) => [id, { id, kind }])))).toEqual([]);
      }
  });

  it("says right and not allowed as the rules core does, and nothing of what is still being wired", () => {
    expect(told.scenes.map(({ name, frames }) => [name, frames.map(({ verdict }) => verdict ?? "")])).toEqual(
      [
        ["ring", ["", "", "", "right"]],
        ["shares", ["", ""]],
        ["spur", ["", "", "right"]],
        ["second-spur", ["", "", "wrong"]],
        ["fuse", ["", "", "right"]],
        ["protect", ["", "wrong", "right"]],
      ],
    );
    const unfinished = told.scenes.flatMap(({ frames }) => frames.filter(({ verdict }) => !verdict));
    expect(unfinished.map(({ attempt }) => attempt.verdict)).toEqual(unfinished.map(() => null));
  });

  it("asks the rules core: with one that finds nothing, nothing is wrong", async () => {
    const blind = await tellStory("en", (wiring) => ({ ...judge(wiring), findings: [] }));
    const said = blind.scenes.flatMap(({ frames }) => frames.flatMap(({ verdict }) => verdict ?? []));
    expect(new Set(said)).toEqual(new Set(["right"]));
  });

  // BS 7671 433.1.204 and appendix 15: an unfused spur feeds one point; 2.5 mm², method C, table 4D5: 27 A.
  it("shows the second spur with the current that its cable would carry, over what it may", () => {
    expect(last("second-spur").finding?.title).toBe("A spur off a spur");
    expect(ampsOf("second-spur", -1)).toEqual([
      ["Ib", 32],
      ["Iz", 27],
    ]);
  });

  it("shows the same two socket outlets behind a fuse of 13 A as right, and the fuse on its plate", () => {
    const { attempt } = last("fuse");
    expect(attempt.settings).toContainEqual(expect.objectContaining({ key: "fuseRatingA", value: 13 }));
    expect(attempt.cables.map(({ id }) => id)).toContain("socket-3.b~socket-4.a");
  });

  // The legs of a loop share as the lengths of the other one: BS EN 60228 gives both the same ohms a metre.
  it("shares the kettle of 3 kW between the legs of the ring by their lengths", () => {
    for (const at of [0, 1]) {
      const { attempt, bars } = scene("shares").frames[at]!;
      const lengthM = (id: string) => attempt.cables.find((one) => one.id === id)?.lengthM ?? 0;
      const [near, middle, far] = [
        lengthM("socket-1.a~way-1.a"),
        lengthM("socket-1.b~socket-2.a"),
        lengthM("socket-2.b~way-1.b"),
      ] as [number, number, number];
      const currentA = 3000 / 230;
      const wholeM = near + middle + far;
      const nearA = (currentA * (at === 0 ? middle + far : far)) / wholeM;
      expect(bars[0]?.currentA).toBeCloseTo(nearA, 1);
      expect(bars[1]?.currentA).toBeCloseTo(currentA - nearA, 1);
    }
  });

  it("goes from design current to device to cable, and finds the cable too small before the larger one", () => {
    const named = [0, 1, 2].map((at) => ampsOf("protect", at).map(([bar]) => bar));
    expect(named).toEqual([
      ["Ib", "In"],
      ["In", "Iz"],
      ["In", "Iz"],
    ]);
    const [deviceA = 0, cableA = 0] = ampsOf("protect", 1).map(([, a]) => Number(a));
    expect(cableA).toBeLessThan(deviceA);
    expect(Number(ampsOf("protect", 2)[1]?.[1])).toBeGreaterThanOrEqual(deviceA);
  });

  it("is told in both languages with the same numbers", async () => {
    const polish = await storyView("pl", judge);
    const numbers = ({ scenes }: typeof told) =>
      scenes.flatMap(({ frames }) => frames.map(({ bars, verdict }) => ({ bars, verdict })));
    expect(numbers(polish)).toEqual(numbers(told));
    expect(polish.scenes[3]?.frames.at(-1)?.finding?.title).not.toBe(last("second-spur").finding?.title);
  });
});
