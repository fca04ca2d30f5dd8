export const bench = (): void => {};
