import { z } from "zod";

// The first import of the page and of each worker, before any schema is made: schemas compiled to code would need
// `unsafe-eval`, and asking for it is reported as a breach of the page's policy.
z.config({ jitless: true });
