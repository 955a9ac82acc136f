/**
 * The server's side of the exchange in memory, as `server/undercroft/services/sync.py` has it: verdicts
 * by id and content, numbers per device, a feed with positions, an epoch.
 */
import type { FeedItem, Verdict, VerdictFor } from "../../src/api/sync";
import type { Entry } from "../../src/offline/entry";

interface Line {
  readonly entry: Entry;
  readonly device: string;
  readonly position: number;
  readonly status: "stored" | "held";
}

export interface FakeServer {
  /** Answers as `fetch` does. */
  readonly fetch: (address: string, init?: RequestInit) => Promise<Response>;
  readonly lines: Line[];
  readonly stored: () => Entry[];
  readonly publish: (kind: string, key: string, body: unknown) => void;
  /** Another answer in place of the server's own, for the next request of that path. */
  readonly answerNext: (path: string, answer: () => Response) => void;
  /** Forgets everything after that number of lines and begins a new life. */
  readonly restore: (lines: number) => void;
  readonly revoke: () => void;
  /** What was asked, oldest first. */
  readonly asked: { readonly path: string; readonly body: unknown }[];
  device: string;
  mostEntries: number;
  mostItems: number;
  now: number;
}

const ATHLETE = { id: "athlete-1", name: "Osk Venner" };
export const COACH = "Ida Moor";

export function createFakeServer(): FakeServer {
  const lines: Line[] = [];
  const feed: FeedItem[] = [];
  const asked: FakeServer["asked"] = [];
  const inPlace = new Map<string, (() => Response)[]>();
  let position = 0;
  let epoch = "epoch-1";
  let revoked = false;

  function publish(kind: string, key: string, body: unknown): void {
    position += 1;
    const old = feed.findIndex((item) => item.kind === kind && item.key === key);
    if (old >= 0) feed.splice(old, 1);
    feed.push({ position, kind, key, body });
  }

  function take(raw: Entry): VerdictFor {
    const same = lines.find((line) => line.entry.id === raw.id);
    if (same && JSON.stringify(same.entry) === JSON.stringify(raw)) {
      const status: Verdict = same.status === "held" ? "held" : "duplicate";
      return { id: raw.id, status, position: same.position };
    }
    const code = troubleOf(raw, same);
    position += 1;
    lines.push({ entry: raw, device: server.device, position, status: code ? "held" : "stored" });
    if (!code) return { id: raw.id, status: "stored", position };
    const trouble = { code, where: "", what: code, right: "" };
    return { id: raw.id, status: "held", position, problem: trouble };
  }

  function troubleOf(raw: Entry, same: Line | undefined): string | null {
    if (revoked) return "revoked-device";
    if (same) return "id-taken";
    if (lines.some(({ device, entry }) => device === server.device && entry.n === raw.n)) {
      return "n-taken";
    }
    return (raw.body as { bad?: boolean }).bad ? "bad-shape" : null;
  }

  function storedThrough(): number {
    const numbers = new Set(
      lines.filter(({ device }) => device === server.device).map(({ entry }) => entry.n),
    );
    let through = 0;
    while (numbers.has(through + 1)) through += 1;
    return through;
  }

  function page(after: number, notFrom: string | null) {
    const entries = lines
      .filter(({ status, device }) => status === "stored" && device !== notFrom)
      .map((line) => ({
        position: line.position,
        kind: "entry",
        key: line.entry.id,
        body: line.entry,
      }));
    const items = [...feed, ...entries]
      .filter((item) => item.position > after)
      .sort((one, other) => one.position - other.position);
    const kept = items.slice(0, server.mostItems);
    const more = kept.length < items.length;
    return { feed: kept, cursor: more ? (kept.at(-1)?.position ?? 0) : position, more };
  }

  function sync(body: { device: string; epoch: string; cursor: number; entries: Entry[] }) {
    if (body.device !== server.device) return problem(403);
    if (body.entries.length > server.mostEntries) return problem(413);
    const verdicts = body.entries.map(take);
    const head = { epoch, verdicts, stored_through: storedThrough(), server_time: time() };
    if (revoked) {
      return json({ ...head, feed: [], cursor: body.cursor, more: false, revoked: true });
    }
    if (body.epoch !== epoch) return json({ ...head, feed: [], cursor: 0, more: false });
    return json({ ...head, ...page(body.cursor, server.device) });
  }

  function snapshot(after: number) {
    const who = { device: server.device, athlete: ATHLETE, coach: COACH };
    return json({
      ...who,
      epoch,
      stored_through: storedThrough(),
      server_time: time(),
      ...page(after, null),
    });
  }

  function time(): string {
    return new Date(server.now).toISOString();
  }

  async function answer(address: string, init: RequestInit = {}): Promise<Response> {
    const url = new URL(address, "http://server.test");
    const path = url.pathname.replace("/api/v1", "");
    const body: unknown = init.body ? await readBody(init) : {};
    asked.push({ path, body });
    const other = inPlace.get(path)?.shift();
    if (other) return other();
    if (path === "/sync") return sync(body as Parameters<typeof sync>[0]);
    if (revoked) return problem(401);
    if (path === "/snapshot") return snapshot(Number(url.searchParams.get("after") ?? 0));
    if (path === "/device/renew") {
      server.device = `${server.device}+`;
      return json({ device: server.device, epoch });
    }
    if (path === "/pairing/accept") {
      return json({ device: server.device, athlete: ATHLETE, coach: COACH, epoch, cursor: 0 });
    }
    return problem(404);
  }

  const server: FakeServer = {
    fetch: answer,
    lines,
    stored: () => lines.filter(({ status }) => status === "stored").map(({ entry }) => entry),
    publish,
    answerNext(path, other) {
      inPlace.set(path, [...(inPlace.get(path) ?? []), other]);
    },
    restore(count) {
      lines.splice(count);
      epoch = `${epoch}+`;
    },
    revoke() {
      revoked = true;
    },
    asked,
    device: "device-1",
    mostEntries: 500,
    mostItems: 1_000,
    now: Date.UTC(2026, 1, 3, 17, 0),
  };
  return server;
}

export function json(body: unknown, status = 200, headers: Record<string, string> = {}): Response {
  return new Response(JSON.stringify(body), {
    status,
    headers: { "Content-Type": "application/json", Undercroft: "1", ...headers },
  });
}

export function problem(status: number, headers: Record<string, string> = {}): Response {
  return json({ type: "", title: "", status, detail: "refused" }, status, headers);
}

async function readBody({ body, headers }: RequestInit): Promise<unknown> {
  const zipped = (headers as Record<string, string>)["Content-Encoding"] === "gzip";
  if (!zipped) return JSON.parse(body as string);
  const stream = new Blob([body as ArrayBuffer]).stream();
  return new Response(stream.pipeThrough(new DecompressionStream("gzip"))).json();
}
