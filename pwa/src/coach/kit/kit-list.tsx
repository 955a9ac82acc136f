import type { Kit } from "../../api/types";
import { freshKey } from "../block/keys";
import type { Column } from "../rows/columns";
import type { DocumentForm } from "../rows/document-form";
import { RowsEditor } from "../rows/rows-editor";
import { useDesk } from "../shell/desk-state";

interface KitListProps<T extends object> {
  readonly form: DocumentForm<Kit>;
  readonly list: keyof Kit;
  readonly one: string;
  readonly columns: readonly Column<T>[];
  /** What a new row says at once; a key is added where things of this sort have one. */
  readonly blank: Omit<T, "key">;
  readonly keyed?: boolean;
}

/** One list of the kit as rows. */
export function KitList<T extends object>(props: KitListProps<T>) {
  const { form, list, one, columns, blank, keyed = true } = props;
  const { random } = useDesk();
  const rows = (form.document[list] as readonly T[] | undefined) ?? [];
  const begin = () => {
    const key = `${one.replaceAll(" ", "-")}-${freshKey(keysIn(form.document), random)}`;
    return (keyed ? { key, ...blank } : blank) as T;
  };
  return (
    <RowsEditor
      list={list}
      one={one}
      rows={rows}
      columns={columns}
      blank={begin}
      faults={form.faults}
      onRows={(next) => form.change({ [list]: next })}
    />
  );
}

function keysIn(kit: Kit): Set<string> {
  const lists = Object.values(kit).filter((value) => Array.isArray(value));
  const things: readonly object[] = lists.flat().filter((thing) => typeof thing === "object");
  return new Set(things.map((thing) => ("key" in thing ? String(thing.key) : "")));
}
