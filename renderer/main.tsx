import "./bridge/jitless.ts";
import { render } from "preact";
import { App } from "./app/App.tsx";
import { start } from "./app/start.ts";

start();
const root = document.getElementById("app");
if (root) render(<App />, root);
