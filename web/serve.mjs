// SPDX-License-Identifier: MIT
// A server of static files: `node web/serve.mjs FOLDER [PORT]`, or startServer() from a test.
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer } from "node:http";
import { networkInterfaces } from "node:os";
import { extname, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";

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
  response.writeHead(200, {
    "content-type": types[extname(found.file)] ?? "application/octet-stream",
    "content-length": found.info.size,
    // The service worker keeps the page; what lies between must not keep an old one.
    "cache-control": "no-cache",
    "x-content-type-options": "nosniff",
  });
  if (request.method === "HEAD") response.end();
  else createReadStream(found.file).pipe(response);
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
