import { afterEach, describe, expect, test } from "vitest";

import { secretFromAddress } from "./secret";

const LINK = `${location.origin}/pair#k7Qx-secret`;

function opened(address: string): string | null {
  history.replaceState(null, "", address);
  return secretFromAddress(window);
}

function sharing(params: Record<string, string>): string | null {
  return opened(`/pair?${new URLSearchParams(params)}`);
}

afterEach(() => history.replaceState(null, "", "/"));

describe("the secret of an invitation", () => {
  test("comes behind the link's # and leaves the address", () => {
    expect(opened("/pair#k7Qx-secret")).toBe("k7Qx-secret");
    expect(location.hash).toBe("");
  });

  test("comes with a link that was shared with the app, and leaves the address", () => {
    expect(sharing({ url: LINK })).toBe("k7Qx-secret");
    expect(sharing({ text: `Come and train:\n${LINK} Ida` })).toBe("k7Qx-secret");
    expect(location.search).toBe("");
  });

  test("is not taken from another server's link, nor from another page", () => {
    expect(sharing({ url: "https://elsewhere.example/pair#k7Qx-secret" })).toBeNull();
    expect(sharing({ text: "no link at all" })).toBeNull();
    expect(opened("/sync#k7Qx-secret")).toBeNull();
    expect(opened("/pair")).toBeNull();
  });
});
