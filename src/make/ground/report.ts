import type { Side } from '../../blade/schema.ts';
import type { CheckResult } from '../../check/result.ts';
import type { Certainty } from '../../core/certainty.ts';
import type { Issue } from '../../core/issue.ts';
import type { Design } from '../../document/schema.ts';
import type { StripSetting } from '../../family/index.ts';
import type {
  Cure,
  CureFact,
  EdgePlace,
  LinePlace,
  ModelPlace,
  StrokeCandidate,
} from '../../virtual/index.ts';
import type { Ground } from './ground.ts';
import { yawSentence } from './work.ts';

/** A greatest value and where it is, mm. */
export interface At {
  readonly u: number;
  readonly value: number;
}

/** One blade of `grind`'s answer; lengths mm, volumes mm3. */
export interface BladeReport {
  readonly blade: string;
  readonly step: number;
  /** Greatest metal standing over the edge wanted where places count. */
  readonly standing: At;
  /** Thickest less thinnest edge where places count. */
  readonly uneven: number;
  readonly edge: readonly EdgePlace[];
  readonly lines: readonly {
    readonly side: Side;
    readonly worst: At;
    readonly places: readonly LinePlace[];
  }[];
  /** Where the section model of `solve` is off. */
  readonly model: readonly {
    readonly side: Side;
    readonly worst: ModelPlace | null;
    readonly places: readonly ModelPlace[];
  }[];
  readonly passes: readonly {
    readonly setting: string;
    readonly side: Side;
    readonly volume: number;
    /** Places of the stroke at which the blade could not stand. */
    readonly missed: readonly number[];
  }[];
  readonly certainty: Certainty;
  readonly assumptions: readonly string[];
  /** Strokes compared, from the evenest edge on; null where they were not asked for. */
  readonly advice: {
    readonly sentence: string;
    readonly planned: StrokeCandidate;
    readonly candidates: readonly StrokeCandidate[];
  } | null;
  /** A step turned by half the taper, in a sentence; null where there is none or advice was not asked for. */
  readonly turnedStep: string | null;
  /** The strip; null where none was asked for or found: the issues then say why. */
  readonly cure: CureReport | null;
  readonly cureIssues: readonly Issue[];
}

/** The strip of `grind --cure`. */
export interface CureReport {
  /** Whether one strip, turned over, serves both sides. */
  readonly oneForBoth: boolean;
  readonly sides: readonly {
    readonly side: Side;
    readonly part: string;
    /** Greatest deviation of the grind line without the strip and with it. */
    readonly without: number;
    readonly with: number;
    /** Strip and tape along the blade. */
    readonly profile: readonly { readonly u: number; readonly thickness: number }[];
  }[];
  /** Setting of the rounded step with the strip on, belt by belt. */
  readonly settings: readonly { readonly setting: string; readonly setoff: number }[];
  readonly facts: readonly CureFact[];
  /** Rounded step and strip as parts, dial readings and checks on the solids; null if not drawn up. */
  readonly kit: {
    readonly parts: readonly string[];
    readonly settings: readonly StripSetting[];
    readonly checks: readonly CheckResult[];
  } | null;
  /** Why they could not be drawn up. */
  readonly kitIssues: readonly Issue[];
}

/** What `grind` answers. */
export interface GrindReport {
  readonly format: 'platenwright-grind';
  readonly design: string;
  readonly family: string;
  readonly blades: readonly BladeReport[];
}

/** Settings of the rounded step, belt by belt, mm. */
export const cureSettings = ({ passes }: Cure): CureReport['settings'] =>
  passes.flatMap(({ id, holding }) =>
    holding.kind === 'spine-rest' ? [{ setting: id, setoff: holding.setoff }] : [],
  );

const cureReport = (cure: Cure, kit: Ground['kit']): CureReport => ({
  oneForBoth: cure.oneForBoth,
  sides: cure.sides.map(({ side, part, profile, without, with: after }) => ({
    side,
    part: part.id,
    without,
    with: after,
    profile,
  })),
  settings: cureSettings(cure),
  facts: cure.facts,
  kit: kit?.ok ? { ...kit.value, parts: kit.value.parts.map(({ id }) => id) } : null,
  kitIssues: kit?.issues ?? [],
});

/** What mends a strip lies on the rest it is looked for on, which a report does not change. */
const unmended = ({ code, path, severity, message, fix }: Issue): Issue => ({
  code,
  path,
  severity,
  message,
  fix,
});

const bladeReport = ({ blade, step, report, advice, yaw, cure, kit }: Ground): BladeReport => ({
  blade: blade.name,
  step,
  standing: report.standing,
  uneven: report.uneven,
  edge: report.edge,
  lines: report.lines,
  model: report.model.map(({ side, worst, places }) => ({ side, worst: worst ?? null, places })),
  passes: report.grind.passes.map(({ pass, volume, missed }) => ({
    setting: pass.id,
    side: pass.side,
    volume,
    missed,
  })),
  certainty: report.certainty,
  assumptions: report.assumptions,
  advice: advice
    ? { sentence: advice.sentence, planned: advice.planned, candidates: advice.candidates }
    : null,
  turnedStep: yaw?.ok ? yawSentence(yaw.value, report) : null,
  cure: cure?.ok ? cureReport(cure.value, kit) : null,
  cureIssues: (cure?.issues ?? []).map(unmended),
});

/** The answer about all blades that were ground, as plain data. */
export const grindReport = (design: Design, ground: readonly Ground[]): GrindReport => ({
  format: 'platenwright-grind',
  design: design.name,
  family: design.fixture.family,
  blades: ground.map(bladeReport),
});
