// `npm run bench` runs all benchmarks, `npm run bench -- NAME ...` some. Each compares with a baseline in the same run: its
// ratios tell, the seconds belong to the machine.
import { readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';

const names = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith('.bench.mjs'))
  .map((file) => file.slice(0, -'.bench.mjs'.length))
  .sort();
const wished = process.argv.slice(2);
const unknown = wished.filter((name) => !names.includes(name));

if (unknown.length) {
  console.error(`There is no ${unknown.join(', ')}. Name some of: ${names.join(', ')}`);
  process.exitCode = 2;
} else {
  console.log(`${availableParallelism()} cores, ${process.arch}, Node ${process.versions.node}, ${new Date().toISOString().slice(0, 10)}`);
  for (const name of wished.length ? wished : names) {
    const { tells, bench } = await import(path.join(import.meta.dirname, `${name}.bench.mjs`));
    console.log(`\n${name}: ${tells}`);
    try {
      for (const line of await bench()) console.log(`  ${line}`);
    } catch (problem) {
      console.error(`  FAILED: ${problem.message}`);
      process.exitCode = 1;
    }
  }
}
