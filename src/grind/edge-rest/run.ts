import { SIDES, type Side } from '../../blade/schema.ts';
import { halfAt, hollowed } from './half.ts';
import { atWheel, placeAtLip } from './place.ts';
import { standingAt, type AtWheel } from './at-lip.ts';
import { facingWheel, type EdgeWork, type Halves, type HollowWish } from './stations.ts';
import type { HollowPass, HollowPlace } from './types.ts';
import type { PlacedWheel } from './wheel.ts';

/** One blade under one belt on one side. */
export interface HollowCut {
  readonly work: EdgeWork;
  readonly wish: HollowWish;
  /** Depth this belt stops at on this blade, mm. */
  readonly depth: number;
  /** One a station; none where the lip does not bring the wheel to the blade. */
  readonly places: readonly (HollowPlace | undefined)[];
}

/** One belt on one side of the whole family. */
export interface HollowRun {
  readonly pass: HollowPass;
  readonly step: number;
  readonly side: Side;
  readonly last: boolean;
  readonly wheel: PlacedWheel;
  /** The first blade's bevel place at the wheel, whose wish sets the lip. */
  readonly at: AtWheel;
  readonly lip: number;
  readonly cuts: readonly HollowCut[];
}

/** What a run could not do. */
export interface Stuck {
  readonly step: number;
  readonly side: Side;
  readonly why: 'depth' | 'drop';
  readonly blade: string;
  readonly value: number;
  readonly most: number;
}

/** Whether the lip holds the edge on both sides of the belt while a place is ground. */
export type Guided = (work: EdgeWork, u: number) => boolean;

interface Job {
  readonly work: EdgeWork;
  readonly states: readonly Halves[];
}

const cutOf = (
  { work, states }: Job,
  wish: HollowWish,
  run: Pick<HollowRun, 'side' | 'wheel' | 'lip'> & {
    readonly depth: number;
    lipHeight: number;
    guided: Guided;
  },
): HollowCut => ({
  work,
  wish,
  depth: run.depth,
  places: work.stations.map(({ u, height, thickness }, i): HollowPlace | undefined => {
    const halves = states[i];
    if (halves === undefined) return undefined;
    const section = facingWheel(height, halves, run.side);
    const at = atWheel(section, wish, run.wheel, run.lipHeight);
    const place = placeAtLip(at, run.lip, run.depth);
    const edge = halfAt(section.near, 0) + halfAt(section.far, 0);
    return place && { ...place, u, thickness, edge, guided: run.guided(work, u) };
  }),
});

const carried = ({ work, states }: Job, cut: HollowCut, side: Side): Job => ({
  work,
  states: states.map((halves, i) => {
    const circle = cut.places[i]?.circle;
    return circle === undefined ? halves : { ...halves, [side]: hollowed(halves[side], circle) };
  }),
});

/**
 * Grinds the family in thought: each belt in turn, left then right, every section carried on to
 * what comes after. Every belt's lip is set so that its hollow, at the depth it stops at, has its
 * middle where the finished one has it; only the abrasive radius and the depth differ.
 */
export const runHollows = (
  works: readonly EdgeWork[],
  sequence: readonly HollowPass[],
  wheelFor: (pass: HollowPass) => PlacedWheel,
  lipHeight: number,
  guided: Guided,
): { readonly runs: readonly HollowRun[]; readonly stuck: readonly Stuck[] } => {
  let jobs: Job[] = works.map((work) => ({
    work,
    states: work.stations.map(({ halves }) => halves),
  }));
  const runs: HollowRun[] = [];
  const stuck: Stuck[] = [];
  for (const [index, pass] of sequence.entries()) {
    const last = index === sequence.length - 1;
    const left = last ? 0 : (pass.depthLeft ?? 0);
    for (const side of SIDES) {
      const first = jobs.find(({ work }) => work.wishes[side] !== undefined);
      const wish = first?.work.wishes[side];
      const station = first?.work.stations[first.work.reference];
      const halves = first?.states[first.work.reference];
      if (first === undefined || wish === undefined || !station || !halves) continue;
      const wheel = wheelFor(pass);
      const at = atWheel(facingWheel(station.height, halves, side), wish, wheel, lipHeight);
      const step = index + 1;
      const { name } = first.work.blade;
      const depth = wish.depth - left;
      if (depth <= 0) {
        stuck.push({ step, side, why: 'depth', blade: name, value: left, most: wish.depth });
        continue;
      }
      const standing = standingAt(at, wish.centre, depth);
      if (standing === undefined) {
        stuck.push({ step, side, why: 'drop', blade: name, value: wheel.drop, most: wheel.radius });
        continue;
      }
      const cuts: HollowCut[] = [];
      jobs = jobs.map((job) => {
        const own = job.work.wishes[side];
        if (own === undefined || own.depth - left <= 0) return job;
        const of = { side, wheel, lip: standing.lip, depth: own.depth - left, lipHeight, guided };
        const cut = cutOf(job, own, of);
        cuts.push(cut);
        return carried(job, cut, side);
      });
      runs.push({ pass, step, side, last, wheel, at, lip: standing.lip, cuts });
    }
  }
  return { runs, stuck };
};
