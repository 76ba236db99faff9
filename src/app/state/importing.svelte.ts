import type { Blade } from '../../blade/schema.ts';
import type { Result } from '../../core/result.ts';
import { undecided, type OutlineChoice } from '../../outline/lay.ts';
import type { OutlineFile } from '../../outline/read.ts';
import type { Traced } from '../../outline/trace.ts';
import type { Hired } from './outside.ts';
import { messageOf } from '../../core/message-of.ts';

/** A blade outline from a file, before it is taken. Nothing in the design changes here. */
export class Importing {
  /** Name of the file; null when there is none. */
  name: string | null = $state(null);
  file: Result<OutlineFile> | null = $state.raw(null);
  traced: Result<Traced> | null = $state.raw(null);
  choice: OutlineChoice = $state.raw(undecided(0));
  /** Which contour of the file. */
  contour: number = $state(0);
  /** Whether the known length was confirmed by a person. */
  confirmed: boolean = $state(false);
  /** Whether a person said which side is the edge, where the outline does not tell. */
  faced: boolean = $state(false);
  /** The trace in view belongs to an earlier choice. */
  stale: boolean = $state(false);
  crash: string | null = $state(null);
  #turn = 0;
  readonly #hired: Hired;

  constructor(hired: Hired) {
    this.#hired = hired;
  }

  /** Reads a file and lays its largest contour, at the scale it states itself. */
  async read(name: string, bytes: Uint8Array, blade: Blade): Promise<void> {
    this.drop();
    this.name = name;
    const turn = this.#turn;
    try {
      const file = await this.#hired.engine().outline(bytes);
      if (turn !== this.#turn) return;
      this.file = file;
      if (file.ok) await this.pick(0, blade);
    } catch (error) {
      if (turn === this.#turn) this.crash = messageOf(error);
    }
  }

  /** Length of a contour along the blade by the file's own unit, or as if that were millimetres. */
  stated(index: number): number {
    if (!this.file?.ok) return 0;
    const { contours, unit } = this.file.value;
    return (contours[index]?.along ?? 0) * (unit ?? 1);
  }

  async pick(index: number, blade: Blade): Promise<void> {
    this.contour = index;
    this.confirmed = false;
    this.faced = false;
    const length = Number(Math.min(1000, Math.max(5, this.stated(index))).toFixed(2));
    await this.choose(undecided(length), blade);
  }

  /** Lays the contour by another choice; the newest choice wins. */
  async choose(choice: OutlineChoice, blade: Blade): Promise<void> {
    const contour = this.file?.ok ? this.file.value.contours[this.contour] : undefined;
    if (contour === undefined) return;
    this.#turn += 1;
    const turn = this.#turn;
    this.choice = choice;
    this.stale = true;
    try {
      const traced = await this.#hired.engine().trace(blade, contour, choice);
      if (turn !== this.#turn) return;
      this.traced = traced;
      this.stale = false;
    } catch (error) {
      if (turn === this.#turn) this.crash = messageOf(error);
    }
  }

  /** Puts the file away. */
  drop(): void {
    this.#turn += 1;
    if (this.name !== null && this.file === null) this.#hired.giveUp();
    this.name = null;
    this.file = null;
    this.traced = null;
    this.crash = null;
    this.stale = false;
    this.confirmed = false;
    this.faced = false;
  }
}
