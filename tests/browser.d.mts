/** Path of an installed browser, or null. */
export function findBrowser(env?: NodeJS.ProcessEnv): string | null;
/** Path of a browser; installs Debian's where that is possible, else ends the process with the line to follow. */
export function needBrowser(): string;
