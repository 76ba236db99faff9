import {
  all,
  chain,
  dowelPinPart,
  ok,
  type HardwarePart,
  type Part,
  type Result,
} from '../../../src/family/index.ts';
import { SIZE } from '../layout/sizes.ts';
import type { Item } from '../place/item.ts';
import { bar } from './bar.ts';
import { base } from './base.ts';
import { collar } from './collar.ts';
import type { Context } from './context.ts';
import { bracket, lug } from './feed.ts';
import { gauge } from './gauge.ts';
import { keeper, strip } from './guides.ts';
import { knob } from './knob.ts';
import { nose } from './nose.ts';
import { packer } from './packer.ts';
import { pushBody, pushPads } from './push.ts';
import { slide } from './slide.ts';

/** Everything that is cut, printed or sawn. */
const madeParts = (c: Context): Result<Part[]> =>
  all<Part>([
    base(c),
    nose(c),
    packer(c),
    slide(c),
    ...(c.v.guide === 'strips' ? [strip(c), keeper(c)] : []),
    ...(c.mount.kind === 'bars' ? [bar(c)] : []),
    collar(c),
    ok(bracket(c)),
    ok(lug(c)),
    ok(knob(c)),
    pushBody(c),
    ...pushPads(c).map((pad) => ok(pad)),
    ok(gauge(c)),
  ]);

/** Every bought piece that the items place, counted, and the pin of the zero. */
export const boughtParts = (items: readonly Item[]): Result<HardwarePart[]> =>
  chain(dowelPinPart(SIZE.zeroPin, SIZE.zeroPinLength), (zeroPin) => {
    const all = [...items.flatMap(({ bought }) => bought ?? []), zeroPin];
    const counts = new Map<string, HardwarePart>();
    for (const part of all) {
      const quantity = (counts.get(part.id)?.quantity ?? 0) + 1;
      counts.set(part.id, { ...part, quantity });
    }
    return ok([...counts.values()]);
  });

/** All parts of the fixture: made ones first, then what is bought. */
export const partsOf = (c: Context, items: readonly Item[]): Result<Part[]> =>
  chain(madeParts(c), (made) => chain(boughtParts(items), (bought) => ok([...made, ...bought])));
