import { mount } from "svelte";
import "../bench/bench.css";
import "./show.css";
import ShowApp from "./ShowApp.svelte";

const target = document.getElementById("show");
if (target) mount(ShowApp, { target });
