import type { CheckResult } from '../../check/result.ts';
import type { Design } from '../../document/schema.ts';
import { assemblySheets, type AssemblyInfo } from '../../drawing/assembly-sheets.ts';
import { cuttingPlans } from '../../drawing/cutting-plan.ts';
import { partSheets } from '../../drawing/part-sheets.ts';
import { setupAnnex } from '../../drawing/setup-annex.ts';
import { setupSheets } from '../../drawing/setup-sheets.ts';
import type { Sheet } from '../../drawing/sheet.ts';
import { templateSheets } from '../../drawing/template-sheets.ts';
import type { TitleBlock } from '../../drawing/title-block.ts';
import { uncovered } from '../../drawing/uncovered.ts';
import { sheetDxf, svg, type PackageFile } from '../../export/index.ts';
import type { Fixture } from '../../family/index.ts';
import type { Part } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import { groundDrawings } from '../ground/files.ts';
import type { Ground } from '../ground/ground.ts';
import { stampFailed } from '../failed.ts';
import { sectionOf } from '../belt-section.ts';
import { setupData } from '../setup-data.ts';
import { utf8 } from './bytes.ts';
import { plansOf } from './nest.ts';
import { titleBlock } from './title.ts';

export interface DrawingInput {
  readonly design: Design;
  readonly fixture: Fixture;
  readonly parts: readonly Part[];
  readonly checks: readonly CheckResult[];
  /** Label of the fixture family. */
  readonly family: string;
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** The design as text; every file carries it. */
  readonly carry: string;
  /** Cut files and prints, to name them in the parts list. */
  readonly made: readonly PackageFile[];
  /** The blades as the belt leaves them. */
  readonly ground: readonly Ground[];
}

/**
 * Plates that are sawn and drilled, and stock that is drilled, are marked out through a full-size
 * paper; a rod that is only cut to length has nothing to mark.
 */
const templatesOf = (parts: readonly Part[], block: TitleBlock): Sheet[] =>
  parts.flatMap((part) =>
    (part.kind === 'plate' && part.process === 'saw-drill') ||
    (part.kind === 'stock' && part.crossHoles.length + part.holes.length > 0)
      ? templateSheets(part, block)
      : [],
  );

/** Which piece is which on the sheets of metal, where cut files of whole sheets are wanted. */
const plansOfSheets = ({ design, parts, family }: DrawingInput, block: TitleBlock): Sheet[] => {
  const { making } = design;
  if (making.plates.nest.sheets === 'no') return [];
  const plates = parts.flatMap((part) => (part.kind === 'plate' ? [part] : []));
  // What fits on no sheet has stopped the cut files, and with them the package, before.
  const plans = plansOf(plates, making);
  const { gap, margin } = making.plates.nest;
  return plans.ok ? cuttingPlans(plans.value, { title: family, gap, margin }, block) : [];
};

/** The first file of each part: the one to send to whoever makes it. */
const filesByPart = (made: readonly PackageFile[]): Map<string, string> => {
  const first = new Map<string, string>();
  for (const { part, path } of made)
    if (part !== undefined && !first.has(part)) first.set(part, path);
  return first;
};

const assembly = ({ fixture, parts, made, family }: DrawingInput, block: TitleBlock): Sheet[] => {
  const setting = fixture.settings[0]?.id ?? '';
  const info: AssemblyInfo = {
    title: family,
    files: filesByPart(made),
    order: fixture.assembly,
    ...(fixture.supplies ? { supplies: fixture.supplies } : {}),
    notes: fixture.cautions,
    sections: [sectionOf(fixture.section(setting))],
    ...(fixture.cuts ? { cuts: fixture.cuts } : {}),
    ...(fixture.joined ? { joined: fixture.joined } : {}),
  };
  return assemblySheets(parts, fixture.place(setting), info, block);
};

/** Drawing sheets for CAD programs, dimensions exploded; what opaque areas hide is cut away. */
const sheetFiles = (sheets: readonly Sheet[], carry: string): PackageFile[] =>
  sheets.map((sheet) => ({
    path: `drawings/${sheet.id}_mm.dxf`,
    kind: 'drawings',
    bytes: utf8(sheetDxf({ ...sheet, items: uncovered(sheet.items) }, { carry })),
  }));

/**
 * Drawings of every part, of the assembly and of setting up: one SVG a sheet, one PDF a set, and
 * of what is built one DXF a sheet. The
 * PDF library is loaded here and not before, so that the page starts without it.
 */
export const drawingFiles = async (input: DrawingInput): Promise<PackageFile[]> => {
  const { design, fixture, parts, checks, family, fonts, carry, ground } = input;
  const block = titleBlock(design, carry);
  const stamped = (sheets: readonly Sheet[]): Sheet[] =>
    sheets.map((sheet) => stampFailed(sheet, checks));
  const drawn = stamped([
    ...assembly(input, block),
    ...parts.flatMap((part) => partSheets(part, block)),
  ]);
  const setup = setupData(design, fixture, checks, family);
  const sets = [
    {
      name: 'drawings',
      title: text.make.drawingsTitle(design.name),
      sheets: [...drawn, ...stamped(groundDrawings(ground, block))],
    },
    {
      name: 'templates',
      title: text.make.templatesTitle(design.name),
      sheets: stamped(templatesOf(parts, block)),
    },
    {
      name: 'cutting-plans',
      title: text.make.cuttingPlansTitle(design.name),
      sheets: stamped(plansOfSheets(input, block)),
    },
    {
      name: 'set-up',
      title: text.make.setupTitle(design.name),
      sheets: stamped(setupSheets(setup, block)),
    },
    {
      name: 'set-up-annex',
      title: text.make.annexTitle(design.name),
      sheets: stamped(setupAnnex(setup, block)),
    },
  ].filter(({ sheets }) => sheets.length > 0);
  const { pdf } = await import('../../export/pdf.ts');
  const pictures = sets.flatMap(({ name, sheets }) =>
    sheets.map((sheet): PackageFile => ({
      path: `${name}/${sheet.id}.svg`,
      kind: name,
      bytes: utf8(svg(sheet, { carry })),
    })),
  );
  const documents = await Promise.all(
    sets.map(async ({ name, title, sheets }): Promise<PackageFile> => ({
      path: `${name}.pdf`,
      kind: name,
      bytes: await pdf(sheets, { title, fonts, carry }),
    })),
  );
  return [...pictures, ...sheetFiles(drawn, carry), ...documents];
};
