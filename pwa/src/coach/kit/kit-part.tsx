import { useState } from "preact/hooks";

import type { Kit } from "../../api/types";
import type { AthletePage } from "../answers";
import { freshKey } from "../block/keys";
import { saveKit } from "../desk";
import { TextField } from "../fields/text-field";
import { useDocumentForm, type DocumentForm } from "../rows/document-form";
import { within } from "../block/faults";
import { useDesk } from "../shell/desk-state";
import { May, Writable } from "../shell/right";
import { BARS, DUMBBELLS, HANDLES, PLATES, STACKS, type RowOf } from "./kit-lists";
import { KitList } from "./kit-list";
import { ProposalsPart } from "./proposals-part";
import { RarerKit } from "./rarer-kit";

interface KitPartProps {
  readonly page: AthletePage;
  readonly onSaved: () => void;
}

/** Everything that stands in this athlete's gym. */
export function KitPart({ page, onSaved }: KitPartProps) {
  const { random } = useDesk();
  const [begun, setBegun] = useState<Kit | null>(page.kit);
  const [accepted, setAccepted] = useState(0);
  const accept = (kit: Kit) => {
    setBegun(kit);
    setAccepted(accepted + 1);
    onSaved();
  };
  if (begun) {
    return (
      <>
        <ProposalsPart athlete={page.id} onAccepted={accept} />
        <KitForm key={accepted} begin={begun} page={page} onSaved={onSaved} />
      </>
    );
  }
  const begin = () => {
    setBegun({
      key: `kit-${freshKey(new Set(), random)}`,
      name: `${page.name}’s kit`.slice(0, 80),
    });
  };
  return (
    <>
      <p class="lead">Nothing is known of the kit here, so no load can be worked out.</p>
      <p>
        Weigh the bars if you can: a bar sold as 20 kg may weigh 18. Count the plates and measure
        their thickness, because a sleeve ends somewhere.
      </p>
      <May needs="write">
        <button type="button" class="main" onClick={begin}>
          Write down the kit
        </button>
      </May>
    </>
  );
}

interface KitFormProps extends KitPartProps {
  readonly begin: Kit;
}

function KitForm({ begin, page, onSaved }: KitFormProps) {
  const form = useDocumentForm<Kit>({
    begin,
    what: "kit",
    save: (document) => saveKit(page.id, document),
    onSaved,
  });
  return (
    <>
      <Writable>
        <TextField
          label="Name of the place"
          width="w20"
          longest={80}
          value={form.document.name}
          faults={within(form.faults, "name")}
          onValue={(name) => form.change({ name })}
        />
        <CommonKit form={form} />
        <RarerKit form={form} />
      </Writable>
      {form.bar}
    </>
  );
}

function CommonKit({ form }: { readonly form: DocumentForm<Kit> }) {
  return (
    <>
      <section>
        <h2>Bars</h2>
        <KitList<RowOf<"bars">>
          form={form}
          list="bars"
          one="bar"
          columns={BARS}
          blank={{ name: "Bar", mass_kg: 20 }}
        />
      </section>
      <section>
        <h2>Plates</h2>
        <KitList<RowOf<"plates">>
          form={form}
          list="plates"
          one="plate"
          columns={PLATES}
          blank={{ count: 2 } as RowOf<"plates">}
          keyed={false}
        />
      </section>
      <section>
        <h2>Dumbbells</h2>
        <KitList<RowOf<"dumbbells">>
          form={form}
          list="dumbbells"
          one="dumbbell"
          columns={DUMBBELLS}
          blank={{ count: 2 } as RowOf<"dumbbells">}
          keyed={false}
        />
        <h3>Loadable handles</h3>
        <KitList<RowOf<"handles">>
          form={form}
          list="handles"
          one="handle"
          columns={HANDLES}
          blank={{ name: "Handle", mass_kg: 2, count: 2 }}
        />
      </section>
      <section>
        <h2>Stacks</h2>
        <KitList<RowOf<"stacks">>
          form={form}
          list="stacks"
          one="stack"
          columns={STACKS}
          blank={{ name: "Stack", pins_kg: [] }}
        />
      </section>
    </>
  );
}
