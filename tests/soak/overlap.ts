// `npx tsx tests/soak/overlap.ts [COUNT] [FIRST SEED]`: part drawings of random plates, by default
// 500, each looked at for text on text, text on a line and anything off the sheet. Ends with 1 when
// there was any.
import { partSheets } from '../../src/drawing/part-sheets.ts';
import { clashes, outside } from '../drawing/overlap.ts';
import { BLOCK, randomPlate } from '../drawing/random-plate.ts';

const [count = 500, first = 1] = process.argv.slice(2).map(Number);

let [sheets, found] = [0, 0];
for (let seed = first; seed < first + count; seed++) {
  const drawn = partSheets(randomPlate(seed), { ...BLOCK, paper: seed % 2 === 0 ? 'us' : 'iso' });
  const wrong = [...drawn.flatMap(clashes), ...drawn.flatMap(outside)];
  if (drawn.length === 0) wrong.push('no sheet holds it');
  sheets += drawn.length;
  if (wrong.length > 0) found++;
  for (const what of wrong) console.log(`plate ${String(seed)}: ${what}`);
}
console.log(`${String(count)} plates on ${String(sheets)} sheets, ${String(found)} with a defect`);
process.exit(found > 0 ? 1 : 0);
