import {
  all,
  chain,
  clear,
  ok,
  seat,
  SIDES,
  text,
  WORLD,
  type Asked,
  type Result,
  type SetUp,
  type Side,
} from '../../../src/family/index.ts';
import { groupOf } from '../../shared/checks/groups.ts';
import { words as shared } from '../../shared/checks/words.ts';
import { strokedSetUps } from '../../shared/checks/pair-run.ts';
import type { Stroked } from '../../shared/checks/stroked.ts';
import { padPairs, rigPairs } from '../../shared/checks/rig-pairs.ts';
import { stickPairs, type Stick } from '../../shared/checks/stick.ts';
import { stickHeight } from '../../shared/parts/push-stick.ts';
import { byKey } from '../../shared/later.ts';
import { blockNearer, stickContact } from '../place/hand.ts';
import { placedOnBlade, stripFrom, stripItems, type Carried } from '../strip/carried.ts';
import { parameterPath, words, type Question } from './question.ts';

/** Deepest overlap of what is meant to touch, mm. */
const CONTACT = 0.03;

/** What of the fixture must keep clear of what of the machine, standing at each setting. */
const machinePairs = ({ v }: Question): Asked[] =>
  rigPairs({
    runningClearance: v.runningClearance,
    handDistance: v.handDistance,
    more: [],
    fix: words.fix,
  });

/** How near to the line of the spine a tang bears on the rest as the spine does, mm. */
const IN_LINE = 0.02;

/** A tang below the spine stays off the rest; one in line with it lies on it, no deeper than that. */
const tangPairs = ({ blades }: Question['design']): Asked[] => {
  const { blade } = words.fix;
  return blades.some(({ tang }) => Math.abs(tang.drop) < IN_LINE)
    ? [
        seat('tang', 'nose', CONTACT, [0, 0, 1], blade),
        seat('tang', 'step', CONTACT, [0, -1, 0], blade),
      ]
    : [clear('tang', 'nose', IN_LINE, blade), clear('tang', 'step', IN_LINE, blade)];
};

/** What the blade and what it carries must keep clear of, over stroke and rocking. */
const bladePairs = ({ v, design }: Question): Asked[] => {
  const { fix } = words;
  const running = v.runningClearance;
  return [
    ...(['base', 'mount', 'rest', 'wheels', 'guards'] as const).map((b) =>
      clear('blade', b, 0.5, fix.blade),
    ),
    ...(['belt', 'platen', 'wheels'] as const).map((b) =>
      clear('tang', b, running, fix.blade, parameterPath('plungeMargin')),
    ),
    ...(['base', 'mount', 'rest', 'guards', 'push'] as const).map((b) =>
      clear('tang', b, 0.5, fix.blade),
    ),
    ...(['blade', 'tang', 'collar'] as const).map((a) => clear(a, 'hand', 5, shared.fix.hand)),
    clear('blade', 'push', 0.5, fix.blade),
    clear('tang', 'pad', 0.5, fix.blade),
    clear('collar', 'pad', 0.5, fix.collar, parameterPath('wing')),
    ...tangPairs(design),
    ...(['belt', 'platen', 'wheels'] as const).map((b) =>
      clear('collar', b, running, fix.collar, parameterPath('wing')),
    ),
    ...(['base', 'mount', 'rest', 'guards', 'step', 'push'] as const).map((b) =>
      clear('collar', b, 0.5, fix.collar, parameterPath('wing')),
    ),
  ];
};

/** The spine on seat and step over the whole stroke, never rocked. */
const contactPairs = (): Asked[] => [
  {
    id: 'contact/blade/nose',
    rule: { kind: 'touch', a: 'blade', b: 'nose', tolerance: CONTACT, apart: [0, 0, 1] },
    fix: words.fix.contactOpen,
  },
  {
    id: 'contact/blade/step',
    rule: { kind: 'touch', a: 'blade', b: 'step', tolerance: CONTACT, apart: [0, -1, 0] },
    fix: words.fix.contactOpen,
  },
];

/** What the strip on a blade must keep clear of; the blade itself then keeps off the step. */
const stripPairs = ({ v }: Question): Asked[] => {
  const { fix } = text.family.spineRest.strip;
  return [
    ...(['belt', 'platen', 'wheels'] as const).map((b) =>
      clear('strip', b, v.runningClearance, fix.clear),
    ),
    ...(['base', 'mount', 'nose', 'push', 'pad', 'collar', 'rest', 'guards'] as const).map((b) =>
      clear('strip', b, 0.02, fix.clear),
    ),
    clear('strip', 'hand', 5, shared.fix.hand),
    // The tape is between them.
    clear('strip', 'blade', 0.05, fix.contact),
    clear('strip', 'tang', 0.02, fix.clear),
    clear('step', 'belt', v.runningClearance, fix.clear),
    clear('step', 'rest', 1, words.fix.clearance),
  ];
};

/** Step and strip meet closely, mm: poses lie apart along the stroke, the strip bends between. */
const ON_STEP = 0.05;

/**
 * The same with a strip on the blade, which bears on the rounded step, at some settings of the plan.
 * `machine`: what is asked of the fixture and the machine alone.
 */
export const stripSetUpsOf = (
  q: Question,
  settings: Question['plan']['settings'],
  machine: readonly Asked[] = [],
  stick?: Stick,
): Result<SetUp[]> => {
  const { strip } = text.family.spineRest;
  const contacts = contactPairs();
  return strokedSetUps({
    ...askedOf(q),
    settings,
    bodyName: (placement) => (placement.name === 'line-strip' ? 'strip' : groupOf(placement)),
    names: { ...words.names, strip: strip.body },
    machine,
    ...(machine.length > 0 ? {} : { pressing: [] }),
    ...(stick ? { stick } : {}),
    blade: [...bladePairs(q), ...stripPairs(q)],
    contacts: [
      ...contacts.slice(0, 1),
      {
        id: 'contact/strip/step',
        rule: { kind: 'touch', a: 'strip', b: 'step', tolerance: ON_STEP, apart: [0, -1, 0] },
        fix: strip.fix.contact,
      },
      clear('blade', 'step', 0.02, strip.fix.contact),
    ],
  });
};

/** The settings of one side with that side's strip on the blade. */
const sideSetUps = (q: Question, { found }: Carried, side: Side): Result<SetUp[]> => {
  const settings = q.plan.settings.filter((setting) => setting.side === side);
  const onBlade = [...q.onBlade, ...placedOnBlade(stripItems(found, side))];
  // What the other side's passes left of the blade is asked of the whole plan.
  return stripSetUpsOf({ ...q, onBlade }, settings, machinePairs(q), stickOf(q));
};

const stickOf = ({ plan, context, v, strip }: Question): Stick => ({
  rig: context,
  level: v.plate,
  noseAt: byKey((id: string) => {
    const setting = plan.settings.find((one) => one.id === id);
    if (setting === undefined) return NaN;
    const height = v.plate + stickHeight(context);
    return stickContact(plan, setting, height, v.padMargin, strip && stripFrom(strip));
  }),
  asked: stickPairs(v, ['base', 'mount', 'nose', ...(strip ? ['strip'] : [])]),
});

/** How much nearer to the belt the block comes at each setting than where it is placed. */
const pressedBy = ({ plan, context: { l }, v, strip }: Question): Stroked['pressedBy'] => {
  const pads = {
    main: v.plate + l.push.pad,
    all: l.push.pads.map((height) => v.plate + height),
    margin: v.padMargin,
  };
  return byKey((id: string) => {
    const setting = plan.settings.find((one) => one.id === id);
    if (setting) return blockNearer(plan, setting, pads, strip && stripFrom(strip));
    return { block: NaN, pad: NaN };
  });
};

/** Fixture, blade and machine over all settings, strokes and sides, with what is asked of them. */
export const setUpsOf = (q: Question): Result<SetUp[]> => {
  const { strip } = q;
  if (strip === undefined) return strokedSetUps({ ...askedOf(q), stick: stickOf(q) });
  const sides = SIDES.filter((side) => q.plan.settings.some((setting) => setting.side === side));
  return chain(all(sides.map((side) => sideSetUps(q, strip, side))), (setUps) => ok(setUps.flat()));
};

const askedOf = (q: Question): Stroked => {
  const { l } = q.context;
  const { push } = l;
  return {
    ...q,
    settings: q.plan.settings,
    frameOf: ({ offset }) => ({ ...WORLD, origin: [0, offset, -l.levels.stack] }),
    bodyName: groupOf,
    pressedBy: pressedBy(q),
    hand: {
      half: push.half,
      y: [push.padReach + push.grip, push.padReach + push.depth],
      z: [q.v.plate + push.footHeight, q.v.plate + push.handle],
    },
    rockHalf: l.nose.half,
    rocking: q.v.tipLift,
    names: words.names,
    machine: machinePairs(q),
    pressing: padPairs(words.fix.padAtBelt, 'padMargin'),
    blade: bladePairs(q),
    contacts: contactPairs(),
  };
};
