import { html, type Markup, type Piece } from "./html.ts";

/** A style sheet must not close its element; nothing a user types comes into one. */
const styleText = (css: string): string => css.replaceAll("</", "<\\/");

/**
 * A page in one file: no script, no network. Its own policy forbids both, whatever it may hold.
 * @param title of the window
 * @param css trusted text of our own
 */
export function wholePage(title: string, css: string, body: Piece): string {
  const head = html`<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>`;
  const main: Markup = html`<body>${body}</body>`;
  return `<!doctype html>\n<html lang="en">\n<head>\n${head.text}\n<style>\n${styleText(css)}\n</style>\n</head>\n${main.text}\n</html>\n`;
}
