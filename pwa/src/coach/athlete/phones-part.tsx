import type { AthletePage, Device } from "../answers";
import { revokeDevice } from "../desk";
import { ColumnHeads } from "../shell/column-heads";
import { useDesk } from "../shell/desk-state";
import { May } from "../shell/right";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { date, dayAndClock } from "../shell/when";
import { HandOverPart } from "./hand-over-part";
import { Invitations } from "./invitations";
import { TypedCode } from "./typed-code";

interface PhonesPartProps {
  readonly page: AthletePage;
  readonly again: () => void;
}

/** The phones that hold this athlete's program, and how another one is paired. */
export function PhonesPart({ page, again }: PhonesPartProps) {
  return (
    <>
      <section>
        <h2>Paired phones</h2>
        {page.devices.length === 0 ? (
          <p class="aside-note">None yet. Make an invitation and send the link to {page.name}.</p>
        ) : (
          <Devices page={page} again={again} />
        )}
        <PairedBefore page={page} />
      </section>
      <May needs="own">
        <Invitations athlete={page.id} name={page.name} />
        <TypedCode athlete={page.id} />
      </May>
      <May needs="write">
        <HandOverPart athlete={page.id} again={again} />
      </May>
    </>
  );
}

/** Whoever hands an athlete over leaves phones behind, which the next coach has never seen. */
function PairedBefore({ page: { devices, handed_over } }: Pick<PhonesPartProps, "page">) {
  if (!handed_over) return null;
  const older = devices.filter(
    ({ created_at, revoked_at }) =>
      created_at !== null && created_at < handed_over.at && revoked_at === null,
  );
  if (older.length === 0) return null;
  return (
    <p class="aside-note">
      {older.map(({ name }) => name).join(", ")}: paired by {handed_over.by} before the hand-over on{" "}
      {date(handed_over.at)}, and still getting what you send. Revoke each that you and the athlete
      do not know.
    </p>
  );
}

function Devices({ page, again }: PhonesPartProps) {
  const act = useAct();
  const revoke = (device: Device) => {
    const words = `${device.name} gets nothing new from now on. What it still records is held for you to accept. Revoke it?`;
    if (window.confirm(words)) act.run(() => revokeDevice(page.id, device.id), again);
  };
  return (
    <>
      <table class="ruled">
        <ColumnHeads names={["Phone", "Last used"]} deed="Revoke" />
        <tbody>
          {page.devices.map((device) => (
            <DeviceRow key={device.id} device={device} busy={act.busy} revoke={revoke} />
          ))}
        </tbody>
      </table>
      <Failure fault={act.fault} />
    </>
  );
}

interface DeviceRowProps {
  readonly device: Device;
  readonly busy: boolean;
  readonly revoke: (device: Device) => void;
}

function DeviceRow({ device, busy, revoke }: DeviceRowProps) {
  const now = useDesk().now();
  return (
    <tr>
      <th scope="row">{device.name}</th>
      <td data-head="Last used">
        {device.last_used_at === null ? "never" : dayAndClock(device.last_used_at, now)}
      </td>
      <td>
        {device.revoked_at === null ? (
          <May needs="own">
            <button
              type="button"
              class="plain"
              aria-label={`Revoke ${device.name}`}
              disabled={busy}
              onClick={() => revoke(device)}
            >
              Revoke
            </button>
          </May>
        ) : (
          `revoked ${date(device.revoked_at)}`
        )}
      </td>
    </tr>
  );
}
