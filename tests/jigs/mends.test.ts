import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Values } from '../../jigs/edge-rest/parameters.ts';
import { planIssues } from '../../jigs/edge-rest/rules.ts';
import { registry } from '../../jigs/registry.ts';
import { parameters as spineRestParameters } from '../../jigs/spine-rest/parameters.ts';
import { bladeIssues } from '../../src/blade/rules.ts';
import { withValue } from '../../src/core/path.ts';
import type { Issue } from '../../src/core/issue.ts';
import { checkDesign, openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { checkFixture, solveDesign } from '../../src/make/engine.ts';
import { text } from '../../src/text/index.ts';
import { valueOf } from '../family/examples.ts';

const open = (example: string): Design => {
  const opened = openDesign(readFileSync(`jigs/${example}.jig.json`), registry);
  if (!opened.ok) throw new Error(`${example} does not open`);
  return opened.value;
};

const issuesOf = (design: Design): readonly Issue[] => {
  const sound = checkDesign(design, registry);
  return sound.ok ? solveDesign(sound.value, registry).issues : sound.issues;
};

/** Holes of a rest that take the strongest screws. */
const TAPPED = {
  kind: 'holes',
  hole: { kind: 'tapped', thread: 'M8' },
  at: [-50, 50].flatMap((x) => [40, 70].map((y) => [x, y])),
};

/** Slots beside any base. */
const FAR = {
  kind: 'slots',
  axis: 'y',
  slots: [-72, 72].map((at) => ({ at, from: 30, to: 110, width: 4.5 })),
};

/** A narrow tang that leaves little room between jaw and edge. */
const TANG = { '/blades.0.tang.height': 12, '/blades.0.tang.drop': 4 };

/** A blade too low for its hollow: the centre alone does not bring it off the spine. */
const LOW = {
  '/blades.0.outline.heelHeight': 15,
  '/blades.0.outline.bellyHeight': 15,
  '/blades.0.outline.tipDrop': 4,
};

/** A worked design, numbers of its fixture (or from its root, with a slash) that spoil it, and the issue that must name its own mend. */
const SPOILT: readonly [string, Readonly<Record<string, unknown>>, string][] = [
  ['spine-rest/examples/kitchen-210', { noseGap: 0.5 }, 'nose-at-belt'],
  ['spine-rest/examples/tapered-210', { noseGap: 1.25 }, 'strip-bearing'],
  ['spine-rest/examples/kitchen-210', { '/sequence.2.edge': 0.4 }, 'edge-rises'],
  ['spine-rest/examples/kitchen-210', { '/sequence.2.edge': 0.8 }, 'edge-rises'],
  ['spine-rest/examples/hunting-115', { '/blades.0.edge.wanted': 0.5 }, 'edge-not-reached'],
  ['spine-rest/examples/kitchen-210', { '/blades.0.edge.wanted': 0.15 }, 'edge-not-shared'],
  ['spine-rest/examples/hunting-115', { '/blades.0.edge.asHeatTreated': 0.4 }, 'edge-not-met'],
  ['spine-rest/examples/hunting-115', { '/sequence.3.steeper': 0.1 }, 'ends-steeper'],
  ['spine-rest/examples/kitchen-210', { '/sequence.2.steeper': 0.3 }, 'steeper-rises'],
  [
    'spine-rest/examples/kitchen-210',
    { '/sequence.3.edge': 0.201, '/sequence.3.steeper': 0 },
    'undercuts',
  ],
  [
    'carriage/examples/sheepsfoot-95',
    { '/sequence.1.edge': 0.41, '/sequence.1.steeper': 0 },
    'undercuts',
  ],
  ['spine-rest/examples/hunting-115', { noseGap: 2.5 }, 'no-bearing'],
  ['edge-rest/examples/slicer-200-hollow', { lip: 'strip', lipThickness: 2 }, 'lip-too-thick'],
  [
    // No sheet is thin enough to be folded into this strip: pads take its place.
    'edge-rest/examples/herb-110-small-wheel',
    { '/blades.0.bevels.left.centre': 9.6 },
    'lip-too-thick',
  ],
  ['spine-rest/examples/hunting-115', { plate: 5.5 }, 'thickness-missing'],
  ['spine-rest/examples/hunting-115', { stepWing: 25 }, 'wings-too-close'],
  ['spine-rest/examples/hunting-115', { guide: 'strips', guideLength: 40 }, 'guide-too-short'],
  [
    'spine-rest/examples/hunting-115',
    { '/blades.0.thickness.0.t': 8, '/blades.0.spineRadius': 1.1 },
    'step-too-low',
  ],
  ['spine-rest/examples/kitchen-210', { '/grinder.rest.pattern': TAPPED }, 'mount-head'],
  ['spine-rest/examples/kitchen-210', { '/grinder.rest.pattern': FAR }, 'mount-misses'],
  ['edge-rest/examples/slicer-200-hollow', { noseGap: 0.5 }, 'gap-at-wheel'],
  [
    'edge-rest/examples/slicer-200-hollow',
    { '/blades.0.bevels.left.centre': 14 },
    'no-room-at-seat',
  ],
  ['edge-rest/examples/slicer-200-hollow', { '/blades.0.bevels.left.centre': 6 }, 'hollow-at-lip'],
  [
    'edge-rest/examples/slicer-200-hollow',
    { '/blades.0.bevels.left.centre': 32 },
    'hollow-at-spine',
  ],
  ['edge-rest/examples/herb-110-small-wheel', LOW, 'hollow-at-spine'],
  ['edge-rest/examples/slicer-200-hollow', { '/sequence.0.depthLeft': 2 }, 'depth-left'],
  ['edge-rest/examples/slicer-200-hollow', { wear: 2 }, 'wear-too-thin'],
  ['edge-rest/examples/slicer-200-hollow', { lip: 'pads', stepWing: 10 }, 'pads-too-short'],
  ['spine-rest/examples/kitchen-210', { '/making.plates.process': 'saw-drill' }, 'guide-needs-cut'],
  ['carriage/examples/camp-90', { '/making.plates.process': 'saw-drill' }, 'tabs-need-cut'],
  ['carriage/examples/camp-90', { '/grinder.rest.pattern': TAPPED }, 'mount-tapped'],
  ['carriage/examples/camp-90', { beltGap: 0.5 }, 'gap-at-belt'],
  ['carriage/examples/camp-90', { tipOverlap: 150 }, 'stroke-short'],
  ['carriage/examples/camp-90', { tipOverlap: 60 }, 'tip-unground'],
  ['spine-rest/examples/kitchen-210', { tipOverlap: 80 }, 'tip-unground'],
  ['edge-rest/examples/slicer-200-hollow', { tipOverlap: 100 }, 'tip-unground'],
  [
    'carriage/examples/camp-90',
    { jawGap: 3, plungeMargin: 1, '/grinder.belt.tracking': 5 },
    'jaw-at-belt',
  ],
  ['carriage/examples/camp-90', { edgeHeight: 60 }, 'edge-too-low'],
  [
    'carriage/examples/marking-60',
    { upright: 'angle', edgeHeight: 122, ...TANG, '/blades.0.outline.heelHeight': 27 },
    'no-angle',
  ],
  [
    'carriage/examples/marking-60',
    { upright: 'angle', edgeHeight: 124, ...TANG, '/blades.0.outline.heelHeight': 28 },
    'no-angle',
  ],
  ['backing-carrier/examples/leather-finish', { endRadius: 9 }, 'end-in-rib'],
  ['backing-carrier/examples/leather-finish', { depth: 12 }, 'too-shallow'],
  ['backing-carrier/examples/leather-finish', { contact: 200 }, 'contact-off-platen'],
];

describe('mends that the rules of families name', () => {
  it.each(SPOILT)('%s with %j: the mend of %s satisfies the rule', (example, values, code) => {
    const spoilt = Object.entries(values).reduce(
      (design, [key, value]) =>
        withValue(design, key.startsWith('/') ? key.slice(1) : `fixture.parameters.${key}`, value),
      open(example),
    );
    const broken = issuesOf(spoilt).find((issue) => issue.code === code);
    expect(broken?.mend, JSON.stringify(issuesOf(spoilt).map((i) => i.code))).toBeDefined();
    if (broken?.mend === undefined) return;
    const mended = withValue(spoilt, broken.mend.path, broken.mend.value);
    const left = issuesOf(mended).filter(({ path }) => path === broken.path);
    expect(left.map((issue) => issue.code)).not.toContain(code);
  });

  it.each([
    ['gap-at-belt', 'beltGap', 'clearance/base/belt', {}],
    ['jaw-at-belt', 'jawGap', 'clearance/jaw/belt', { plungeMargin: 1 }],
  ] as const)('%s of a carriage names a %s that also passes %s', (code, key, id, others) => {
    const open5 = withValue(open('carriage/examples/camp-90'), 'grinder.belt.tracking', 5);
    const set = { ...others, [key]: key === 'jawGap' ? 3 : 0.5 };
    const spoilt = Object.entries(set).reduce(
      (design, [name, value]) => withValue(design, `fixture.parameters.${name}`, value),
      open5,
    );
    const mend = issuesOf(spoilt).find((issue) => issue.code === code)?.mend;
    if (mend === undefined) throw new Error('no mend');
    const mended = withValue(spoilt, mend.path, mend.value);
    const { checks } = valueOf(
      checkFixture(valueOf(solveDesign(mended, registry)), mended.making, 'near'),
    );
    expect(checks.find((check) => check.id === id)?.passed).toBe(true);
  });

  it('a tang left thicker than a bar that was made thinner is mended by the bar, a handle is not', () => {
    const [blade] = open('spine-rest/examples/kitchen-210').blades;
    if (!blade) throw new Error('no blade');
    const thinner = { ...blade, thickness: [{ u: 0, t: 2.4 }] };
    const thick = (one: typeof blade) =>
      bladeIssues(one, '').filter(({ code }) => code === 'tang-thick');
    expect(thick(blade)).toEqual([]);
    expect(thick(thinner).map(({ mend }) => mend)).toEqual([
      { path: '.tang.thickness', value: 2.4 },
    ]);
    expect(thick({ ...thinner, tang: { ...blade.tang, thickness: 2.4 } })).toEqual([]);
    expect(thick({ ...thinner, tang: { ...blade.tang, kind: 'handle' } })).toEqual([]);
  });

  it('a mounting that finds no room is mended by what its sentence names first', () => {
    const { options } = text.family.shared.parameters.mount;
    for (const pattern of [TAPPED, FAR]) {
      const spoilt = withValue(
        open('spine-rest/examples/kitchen-210'),
        'grinder.rest.pattern',
        pattern,
      );
      const [broken] = issuesOf(spoilt).filter(({ code }) => code.startsWith('mount-'));
      expect(broken?.fix).toMatch(new RegExp(`^Set mounting to “${options.bars}”`));
      expect(broken?.mend).toEqual({ path: 'fixture.parameters.mount', value: 'bars' });
    }
  });

  it('a bevel too high for gap and bearing is told about how high it may be', () => {
    const gapped = withValue(
      open('spine-rest/examples/kitchen-210'),
      'fixture.parameters.noseGap',
      1,
    );
    const given = (bevel: unknown) =>
      gapped.blades.reduce(
        (design, _, i) =>
          withValue(design, `blades.${String(i)}.bevels`, { left: bevel, right: bevel }),
        gapped,
      );
    const refused = issuesOf(given({ kind: 'full' })).find(({ code }) => code === 'no-bearing');
    expect(refused?.mend).toBeUndefined();
    const [, said] = / up to about (\d+) mm high /.exec(refused?.fix ?? '') ?? [];
    const codes = (height: number) =>
      issuesOf(given({ kind: 'height', height })).map(({ code }) => code);
    expect(codes(Number(said))).not.toContain('no-bearing');
    // It is not told much too low either.
    expect(codes(Number(said) + 3)).toContain('no-bearing');

    // One that is asked for by its angle is mended by a steeper one, with which a smaller gap does
    // the rest, and not by a much steeper one.
    const angled = (angle: number) =>
      issuesOf(given({ kind: 'angle', angle })).find(({ code }) => code === 'no-bearing')?.mend;
    const steeper = angled(2.2);
    expect(steeper?.path).toMatch(/\.bevels\.(left|right)\.angle$/);
    expect(angled(Number(steeper?.value))?.path).toBe('fixture.parameters.noseGap');
    expect(angled(Number(steeper?.value) - 0.3)?.path).toBe(steeper?.path);
  });

  it('a pad of the edge rest too low over its slide is mended by the wear strip that lowers the slide', () => {
    const { fixture } = open('edge-rest/examples/slicer-200-hollow');
    const values = fixture.parameters as unknown as Values;
    // The slide is one millimetre too near.
    const pushHeight = 8 - values.wear - values.lipThickness - 1;
    const plan = { wheel: 'contact', pushHeight, settings: [], lines: [] };
    const [broken] = planIssues(values, plan);
    expect(broken).toMatchObject({ code: 'pad-too-low', mend: { value: values.wear + 1 } });
    expect(planIssues({ ...values, wear: values.wear + 1 }, plan)).toEqual([]);
  });

  it('a pad of the spine rest too low is mended by a thinner plate only where there is one', () => {
    const { padTooLow } = text.family.spineRest.issues;
    const { min } = spineRestParameters.plate;
    expect(padTooLow(9, 10, min + 2, min).fix).toMatch(/thinner by 1 mm/);
    expect(padTooLow(7, 10, min + 2, min).fix).not.toMatch(/thinner by/);
  });
});
