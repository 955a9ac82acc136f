import { registerWorker } from "./register";

const atDesk = /^\/desk(\/|$)/.test(location.pathname);
const root = document.getElementById("app");
if (!root) throw new Error('index.html has no element with the id "app"');

const { start } = atDesk ? await import("./coach/index") : await import("./athlete/index");
start(root);
void registerWorker();
