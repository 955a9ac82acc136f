declare global {
  interface Window {
    /** Not in every browser, nor in TypeScript's own types. */
    readonly trustedTypes?: {
      createPolicy(name: string, rules: ScriptAddresses): ScriptAddresses;
    };
  }
}

interface ScriptAddresses {
  createScriptURL(address: string): string;
}

const WORKER = "/worker.js";

/** Registers the service worker; does nothing in development or where the browser has none. */
export async function registerWorker(): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  await navigator.serviceWorker.register(trusted(WORKER));
}

/**
 * Under Trusted Types the browser takes a script's address only from a policy that the server's
 * headers name: this one is called "undercroft" and lets nothing but the worker through.
 */
function trusted(address: typeof WORKER): string {
  const policy = window.trustedTypes?.createPolicy("undercroft", {
    createScriptURL: (candidate) => (candidate === WORKER ? candidate : ""),
  });
  return policy ? policy.createScriptURL(address) : address;
}
