import { z } from "zod";

// Before any schema is made: schemas compiled to code would need `unsafe-eval`, and asking for it is reported as a breach
// of the page's policy.
z.config({ jitless: true });
