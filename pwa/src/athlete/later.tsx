import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";

import { useApp } from "./app-context";
import { TopBar } from "./top-bar";

export type More = typeof import("./more");

export function loadMore(): Promise<More> {
  return import("./more");
}

/** A screen of the later part, once that is here. */
export function later(name: keyof More): ComponentType {
  return function Later() {
    const [more, setMore] = useState<More | null>(null);
    const [missing, setMissing] = useState(false);
    const load = () => {
      setMissing(false);
      loadMore().then(setMore, () => setMissing(true));
    };
    useEffect(load, []);
    if (missing) return <Missing onRetry={load} />;
    const Screen = more?.[name];
    return Screen ? <Screen /> : null;
  };
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
