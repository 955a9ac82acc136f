/** Sending a file, with word of how far it has come, of which `fetch` says nothing. */
import { addressOf, NoAnswer, read, Refused } from "./client";

/** A poor connection may take minutes, and nothing is lost meanwhile. */
const PATIENCE_MS = 15 * 60_000;

/** `onShare` hears how much of it has gone up, from 0 to 1. Throws as `post` does. */
export async function upload<T>(
  path: string,
  file: Blob,
  onShare: (share: number) => void,
): Promise<T> {
  try {
    return await read<T>(await send(addressOf(path), file, onShare));
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    throw new NoAnswer("the server did not answer", { cause: fault });
  }
}

function send(address: string, file: Blob, onShare: (share: number) => void): Promise<Response> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open("POST", address);
    request.timeout = PATIENCE_MS;
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.upload.addEventListener("progress", ({ loaded, total }) => {
      onShare(total > 0 ? loaded / total : 0);
    });
    request.addEventListener("load", () => resolve(answerOf(request)));
    for (const end of ["error", "abort", "timeout"]) {
      request.addEventListener(end, () => reject(new Error(end)));
    }
    request.send(file);
  });
}

function answerOf(request: XMLHttpRequest): Response {
  const headers = new Headers();
  for (const name of ["Undercroft", "Retry-After"]) {
    const value = request.getResponseHeader(name);
    if (value !== null) headers.set(name, value);
  }
  return new Response(request.responseText, { status: request.status, headers });
}
