import type { ComponentType } from "preact";
import { useLayoutEffect, useState } from "preact/hooks";

import { useApp } from "./app-context";
import { usePhoneState } from "./hooks";
import { TopBar } from "./top-bar";

type More = typeof import("./more");
type Screens =
  | "AfterScreen"
  | "AllDone"
  | "BackScreen"
  | "FailedFirst"
  | "FinishScreen"
  | "KitScreen"
  | "OcclusionSet"
  | "PairScreen"
  | "RampStep"
  | "ScreeningScreen"
  | "SetsScreen"
  | "SkipSet"
  | "SwapScreen"
  | "SyncScreen"
  | "TellScreen";
/** What is seen only by those whose coach has asked for a screening. */
type Wraps = "OcclusionNews" | "ScreeningLink" | "WrapLayer";

export function loadMore(): Promise<More> {
  return import("./more");
}

interface Later {
  /** Null until it is here, which takes no time once the phone has kept it. */
  readonly more: More | null;
  readonly missing: boolean;
  readonly load: () => void;
}

/** The later part, where something of it is wanted; there before the screen is painted. */
export function useMore(wanted = true): Later {
  const [more, setMore] = useState<More | null>(null);
  const [missing, setMissing] = useState(false);
  const load = () => {
    setMissing(false);
    loadMore().then(setMore, () => setMissing(true));
  };
  useLayoutEffect(() => {
    if (wanted) load();
  }, [wanted]);
  return { more, missing, load };
}

/** A screen of the later part, once that is here. */
export function later<S extends Screens>(name: S): More[S] {
  function Later(props: object) {
    const { more, missing, load } = useMore();
    if (missing) return <Missing onRetry={load} />;
    const Screen = more?.[name] as ComponentType<object> | undefined;
    return Screen ? <Screen {...props} /> : null;
  }
  return Later as More[S];
}

/** Part of a screen that does without it. */
export function Wraps({ part }: { readonly part: Wraps }) {
  const wanted = usePhoneState().feed.some(({ kind }) => kind === "screening");
  const { more } = useMore(wanted);
  const Part = wanted ? more?.[part] : null;
  return Part ? <Part /> : null;
}

/** Only on a first visit whose network broke off; later everything is on the phone. */
function Missing({ onRetry }: { readonly onRetry: () => void }) {
  const { router } = useApp();
  return (
    <div class="screen">
      <TopBar title="Not here yet" />
      <main class="page">
        <p class="lead">This part has not reached your phone yet.</p>
        <p>It needs a network once. Your sessions work without it.</p>
        <button type="button" class="button main" onClick={onRetry}>
          Try again
        </button>
        <button type="button" class="button" onClick={() => router.replace("/")}>
          To Today
        </button>
      </main>
    </div>
  );
}
