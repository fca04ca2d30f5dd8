import { describe, expect, it } from "vitest";
import { type Caller, type Handlers, makeDoor, Refused } from "../../electron/door.ts";
import { APP_PAGE } from "../../electron/policy/origin.ts";

const ours: Caller = { senderFrame: { url: APP_PAGE, parent: null } };
const from = (url: string, parent: unknown = null): Caller => ({ senderFrame: { url, parent } });

/** Handlers that note what reached them. */
function door(answer: unknown = { status: "cancelled" }) {
  const reached: unknown[] = [];
  const note = async (payload: unknown): Promise<unknown> => {
    reached.push(payload);
    return answer;
  };
  const names = [
    "windowInfo",
    "open",
    "save",
    "saveAs",
    "recentFiles",
    "openRecent",
    "forgetRecent",
    "exportFile",
    "printToPdf",
    "reveal",
    "ready",
  ] as const;
  const handlers = Object.fromEntries(names.map((name) => [name, note])) as unknown as Handlers;
  return { knock: makeDoor(handlers), reached };
}

describe("the door", () => {
  it("lets a request of our page through", async () => {
    const { knock, reached } = door();
    const answer = await knock(ours, { request: "save", payload: { id: "a", text: "b" } });
    expect(answer).toEqual({ status: "cancelled" });
    expect(reached).toEqual([{ id: "a", text: "b" }]);
  });

  const good = { request: "open", payload: null };
  const save = (payload: unknown) => ({ request: "saveAs", payload });
  const exported = (extra: object) => ({
    request: "exportFile",
    payload: {
      suggestedName: "a.csv",
      kinds: [{ title: "Table", mime: "text/csv", extensions: ["csv"] }],
      content: "",
      ...extra,
    },
  });

  it.each<[string, Caller, unknown, RegExp]>([
    ["a frame that is gone", { senderFrame: null }, good, /sender is gone/],
    ["a page from the network", from("https://trishaft/index.html"), good, /foreign origin/],
    ["a host that begins like ours", from("app://trishaft.example/"), good, /foreign origin/],
    ["a user name that looks like ours", from("app://trishaft@example/"), good, /foreign origin/],
    ["another unknown scheme", from("data:text/html,x"), good, /foreign origin/],
    ["another scheme with our host", from("apps://trishaft/"), good, /foreign origin/],
    ["no address", from("app"), good, /foreign origin/],
    ["a frame inside", from(APP_PAGE, {}), good, /not the main frame/],
    ["nothing", ours, undefined, /^message/],
    ["a bare word", ours, "open", /^message/],
    ["more than a request", ours, { ...good, also: 1 }, /^message/],
    ["an unknown request", ours, { request: "run", payload: null }, /unknown request "run"/],
    ["a name of every object", ours, { request: "constructor", payload: null }, /unknown request/],
    ["a payload where none belongs", ours, { request: "open", payload: "/etc" }, /payload of open/],
    ["a number for an id", ours, { request: "reveal", payload: 7 }, /payload of reveal/],
    [
      "a path for a name",
      ours,
      save({ suggestedName: "../x", text: "" }),
      /payload of saveAs: suggestedName/,
    ],
    ["only dots for a name", ours, save({ suggestedName: "..", text: "" }), /suggestedName/],
    ["a line feed in a name", ours, save({ suggestedName: "a\nb", text: "" }), /suggestedName/],
    ["an unknown field", ours, save({ suggestedName: "a", text: "", path: "/" }), /payload of saveAs/],
    [
      "a kind with a path",
      ours,
      exported({ kinds: [{ title: "x", mime: "a/b", extensions: ["/x"] }] }),
      /kinds/,
    ],
    ["no kind", ours, exported({ kinds: [] }), /kinds/],
    ["content of another sort", ours, exported({ content: { length: 3 } }), /content/],
  ])("refuses %s", async (_, caller, message, reason) => {
    const { knock, reached } = door();
    const refused = await knock(caller, message).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(Refused);
    expect((refused as Refused).message).toMatch(reason);
    expect(reached).toEqual([]);
  });

  it("refuses to hand out an answer of the wrong shape", async () => {
    const { knock } = door({ status: "ok", value: { path: "/home" } });
    await expect(knock(ours, good)).rejects.toThrow(/answer to open/);
  });
});
