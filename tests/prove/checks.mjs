// Every published number of the collection that concerns a computation is transcribed in tests/golden, unchanged, or is
// named as left out with its reason. The golden tests themselves compare them with what is computed.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import ts from 'typescript';

export const readsShared = true;

const GOLDEN = path.join(import.meta.dirname, '../golden');
const COLLECTION = path.join(import.meta.dirname, '../../../shared/standards/checks.json');
/** Topics 1 to 9 concern a computation. */
const COMPUTED = /^[1-9]-/;

async function transcribed() {
  const files = readdirSync(GOLDEN, { recursive: true }).filter((file) => /(^|\/)([a-z-]+\.)?values\.ts$|left-out\.ts$/.test(file));
  const found = { checks: new Map(), leftOut: new Map() };
  for (const file of files) {
    const source = readFileSync(path.join(GOLDEN, file), 'utf8');
    const { outputText } = ts.transpileModule(source, {
      compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
    });
    const module = await import(`data:text/javascript,${encodeURIComponent(outputText)}`);
    for (const [id, check] of Object.entries(module.checks ?? {})) {
      if (found.checks.has(id)) throw new Error(`${id} is transcribed twice, again in ${file}`);
      found.checks.set(id, check);
    }
    for (const [id, reason] of Object.entries(module.leftOut ?? {})) found.leftOut.set(id, reason);
  }
  return found;
}

const values = (quantities) => Object.fromEntries(Object.entries(quantities).map(([name, { value, unit }]) => [name, [value, unit ?? '']]));

/** What differs between an entry and its transcription; none when it is the same. */
function differences(entry, check) {
  const wanted = { inputs: values(entry.inputs), expected: values(entry.expected), tolerance: entry.tolerance };
  return Object.keys(wanted).filter((part) => !isDeepStrictEqual(wanted[part], check[part]));
}

export async function prove() {
  const entries = JSON.parse(readFileSync(COLLECTION, 'utf8')).filter(({ topic }) => COMPUTED.test(topic));
  const { checks, leftOut } = await transcribed();
  const faults = [];
  for (const entry of entries) {
    const check = checks.get(entry.id);
    if (!check && !leftOut.get(entry.id)) faults.push(`${entry.id} (${entry.topic}) is neither transcribed nor left out with a reason`);
    if (check) faults.push(...differences(entry, check).map((part) => `${entry.id}: ${part} is not what was published`));
    if (check && leftOut.has(entry.id)) faults.push(`${entry.id} is both transcribed and left out`);
  }
  if (faults.length) throw new Error(`\n  ${faults.join('\n  ')}`);
  const partly = [...checks.values()].filter((check) => check.leftOut).length;
  const out = entries.filter(({ id }) => leftOut.has(id)).length;
  return `${entries.length} published checks of topics 1 to 9: ${entries.length - out} transcribed (${partly} of them with a result left out), ${out} left out with a reason`;
}
