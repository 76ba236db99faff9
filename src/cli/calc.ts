import { Command, type OptionValues } from 'commander';
import type { Issue } from '../core/issue.ts';
import type { NumberParameter } from '../core/parameter.ts';
import { fail, ok, chain, type Result } from '../core/result.ts';
import { plain } from '../core/units.ts';
import { carriageSums } from '../grind/carriage/sums.ts';
import { edgeRestSums } from '../grind/edge-rest/sums.ts';
import {
  carriageParameters,
  edgeRestParameters,
  spineRestParameters,
} from '../grind/parameters.ts';
import { spineRestSums } from '../grind/spine-rest/sums.ts';
import { text } from '../text/index.ts';
import { issueOf, printIssues, printJson, printLine, type ExitCode } from './answer.ts';

const words = text.grind.calc;

/** A number given by a flag. Left out, it takes its initial value, is asked for, or is a target. */
interface Flag {
  readonly parameter: NumberParameter;
  readonly absent: 'initial' | 'asked' | 'target';
  /** A limit that follows from another flag, in words. */
  readonly also?: string;
}

type Flags = Readonly<Record<string, Flag>>;
type Numbers<F extends Flags> = { readonly [K in keyof F]: number | undefined };

const flagOf = (key: string): string => `--${key.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}`;

const rangeOf = ({ parameter, also }: Flag): string => {
  const range = words.from(
    parameter.min,
    parameter.max,
    parameter.unit === 'deg' ? 'degrees' : 'mm',
  );
  return also === undefined ? range : `${range}, ${also}`;
};

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** The number a flag was given, as an issue when it is not one, or undefined when left out. */
const read = (key: string, flag: Flag, given: unknown): Result<number | undefined> => {
  const { label, initial } = flag.parameter;
  const issue = (code: string, why: { message: string; fix: string }) =>
    fail(issueOf(code, why, flagOf(key)));
  if (given === undefined) {
    if (flag.absent === 'initial') return ok(initial);
    if (flag.absent === 'target') return ok(undefined);
    return issue('missing', words.missing(label, flagOf(key), rangeOf(flag)));
  }
  if (!Array.isArray(given))
    return issue('no-value', words.noValue(label, flagOf(key), rangeOf(flag)));
  const values = given.map(String);
  if (values.length > 1)
    return issue('given-twice', words.twice(label, flagOf(key), values.join(', ')));
  const value = values[0] ?? '';
  if (!NUMBER.test(value) || !Number.isFinite(Number(value)))
    return issue('not-a-number', words.notNumber(label, flagOf(key), value, rangeOf(flag)));
  return ok(Number(value));
};

/** All numbers of a command, or every issue its arguments have. */
const readAll = <F extends Flags>(
  flags: F,
  options: OptionValues,
  rest: readonly string[],
): Result<Numbers<F>> => {
  const known = [...Object.keys(flags).map(flagOf), '--json', '--help'].join(', ');
  const issues: Issue[] = rest.map((argument) =>
    issueOf('unknown-argument', words.unknown(argument, known), argument),
  );
  const numbers: Record<string, number | undefined> = {};
  for (const [key, flag] of Object.entries(flags)) {
    const result = read(key, flag, options[key]);
    if (result.ok) numbers[key] = result.value;
    else issues.push(...result.issues);
  }
  return issues.length > 0 ? fail(...issues) : ok(numbers as Numbers<F>);
};

type Answer = Readonly<Partial<Record<keyof typeof words.answers, number>>>;

/** Prints an answer, or the issues with the flag in the place of the solver's own key. */
const answer = (result: Result<Answer>, json: boolean): ExitCode => {
  if (!result.ok) {
    const named = result.issues.map((issue) =>
      /^[a-z]\w*$/i.test(issue.path) ? { ...issue, path: flagOf(issue.path) } : issue,
    );
    printIssues(named, json);
    return 2;
  }
  if (json) printJson(result.value);
  else
    for (const key of Object.keys(words.answers) as (keyof typeof words.answers)[]) {
      const value = result.value[key];
      if (value !== undefined) printLine(words.answers[key](plain(value, 4)));
    }
  return 0;
};

const asked = (parameter: NumberParameter, also?: string): Flag => ({
  parameter,
  absent: 'asked',
  ...(also === undefined ? {} : { also }),
});
const target = (parameter: NumberParameter, also?: string): Flag => ({
  ...asked(parameter, also),
  absent: 'target',
});
const optional = (parameter: NumberParameter, also?: string): Flag => ({
  ...asked(parameter, also),
  absent: 'initial',
});

const spineRestFlags = {
  spineThickness: asked(spineRestParameters.spineThickness),
  edgeThickness: asked(spineRestParameters.edgeThickness, words.belowSpine),
  height: asked(spineRestParameters.height),
  spineRadius: optional(spineRestParameters.spineRadius, words.halfSpine),
  lean: optional(spineRestParameters.lean),
  angle: target(spineRestParameters.angle),
  setoff: target(spineRestParameters.setoff),
  bevelHeight: target(spineRestParameters.bevelHeight, words.withinHeight),
} as const;

const edgeRestFlags = {
  radius: asked(edgeRestParameters.radius),
  centre: asked(edgeRestParameters.centre),
  depth: asked(edgeRestParameters.depth),
  drop: asked(edgeRestParameters.drop),
  faceOffset: optional(edgeRestParameters.faceOffset),
} as const;

const carriageFlags = {
  base: asked(carriageParameters.base),
  angle: asked(carriageParameters.angle),
  pitch: asked(carriageParameters.pitch),
  footRadius: optional(carriageParameters.footRadius),
  tipRadius: optional(carriageParameters.tipRadius),
} as const;

/** What is asked, once it is asked in exactly one way. */
const targetOf = ({ angle, setoff, bevelHeight }: Numbers<typeof spineRestFlags>) => {
  const given = [
    ...(angle === undefined ? [] : [{ angle }]),
    ...(setoff === undefined ? [] : [{ setoff }]),
    ...(bevelHeight === undefined ? [] : [{ bevelHeight }]),
  ];
  const [only] = given;
  if (only !== undefined && given.length === 1) return ok(only);
  const names = given.flatMap((one) => Object.keys(one).map(flagOf)).join(', ');
  const all = [flagOf('angle'), flagOf('setoff'), flagOf('bevelHeight')].join(', ');
  return fail(issueOf('one-target', words.targets(names || words.noTarget, all), all));
};

const sum = <F extends Flags>(
  name: string,
  about: string,
  flags: F,
  compute: (numbers: Numbers<F>) => Result<Answer>,
  end: (code: ExitCode) => void,
): Command => {
  const command = new Command(name)
    .description(about)
    .allowUnknownOption()
    .allowExcessArguments()
    .configureOutput({ writeErr: () => undefined })
    .exitOverride();
  for (const [key, flag] of Object.entries(flags)) {
    const { parameter, absent } = flag;
    const fallback = absent === 'initial' ? words.fallback(parameter.initial) : '';
    // The value is optional to the parser, so that a missing one is answered here.
    command.option(
      `${flagOf(key)} [number]`,
      words.range(parameter.meaning, rangeOf(flag), fallback),
      (value: string, before: string[] | undefined) => [...(before ?? []), value],
    );
  }
  return command
    .option('--json', text.cli.jsonOption)
    .action((options: OptionValues, self: Command) =>
      end(answer(chain(readAll(flags, options, self.args), compute), options['json'] === true)),
    );
};

/** A value that `readAll` has made sure of. */
const sure = (value: number | undefined): number => value ?? NaN;

/** `calc`: quick sums of one section, wheel or carriage, for checking by hand. */
export const calcCommand = (
  end: (code: ExitCode) => void = (code) => {
    process.exitCode = code;
  },
): Command => {
  const kinds = 'spine-rest, edge-rest, carriage';
  return new Command('calc')
    .description(words.about)
    .argument('[sum]', kinds)
    .allowUnknownOption()
    .allowExcessArguments()
    .configureOutput({ writeErr: () => undefined })
    .exitOverride()
    .addCommand(
      sum(
        'spine-rest',
        words.spineRestAbout,
        spineRestFlags,
        (n) =>
          chain(targetOf(n), (asks) =>
            chain(
              spineRestSums({
                spineThickness: sure(n.spineThickness),
                edgeThickness: sure(n.edgeThickness),
                height: sure(n.height),
                spineRadius: sure(n.spineRadius),
                lean: sure(n.lean),
                target: asks,
              }),
              (sums) => ok<Answer>({ ...sums }),
            ),
          ),
        end,
      ),
    )
    .addCommand(
      sum(
        'edge-rest',
        words.edgeRestAbout,
        edgeRestFlags,
        (n) =>
          chain(
            edgeRestSums({
              radius: sure(n.radius),
              centre: sure(n.centre),
              depth: sure(n.depth),
              drop: sure(n.drop),
              faceOffset: sure(n.faceOffset),
            }),
            (sums) => ok<Answer>({ ...sums }),
          ),
        end,
      ),
    )
    .addCommand(
      sum(
        'carriage',
        words.carriageAbout,
        carriageFlags,
        (n) =>
          chain(
            carriageSums({
              base: sure(n.base),
              angle: sure(n.angle),
              pitch: sure(n.pitch),
              footRadius: sure(n.footRadius),
              tipRadius: sure(n.tipRadius),
            }),
            (sums) => ok<Answer>({ ...sums }),
          ),
        end,
      ),
    )
    .action((kind: string | undefined, _options: OptionValues, self: Command) => {
      const why =
        kind === undefined || kind.startsWith('-')
          ? words.noKind(kinds)
          : words.unknownKind(kind, kinds);
      printIssues([issueOf('unknown-sum', why)], self.args.includes('--json'));
      end(2);
    });
};
