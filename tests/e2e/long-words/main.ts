import { mount } from "svelte";
import "../../../kiosk/bench/bench.css";
import LongWords from "./LongWords.svelte";

const target = document.getElementById("bench");
if (target) mount(LongWords, { target });
