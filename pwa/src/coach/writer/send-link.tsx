import { Link } from "../shell/link";
import { blockPath } from "../shell/route";
import { useGoOnceSaved } from "./go-once-saved";
import type { Saver } from "./saver";

/** To the sending page, once the server holds what is written here: it sends what it holds. */
export function SendLink({ saver }: { readonly saver: Saver }) {
  const to = blockPath(saver.id.value, "send");
  const { saved, wanted, leave } = useGoOnceSaved(saver, to);
  if (saved) {
    return (
      <Link to={to} class="button">
        Send …
      </Link>
    );
  }
  return (
    <button type="button" onClick={leave}>
      {wanted ? "Send … once it is on the server" : "Send …"}
    </button>
  );
}
