import type { Named } from "../answers";
import { ownBlock } from "../desk";
import { Link } from "../shell/link";
import { ownPath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { OwnList } from "./own-list";

interface OwnPartProps {
  readonly block: Named;
  readonly athlete: Pick<Named, "id" | "name">;
}

/** On the athlete's page: what is this athlete's own in the block under way. */
export function OwnPart({ block, athlete }: OwnPartProps) {
  const load = useLoad(`own ${block.id} ${athlete.id}`, () => ownBlock(block.id, athlete.id));
  return (
    <section>
      <h2>Own changes</h2>
      <p class="aside-note">
        What {athlete.name} does otherwise than {block.name} says. It is kept apart from the block
        and counts each time that the block is sent.
      </p>
      <Loaded load={load} what="own changes">
        {({ changes }) =>
          changes.length === 0 ? (
            <p class="soft">None: {athlete.name} gets the block as it is written.</p>
          ) : (
            <OwnList block={block.id} athlete={athlete} changes={changes} onDecided={load.again} />
          )
        }
      </Loaded>
      <p>
        <Link to={ownPath(block.id, athlete.id)}>Write for {athlete.name} only</Link>
      </p>
    </section>
  );
}
