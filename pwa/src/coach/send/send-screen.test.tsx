import { render } from "preact";
import { afterEach, beforeEach, expect, it, vi } from "vitest";

import { keepDraft, ownerOf } from "../block/drafts";
import { twoWeeks } from "../block/samples";
import { createDesk, DeskProvider, welcome } from "../shell/desk-state";
import { SendScreen } from "./send-screen";

const BASE = "2026-02-03T18:00:00Z";
const DRAFT = { document: twoWeeks(), base: BASE, at: 0 };
const SQUAD = [
  { id: "runa", name: "Runa", right: "own", devices: 1, block: null, revision: null },
  { id: "siv", name: "Siv", right: "own", devices: 1, block: null, revision: null },
];

let root: HTMLElement;

function reply(path: string): unknown {
  if (path.endsWith("/squad")) return { athletes: SQUAD };
  if (path.endsWith("/blocks/b1")) return { id: "b1", document: twoWeeks(), updated_at: BASE };
  return { faults: [], findings: [], sheets: [], changes: [], own: [] };
}

async function drawn() {
  await new Promise((resolve) => setTimeout(resolve, 20));
}

async function chosen(name: string): Promise<HTMLButtonElement | undefined> {
  const label = [...root.querySelectorAll("label")].find((one) => one.textContent === name);
  label?.parentElement?.querySelector("input")?.click();
  await drawn();
  return [...root.querySelectorAll("button")].find((one) => one.textContent?.startsWith("Send to"));
}

beforeEach(async () => {
  localStorage.clear();
  vi.stubGlobal("fetch", async (path: string) => {
    return new Response(JSON.stringify(reply(path)), { headers: { Undercroft: "1" } });
  });
  const desk = createDesk("/desk", localStorage);
  welcome(desk, { id: "maren", name: "Maren", email: "maren@skarn.example" });
  keepDraft(localStorage, ownerOf("maren", "runa"), "b1", DRAFT);
  root = document.body.appendChild(document.createElement("div"));
  render(
    <DeskProvider value={desk}>
      <SendScreen id="b1" />
    </DeskProvider>,
    root,
  );
  await drawn();
});

afterEach(() => {
  render(null, root);
  root.remove();
  vi.unstubAllGlobals();
});

it("sends nothing to an athlete whose own changes have not reached the server", async () => {
  const send = await chosen("Runa");
  expect(send?.disabled).toBe(true);
  expect(root.querySelector("[role=alert]")?.textContent).toContain("a change for Runa only");
});

it("sends to the others all the same", async () => {
  const send = await chosen("Siv");
  expect(send?.disabled).toBe(false);
  expect(root.querySelector("[role=alert]")).toBeNull();
});
