/** A file of an export: its name, and its text in pieces. */
export interface ExportedFile {
  readonly name: string;
  readonly text: AsyncIterable<string>;
}
