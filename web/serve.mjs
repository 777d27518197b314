// SPDX-License-Identifier: MIT
// A server of static files: `node web/serve.mjs FOLDER [PORT]`, or startServer() from a test. What
// packs well goes packed, as a host on the network would send it.
import { createReadStream } from "node:fs";
import { readdir, readFile, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { networkInterfaces } from "node:os";
import { extname, join, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

const types = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

const packs = /\.(html|css|m?js|json|webmanifest|wasm|svg)$/;
const packers = {
  br: (bytes) => promisify(brotliCompress)(bytes,
    { params: { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY } }),
  gzip: (bytes) => promisify(gzip)(bytes, { level: constants.Z_BEST_COMPRESSION }),
};
const packed = new Map(); // "br FILE MTIME" to a promise of bytes

/** The name of the best packing that the asker takes, or undefined. */
function packingFor(file, accepted = "") {
  const names = accepted.split(",").map((one) => one.trim().split(";")[0]);
  return packs.test(file) ? Object.keys(packers).find((name) => names.includes(name)) : undefined;
}

/** Packs once for each content of a file. */
function pack(name, file, info) {
  const key = `${name} ${file} ${info.mtimeMs}`;
  if (!packed.has(key)) packed.set(key, readFile(file).then(packers[name]));
  return packed.get(key);
}

/** The file a request means, or null when there is none within `folder`. */
async function fileFor(folder, address) {
  let path;
  try {
    path = decodeURIComponent(new URL(address, "http://host").pathname);
  } catch {
    return null;
  }
  if (path.includes("\0")) return null;
  const file = resolve(folder, "." + (path.endsWith("/") ? path + "index.html" : path));
  if (!file.startsWith(folder + sep)) return null;
  const info = await stat(file).catch(() => null);
  return info?.isFile() ? { file, info } : null;
}

async function answer(folder, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { allow: "GET, HEAD" }).end();
    return;
  }
  const found = await fileFor(folder, request.url);
  if (!found) {
    response.writeHead(404, { "content-type": "text/plain" }).end("Not found\n");
    return;
  }
  const packing = packingFor(found.file, request.headers["accept-encoding"]);
  const bytes = packing && await pack(packing, found.file, found.info).catch(() => null);
  response.writeHead(200, {
    "content-type": types[extname(found.file)] ?? "application/octet-stream",
    "content-length": bytes?.length ?? found.info.size,
    ...(bytes ? { "content-encoding": packing } : {}),
    vary: "accept-encoding",
    // The service worker keeps the page; what lies between must not keep an old one.
    "cache-control": "no-cache",
    "x-content-type-options": "nosniff",
  });
  if (request.method === "HEAD") response.end();
  else if (bytes) response.end(bytes);
  else createReadStream(found.file).pipe(response);
}

/** Packs all of `folder` beforehand, so that no visitor waits for it. */
export async function packAll(folder) {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  await Promise.all(entries.filter((one) => one.isFile() && packs.test(one.name)).map(async (one) => {
    const file = join(resolve(one.parentPath ?? one.path), one.name);
    const info = await stat(file);
    await Promise.all(Object.keys(packers).map((name) => pack(name, file, info)));
  }));
}

/** Serves `folder`; port 0 takes a free one. stop() also drops what is still connected. */
export async function startServer(folder, { port = 0, host = "127.0.0.1" } = {}) {
  const root = resolve(folder);
  const server = createServer((request, response) => answer(root, request, response));
  const sockets = new Set();
  server.on("connection", (socket) => {
    sockets.add(socket);
    socket.on("close", () => sockets.delete(socket));
  });
  await new Promise((done, failed) => {
    server.once("error", failed);
    server.listen(port, host, done);
  });
  const stop = () =>
    new Promise((done) => {
      server.close(done);
      for (const socket of sockets) socket.destroy();
    });
  return { port: server.address().port, url: `http://localhost:${server.address().port}/`, stop };
}

function otherAddresses(port) {
  return Object.values(networkInterfaces())
    .flat()
    .filter((one) => one.family === "IPv4" && !one.internal)
    .map((one) => `http://${one.address}:${port}/`);
}

async function main(folder, port) {
  let server;
  try {
    server = await startServer(folder, { port, host: "0.0.0.0" });
  } catch (problem) {
    console.error(problem.code === "EADDRINUSE" ? `Port ${port} is taken; try --port` : problem);
    process.exit(1);
  }
  packAll(folder).catch(() => {}); // it packs what is asked for all the same
  console.log(`Shimlight is at ${server.url}`);
  for (const address of otherAddresses(port)) {
    console.log(`  from another device on this network: ${address}`);
  }
  console.log("Browsers keep a page for use without network only from localhost or https.");
  console.log("Ctrl-C stops the server.");
}

if (process.argv[1] && import.meta.url === pathToFileURL(resolve(process.argv[1])).href) {
  await main(process.argv[2] ?? "build/web", Number(process.argv[3] ?? 8080));
}
