import { describe, expect, it } from "vitest";
import { languages } from "../../../../shared/text/languages.ts";
import { rules } from "../../../../shared/rules/index.ts";
import { ruleIds } from "../../../../shared/rules/rule.ts";
import type { VariantWords } from "../../../../shared/rules/wording/catalogue.ts";
import { gapsOf } from "../../../../shared/rules/wording/fill-template.ts";
import { wordings } from "../../../../shared/rules/wording/languages.ts";
import { findings } from "./fixture-findings.ts";

const built = ["place", "places", "cause", "causes"];
const sentences = ({ title = "", what, why, remedy, several }: VariantWords) => [
  title,
  what,
  why,
  remedy,
  ...Object.values(several ?? {}),
];

describe.each(languages)("the sentences in %s", (language) => {
  const { catalogue } = wordings[language];

  it("are there for every rule there will ever be", () => {
    expect(Object.keys(catalogue).sort()).toEqual([...ruleIds].sort());
  });

  it.each(rules.map((rule) => ({ id: rule.id, rule })))(
    "of $id are those of its variants, no more",
    ({ rule }) => {
      expect(Object.keys(catalogue[rule.id].variants).sort()).toEqual(Object.keys(rule.variants).sort());
    },
  );

  const dangers = rules.flatMap(({ id, variants }) =>
    Object.keys(variants)
      .filter((variant) => variants[variant] === "danger")
      .map((variant) => ({ id, variant })),
  );
  it.each(dangers)("of $id, $variant, which is a danger, say shock or fire", ({ id, variant }) => {
    const why = catalogue[id].variants[variant]?.why ?? "";
    expect(why).toMatch(language === "en" ? /shock|fire/ : /poraż|pożar/);
  });

  it("are whole and short: a capital first, a stop last, 32 words at most", () => {
    const wrong = ruleIds.flatMap((id) =>
      Object.values(catalogue[id].variants).flatMap(({ what, why, remedy, several = { what: "" } }) =>
        [what, why, remedy, several.what, several.why ?? ""].filter((text) => {
          if (text === "") return false;
          const plain = text.replaceAll(/[[\]]/g, "");
          const isWhole = /^[\p{Lu}{]/u.test(plain) && /[.)]$/.test(plain);
          return !isWhole || plain.split(/[.:] /).some((sentence) => sentence.split(" ").length > 32);
        }),
      ),
    );
    expect(wrong).toEqual([]);
  });
});

describe("the gaps in the sentences", () => {
  const given = new Map<string, Set<string>>();
  const always = new Map<string, Set<string>>();
  for (const { finding } of findings) {
    const key = `${finding.rule} ${finding.variant}`;
    const facts = Object.keys(finding.facts);
    given.set(key, new Set([...(given.get(key) ?? []), ...facts]));
    always.set(key, new Set(facts.filter((fact) => always.get(key)?.has(fact) ?? true)));
  }
  const variants = rules.flatMap(({ id, variants: all }) =>
    Object.keys(all).map((variant) => ({ id, variant })),
  );

  it.each(variants)(
    "of $id, $variant are facts the rule gives; those out of brackets always",
    ({ id, variant }) => {
      const key = `${id} ${variant}`;
      // A variant that no case shows cannot be held to anything.
      expect(given.has(key)).toBe(true);
      for (const language of languages) {
        const words = wordings[language].catalogue[id].variants[variant];
        const gaps = words ? sentences(words).flatMap(gapsOf) : [];
        const unknown = gaps.filter(
          ({ name, isOptional }) =>
            !built.includes(name) && !(isOptional ? given : always).get(key)?.has(name),
        );
        expect(unknown).toEqual([]);
      }
    },
  );

  it("tell several places of one cause in every language or in none", () => {
    const told = (language: (typeof languages)[number]) =>
      variants.filter(({ id, variant }) => wordings[language].catalogue[id].variants[variant]?.several);
    expect(told("pl")).toEqual(told("en"));
    expect(told("en").length).toBeGreaterThan(0);
  });

  it("are the same facts in every language", () => {
    const names = (words: VariantWords | undefined) =>
      [
        ...new Set(
          words
            ? sentences(words)
                .flatMap(gapsOf)
                .map(({ name }) => name)
            : [],
        ),
      ]
        .filter((name) => !built.includes(name))
        .sort();
    for (const { id, variant } of variants)
      expect([id, variant, names(wordings.pl.catalogue[id].variants[variant])]).toEqual([
        id,
        variant,
        names(wordings.en.catalogue[id].variants[variant]),
      ]);
  });
});
