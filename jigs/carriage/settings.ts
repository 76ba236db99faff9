import {
  exact,
  text,
  type CarriagePlan,
  type Fact,
  type GrindLine,
  type KnownFixture,
  type Setting,
} from '../../src/family/index.ts';
import type { Context } from './context.ts';
import { FOOT, HEEL } from './layout/sizes.ts';

const words = text.family.carriage.setting;

type PlanSetting = CarriagePlan['settings'][number];

/** Metal at the edge beyond what was asked for that is worth a word, mm a side. */
const UNEVEN = 0.05;

/** The most metal that a pass leaves at the edge beyond what was asked for, mm. */
const leftBy = ({ blades }: PlanSetting): number =>
  Math.max(
    0,
    ...blades.flatMap(({ places }) => places.map(({ edge, wantedEdge }) => edge - wantedEdge)),
  );

const notesOf = (c: Context, s: PlanSetting, last: PlanSetting | undefined): string[] => {
  const { notes } = words;
  const backing = c.grinder.backings.find(({ id }) => id === s.backing);
  const changed = last === undefined || last.belt !== s.belt || last.backing !== s.backing;
  const [main] = s.clamping;
  // Told of all passes alike, so that the sheet says it once.
  const most = Math.max(...c.plan.settings.filter(({ facet }) => facet === 0).map(leftBy));
  return [
    ...(changed ? [notes.baseAgain] : []),
    ...(last && (changed || Math.abs(s.fenceFromLast) > 0.005)
      ? [notes.fenceAgain(s.fenceFromLast)]
      : []),
    notes.flip(words.end[s.side]),
    ...(s.facet > 0 && main ? [notes.turned(-main.turn, main.u)] : []),
    ...(backing && (backing.kind === 'leather' || backing.kind === 'rubber')
      ? [notes.soft(backing.id)]
      : []),
    ...(s.firstContact === 'edge' ? [notes.edgeFirst] : []),
    ...(s.facet === 0 && leftBy(s) > UNEVEN ? [notes.uneven(most)] : []),
  ];
};

/** The plan's settings as a maker reads them. */
export const settingsOf = (c: Context): Setting[] => {
  const { readings } = words;
  const { v, plan } = c;
  return plan.settings.map((s, i): Setting => {
    const { turnsFromZero, turnsFromLast, division } = s.heel;
    return {
      id: s.id,
      step: s.step,
      side: s.side,
      belt: s.belt,
      backing: s.backing,
      edgeStop: s.edgeStop,
      angle: s.angle,
      readings: [
        {
          key: 'heel',
          label: readings.heel,
          value: turnsFromZero * HEEL.pitch,
          unit: 'mm',
          dial: { turnsFromZero, turnsFromLast, division },
        },
        { key: 'fence', label: readings.fence, value: s.fence, unit: 'mm' },
        {
          key: 'fenceFromFront',
          label: readings.fenceFromFront,
          value: s.fence - v.beltGap,
          unit: 'mm',
        },
        { key: 'tilt', label: readings.tilt, value: s.tilt, unit: 'deg' },
        { key: 'edgeHeight', label: readings.edgeHeight, value: v.edgeHeight, unit: 'mm' },
        { key: 'jaw', label: readings.jaw, value: v.jawGap, unit: 'mm' },
        { key: 'turn', label: readings.turn, value: -(s.clamping[0]?.turn ?? 0), unit: 'deg' },
        { key: 'edgeSide', label: readings.edgeSide, value: s.edgeSide, unit: 'mm' },
      ],
      progress: s.progress.map(({ edge, angle, bevelHeight }) => ({ edge, angle, bevelHeight })),
      ...(s.facet > 0 && s.clamping[0] ? { progressAt: s.clamping[0].u } : {}),
      expected: s.blades.flatMap(({ blade, expected }) =>
        expected.map(({ place, u, bevelHeight }) => ({ blade, place, u, bevelHeight })),
      ),
      push: { from: 0, to: s.push.to, stepForce: [s.push.heelForceMin, s.push.heelForceMax] },
      volume: s.blades.map(({ blade, volume }) => ({ blade, value: volume })),
      notes: notesOf(c, s, plan.settings[i - 1]),
    };
  });
};

/** The plan's grind lines. */
export const linesOf = ({ lines }: CarriagePlan): GrindLine[] =>
  lines.map(({ blade, side, places }) => ({ blade, side, places }));

/** Numbers worth printing beside the settings. */
export const factsOf = ({ v, l, plan }: Context, pushHeight: number): Fact[] => {
  const { facts, side: sides } = words;
  const fact = (key: string, label: string, value: number, unit: Fact['unit']): Fact => ({
    key,
    label,
    value,
    unit,
    certainty: exact,
  });
  const mm = (key: string, label: string, value: number): Fact => fact(key, label, value, 'mm');
  const [first] = plan.sensitivity;
  const [setting] = plan.settings;
  return [
    mm('carriage', facts.carriage, v.length),
    mm('footRadius', facts.footRadius, FOOT.radius),
    mm('tipRadius', facts.tipRadius, HEEL.tipRadius),
    mm('edgeHeight', facts.edgeHeight, v.edgeHeight),
    mm('forward', facts.forward, l.forward),
    mm('stroke', facts.stroke, 2 * l.stroke),
    mm('pushHeight', facts.pushHeight, pushHeight),
    fact('degreesPerTurn', facts.degreesPerTurn, setting?.heel.degreesPerTurn ?? 0, 'deg'),
    mm('fencePerDegree', facts.fencePerDegree, first?.fencePerDegree ?? 0),
    ...plan.sensitivity.flatMap((one): Fact[] => [
      fact(
        `degreesPerDivision-${one.side}`,
        facts.degreesPerDivision(sides[one.side]),
        one.degreesPerDivision,
        'deg',
      ),
      mm(
        `heightPerDivision-${one.side}`,
        facts.heightPerDivision(sides[one.side]),
        one.heightPerDivision,
      ),
      mm(`edgePerTenth-${one.side}`, facts.edgePerTenth(sides[one.side]), one.edgePerTenth),
      mm(`heightPerTenth-${one.side}`, facts.heightPerTenth(sides[one.side]), one.heightPerTenth),
    ]),
    ...plan.lines.flatMap(({ blade, side, greatestDeviation, tip }): Fact[] => [
      mm(`deviation-${side}-${blade}`, facts.deviation(blade, sides[side]), greatestDeviation),
      mm(`tipLeft-${side}-${blade}`, facts.tipLeft(blade, sides[side]), tip.left),
      ...(side === 'left' ? [fact(`tipTurn-${blade}`, facts.tipTurn(blade), tip.turn, 'deg')] : []),
    ]),
  ];
};

/** What the readings of a test piece are compared with. */
export const knownOf = ({ v, plan }: Context): KnownFixture => ({
  unit: 'deg',
  settingTolerance: v.angleTolerance,
  settings: plan.settings.map(({ id, angle, heel }) => ({
    id,
    set: { kind: 'carriage', angle },
    dial: {
      turnsFromZero: heel.turnsFromZero,
      perTurn: heel.degreesPerTurn,
      divisions: HEEL.divisions,
    },
  })),
});
