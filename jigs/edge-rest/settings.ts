import {
  atan2,
  degrees,
  type Design,
  type EdgeRestPlan,
  exact,
  type Fact,
  type GrindLine,
  halfAt,
  type KnownFixture,
  quantise,
  type Setting,
  text,
} from '../../src/family/index.ts';
import { dialOf, DIVISIONS, PITCH } from '../shared/feed.ts';
import type { EdgeContext } from './context.ts';

const words = text.family.edgeRest.setting;

type PlanSetting = EdgeRestPlan['settings'][number];
type Place = PlanSetting['blades'][number]['places'][number];

const zeroOf = ({ x }: EdgeContext, { step }: PlanSetting): number => x.zeros[step - 1] ?? NaN;

/** Angle between the midplane and the chord over a hollow, degrees. */
const chordAngle = ({ section, limits: { lower, upper } }: Place): number =>
  degrees(atan2(halfAt(section.near, upper) - halfAt(section.near, lower), upper - lower));

const notesOf = (
  { grinder }: Design,
  plan: EdgeRestPlan,
  setting: PlanSetting,
  last: PlanSetting | undefined,
): string[] => {
  const { notes } = words;
  const wheel = grinder.wheels.find(({ id }) => id === plan.wheel);
  return [
    ...(last?.belt === setting.belt ? [] : [notes.zeroAgain]),
    notes.climbs(Math.max(...plan.settings.map(({ climb }) => climb.perDepth))),
    ...(setting.faceTilt > 0 ? [notes.lipTop] : []),
    ...(wheel?.surface === 'rubber' ? [notes.rubber] : []),
  ];
};

/** The plan's settings as a maker reads them. */
export const settingsOf = (design: Design, c: EdgeContext, plan: EdgeRestPlan): Setting[] => {
  const { readings } = words;
  return plan.settings.map((s, i): Setting => {
    const zero = zeroOf(c, s);
    const edge = s.blades[0]?.places[0]?.edge ?? NaN;
    return {
      id: s.id,
      step: s.step,
      side: s.side,
      belt: s.belt,
      backing: s.backing,
      edgeStop: edge,
      angle: s.tilt,
      readings: [
        {
          key: 'lip',
          label: readings.lip,
          value: s.lip,
          unit: 'mm',
          dial: dialOf(s.lip - zero, s.dial.turnsFromLast),
        },
        { key: 'fromZero', label: readings.fromZero, value: s.lip - zero, unit: 'mm' },
        { key: 'centre', label: readings.centre, value: quantise(s.centre), unit: 'mm' },
        { key: 'tilt', label: readings.tilt, value: s.tilt, unit: 'deg' },
        { key: 'noseGap', label: readings.noseGap, value: c.v.noseGap, unit: 'mm' },
        { key: 'collar', label: readings.collar, value: c.rig.l.collar.distance, unit: 'mm' },
      ],
      progress: s.progress.map(({ tilt, upper }) => ({ edge, angle: tilt, bevelHeight: upper })),
      expected: s.blades.flatMap(({ blade, expected }) =>
        expected.map(({ place, u, upper }) => ({ blade, place, u, bevelHeight: upper })),
      ),
      push: {
        from: s.push.from,
        to: s.push.to,
        stepForce: [s.push.lipForceMin, s.push.lipForceMax],
      },
      volume: s.blades.map(({ blade, volume }) => ({ blade, value: volume })),
      notes: notesOf(design, plan, s, plan.settings[i - 1]),
      hollow: {
        stop: s.depth,
        progress: s.progress.map(({ depth, lower, upper }) => ({ depth, lower, upper })),
      },
    };
  });
};

/** What a calibration compares the readings of a test piece with. */
export const knownOf = (c: EdgeContext, { settings }: EdgeRestPlan): KnownFixture => ({
  unit: 'mm',
  settingTolerance: c.v.settingTolerance,
  settings: settings.map((s) => {
    const corner = s.blades[0]?.places[0]?.standing.corner ?? [s.lip, 0];
    return {
      id: s.id,
      // The edge's corner lies a little over the seat: the wheel's axis is that much nearer to it.
      set: {
        kind: 'edge-rest',
        radius: s.wheel.radius,
        lip: corner[0],
        drop: s.wheel.drop - corner[1],
      },
      dial: {
        turnsFromZero: (s.lip - zeroOf(c, s)) / PITCH,
        perTurn: PITCH,
        divisions: DIVISIONS,
      },
    };
  }),
});

/** The plan's lines: the grind line of a hollow is its upper limit, its angle that of the chord. */
export const linesOf = ({ lines, settings }: EdgeRestPlan): GrindLine[] =>
  lines.map(({ blade, side, places }) => {
    const last = settings.findLast((s) => s.side === side);
    const ground = last?.blades.find((b) => b.blade === blade)?.places ?? [];
    return {
      blade,
      side,
      places: places.flatMap(({ u, height, thickness, upper, wanted, deviation, certainty }) => {
        const place = ground.find((p) => p.u === u);
        if (!place) return [];
        return [
          {
            u,
            height,
            thickness,
            angle: chordAngle(place),
            bevelHeight: upper,
            wanted,
            deviation,
            leftStanding: 0,
            certainty,
          },
        ];
      }),
    };
  });

/** Numbers worth printing beside the settings. */
export const factsOf = (c: EdgeContext, plan: EdgeRestPlan): Fact[] => {
  const { facts, side: sides } = words;
  const { rig, x } = c;
  const mm = (key: string, label: string, value: number): Fact => ({
    key,
    label,
    value,
    unit: 'mm',
    certainty: exact,
  });
  const belts = plan.settings.filter(
    (s, i) => plan.settings.findIndex(({ step }) => step === s.step) === i,
  );
  const [first] = plan.settings;
  return [
    mm('drop', facts.drop, first?.wheel.drop ?? NaN),
    mm('stack', facts.stack, rig.l.levels.stack + x.rise),
    mm('pushHeight', facts.pushHeight, plan.pushHeight),
    mm('travel', facts.travel, 2 * rig.l.slide.travel),
    mm('noseTravel', facts.noseTravel, 2 * rig.l.nose.travel),
    mm('perTurn', facts.perTurn, PITCH),
    mm('perDivision', facts.perDivision, PITCH / DIVISIONS),
    {
      key: 'yaw',
      label: facts.yaw,
      value: rig.l.slide.yaw,
      unit: 'deg',
      certainty: exact,
    },
    ...belts.flatMap((s): Fact[] => [
      mm(`radius-${s.id}`, facts.radius(s.belt), s.wheel.radius),
      mm(`pinZero-${s.id}`, facts.pinZero(s.belt), zeroOf(c, s)),
      mm(`room-${s.id}`, facts.room(s.id), s.roomAtTop),
      mm(`perTenth-${s.id}`, facts.perTenth(s.id), s.climb.perLip / 10),
      mm(`perDepth-${s.id}`, facts.perDepth(s.id), s.climb.perDepth),
      mm(`first-${s.id}`, facts.first(s.id), s.firstCentre),
      mm(`lower-${s.id}`, facts.lower(s.id), s.lower),
      mm(`upper-${s.id}`, facts.upper(s.id), s.upper),
    ]),
    ...plan.lines.flatMap(({ blade, side, web, guided, sagitta, greatestDeviation }) => [
      mm(`guided-${side}-${blade}`, facts.guided(blade, sides[side]), guided),
      mm(`web-${side}-${blade}`, facts.web(blade, sides[side]), web.thickness),
      mm(`webAt-${side}-${blade}`, facts.webAt(blade, sides[side]), web.at),
      ...(sagitta > 1e-9
        ? [mm(`sagitta-${side}-${blade}`, facts.sagitta(blade, sides[side]), sagitta)]
        : []),
      mm(`deviation-${side}-${blade}`, facts.deviation(blade, sides[side]), greatestDeviation),
    ]),
  ];
};
