import {
  clear,
  WORLD,
  type Asked,
  type Placement,
  type Result,
  type SetUp,
  type Vec3,
} from '../../../src/family/index.ts';
import { words as shared } from '../../shared/checks/words.ts';
import { strokedSetUps } from '../../shared/checks/pair-run.ts';
import { groupOf } from '../../shared/checks/groups.ts';
import { cutsOf } from '../blade.ts';
import { padPairs, rigPairs } from '../../shared/checks/rig-pairs.ts';
import { stickPairs, type Stick } from '../../shared/checks/stick.ts';
import { stickHeight } from '../../shared/parts/push-stick.ts';
import { byKey } from '../../shared/later.ts';
import { nearestContact, padContact } from '../place/hand.ts';
import { parameterPath, words, type Question } from './question.ts';

type Name = keyof typeof words.names;

const { fix } = words;

/** What of the fixture must keep clear of what of the machine, standing at each setting. */
const machinePairs = ({ v }: Question): Asked[] =>
  rigPairs({
    runningClearance: v.runningClearance,
    handDistance: v.handDistance,
    more: ['seat', 'lip'],
    fix,
  });

/** What the blade and what it carries must keep clear of, over stroke and rocking. */
const bladePairs = ({ v }: Question): Asked[] => {
  const running = v.runningClearance;
  const still: Name[] = ['base', 'mount', 'rest', 'guards'];
  return [
    ...still.map((b) => clear('blade', b, 0.5, fix.blade)),
    // The belt lies between blade and wheel; the blade is asked as it comes.
    clear('blade', 'wheels', 0.05, fix.blade),
    clear('blade', 'nose', 0.5, fix.blade),
    clear('tang', 'belt', running, fix.blade, parameterPath('plungeMargin')),
    clear('tang', 'platen', running, fix.blade),
    clear('tang', 'wheels', running, fix.besideBelt),
    ...still.map((b) => clear('tang', b, 0.5, fix.blade)),
    ...(['nose', 'step', 'seat', 'lip'] as const).map((b) => clear('tang', b, 0.02, fix.blade)),
    clear('tang', 'push', 0.5, fix.blade),
    ...(['blade', 'tang', 'collar'] as const).map((a) => clear(a, 'hand', 5, shared.fix.hand)),
    ...(['step', 'push', 'platen'] as const).map((b) => clear('blade', b, 0.5, fix.blade)),
    clear('tang', 'pad', 0.5, fix.blade),
    clear('collar', 'pad', 0.5, fix.collar, parameterPath('stepWing')),
    clear('collar', 'step', 0.5, fix.collarLow),
    ...(['belt', 'platen', 'wheels'] as const).map((b) =>
      clear('collar', b, running, fix.collar, parameterPath('stepWing')),
    ),
    ...still.map((b) => clear('collar', b, 0.5, fix.collarLow)),
    clear('collar', 'nose', 0.5, fix.collarLow),
    clear('collar', 'push', 0.5, fix.collar, parameterPath('stepWing')),
  ];
};

const touch = (b: Name, apart: Vec3): Asked => ({
  id: `contact/blade/${b}`,
  rule: { kind: 'touch', a: 'blade', b, tolerance: 0.03, apart },
  fix: fix.contactOpen,
});

/** Bodies of placements: lip and seat are asked for themselves, the rest as on the spine rest. */
const bodyName = (placement: Placement): string => {
  if (/^lip-(strip|pad|packing)/.test(placement.name)) return 'lip';
  if (placement.name === 'wear-strip' || placement.name.startsWith('lip-screw')) return 'seat';
  return groupOf(placement);
};

const stickOf = ({ plan, context: { rig, x }, v }: Question): Stick => ({
  rig,
  level: -x.under,
  noseAt: byKey((id: string) => {
    const setting = plan.settings.find((one) => one.id === id);
    return setting ? nearestContact(setting, stickHeight(rig) - x.under) : NaN;
  }),
  asked: stickPairs(v, ['base', 'mount', 'nose', 'seat', 'lip']),
});

/** Fixture, blade and machine over all settings, strokes and sides, with what is asked of them. */
export const setUpsOf = (q: Question): Result<SetUp[]> => {
  const { rig, x, stands } = q.context;
  const { push, levels } = rig.l;
  const slideTop = -x.under;
  return strokedSetUps({
    ...q,
    settings: q.plan.settings,
    stands,
    frameOf: ({ offset }) => ({ ...WORLD, origin: [0, offset, -levels.stack - x.rise] }),
    bodyName,
    stick: stickOf(q),
    pressedBy: byKey((id: string) => {
      const setting = q.plan.settings.find((one) => one.id === id);
      const { pushHeight } = q.plan;
      const by = setting
        ? nearestContact(setting, pushHeight) - padContact(setting, pushHeight)
        : NaN;
      return { block: by, pad: by };
    }),
    comes: { kind: 'blade to be hollowed', sides: (blade) => cutsOf(blade) },
    hand: {
      half: push.half,
      y: [push.padReach + push.grip, push.padReach + push.depth],
      z: [slideTop + push.footHeight, slideTop + push.handle],
    },
    rockHalf: x.half,
    rocking: q.v.tipLift,
    names: words.names,
    machine: machinePairs(q),
    pressing: padPairs(fix.pad, 'pushReserve'),
    blade: bladePairs(q),
    contacts: [touch('seat', [0, 0, 1]), touch('lip', [0, 1, 0])],
  });
};
