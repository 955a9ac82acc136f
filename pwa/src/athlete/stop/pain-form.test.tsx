import { render } from "preact";
import { act } from "preact/test-utils";
import { beforeEach, describe, expect, test } from "vitest";

import type { Draft } from "../../offline/entry";
import { type App, AppContext } from "../app-context";
import { PainForm } from "./pain-form";

let root: HTMLElement;
let drafts: Draft[];
let store: (durable: boolean) => void;

beforeEach(async () => {
  root = document.createElement("div");
  drafts = [];
  const record = (draft: Draft) => {
    drafts.push(draft);
    return new Promise<boolean>((resolve) => (store = resolve));
  };
  const phone = { record, newId: () => "id-1" };
  const app = { phone, clock: { now: () => 0 } } as unknown as App;
  await act(() => {
    render(
      <AppContext.Provider value={app}>
        <PainForm place={{}} />
      </AppContext.Provider>,
      root,
    );
  });
  await tap("knee");
  await tap("3");
});

async function tap(name: string): Promise<void> {
  const button = [...root.querySelectorAll("button")].find((each) => each.textContent === name);
  await act(() => button?.click());
}

async function answered(durable: boolean): Promise<void> {
  await act(async () => {
    store(durable);
    await new Promise((later) => setTimeout(later, 0));
  });
}

describe("a pain", () => {
  test("is one entry of place and level", () => {
    expect(drafts.map(({ body }) => body)).toStrictEqual([{ where: "knee", level: 3 }]);
  });

  test("is said to be recorded only once it is durable", async () => {
    expect(root.textContent).not.toContain("Recorded");
    await answered(true);
    expect(root.textContent).toContain("Recorded: knee, 3 of 10.");
  });

  test("that the storage refuses is not said to be recorded", async () => {
    await answered(false);
    expect(root.textContent).not.toContain("Recorded");
  });
});
