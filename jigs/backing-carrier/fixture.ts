import {
  beltPath,
  chain,
  fabricationChecks,
  ok,
  text,
  type CheckResult,
  type Gaps,
  type Design,
  type Face,
  type Fixture,
  type Placement,
  type Result,
  type Solids,
  type Workshop,
} from '../../src/family/index.ts';
import { checkedBy, solidChecks } from '../shared/checks/solids.ts';
import { later } from '../shared/later.ts';
import type { Aim } from './aim.ts';
import { arcCheck } from './arc-check.ts';
import { setUpsOf } from './checks/pairs.ts';
import type { Question } from './checks/question.ts';
import { rangeChecks } from './checks/ranges.ts';
import { carried, platenFrame, type Layout, type Platen } from './layout.ts';
import { measuredOf } from './measured.ts';
import { factsOf, linesOf, settingsOf } from './numbers.ts';
import type { Values } from './parameters.ts';
import { partsOf } from './parts.ts';
import { itemsOf, placed, ribName, rodLength, screwLength } from './place.ts';
import { posesOf } from './pose.ts';
import { sectionOf } from './section.ts';
import { boltReach } from './slots.ts';

const words = text.family.backingCarrier;

/** What the belt's path grows by where the carrier takes the place of the bare platen, mm. */
const pathGrowth = ({ grinder }: Design, v: Values, l: Layout): Result<number> => {
  const bare = { kind: 'none', id: 'bare', thickness: 0 } as const;
  return chain(beltPath(carried(grinder, v, l), l.backing), (on) =>
    chain(beltPath(grinder, bare), (off) => ok(on.length - off.length)),
  );
};

/** Faces along the stroke that lie on each other: rib on rib. */
const facesOf = ({ ribs }: Layout): Face[] =>
  Array.from({ length: ribs - 1 }, (_, i): Face => [ribName(i + 1), ribName(i)]);

/** Everything the checks of solids look at. */
const solidsOf = (q: Question): Result<Solids> =>
  chain(setUpsOf(q), (setUps) => {
    const { parts, placements, workshop } = q;
    const own = {
      parts,
      workshop,
      placements,
      faces: facesOf(q.l),
      up: [1, 0, 0],
      prefix: 'joint',
    } as const;
    return ok({ setUps, assemblies: [own], unasked: [] });
  });

/** All checks of a question, in the order a maker reads them. */
const checksOf = (
  q: Question,
  solids: Solids,
  gaps: Gaps = 'all',
): Result<readonly CheckResult[]> =>
  chain(solidChecks(solids, q.workshop, gaps), (found) =>
    ok([
      ...rangeChecks(q),
      ...found,
      ...fabricationChecks(q.parts, q.design.making.prints.nozzle, q.workshop),
    ]),
  );

/** The fixture, and the question behind its checks for those who test the checks. */
export type CarrierFixture = Fixture & { readonly question: () => Result<Question> };

/** A design that has been laid out, as the fixture it is. */
export const fixtureOf = (
  design: Design,
  v: Values,
  l: Layout,
  platen: Platen,
  aims: readonly Aim[],
  workshop: Workshop,
): Result<CarrierFixture> =>
  chain(itemsOf(v, l, platen.width), (items) =>
    chain(pathGrowth(design, v, l), (path): Result<CarrierFixture> => {
      const { grinder, making } = design;
      const settings = settingsOf(design, v, l, aims);
      const placements = later((): readonly Placement[] => placed(items, platenFrame(grinder)));
      const parts = later(() =>
        chain(partsOf({ making, v, l }, items), (made) => ok(workshop.asBefore(made))),
      );
      const question = later(() =>
        chain(parts(), (made) =>
          ok({
            design,
            v,
            l,
            aims,
            parts: made,
            workshop,
            placements: placements(),
            path,
            first: settings[0]?.id ?? '',
          }),
        ),
      );
      const { solids, checks } = checkedBy(question, solidsOf, checksOf);
      const settingOf = (id: string) => settings.find((s) => s.id === id) ?? settings[0];
      const facts = factsOf(design, v, l, aims, path);
      const left = facts.find(({ key }) => key.startsWith(l.round ? 'hollow-' : 'roll-length'));
      const steps = {
        soft: !l.round,
        ribs: l.ribs,
        instead: l.slots
          ? {
              thread: l.slots.thread,
              slotted: l.slots.ribs.size,
              ...boltReach(l.slots, l.back),
              platen: v.platenThickness,
            }
          : undefined,
        rod: rodLength(v, l),
        spacers: l.washers,
        grip: screwLength(v, l.cheekX - platen.width / 2),
        play: v.play,
        backing: l.backing.id,
        thickness: l.backing.thickness,
        radius: v.radius,
        arc: l.round && arcCheck(l.round),
        path,
        lean: grinder.lean,
        leaves: left?.value ?? NaN,
      };
      return ok({
        settings,
        lines: linesOf(aims),
        facts,
        parts,
        place: placements,
        poses: (id, blade) => {
          const setting = settingOf(id);
          const aim = aims.find((one) => one.blade.name === blade && one.side === setting?.side);
          return setting && aim ? posesOf(grinder, v, l, aim, setting) : [];
        },
        question,
        checks,
        solids,
        measured: later(() =>
          chain(parts(), (made) => measuredOf(design, v, l, aims, made, placements())),
        ),
        section: (id) => {
          const setting = settingOf(id);
          const aim = aims.find(({ side }) => side === setting?.side);
          const made = parts();
          return setting && aim && made.ok
            ? sectionOf(design, v, l, aim, setting, { parts: made.value, placements: placements() })
            : { title: '', lines: [], dimensions: [] };
        },
        joined: 'x',
        cuts: [
          { through: ribName(Math.floor(l.ribs / 2)), across: 'x' },
          { through: 'rod-1', across: 'y' },
        ],
        reachless: words.reachless,
        sheet: words.sheet,
        assembly: words.assembly(steps),
        supplies: words.supplies(steps),
        zeroing: words.zeroing(steps),
        cautions: words.cautions(steps),
      });
    }),
  );
