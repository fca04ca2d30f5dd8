import { protocol } from "electron";
import { APP_ORIGIN, SCHEME } from "./policy/origin.ts";
import { answer } from "./policy/serve.ts";

/** Makes the own scheme one with an origin of its own. Call before the program is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
  ]);
}

/** Serves the page's files. @param root folder of the built page, full path */
export function serveFiles(root: string): void {
  protocol.handle(SCHEME, async ({ method, url }) => {
    const { status, headers, body } = await answer({ method, url }, root, APP_ORIGIN);
    return new Response(Buffer.from(body), { status, headers });
  });
}
