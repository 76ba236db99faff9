import { bevelGauge } from '../../jigs/template/index.ts';
import { registry } from '../../jigs/registry.ts';
import { partSheets } from '../../src/drawing/part-sheets.ts';
import type { PaperFamily } from '../../src/drawing/paper.ts';
import { setupAnnex } from '../../src/drawing/setup-annex.ts';
import { setupSheets } from '../../src/drawing/setup-sheets.ts';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { titleBlock } from '../../src/make/files/title.ts';
import { setupData } from '../../src/make/setup-data.ts';
import type { Part } from '../../src/model/part.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';
import { gaugeDesign } from '../robust/gauge.ts';

/** A part of a worked design with its drawing. */
export interface Drawn {
  readonly design: string;
  readonly part: Part;
  readonly sheets: readonly Sheet[];
}

/** Found when first asked for, and kept. */
const once = <T>(find: () => T): (() => T) => {
  let kept: { readonly value: T } | undefined;
  return () => (kept ??= { value: find() }).value;
};

/** The set-up sheet and its annex. */
export interface SetUp {
  readonly sheet: readonly Sheet[];
  readonly annex: readonly Sheet[];
  /** Words that its pictures are to show. */
  readonly words: readonly string[];
}

interface Worked {
  readonly name: string;
  readonly parts: () => Drawn[];
  /** On paper of the second kind with all lengths in inches as well. */
  readonly setUp: (paper: PaperFamily) => SetUp;
}

/** A worked design of each family with every part that is made, drawn; the gauge family included. */
export const worked = (): Worked[] => {
  const gauges = gaugeDesign();
  return [
    ...Object.keys(registry.families)
      .flatMap(examplesOf)
      .map((example) => ({
        name: example.file,
        design: example.design,
        fixture: () => solved(example),
      })),
    {
      name: 'bevel gauges',
      design: gauges,
      fixture: () => valueOf(bevelGauge.solve(gauges)),
    },
  ].map(({ name, design, fixture }) => ({
    name,
    setUp: (paper) => {
      const plates = { ...design.making.plates, inches: paper === 'us' ? 'beside' : 'no' } as const;
      const making = { ...design.making, plates };
      const data = setupData({ ...design, making }, fixture(), [], name);
      const block = { ...titleBlock(design, ''), paper };
      const { section, blade } = data.pictures;
      return {
        sheet: setupSheets(data, block),
        annex: setupAnnex(data, block),
        words: [section, blade].flatMap((one) => one?.dimensions.map(({ text }) => text) ?? []),
      };
    },
    parts: once(() => {
      const block = titleBlock(design, '');
      return valueOf(fixture().parts()).flatMap((part): Drawn[] =>
        part.kind === 'hardware' ? [] : [{ design: name, part, sheets: partSheets(part, block) }],
      );
    }),
  }));
};
