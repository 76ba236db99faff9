import type { Design } from '../../document/schema.ts';
import type { Preview } from '../../worker/checking.ts';

/** What unfinished checks have found so far. It can only fail: nothing has passed before the end. */
export class Finding {
  #told: { readonly of: Design; readonly preview: Preview } | null = $state.raw(null);

  tell(of: Design, preview: Preview): void {
    this.#told = { of, preview };
  }

  /** What is known of this design, and of no other. */
  about(design: Design): Preview | null {
    return this.#told?.of === design ? this.#told.preview : null;
  }
}
