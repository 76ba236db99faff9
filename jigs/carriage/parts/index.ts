import { all, chain, ok, type Part, type Result } from '../../../src/family/index.ts';
import { bar } from '../../shared/parts/bar.ts';
import { boughtParts } from '../../shared/parts/bought.ts';
import { knob } from '../../shared/parts/knob.ts';
import type { Context } from '../context.ts';
import { HEEL } from '../layout/sizes.ts';
import type { Item } from '../place/item.ts';
import { base, fence } from './base.ts';
import { edgeGauge, fenceGauge, foot, heelScrew, jaw, palm } from './small.ts';
import { sole, strip } from './sole.ts';
import { angle, gusset, upright } from './upright.ts';
import { words } from './words.ts';

/** Everything that is cut, printed or sawn. */
const madeParts = (c: Context): Result<Part[]> => {
  const bought = angle(c);
  const division = HEEL.pitch / HEEL.divisions;
  return all<Part>([
    base(c),
    fence(c),
    sole(c),
    ...(c.l.plates ? [upright(c), gusset(c)] : []),
    strip(c),
    jaw(c),
    ...(c.mount.kind === 'bars' ? [bar(c)] : []),
    ...(bought ? [ok(bought)] : []),
    ok(foot(c)),
    ok(heelScrew(c)),
    ok({ ...knob(c), notes: [words.notes.knob(division), words.notes.printSolid] }),
    ok(palm(c)),
    ok(edgeGauge(c)),
    ok(fenceGauge(c)),
  ]);
};

/** All parts of the fixture: made ones first, then what is bought. */
export const partsOf = (c: Context, items: readonly Item[]): Result<Part[]> =>
  chain(madeParts(c), (made) => ok([...made, ...boughtParts(items)]));
