import { mount } from "svelte";
import "./bench.css";
import BenchApp from "./BenchApp.svelte";

const target = document.getElementById("bench");
if (target) mount(BenchApp, { target });
