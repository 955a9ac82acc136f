import { render } from "preact";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

import { createDesk, type Desk, DeskProvider, welcome } from "../shell/desk-state";
import { useDocumentForm } from "./document-form";

interface Gym {
  readonly name: string;
}

let root: HTMLElement;
let desk: Desk;
let saved: Gym[];
let answer: () => void;

function GymForm() {
  const form = useDocumentForm<Gym>({
    begin: { name: "Cellar" },
    what: "kit",
    save: (document) =>
      new Promise((resolve) => {
        answer = () => resolve({ document });
      }),
    onSaved: (document) => saved.push(document),
  });
  return (
    <main>
      <input
        value={form.document.name}
        onInput={({ currentTarget }) => form.change({ name: currentTarget.value })}
      />
      {form.bar}
    </main>
  );
}

async function drawn() {
  await new Promise((resolve) => setTimeout(resolve));
}

async function type(text: string) {
  const field = root.querySelector("input");
  if (!field) throw new Error("the form has no field");
  field.value = text;
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  await drawn();
}

async function save() {
  root.querySelector("button")?.click();
  await drawn();
}

beforeEach(() => {
  saved = [];
  root = document.body.appendChild(document.createElement("div"));
  desk = createDesk("/desk", localStorage);
  welcome(desk, { id: "maren", name: "Maren", email: "maren@skarn.example" });
  render(
    <DeskProvider value={desk}>
      <GymForm />
    </DeskProvider>,
    root,
  );
});

afterEach(() => {
  render(null, root);
  root.remove();
});

describe("a form that is saved as a whole", () => {
  it("keeps what is typed while it is on its way, and calls that unsaved", async () => {
    await type("Ship's hold");
    await save();
    await type("Ship's hold, aft");
    answer();
    await drawn();
    expect(saved).toEqual([{ name: "Ship's hold" }]);
    expect(root.querySelector("input")?.value).toBe("Ship's hold, aft");
    expect(desk.unsaved.value).toContain("not saved");
    expect(root.querySelector("button")?.disabled).toBe(false);
  });

  it("is saved once the answer is there", async () => {
    await type("Ship's hold");
    await save();
    answer();
    await drawn();
    expect(desk.unsaved.value).toBeNull();
  });
});
