import type { Issue } from '../../src/core/issue.ts';
import { checkDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import type { Design } from '../../src/document/schema.ts';
import { withManifest, type PackageFile } from '../../src/export/index.ts';
import type { Registry } from '../../src/family/index.ts';
import { solveDesign } from '../../src/make/engine.ts';
import { plateFiles } from '../../src/make/files/plates.ts';
import { printFiles } from '../../src/make/files/prints.ts';
import { makePackage } from '../../src/make/package.ts';
import { fonts } from './gauge.ts';
import { lintPackage } from './lint.ts';

/** How a design ended: refused with issues, built clean, or with defects of the program. */
export interface Outcome {
  readonly end: 'refused' | 'unsolved' | 'unbuilt' | 'built' | 'defect';
  /** Codes of the issues it was refused with. */
  readonly codes: readonly string[];
  readonly defects: readonly string[];
}

const NO_NUMBER = /(?<![\w-])(?:NaN|-?Infinity|undefined|null|\[object)(?![\w-])/;

/** Words that say what is allowed. */
const ALLOWED =
  /\b(?:must|may|at least|at most|less than|more than|between|from [^.]* to|only|cannot|takes?|needs?|no [^.]*|to be had|fewer than|asks for|both)\b/i;

/**
 * What an issue owes a person and does not give: the parameter (its path), a value (a number or a
 * quoted word), what is allowed, a reason (a sentence that is more than a name), and a mend.
 */
export const issueDefects = ({ code, severity, path, message, fix }: Issue): string[] => {
  if (severity !== 'error') return [];
  return [
    ...(path === '' ? ['names no parameter'] : []),
    ...(/\d|"|\b(?:left|right|none|no|hollow|full)\b/.test(message) ? [] : ['states no value']),
    ...(ALLOWED.test(message) ? [] : ['states nothing allowed']),
    ...(message.split(/\s+/).length < 5 ? ['gives no reason'] : []),
    ...(fix === '' ? ['gives no mend'] : []),
    ...(NO_NUMBER.test(`${message} ${fix}`) ? ['states a number that is none'] : []),
  ].map((what) => `issue ${code} at "${path}" ${what}: ${message}`);
};

const notFinite = (value: unknown, path: string): string[] => {
  if (typeof value === 'number')
    return Number.isFinite(value) ? [] : [`${path} is ${String(value)}`];
  if (Array.isArray(value))
    return value.flatMap((inner, i) => notFinite(inner, `${path}.${String(i)}`));
  return typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`))
    : [];
};

const refused = (end: Outcome['end'], issues: readonly Issue[]): Outcome => {
  const defects = issues.flatMap(issueDefects);
  const errors = issues.filter(({ severity }) => severity === 'error');
  const silent = errors.length === 0 ? ['refused without an issue'] : [];
  const all = [...defects, ...silent];
  return {
    end: all.length > 0 ? 'defect' : end,
    codes: errors.map(({ code }) => code),
    defects: all,
  };
};

/** Solves and builds a design, writes its cut files and prints, and reads everything back. */
const attempt = (design: Design, registry: Registry): Outcome => {
  const sound = checkDesign(design, registry);
  if (!sound.ok) return refused('refused', sound.issues);
  const solved = solveDesign(sound.value, registry);
  if (!solved.ok) return refused('unsolved', solved.issues);
  const { settings, lines, facts } = solved.value;
  const parts = solved.value.parts();
  if (!parts.ok) return refused('unbuilt', parts.issues);
  const carry = saveDesign(sound.value);
  const { making } = sound.value;
  const [plates, prints] = [
    plateFiles(parts.value, making, carry),
    printFiles(parts.value, making, carry),
  ];
  if (!plates.ok) return refused('unbuilt', plates.issues);
  if (!prints.ok) return refused('unbuilt', prints.issues);
  const files = withManifest([...plates.value, ...prints.value], { design: 'x', passed: true });
  const places = settings.flatMap(({ id }) => solved.value.place(id).map(({ frame }) => frame));
  const defects = [
    ...notFinite({ settings, lines, facts, places }, 'solution'),
    ...lintPackage(files, parts.value, making.plates.kerf),
  ];
  return { end: defects.length > 0 ? 'defect' : 'built', codes: [], defects };
};

const thrown = (error: unknown): Outcome => ({
  end: 'defect',
  codes: [],
  defects: [`thrown: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`],
});

/** `attempt`, with anything thrown told as a defect. */
export const tryDesign = (design: Design, registry: Registry): Outcome => {
  try {
    return attempt(design, registry);
  } catch (error) {
    return thrown(error);
  }
};

/** The whole package, checks and PDFs included, read back. */
export const tryPackage = async (design: Design, registry: Registry): Promise<Outcome> => {
  try {
    const made = await makePackage(design, { registry, fonts, acceptFailing: true });
    if (!made.ok) return refused('unbuilt', made.issues);
    const solved = solveDesign(design, registry);
    const parts = solved.ok ? solved.value.parts() : solved;
    const isPdf = ({ path, bytes }: PackageFile): boolean =>
      !path.endsWith('.pdf') || new TextDecoder('latin1').decode(bytes.subarray(0, 5)) === '%PDF-';
    const defects = [
      ...lintPackage(made.value, parts.ok ? parts.value : [], design.making.plates.kerf),
      ...made.value.filter((file) => !isPdf(file)).map(({ path }) => `${path} is no PDF`),
    ];
    return { end: defects.length > 0 ? 'defect' : 'built', codes: [], defects };
  } catch (error) {
    return thrown(error);
  }
};
