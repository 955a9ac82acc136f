import { beforeEach, describe, expect, it } from "vitest";

import {
  draftCount,
  draftOf,
  draftsOf,
  dropDraft,
  isOnlyHere,
  keepDraft,
  newDraftId,
  opening,
  ownerOf,
  type Draft,
} from "./drafts";
import { fullShelf, twoWeeks } from "./samples";

const BASE = "2026-02-03T18:00:00Z";
const LATER = "2026-02-04T07:00:00Z";

function draft(name: string, at = 0): Draft {
  return { document: { ...twoWeeks(), name }, base: BASE, at };
}

beforeEach(() => localStorage.clear());

describe("a draft", () => {
  it("is there again in the next tab", () => {
    expect(keepDraft(localStorage, "maren", "b1", draft("Winter"))).toBe(true);
    expect(draftOf(localStorage, "maren", "b1")).toEqual(draft("Winter"));
  });

  it("is not shown to another coach in the same browser", () => {
    keepDraft(localStorage, "maren", "b1", draft("Winter"));
    expect(draftOf(localStorage, "joren", "b1")).toBeNull();
    expect(draftsOf(localStorage, "joren")).toEqual([]);
  });

  it("is listed newest first, and goes when it is dropped", () => {
    keepDraft(localStorage, "maren", "b1", draft("Winter", 1));
    keepDraft(localStorage, "maren", "b2", draft("Spring", 2));
    expect(draftsOf(localStorage, "maren").map((each) => each.id)).toEqual(["b2", "b1"]);
    dropDraft(localStorage, "maren", "b2");
    expect(draftsOf(localStorage, "maren").map((each) => each.id)).toEqual(["b1"]);
  });

  it("of changes for one athlete counts like any other, and is none of the block's", () => {
    keepDraft(localStorage, "maren", "b1", draft("Winter"));
    keepDraft(localStorage, ownerOf("maren", "runa"), "b1", draft("Winter"));
    keepDraft(localStorage, ownerOf("joren", "runa"), "b1", draft("Winter"));
    expect(draftCount(localStorage, "maren")).toBe(2);
    expect(draftsOf(localStorage, "maren").map((each) => each.id)).toEqual(["b1"]);
  });

  it("that cannot be kept is reported, not swallowed", () => {
    expect(keepDraft(fullShelf(), "maren", "b1", draft("Winter"))).toBe(false);
  });

  it("of a block that the server never had is known by its id", () => {
    expect(isOnlyHere(newDraftId("k3f"))).toBe(true);
    expect(isOnlyHere("01a1a5f9-f5a1-7444-be1c-dbdebcdc97fe")).toBe(false);
  });
});

describe("opening a block", () => {
  const server = { document: { ...twoWeeks(), name: "As on the server" }, updated_at: BASE };

  it("shows the server's where this browser holds no draft", () => {
    expect(opening(null, server)).toMatchObject({ from: "server", base: BASE });
  });

  it("goes on with a draft that began from what the server still has", () => {
    expect(opening(draft("Winter"), server)).toMatchObject({
      from: "draft",
      document: { name: "Winter" },
    });
  });

  it("asks a person where both have moved on, and overwrites neither", () => {
    const moved = { ...server, updated_at: LATER };
    expect(opening(draft("Winter"), moved)).toMatchObject({
      from: "both",
      draft: { document: { name: "Winter" } },
      document: { name: "As on the server" },
      base: LATER,
    });
  });

  it("asks nobody where the server holds the very same text", () => {
    const moved = { document: draft("Winter").document, updated_at: LATER };
    expect(opening(draft("Winter"), moved).from).toBe("server");
  });
});
