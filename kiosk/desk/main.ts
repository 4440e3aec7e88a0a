import { mount } from "svelte";
import "./desk.css";
import DeskApp from "./DeskApp.svelte";

const target = document.getElementById("desk");
if (target) mount(DeskApp, { target });
