import {
  exact,
  stepAtPin,
  text,
  type Design,
  type Fact,
  type GrindLine,
  type KnownFixture,
  type Setting,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import type { Layout } from '../shared/layout/layout.ts';
import { dialOf, DIVISIONS, PITCH } from '../shared/feed.ts';
import { SIZE } from '../shared/layout/sizes.ts';
import { greatestOver } from './over-places.ts';
import type { Values } from './parameters.ts';
import { seatOf, type Carried } from './strip/carried.ts';
import { feelerGap } from './rules.ts';

const words = text.family.spineRest.setting;

type PlanSetting = SpineRestPlan['settings'][number];

const notesOf = (
  { grinder }: Design,
  v: Values,
  setting: PlanSetting,
  last: PlanSetting | undefined,
  isFinal: boolean,
): string[] => {
  const { notes } = words;
  const backing = grinder.backings.find(({ id }) => id === setting.backing);
  const standing = Math.max(
    0,
    greatestOver([setting], ({ leftStanding }) => leftStanding),
  );
  const changed = last?.belt !== setting.belt || last.backing !== setting.backing;
  return [
    ...(changed ? [notes.zeroAgain] : []),
    ...(backing && (backing.kind === 'leather' || backing.kind === 'rubber')
      ? [notes.soft(backing.id)]
      : []),
    ...(setting.firstContact.at === 'edge' && !setting.firstContact.seated
      ? [notes.edgeFirst]
      : []),
    ...(setting.push.stepForceMin < v.pushReserve
      ? [notes.lowReserve(setting.push.stepForceMin)]
      : []),
    ...(isFinal && standing >= 0.05 ? [notes.standing(standing)] : []),
  ];
};

/** What a calibration compares the readings of a test piece with. */
export const knownOf = (v: Values, { lean, settings }: SpineRestPlan): KnownFixture => {
  const zero = stepAtPin(SIZE.zeroPin / 2, lean);
  return {
    unit: 'mm',
    settingTolerance: v.settingTolerance,
    settings: settings.map((setting) => ({
      id: setting.id,
      set: { kind: 'spine-rest', setoff: setting.setoff, lean },
      dial: {
        turnsFromZero: (setting.setoff - zero) / PITCH,
        perTurn: PITCH,
        divisions: DIVISIONS,
      },
    })),
  };
};

/** Where the strip is stuck, and where the stroke ends with it. */
const stripReadings = (strip: Carried, side: PlanSetting['side']): Setting['readings'] => {
  const { from, to, below } = seatOf(strip, side);
  const words = text.family.spineRest.strip.readings;
  const mm = (key: string, label: string, value: number) =>
    ({ key, label, value, unit: 'mm' }) as const;
  return [
    mm('stripFrom', words.from, from),
    mm('stripBelow', words.below, below),
    mm('stripTo', words.to, to),
  ];
};

/** The plan's settings as a maker reads them. */
export const settingsOf = (
  design: Design,
  v: Values,
  l: Layout,
  plan: SpineRestPlan,
  strip?: Carried,
): Setting[] => {
  const zero = stepAtPin(SIZE.zeroPin / 2, plan.lean);
  const { readings } = words;
  const isFinal = ({ side, step }: PlanSetting): boolean =>
    !plan.settings.some((later) => later.side === side && later.step > step);
  return plan.settings.map((s, i): Setting => ({
    id: s.id,
    step: s.step,
    side: s.side,
    belt: s.belt,
    backing: s.backing,
    edgeStop: s.edgeStop,
    angle: s.angle,
    readings: [
      {
        key: 'setoff',
        label: readings.setoff,
        value: s.setoff,
        unit: 'mm',
        dial: dialOf(s.setoff - zero, s.dial.turnsFromLast),
      },
      { key: 'fromZero', label: readings.dialFromZero, value: s.setoff - zero, unit: 'mm' },
      { key: 'noseGap', label: readings.noseGap, value: feelerGap(design, v), unit: 'mm' },
      { key: 'edgeSide', label: readings.edgeSide, value: s.edgeSide, unit: 'mm' },
      { key: 'collar', label: readings.collar, value: l.collar.distance, unit: 'mm' },
      ...(strip ? stripReadings(strip, s.side) : []),
    ],
    progress: s.progress.map(({ edge, angle, bevelHeight }) => ({ edge, angle, bevelHeight })),
    expected: s.blades.flatMap(({ blade, expected }) =>
      expected.map(({ place, u, bevelHeight }) => ({ blade, place, u, bevelHeight })),
    ),
    push: {
      from: s.push.from,
      to: s.push.to,
      stepForce: [s.push.stepForceMin, s.push.stepForceMax],
    },
    volume: s.blades.map(({ blade, volume }) => ({ blade, value: volume })),
    notes: notesOf(design, v, s, plan.settings[i - 1], isFinal(s)),
  }));
};

/** The plan's grind lines, without what only the solver needs. */
export const linesOf = (plan: SpineRestPlan): GrindLine[] =>
  plan.lines.map(({ blade, side, places }) => ({
    blade,
    side,
    places: places.map((place) => ({
      u: place.u,
      height: place.height,
      thickness: place.thickness,
      angle: place.angle,
      bevelHeight: place.bevelHeight,
      wanted: place.wanted,
      deviation: place.deviation,
      leftStanding: place.leftStanding,
      certainty: place.certainty,
    })),
  }));

/** Numbers worth printing beside the settings. */
export const factsOf = (l: Layout, plan: SpineRestPlan, strip?: Carried): Fact[] => {
  const { facts, side: sides } = words;
  const mm = (key: string, label: string, value: number): Fact => ({
    key,
    label,
    value,
    unit: 'mm',
    certainty: exact,
  });
  return [
    mm('pinZero', facts.pinZero, stepAtPin(SIZE.zeroPin / 2, plan.lean)),
    mm('stack', facts.stack, l.levels.stack),
    mm('pushHeight', facts.pushHeight, plan.pushHeight),
    mm('travel', facts.travel, 2 * l.slide.travel),
    mm('noseTravel', facts.noseTravel, 2 * l.nose.travel),
    mm('perTurn', facts.perTurn, PITCH),
    mm('perDivision', facts.perDivision, PITCH / DIVISIONS),
    mm(
      'stepContact',
      facts.stepContact,
      Math.max(...plan.settings.map(({ stepContact }) => stepContact)),
    ),
    {
      key: 'yaw',
      label: facts.yaw,
      value: l.slide.yaw,
      unit: 'deg',
      certainty: exact,
    },
    ...plan.sensitivity.flatMap(({ side, degrees, bevelHeight }): Fact[] => [
      {
        key: `degreesPerTenth-${side}`,
        label: facts.degreesPerTenth(sides[side]),
        value: degrees,
        unit: 'deg',
        certainty: exact,
      },
      mm(`heightPerTenth-${side}`, facts.heightPerTenth(sides[side]), bevelHeight),
    ]),
    ...plan.lines.map(({ blade, side, greatestDeviation }) =>
      mm(`deviation-${side}-${blade}`, facts.deviation(blade, sides[side]), greatestDeviation),
    ),
    ...(strip?.found.cure.facts ?? []),
  ];
};
