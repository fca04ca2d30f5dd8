import { en } from "./en.ts";

/** The texts in the language in use. Views read them here and nowhere else. */
export const t = en;
