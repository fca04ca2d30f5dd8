import type { Browser, Page } from "playwright-core";
import type { PlaceId } from "../../renderer/state/place.ts";
import { openBrowser, type Served, serve } from "../served.mjs";

/** How a page is opened. */
export interface Opening {
  readonly scheme?: "light" | "dark";
  /** preferences as the device kept them */
  readonly preferences?: Readonly<Record<string, unknown>>;
  readonly reducedMotion?: boolean;
  /** script that runs before the page's own */
  readonly before?: string;
  /** where it opens; Bench if not said */
  readonly place?: PlaceId;
  /** on a device without three dimensions: drawing them in software takes most of the time, wherever they are shown */
  readonly flat?: boolean;
}

/** Files are chosen by a field and go out as downloads: the browser's own window for files cannot be answered here. */
export const DOWNLOADS = "delete window.showOpenFilePicker; delete window.showSaveFilePicker;";

const FLAT = `const get = HTMLCanvasElement.prototype.getContext;
HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
  return kind.startsWith("webgl") ? null : get.call(this, kind, ...rest);
};`;

/** The sheet is painted by the processor itself; only three dimensions go through the emulated graphics card. */
const PAINTING = ["--disable-gpu-rasterization", "--disable-accelerated-2d-canvas"];

/** `TEST_SLOW=4` slows every page down so many times: a test that reads too early fails with it. */
const SLOW = Number(process.env["TEST_SLOW"] ?? 1);

const HEADINGS: Readonly<Record<PlaceId, string>> = {
  bench: "Bench",
  road: "Road",
  compare: "Compare",
  lessons: "Lessons",
  vehicle: "Vehicle",
  cycles: "Cycles",
};

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
    return new ServedApp(served, await openBrowser(PAINTING));
  }

  /** A fresh page on the app, its scripts' errors gathered in `errors`. */
  async open(width: number, height: number, opening: Opening = {}): Promise<OpenPage> {
    const context = await this.browser.newContext({
      viewport: { width, height },
      colorScheme: opening.scheme ?? "light",
      reducedMotion: opening.reducedMotion ? "reduce" : "no-preference",
      // The checker that a test puts into the page is not part of it.
      bypassCSP: true,
    });
    const page = await context.newPage();
    if (SLOW > 1) {
      const session = await context.newCDPSession(page);
      await session.send("Emulation.setCPUThrottlingRate", { rate: SLOW });
    }
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    if (opening.preferences) {
      const kept = JSON.stringify(JSON.stringify(opening.preferences));
      await page.addInitScript(`localStorage["trishaft.preferences"] ??= ${kept}`);
    }
    if (opening.flat) await page.addInitScript(FLAT);
    if (opening.before) await page.addInitScript(opening.before);
    const place = opening.place ?? "bench";
    await page.goto(place === "bench" ? this.address : `${this.address}#${place}`);
    await page.getByRole("heading", { level: 1, name: HEADINGS[place], exact: true }).waitFor();
    // The heading stands there before the place is loaded.
    await page.locator("#place:not(.opening)").waitFor();
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
