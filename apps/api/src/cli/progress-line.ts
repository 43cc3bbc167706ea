const SHOW_EVERY_MS = 2000;
const BLANK = ' '.repeat(79);

/** One line that says how far something is: written over in a terminal, a new line every two seconds elsewhere. */
export class ProgressLine {
  private shownAt = Date.now();
  private open = false;

  constructor(private readonly out: NodeJS.WriteStream = process.stderr) {}

  show(text: string): void {
    if (this.out.isTTY) {
      this.out.write(`\r${BLANK}\r${text.slice(0, BLANK.length)}`);
      this.open = true;
    } else if (Date.now() - this.shownAt >= SHOW_EVERY_MS) {
      this.shownAt = Date.now();
      this.out.write(`${text}\n`);
    }
  }

  /** Leaves the line to what comes next. */
  end(): void {
    if (this.open) this.out.write(`\r${BLANK}\r`);
    this.open = false;
  }
}
