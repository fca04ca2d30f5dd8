import type { z } from "zod";
import { envelope, type Payload, REQUESTS, type RequestName } from "../shared/bridge-messages.ts";
import { isOurs } from "./policy/origin.ts";

/** What of a message's event is looked at. */
export interface Caller {
  /** The frame that sent it; null when it is gone. */
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

/** One function for each request. */
export type Handlers = {
  readonly [N in RequestName]: (payload: Payload<N>) => Promise<unknown>;
};

/** A message that did not come through; the page's promise is rejected with it. */
export class Refused extends Error {
  override readonly name = "Refused";
}

/**
 * The one door from the page to the main process: our origin, main frame, known request, payload and answer as the
 * schemas say. Anything else is refused with the reason.
 * @returns listens on `REQUEST_CHANNEL`
 */
export function makeDoor(handlers: Handlers): (caller: Caller, message: unknown) => Promise<unknown> {
  return async (caller, message) => {
    checkCaller(caller);
    const { request, payload } = checked(envelope, message, "message");
    if (!isKnown(request)) throw new Refused(`unknown request ${JSON.stringify(request)}`);
    const schemas: { payload: z.ZodType; answer: z.ZodType } = REQUESTS[request];
    const handle = handlers[request] as (payload: unknown) => Promise<unknown>;
    const result = await handle(checked(schemas.payload, payload, `payload of ${request}`));
    return checked(schemas.answer, result, `answer to ${request}`);
  };
}

function checkCaller({ senderFrame: frame }: Caller): void {
  if (!frame) throw new Refused("the sender is gone");
  if (!isOurs(frame.url)) throw new Refused("foreign origin");
  if (frame.parent !== null) throw new Refused("not the main frame");
}

const isKnown = (name: string): name is RequestName => Object.hasOwn(REQUESTS, name);

function checked<T>(schema: z.ZodType<T>, data: unknown, name: string): T {
  const parsed = schema.safeParse(data);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new Refused(`${name}: ${[...(issue?.path ?? []), issue?.message].map(String).join(" ")}`);
}
