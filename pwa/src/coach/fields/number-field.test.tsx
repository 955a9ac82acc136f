import { signal, type Signal } from "@preact/signals";
import { render } from "preact";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

import { NumberField } from "./number-field";

let root: HTMLElement;
let taken: (number | undefined)[];
let load: Signal<number | undefined>;

/** A form that takes every number but no emptiness, as the number of sets does. */
function Form({ whole = false }: { readonly whole?: boolean }) {
  const take = (next: number | undefined) => {
    taken.push(next);
    if (next !== undefined) load.value = next;
  };
  return <NumberField label="Load" value={load.value} onValue={take} step={2.5} whole={whole} />;
}

function input(): HTMLInputElement {
  const found = root.querySelector("input");
  if (!found) throw new Error("the form has no field");
  return found;
}

async function drawn() {
  await new Promise((resolve) => setTimeout(resolve));
}

async function type(text: string) {
  input().value = text;
  input().dispatchEvent(new InputEvent("input", { bubbles: true }));
  await drawn();
}

async function press(key: string, shiftKey = false) {
  input().dispatchEvent(new KeyboardEvent("keydown", { key, shiftKey, bubbles: true }));
  await drawn();
}

beforeEach(() => {
  taken = [];
  load = signal<number | undefined>(60);
  root = document.body.appendChild(document.createElement("div"));
  render(<Form />, root);
});

afterEach(() => {
  render(null, root);
  root.remove();
});

describe("a field for a number", () => {
  it("leaves the text as it is typed, comma and all", async () => {
    await type("62,");
    await type("62,5");
    expect(input().value).toBe("62,5");
    expect(taken).toEqual([62, 62.5]);
  });

  it("may be emptied on the way to another number, though nothing is not taken", async () => {
    await type("");
    expect(input().value).toBe("");
    await type("7");
    expect(taken).toEqual([undefined, 7]);
  });

  it("shows its number again when it is left empty", async () => {
    await type("");
    input().dispatchEvent(new FocusEvent("blur"));
    await drawn();
    expect(input().value).toBe("60");
  });

  it("keeps what is no number, says so, and hands nothing on", async () => {
    await type("6x");
    expect(input().value).toBe("6x");
    expect(input().getAttribute("aria-invalid")).toBe("true");
    expect(taken).toEqual([]);
  });

  it("takes no half where only whole numbers make sense", async () => {
    render(<Form whole />, root);
    await type("2.5");
    expect(root.textContent).toContain("whole numbers only");
    expect(taken).toEqual([]);
  });

  it("goes up and down by a step, by ten steps with shift, and not below its least", async () => {
    await press("ArrowUp");
    await press("ArrowDown", true);
    await press("ArrowDown", true);
    await press("ArrowDown", true);
    expect(taken).toEqual([62.5, 37.5, 12.5, 0]);
  });

  it("follows an undo, whatever was typed before it", async () => {
    await type("62,5");
    load.value = 60;
    await drawn();
    expect(input().value).toBe("60");
  });
});
