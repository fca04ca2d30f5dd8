/** Files that wait until the page listens. */
export class Pending {
  private waiting: string[] = [];
  private ready = false;

  /** @param tell gives one file to the page */
  constructor(private readonly tell: (path: string) => void) {}

  /** Tells at once, or when the page listens. Of several that wait, the last one is wanted. */
  add(path: string): void {
    if (this.ready) this.tell(path);
    else this.waiting = [path];
  }

  /** The page listens. */
  resume(): void {
    this.ready = true;
    for (const path of this.waiting.splice(0)) this.tell(path);
  }

  /** The page is loaded anew. */
  pause(): void {
    this.ready = false;
  }
}
