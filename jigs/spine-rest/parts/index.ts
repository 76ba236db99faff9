import { all, chain, ok, text, type Part, type Result } from '../../../src/family/index.ts';
import type { Item } from '../../shared/place/item.ts';
import { bar } from '../../shared/parts/bar.ts';
import { base } from '../../shared/parts/base.ts';
import { boughtWithPin } from '../../shared/parts/bought.ts';
import { collar } from '../../shared/parts/collar.ts';
import type { Context } from '../../shared/parts/context.ts';
import type { Carried } from '../strip/carried.ts';
import { stripParts } from '../strip/parts.ts';
import { bracket, lug } from '../../shared/parts/feed.ts';
import { gauge } from './gauge.ts';
import { keeper, strip } from '../../shared/parts/guides.ts';
import { knob } from '../../shared/parts/knob.ts';
import { nose } from '../../shared/parts/nose.ts';
import { packer } from '../../shared/parts/packer.ts';
import { pushBody, pushPads } from '../../shared/parts/push.ts';
import { pushStick } from '../../shared/parts/push-stick.ts';
import { slide } from './slide.ts';

/** Everything that is cut, printed or sawn. */
const madeParts = (c: Context, carried: Carried | undefined): Result<Part[]> =>
  chain(carried ? stripParts(c, carried) : all([slide(c)]), (step: readonly Part[]) =>
    all<Part>([
      base(c),
      nose(c),
      packer(c),
      ...step.map((part) => ok(part)),
      ...(c.v.guide === 'strips' ? [strip(c), keeper(c)] : []),
      ...(c.mount.kind === 'bars' ? [bar(c)] : []),
      collar(c),
      ok(bracket(c)),
      ok(lug(c)),
      ok(knob(c)),
      pushBody(c),
      pushStick(c, text.family.spineRest.parts.notes.stick),
      ...pushPads(c).map((pad) => ok(pad)),
      ok(gauge(c)),
    ]),
  );

/** All parts of the fixture: made ones first, then what is bought; with a strip the step for it. */
export const partsOf = (c: Context, items: readonly Item[], strip?: Carried): Result<Part[]> =>
  chain(madeParts(c, strip), (made) =>
    chain(boughtWithPin(items, c.l.pin), (bought) => ok([...made, ...bought])),
  );
