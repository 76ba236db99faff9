import { linkFragment } from '../../src/document/link.ts';
import { saveDesign, saveGrinder } from '../../src/document/save.ts';
import { threeMf, zipPackage, type PackageFile } from '../../src/export/index.ts';
import { circle, rectangle } from '../../src/geometry/loop.ts';
import { meshOf } from '../../src/model/solid.ts';
import { makePackage } from '../../src/make/package.ts';
import { fonts, gaugeDesign, gaugeRegistry } from '../robust/gauge.ts';

const first = (files: readonly PackageFile[], end: string): Uint8Array => {
  const found = files.find(({ path }) => path.endsWith(end));
  if (!found) throw new Error(`no ${end} in the package`);
  return found.bytes;
};

/** One whole file of every format that can be opened. */
export const wholeFiles = async (): Promise<Record<string, Uint8Array>> => {
  const design = gaugeDesign();
  const carry = saveDesign(design);
  const made = await makePackage(design, { registry: gaugeRegistry, fonts, acceptFailing: true });
  const block = { outer: rectangle([0, 0], [20, 10]), holes: [circle([10, 5], 3)] };
  const mesh = meshOf([{ profile: block, from: 0, to: 5 }]);
  if (!made.ok || !mesh.ok) throw new Error('the sample files cannot be made');
  const print = threeMf([{ name: 'Block', id: 'block', mesh: mesh.value, quantity: 1 }], {
    title: 'Block',
    carry,
  });
  if (!print.ok) throw new Error('the sample print cannot be made');
  return {
    design: new TextEncoder().encode(carry),
    link: new TextEncoder().encode(`https://example.org/#${linkFragment(design)}`),
    svg: first(made.value, '.svg'),
    pdf: first(made.value, 'drawings.pdf'),
    dxf: first(made.value, '1_mm.dxf'),
    'dxf-r12': first(made.value, 'r12_mm.dxf'),
    '3mf': print.value,
    package: zipPackage(made.value),
    grinder: new TextEncoder().encode(saveGrinder(design.grinder)),
  };
};
