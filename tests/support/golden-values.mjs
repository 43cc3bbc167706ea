// Values of the golden tests for the proofs that hold them against their source: TypeScript without imports at run time.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

const GOLDEN = path.join(import.meta.dirname, '../golden');

/** What a file of values under tests/golden exports. */
export async function transcribed(file) {
  const source = readFileSync(path.join(GOLDEN, file), 'utf8');
  const { outputText } = ts.transpileModule(source, { compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 } });
  return import(`data:text/javascript,${encodeURIComponent(outputText)}`);
}
