import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

import type { Block } from "../../api/types";
import { draftOf } from "../block/drafts";
import { fullShelf, twoWeeks } from "../block/samples";
import { createDesk, welcome, type Desk } from "../shell/desk-state";
import { createSaver, type Saver } from "./saver";

const COACH = { id: "maren", name: "Maren", email: "maren@skarn.example" };
const BASE = "2026-02-03T18:00:00Z";

interface Asked {
  readonly path: string;
  readonly document: Block;
}

/** Blocks that the server holds already, by id. */
let held: Record<string, Block>;

/** A server that answers as it is told; each request it saw is in `asked`. */
function server() {
  const asked: Asked[] = [];
  const rule = { answer: (): Response | Promise<Response> => saved("b1") };
  vi.stubGlobal("fetch", async (path: string, init: { readonly body?: string }) => {
    if (init.body === undefined) return reply(200, heldAt(path));
    asked.push({ path, document: (JSON.parse(init.body) as { document: Block }).document });
    return rule.answer();
  });
  return { asked, rule };
}

function heldAt(path: string): unknown {
  const id = path.split("/").at(-1) ?? "";
  if (id === "blocks") return { blocks: Object.keys(held).map((each) => ({ id: each })) };
  return { id, document: held[id], updated_at: BASE };
}

function reply(status: number, body: unknown): Response {
  return new Response(JSON.stringify(body), { status, headers: { Undercroft: "1" } });
}

function saved(id: string): Response {
  return reply(200, { id, updated_at: BASE, faults: [] });
}

function refused(status: number): Response {
  return reply(status, { type: "about:blank", title: "No", status, detail: "not now" });
}

function silence(): Promise<Response> {
  return Promise.reject(new TypeError("network down"));
}

let desk: Desk;
let saver: Saver | undefined;
const onId = vi.fn<(id: string) => void>();

function begin(id = "b1", unsaved: Block | null = null): Saver {
  saver = createSaver(desk, { id, base: BASE, unsaved, onId });
  return saver;
}

function named(name: string): Block {
  return { ...twoWeeks(), name };
}

beforeEach(() => {
  vi.useFakeTimers();
  localStorage.clear();
  held = {};
  onId.mockClear();
  desk = createDesk("/desk", localStorage);
  welcome(desk, COACH);
});

afterEach(() => {
  saver?.stop();
  vi.useRealTimers();
});

describe("an edit", () => {
  it("is kept in this browser at once, before the server is asked", () => {
    const { asked } = server();
    begin().changed(named("Winter"));
    expect(draftOf(localStorage, "maren", "b1")?.document.name).toBe("Winter");
    expect(asked).toEqual([]);
  });

  it("goes up after a pause, the newest text only, and then the draft is dropped", async () => {
    const { asked } = server();
    const { changed, saving } = begin();
    changed(named("Win"));
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    expect(asked.map((each) => each.document.name)).toEqual(["Winter"]);
    expect(saving.value).toEqual({ kind: "saved", at: BASE });
    expect(draftOf(localStorage, "maren", "b1")).toBeNull();
  });

  it("that comes while another is on its way stays a draft until it has gone up too", async () => {
    const { asked, rule } = server();
    let answer: (response: Response) => void = () => {};
    rule.answer = () => new Promise<Response>((resolve) => (answer = resolve));
    const { changed } = begin();
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    changed(named("Winter base"));
    rule.answer = () => saved("b1");
    answer(saved("b1"));
    await vi.advanceTimersByTimeAsync(1);
    expect(draftOf(localStorage, "maren", "b1")?.document.name).toBe("Winter base");
    await vi.advanceTimersByTimeAsync(2_000);
    expect(asked.map((each) => each.document.name)).toEqual(["Winter", "Winter base"]);
    expect(draftOf(localStorage, "maren", "b1")).toBeNull();
  });
});

describe("a server that does not answer", () => {
  it("is asked again and again, and the draft is there all the while", async () => {
    const { asked, rule } = server();
    rule.answer = silence;
    const { changed, saving } = begin();
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(20_000);
    expect(asked.length).toBeGreaterThan(2);
    expect(saving.value.kind).toBe("unreached");
    expect(desk.answers.value).toBe(false);
    expect(draftOf(localStorage, "maren", "b1")?.document.name).toBe("Winter");
    rule.answer = () => saved("b1");
    await vi.advanceTimersByTimeAsync(60_000);
    expect(saving.value.kind).toBe("saved");
    expect(desk.answers.value).toBe(true);
  });

  it("is asked at once when the browser says that it is online", async () => {
    const { rule } = server();
    rule.answer = silence;
    const { changed, saving } = begin();
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    rule.answer = () => saved("b1");
    window.dispatchEvent(new Event("online"));
    await vi.advanceTimersByTimeAsync(1);
    expect(saving.value.kind).toBe("saved");
  });
});

describe("a writer that was left while the server did not answer", () => {
  async function left(): Promise<ReturnType<typeof server>> {
    const found = server();
    found.rule.answer = silence;
    const first = begin();
    first.changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    first.stop();
    await vi.advanceTimersByTimeAsync(1);
    return found;
  }

  it("still brings its draft once the server is there", async () => {
    const { asked, rule } = await left();
    rule.answer = () => saved("b1");
    await vi.advanceTimersByTimeAsync(60_000);
    expect(asked.at(-1)?.document.name).toBe("Winter");
    expect(draftOf(localStorage, "maren", "b1")).toBeNull();
  });

  it("never overwrites what was written since the block was opened again", async () => {
    const { asked, rule } = await left();
    const again = begin("b1", named("Winter"));
    again.changed(named("Winter base"));
    rule.answer = () => saved("b1");
    await vi.advanceTimersByTimeAsync(120_000);
    expect(asked.at(-1)?.document.name).toBe("Winter base");
  });

  it("says nothing of what another form has not saved", async () => {
    const { rule } = await left();
    desk.unsaved.value = "The kit has changes that are not saved.";
    rule.answer = () => saved("b1");
    await vi.advanceTimersByTimeAsync(60_000);
    expect(desk.unsaved.value).not.toBeNull();
  });
});

describe("a server that refuses", () => {
  it("is asked again with what was written meanwhile", async () => {
    const { asked, rule } = server();
    let answer: (response: Response) => void = () => {};
    rule.answer = () => new Promise<Response>((resolve) => (answer = resolve));
    const { changed } = begin();
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    changed(named("Spring"));
    await vi.advanceTimersByTimeAsync(2_000);
    rule.answer = () => saved("b1");
    answer(refused(413));
    await vi.advanceTimersByTimeAsync(2_000);
    expect(asked.map((each) => each.document.name)).toEqual(["Winter", "Spring"]);
  });

  it("says so, and the draft is kept", async () => {
    const { rule } = server();
    rule.answer = () => refused(413);
    const { changed, saving } = begin();
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    expect(saving.value).toEqual({ kind: "refused", why: "Not now." });
    expect(draftOf(localStorage, "maren", "b1")).not.toBeNull();
  });

  it("because the log-in has ended gets the draft after the next log-in", async () => {
    const { rule } = server();
    rule.answer = () => refused(401);
    const { changed, saving } = begin();
    changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    expect(desk.locked.value).toBe(true);
    rule.answer = () => saved("b1");
    welcome(desk, COACH);
    await vi.advanceTimersByTimeAsync(1);
    expect(saving.value.kind).toBe("saved");
  });
});

describe("a block that was begun in this browser", () => {
  it("takes the id that the server gives it, and later edits go there", async () => {
    const { asked } = server();
    const { changed, id } = begin("new-k3f", named("Winter"));
    await vi.advanceTimersByTimeAsync(1);
    expect(onId).toHaveBeenCalledWith("b1");
    expect(id.value).toBe("b1");
    changed(named("Winter base"));
    await vi.advanceTimersByTimeAsync(2_000);
    expect(asked.map((each) => each.path)).toEqual([
      "/api/v1/desk/blocks",
      "/api/v1/desk/blocks/b1",
    ]);
  });
});

describe("an answer that was lost after the server had stored a new block", () => {
  it("makes no second block: the first is found by its key and written on", async () => {
    const { asked } = server();
    held = { b1: { ...named("Winter"), key: "other" }, b2: named("Winter") };
    begin("new-k3f", named("Winter base"));
    await vi.advanceTimersByTimeAsync(1);
    expect(asked.map((each) => each.path)).toEqual(["/api/v1/desk/blocks/b2"]);
  });
});

describe("a browser without room", () => {
  it("is not trusted with the draft: leaving the page asks first", () => {
    server();
    desk = { ...desk, shelf: fullShelf() };
    const { changed, saving } = begin();
    changed(named("Winter"));
    expect(saving.value.kind).toBe("not kept");
    expect(desk.unsaved.value).not.toBeNull();
  });
});

describe("changes for one athlete", () => {
  it("stay a draft, apart from the block's, while the server takes none for its faults", async () => {
    const fault = { where: "set 1", path: "weeks.0", what: "no reps", right: "give some" };
    const bring = async () => ({ id: "b1", base: BASE, at: null, faults: [fault], taken: false });
    const owner = "own.maren.runa";
    saver = createSaver(desk, { id: "b1", base: BASE, unsaved: null, onId, bring, owner });
    saver.changed(named("Winter"));
    await vi.advanceTimersByTimeAsync(2_000);
    expect(saver.saving.value.kind).toBe("refused");
    expect(saver.faults.value).toEqual([fault]);
    expect(draftOf(localStorage, owner, "b1")?.document.name).toBe("Winter");
    expect(draftOf(localStorage, COACH.id, "b1")).toBeNull();
  });
});
