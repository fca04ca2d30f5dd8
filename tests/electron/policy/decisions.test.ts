import { describe, expect, it } from "vitest";
import { CONTENT_SECURITY_POLICY } from "../../../electron/policy/csp.ts";
import { mayNavigate, mayUse, NEW_WINDOW } from "../../../electron/policy/decisions.ts";
import { APP_PAGE, isOurs, originOf } from "../../../electron/policy/origin.ts";

describe("origins", () => {
  it.each([
    ["app://trishaft/index.html", "app://trishaft"],
    ["http://127.0.0.1:5000/x", "http://127.0.0.1:5000"],
    ["app://trishaft.example/", "app://trishaft.example"],
    ["app://trishaft@example/", "app://example"],
    ["app://trishaft:80/", "app://trishaft:80"],
    ["about:blank", null],
    ["data:text/html,app://trishaft/", null],
    ["file:///etc/hosts", null],
    ["", null],
  ])("of %j is %j", (address, origin) => {
    expect(originOf(address)).toBe(origin);
    expect(isOurs(address)).toBe(origin === "app://trishaft");
  });
});

describe("navigation", () => {
  it("may load the page again", () => {
    expect(mayNavigate(APP_PAGE)).toBe(true);
    expect(mayNavigate(`${APP_PAGE}#road`)).toBe(true);
  });

  it.each([
    "https://example.org/",
    "app://trishaft/assets/main.js",
    "app://trishaft/index.html?x=1",
    "app://trishaft.example/index.html",
    "app://me@trishaft/index.html",
    "file:///index.html",
    "javascript:alert(1)",
    "about:blank",
    "nowhere",
  ])("may not go to %s", (address) => {
    expect(mayNavigate(address)).toBe(false);
  });
});

describe("refusals", () => {
  it("open no window and grant nothing", () => {
    expect(NEW_WINDOW).toEqual({ action: "deny" });
    for (const permission of [
      "media",
      "geolocation",
      "notifications",
      "clipboard-read",
      "openExternal",
      "usb",
    ]) {
      expect(mayUse(permission)).toBe(false);
    }
  });
});

describe("the content security policy", () => {
  it("starts from nothing and lets in no code but the build's", () => {
    const rules = Object.fromEntries(
      CONTENT_SECURITY_POLICY.split("; ").map((rule) => [rule.split(" ")[0], rule.split(" ").slice(1)]),
    );
    expect(rules["default-src"]).toEqual(["'none'"]);
    // WebAssembly is compiled for own strategies; no text is ever evaluated.
    expect(rules["script-src"]).toEqual(["'self'", "'wasm-unsafe-eval'"]);
    expect(rules["worker-src"]).toEqual(["'self'"]);
    expect(rules["style-src"]).toEqual(["'self'"]);
    for (const name of ["object-src", "base-uri", "form-action", "frame-ancestors"]) {
      expect(rules[name]).toEqual(["'none'"]);
    }
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/'unsafe-|\*|https?:/);
  });
});
