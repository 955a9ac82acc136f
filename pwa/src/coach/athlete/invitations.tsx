import { useState } from "preact/hooks";

import type { Invitation, NewInvitation } from "../answers";
import { invitations, invite, revokeInvitation } from "../desk";
import { ColumnHeads } from "../shell/column-heads";
import { useDesk } from "../shell/desk-state";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { date, dayAndClock } from "../shell/when";
import { CopyButton } from "./copy-button";

interface InvitationsProps {
  readonly athlete: string;
  readonly name: string;
}

/** Links that pair a phone from afar: shown once, good for one phone. */
export function Invitations({ athlete, name }: InvitationsProps) {
  const load = useLoad(`invitations ${athlete}`, () => invitations(athlete));
  const act = useAct();
  const [made, setMade] = useState<NewInvitation | null>(null);
  const make = () =>
    act.run(
      () => invite(athlete),
      (answer) => {
        setMade(answer);
        load.again();
      },
    );
  const revoke = (id: string) =>
    act.run(
      () => revokeInvitation(athlete, id),
      () => {
        if (made?.id === id) setMade(null);
        load.again();
      },
    );
  return (
    <section>
      <h2>Invitations</h2>
      <p class="aside-note">
        A link for one phone. It goes to {name} by whatever way you trust; who opens it is shown
        your name and has to agree.
      </p>
      {made && <Made invitation={made} name={name} />}
      <Failure fault={act.fault} />
      <button type="button" class={made ? "" : "main"} disabled={act.busy} onClick={make}>
        {made ? "Make another" : "Make an invitation"}
      </button>
      <Loaded load={load} what="earlier invitations">
        {(list) => <Earlier list={list} busy={act.busy} revoke={revoke} />}
      </Loaded>
    </section>
  );
}

function Made({ invitation, name }: { readonly invitation: NewInvitation; readonly name: string }) {
  const now = useDesk().now();
  // As a picture, not as markup: nothing that came over the wire is put into the page.
  const picture = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(invitation.qr)}`;
  return (
    <div class="invitation" role="status">
      <img
        class="qr"
        src={picture}
        alt={`The invitation for ${name} as a QR code`}
        width={200}
        height={200}
      />
      <div>
        <p>
          <code class="secret">{invitation.url}</code>
        </p>
        <CopyButton text={invitation.url} what="link" />
        <p>Shown only now. Good for one phone, until {dayAndClock(invitation.expires_at, now)}.</p>
      </div>
    </div>
  );
}

interface EarlierProps {
  readonly list: readonly Invitation[];
  readonly busy: boolean;
  readonly revoke: (id: string) => void;
}

function Earlier({ list, busy, revoke }: EarlierProps) {
  const now = useDesk().now();
  if (list.length === 0) return null;
  return (
    <table class="ruled">
      <caption>Made so far</caption>
      <ColumnHeads names={["Made", "State"]} deed="Revoke" />
      <tbody>
        {list.map((each) => (
          <tr key={each.id}>
            <td data-head="Made">{dayAndClock(each.created_at, now)}</td>
            <td data-head="State">{stateOf(each, now)}</td>
            <td>
              {isOpen(each, now) && (
                <button type="button" class="plain" disabled={busy} onClick={() => revoke(each.id)}>
                  Revoke
                  <span class="sr-only"> the one made {dayAndClock(each.created_at, now)}</span>
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function isOpen(each: Invitation, now: number): boolean {
  return each.used_at === null && each.revoked_at === null && Date.parse(each.expires_at) > now;
}

function stateOf(each: Invitation, now: number): string {
  if (each.used_at !== null) return `used ${date(each.used_at)}`;
  if (each.revoked_at !== null) return `revoked ${date(each.revoked_at)}`;
  if (Date.parse(each.expires_at) <= now) return `ran out ${date(each.expires_at)}`;
  return `waits to be opened, until ${dayAndClock(each.expires_at, now)}`;
}
