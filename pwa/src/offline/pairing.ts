/** Tying this phone to an athlete, and untying it. */
import { NoAnswer, Refused } from "../api/client";
import type { Invitation, Paired, PairingCode, Snapshot, Way } from "../api/sync";
import type { Ask } from "./exchange";

/** Who invites whom; uses nothing up. */
export function look(ask: Ask, way: Way): Promise<Invitation> {
  return ask.post<Invitation>("/pairing/look", way);
}

/** A code to be typed into the installed app, from an opened invitation. */
export function makeCode(ask: Ask, secret: string): Promise<PairingCode> {
  return ask.post<PairingCode>("/pairing/code", { secret });
}

/**
 * Pairs this phone. Where an earlier answer was lost, the invitation is used up and the browser holds
 * the cookie already; the server then says by a snapshot who this is. `before` is the device id that
 * was known until now.
 */
export async function accept(
  ask: Ask,
  way: Way,
  name: string,
  before: string | null,
): Promise<Paired> {
  try {
    return await ask.post<Paired>("/pairing/accept", { ...way, device_name: name });
  } catch (fault) {
    const lost = fault instanceof NoAnswer || (fault instanceof Refused && fault.status === 404);
    const paired = lost ? await pairedAlready(ask) : null;
    if (!paired || paired.device === before) throw fault;
    return paired;
  }
}

async function pairedAlready(ask: Ask): Promise<Paired | null> {
  try {
    const { device, athlete, coach, epoch } = await ask.get<Snapshot>("/snapshot?after=0");
    return { device, athlete, coach, epoch, cursor: 0 };
  } catch (fault) {
    if (fault instanceof NoAnswer || fault instanceof Refused) return null;
    throw fault;
  }
}

/** Gives up the pairing at the server; a device that it does not know any more is untied already. */
export async function unpair(ask: Ask): Promise<void> {
  try {
    await ask.post<undefined>("/unpair", {});
  } catch (fault) {
    if (!(fault instanceof Refused && fault.status === 401)) throw fault;
  }
}

/** What the coach sees the phone as, from what the browser says of itself. */
export function deviceName(agent: string): string {
  const names: readonly (readonly [RegExp, string])[] = [
    [/iPhone/, "iPhone"],
    [/iPad/, "iPad"],
    [/Android.*Mobile/, "Android phone"],
    [/Android/, "Android tablet"],
    [/Macintosh/, "Mac"],
    [/Windows/, "Windows computer"],
    [/Linux/, "Linux computer"],
  ];
  return names.find(([pattern]) => pattern.test(agent))?.[1] ?? "A phone";
}
