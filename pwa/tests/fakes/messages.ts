/** Messages as the plainest entries: said on the phone, waiting there, arrived at the server. */
import type { Phone } from "../../src/offline/phone";
import { newDraft } from "./phone";
import type { FakeServer } from "./server";

export async function say(phone: Phone, ...texts: string[]): Promise<void> {
  for (const text of texts) await phone.record(newDraft("message", { text }));
}

/** What the outbox holds, in the order of its numbers. */
export function unsent(phone: Phone): string[] {
  return phone
    .state()
    .entries.filter((kept) => kept.outbox)
    .sort((one, other) => one.n - other.n)
    .map(({ entry }) => (entry.body as { text: string }).text);
}

export function arrived(server: FakeServer): string[] {
  return server.stored().map(({ body }) => (body as { text: string }).text);
}
