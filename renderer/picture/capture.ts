import { DRAWN_LOOK } from "./standalone.ts";

let fonts: Promise<string> | null = null;

const asDataUrl = (blob: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });

/** Faces of the alphabets that the app's texts use; the others would only make every picture heavier. */
const isUsed = (rule: CSSFontFaceRule): boolean => {
  const range = rule.style.getPropertyValue("unicode-range");
  return range === "" || /U\+0{0,4}(-|00|3)/i.test(range);
};

/** A face with its file written into it. The address counts from the style sheet that names it. */
async function embedded(rule: CSSFontFaceRule, sheet: string): Promise<string> {
  const address = /url\("?([^")]+)"?\)/.exec(rule.style.getPropertyValue("src"))?.[1];
  if (!address) return "";
  const blob = await (await fetch(new URL(address, sheet))).blob();
  return rule.cssText.replace(/src:[^;]+;/, `src: url("${await asDataUrl(blob)}") format("woff2");`);
}

async function embeddedFaces(): Promise<string> {
  const faces = [...document.styleSheets].flatMap((sheet) =>
    [...sheet.cssRules]
      .filter((rule): rule is CSSFontFaceRule => rule instanceof CSSFontFaceRule)
      .filter(isUsed)
      .map((rule) => embedded(rule, sheet.href ?? document.baseURI)),
  );
  return (await Promise.all(faces)).join("\n");
}

/** The fonts of the page as text, made once: a picture stands alone and has none of its own. */
function fontsNow(): Promise<string> {
  fonts ??= embeddedFaces();
  return fonts;
}

/** Patterns live once in the page; a part of it that becomes a picture needs them inside. */
function lendPatterns(element: HTMLElement): () => void {
  const lent = [...document.querySelectorAll(".patterns")]
    .filter((patterns) => !element.contains(patterns))
    .map((patterns) => element.appendChild(patterns.cloneNode(true)));
  return () => {
    for (const one of lent) element.removeChild(one);
  };
}

/** Drawings take their look from the page's style sheet, which a picture has not: each piece carries it for a while. */
function lendLooks(element: HTMLElement): () => void {
  const pieces = [...element.querySelectorAll<SVGElement>("svg, svg *")].map((piece) => {
    const style = getComputedStyle(piece);
    return {
      piece,
      before: piece.getAttribute("style"),
      look: DRAWN_LOOK.map((name) => [name, style.getPropertyValue(name)] as const),
    };
  });
  for (const { piece, look } of pieces)
    for (const [name, value] of look) piece.style.setProperty(name, value);
  return () => {
    for (const { piece, before } of pieces) {
      if (before === null) piece.removeAttribute("style");
      else piece.style.cssText = before;
    }
  };
}

/**
 * A part of the page as it is drawn now, on the sheet's ground.
 * @param scale picture's pixels a CSS pixel
 */
export async function capture(element: HTMLElement, scale: number): Promise<HTMLCanvasElement> {
  const fontEmbedCSS = await fontsNow();
  const { toCanvas } = await import("html-to-image");
  const takeBack = lendPatterns(element);
  const takeLooks = lendLooks(element);
  try {
    return await toCanvas(element, {
      fontEmbedCSS,
      pixelRatio: scale,
      skipAutoScale: true,
      backgroundColor: getComputedStyle(document.body).backgroundColor,
      filter: (node) => !(node instanceof Element && node.classList.contains("unseen")),
    });
  } finally {
    takeLooks();
    takeBack();
  }
}

/** A canvas as the bytes of a PNG file. */
export async function pngOf(canvas: HTMLCanvasElement): Promise<Uint8Array> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  if (!blob) throw new Error("the picture could not be made");
  return new Uint8Array(await blob.arrayBuffer());
}
