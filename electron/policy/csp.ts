/** What the page may load; everything not named here it may not. `'self'` are the files of the build. */
const POLICY: Readonly<Record<string, readonly string[]>> = {
  "default-src": ["'none'"],
  // Own strategies run in an interpreter compiled to WebAssembly; text is still never evaluated as a script.
  "script-src": ["'self'", "'wasm-unsafe-eval'"],
  "worker-src": ["'self'"],
  "style-src": ["'self'"],
  "font-src": ["'self'"],
  // Drawings are exported by way of pictures made in the page.
  "img-src": ["'self'", "data:", "blob:"],
  // Recorded clips are shown before they are kept.
  "media-src": ["blob:"],
  "connect-src": ["'self'"],
  "base-uri": ["'none'"],
  "form-action": ["'none'"],
  "frame-ancestors": ["'none'"],
  "object-src": ["'none'"],
};

/** The content security policy as the text of its header. */
export const CONTENT_SECURITY_POLICY = Object.entries(POLICY)
  .map(([name, sources]) => `${name} ${sources.join(" ")}`)
  .join("; ");

/** Headers of everything that is served. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": CONTENT_SECURITY_POLICY,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Cache-Control": "no-store",
};
