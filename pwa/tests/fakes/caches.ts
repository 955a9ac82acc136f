/** The browser's caches in memory, with so much room. */
export interface FakeCaches {
  readonly open: (name: string) => Promise<Cache>;
  readonly match: (
    address: string,
    options?: { cacheName?: string },
  ) => Promise<Response | undefined>;
  readonly delete: (name: string) => Promise<boolean>;
  /** Paths of what is kept under a name, in order. */
  readonly kept: (name: string) => string[];
}

export function fakeCaches(mostBytes = Infinity): FakeCaches {
  const all = new Map<string, Map<string, Blob>>();

  function used(): number {
    return [...all.values()]
      .flatMap((one) => [...one.values()])
      .reduce((sum, b) => sum + b.size, 0);
  }

  function cacheOf(name: string): Cache {
    const kept = all.get(name) ?? new Map<string, Blob>();
    all.set(name, kept);
    const cache: Pick<Cache, "match" | "put" | "delete" | "keys"> = {
      match: (address) => Promise.resolve(answer(kept.get(pathOf(address)))),
      async put(address, response) {
        const blob = await response.blob();
        if (used() + blob.size > mostBytes) throw new DOMException("", "QuotaExceededError");
        kept.set(pathOf(address), blob);
      },
      delete: (address) => Promise.resolve(kept.delete(pathOf(address))),
      keys: () => Promise.resolve([...kept.keys()].map((path) => new Request(`${HERE}${path}`))),
    };
    return cache as Cache;
  }

  return {
    open: (name) => Promise.resolve(cacheOf(name)),
    match: (address, { cacheName = "" } = {}) =>
      Promise.resolve(answer(all.get(cacheName)?.get(pathOf(address)))),
    delete: (name) => Promise.resolve(all.delete(name)),
    kept: (name) => [...(all.get(name)?.keys() ?? [])],
  };
}

const HERE = "http://phone.test";

function pathOf(address: RequestInfo | URL): string {
  return new URL(address instanceof Request ? address.url : address, HERE).pathname;
}

function answer(blob: Blob | undefined): Response | undefined {
  return blob && new Response(blob);
}
