// One replication: node pouch.cjs <records> <batch size> <delay of each request in ms>
const { mkdtempSync, rmSync } = require("node:fs");
const { tmpdir } = require("node:os");
const { join } = require("node:path");
const express = require("express");
const expressPouch = require("express-pouchdb");
const PouchDB = require("pouchdb");

const [records, batch, delay] = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), "undercroft-pouch-"));
const Store = PouchDB.defaults({ prefix: join(folder, "server-") });

const app = express();
app.use((request, answer, next) => (delay > 0 ? setTimeout(next, delay) : next()));
app.use("/", expressPouch(Store, { mode: "minimumForPouchDB", configPath: join(folder, "c.json"), logPath: join(folder, "log.txt") }));

const server = app.listen(0, "127.0.0.1", async () => {
  const phone = new PouchDB(join(folder, "phone"));
  await phone.bulkDocs(
    Array.from({ length: records }, (_, n) => ({
      _id: `entry-${String(n).padStart(8, "0")}`,
      n, v: 1, kind: "set.done", at: "2026-02-03T18:04:11.250+01:00",
      revision: 1, session: "w1.mon", set: `squat.${n}`, body: { load_kg: 92.5, reps: 3, rir: 4 },
    })),
  );
  const remote = new PouchDB(`http://127.0.0.1:${server.address().port}/ledger`);
  await remote.info();
  const start = process.hrtime.bigint();
  await phone.replicate.to(remote, { batch_size: batch, batches_limit: 10 });
  const seconds = Number(process.hrtime.bigint() - start) / 1e9;
  const arrived = (await remote.info()).doc_count;
  console.log(JSON.stringify({ seconds, arrived }));
  rmSync(folder, { recursive: true, force: true });
  process.exit(0);
});
