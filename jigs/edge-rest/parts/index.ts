import {
  all,
  chain,
  ok,
  rectangle,
  text,
  type Part,
  type PrintPart,
  type Result,
} from '../../../src/family/index.ts';
import { bar } from '../../shared/parts/bar.ts';
import { base } from '../../shared/parts/base.ts';
import { collar } from '../../shared/parts/collar.ts';
import { printed, words as shared } from '../../shared/parts/context.ts';
import { bracket, lug } from '../../shared/parts/feed.ts';
import { keeper, strip } from '../../shared/parts/guides.ts';
import { boughtWithPin } from '../../shared/parts/bought.ts';
import { knob } from '../../shared/parts/knob.ts';
import { packer } from '../../shared/parts/packer.ts';
import { pushBody, pushPad } from '../../shared/parts/push.ts';
import { pushStick } from '../../shared/parts/push-stick.ts';
import type { Item } from '../../shared/place/item.ts';
import type { EdgeContext } from '../context.ts';
import { lipParts, wearStrip } from './lip.ts';
import { lipSlide, wheelNose } from './slide.ts';

const words = text.family.edgeRest.parts;

/** Depth of the printed gauge behind the lip, mm. */
const GAUGE_DEPTH = 18;

/** The lip gauge: stands on the seat against the lip, its upper front edge touches the wheel. */
const gauge = ({ rig }: EdgeContext, height: number): PrintPart => {
  const { name, density } = printed(rig);
  return {
    kind: 'print',
    id: 'lip-gauge',
    name: words.names.gauge,
    quantity: 1,
    material: name,
    density,
    finish: shared.finish.print,
    layers: [
      {
        profile: { outer: rectangle([0, 0], [GAUGE_DEPTH, height]), holes: [] },
        from: 0,
        to: rig.l.gauge.length,
      },
    ],
    holes: [],
    notes: [words.notes.gauge(height)],
    tight: [],
  };
};

const madeParts = (c: EdgeContext): Result<Part[]> => {
  const { rig, v, x } = c;
  return all<Part>([
    base(rig),
    wheelNose(c),
    packer(rig),
    lipSlide(c),
    ...[...lipParts(c), wearStrip(c)].map((part) => ok(part)),
    ...(v.guide === 'strips' ? [strip(rig), keeper(rig)] : []),
    ...(rig.mount.kind === 'bars' ? [bar(rig)] : []),
    collar(rig),
    ok(bracket(rig)),
    ok(lug(rig)),
    ok(knob(rig)),
    pushBody(rig),
    pushStick(rig, text.family.edgeRest.parts.notes.stick),
    ok(pushPad(rig)),
    ...(x.gauge === undefined ? [] : [ok(gauge(c, x.gauge))]),
  ]);
};

/** All parts of the fixture: made ones first, then what is bought. */
export const partsOf = (c: EdgeContext, items: readonly Item[]): Result<Part[]> =>
  chain(madeParts(c), (made) =>
    chain(boughtWithPin(items, c.x.pin), (bought) => ok([...made, ...bought])),
  );
