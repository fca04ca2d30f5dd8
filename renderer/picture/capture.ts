import { getFontEmbedCSS, toCanvas } from "html-to-image";

let fonts: Promise<string> | null = null;

/** The fonts of the page as text, fetched once: a picture stands alone and has none of its own. */
function fontsOf(element: HTMLElement): Promise<string> {
  fonts ??= getFontEmbedCSS(element);
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

/**
 * A part of the page as it is drawn now, on the sheet's ground.
 * @param scale picture's pixels a CSS pixel
 */
export async function capture(element: HTMLElement, scale: number): Promise<HTMLCanvasElement> {
  const fontEmbedCSS = await fontsOf(element);
  const takeBack = lendPatterns(element);
  try {
    return await toCanvas(element, {
      fontEmbedCSS,
      pixelRatio: scale,
      skipAutoScale: true,
      backgroundColor: getComputedStyle(document.body).backgroundColor,
      filter: (node) => !(node instanceof Element && node.classList.contains("unseen")),
    });
  } finally {
    takeBack();
  }
}

/** A canvas as the bytes of a PNG file. */
export async function pngOf(canvas: HTMLCanvasElement): Promise<Uint8Array> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  if (!blob) throw new Error("the picture could not be made");
  return new Uint8Array(await blob.arrayBuffer());
}
