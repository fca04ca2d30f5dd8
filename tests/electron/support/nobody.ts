/** Does something without the administrator's rights, for whom no file is closed. */
export async function asNobody<T>(action: () => Promise<T>): Promise<T> {
  const root = process.geteuid?.() === 0;
  if (root) process.seteuid?.(65_534);
  try {
    return await action();
  } finally {
    if (root) process.seteuid?.(0);
  }
}
