import type { Browser, Page } from "playwright-core";
import { openBrowser, type Served, serve } from "../served.mjs";

/** How a page is opened. */
export interface Opening {
  readonly scheme?: "light" | "dark";
  /** preferences as the device kept them */
  readonly preferences?: Readonly<Record<string, unknown>>;
  readonly reducedMotion?: boolean;
  /** script that runs before the page's own */
  readonly before?: string;
  /** heading that shows that the place is there */
  readonly heading?: string;
}

/** The app as `npm start -- --no-open` serves it, and a browser to look at it with. */
export class ServedApp {
  private constructor(
    private readonly served: Served,
    private readonly browser: Browser,
  ) {}

  get address(): string {
    return this.served.address;
  }

  /** Builds what is stale, serves it and starts a browser. */
  static async start(): Promise<ServedApp> {
    const served = await serve();
    return new ServedApp(served, await openBrowser());
  }

  /** A fresh page on the app, its scripts' errors gathered in `errors`. */
  async open(width: number, height: number, how: Opening | "light" | "dark" = {}): Promise<OpenPage> {
    const opening = typeof how === "string" ? { scheme: how } : how;
    const context = await this.browser.newContext({
      viewport: { width, height },
      colorScheme: opening.scheme ?? "light",
      reducedMotion: opening.reducedMotion ? "reduce" : "no-preference",
      // The checker that a test puts into the page is not part of it.
      bypassCSP: true,
    });
    const page = await context.newPage();
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    if (opening.preferences) {
      const kept = JSON.stringify(JSON.stringify(opening.preferences));
      await page.addInitScript(`localStorage["trishaft.preferences"] ??= ${kept}`);
    }
    if (opening.before) await page.addInitScript(opening.before);
    await page.goto(this.address);
    await page.getByRole("heading", { name: opening.heading ?? "Bench" }).waitFor();
    return { page, errors };
  }

  async stop(): Promise<void> {
    await this.browser.close();
    this.served.stop();
  }
}

/** A page with the errors its scripts threw. */
export interface OpenPage {
  readonly page: Page;
  readonly errors: readonly string[];
}
