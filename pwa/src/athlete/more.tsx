/** What no first glance waits for: it comes after the first load, and is kept on the phone as well. */
import "./look/pages.css";

export { BackScreen } from "./back/back-screen";
export { FinishScreen } from "./finish/finish-screen";
export { InstallPart } from "./install/install-part";
export { KitScreen } from "./kit/kit-screen";
export { AfterScreen } from "./occlusion/after-screen";
export { OcclusionNews, ScreeningLink } from "./occlusion/news";
export { OcclusionSet } from "./occlusion/occlusion-set";
export { ScreeningScreen } from "./occlusion/screening-screen";
export { SignAdvice, StopSigns } from "./occlusion/stop-signs";
export { WrapLayer } from "./occlusion/wrap-layer";
export { PairScreen } from "./pair/pair-screen";
export { AllDone } from "./session/all-done";
export { HowItLooks } from "./pictures/how-it-looks";
export { keepPictures } from "./pictures/keep-pictures";
export { AdviceStrip } from "./session/advice-strip";
export { OwnLines, OwnPanel, TellTests } from "./session/methods";
export { RigParts, StripPart } from "./session/rig-parts";
export { SetsScreen } from "./session/sets-screen";
export { RampStep } from "./session/ramp-step";
export { SkipSet } from "./session/skip-set";
export { FailedFirst } from "./session/failed-first";
export { SwapScreen } from "./session/swap-screen";
export { SyncScreen } from "./sync/sync-screen";
export { TellScreen } from "./tell/tell-screen";
export { tellOpened } from "./today/opened";
