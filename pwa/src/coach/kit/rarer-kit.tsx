import type { ComponentChildren } from "preact";

import type { Kit } from "../../api/types";
import { LongTextField } from "../fields/text-field";
import type { DocumentForm } from "../rows/document-form";
import { ListField } from "../rows/list-field";
import { thingsOf } from "../exercises/search";
import { useDesk } from "../shell/desk-state";
import { within } from "../block/faults";
import { ANCHORS, BANDS, CHAINS, CUFFS, LANDMINES, SUPPORTS, WRAPS, type RowOf } from "./kit-lists";
import { KitList } from "./kit-list";

interface RarerKitProps {
  readonly form: DocumentForm<Kit>;
}

/** What not every gym has: closed until it holds something. */
export function RarerKit({ form }: RarerKitProps) {
  return (
    <>
      <Group form={form} name="Racks, stands and landmines" lists={["supports", "landmines"]}>
        <KitList<RowOf<"supports">>
          form={form}
          list="supports"
          one="rack"
          columns={SUPPORTS}
          blank={{ name: "Rack", safeties: true } as RowOf<"supports">}
        />
        <KitList<RowOf<"landmines">>
          form={form}
          list="landmines"
          one="landmine"
          columns={LANDMINES}
          blank={{ name: "Landmine" }}
        />
      </Group>
      <Group
        form={form}
        name="Bands, chains and where they fix"
        lists={["bands", "chains", "anchors"]}
      >
        <p class="aside-note">
          Two bands of a pair are two bands: sold pairs differ. Stretch a band five times, then read
          the scale on the way up.
        </p>
        <KitList<RowOf<"bands">>
          form={form}
          list="bands"
          one="band"
          columns={BANDS}
          blank={{ label: "" } as RowOf<"bands">}
        />
        <KitList<RowOf<"chains">>
          form={form}
          list="chains"
          one="chain"
          columns={CHAINS}
          blank={{ label: "", count: 2 } as RowOf<"chains">}
        />
        <KitList<RowOf<"anchors">>
          form={form}
          list="anchors"
          one="anchor"
          columns={ANCHORS}
          blank={{ name: "Peg", height_m: 0 }}
        />
      </Group>
      <Group form={form} name="Wraps and cuffs" lists={["wraps", "cuffs"]}>
        <KitList<RowOf<"wraps">>
          form={form}
          list="wraps"
          one="wrap"
          columns={WRAPS}
          blank={{ label: "", count: 2 } as RowOf<"wraps">}
        />
        <KitList<RowOf<"cuffs">>
          form={form}
          list="cuffs"
          one="cuff"
          columns={CUFFS}
          blank={{ label: "", material: "", count: 2 } as RowOf<"cuffs">}
        />
      </Group>
      <OtherThings form={form} />
    </>
  );
}

function OtherThings({ form }: RarerKitProps) {
  const { document, faults, change } = form;
  return (
    <section>
      <h2>Other things</h2>
      <ListField<readonly string[]>
        label="By their common names, with commas between"
        width="full"
        hint="bench, box, pull-up bar"
        value={document.things ?? []}
        faults={within(faults, "things")}
        write={(things) => things.join(", ")}
        read={(text) =>
          text
            .split(",")
            .map((thing) => thing.trim())
            .filter(Boolean)
        }
        onValue={(things) => change({ things: [...things] })}
      />
      <p class="aside-note">Exercises ask for: {thingsOf(useDesk().exercises.value).join(", ")}.</p>
      <LongTextField
        label="Notes"
        width="full"
        longest={2000}
        value={document.notes ?? ""}
        faults={within(faults, "notes")}
        onValue={(notes) => change({ notes: notes || undefined })}
      />
    </section>
  );
}

interface GroupProps extends RarerKitProps {
  readonly name: string;
  readonly lists: readonly (keyof Kit)[];
  readonly children: ComponentChildren;
}

function Group({ form, name, lists, children }: GroupProps) {
  const held = lists.some((list) => (form.document[list]?.length ?? 0) > 0);
  const faulty = lists.some((list) => within(form.faults, list).length > 0);
  return (
    <details open={held || faulty}>
      <summary>{name}</summary>
      {children}
    </details>
  );
}
