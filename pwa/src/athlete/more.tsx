/** Screens that no set waits for: they come after the first load, and are kept on the phone as well. */
export { BackScreen } from "./back/back-screen";
export { PairScreen } from "./pair/pair-screen";
export { SyncScreen } from "./sync/sync-screen";
