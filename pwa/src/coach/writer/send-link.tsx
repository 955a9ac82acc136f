import { useEffect, useState } from "preact/hooks";

import { go, useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { blockPath } from "../shell/route";
import type { Saver } from "./saver";

/** To the sending page, once the server holds what is written here: it sends what it holds. */
export function SendLink({ saver }: { readonly saver: Saver }) {
  const desk = useDesk();
  const [wanted, setWanted] = useState(false);
  const saved = saver.saving.value.kind === "saved";
  const to = blockPath(saver.id.value, "send");
  useEffect(() => {
    if (wanted && saved) go(desk, to);
  }, [wanted, saved]);
  if (saved) {
    return (
      <Link to={to} class="button">
        Send …
      </Link>
    );
  }
  const press = () => {
    setWanted(true);
    saver.saveNow();
  };
  return (
    <button type="button" onClick={press}>
      {wanted ? "Send … once it is on the server" : "Send …"}
    </button>
  );
}
