/** The way by which a browser hears, as the test has it speak. */
export class SpokenSource {
  static readonly CLOSED = 2;
  static all: SpokenSource[] = [];
  readyState = 0;
  onopen = (): void => undefined;
  onmessage = (): void => undefined;
  onerror = (): void => undefined;
  readonly heard = new Map<string, () => void>();
  constructor(readonly address: string) {
    SpokenSource.all.push(this);
  }
  addEventListener(name: string, hear: () => void): void {
    this.heard.set(name, hear);
  }
  close(): void {
    this.readyState = SpokenSource.CLOSED;
  }
}
