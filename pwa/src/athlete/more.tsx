/** What no first glance waits for: it comes after the first load, and is kept on the phone as well. */
export { BackScreen } from "./back/back-screen";
export { PairScreen } from "./pair/pair-screen";
export { RigParts, StripPart } from "./session/rig-parts";
export { SyncScreen } from "./sync/sync-screen";
export { tellOpened } from "./today/opened";
