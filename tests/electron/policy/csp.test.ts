import { describe, expect, it } from "vitest";
import { CONTENT_SECURITY_POLICY } from "../../../electron/policy/csp.ts";

/** Sources by directive, as a browser takes a policy apart (W3C Content Security Policy Level 3, "parse a serialized CSP"). */
const directives = new Map(
  CONTENT_SECURITY_POLICY.split(";").map((part) => {
    const [name = "", ...sources] = part.trim().split(/\s+/);
    return [name, sources] as const;
  }),
);

describe("the content security policy", () => {
  it("lets WebAssembly be compiled, which own strategies need, and no text be evaluated", () => {
    expect(directives.get("script-src")).toEqual(["'self'", "'wasm-unsafe-eval'"]);
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/'unsafe-(eval|inline)'/);
  });

  it("refuses whatever it does not name", () => {
    expect(directives.get("default-src")).toEqual(["'none'"]);
    expect(directives.get("connect-src")).toEqual(["'self'"]);
  });
});
