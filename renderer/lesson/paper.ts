/** A page of its own taken apart, to be shown inside another. */
export interface TakenApart {
  readonly body: HTMLElement;
  /** rules for the page, with its root as the host of a shadow tree */
  readonly rules: CSSStyleSheet;
  /** size, margins and running foot of printed pages: they only count for a whole document */
  readonly pages: CSSStyleSheet;
}

const sheetOf = (css: string): CSSStyleSheet => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  return sheet;
};

/** Rules about pages, as text; an @page rule holds rules of margin boxes. */
const PAGE_RULE = /@page\s*\{(?:[^{}]|\{[^{}]*\})*\}/g;

/** Rules for pages in a style sheet, and all others. */
export function splitPageRules(css: string): { readonly pages: string; readonly rules: string } {
  return {
    pages: (css.match(PAGE_RULE) ?? []).join("\n"),
    rules: css.replace(PAGE_RULE, "").replaceAll(":root", ":host"),
  };
}

const STYLE = /<style>([\s\S]*?)<\/style>/g;

/**
 * Style sheets and style attributes of a page, taken out of its text: the policy of the app lets none through that was
 * not set by the app itself. Text of the page cannot be mistaken for them, since its quotation marks are escaped.
 */
export function withoutStyles(html: string): { readonly css: string; readonly bare: string } {
  const css = [...html.matchAll(STYLE)].map(([, rules = ""]) => rules).join("\n");
  return { css, bare: html.replace(STYLE, "").replaceAll(' style="', ' data-style="') };
}

/**
 * Takes one of our own printed pages apart. Nothing of it can run: it is parsed apart from the page, and the page's
 * policy forbids scripts from anywhere else.
 */
export function takenApart(html: string): TakenApart {
  const { css, bare } = withoutStyles(html);
  const { pages, rules } = splitPageRules(css);
  const body = document.importNode(new DOMParser().parseFromString(bare, "text/html").body, true);
  for (const element of body.querySelectorAll<HTMLElement>("[data-style]")) {
    element.style.cssText = element.dataset.style ?? "";
  }
  return { body, rules: sheetOf(rules), pages: sheetOf(pages) };
}

/** Puts a page into a shadow tree. */
export function putInto(host: HTMLElement, { body, rules }: TakenApart): void {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  root.adoptedStyleSheets = [rules];
  root.replaceChildren(body);
}

/**
 * Prints a page alone: while it lasts, the app is left out of the print.
 * @param print what brings the page to paper, and returns when it is done
 */
export async function printAlone(html: string, print: () => Promise<void>): Promise<void> {
  const page = takenApart(html);
  const host = document.createElement("div");
  host.className = "print-page";
  putInto(host, page);
  const before = document.adoptedStyleSheets;
  document.body.append(host);
  document.adoptedStyleSheets = [...before, page.pages];
  document.documentElement.dataset.printing = "page";
  try {
    await print();
  } finally {
    delete document.documentElement.dataset.printing;
    document.adoptedStyleSheets = before;
    host.remove();
  }
}
