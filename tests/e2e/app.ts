import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { findBrowser } from "../browser.mjs";

const root = join(import.meta.dirname, "..", "..");

/** Software drawing, and nothing that asks for a network. */
const FLAGS = [
  "--no-sandbox",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];

/** The app as `npm start -- --no-open` serves it, and a browser to look at it with. */
export class ServedApp {
  private constructor(
    private readonly server: ChildProcess,
    private readonly browser: Browser,
    readonly address: string,
  ) {}

  /** Builds what is stale, serves it and starts a browser. */
  static async start(): Promise<ServedApp> {
    const executablePath = findBrowser();
    if (!executablePath) throw new Error("no Chromium-family browser: `npm test` says how to get one");
    const server = spawn(process.execPath, [join(root, "electron", "launch.mjs"), "--no-open"], {
      stdio: ["ignore", "pipe", "inherit"],
    });
    const address = await new Promise<string>((resolve, reject) => {
      let said = "";
      server.stdout.on("data", (piece: Buffer) => {
        said += piece.toString();
        const found = /http:\/\/[\d.]+:\d+\//.exec(said);
        if (found) resolve(found[0]);
      });
      server.once("exit", (code) => reject(new Error(`the launcher ended with ${code}: ${said}`)));
    });
    return new ServedApp(server, await chromium.launch({ executablePath, args: FLAGS }), address);
  }

  /** A fresh page on the app, its scripts' errors gathered in `errors`. */
  async open(width: number, height: number, scheme: "light" | "dark" = "light"): Promise<OpenPage> {
    const context = await this.browser.newContext({
      viewport: { width, height },
      colorScheme: scheme,
      // The checker that a test puts into the page is not part of it.
      bypassCSP: true,
    });
    const page = await context.newPage();
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    await page.goto(this.address);
    await page.getByRole("heading", { name: "Bench" }).waitFor();
    return { page, errors };
  }

  async stop(): Promise<void> {
    await this.browser.close();
    this.server.kill("SIGINT");
  }
}

/** A page with the errors its scripts threw. */
export interface OpenPage {
  readonly page: Page;
  readonly errors: readonly string[];
}
