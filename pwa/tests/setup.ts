import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach } from "vitest";

// Each test begins on a phone that holds nothing.
beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
