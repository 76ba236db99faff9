import type { NumberParameter, Unit } from '../../core/parameter.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Path } from '../../core/path.ts';
import { text } from '../../text/index.ts';

/** What a line stands for; the style sheet says how it looks. */
export type Role =
  | 'blade'
  | 'blank'
  | 'belt'
  | 'fixture'
  | 'grinder'
  | 'push'
  | 'wanted'
  | 'ground'
  | 'centre'
  | 'hidden'
  | 'fine'
  | 'nearest'
  | 'cut'
  | 'mark';

export interface PictureLine {
  readonly points: readonly Vec2[];
  readonly closed: boolean;
  readonly role: Role;
}

export interface PictureDisc {
  readonly centre: Vec2;
  readonly radius: number;
  readonly role: Role;
}

export interface PictureLabel {
  /** Where it stands when there is room. */
  readonly at: Vec2;
  /** The spot it names, where that is another. */
  readonly names?: Vec2;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Stands a little above its point. */
  readonly above?: boolean;
  /** Its middle, not its base line, stands at the height of its point. */
  readonly level?: boolean;
}

/** A dimension. With a path it is an input for the value at that path. */
export interface Measure {
  readonly key: string;
  readonly path: Path | null;
  readonly parameter: NumberParameter | null;
  readonly label: string;
  readonly value: number;
  readonly unit: Unit;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Direction in which it measures; `at` stands on the spot, on the line between its ends. */
  readonly along: 'x' | 'y' | 'at';
  /** The side of the drawing on which it stands. */
  readonly side: 'low' | 'high';
  /** Written before the figure: the diameter sign. */
  readonly mark?: string;
}

type Placing = Pick<Measure, 'from' | 'to' | 'along' | 'side' | 'mark'>;

/** A true-to-scale drawing in mm, x right and y up, before anything is known of the screen. */
export interface Picture {
  readonly name: string;
  readonly lines: readonly PictureLine[];
  readonly discs: readonly PictureDisc[];
  readonly labels: readonly PictureLabel[];
  readonly measures: readonly Measure[];
}

const finite = ([x, y]: Vec2): boolean => Number.isFinite(x) && Number.isFinite(y);

/** A drawing without what cannot be drawn: values that contradict each other give no points. */
export const sound = (picture: Picture): Picture => ({
  ...picture,
  lines: picture.lines
    .map((line) => ({ ...line, points: line.points.filter(finite) }))
    .filter((line) => line.points.length > 1),
  discs: picture.discs.filter((disc) => finite(disc.centre) && disc.radius > 0),
  labels: picture.labels.filter((label) => finite(label.at)),
  measures: picture.measures.filter((measure) => finite(measure.from) && finite(measure.to)),
});

/** A dimension that is the input of a parameter; `of` tells it from others of the same name. */
export const input = (
  path: Path,
  parameter: NumberParameter,
  value: number,
  place: Placing,
  of?: string,
): Measure => ({
  key: path,
  path,
  parameter,
  label: of === undefined ? parameter.label : text.app.entry.of(parameter.label, of),
  value,
  unit: parameter.unit,
  ...place,
});

/** A dimension that only tells. */
export const reading = (
  key: string,
  label: string,
  value: number,
  unit: Unit,
  place: Placing,
): Measure => ({ key, path: null, parameter: null, label, value, unit, ...place });
