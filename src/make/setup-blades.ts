import { bevelPlace } from '../blade/bevel.ts';
import { placeOn } from '../blade/place.ts';
import type { Blade } from '../blade/schema.ts';
import { shapeOf } from '../blade/shape.ts';
import { plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { BladeRow } from '../drawing/setup-data.ts';
import type { Setting } from '../family/index.ts';
import { text } from '../text/index.ts';
import { placesOf } from './setup-pictures.ts';

const words = text.make.setup;

/** How far a place is from the plunge, as it is measured: to a tenth of a millimetre. */
export const placeText = (u: number): string => plain(u, 1);

const bevelText = (bevel: Blade['bevels']['left']): string => {
  const { none, full, flat, angle, hollow } = words.bevel;
  if (bevel.kind === 'height') return flat(plain(bevel.height));
  if (bevel.kind === 'angle') return angle(plain(bevel.angle));
  if (bevel.kind === 'hollow')
    return hollow(plain(bevel.depth), bevel.angle === undefined ? null : plain(bevel.angle));
  return bevel.kind === 'full' ? full : none;
};

/** Thickness at the spine and height square to it, mm, as calipers find them before grinding. */
const sizeAt = (blade: Blade, u: number): { thickness: string; height: string } => {
  const { thickness, height } = placeOn(shapeOf(blade), u);
  return { thickness: plain(thickness, 2), height: plain(height, 1) };
};

/** Every blade that a sheet tells bevels of, as it was entered, at the places where it is measured. */
export const bladeRows = ({ blades }: Design, settings: readonly Setting[]): BladeRow[] =>
  blades.flatMap((blade): BladeRow[] => {
    const { name, edge, spineRadius, bevels } = blade;
    const places = placesOf(settings[0], name);
    if (places.length === 0) return [];
    return [
      {
        blade: name,
        places: places.map(({ place, u }) => ({
          place: words.placeAt(text.make.place[place], placeText(u)),
          ...sizeAt(blade, u),
        })),
        edge: words.edges(plain(edge.asHeatTreated), plain(edge.wanted)),
        spine: plain(spineRadius),
        bevels: words.bevels(bevelText(bevels.left), bevelText(bevels.right)),
      },
    ];
  });

/** What the progress tables are told of: the first blade, at the place where its bevel is promised. */
export const progressBlade = (
  { blades: [blade] }: Design,
  settings: readonly Setting[],
): string | undefined => {
  if (blade === undefined || placesOf(settings[0], blade.name).length === 0) return undefined;
  const u = bevelPlace(blade);
  const { thickness, height } = sizeAt(blade, u);
  return words.progressOf(blade.name, placeText(u), thickness, height);
};
