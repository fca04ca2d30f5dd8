import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import { answer } from "../policy/serve.ts";

/** A server that runs. */
export interface Loopback {
  /** With a slash at the end. */
  readonly url: string;
  /** Ends every connection. */
  close(): Promise<void>;
}

const ADDRESS = "127.0.0.1";

/**
 * Serves a built page to this machine only, on any free port.
 * @param root folder of the built page, full path
 */
export async function serveLoopback(root: string): Promise<Loopback> {
  let origin = "";
  const server = createServer((request, response) => void respond(request, response, root, origin));
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, ADDRESS, resolve);
  });
  const address = server.address();
  if (typeof address !== "object" || address === null) throw new Error("the server has no port");
  origin = `http://${ADDRESS}:${address.port}`;
  return {
    url: `${origin}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

async function respond(
  request: IncomingMessage,
  response: ServerResponse,
  root: string,
  origin: string,
): Promise<void> {
  try {
    // The name under which we were asked counts: a foreign name that leads to this machine is refused.
    const url = `http://${request.headers.host ?? ""}${request.url ?? ""}`;
    const { status, headers, body } = await answer({ method: request.method ?? "", url }, root, origin);
    response.writeHead(status, { ...headers, "Content-Length": body.byteLength }).end(body);
  } catch {
    response.writeHead(500).end();
  }
}
