import { linkFragment } from '../../document/link.ts';
import type { Design } from '../../document/schema.ts';
import type { TitleBlock } from '../../drawing/title-block.ts';
import { sha256 } from '../../export/sha256.ts';
import { utf8 } from './bytes.ts';

/** Short name of exactly this design: the first digits of its SHA-256. */
const designId = (carry: string): string => `PW-${sha256(utf8(carry)).slice(0, 8).toUpperCase()}`;

/** What every sheet of a design has in common; `carry` is the design as text. */
export const titleBlock = (design: Design, carry: string): TitleBlock => ({
  owner: '',
  creator: '',
  approvedBy: '',
  date: '',
  design: design.name,
  designId: designId(carry),
  revision: String(design.revision),
  paper: design.making.units === 'in' ? 'us' : 'iso',
  link: `#${linkFragment(design)}`,
  kerf: design.making.plates.kerf,
});
