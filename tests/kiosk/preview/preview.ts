import { mount } from "svelte";
import "../../../kiosk/bench/bench.css";
import Bench from "../../../kiosk/bench/Bench.svelte";
import type { Language } from "../../../shared/text/languages.ts";
import { pseudoText } from "../pseudo-text.ts";
import { sampleView, type ViewName } from "../views.ts";

// Shows one sample: ?view=ring-fault&panel=7&language=pl&large=1&pseudo=1&lost=1
const asked = new URLSearchParams(window.location.search);
const target = document.getElementById("bench");
if (target)
  mount(Bench, {
    target,
    props: {
      view: sampleView((asked.get("view") ?? "sign-in") as ViewName, {
        language: (asked.get("language") ?? "en") as Language,
        isLarge: asked.has("large"),
      }),
      isLost: asked.has("lost"),
      send: async (name: string, command: unknown) => {
        console.info(name, JSON.stringify(command));
        return { ok: true as const };
      },
      ...(asked.has("pseudo") ? { lengthen: pseudoText } : {}),
    },
  });
