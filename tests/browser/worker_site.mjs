// SPDX-License-Identifier: MIT
// The site with something put before the worker's script, on a server of its own.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startServer } from "../../web/serve.mjs";

export async function withWorkerScript(site, before, work) {
  const folder = mkdtempSync(join(tmpdir(), "shimlight-worker-"));
  cpSync(site, folder, { recursive: true });
  const host = join(folder, "host.js");
  writeFileSync(host, `${before}\n${readFileSync(host, "utf8")}`);
  const server = await startServer(folder);
  try {
    return await work(server);
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true });
  }
}
