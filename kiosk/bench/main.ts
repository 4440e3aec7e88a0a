import { mount } from "svelte";
import "./bench.css";
import BenchApp from "./BenchApp.svelte";
import { fetchAhead } from "./late-screens.ts";

const target = document.getElementById("bench");
if (target) mount(BenchApp, { target });
// What fails to come now is asked for again when it is opened.
window.requestIdleCallback(() => void fetchAhead().catch(() => undefined), { timeout: 5000 });
