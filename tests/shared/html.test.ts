import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { escapeHtml, html, joined, Markup } from "../../shared/html.ts";
import { wholePage } from "../../shared/page.ts";
import { brief, readable } from "../../shared/readable.ts";

/** A small reader of its own: the text of markup without tags. */
const textOf = (markup: string): string =>
  markup
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");

describe("markup", () => {
  it("escapes whatever is put in, so that no tag, entity or attribute comes of it", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary-ascii", maxLength: 60 }), (text) => {
        const escaped = escapeHtml(text);
        expect(escaped).not.toMatch(/[<>"']/);
        expect(escaped).not.toMatch(/&(?!amp;|lt;|gt;|quot;|#39;)/);
        const plain = text.replace(/[^\P{Cc}\t\n\r]/gu, "");
        if (plain === text && !/[\ufffe\uffff]/.test(text)) expect(textOf(escaped)).toBe(text);
      }),
    );
    expect(html`<b title="${'"><script>'}">${"<i>"}</b>`.text).toBe(
      '<b title="&quot;&gt;&lt;script&gt;">&lt;i&gt;</b>',
    );
  });

  it("keeps markup, joins lists and leaves nothing out of null and false", () => {
    expect(html`<p>${[html`<b>${"&"}</b>`, " ", 3, null, false]}</p>`.text).toBe("<p><b>&amp;</b> 3</p>");
    expect(joined(["a", html`<br>`, "<"], ", ").text).toBe("a, <br>, &lt;");
    expect(html`x`).toBeInstanceOf(Markup);
  });

  it("makes a page that forbids itself script and network", () => {
    const page = wholePage("<title>", "p::before { content: '</style>' }", "a < b");
    expect(page).toContain("default-src 'none'");
    expect(page).toContain("<title>&lt;title&gt;</title>");
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    expect(page).toContain("<body>a &lt; b</body>");
  });
});

describe("numbers for reading", () => {
  it("have a true minus, thin spaces and no minus nought", () => {
    expect(readable(-1234567.891, 1)).toBe("−1\u202f234\u202f567.9");
    expect(readable(-0.04, 1)).toBe("0.0");
    expect(readable(Number.NaN)).toBe("–");
    expect(brief(2.5)).toBe("2.5");
    expect(brief(1200)).toBe("1\u202f200");
    expect(brief(18 / 7)).toBe("2.571");
  });
});
