/**
 * The one way to talk to the server: JSON in, JSON out.
 *
 * Only an answer that bears our header counts. Anything else, such as a captive portal's page with
 * status 200, is no answer at all.
 */

const ROOT = "/api/v1";
const PATIENCE_MS = 20_000;
/** Zipping shorter bodies saves no packet. */
const SHORT_CHARACTERS = 1_000;

/** One fault of a document: its place in words and as a path, what is wrong, what would be right. */
export interface Fault {
  readonly where: string;
  readonly path: string;
  readonly what: string;
  readonly right: string;
}

/** A problem document (RFC 9457). */
interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly errors?: readonly Fault[];
}

/** The server answered, and the answer is no. */
export class Refused extends Error {
  override readonly name = "Refused";

  constructor(
    readonly problem: Problem,
    /** How long the server asks to be left alone, in seconds. */
    readonly retryAfterS: number | null = null,
  ) {
    super(problem.detail || problem.title);
  }

  get status(): number {
    return this.problem.status;
  }

  get faults(): readonly Fault[] {
    return this.problem.errors ?? [];
  }
}

/** Nothing came back that is ours: no network, no server, or something else in its place. */
export class NoAnswer extends Error {
  override readonly name = "NoAnswer";
}

export interface AskOptions {
  readonly signal?: AbortSignal;
  readonly patienceMs?: number;
  /** Send the body as gzip where it is long and the browser can. */
  readonly zip?: boolean;
}

/** Reads. Throws `Refused`, `NoAnswer`, or the signal's reason where it was aborted. */
export function get<T>(path: string, options: AskOptions = {}): Promise<T> {
  return ask<T>(path, { method: "GET" }, options);
}

/** Changes something. Throws as `get` does. */
export async function post<T>(
  path: string,
  body: unknown = {},
  options: AskOptions = {},
): Promise<T> {
  const text = JSON.stringify(body);
  const headers = { "Content-Type": "application/json" };
  if (!options.zip || text.length < SHORT_CHARACTERS || typeof CompressionStream === "undefined") {
    return await ask<T>(path, { method: "POST", headers, body: text }, options);
  }
  const zipped = { ...headers, "Content-Encoding": "gzip" };
  return await ask<T>(path, { method: "POST", headers: zipped, body: await gzip(text) }, options);
}

function gzip(text: string): Promise<ArrayBuffer> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
}

/** The address of a file to be downloaded by a link. */
export function addressOf(path: string): string {
  return ROOT + path;
}

async function ask<T>(path: string, init: RequestInit, options: AskOptions): Promise<T> {
  const patience = AbortSignal.timeout(options.patienceMs ?? PATIENCE_MS);
  const signal = options.signal ? AbortSignal.any([options.signal, patience]) : patience;
  try {
    const response = await fetch(ROOT + path, { ...init, signal });
    return await read<T>(response);
  } catch (fault) {
    if (options.signal?.aborted || fault instanceof Refused) throw fault;
    throw new NoAnswer("the server did not answer", { cause: fault });
  }
}

/** What an answer says. Throws `Refused`, or another error where it is not ours. */
export async function read<T>(response: Response): Promise<T> {
  if (response.headers.get("Undercroft") !== "1") throw new Error("an answer that is not ours");
  if (response.status === 204) return undefined as T;
  const body: unknown = await response.json();
  if (!response.ok) throw new Refused(body as Problem, secondsToWait(response));
  return body as T;
}

function secondsToWait(response: Response): number | null {
  const seconds = Number(response.headers.get("Retry-After") ?? Number.NaN);
  return Number.isFinite(seconds) ? seconds : null;
}
